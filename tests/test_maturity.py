"""Maturity rules against the structuralcodes package, arithmetic and their own limits."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from structuralcodes.codes.ec2_2004 import _concrete_creep_and_shrinkage as en

from shop_calc.science import maturity, setting

# 24 hours of a shop: hours of each step, mean temperature (MT-4)
STEP_H = [2.0, 2.0, 4.0, 4.0, 6.0, 6.0]
STEP_C = [22.0, 24.0, 30.0, 34.0, 28.0, 22.0]

temperatures = st.floats(-15, 60)
hours = st.floats(0, 200)


@pytest.mark.parametrize("temp_c", [0.0, 5.0, 20.0, 35.0, 60.0, 80.0])
def test_en_adjusted_age_is_that_of_the_structuralcodes_package(temp_c):
    ours = maturity.en_adjusted_age_h(48.0, temp_c) / 24
    assert ours == pytest.approx(en.t_T(temp_c, 2.0), rel=1e-12)


def test_en_adjusted_age_of_steps_is_that_of_the_structuralcodes_package():
    ours = maturity.en_adjusted_age_h(STEP_H, STEP_C) / 24
    assert ours == pytest.approx(en.t_T(np.array(STEP_C), np.array(STEP_H) / 24), rel=1e-12)


def test_the_en_rule_is_an_arrhenius_factor_of_33_kj():
    # 4000 K is an activation energy of 33.3 kJ/mol; the printed 13.65 and 273 are rounded
    energy = 4000 * setting.GAS_CONSTANT_J_MOL_K
    for temp_c in (5.0, 20.0, 35.0):
        exact = setting.rate_factor(temp_c, energy, 20.0)
        assert maturity.en_rate_factor(temp_c) == pytest.approx(exact, rel=0.003)


@pytest.mark.parametrize(("datum_c", "expected"), [(0.0, 240.0), (-10.0, 480.0)])
def test_the_same_day_is_worth_twice_as_much_with_the_other_datum(datum_c, expected):
    # 24 h at 10 C; a page that calls 14 F "0 C" is off by this factor
    assert maturity.temperature_time_c_h(24.0, 10.0, datum_c) == pytest.approx(expected)


def test_the_datum_has_no_default():
    with pytest.raises(TypeError):
        maturity.temperature_time_c_h(24.0, 10.0)
    with pytest.raises(TypeError):
        maturity.age_for_maturity_h(240.0, 10.0)


def test_colder_than_the_datum_counts_nothing_and_takes_nothing_back():
    warm = maturity.temperature_time_c_h([10.0], [15.0], -5.0)
    with_frost = maturity.temperature_time_c_h([10.0, 8.0], [15.0, -12.0], -5.0)
    assert with_frost == warm == pytest.approx(200.0)


def test_steps_may_stand_in_rows():
    rows = maturity.temperature_time_c_h([STEP_H, STEP_H], [STEP_C, STEP_C[::-1]], 0.0)
    assert rows[0] == pytest.approx(648.0)
    assert rows[1] == pytest.approx(maturity.temperature_time_c_h(STEP_H, STEP_C[::-1], 0.0), rel=1e-12)
    many = maturity.en_adjusted_age_h([[1.0], [2.0]], [[10.0], [30.0]])
    one_by_one = [maturity.en_adjusted_age_h(1.0, 10.0), maturity.en_adjusted_age_h(2.0, 30.0)]
    assert many == pytest.approx(one_by_one)


def test_readings_of_a_steady_room_agree_with_one_step():
    read = maturity.sampled_temperature_time_c_h([0.0, 5.0, 24.0], [18.0, 18.0, 18.0], -10.0)
    assert read == pytest.approx(maturity.temperature_time_c_h(24.0, 18.0, -10.0), rel=1e-12)


def test_readings_that_cross_the_datum_agree_with_a_fine_sum():
    times, temps = [0.0, 3.0, 7.0, 12.0], [8.0, -9.0, -2.0, 11.0]
    fine = np.linspace(0.0, 12.0, 240_001)
    excess = np.maximum(np.interp(fine, times, temps) - 1.5, 0.0)
    ours = maturity.sampled_temperature_time_c_h(times, temps, 1.5)
    assert ours == pytest.approx(np.trapezoid(excess, fine), rel=1e-6)


def test_readings_on_the_datum_are_nothing():
    assert maturity.sampled_temperature_time_c_h([0.0, 5.0], [4.0, 4.0], 4.0) == 0.0


@given(st.floats(1, 50_000), st.floats(-9, 60))
def test_the_age_for_a_maturity_gives_it_back(wanted, temp_c):
    age = maturity.age_for_maturity_h(wanted, temp_c, -10.0)
    assert maturity.temperature_time_c_h(age, temp_c, -10.0) == pytest.approx(wanted, rel=1e-9)


@given(hours, temperatures, st.floats(0.01, 20))
def test_warmer_is_never_younger(time_h, temp_c, more_k):
    assert maturity.en_adjusted_age_h(time_h, temp_c + more_k) >= maturity.en_adjusted_age_h(time_h, temp_c)
    cool = maturity.temperature_time_c_h(time_h, temp_c, -10.0)
    assert maturity.temperature_time_c_h(time_h, temp_c + more_k, -10.0) >= cool


def test_the_linear_rule_gives_hot_curing_more_than_cold_curing_loses():
    # Materials 13 (2020) 4646: at 3 days 40 C gained 18 %, 12 C lost 11 %; the rule says +100, -40 % of age
    normal = maturity.temperature_time_c_h(72.0, 20.0, 0.0)
    assert maturity.temperature_time_c_h(72.0, 40.0, 0.0) == pytest.approx(2 * normal)
    assert maturity.temperature_time_c_h(72.0, 12.0, 0.0) == pytest.approx(0.6 * normal)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: maturity.temperature_time_c_h(-1.0, 20.0, 0.0), "length of a step"),
        (lambda: maturity.temperature_time_c_h(1.0, 2000.0, 0.0), "temperature"),
        (lambda: maturity.temperature_time_c_h(1.0, 20.0, 90.0), "datum"),
        (lambda: maturity.temperature_time_c_h(1.0, float("nan"), 0.0), "temperature"),
        (lambda: maturity.age_for_maturity_h(100.0, -11.0, -10.0), "temperature"),
        (lambda: maturity.sampled_temperature_time_c_h([3.0], [20.0], 0.0), "at least two"),
        (lambda: maturity.sampled_temperature_time_c_h([3.0, 3.0], [20.0, 21.0], 0.0), "later than"),
        (lambda: maturity.en_adjusted_age_h(1.0, 300.0), "temperature"),
    ],
)
def test_an_impossible_history_is_named(call, words):
    with pytest.raises(ValueError, match=words):
        call()
