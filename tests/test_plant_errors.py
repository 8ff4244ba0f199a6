"""The planter of errors: what it plants is what it says, and a module can be read after each."""

import ast

import pytest
from plant_errors import ROOT, errors_of, excused

SOURCE = '''
def f(x, y):
    """Two and 3."""
    if x < 4.0 or len(y) > 7:
        raise ValueError(f"{x} is below 4.0" + 5)
    word = "one" if x == 1.0 else "many"
    return -x + 0.5 * y[0] - round(2**y, 8)
'''


def planted(source):
    data = source.encode()
    return {
        what: (data[:start] + text.encode() + data[end:]).decode() for _, what, start, end, text in errors_of(source)
    }


def test_each_kind_is_planted_once_and_nothing_in_what_is_only_said():
    made = planted(SOURCE)
    assert set(made) == {"4.0 is 2 % larger", "7 is one more", "0.5 is 2 % larger", "2 is 2 % larger", "+ turned round",
                         "part forgotten", "* turned round", "- turned round", "- left out", "< turned round",
                         "> turned round"}  # fmt: skip
    assert "if x > 4.0 or" in made["< turned round"] and "if x < 4.08 or" in made["4.0 is 2 % larger"]
    assert "len(y) > 8" in made["7 is one more"] and "len(y) < 7" in made["> turned round"]
    assert "return -x - 0.5" in made["+ turned round"] and "y[0] + round(2**y" in made["- turned round"]
    assert "return -x  - round" in made["part forgotten"] and "0.5 / y[0]" in made["* turned round"]
    assert "return x + 0.5" in made["- left out"] and "round(2.04**y, 8)" in made["2 is 2 % larger"]


def test_the_excused_name_a_line_that_is_there_and_a_reason():
    for (module, text, _), reason in excused().items():
        assert text in {line.strip() for line in (ROOT / module).read_text(encoding="utf-8").splitlines()}, (module, text)
        assert len(reason.split()) >= 3, text


@pytest.mark.parametrize("name", ["science/evaporation.py", "science/heat_balance.py", "trade/shape/layers.py"])
def test_a_module_can_be_read_after_each_error(name):
    source = (ROOT / "shop_calc" / name).read_text(encoding="utf-8")
    made = planted(source)
    assert len(made) > 2
    for text in made.values():
        assert text != source and ast.parse(text)
