"""The day: reference numbers, order of the stages, directions, three times each."""

import itertools
from dataclasses import replace
from datetime import datetime

import numpy as np
import pytest

from shop_calc import defaults
from shop_calc.trade.timeline.cloud import middle_day
from shop_calc.trade.timeline.day import DayInputs, plan_day, read_day, sample_day
from shop_calc.trade.timeline.room import Room, steady_room
from shop_calc.trade.timeline.set_clock import resistance_at_pa, run_clock, time_at_resistance_h
from shop_calc.trade.timeline.stages import ORDER
from shop_calc.trade.timeline.what_if import middle_times_h

MILD = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.50, 0.0), 16.0, 0.0381, 0.03175, 0.58)
HOT = replace(MILD, room=steady_room(35.0, 0.20, 16.0 / 3.6))
COLD = replace(MILD, room=steady_room(8.0, 0.60, 0.0))
PSI = 6894.757293168361


def test_reference_day_and_hot_windy_day_to_their_numbers():
    # The project's own reference arithmetic (1.5 in piece, mix 16 °C; ti 3.4 h, b 7, E 36 kJ/mol), 0.02 h.
    mild = middle_times_h(16.0, 21.0, 0.50, 0.0, 0.0381)
    hot = middle_times_h(16.0, 35.0, 0.20, 16.0 / 3.6, 0.0381)
    for times, strip, strip_end, steel in ((mild, 2.38, 2.89, 3.06), (hot, 1.86, 2.17, 2.28)):
        assert times["strip"] == pytest.approx(strip, abs=0.02)
        assert times["strip_end"] == pytest.approx(strip_end, abs=0.02)
        assert times["first_steel"] == pytest.approx(steel, abs=0.02)
    # Common practice, no source: the sides of a 1 1/2 in top come off after about two and a half hours.
    assert mild["strip"] < 2.5 < mild["strip_end"]


@pytest.mark.parametrize(("inputs", "numbers"), [(MILD, (2.24, 2.70, 2.85)), (HOT, (1.50, 1.75, 1.83))])
def test_without_evaporative_cooling_everything_is_earlier(inputs, numbers):
    clock = run_clock(inputs.mix_temp_c, inputs.thickness_m, inputs.room, evaporating=False)
    for psi, hours in zip((10, 40, 60), numbers, strict=True):
        assert time_at_resistance_h(clock, psi * PSI) == pytest.approx(hours, abs=0.02)


@pytest.mark.parametrize("inputs", [MILD, HOT, COLD])
def test_the_likely_row_is_the_middle_day_within_three_minutes(inputs):
    day = plan_day(inputs)
    room = inputs.room
    middle = middle_times_h(
        inputs.mix_temp_c, room.air_temp_c[0], room.rh_fraction[0], room.wind_m_s[0], inputs.thickness_m
    )
    tolerance = 0.05 * max(1.0, float(middle["strip"]) / 2.5)
    assert day.stage("strip").likely_from_h == pytest.approx(float(middle["strip"]), abs=tolerance)
    assert day.stage("first_steel").likely_from_h == pytest.approx(float(middle["first_steel"]), abs=tolerance)


def test_hot_and_windy_opens_first_steel_at_least_a_fifth_earlier():
    mild, hot = (plan_day(inputs).stage("first_steel") for inputs in (MILD, HOT))
    assert hot.likely_from_h < 0.8 * mild.likely_from_h
    assert hot.look_from_h < 0.8 * mild.look_from_h


@pytest.mark.parametrize("inputs", [MILD, HOT, COLD, replace(MILD, area_m2=6.0), replace(HOT, area_m2=6.0)])
def test_stages_are_in_order_and_never_overlap_in_the_likely_row(inputs):
    stages = plan_day(inputs).stages
    assert tuple(stage.key for stage in stages) == ORDER
    for earlier, later in itertools.pairwise(stages):
        assert later.likely_from_h >= earlier.likely_to_h - 1e-9
    for stage in stages:
        assert stage.look_from_h <= stage.likely_from_h <= stage.likely_to_h <= stage.over_by_h


def test_too_much_surface_for_two_hands_is_named():
    assert plan_day(replace(HOT, area_m2=6.0)).crowded
    assert not plan_day(MILD).crowded


@pytest.mark.parametrize(("seconds", "crowded"), [(59.5, False), (60.5, True)])
def test_a_stage_is_crowded_when_its_sign_waits_more_than_a_minute_for_hands(seconds, crowded):
    day = plan_day(MILD)
    early_h = day.stage("last_steel").likely_from_h - day.stage("first_steel").likely_to_h + seconds / 3600
    opens = {**day.samples.open_h, "last_steel": day.samples.open_h["last_steel"] - early_h}
    moved = read_day(replace(day.samples, open_h=opens))
    assert ("last_steel" in moved.crowded) is crowded
    assert moved.stage("last_steel").likely_from_h == moved.stage("first_steel").likely_to_h


