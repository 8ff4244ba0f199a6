"""Measured records of setting, stiffening and drying beside the models, with the misses as they are.

Nothing here is tuned: a number that changes means a model or a record has changed.
"""

import csv
from pathlib import Path

import numpy as np
import pytest

from shop_calc.science import build_up
from shop_calc.science.activation_energy import (
    fit_activation_energy_from_rates_j_mol,
    fit_activation_energy_j_mol,
)
from shop_calc.science.evaporation import menzel_rate_kg_m2_h
from shop_calc.science.set_records import FEWEST_READINGS, fit_penetration, initial_set_from_vicat_h
from shop_calc.science.setting import rate_factor
from shop_calc.units import convert

OPEN = Path(__file__).parents[1] / "data" / "open"
PSI_PA = 6894.757
E_DEFAULT_J_MOL = 36000.0
E_BAND_J_MOL = (28e3, 47e3)


def column(name, *heads, **only):
    """Columns of a data file as arrays, of the rows whose cells are as asked."""
    with open(OPEN / name, encoding="utf-8", newline="") as file:
        rows = [row for row in csv.DictReader(file) if all(row[k] == v for k, v in only.items())]
    assert rows, f"no such rows in {name}"
    return [np.array([float(row[head]) for row in rows]) for head in heads]


# A general table of set times against temperature, 30 to 100 °F


def set_times():
    temp_f, hours = column("set_time_temperature.csv", "temp_f", "set_time_h")
    return temp_f, np.array([convert(value, "F", "C") for value in temp_f]), hours


def test_the_default_energy_is_good_in_the_cool_and_too_late_in_the_heat():
    temp_f, temp_c, hours = set_times()
    at_70 = convert(70, "F", "C")
    ours = hours[temp_f == 70] / rate_factor(temp_c, E_DEFAULT_J_MOL, at_70)
    miss = dict(zip(temp_f, ours / hours - 1, strict=True))
    assert all(abs(miss[f]) < 0.05 for f in (40, 50, 60, 70))
    assert miss[30] == pytest.approx(0.05, abs=0.005)
    assert [miss[f] for f in (80, 90, 100)] == pytest.approx([0.14, 0.32, 0.64], abs=0.005)


def test_from_50_to_90_f_one_energy_of_the_band_holds_within_fifteen_percent():
    temp_f, temp_c, hours = set_times()
    shop = (temp_f >= 50) & (temp_f <= 90)
    energy = fit_activation_energy_j_mol(temp_c[shop], hours[shop])
    scaled = hours[shop] * rate_factor(temp_c[shop], energy)
    miss = np.exp(np.mean(np.log(scaled))) / scaled - 1
    assert E_BAND_J_MOL[0] < energy < E_BAND_J_MOL[1]
    assert np.all(np.abs(miss) < 0.10)


def test_doubling_for_twenty_degrees_is_rough_at_the_ends_of_the_table():
    temp_f, _, hours = set_times()
    miss = dict(zip(temp_f, 6 * 2 ** ((70 - temp_f) / 20) / hours - 1, strict=True))
    assert all(abs(miss[f]) < 0.135 for f in (50, 60, 70, 80, 90))
    assert (miss[30], miss[100]) == pytest.approx((0.26, 0.27), abs=0.01)


# Heat of one portland cement, hours to reach a heat, 20 to 60 °C

ENERGY_BY_HEAT = {12.5: 21.7, 25: 28.1, 50: 33.2, 75: 36.1, 100: 36.7, 150: 38.8, 200: 40.5}  # kJ/mol


def hours_to_heat(heat_j_g):
    return column("heat_of_one_cement.csv", "temp_c", "time_h", heat_j_g=f"{heat_j_g:g}")


@pytest.mark.parametrize("heat_j_g, kj_mol", ENERGY_BY_HEAT.items())
def test_the_energy_of_a_cement_grows_with_the_heat_it_has_given(heat_j_g, kj_mol):
    temp_c, hours = hours_to_heat(heat_j_g)
    energy = fit_activation_energy_j_mol(temp_c[temp_c <= 40], hours[temp_c <= 40])
    assert energy / 1000 == pytest.approx(kj_mol, abs=0.05)


