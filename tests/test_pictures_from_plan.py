"""Pictures of a real plan: what they show is what the trade room found."""

import numpy as np
import pytest
from picture_checks import said, unreadable

from shop_calc.lesson.pictures import from_plan
from shop_calc.lesson.pictures.cloud import FiftyDays
from shop_calc.lesson.pictures.curing import CoverChoices
from shop_calc.lesson.pictures.heat import HeatAreas
from shop_calc.lesson.pictures.scales import clock
from shop_calc.lesson.pictures.sections import LayerSections
from shop_calc.lesson.pictures.weighing import WeighBars
from shop_calc.trade.batching.water import temps
from shop_calc.trade.jobs.job import demo_job, demo_jobs, read_job
from shop_calc.trade.mortar.mix import build_mix
from shop_calc.trade.mortar.recipe import recipe
from shop_calc.trade.plan import make_plan


@pytest.fixture(scope="module", params=demo_jobs())
def plan(request):
    return make_plan(read_job(demo_job(request.param)))


def test_every_picture_of_every_demo_job_is_readable(plan):
    drawn = [
        LayerSections(from_plan.piece_plan(plan.piece, plan.layers), title=plan.job.name),
        WeighBars(from_plan.batch_rows(plan.batch)),
        *(WeighBars(from_plan.load_rows(load), load.name) for load in plan.batch.loads),
        from_plan.ribbon_of(plan.day, plan.job.name),
        FiftyDays([from_plan.opening_times(plan.day, "strip")], plan.day.water_in),
        CoverChoices(plan.cure),
    ]
    for picture in drawn:
        assert unreadable(picture.figure) == []
        assert picture.alt


def test_the_ribbon_of_a_plan_names_every_tool_in_full(plan):
    words = said(from_plan.ribbon_of(plan.day).figure)
    for stage in plan.day.stages:
        assert stage.tool in words and stage.cue in words
        assert clock(plan.day.water_in, stage.likely_from_h) in " ".join(words)


def test_rows_of_the_loads_add_up_to_the_batch(plan):
    whole = from_plan.batch_rows(plan.batch)[-1]
    loads = [from_plan.load_rows(load)[-1] for load in plan.batch.loads]
    # conservation of mass: nothing is weighed twice and nothing is left out
    assert whole.base_kg + whole.face_kg == pytest.approx(sum(load.mixed_kg for load in plan.batch.loads))
    assert sum(row.base_kg + row.face_kg for row in loads) == pytest.approx(whole.base_kg + whole.face_kg)
    assert sum(row.face_kg for row in loads) == pytest.approx(whole.face_kg)


@pytest.mark.parametrize("ice_share", [0.0, 0.3])
def test_heat_of_a_mortar_balances_about_its_temperature(ice_share):
    balance = from_plan.heat_of_mortar(build_mix(recipe("demo mortar")), temps(21.111), 5.0, 15.556, ice_share)
    assert sum(part.heat_share for part in balance.parts) == pytest.approx(1.0)
    # heat given equals heat taken, ice with its melting as 80 K
    left = sum(part.heat_share * (part.temp_c - balance.mix_temp_c) for part in balance.parts)
    assert left == pytest.approx(0.0, abs=0.05)
    assert HeatAreas(balance).alt.startswith("Heat balance")


def test_opening_times_stand_in_order_and_unknown_stages_are_refused(plan):
    times = from_plan.opening_times(plan.day, "first_steel", "today")
    assert times.marks_h[0] < times.marks_h[1] < times.marks_h[2]
    assert np.sum(times.weight) == pytest.approx(1.0)
    with pytest.raises(ValueError, match="stage"):
        from_plan.opening_times(plan.day, "lunch")