@pytest.mark.parametrize("humidity", [0.9, 0.5, 0.2, 0.05])
def test_dry_air_never_makes_the_early_edge_later(humidity):
    dry = plan_day(replace(MILD, room=steady_room(21.0, humidity, 0.0)))
    damp = plan_day(replace(MILD, room=steady_room(21.0, 1.0, 0.0)))
    for key in ("strip", "first_steel", "last_steel", "stop"):
        assert dry.stage(key).look_from_h == pytest.approx(damp.stage(key).look_from_h, abs=1e-9)
        assert dry.stage(key).likely_from_h >= damp.stage(key).likely_from_h - 1e-9


def test_warmer_is_earlier_in_air_and_in_mix():
    rooms = [
        plan_day(replace(MILD, room=steady_room(t, 0.5, 0.0))).stage("strip").likely_from_h for t in (5, 15, 25, 35)
    ]
    mixes = [plan_day(replace(MILD, mix_temp_c=t)).stage("strip").likely_from_h for t in (8.0, 14.0, 20.0, 26.0)]
    assert rooms == sorted(rooms, reverse=True)
    assert mixes == sorted(mixes, reverse=True)


def test_a_fallen_thermometer_in_the_evening_delays_what_comes_after_it():
    evening = replace(MILD, room=Room((0.0, 2.0), (21.0, 5.0), (0.5, 0.5), (0.0, 0.0)))
    steady, falling = plan_day(MILD), plan_day(evening)
    assert falling.stage("stop").likely_from_h > steady.stage("stop").likely_from_h + 0.3


def test_base_counts_from_the_first_load_and_steel_from_the_face_load():
    loads = replace(MILD, base_loads_h=(0.0, 1 / 3, 2 / 3), face_load_h=1.0)
    one, several = plan_day(MILD), plan_day(loads)
    for key in ("first_steel", "last_steel", "stop"):
        assert several.stage(key).likely_from_h == pytest.approx(one.stage(key).likely_from_h + 1.0, abs=1e-6)
    # The edge rests from the float on, which here comes sooner after the face load: a little earlier on some days.
    assert several.stage("strip").likely_from_h == pytest.approx(one.stage("strip").likely_from_h + 1.0, abs=0.02)
    assert several.load_offsets_h == (0.0, 1 / 3, 2 / 3, 1.0)
    # The first load sets a limit to the pause although the last is fresh.
    assert several.stage("face").deadline_h < one.stage("face").deadline_h + 1.0


def test_pause_between_layers_is_an_hour_at_21_degrees_and_shorter_in_heat():
    # Judgement of the defaults table: 60 min at 21 °C between base and face.
    room = replace(MILD, mix_temp_c=21.0, room=steady_room(21.0, 1.0, 0.0))
    day = plan_day(room, days=middle_day())
    assert day.stage("face").deadline_h - 20 / 60 == pytest.approx(1.0, abs=0.01)
    assert plan_day(HOT).stage("face").deadline_h < plan_day(MILD).stage("face").deadline_h


def test_new_weights_move_every_later_window():
    samples = sample_day(MILD)
    low, high = np.quantile(samples.open_h["strip"], (0.6, 0.75))
    slow = (samples.open_h["strip"] > low) & (samples.open_h["strip"] <= high)
    before, after = read_day(samples), read_day(samples, slow.astype(float))
    for key in ("strip", "first_steel", "last_steel", "stop"):
        assert after.stage(key).likely_from_h > before.stage(key).likely_from_h
        narrow = after.stage(key).over_by_h - after.stage(key).look_from_h
        assert narrow < before.stage(key).over_by_h - before.stage(key).look_from_h


def test_the_clock_shows_minutes():
    assert plan_day(MILD).clock(1.99999).strftime("%H:%M:%S") == "10:00:00"


def test_resistance_and_time_turn_into_each_other():
    clock = run_clock(16.0, 0.0381, MILD.room)
    when = float(time_at_resistance_h(clock, 100 * PSI))
    assert resistance_at_pa(clock, when) / PSI == pytest.approx(100.0, rel=1e-3)


def test_first_steel_band_is_what_the_lessons_say():
    opening = sample_day(MILD).open_h["first_steel"]
    minutes = 60 * (np.quantile(opening, 0.95) - np.quantile(opening, 0.05))
    assert 70 < minutes < 100


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"mix_temp_c": 60.0}, "mix temperature: 60 °C given"),
        ({"base_depth_m": 0.05}, "base depth: 0.05 m given"),
        ({"minutes_per_load": 0.0}, "minutes per load: 0 min given"),
    ],
)
def test_impossible_days_are_refused(change, words):
    with pytest.raises(ValueError, match=words):
        replace(MILD, **change)


def test_an_unknown_stage_is_answered_with_the_known_ones():
    with pytest.raises(ValueError, match="first_steel"):
        plan_day(MILD).stage("polish")


def test_resistances_of_the_stages_rise():
    names = ("strip_pr_low", "strip_pr_high", "first_steel_pr_low", "first_steel_pr_high", "last_steel_pr_low",
             "last_steel_pr_high", "stop_pr")  # fmt: skip
    values = [defaults.si(name) for name in names]
    assert values == sorted(values)
