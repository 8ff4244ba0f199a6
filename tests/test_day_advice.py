"""What a job hands to its day, and from which hour, thickness and heat on the day is warned of."""

import copy
import tomllib
from datetime import datetime, timedelta
from types import SimpleNamespace

import numpy as np
import pytest
from demo_plans import NAMES, demo_plan

from shop_calc.trade.jobs.job import check_job, demo_job
from shop_calc.trade.plan import make_plan
from shop_calc.trade.plan_advice import day_advice
from shop_calc.trade.problems import Problems

BENCH = tomllib.loads(demo_job("garden_bench_top").read_text(encoding="utf-8"))
WATER = datetime(2026, 5, 4, 8)


def said_of(
    *, last="2026-05-04T18:00", air=(21.0,), wind=(0.0,), thick_m=0.0381, base_m=0.03175, face_h=3.0, deadline_h=4.0,
    drop_m=0.0, late=0.0,
):  # fmt: skip
    stages = {
        "face": SimpleNamespace(likely_from_h=face_h, deadline_h=deadline_h),
        "last_steel": SimpleNamespace(likely_to_h=(datetime.fromisoformat(last) - WATER).total_seconds() / 3600),
    }
    room = SimpleNamespace(air_temp_c=air, wind_m_s=wind)
    day = SimpleNamespace(
        crowded=(), stage=stages.__getitem__, water_in=WATER, clock=lambda hour: WATER + timedelta(hours=hour),
        weight=np.array([late, 1.0 - late]),
        samples=SimpleNamespace(
            inputs=SimpleNamespace(room=room, thickness_m=thick_m, base_depth_m=base_m, standing_m=base_m, drop_m=drop_m),
            open_h={"face": np.array([5.0, 3.0])}, deadline_h={"face": np.array([4.0, 4.0])},
        ),
    )  # fmt: skip
    return " ".join(line.text for line in day_advice(day))


@pytest.mark.parametrize(
    ("entries", "words", "told"),
    [
        ({"last": "2026-05-04T20:59"}, "fall into the night", False),
        ({"last": "2026-05-04T21:00"}, "fall into the night", True),
        ({"last": "2026-05-05T03:00"}, "fall into the night", True),
        # setting.VALID_TEMP_C, 5 to 30 °C, judgement
        ({"air": (21.0, 30.0)}, "clock is rough", False),
        ({"air": (21.0, 30.1)}, "Above 30 °C (86 °F) the clock is rough", True),
        ({"air": (21.0, 5.0)}, "clock is rough", False),
        ({"air": (4.9, 21.0)}, "Below 41 °F (5 °C) the clock is rough", True),
        # an hour of rest from 150 Pa at 0.5 Pa/s is 1950 Pa: 2 x 1950 / (1.5 x 2250 x 9.80665) = 117.84 mm of base
        ({"base_m": 0.1178}, "So deep a base", False),
        ({"base_m": 0.1179}, "So deep a base", True),
        ({"air": (21.0, 0.1)}, "into frost", False),
        ({"air": (21.0, 0.0)}, "into frost", True),
        ({"face_h": 4.0, "deadline_h": 4.0}, "too stiff", False),
        ({"face_h": 4.1, "deadline_h": 4.0}, "too stiff", True),
        ({"face_h": 4.1, "deadline_h": 4.0, "drop_m": 0.05}, "too stiff", False),
        ({"face_h": 4.1, "deadline_h": 4.0, "drop_m": 0.05}, "dropped edge does not stand by itself", True),
        # a fifth of the days, a judgement
        ({"late": 0.19}, "may not stand by itself", False),
        ({"late": 0.20}, "of so thick a piece may not stand by itself", True),
        ({"late": 0.20, "drop_m": 0.05}, "of the dropped edge may not stand by itself", True),
        ({"face_h": 4.1, "deadline_h": 4.0, "late": 0.9}, "may not stand by itself", False),
        # Biot number (h d/2)/k above 0.3, a judgement; k 1.8 W/m/K. At 5 m/s, 18 km/h, Menzel's 0.315 (0.253 + 0.060 18) is
        # 0.42 kg/m2/h/kPa, which by 66.5 Pa/K and 2.45 MJ/kg is 19.0 W/m2/K; radiation 5.7: 2 0.3 1.8/24.7 = 43.7 mm
        ({"wind": (0.0, 5.0), "thick_m": 0.0434}, "Feel the middle", False),
        ({"wind": (5.0, 0.0), "thick_m": 0.0440}, "Feel the middle", True),
    ],
)
def test_the_day_is_warned_of_from_its_limits_on(entries, words, told):
    assert (words in said_of(**entries)) is told


@pytest.mark.parametrize("name", NAMES)
def test_the_day_begins_with_what_the_job_and_its_loads_say(name):
    plan = demo_plan(name)
    inputs, loads = plan.day.samples.inputs, plan.batch.loads
    assert inputs.base_loads_h == tuple(load.water_in_offset_h for load in loads if load.base_m3)
    assert inputs.face_load_h == max(load.water_in_offset_h for load in loads if load.face_m3)
    entries = tomllib.loads(demo_job(name).read_text(encoding="utf-8"))
    start = entries["day"]["water_in"]
    hours = [(row["from"] - start) / timedelta(hours=1) for row in entries["room"]]
    assert inputs.room.from_h == pytest.approx(hours, rel=1e-12)


@pytest.mark.parametrize("minutes", [5, 20, 45])
def test_minutes_of_a_load_are_minutes(minutes):
    entries = copy.deepcopy(BENCH)
    entries["mixer"]["minutes_per_load"] = minutes
    assert make_plan(check_job(entries)).day.samples.inputs.minutes_per_load == pytest.approx(minutes, rel=1e-12)


def test_an_open_face_never_loses_more_than_the_water_of_the_whole_piece():
    # 3/4 in in a desert wind: what the air could take in a night is far more than there is in the piece, which is the
    # water of a cubic metre of mortar times the mortar of face and base (its share phi), over the top
    entries = copy.deepcopy(BENCH)
    entries["piece"]["thickness"] = "3/4 in"
    entries["room"] = [dict(entries["room"][0], air="95 F", humidity=10, wind="20 mph")]
    plan = make_plan(check_job(entries))
    water = plan.mix.total_water_kg / plan.mix.mortar_m3
    mortar_m3 = plan.layers.face_m3 + plan.mix.phi * plan.layers.core_m3
    assert plan.cure.choice("open").bound_kg_m2 == pytest.approx(water * mortar_m3 / plan.layers.top_area_m2, rel=1e-9)


@pytest.mark.parametrize(("count", "kept"), [(60, 60), (61, 61), (70, 61)])
def test_more_than_sixty_problems_at_once_are_counted(count, kept):
    # more nobody reads; the last line counts the rest
    lines = Problems([f"line {number}" for number in range(count)]).lines
    assert len(lines) == kept
    assert lines[-1] == ("line 59" if count == 60 else f"... and {count - 60} more like these")
