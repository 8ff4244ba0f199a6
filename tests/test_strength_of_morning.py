"""Strength by the morning: both curves, their references, the night that comes before, covers, cements."""

import copy
import math

import numpy as np
import pytest
from demo_plans import BENCH, NAMES, bench, demo_plan, demo_plans
from scipy.integrate import solve_ivp

from shop_calc import defaults
from shop_calc.science import maturity, setting, slab_heat, strength
from shop_calc.trade.after.handling import slow_binder
from shop_calc.trade.after.later_temps import LAST_H, temps_after
from shop_calc.trade.after.strength_of_morning import CEMENTS, harden, piece_hardening, strength_28
from shop_calc.trade.jobs.job import check_job
from shop_calc.trade.jobs.job_fields import CEMENTS as CEMENT_CHOICES
from shop_calc.trade.mortar.mix import build_mix
from shop_calc.trade.mortar.recipe_file import recipe_from_table
from shop_calc.trade.plan import make_plan
from shop_calc.trade.timeline.room import Room

PSI = 6894.757293168361


@pytest.fixture(params=NAMES)
def plan(request):
    return demo_plan(request.param)


def test_the_morning_is_the_lower_of_both_curves_and_says_which(plan):
    for row in plan.handling.mornings:
        assert row.likely_pa == pytest.approx(min(row.aci_pa, row.en_pa))
        assert row.lower == ("ACI 209" if row.aci_pa < row.en_pa else "EN 1992")
        assert row.low_pa < row.likely_pa < row.high_pa


def test_the_age_of_the_morning_is_that_of_the_set_clock_with_its_reference_moved(plan):
    energy = defaults.si("activation_energy")
    moved = float(setting.rate_factor(defaults.si("reference_temp"), energy, defaults.si("strength_reference_temp")))
    for row in plan.handling.mornings:
        there = plan.cure.choice(row.key)
        # The night of the covers is stepped to up to 15 minutes after the morning.
        assert row.aci_age_h == pytest.approx(there.morning_age_h * moved, rel=6e-3)
        assert row.temp_c == pytest.approx(there.morning_temp_c, abs=0.02)


def test_every_maturity_names_its_reference_or_datum():
    # 14 °F is -10 °C and not 0 °C: without the datum the number means nothing.
    words = demo_plan("garden_bench_top").handling.morning.words()
    assert "23 °C (ACI 209)" in words and "20 °C (EN 1992)" in words
    assert "datum of 14 °F (-10 °C)" in words.replace("−", "-")
    datum_zero = maturity.temperature_time_c_h(24.0, 10.0, 0.0)
    assert datum_zero == 240 and maturity.temperature_time_c_h(24.0, 10.0, -10.0) == 480


def test_the_temperature_time_factor_of_the_morning_is_the_area_over_the_datum():
    handling = demo_plan("garden_bench_top").handling
    hard, row = handling.hardening, handling.morning
    until = np.linspace(hard.time_h[0], row.hour_h, 20001)
    area = np.trapezoid(np.interp(until, hard.time_h, hard.temp_c) + 10.0, until)
    assert row.maturity_c_h == pytest.approx(area, rel=1e-5)


def test_at_constant_temperature_the_curves_are_the_published_ones():
    hours = np.linspace(0.0, 672.0, 2689)
    hard = harden(hours, np.full_like(hours, 23.0))
    # ACI 209R-92 Table 2.2.1, moist Type I, from memory: 0.46 at 3 d, 0.70 at 7 d.
    assert hard.ratios_at(72.0)[0] == pytest.approx(0.46, abs=0.01)
    assert hard.ratios_at(168.0)[0] == pytest.approx(0.70, abs=0.01)
    # EN 1992 runs faster at 23 °C than at 20 °C; the same through its own formula.
    age = float(maturity.en_adjusted_age_h(72.0, 23.0))
    assert hard.ratios_at(72.0)[1] == pytest.approx(float(strength.en_strength_ratio(age, 0.25)), rel=1e-6)


def test_no_strength_counts_before_final_set():
    hours = np.linspace(0.0, 48.0, 481)
    hard = harden(hours, np.full_like(hours, 21.0))
    # 4000 psi of the set clock: 3.4 h * 8^(1/7)
    assert hard.final_set_h == pytest.approx(3.4 * 8 ** (1 / 7), abs=0.01)
    assert hard.ratio_at(hard.final_set_h - 0.05) == 0 < hard.ratio_at(hard.final_set_h + 0.05)
    never = harden(np.array([0.0, 24.0]), np.array([-20.0, -20.0]))
    assert math.isnan(never.final_set_h) and never.ratio_at(24.0) == 0 and never.hour_at(0.1) is None


