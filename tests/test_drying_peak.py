"""The largest evaporation from the face, by day and by night, against much finer steps."""

from datetime import datetime

import numpy as np
import pytest
from demo_plans import NAMES, demo_plan

from shop_calc.science.evaporation import menzel_rate_kg_m2_h
from shop_calc.trade.curing import cure
from shop_calc.trade.timeline.day import DayInputs, plan_day
from shop_calc.trade.timeline.drying import _step_s, face_clock, face_drying, moving_air
from shop_calc.trade.timeline.room import Room, room_at, steady_room
from shop_calc.trade.timeline.set_clock import run_clock
from shop_calc.trade.timeline.wind_limit import wind_lines

EIGHT = datetime(2026, 5, 4, 8)


def a_day(seed, whole_minutes):
    """Three changes of the air, as far apart as a shop can make them, on the five minutes of the clock or off them."""
    rng = np.random.default_rng(seed)
    rows = np.sort(rng.choice(np.arange(1, 72), 3, replace=False)) / 12.0
    rows = rows + (rng.integers(1, 5, 3) / 60.0 if whole_minutes else 0.0)
    room = Room((0.0, *rows), *(tuple(rng.uniform(low, high, 4)) for low, high in ((8, 36), (0.15, 0.9), (0, 7))))
    thickness_m = rng.uniform(0.02, 0.08)
    face_load_h = rng.choice((0.0, 1 / 3, 2 / 3))
    return DayInputs(EIGHT, room, rng.uniform(10, 26), thickness_m, thickness_m - 0.006, 0.58, face_load_h=face_load_h)


def finest_peak(day):
    inputs, end_h = day.samples.inputs, day.stage("last_steel").likely_to_h
    least_h = end_h - inputs.face_load_h
    clock = run_clock(
        inputs.mix_temp_c, inputs.thickness_m, inputs.room, start_h=inputs.face_load_h, least_h=least_h, step_s=2.0
    )
    hours = np.append(clock.history.time_h + inputs.face_load_h, inputs.room.from_h)
    temp_c = np.interp(hours, clock.history.time_h + inputs.face_load_h, clock.history.temp_c)
    both = []
    for beside_h in (-1e-6, 1e-6):
        air_c, rh_fraction, wind_m_s = room_at(inputs.room, hours + beside_h)
        rate = menzel_rate_kg_m2_h(temp_c, air_c, rh_fraction, moving_air(wind_m_s))
        both.append(rate[(hours + beside_h > inputs.face_load_h) & (hours + beside_h < end_h)].max())
    return max(both)


@pytest.mark.parametrize("whole_minutes", [False, True])
@pytest.mark.parametrize("seed", range(6))
def test_the_peak_is_found_within_three_in_a_thousand(seed, whole_minutes):
    day = plan_day(a_day(seed, whole_minutes))
    found, finest = face_drying(day, face_clock(day), 0.006, 200.0), finest_peak(day)
    assert found.peak_kg_m2_h == pytest.approx(finest, rel=0.003, abs=1e-4)
    assert found.peak_kg_m2_h == found.rate_kg_m2_h.max()
    assert (np.diff(found.time_h) >= 0).all() and found.time_h[0] == pytest.approx(day.samples.inputs.face_load_h)
    assert found.time_h[-1] == pytest.approx(day.stage("last_steel").likely_to_h)


@pytest.mark.parametrize(("load_h", "changes_h", "step_s"), [
    (0.0, (1.0, 2.5), 300.0), (0.37, (1.0, 2.5), 108.0), (0.25, (1.0, 2.5), 300.0), (2 / 3, (0.5, 1.0), 300.0),
    (0.37, (1.0,), 283.5), (0.0, (17.0 / 3600,), 30.0), (1.0, (0.5,), 300.0),
])  # fmt: skip
def test_steps_of_the_face_meet_every_change_after_its_own_water(load_h, changes_h, step_s):
    # seconds from its water to the changes, the longest step of at most 300 s that divides them, 30 s at least: 3600 and 9000;
    # 2268 and 7668, 21 and 71 times 108; 2700 and 8100; 1200; 2268, 8 times 283.5; 17; none
    air = [(20.0, 0.5, 0.0)] * (1 + len(changes_h))
    room = Room((0.0, *changes_h), *zip(*air, strict=True))
    assert _step_s(DayInputs(EIGHT, room, 16.0, 0.038, 0.032, 0.58, face_load_h=load_h)) == pytest.approx(step_s)


