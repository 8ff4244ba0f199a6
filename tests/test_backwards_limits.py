"""The backward question at its ends: what it tries, what it counts from, and how it says an hour."""

from dataclasses import replace
from datetime import datetime, timedelta

import numpy as np
import pytest

from shop_calc.trade.timeline.backwards import work_backwards
from shop_calc.trade.timeline.day import DayInputs
from shop_calc.trade.timeline.room import steady_room

EIGHT = datetime(2026, 5, 4, 8)
JOB = DayInputs(EIGHT, steady_room(21.0, 0.50, 0.0), 16.0, 0.0381, 0.03175, 0.58)
NOON = datetime(2026, 5, 4, 12)


def test_it_tries_every_ten_minutes_of_a_day_and_every_degree_that_water_can_do():
    found = work_backwards(JOB, "strip", NOON)  # 4 h after the water
    assert (found.starts_h[0], found.starts_h[-1], found.starts_h.size) == (pytest.approx(-20.0), pytest.approx(4.0), 145)
    assert np.diff(found.starts_h) == pytest.approx(1 / 6)
    assert found.mix_temps_c.tolist() == [float(degrees) for degrees in range(4, 33)]  # °C, common practice


def test_in_time_is_a_day_before_and_never_at_the_hour_itself():
    found = work_backwards(JOB, "strip", NOON)
    assert found.reachable[:, 0].all() and not found.reachable[:, -1].any()
    start = np.flatnonzero(found.reachable[12])[-1]  # mix of 16 °C, as planned
    assert found.starts_h[start] <= found.latest_start_h < found.starts_h[start + 1]


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
def test_hours_are_said_to_the_nearest_minute_on_the_clock(minute):
    by = NOON + timedelta(minutes=minute)
    found = work_backwards(replace(JOB, thickness_m=0.034 + 0.0003 * minute), "strip", by)
    for line, hour in zip(found.answer, (found.planned_h, found.latest_start_h), strict=False):
        assert f"{EIGHT + timedelta(minutes=round(hour * 60)):%H:%M}" in line


def test_between_two_degrees_the_mix_is_read_off_a_straight_line():
    found = work_backwards(JOB, "strip", datetime(2026, 5, 4, 10, 15))
    at_start = found.event_h[:, np.argmin(np.abs(found.starts_h - 0.0))]  # hours when each degree would be there
    below, above = int(found.mix_temp_c), int(found.mix_temp_c) + 1
    early, late = (at_start[found.mix_temps_c.tolist().index(degrees)] for degrees in (below, above))
    # start 0 is not on the ten-minute grid of 10:15, but the room is steady: the hours only shift
    shift = found.starts_h[np.argmin(np.abs(found.starts_h - 0.0))]
    assert below < found.mix_temp_c < above
    assert found.mix_temp_c == pytest.approx(below + (early - shift - found.by_h) / (early - late), abs=1e-6)
