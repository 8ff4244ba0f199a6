"""The day at its limits: shares of days, deadlines, what a day may be given, and the face at its windiest hour."""

from dataclasses import replace
from datetime import datetime
from types import SimpleNamespace

import numpy as np
import pytest

from shop_calc import defaults
from shop_calc.science import evaporation
from shop_calc.trade.timeline import day as days
from shop_calc.trade.timeline.cloud import day_cloud, spread
from shop_calc.trade.timeline.day import DayInputs, plan_day, read_day, sample_day
from shop_calc.trade.timeline.drying import face_drying
from shop_calc.trade.timeline.early_hours import early_hours
from shop_calc.trade.timeline.look import look_h, seen
from shop_calc.trade.timeline.room import Room, room_steps, steady_room
from shop_calc.trade.timeline.set_clock import LONGEST_H, at_h
from shop_calc.trade.timeline.wind_limit import wind_lines

MILD = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.50, 0.0), 16.0, 0.0381, 0.03175, 0.58)
END = 1.6448536269514722  # the normal law: 5 % of all lie beyond it


@pytest.mark.parametrize(("deviation", "value"), [(END, 5.0), (0.0, 2.0), (-END, 1.0), (END / 2, 3.5), (-END / 2, 1.5)])
def test_a_band_spread_by_difference_reaches_from_its_low_to_its_high_end(deviation, value):
    assert float(spread(1.0, 2.0, 5.0, deviation, ratio=False)) == pytest.approx(value)


def test_a_window_is_looked_for_from_the_first_twentieth_of_the_days_on_and_over_with_the_last():
    assert (days.EARLY_SHARE, days.LATE_SHARE) == (0.05, 0.95)  # nine days of ten lie between, as every page says
    day = plan_day(MILD)
    early, late = (np.sort(part["first_steel"]) for part in (day.samples.early_h, day.samples.close_h))
    stage = day.stage("first_steel")
    assert early[23] <= stage.look_from_h <= early[26] and late[473] <= stage.over_by_h <= late[476]


def test_the_last_good_moment_for_the_face_is_that_of_the_middle_day():
    day = plan_day(MILD)
    earlier = np.mean(day.samples.deadline_h["face"] <= day.stage("face").deadline_h)
    assert earlier == pytest.approx(0.5, abs=0.003)


def test_the_gap_between_the_layers_counts_from_the_packed_base():
    # Mortar and room at 21 °C, nothing evaporates: an hour on the clock is an hour of age. The last of two loads gets its
    # water at 1:00 and is packed 20 minutes later; from then on the gap of the defaults table counts.
    even = replace(MILD, room=steady_room(21.0, 1.0, 0.0), mix_temp_c=21.0, base_loads_h=(0.5, 1.0))
    samples = sample_day(even)
    gap_h = defaults.get("layer_gap").value / 60.0
    free = samples.deadline_h["face"] < np.max(samples.deadline_h["face"])  # where the print does not end it sooner
    assert free.mean() > 0.5
    assert np.median(samples.deadline_h["face"]) == pytest.approx(1.0 + 20 / 60 + gap_h, abs=0.02)


def test_what_is_left_out_is_one_person_and_the_usual_load():
    assert DayInputs.hands == 1.0 == defaults.get("hands").value
    assert DayInputs.minutes_per_load == 20.0 == defaults.get("minutes_per_load").value


@pytest.mark.parametrize(
    ("entry", "most", "more", "unit"),
    [("mix_temp_c", 40.0, 40.5, "°C"), ("base_mix_temp_c", 40.0, 40.5, "°C"), ("minutes_per_load", 180.0, 181.0, "min")],
)
def test_a_day_takes_its_entries_up_to_their_limit_and_no_further(entry, most, more, unit):
    assert getattr(replace(MILD, **{entry: most}), entry) == most
    with pytest.raises(ValueError, match=f"{more:g} {unit} given"):
        replace(MILD, **{entry: more})


def test_a_base_follows_its_mortar_by_a_degree_at_most_and_stands_as_high_as_its_dropped_edge_hangs():
    with pytest.raises(ValueError, match=r"base follows: 1\.01 given"):
        replace(MILD, base_follows=1.01)
    # 31.75 mm of base, 40 mm of dropped edge
    assert replace(MILD, drop_m=0.04, base_follows=1.0).standing_m == pytest.approx(0.07175)


def test_the_wind_lines_take_the_face_as_warm_as_it_is_since_its_own_water():
    inputs = replace(MILD, face_load_h=1.0)
    history = SimpleNamespace(time_h=np.arange(5.0), temp_c=np.array([10.0, 12.0, 15.0, 19.0, 24.0]))
    lines = wind_lines(SimpleNamespace(samples=SimpleNamespace(inputs=inputs)), SimpleNamespace(peak_at_h=3.0), history)
    assert lines.surface_temp_c == pytest.approx(15.0)  # three hours after the first water, two after that of the face


