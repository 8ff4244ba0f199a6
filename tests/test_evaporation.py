"""Evaporation: the formulas against each other, their US forms and their limits."""

import csv
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from shop_calc.science import evaporation
from shop_calc.science.layer_water import water_share_lost
from shop_calc.science.moist_air import dew_point_c
from shop_calc.units import convert, parse_quantity

ROWS = Path(__file__).parents[1] / "data" / "published" / "evaporation.csv"
LB_FT2_H = 4.882428  # kg/m2/h
M_S_PER_MPH = 0.44704
PSI_KPA = 6.894757

shop_air = st.tuples(st.floats(5, 38), st.floats(5, 38), st.floats(0, 1), st.floats(0, 11))


def lerch_cases():
    """Conditions of the Lerch table, as arguments in SI."""
    with open(ROWS, encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            if row["id"].startswith("LE-"):
                quantities = (parse_quantity(part.split("=")[1].strip()) for part in row["inputs"].split(";"))
                (tc, unit), (ta, _), (rh, _), (mph, _) = quantities
                yield convert(tc, unit, "C"), convert(ta, unit, "C"), rh, mph * M_S_PER_MPH


def test_the_metric_twin_of_uno_is_exact():
    for concrete_f, air_f, rh, mph in (
        (87, 80, 0.5, 12),
        (70, 40, 0.3, 0),
        (50, 95, 0.9, 25),
        (100, 100, 0.1, 7),
    ):
        us = max(concrete_f**2.5 - rh * air_f**2.5, 0.0) * (1 + 0.4 * mph) * 1e-6 * LB_FT2_H
        concrete_c, air_c = (concrete_f - 32) / 1.8, (air_f - 32) / 1.8
        ours = evaporation.uno_rate_kg_m2_h(concrete_c, air_c, rh, mph * M_S_PER_MPH)
        assert ours == pytest.approx(us, rel=5e-5)
    assert pytest.approx(LB_FT2_H * 1.8**2.5 * 0.4 / 1.609344, abs=5e-4) == evaporation.UNO_FACTOR
    assert pytest.approx(32 / 1.8, abs=5e-4) == evaporation.UNO_SHIFT_C
    assert pytest.approx(1.609344 / 0.4, abs=5e-6) == evaporation.UNO_WIND_SHIFT_KM_H


def test_the_metric_coefficients_of_menzel_run_one_percent_above_the_us_ones():
    us_still = 0.44 * LB_FT2_H / PSI_KPA * 0.253
    us_per_km_h = 0.44 * LB_FT2_H / PSI_KPA * 0.096 / 1.609344
    assert evaporation.MENZEL_PER_KPA * evaporation.MENZEL_STILL / us_still == pytest.approx(1.011, abs=5e-4)
    assert evaporation.MENZEL_PER_KPA * evaporation.MENZEL_PER_KM_H / us_per_km_h == pytest.approx(
        1.017, abs=5e-4
    )


def test_uno_stays_near_menzel_on_the_conditions_of_the_lerch_table():
    for concrete_c, air_c, rh, wind in lerch_cases():
        menzel = evaporation.menzel_rate_kg_m2_h(concrete_c, air_c, rh, wind)
        share = evaporation.uno_rate_kg_m2_h(concrete_c, air_c, rh, wind) / menzel - 1
        assert -0.09 < share < (0.07 if air_c > 10.1 else 0.22), (concrete_c, air_c, rh, wind)


def test_the_rounded_metric_form_of_uno_runs_three_to_five_percent_low():
    for concrete_c, air_c, rh, wind in lerch_cases():
        if concrete_c < 15 or air_c > concrete_c:  # small differences of large terms: the rounding shows more
            continue
        exact = evaporation.uno_rate_kg_m2_h(concrete_c, air_c, rh, wind)
        rounded = evaporation.uno_rounded_rate_kg_m2_h(concrete_c, air_c, rh, wind)
        assert 0.95 < rounded / exact < 0.97


def test_cold_air_over_warm_concrete_dries_it_as_fast_as_a_hot_day():
    # "plastic cracking is a hot-weather thing" is a wrong belief: 0.16 lb/ft2/h at 40 °F
    cold = evaporation.menzel_rate_kg_m2_h(21.11, 4.44, 0.5, 10 * M_S_PER_MPH) / LB_FT2_H
    hot = evaporation.menzel_rate_kg_m2_h(32.22, 32.22, 0.5, 10 * M_S_PER_MPH) / LB_FT2_H
    assert cold == pytest.approx(0.16, abs=0.005)
    assert cold > 0.8 * hot


def test_the_chart_example_is_printed_as_a_band():
    # concrete 87 °F, air 80 °F, 50 %, 12 mph
    rate = evaporation.uno_rate_kg_m2_h(convert(87, "F", "C"), convert(80, "F", "C"), 0.5, 12 * M_S_PER_MPH)
    band = evaporation.estimate_band_kg_m2_h(rate)
    assert band.low_kg_m2_h / LB_FT2_H == pytest.approx(0.15, abs=0.005)
    assert band.high_kg_m2_h / LB_FT2_H == pytest.approx(0.34, abs=0.005)
    assert band.low_kg_m2_h < band.likely_kg_m2_h < band.high_kg_m2_h


@given(shop_air)
def test_neither_formula_is_ever_negative(case):
    for formula in (
        evaporation.menzel_rate_kg_m2_h,
        evaporation.uno_rate_kg_m2_h,
        evaporation.uno_rounded_rate_kg_m2_h,
    ):
        assert formula(*case) >= 0


@given(st.floats(5, 38), st.floats(0.1, 1), st.floats(0, 11))
def test_a_surface_at_the_dew_point_neither_dries_nor_gains(air_c, rh, wind):
    surface_c = dew_point_c(air_c, rh)
    assert evaporation.menzel_rate_kg_m2_h(surface_c, air_c, rh, wind) == pytest.approx(0, abs=1e-9)
    assert evaporation.menzel_rate_kg_m2_h(surface_c - 1, air_c, rh, wind) == 0
    assert evaporation.menzel_rate_kg_m2_h(surface_c + 1, air_c, rh, wind) > 0


@given(st.floats(15, 38), st.floats(15, 38), st.floats(0, 0.9), st.floats(0, 10))
def test_wind_warm_concrete_and_dry_air_all_dry_it_faster(concrete_c, air_c, rh, wind):
    for formula in (evaporation.menzel_rate_kg_m2_h, evaporation.uno_rate_kg_m2_h):
        rate = formula(concrete_c, air_c, rh, wind)
        assert formula(concrete_c, air_c, rh, wind + 1) >= rate
        assert formula(concrete_c + 1, air_c, rh, wind) >= rate
        assert formula(concrete_c, air_c, rh + 0.1, wind) <= rate


def test_wind_is_taken_in_metres_a_second():
    still, windy = (evaporation.menzel_coefficient_kg_m2_h_pa(v) for v in (0.0, 16 / 3.6))
    assert windy / still == pytest.approx((0.253 + 0.060 * 16) / 0.253)


def test_arrays_give_what_single_numbers_give():
    entries = np.array([[21.0, 30.0, 10.0], [21.0, 35.0, 2.0], [0.5, 0.2, 0.8], [0.0, 4.4, 2.0]])
    for formula in (evaporation.menzel_rate_kg_m2_h, evaporation.uno_rate_kg_m2_h):
        assert formula(*entries) == pytest.approx([formula(*case) for case in entries.T], rel=1e-12)


@pytest.mark.parametrize(
    "case, words",
    [
        ((21.0, 21.0, 50.0, 0.0), "relative humidity: 50"),
        ((21.0, 21.0, 0.5, -1.0), "wind: -1 m/s"),
        ((170.0, 21.0, 0.5, 0.0), "concrete temperature: 170 °C"),
        ((21.0, float("nan"), 0.5, 0.0), "air temperature: nan"),
    ],
)
def test_impossible_entries_are_named(case, words):
    for formula in (evaporation.menzel_rate_kg_m2_h, evaporation.uno_rate_kg_m2_h):
        with pytest.raises(ValueError, match=words):
            formula(*case)


def test_uno_is_refused_where_a_power_of_a_temperature_has_no_meaning():
    with pytest.raises(ValueError, match="air temperature: -20"):
        evaporation.uno_rate_kg_m2_h(5.0, -20.0, 0.5, 1.0)


def test_a_face_twice_as_thick_loses_half_the_share():
    assert water_share_lost(0.4, 0.0127, 207.0) == pytest.approx(water_share_lost(0.4, 0.00635, 207.0) / 2)
