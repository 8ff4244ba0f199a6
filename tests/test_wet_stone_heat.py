"""Wet stone and cold liquids in the heat balance: a mortar is as warm as what is really weighed into it."""

from dataclasses import replace
from pathlib import Path

import pytest

from shop_calc import units
from shop_calc.lesson.sheet.inline import sheet_text
from shop_calc.trade.batching.batch import build_batch
from shop_calc.trade.batching.mixer import mixer
from shop_calc.trade.batching.water import plan_water, temps
from shop_calc.trade.job_temperatures import temperatures_of
from shop_calc.trade.jobs.job import read_job
from shop_calc.trade.mortar.mix import build_mix
from shop_calc.trade.mortar.recipe import recipe
from shop_calc.trade.plan import make_plan
from shop_calc.trade.report import report
from shop_calc.trade.working import find

JOBS = Path(__file__).parent.parent / "data" / "jobs"
LIQUIDS = {"acrylic dispersion 50 %": 0.5, "water reducer, liquid": 0.4}  # solids by mass, data/materials.csv


def heat_of(load, at, water_c):
    """Capacity (as water) and heat of a mortar by its weigh sheet: solids 0.22 of water, ice 80 K below 0, sand saturated."""
    heat = capacity = 0.0
    for line in load.stage("mix"):
        dry, wet, temp_c = line.mass_kg, 0.0, at.powder_c
        if line.ingredient in LIQUIDS:
            dry, wet, temp_c = dry * LIQUIDS[line.ingredient], dry * (1 - LIQUIDS[line.ingredient]), at.liquids_c
        elif line.kind == "aggregate":
            dry, wet, temp_c = dry / 1.005, dry - dry / 1.005, at.sand_c
        elif line.kind in ("water", "ice"):
            dry, wet, temp_c = 0.0, dry, water_c if line.kind == "water" else -80.0
        heat, capacity = heat + (0.22 * dry + wet) * temp_c, capacity + 0.22 * dry + wet
    return capacity, heat


def weighed_c(load, at, water_c):
    capacity, heat = heat_of(load, at, water_c)
    return heat / capacity


def a_batch(at, usable_l, wanted_c):
    mix = build_mix(
        recipe("demo mortar"), stone_ratio=1.2, coarse_sand_ratio=0.6, stone_moisture_fraction=0.02,
        coarse_sand_moisture_fraction=0.04,
    )
    layers = make_plan(read_job(JOBS / "garden_bench_top.toml")).layers
    return build_batch(
        layers, mix, vessel=mixer("bucket and paddle", usable_m3=usable_l / 1000), temperatures=at, wanted_mix_temp_c=wanted_c
    )


@pytest.mark.parametrize("usable_l", [24.0, 15.0])
@pytest.mark.parametrize("wanted_c", [18.0, 12.0, 8.0])
def test_the_mortar_is_as_warm_as_its_weigh_sheet_makes_it(usable_l, wanted_c):
    """Water on wet stone is held out of the mixing water: a tenth of it here, and with ice it weighs a degree and more."""
    at = temps(26.0, sand_c=24.0, stone_c=12.0, liquids_c=15.0, tap_water_c=17.0)
    batch = a_batch(at, usable_l, wanted_c)
    last = batch.loads[-1]
    assert last.face_m3 > 0 and batch.water.method != "out of reach"
    assert weighed_c(last, at, batch.water.water_temp_c) == pytest.approx(batch.water.mix_temp_c, abs=1e-9)
    assert batch.water.mix_temp_c == pytest.approx(wanted_c, abs=1e-9)


def test_a_face_in_a_load_of_its_own_has_all_its_water_and_the_base_loads_less():
    at = temps(26.0, tap_water_c=17.0)
    batch = a_batch(at, 5.0, 14.0)
    base, face = batch.loads[0], batch.loads[-1]
    assert batch.face_alone and face.base_m3 == pytest.approx(0.0)
    assert weighed_c(face, at, batch.water.water_temp_c) == pytest.approx(14.0, abs=1e-9)
    capacity, heat = heat_of(base, at, batch.water.water_temp_c)
    assert heat / capacity > 14.5  # less cold water on as much powder
    # the base: 1.2 of stone with 2 %, 0.6 of sand with 4 % to 1 of binder, all at 26 °C
    binder = sum(line.mass_kg for line in base.stage("mix") if line.kind in ("cementitious", "pozzolan"))
    stone = binder * (0.22 * 1.8 + 1.2 * 0.02 + 0.6 * 0.04)
    assert batch.water.base_temp_c == pytest.approx((heat + stone * 26.0) / (capacity + stone), abs=1e-9)


@pytest.mark.parametrize("usable_l", [5.0, 24.0])
def test_how_far_the_base_follows_is_what_a_colder_mortar_does_to_it(usable_l):
    """5 l: the face in a load of its own, with all its water; 24 l: set aside from a load without what the stone brings."""
    cold, warm = (a_batch(temps(26.0, tap_water_c=17.0), usable_l, wanted_c).water for wanted_c in (20.0, 22.0))
    assert cold.method == warm.method == "chilled"
    degrees = (warm.base_temp_c - cold.base_temp_c) / (warm.mix_temp_c - cold.mix_temp_c)
    assert cold.base_follows == pytest.approx(degrees, rel=1e-9) == warm.base_follows


def test_print_and_sheet_say_what_the_scale_shows_where_wet_stone_leaves_the_mortar_drier():
    """What is held out for the face, 0.033 kg to each of binder in 2.4124 kg of mortar, comes back after setting aside."""
    batch = a_batch(temps(21.0, tap_water_c=15.0), 24.0, 16.0)
    assert batch.on_scale_kg == pytest.approx(batch.set_aside_kg * (1 - 0.033 / 2.4124), rel=1e-12)
    assert find(batch.working, "on_scale_kg").value == batch.on_scale_kg
    plan = replace(make_plan(read_job(JOBS / "garden_bench_top.toml")), batch=batch)
    shown, never = (units.show(mass, "mass", "si") for mass in (batch.on_scale_kg, batch.set_aside_kg))
    assert shown != never
    us = units.show(batch.on_scale_kg, "mass", "us")
    assert f"Set aside {us} ({shown}) for the face." in sheet_text(plan)
    printed = report(plan, "si")
    assert printed.count(shown) >= 2 and never not in printed


def test_dry_stone_leaves_the_water_as_it_is_without_stone():
    at = temps(21.0, tap_water_c=15.0)
    plain = plan_water(build_mix(recipe("demo mortar")), at, 16.0)
    dry = build_mix(recipe("demo mortar"), stone_ratio=1.2, coarse_sand_ratio=0.6)
    for alone in (False, True):
        stretched = plan_water(dry, at, 16.0, face_alone=alone)
        assert stretched.needed_water_temp_c == pytest.approx(plain.needed_water_temp_c, abs=1e-12)


def test_the_hot_demo_needs_ice_for_the_water_it_really_has():
    """Stone at 1.5 %, 0.5 % above saturation, brings 0.0055 kg, the dry sand drinks 0.003 kg: 0.0025 kg less of 0.2764 kg."""
    plan = make_plan(read_job(JOBS / "sink_top_hot_day.toml"))
    at = temperatures_of(plan.job)
    assert at.tap_water_c == pytest.approx(units.convert(68.0, "degF", "degC"))
    assert weighed_c(plan.batch.loads[0], at, plan.batch.water.water_temp_c) == pytest.approx(
        plan.batch.water.mix_temp_c, abs=1e-9
    )
