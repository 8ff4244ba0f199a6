"""The planter of errors: what it plants is what it says, and a module can be read after each."""

import ast
from pathlib import Path

import pytest
from plant_errors import errors_of

SOURCE = '''
def f(x, y):
    """Two and 3."""
    if x < 4.0:
        raise ValueError(f"{x} is below 4.0")
    return -x + 0.5 * y[0] - 2**y
'''


def planted(source):
    data = source.encode()
    return {
        what: (data[:start] + text.encode() + data[end:]).decode() for _, what, start, end, text in errors_of(source)
    }


def test_each_kind_is_planted_once():
    made = planted(SOURCE)
    assert set(made) == {"4.0 is 2 % larger", "0.5 is 2 % larger", "2 is 2 % larger", "+ turned round", "- turned round",
                         "- left out", "< turned round"}  # fmt: skip
    assert "if x > 4.0:" in made["< turned round"] and "if x < 4.08:" in made["4.0 is 2 % larger"]
    assert "return -x - 0.5" in made["+ turned round"] and "y[0] + 2**y" in made["- turned round"]
    assert "return x + 0.5" in made["- left out"]


@pytest.mark.parametrize("name", ["science/evaporation.py", "science/heat_balance.py", "trade/shape/layers.py"])
def test_a_module_can_be_read_after_each_error(name):
    source = (Path(__file__).parents[1] / "shop_calc" / name).read_text(encoding="utf-8")
    made = planted(source)
    assert len(made) > 2
    for text in made.values():
        assert text != source and ast.parse(text)