def test_hour_and_share_are_each_others_inverse():
    hard = demo_plan("garden_bench_top").handling.hardening
    for share in (0.2, 0.5, 0.8):
        assert hard.ratio_at(hard.hour_at(share)) == pytest.approx(share, abs=2e-3)
    assert hard.hour_at(1.5) is None


@pytest.mark.parametrize("cement", CEMENTS)
def test_cements_keep_their_order_and_unknown_ones_are_refused(cement):
    assert set(CEMENTS) == set(CEMENT_CHOICES)
    hours = np.linspace(0.0, 96.0, 385)
    shares = {name: harden(hours, np.full_like(hours, 20.0), name).ratio_at(72.0) for name in CEMENTS}
    assert shares["rapid"] > shares["normal"] >= shares["slow"]
    with pytest.raises(ValueError, match="rapid, normal, slow"):
        harden(hours, hours, cement.upper())


def test_temperatures_after_the_morning_follow_the_heat_balance():
    room = Room((0.0, 30.0), (10.0, 4.0), (0.5, 0.5), (0.0, 2.0))
    hours, temps = temps_after(room, 0.0381, 20.0, 24.0)
    storage = defaults.si("slab_density") * defaults.si("slab_heat_capacity") * 0.0381
    fixed = defaults.si("h_radiation") + defaults.si("h_bottom")

    def slope(hour, temp):
        air, wind = (10.0, 1.5 / 3.6) if hour < 30.0 else (4.0, 2.0)
        return 3600 * (float(slab_heat.convection_w_m2_k(wind)) + fixed) / storage * (air - temp)

    for end in (27.0, 30.0, 33.0):
        middle = min(end, 30.0)
        first = solve_ivp(slope, (24.0, middle), [20.0], rtol=1e-9, atol=1e-9).y[0, -1]
        if end > 30.0:
            first = solve_ivp(slope, (30.0, end), [first], rtol=1e-9, atol=1e-9).y[0, -1]
        assert np.interp(end, hours, temps) == pytest.approx(first, abs=1e-2)
    assert hours[-1] == LAST_H and temps[-1] == pytest.approx(4.0, abs=1e-6)


def test_history_runs_through_without_a_jump():
    for plan in demo_plans():
        for key in ("open", "mist", "fabric"):
            hard = piece_hardening(plan.day, plan.cure, key)
            assert np.all(np.diff(hard.time_h) > 0)
            assert np.max(np.abs(np.diff(hard.temp_c))) < 3.0  # a hot wind on a wet face, in 15 minutes
            assert hard.time_h[0] == pytest.approx(plan.day.samples.inputs.face_load_h)


def test_a_colder_night_is_a_weaker_morning_and_a_later_move():
    warm, cold = bench(), bench()
    later = []
    for air in ("70 F", "60 F", "50 F", "42 F"):
        entries = copy.deepcopy(BENCH)
        entries["room"][1]["air"] = air
        entries["mix"]["strength_28d"] = "5000 psi"
        plan = make_plan(check_job(entries))
        later.append((plan.handling.morning.likely_pa, plan.handling.carry("ends").earliest_h))
    strengths, hours = zip(*later, strict=True)
    assert list(strengths) == sorted(strengths, reverse=True) and len(set(strengths)) == 4
    assert list(hours) == sorted(hours) and len(set(hours)) == 4
    assert warm.handling.morning.likely_pa == cold.handling.morning.likely_pa


def test_covers_that_keep_it_wet_and_closed_are_stronger_by_the_morning_than_misting():
    rows = {row.key: row for row in demo_plan("sink_top_hot_day").handling.mornings}
    assert rows["mist"].likely_pa < rows["open"].likely_pa < rows["fabric"].likely_pa


def test_strength_untested_counts_its_low_end_and_a_test_counts_itself():
    assert strength_28().counted_pa == pytest.approx(3500 * PSI)
    assert bench(mix__strength_28d="6000 psi").handling.strength.counted_pa == pytest.approx(6000 * PSI)
    assert not demo_plan("garden_bench_top").handling.strength.tested
    assert any("nobody has tested" in line.reason for line in demo_plan("garden_bench_top").handling.advice)
    with pytest.raises(ValueError, match="strength_28d"):
        bench(mix__strength_28d="50 psi")


def test_slow_binders_are_known_by_what_is_in_them_and_not_by_letters_in_a_name():
    parts = {"portland cement": 70, "fly ash": 30, "fine silica sand": {"amount": 100, "state": "oven-dry"}}
    table = {"w_cm": 0.4, "air": "3 %", "parts": parts}
    assert slow_binder(build_mix(recipe_from_table(table, "mix.recipe")))
    table["parts"] = parts | {"portland cement": 90, "fly ash": 10}
    assert not slow_binder(build_mix(recipe_from_table(table, "mix.recipe")))