@pytest.mark.parametrize(("wind_m_s", "humidity", "dries"), [(0.5, 0.8, False), (15.0, 0.5, True)])
def test_the_face_loses_from_its_own_water_to_the_last_steel_and_slower_once_it_is_dry(wind_m_s, humidity, dries):
    # By hand: face and air at 21 °C all the while, so the rate is one number; its water comes at 1 h, last steel ends at 4 h.
    inputs = replace(MILD, room=steady_room(21.0, humidity, wind_m_s), face_load_h=1.0)
    found = drying_of(inputs)
    rate = float(evaporation.menzel_rate_kg_m2_h(21.0, 21.0, humidity, wind_m_s))
    demand, free = 3.0 * rate, 0.25  # kg/m2; free water: judgement, data/defaults.csv
    assert found.time_h.tolist() == [1.0, 2.0, 3.0, 4.0] and (demand > free) is dries
    # beyond w0 the loss is w0 (1 + ln(demand/w0)): the surface dries as it loses, shop_calc.science.slab_heat
    assert found.lost_kg_m2 == pytest.approx(free * (1.0 + np.log(demand / free)) if dries else demand)
    assert found.peak_kg_m2_h == pytest.approx(rate) and found.peak_at_h == 1.0


def drying_of(inputs, water_kg_m3=280.0):
    day = SimpleNamespace(samples=SimpleNamespace(inputs=inputs), stage=lambda key: SimpleNamespace(likely_to_h=4.0))
    clock = SimpleNamespace(history=SimpleNamespace(time_h=np.arange(6.0), temp_c=np.full(6, 21.0)))
    return face_drying(day, clock, 0.00635, water_kg_m3)


@pytest.mark.parametrize(("share", "said"), [(0.299, False), (0.301, True)])
def test_a_face_that_loses_more_than_three_tenths_of_its_water_is_pressed_below_its_skin(share, said):
    windy = replace(MILD, room=steady_room(21.0, 0.50, 15.0))
    water = drying_of(windy).lost_kg_m2 / (0.00635 * share)
    assert any("below the skin before every tool" in line.text for line in drying_of(windy, water).advice) is said


@pytest.mark.parametrize(("air_c", "said"), [(10.9, True), (11.05, False)])
def test_cold_air_is_named_when_it_is_five_degrees_under_the_mix(air_c, said):
    windy = replace(MILD, room=steady_room(air_c, 0.50, 15.0), mix_temp_c=16.0)
    assert any("not only hot weather" in line.text for line in drying_of(windy).advice) is said


def test_the_face_waits_for_its_own_load():
    late = replace(MILD, face_load_h=3.0, minutes_per_load=30.0)  # mixed at 3:00, out of the mixer half an hour later
    assert early_hours(late, day_cloud()).face_on_h == pytest.approx(3.5)


def test_half_of_the_days_are_ready_by_the_likely_hour():
    samples = sample_day(MILD)
    likely_h = read_day(samples).likely_h("first_steel")
    assert np.mean(samples.open_h["first_steel"] <= likely_h) == pytest.approx(0.5, abs=0.003)


def test_face_and_first_float_take_their_minutes_one_after_the_other():
    # 1 m2 for one person, minutes for a square metre of data/defaults.csv (common practice, no source); ten for nothing
    one = early_hours(replace(MILD, area_m2=1.0), day_cloud())
    face_h, float_h = (defaults.get(row).value / 60.0 for row in ("face_minutes_per_area", "float_minutes_per_area"))
    assert one.float_open_h - one.face_on_h == pytest.approx(face_h)
    assert one.float_close_h - one.float_open_h == pytest.approx(float_h)
    least_h = defaults.get("least_step_minutes").value / 60.0
    small = early_hours(replace(MILD, area_m2=0.001), day_cloud())
    assert small.float_open_h - small.face_on_h == pytest.approx(least_h)


def test_a_look_lies_within_four_days_of_the_water():
    assert look_h(seen(96.0, "stop"), MILD.water_in) == 96.0
    with pytest.raises(ValueError, match="at most 96 h"):
        look_h(seen(96.5, "stop"), MILD.water_in)


def test_outside_its_steps_a_history_keeps_its_ends():
    times, values = np.array([0.0, 1.0, 2.0]), np.array([10.0, 20.0, 40.0])
    for hour, value in ((-1.0, 10.0), (0.5, 15.0), (1.75, 35.0), (2.0, 40.0), (9.0, 40.0)):
        assert float(at_h(times, values, hour)) == pytest.approx(value)
    assert LONGEST_H == 96.0  # four days: judgement


def test_a_step_has_the_air_of_its_middle():
    room = Room((0.0, 0.505), (10.0, 30.0), (0.5, 0.5), (0.0, 0.0))
    air_c, _, _ = room_steps(room, 0.0, 3600.0, 2)
    assert air_c.tolist() == [10.0, 30.0]  # half past, the first row still holds


@pytest.mark.parametrize("air_c", [10.0, 15.0, 24.0])
def test_a_base_that_is_placed_all_day_is_too_stiff_as_soon_as_it_is_done(air_c):
    # the last load is in the form after 15 h 20 min, far past any print: the last good moment for the face is that one
    room = steady_room(air_c, 0.5, 0.0)
    day = DayInputs(datetime(2026, 5, 4, 8), room, air_c, 0.0381, 0.03175, 0.58, base_loads_h=(0.0, 15.0), face_load_h=15.0)
    assert sample_day(day).deadline_h["face"] == pytest.approx(np.full(500, 15.0 + 20.0 / 60.0), abs=1e-9)
