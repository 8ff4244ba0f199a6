"""The late clock: equivalent age, penetration resistance, activation energy. Single rows: data/published."""

import csv
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from shop_calc.science import setting
from shop_calc.science.activation_energy import (
    activation_energy_from_times_j_mol,
    fit_activation_energy_from_rates_j_mol,
    fit_activation_energy_j_mol,
)
from shop_calc.units import convert

OPEN = Path(__file__).parents[1] / "data" / "open"
PSI_PA = 6894.757
E_BAND_J_MOL = (28e3, 47e3)  # data/defaults.csv, activation_energy

set_time = st.floats(1, 12)
exponent = st.floats(3, 12)


def read(name):
    with open(OPEN / name, encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def celsius(fahrenheit):
    return np.array([convert(temp_f, "F", "C") for temp_f in fahrenheit])


def test_the_clock_runs_at_one_at_the_reference_temperature():
    assert setting.rate_factor(setting.REFERENCE_TEMP_C, 36000.0) == 1.0
    assert setting.rate_factor(np.array([5.0, 35.0]), 0.0) == pytest.approx([1.0, 1.0])


@given(st.floats(0, 40), st.floats(0, 40), st.floats(20e3, 60e3))
def test_two_rates_give_their_activation_energy_back(cold_c, warm_c, energy):
    if abs(cold_c - warm_c) < 0.5:
        return
    cold, warm = (1 / setting.rate_factor(temp_c, energy) for temp_c in (cold_c, warm_c))
    assert activation_energy_from_times_j_mol(cold_c, cold, warm_c, warm) == pytest.approx(energy)


def test_a_fit_to_many_temperatures_gives_the_energy_back_from_times_and_from_rates():
    temps_c = np.array([8.0, 15.0, 21.0, 28.0, 35.0])
    rates = 0.3 * setting.rate_factor(temps_c, 41234.5)
    assert fit_activation_energy_j_mol(temps_c, 1 / rates) == pytest.approx(41234.5)
    assert fit_activation_energy_from_rates_j_mol(temps_c, rates) == pytest.approx(41234.5)


def test_trade_rules_lie_inside_the_band_of_the_default():
    third_f = activation_energy_from_times_j_mol(*np.array([celsius([60])[0], 4 / 3, celsius([70])[0], 1.0]))
    halves = [
        activation_energy_from_times_j_mol(cold, 2.0, warm, 1.0)
        for cold, warm in (celsius([50, 70]), celsius([70, 90]))
    ]
    assert third_f == pytest.approx(36570, abs=50)
    assert halves == pytest.approx([43200, 46600], abs=100)
    assert all(E_BAND_J_MOL[0] < energy < E_BAND_J_MOL[1] for energy in (third_f, *halves))


def test_waits_to_a_footprint_follow_one_activation_energy():
    rows = read("footprint_waits.csv")
    temps_c = celsius([float(row["temp_f"]) for row in rows])
    waits_h = np.array([float(row["wait_h"]) for row in rows])
    energy = fit_activation_energy_j_mol(temps_c, waits_h)
    at_reference_h = np.exp(np.mean(np.log(waits_h * setting.rate_factor(temps_c, energy))))
    ours_h = at_reference_h / setting.rate_factor(temps_c, energy)
    assert ours_h == pytest.approx([4.284, 2.704, 1.765], abs=0.0006)
    assert ours_h == pytest.approx(waits_h, rel=0.02)  # 10 % was asked for
    assert E_BAND_J_MOL[0] < energy < E_BAND_J_MOL[1]


def test_a_trapezoid_of_a_warming_mix_is_close_to_the_integral():
    def temp_c(hour):
        return 21.0 - 5.0 * np.exp(-hour / 1.5)

    times = np.linspace(0, 4, 17)
    exact, _ = quad(lambda hour: setting.rate_factor(temp_c(hour), 36000.0), 0, 4)
    assert setting.equivalent_age_h(times, temp_c(times), 36000.0)[-1] == pytest.approx(exact, rel=3e-4)


def test_readings_of_several_slabs_are_taken_column_by_column():
    times, temps = [0.0, 0.5, 2.0], np.array([[16.0, 30.0], [18.0, 28.0], [21.0, 24.0]])
    together = setting.equivalent_age_h(times, temps, 36000.0)
    assert together.shape == (3, 2)
    for column in range(2):
        assert together[:, column] == pytest.approx(setting.equivalent_age_h(times, temps[:, column], 36000.0))
    assert np.all(together[0] == 0)


def test_at_the_reference_temperature_equivalent_age_is_the_clock():
    times = np.array([0.0, 0.25, 1.0, 3.5])
    assert setting.equivalent_age_h(times, np.full(4, 21.0), 36000.0) == pytest.approx(times)
    assert setting.equivalent_age_of_periods_h([1.0, 2.5], [21.0, 21.0], 36000.0) == pytest.approx(3.5)


def test_periods_and_readings_agree_when_the_temperature_stands_still():
    periods = setting.equivalent_age_of_periods_h([2.0], [30.0], 36000.0)
    assert setting.equivalent_age_h([0.0, 2.0], [30.0, 30.0], 36000.0)[-1] == pytest.approx(periods)


@given(st.floats(0.5, 10), set_time, exponent)
def test_age_and_resistance_are_inverse(age_h, initial_h, b):
    resistance_pa = setting.penetration_resistance_pa(age_h, initial_h, b)
    assert setting.age_at_resistance_h(resistance_pa, initial_h, b) == pytest.approx(age_h)


@given(set_time, exponent)
def test_the_two_set_times_are_500_and_4000_psi(initial_h, b):
    final_h = setting.age_at_resistance_h(4000 * PSI_PA, initial_h, b)
    assert setting.penetration_resistance_pa(initial_h, initial_h, b) == pytest.approx(500 * PSI_PA, rel=1e-6)
    assert setting.exponent_from_set_times(initial_h, final_h) == pytest.approx(b, rel=1e-6)


def test_the_default_band_of_the_exponent_covers_common_set_times():
    assert setting.exponent_from_set_times(1.0, np.array([1.46, 1.28])) == pytest.approx([5.5, 8.4], abs=0.05)


def test_the_isothermal_strip_window_holds_the_practice_of_two_and_a_half_hours():
    window = setting.age_at_resistance_h(np.array([10, 40]) * PSI_PA, 4.1, 7.0)
    assert window == pytest.approx([2.34, 2.86], abs=0.005)
    assert window[0] < 2.5 < window[1]


def test_nothing_has_set_at_time_zero():
    assert setting.penetration_resistance_pa(0.0, 3.4, 7.0) == 0


@pytest.mark.parametrize(
    "call, words",
    [
        (lambda: setting.rate_factor(210.0, 36000.0), "mix temperature: 210 °C"),
        (lambda: setting.rate_factor(21.0, -1.0), "activation energy: -1"),
        (lambda: setting.penetration_resistance_pa(-1.0, 3.4, 7.0), "equivalent age: -1 h"),
        (lambda: setting.age_at_resistance_h(1e5, 0.0, 7.0), "initial set: 0 h"),
        (lambda: setting.exponent_from_set_times(4.0, 4.0), "final set over initial set: 1"),
        (lambda: setting.equivalent_age_h([1.0, 0.0], [20.0, 20.0], 36000.0), "time between readings: -1 h"),
        (lambda: activation_energy_from_times_j_mol(20.0, 2.0, 20.0, 1.0), "must differ from the first"),
        (lambda: fit_activation_energy_j_mol([20.0], [2.0]), "1 values for 1 temperatures"),
        (lambda: fit_activation_energy_j_mol([20.0, 30.0], [2.0, 0.0]), "time: 0"),
        (lambda: fit_activation_energy_j_mol([20.0, 30.0, 40.0], [2.0, 1.0]), "2 values for 3 temperatures"),
    ],
)
def test_impossible_entries_are_named(call, words):
    with pytest.raises(ValueError, match=words):
        call()