def test_the_default_energy_misses_one_cement_by_this_much():
    at_30, at_40 = {}, {}
    for heat_j_g in ENERGY_BY_HEAT:
        temp_c, hours = hours_to_heat(heat_j_g)
        ours = hours[0] / rate_factor(temp_c, E_DEFAULT_J_MOL, temp_c[0])
        _, at_30[heat_j_g], at_40[heat_j_g] = (ours / hours - 1)[:3]
    assert (min(at_30.values()), max(at_30.values())) == pytest.approx((-0.06, 0.15), abs=0.005)
    assert at_40[12.5] == pytest.approx(-0.315, abs=0.005)  # too early where setting begins
    assert at_40[25] == pytest.approx(-0.19, abs=0.005)
    assert at_40[200] == pytest.approx(0.12, abs=0.005)


def test_no_fixed_lag_explains_the_early_heat_at_every_temperature():
    # the lag that does not scale and would make the default energy right for the first 25 J/g
    lags = {}
    for heat_j_g in (12.5, 25):
        temp_c, hours = hours_to_heat(heat_j_g)
        share = 1 / rate_factor(temp_c, E_DEFAULT_J_MOL, temp_c[0])
        lags[heat_j_g] = ((hours - hours[0] * share)[1:3] / (1 - share[1:3])).tolist()
    assert lags[12.5] == pytest.approx([0.36, 1.03], abs=0.01)  # at 30 and at 40 °C
    assert lags[25] == pytest.approx([-0.18, 0.73], abs=0.01)


# Peaks of the heat rate of pastes with slag, 10, 20 and 35 °C

PEAKS = {"0.00": (30.0, 37.3), "0.30": (31.2, 36.8), "0.50": (31.4, 36.5), "0.85": (49.6, 49.8)}  # kJ/mol


@pytest.mark.parametrize("slag, energies", PEAKS.items())
def test_rates_and_times_of_heat_peaks_give_these_energies(slag, energies):
    temp_c, hours, rates = column(
        "slag_heat_rate_peaks.csv", "temp_c", "peak_time_h", "peak_rate_j_g_h", slag_fraction=slag
    )
    ours = (
        fit_activation_energy_j_mol(temp_c, hours) / 1000,
        fit_activation_energy_from_rates_j_mol(temp_c, rates) / 1000,
    )
    assert ours == pytest.approx(energies, abs=0.06)


def test_the_default_energy_moves_the_peak_of_portland_paste_by_this_much():
    temp_c, hours = column("slag_heat_rate_peaks.csv", "temp_c", "peak_time_h", slag_fraction="0.00")
    miss = hours[1] / rate_factor(temp_c, E_DEFAULT_J_MOL, 20.0) / hours - 1
    assert miss == pytest.approx([0.03, 0.0, -0.16], abs=0.005)


