"""The small calculator that works formulas out again."""

import math

import pytest
from working_eval import check_working, evaluate

from shop_calc.trade.working import Step


def test_it_does_plain_arithmetic():
    assert evaluate("A - t * P + (c_out - c_in) * t ** 2", {"A": 100, "t": 1, "P": 40, "c_out": 5, "c_in": 1}) == 64
    assert evaluate("-pi * sqrt(d) / 4 + log(exp(2.5))", {"d": 16.0}) == pytest.approx(2.5 - math.pi)


@pytest.mark.parametrize(
    "formula",
    ["__import__('os')", "a.b", "[1, 2]", "a if a else 1", "open(1)", "b + 1", "a @ a", "a < 2", "'x'"],
)
def test_it_refuses_everything_else(formula):
    with pytest.raises(ValueError, match="plain arithmetic"):
        evaluate(formula, {"a": 1.0})


def test_a_wrong_line_is_noticed():
    right = Step("x_m", "x", "a + b", (("a", 1.0, "m"), ("b", 2.0, "m")), 3.0, "m", "derived", "geometry")
    wrong = Step("y_m", "y", "x * 2", (("x", 3.0, "m"),), 6.1, "m", "derived", "geometry")
    carried = Step("z_m", "z", "x * 2", (("x", 3.1, "m"),), 6.2, "m", "derived", "geometry")
    assert check_working([right]) == 1
    with pytest.raises(AssertionError, match="y_m"):
        check_working([right, wrong])
    with pytest.raises(AssertionError, match="x has changed"):
        check_working([right, carried])
