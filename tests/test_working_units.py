"""The units of a working: other units of length, mass, time and warmth must leave every formula true."""

import math

import pytest
from demo_plans import NAMES, demo_plan

from shop_calc.lesson.formula import evaluate

# One unit in another system, by odd factors, so that no mistake cancels.
L, M, T, K = 3.1, 7.3, 1.7, 2.3
PRESSURE, ENERGY = M / (L * T**2), M * L**2 / T**2
FACTOR = {
    "-": 1.0, "m": L, "m2": L**2, "m3": L**3, "1/m": 1 / L, "m2/m3": 1 / L, "kg": M, "kg/m": M / L, "kg/m2": M / L**2,
    "kg/m3": M / L**3, "s": T, "h": T, "m/s2": L / T**2, "Pa": PRESSURE, "Pa**0.5": PRESSURE**0.5, "Pa/s": PRESSURE / T,
    "kg/m2/h": M / L**2 / T, "C": K, "delta_K": K, "kg\u00b7K": M * K, "C\u00b7h": K * T, "J/mol": ENERGY, "N*m": ENERGY,
}  # fmt: skip
# Lines that reckon for 1 kg of binder or bag, or in a currency, for which there is no unit; and what is simply nothing.
WITHOUT = ("binder_needed_kg", "binder_in_base_kg", "bag_needed_kg", "bag_in_base_kg", "cost_cash_m2", "cost_pro_rata_m2")


@pytest.mark.parametrize("name", NAMES)
def test_every_formula_is_true_in_units_that_nobody_uses(name):
    odd, tried = set(), 0
    for step in demo_plan(name).working:
        if step.formula.startswith("by ") or not step.inputs:
            continue
        tried += 1
        other = [(symbol, value * FACTOR[unit], unit) for symbol, value, unit in step.inputs]
        if not math.isclose(evaluate(step.formula, other), step.value * FACTOR[step.unit], rel_tol=1e-9, abs_tol=1e-15):
            odd.add(step.name)
    assert odd <= set(WITHOUT) and tried > 60


def test_units_that_are_mixed_up_are_noticed():
    area = [("L", 2.0 * L, "m"), ("W", 3.0 * L, "m")]
    assert evaluate("L * W", area) == pytest.approx(6.0 * FACTOR["m2"]) != pytest.approx(6.0 * FACTOR["m"])