def test_collected_energies_lie_in_the_band_but_for_very_much_slag():
    with open(OPEN / "activation_energies.csv", encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    energies = {row["what"]: 1000 * float(row["activation_energy_kj_mol"]) for row in rows}
    outside = [what for what, energy in energies.items() if not E_BAND_J_MOL[0] <= energy <= E_BAND_J_MOL[1]]
    assert outside == ["heat rate, 85 % slag"]
    pastes = [float(row["activation_energy_kj_mol"]) for row in rows if row["what"].startswith("cement 115")]
    assert np.mean(pastes) == pytest.approx(38.2, abs=0.05)


# Static yield stress of a paste at rest


def test_stiffening_at_rest_slows_so_that_five_minutes_do_not_foretell_seventeen():
    rest_s, stress_pa = column("yield_stress_at_rest.csv", "rest_s", "static_yield_stress_pa")
    slope, level = np.polyfit(rest_s, stress_pa, 1)
    assert (slope, level) == pytest.approx((1.52, 17), abs=0.5)
    assert np.corrcoef(rest_s, stress_pa)[0, 1] == pytest.approx(0.98, abs=0.005)
    first = rest_s <= 300
    early_slope, early_level = np.polyfit(rest_s[first], stress_pa[first], 1)
    late_slope = (stress_pa[-1] - stress_pa[first][-1]) / (rest_s[-1] - rest_s[first][-1])
    assert (early_slope, late_slope) == pytest.approx((2.4, 1.24), abs=0.03)
    carried_pa = build_up.yield_stress_linear_pa(rest_s[-1], max(early_level, 0.0), early_slope) + min(early_level, 0.0)
    assert carried_pa / stress_pa[-1] - 1 == pytest.approx(0.57, abs=0.005)


def test_exponential_growth_gains_nothing_on_this_paste():
    rest_s, stress_pa = column("yield_stress_at_rest.csv", "rest_s", "static_yield_stress_pa")

    def scatter_pa(shape):
        table = np.column_stack([np.ones_like(rest_s), shape])
        numbers = np.linalg.lstsq(table, stress_pa, rcond=None)[0]
        return np.sqrt(np.mean((table @ numbers - stress_pa) ** 2))

    straight = scatter_pa(rest_s)
    for time_constant_s in (600, 1800, 3600, 6000, 20000):
        curved = build_up.yield_stress_exponential_pa(rest_s, 0.0, 1.0, float(time_constant_s))
        assert scatter_pa(curved) > straight


def test_the_paste_stiffens_faster_than_the_classes_for_concrete():
    rest_s, stress_pa = column("yield_stress_at_rest.csv", "rest_s", "static_yield_stress_pa")
    assert np.polyfit(rest_s, stress_pa, 1)[0] > 1.0  # Pa/s, top of the default band of concrete


# A thin fresh paste drying on one face


def test_a_thin_paste_dries_as_if_still_air_moved_at_one_to_three_km_h():
    ratio, mm, temp_c, rh, hours, lost = column(
        "thin_paste_drying.csv",
        *("water_cement_ratio", "thickness_mm", "temp_c", "rh_fraction", "duration_h", "water_lost_fraction"),
    )
    water_kg_m3 = ratio / (1 / 3150 + ratio / 1000)
    measured = lost * water_kg_m3 * mm / 1000 / hours
    assert measured == pytest.approx([0.146, 0.182], abs=0.0005)
    still, slow, brisk = (menzel_rate_kg_m2_h(temp_c[0], temp_c[0], rh[0], v / 3.6) for v in (0, 1, 2))
    assert (still, slow, brisk) == pytest.approx((0.112, 0.139, 0.165), abs=0.0005)
    assert still < measured.min()
    speed_km_h = (measured - still) / (slow - still)
    assert speed_km_h == pytest.approx([1.27, 2.63], abs=0.02)


# One penetration record, as a forecast


def record():
    minutes, psi = column("penetration_record.csv", "time_min", "penetration_resistance_psi")
    return minutes, psi * PSI_PA


def crossing_min(minutes, resistance_pa, psi):
    """When the record itself crosses, straight on log-log paper."""
    return np.exp(np.interp(np.log(psi * PSI_PA), np.log(resistance_pa), np.log(minutes)))


def forecast_miss_min(which):
    """Forecast less record, minutes, at initial and final set."""
    minutes, resistance_pa = record()
    fit = fit_penetration(minutes[which] / 60, resistance_pa[which])
    return (
        60 * fit.initial_set_h - crossing_min(minutes, resistance_pa, 500),
        60 * fit.final_set_h - crossing_min(minutes, resistance_pa, 4000),
    )


def test_the_whole_record_follows_the_power_law():
    minutes, resistance_pa = record()
    fit = fit_penetration(minutes / 60, resistance_pa)
    level = np.log10(500) - fit.exponent * np.log10(60 * fit.initial_set_h)
    assert (level, fit.exponent, fit.correlation) == pytest.approx((-18.4079, 7.9804, 0.99744), abs=0.0005)
    assert (60 * fit.initial_set_h, 60 * fit.final_set_h) == pytest.approx((441.4, 572.8), abs=0.05)


def test_a_forecast_from_three_readings_may_miss_final_set_by_more_than_an_hour():
    assert forecast_miss_min(slice(0, 3)) == pytest.approx((-7.2, -3.9), abs=0.05)
    assert forecast_miss_min(slice(1, 4)) == pytest.approx((11.7, 77.9), abs=0.05)


def test_a_forecast_from_five_readings_misses_by_minutes():
    assert forecast_miss_min(slice(0, FEWEST_READINGS)) == pytest.approx((-1.3, 12.8), abs=0.05)


# Vicat records

VICAT_INITIAL_MIN = {"A": 175.0, "B": 121.25, "C": 75.0}


@pytest.mark.parametrize("name, minutes", VICAT_INITIAL_MIN.items())
def test_initial_set_is_read_off_each_vicat_record(name, minutes):
    time_min, depth_mm = column("vicat_records.csv", "time_min", "penetration_mm", record=name)
    assert 60 * initial_set_from_vicat_h(time_min / 60, depth_mm / 1000) == pytest.approx(minutes, abs=0.005)
