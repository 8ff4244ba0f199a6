"""The backward question: the answer, planned forward again, comes in time."""

from dataclasses import replace
from datetime import datetime, timedelta
from types import SimpleNamespace

import pytest
from demo_plans import demo_plan

from shop_calc.trade.plan_backwards import backwards_lines, next_clock
from shop_calc.trade.timeline.backwards import work_backwards
from shop_calc.trade.timeline.day import EVENTS, DayInputs, plan_day
from shop_calc.trade.timeline.room import Room, shifted, steady_room

JOB = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.50, 0.0), 16.0, 0.0381, 0.03175, 0.58)
FALLING = replace(JOB, room=Room((-2.0, 4.0, 9.0), (14.0, 24.0, 12.0), (0.5, 0.4, 0.6), (0.0, 1.0, 0.0)))


@pytest.mark.parametrize("inputs", [JOB, FALLING])
@pytest.mark.parametrize(("event", "stage", "end", "hour"), [
    ("strip", "strip", "likely_from_h", 12), ("last_steel_end", "last_steel", "likely_to_h", 18),
])  # fmt: skip
def test_the_latest_start_planned_forward_is_in_time(inputs, event, stage, end, hour):
    by = datetime(2026, 5, 4, hour)
    found = work_backwards(inputs, event, by)
    start_h = found.latest_start_h
    moved = replace(inputs, water_in=inputs.water_in + timedelta(hours=start_h), room=shifted(inputs.room, start_h))
    early_h = (by - inputs.water_in).total_seconds() / 3600 - start_h - getattr(plan_day(moved).stage(stage), end)
    assert -0.02 / 60 <= early_h < 0.1 / 60


def test_the_mix_temperature_planned_forward_is_in_time():
    by = datetime(2026, 5, 4, 10, 15)
    found = work_backwards(JOB, "strip", by)
    assert found.mix_temp_c > JOB.mix_temp_c
    day = plan_day(replace(JOB, mix_temp_c=found.mix_temp_c))
    assert day.stage("strip").likely_from_h == pytest.approx(2.25, abs=0.1 / 60)


def test_as_planned_means_the_likely_hour_of_the_plan():
    for event, (key, end) in EVENTS.items():
        found = work_backwards(FALLING, event, datetime(2026, 5, 4, 14))
        assert found.planned_h == getattr(plan_day(FALLING).stage(key), end), event


def test_the_base_counts_where_it_is_the_slower_of_the_two():
    cold = replace(JOB, base_mix_temp_c=8.0, base_follows=0.65)
    plain, found = (work_backwards(inputs, "strip", datetime(2026, 5, 4, 10, 15)) for inputs in (JOB, cold))
    assert found.planned_h > plain.planned_h + 0.2 and found.latest_start_h < plain.latest_start_h - 0.2
    # a degree more of mortar warms the base by 0.65: more is asked of the mortar than where both are one
    assert found.mix_temp_c > plain.mix_temp_c + 1.0
    moved = cold.mixed_at(found.mix_temp_c)
    assert moved.base_temp_c == pytest.approx(8.0 + 0.65 * (found.mix_temp_c - 16.0))
    assert plan_day(moved).likely_h("strip") == pytest.approx(2.25, abs=0.1 / 60)


def test_what_no_water_can_do_is_said():
    found = work_backwards(JOB, "last_steel_end", datetime(2026, 5, 4, 9))
    assert found.mix_temp_c is None
    assert "no mix up to" in found.answer[2]
    assert work_backwards(JOB, "strip", datetime(2026, 5, 4, 7)).answer[2].endswith("is after the wanted time.")


def test_unknown_events_and_far_times_are_refused():
    with pytest.raises(ValueError, match="event: 'lunch' given"):
        work_backwards(JOB, "lunch", datetime(2026, 5, 4, 12))
    with pytest.raises(ValueError, match="within two days"):
        work_backwards(JOB, "strip", datetime(2026, 6, 4, 12))


def test_a_clock_that_is_past_is_that_of_the_next_day():
    plan = SimpleNamespace(day=SimpleNamespace(water_in=datetime(2026, 5, 4, 12, 0)))
    for text, day, hour in (("12:01", 4, 12), ("23:00", 4, 23), ("12:00", 5, 12), ("6:30", 5, 6)):
        moment = next_clock(plan, text)
        assert (moment.month, moment.day, moment.hour) == (5, day, hour), text


def test_a_start_before_the_air_that_was_given_says_whose_air_was_taken():
    plan = demo_plan("garden_bench_top")
    early, late = (backwards_lines(plan, "strip", datetime(2026, 5, 4, *clock)) for clock in ((9, 30), (11, 0)))
    assert early[1].endswith("07:08 at the latest.") and early[2].startswith("Before 08:00 no air was given; that of 08:00")
    assert not any("no air was given" in line for line in late)
