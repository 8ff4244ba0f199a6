"""Readings of a rod, a needle and a Vicat needle, and the recalled model of hydration."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from shop_calc.science.hydration import age_at_hydration_h, hydration_curve, hydration_fraction
from shop_calc.science.set_records import (
    false_set_ratio,
    fit_penetration,
    initial_set_from_vicat_h,
    needle_resistance_pa,
)
from shop_calc.science.setting import penetration_resistance_pa

PSI_PA = 6894.757
CEMENT = {"c3a_fraction": 0.08, "c3s_fraction": 0.55, "so3_fraction": 0.03, "blaine_m2_kg": 370.0}


@given(st.floats(2, 8), st.floats(3, 12))
def test_a_record_that_follows_the_law_gives_its_numbers_back(initial_h, exponent):
    times_h = initial_h * np.array([0.7, 0.85, 1.0, 1.2])
    fit = fit_penetration(times_h, penetration_resistance_pa(times_h, initial_h, exponent))
    assert (fit.initial_set_h, fit.exponent) == pytest.approx((initial_h, exponent))
    assert fit.final_set_h == pytest.approx(initial_h * 8 ** (1 / exponent))
    assert fit.correlation == pytest.approx(1.0)
    assert fit.count == 4


def test_the_fit_is_that_of_numpy():
    rng = np.random.default_rng(3)
    times_h = np.array([2.2, 2.6, 3.0, 3.3, 3.9])
    resistance_pa = penetration_resistance_pa(times_h, 3.4, 7.0) * rng.lognormal(0, 0.1, 5)
    fit = fit_penetration(times_h, resistance_pa)
    slope, level = np.polyfit(np.log(times_h), np.log(resistance_pa), 1)
    assert fit.exponent == pytest.approx(slope)
    assert fit.initial_set_h == pytest.approx(np.exp((np.log(500 * PSI_PA) - level) / slope), rel=1e-6)
    assert fit.correlation == pytest.approx(np.corrcoef(np.log(times_h), np.log(resistance_pa))[0, 1])


def test_a_rod_of_an_eighth_of_an_inch_carries_2_8_kg_at_initial_set():
    area_m2 = np.pi / 4 * (0.125 * 0.0254) ** 2
    assert needle_resistance_pa(2.8, area_m2) == pytest.approx(500 * PSI_PA, rel=0.01)


def test_a_quarter_inch_rod_stays_on_a_kitchen_scale_up_to_150_psi():
    area_m2 = np.pi / 4 * (0.25 * 0.0254) ** 2
    assert needle_resistance_pa(3.35, area_m2) == pytest.approx(150 * PSI_PA, rel=0.01)


def test_a_vicat_record_is_read_by_straight_lines():
    assert initial_set_from_vicat_h([1.0, 2.0], [0.035, 0.015]) == pytest.approx(1.5)
    assert initial_set_from_vicat_h([1.0, 2.0, 3.0], [0.040, 0.025, 0.010]) == pytest.approx(2.0)
    assert initial_set_from_vicat_h([1.0, 2.0], [0.025, 0.015]) == pytest.approx(1.0)


def test_a_vicat_record_that_never_crosses_says_so():
    assert np.isnan(initial_set_from_vicat_h([1.0, 2.0], [0.040, 0.030]))
    assert np.isnan(initial_set_from_vicat_h([1.0, 2.0], [0.020, 0.010]))  # begun too late


def test_a_stiff_paste_fails_the_limit_of_false_set():
    assert false_set_ratio(0.012, 0.032) < 0.5 < false_set_ratio(0.020, 0.032)


def test_hydration_rises_to_its_ultimate_degree_and_turns_round():
    curve = hydration_curve(0.40, **CEMENT)
    numbers = (curve.ultimate_fraction, curve.time_constant_h, curve.shape_exponent)
    degrees = hydration_fraction(np.array([1.0, 4.0, 24.0, 1e6]), *numbers)
    assert np.all(np.diff(degrees) > 0)
    assert degrees[-1] == pytest.approx(curve.ultimate_fraction, rel=1e-3)
    assert age_at_hydration_h(degrees[:3], *numbers) == pytest.approx([1.0, 4.0, 24.0])


def test_finer_cement_and_less_water_set_sooner():
    slow, fine, dry = (
        hydration_curve(**({"water_cement_ratio": 0.40} | CEMENT | change))
        for change in ({}, {"blaine_m2_kg": 450.0}, {"water_cement_ratio": 0.36})
    )
    assert fine.initial_set_h < slow.initial_set_h < slow.final_set_h
    assert dry.initial_set_h < slow.initial_set_h


@pytest.mark.parametrize(
    "call, words",
    [
        (lambda: fit_penetration([3.0], [1e5]), "1 times and 1 resistances"),
        (lambda: fit_penetration([3.0, 4.0], [1e5, 1e5, 1e6]), "2 times and 3 resistances"),
        (lambda: fit_penetration([3.0, 4.0], [1e6, 1e5]), "falls with time"),
        (lambda: fit_penetration([0.0, 4.0], [1e5, 1e6]), "time: 0 h"),
        (lambda: initial_set_from_vicat_h([2.0, 1.0], [0.03, 0.02]), "times must rise"),
        (lambda: needle_resistance_pa(1.0, 0.0), "area of the needle: 0 m2"),
        (lambda: false_set_ratio(0.01, 0.0), "initial penetration: 0 m"),
        (lambda: hydration_curve(0.40, **(CEMENT | {"c3a_fraction": 8.0})), "C3A: 8"),
    ],
)
def test_impossible_entries_are_named(call, words):
    with pytest.raises(ValueError, match=words):
        call()
