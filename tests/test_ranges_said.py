"""Where a plan leaves the range of a source, it says so; within the range it does not."""

from types import SimpleNamespace

import numpy as np
import pytest
from demo_plans import demo_plan

from shop_calc.lesson.moves.shrink_and_curl import bow_words, dried
from shop_calc.trade.after.bow_advice import beyond_codes, bow_advice
from shop_calc.trade.after.handling_advice import _odd_temperatures, _too_young, handling_advice


@pytest.fixture
def bench():
    return demo_plan("garden_bench_top")


@pytest.mark.parametrize(
    ("aci_h", "en_h", "told"),
    [
        (17.7, 20.7, " In the morning it is 18 h old by ACI 209, which starts at 24 h, "
                     "and 21 h old by EN 1992, which starts at 72 h."),
        (24.0, 71.6, " In the morning it is 72 h old by EN 1992, which starts at 72 h."),
        (24.0, 72.0, ""),
    ],
)  # fmt: skip
def test_a_morning_too_young_for_a_curve_is_named_with_its_age(aci_h, en_h, told):
    """ACI 209 from one day on (from memory), EN 1992-1-1 3.1.2(5) from three."""
    assert _too_young(SimpleNamespace(aci_age_h=aci_h, en_age_h=en_h)) == told


def test_the_plan_carries_the_age_of_its_morning(bench):
    reasons = [line.reason for line in bench.handling.advice if "extrapolated" in line.text]
    assert len(reasons) == 1 and reasons[0].endswith(_too_young(bench.handling.morning))
    assert "18 h old by ACI 209" in reasons[0]


@pytest.mark.parametrize(
    ("temps", "told"),
    [
        ((0.0, 40.0), None),
        ((-0.1, 20.0), "Take the temperature-time factor and the age of EN 1992 of this night as rough."),
        ((20.0, 40.1), "Take the temperature-time factor of this night as rough."),
        ((20.0, 80.1), "Take the temperature-time factor and the age of EN 1992 of this night as rough."),
    ],
)
def test_a_night_beyond_a_rule_of_maturity_is_named(temps, told):
    """Saul's straight rule 0 to 40 °C (from memory); EN 1992-1-1 B.1(3) 0 to 80 °C; after the morning nothing counts."""
    record = SimpleNamespace(time_h=np.array([1.0, 12.0, 24.0, 25.0]), temp_c=np.array([16.0, *temps, -9.0]))
    assert [line.text for line in _odd_temperatures(record, 24.0)] == ([told] if told else [])


def test_the_plan_of_a_hot_covered_piece_says_it(bench):
    handling, piece = bench.handling, bench.piece
    assert not any("rough" in line.text for line in handling_advice(handling, bench.day, piece))
    hot = SimpleNamespace(**{**vars(handling), "morning": handling.morning, "carry": handling.carry})
    hot.hardening = SimpleNamespace(time_h=handling.hardening.time_h, temp_c=handling.hardening.temp_c + 30.0)
    line = handling_advice(hot, bench.day, piece)[-1]
    assert "temperature-time factor" in line.text and line.mark == "memory" and "Saul" in line.source


@pytest.mark.parametrize(
    ("thick_m", "rh", "words"),
    [
        (0.0381, 0.50, ("a piece 1 1/2\" (38.1 mm) thick",)),
        (0.0999, 0.40, ("a piece",)),
        (0.1000, 0.40, ()),
        (0.1000, 0.39, ("air of 39 %",)),
        (0.0381, 0.20, ("a piece", "air of 20 %")),
    ],
)
def test_only_what_lies_outside_the_shrinkage_codes_is_named(thick_m, rh, words, bench):
    """EN 1992-1-1 Table 3.3 starts at 100 mm of notional size, the thickness where both faces dry; both codes at 40 %."""
    found = beyond_codes(thick_m, rh)
    assert len(found) == len(words) and all(text.startswith(word) for text, word in zip(found, words, strict=True))
    layers = SimpleNamespace(**{**vars(bench.layers), "thickness_m": thick_m})
    bow = SimpleNamespace(**{**vars(bench.bow), "rh_fraction": rh})
    reason = bow_advice(bow, layers, bench.mix)[-1].reason
    assert all(word in reason for word in words) and ("thick (" in reason) is (thick_m < 0.1)


@pytest.mark.parametrize(("rh", "lines"), [(0.40, 2), (0.39, 3)])
def test_the_slider_of_the_drying_top_says_when_its_air_is_too_dry_for_the_codes(rh, lines):
    said = bow_words(dried(0.0381, 1.57, rh, 0.626)).splitlines()
    assert len(said) == lines and ("air of 39 %" in said[-1]) is (lines == 3)