def test_a_fan_for_the_last_two_minutes_counts():
    """Between two steps of the clock, after the last one before the end: steps alone never see it."""
    still = DayInputs(EIGHT, steady_room(21.0, 0.50, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    end_h = plan_day(still).stage("last_steel").likely_to_h
    late_h = np.floor(end_h * 60 - 1) / 60
    room = Room((0.0, late_h), (21.0, 21.0), (0.5, 0.5), (0.0, 5.0))
    windy = DayInputs(EIGHT, room, 16.0, 0.0381, 0.03175, 0.58)
    before, after = (face_drying(plan_day(each), face_clock(plan_day(each)), 0.006, 200.0) for each in (still, windy))
    assert after.peak_kg_m2_h > 3 * before.peak_kg_m2_h
    assert after.peak_at_h == pytest.approx(late_h, abs=2 / 60) and after.peak_at_h >= late_h


def test_the_lines_of_the_wind_are_for_the_air_of_the_peak():
    """The wind drops at eleven: the peak stands just before, in the wind."""
    room = Room((0.0, 3.0), (21.0, 21.0), (0.5, 0.5), (4.0, 0.0))
    day = plan_day(DayInputs(EIGHT, room, 16.0, 0.0381, 0.03175, 0.58))
    clock = face_clock(day)
    drying = face_drying(day, clock, 0.006, 200.0)
    lines = wind_lines(day, drying, clock.history)
    assert drying.peak_at_h == pytest.approx(3.0, abs=1e-5) and lines.wind_m_s == 4.0
    rate = menzel_rate_kg_m2_h(lines.surface_temp_c, lines.air_temp_c, lines.rh_fraction, moving_air(lines.wind_m_s))
    assert rate == pytest.approx(drying.peak_kg_m2_h, rel=1e-4)


@pytest.mark.parametrize(("changes_min", "step_s"), [
    ((), 300.0), ((120,), 300.0), ((66,), 3960.0 / 14), ((60, 63), 180.0), ((61,), 3660.0 / 13), ((61, 120), 60.0),
])  # fmt: skip
def test_the_clock_of_a_face_steps_so_that_the_air_changes_between_two_steps(changes_min, step_s):
    from_h = (0.0, *(minutes / 60 for minutes in changes_min))
    room = Room(from_h, *((value,) * len(from_h) for value in (20.0, 0.5, 0.0)))
    day = plan_day(DayInputs(EIGHT, room, 16.0, 0.0381, 0.03175, 0.58))
    assert np.diff(face_clock(day).history.time_h)[0] * 3600 == pytest.approx(step_s)


@pytest.mark.parametrize("name", NAMES)
def test_mean_and_peak_of_the_night_are_those_of_half_minutes(name, monkeypatch):
    night = demo_plan(name).cure
    monkeypatch.setattr(cure, "NIGHT_STEP_S", 30.0)
    fine = demo_plan(name).cure
    for key in ("mean_demand_kg_m2_h", "peak_demand_kg_m2_h"):
        assert getattr(night, key) == pytest.approx(getattr(fine, key), rel=0.003), key
    wet_kg_m2 = night.mean_demand_kg_m2_h * (night.until_h - night.from_h)  # one question, one answer
    assert wet_kg_m2 == pytest.approx(night.after_stop.demand_kg_m2[-1, 0], rel=1e-12)
    assert night.choice("open").bound_kg_m2 <= wet_kg_m2 + 1e-12
