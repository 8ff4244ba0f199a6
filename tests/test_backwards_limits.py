"""The backward question at its ends: what it tries, what it counts from, and how it says an hour."""

import re
from dataclasses import replace
from datetime import datetime, timedelta

import numpy as np
import pytest
from demo_plans import demo_plan

from shop_calc import defaults
from shop_calc.trade.plan_backwards import backwards_lines
from shop_calc.trade.timeline import backwards
from shop_calc.trade.timeline.backwards import work_backwards
from shop_calc.trade.timeline.day import DayInputs, plan_day
from shop_calc.trade.timeline.room import steady_room

EIGHT = datetime(2026, 5, 4, 8)
JOB = DayInputs(EIGHT, steady_room(21.0, 0.50, 0.0), 16.0, 0.0381, 0.03175, 0.58)
BARELY = replace(JOB, base_mix_temp_c=17.0, base_follows=0.7)
COLD = steady_room(-4.0, 0.50, 0.0)
NOON = datetime(2026, 5, 4, 12)


def test_a_start_is_looked_for_within_a_day_before_the_hour_and_never_at_it():
    asked = []

    def tried(inputs):
        asked.append((inputs.water_in - NOON).total_seconds() / 3600)
        return plan_day(inputs)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(backwards, "plan_day", tried)
        found = work_backwards(replace(JOB, room=COLD, bands={"set_time_initial": (7.0, 8.0, 9.0)}), "stop", NOON)
    starts = [at for at in asked if at != -4.0]  # but for the plan as it stands
    assert min(starts) == -24.0 and max(starts) == -1.0
    assert found.latest_start_h is None and "No start of the 24 hours" in found.answer[1]


def test_in_a_steady_room_a_face_that_gets_its_water_later_needs_an_earlier_start_by_as_much():
    plain = work_backwards(JOB, "first_steel", NOON)
    later = work_backwards(replace(JOB, face_load_h=0.75), "first_steel", NOON)
    assert later.planned_h == pytest.approx(plain.planned_h + 0.75, abs=1e-9)
    assert later.latest_start_h == pytest.approx(plain.latest_start_h - 0.75, abs=1e-9)


def test_two_days_before_or_after_can_be_asked_for_and_a_minute_more_cannot():
    for days in (2, -2):
        assert work_backwards(JOB, "strip", EIGHT + timedelta(days=days)).by_h == 24.0 * days
        with pytest.raises(ValueError, match="within two days"):
            work_backwards(JOB, "strip", EIGHT + timedelta(days=days, minutes=days / 2))


@pytest.mark.parametrize("minute", range(0, 60, 7))
def test_hours_are_said_to_the_minute_on_the_clock_and_the_latest_start_not_after_it(minute):
    by = NOON + timedelta(minutes=minute)
    found = work_backwards(replace(JOB, thickness_m=0.034 + 0.0003 * minute), "strip", by)
    assert f"about {EIGHT + timedelta(minutes=round(found.planned_h * 60)):%H:%M};" in found.answer[0]
    said = re.search(r"water in at (\d\d:\d\d) at the latest", found.answer[1]).group(1)
    start_min = found.latest_start_h * 60
    assert 0 <= start_min - (datetime.strptime(said, "%H:%M") - datetime(1900, 1, 1, 8)).total_seconds() / 60 + 0.2 < 1


def test_mixes_from_5_to_32_degrees_are_tried():
    ends = (BARELY.mixed_at(5.0), BARELY.mixed_at(32.0))  # °C: the coldest of the entry, common practice
    slow_h, fast_h = (plan_day(inputs).likely_h("strip") for inputs in ends)
    for hour_h, mix_c in ((slow_h + 0.02, 5.0), (fast_h - 0.02, None)):
        assert work_backwards(BARELY, "strip", EIGHT + timedelta(hours=hour_h)).mix_temp_c == mix_c
    for hour_h, near_c in ((slow_h - 0.02, 5.0), (fast_h + 0.02, 32.0)):
        found_c = work_backwards(BARELY, "strip", EIGHT + timedelta(hours=hour_h)).mix_temp_c
        assert found_c == pytest.approx(near_c, abs=1.0) and 5.0 < found_c < 32.0


def test_a_base_of_hot_or_icy_stone_stays_within_what_a_day_takes_while_mixes_are_tried():
    # 0.7 degrees for one: 38 + 0.7 (32 - 16) = 49.2 and 3 - 0.7 (16 - 5) = -4.7; a day takes 0 to 40 °C
    for base_c, mix_c, kept_c in ((38.0, 32.0, 40.0), (3.0, 5.0, 0.0), (20.0, 26.0, 27.0)):
        tried = replace(BARELY, base_mix_temp_c=base_c).mixed_at(mix_c)
        assert (tried.mix_temp_c, tried.base_temp_c) == (mix_c, pytest.approx(kept_c, abs=1e-9))


def test_the_water_for_the_coolest_mixes_is_said_too():
    entry = defaults.get("wanted_mix_temp")
    assert entry.minimum <= backwards.COLDEST_MIX_C and entry.maximum >= backwards.WARMEST_MIX_C  # else it is refused
    plan = demo_plan("round_table_cold_shop")
    slow_h = plan_day(plan.day.samples.inputs.mixed_at(5.0)).likely_h("strip")
    lines = backwards_lines(plan, "strip", plan.day.clock(slow_h - 0.02))
    assert re.search(r"a mix of 4[12]", lines[2]) and lines[3].startswith("For that mix: ")


def test_where_being_in_time_ends_is_found_though_the_curve_has_a_kink_or_no_end():
    for late in (lambda x: min(x - 1.0, 5.0 * (x - 1.0)), lambda x: np.inf if x > 1.0 else x - 1.0):
        found = backwards._between(late, (0.0, late(0.0)), (2.0, late(2.0)))
        assert found == pytest.approx(1.0, abs=2 * backwards.NEAR_H) and late(found) <= backwards.NEAR_H / 10
