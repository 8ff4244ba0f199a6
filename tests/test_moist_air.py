"""Moist air against IAPWS-IF97 (package iapws) and ASHRAE Fundamentals (package psychrolib)."""

import iapws
import numpy as np
import psychrolib
import pytest
from hypothesis import given
from hypothesis import strategies as st

from shop_calc.science import moist_air

psychrolib.SetUnitSystem(psychrolib.SI)
SEA_LEVEL_PA = 101325.0
TEMPS_C = (5, 10, 15, 20, 25, 30, 35, 40)
WEATHER = [(temp, rh) for temp in TEMPS_C for rh in (0.2, 0.35, 0.5, 0.7, 0.9, 1.0)]
air = st.floats(-5, 50)
humidity = st.floats(0.02, 1)


@pytest.mark.parametrize("temp_c", TEMPS_C)
def test_saturation_pressure_is_within_a_fifth_of_a_percent_of_iapws(temp_c):
    reference_pa = iapws.IAPWS97(T=temp_c + 273.15, x=0).P * 1e6
    assert moist_air.saturation_pressure_pa(temp_c) == pytest.approx(reference_pa, rel=2e-3)


def test_saturation_pressure_is_within_a_third_of_a_percent_at_the_hot_end():
    reference_pa = iapws.IAPWS97(T=50 + 273.15, x=0).P * 1e6
    assert moist_air.saturation_pressure_pa(moist_air.VALID_TEMP_C[1]) == pytest.approx(
        reference_pa, rel=3e-3
    )


@pytest.mark.parametrize("temp_c, rh", WEATHER)
def test_dew_point_is_that_of_ashrae(temp_c, rh):
    reference_c = psychrolib.GetTDewPointFromRelHum(temp_c, rh)
    if reference_c > 0:  # below, psychrolib gives the frost point
        assert moist_air.dew_point_c(temp_c, rh) == pytest.approx(reference_c, abs=0.05)


@pytest.mark.parametrize("temp_c, rh", WEATHER)
def test_wet_bulb_is_within_fifteen_hundredths_of_ashrae(temp_c, rh):
    reference_c = psychrolib.GetTWetBulbFromRelHum(temp_c, rh, SEA_LEVEL_PA)
    if reference_c > 0:  # below, psychrolib wets the bulb with ice
        assert moist_air.wet_bulb_c(temp_c, rh) == pytest.approx(reference_c, abs=0.15)


def test_the_psychrometric_constant_is_that_of_textbooks_for_100_kpa():
    heat_capacity_j_kg_k, water_to_air = 1013.0, 0.622  # FAO Irrigation and Drainage Paper 56, eq. 8
    expected = heat_capacity_j_kg_k * 100e3 / (water_to_air * moist_air.LATENT_HEAT_J_KG)
    assert pytest.approx(expected, rel=1e-3) == moist_air.PSYCHROMETRIC_PA_K


@given(air, humidity)
def test_air_cooled_to_its_dew_point_is_saturated(temp_c, rh):
    dew_c = moist_air.dew_point_c(temp_c, rh)
    if dew_c > -50:
        assert moist_air.saturation_pressure_pa(dew_c) == pytest.approx(
            moist_air.vapour_pressure_pa(temp_c, rh)
        )


@given(air, humidity)
def test_the_wet_bulb_lies_between_dew_point_and_air(temp_c, rh):
    wet_c = moist_air.wet_bulb_c(temp_c, rh)
    assert moist_air.dew_point_c(temp_c, rh) - 1e-9 <= wet_c <= temp_c + 1e-9


@given(air, humidity)
def test_the_wet_bulb_balances_heat_and_evaporation(temp_c, rh):
    wet_c = moist_air.wet_bulb_c(temp_c, rh)
    dried_pa = moist_air.saturation_pressure_pa(wet_c) - moist_air.vapour_pressure_pa(temp_c, rh)
    assert dried_pa == pytest.approx(moist_air.PSYCHROMETRIC_PA_K * (temp_c - wet_c), abs=1e-6)


def test_saturated_air_has_one_temperature():
    assert moist_air.dew_point_c(21.0, 1.0) == pytest.approx(21.0)
    assert moist_air.wet_bulb_c(21.0, 1.0) == pytest.approx(21.0)


def test_arrays_give_what_single_numbers_give():
    temp_c, rh = np.array([5.0, 20.0, 35.0]), np.array([0.3, 0.5, 0.9])
    for function in (moist_air.vapour_pressure_pa, moist_air.dew_point_c, moist_air.wet_bulb_c):
        single = [function(t, r) for t, r in zip(temp_c, rh, strict=True)]
        assert function(temp_c, rh) == pytest.approx(single, rel=1e-12)


@pytest.mark.parametrize(
    "function", [moist_air.vapour_pressure_pa, moist_air.dew_point_c, moist_air.wet_bulb_c]
)
def test_humidity_typed_in_percent_is_refused_in_plain_words(function):
    with pytest.raises(ValueError, match=r"relative humidity: 50 \(as a fraction\) given; .* at most 1"):
        function(20.0, 50.0)


def test_a_fahrenheit_figure_beyond_boiling_is_refused():
    with pytest.raises(ValueError, match="air temperature: 120"):
        moist_air.saturation_pressure_pa(120.0)


def test_bone_dry_air_has_no_dew_point():
    with pytest.raises(ValueError, match="more than 0"):
        moist_air.dew_point_c(20.0, 0.0)
