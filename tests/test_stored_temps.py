"""Powder that nobody measured: the plan says so where the shop is warmer or colder than what it counts."""

import tomllib

import pytest
from demo_plans import NAMES, demo_plan

from shop_calc import defaults
from shop_calc.trade.batching.water import plan_water, temps
from shop_calc.trade.jobs.job import check_job, demo_job
from shop_calc.trade.plan import make_plan

COUNTED_C = defaults.get("powder_temp").value
WORDS = "give powder_temp"


def planned(air_c, **materials):
    job = tomllib.loads(demo_job("garden_bench_top").read_text(encoding="utf-8"))
    job["materials"] = {"stone_moisture": "0 %", **materials}
    job["room"] = [{**row, "air": f"{air_c} C"} for row in job["room"]]
    return make_plan(check_job(job))


def said(plan):
    return [line for line in plan.advice if WORDS in line.text]


def test_powder_out_of_a_cold_shop_asks_for_warmer_water_than_planned():
    plan = planned(8.0)
    (line,) = said(plan)
    assert line.level == "act" and "69.8 °F (21 °C) is counted" in line.text and "46.4 °F (8 °C)" in line.text
    by_hand = plan_water(plan.mix, temps(8.0), plan.batch.water.wanted_mix_temp_c)
    assert line.reason.endswith(by_hand.words) and by_hand.words.startswith("Warm the mixing water to ")
    assert by_hand.water_temp_c > plan.batch.water.water_temp_c + 20


def test_what_was_measured_is_kept_where_the_rest_is_guessed():
    plan = planned(34.0, sand_temp="12 C")
    (line,) = said(plan)
    assert line.reason.endswith(
        plan_water(plan.mix, temps(34.0, sand_c=12.0), plan.batch.water.wanted_mix_temp_c).words
    )


@pytest.mark.parametrize(("apart_k", "told"), [(0.0, 0), (2.9, 0), (3.1, 1), (-2.9, 0), (-3.1, 1)])
def test_a_shop_as_warm_as_the_powder_counted_is_no_news(apart_k, told):
    assert len(said(planned(COUNTED_C + apart_k))) == told


def test_measured_powder_is_believed():
    assert not said(planned(8.0, powder_temp="21 C"))
    assert not any(said(demo_plan(name)) for name in NAMES)
