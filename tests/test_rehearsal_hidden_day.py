"""The hidden day of a practice pour: histories that begin with each layer's water, what the air takes, surprises."""

from datetime import timedelta

import numpy as np
import pytest
from practice_pieces import a_pour
from scipy.integrate import cumulative_trapezoid

from shop_calc import defaults
from shop_calc.science.evaporation import menzel_rate_kg_m2_h
from shop_calc.trade.batching.mix_heat import MixHeat
from shop_calc.trade.batching.water import temps
from shop_calc.trade.jobs.job import demo_job, read_job
from shop_calc.trade.plan import make_plan
from shop_calc.trade.rehearsal.pour import read_at
from shop_calc.trade.rehearsal.truth import draw_pour, open_pour
from shop_calc.trade.rehearsal.weather import EVENING_H, SURPRISE_H, SURPRISES, WEATHERS, drawn, pick_weather, surprised
from shop_calc.trade.timeline.room import steady_room

CODES = [f"day {number}" for number in range(60)]
HOT = "hot and windy"


@pytest.mark.parametrize(("minutes", "shown"), [(10.0, 10), (10.494, 10), (10.51, 11), (59.6, 60)])
def test_the_clock_is_read_to_the_nearest_minute(minutes, shown):
    pour = a_pour()
    assert pour.clock(minutes / 60.0) == pour.water_in + timedelta(minutes=shown)


@pytest.mark.parametrize("weather", ["mild", HOT, "cold shop"])
def test_the_base_is_as_warm_as_the_heat_balance_of_the_plan_makes_it_with_stone_as_warm_as_the_air(weather):
    pour = draw_pour("oak", weather)
    told, air_c = pour.told, pour.told.room.air_temp_c[0]
    stone = temps(air_c, stone_c=air_c, tap_water_c=air_c)
    assert told.base_mix_temp_c == pytest.approx(MixHeat(pour.plan.mix, stone).base_c(told.mix_temp_c, stone), abs=1e-9)
    by_hand_c = (2 * told.mix_temp_c + air_c) / 3  # stone and sand hold about a third of its heat
    assert told.base_mix_temp_c == pytest.approx(by_hand_c, abs=0.2)


def test_the_histories_reach_the_last_hour_that_they_promise():
    pour = draw_pour("oak", "mild")
    for history in (*pour.ages_h.values(), pour.rate_kg_m2_h, pour.demand_kg_m2, pour.red_kg_m2, pour.temp_c):
        assert len(history) == 12 * 8 + 1  # every five minutes, for eight hours


def test_each_layer_ages_and_warms_from_its_own_water_on():
    """The face of this big top gets its water an hour after the first load of the base."""
    plan = make_plan(read_job(demo_job("large_l_four_loads")))
    pour = open_pour(plan)
    assert pour.told.face_load_h == 1.0 and pour.told.base_loads_h[0] == 0.0
    for bare in (True, False):
        face, base = pour.ages_h["face", bare], pour.ages_h["base", bare]
        assert read_at(face, 0.5) == read_at(face, 1.0) == 0.0 < read_at(face, 1.1)
        assert base[0] == 0.0 < base[1]
        # in a first hour near 21 °C each hour counts as one, more or less
        assert 0.4 < read_at(face, 2.0) < 1.5 and read_at(base, 2.0) > read_at(face, 2.0) + 0.4
    assert read_at(pour.temp_c, 0.5) == read_at(pour.temp_c, 1.0) == pytest.approx(pour.told.mix_temp_c)
    assert read_at(pour.temp_c, 1.5) != pytest.approx(pour.told.mix_temp_c, abs=0.01)


@pytest.mark.parametrize("code", CODES[:6])
def test_the_air_takes_from_the_face_what_its_true_warmth_and_the_factor_of_the_day_make_it_take(code):
    """At the first water the face is as warm as its mortar; air that is warmer than the thermometer says, as Menzel has it."""
    pour = draw_pour(code, HOT)
    error, factor = float(pour.hidden.room_error_k[0]), float(pour.hidden.evaporation_factor[0])
    room = pour.room
    rate = menzel_rate_kg_m2_h(pour.told.mix_temp_c, room.air_temp_c[0] + error, room.rh_fraction[0], room.wind_m_s[0])
    assert pour.rate_kg_m2_h[0] == pytest.approx(factor * rate, rel=1e-6) and rate > 0.0


@pytest.mark.parametrize("code", CODES[:6])
def test_what_the_air_took_is_the_area_below_its_rate_and_the_red_part_that_above_the_limit(code):
    pour = draw_pour(code, HOT)
    rate, red = np.array(pour.rate_kg_m2_h), np.array(pour.red_kg_m2)
    assert pour.demand_kg_m2 == pytest.approx(cumulative_trapezoid(rate, dx=1 / 12, initial=0.0))
    limit = defaults.si("face_red")
    below, above = (np.flatnonzero(kind[1:] & kind[:-1]) for kind in (rate < limit, rate > limit))
    assert np.all(np.diff(red)[below] == 0.0)
    assert np.diff(red)[above] == pytest.approx(np.diff(pour.demand_kg_m2)[above])
    assert red[-1] <= pour.demand_kg_m2[-1] + 1e-12 and len(below) + len(above) > 90


def test_the_days_above_are_apart_enough_to_tell_anything():
    pours = [draw_pour(code, HOT) for code in CODES[:6]]
    rates = np.array([pour.rate_kg_m2_h for pour in pours])
    assert (rates > 0.5).any() and (rates < 0.5).any()  # face_red
    assert max(abs(pour.hidden.evaporation_factor[0] - 1.0) for pour in pours) > 0.1
    assert max(abs(pour.hidden.room_error_k[0]) for pour in pours) > 0.5


# ---- weather and surprises


def test_the_kinds_of_day_share_all_codes_and_keep_to_what_they_are_called():
    """No night is colder than 10 °C (cure_air_cold): below that the plan heats, which nobody rehearses here."""
    assert sum(kind.share for kind in WEATHERS.values()) == pytest.approx(1.0)
    for kind in WEATHERS.values():
        for low, high in (*kind.air_c, *kind.rh_fraction, *kind.wind_m_s, kind.mix_c, kind.other_mix_c):
            assert low < high
        morning, noon, evening = kind.air_c
        assert noon[0] >= morning[0] and noon[1] >= morning[1] and evening[1] <= noon[1]
        assert min(morning[0], evening[0]) >= 10.0
    mild, hot, cold = (WEATHERS[name] for name in ("mild", HOT, "cold shop"))
    assert cold.air_c[1][1] < mild.air_c[0][0] and mild.air_c[1][1] < hot.air_c[0][0]
    assert hot.wind_m_s[0][0] > mild.wind_m_s[1][1]
    assert {pick_weather(code).name for code in CODES} == set(WEATHERS)


def day_with(what):
    return next(code for code in CODES if surprised(code, steady_room(20.0, 0.5, 2.0))[1] == what)


ADDED = {  # K and m/s; 10 km/h are 2.7778 m/s, 6 km/h are 1.6667
    "the wind got up": (0.0, 2.7778),
    "the sun came round onto the bench": (4.0, 0.0),
    "a door stayed open": (-3.0, 1.6667),
}


@pytest.mark.parametrize("what", SURPRISES)
def test_a_surprise_adds_to_the_room_from_its_hour_until_the_evening(what):
    room, said = surprised(day_with(what), steady_room(20.0, 0.5, 2.0))
    warmer_k, faster_m_s = ADDED[said]
    assert room.air_temp_c == pytest.approx((20.0, 20.0 + warmer_k, 20.0))
    assert room.wind_m_s == pytest.approx((2.0, 2.0 + faster_m_s, 2.0), abs=1e-4)
    assert room.rh_fraction == (0.5, 0.5, 0.5)
    start_h, from_h, to_h = room.from_h
    assert start_h == 0.0 and SURPRISE_H[0] <= from_h <= SURPRISE_H[1] and EVENING_H[0] <= to_h <= EVENING_H[1]


def test_no_surprise_takes_a_room_beyond_what_the_method_can_reckon_with():
    """-5 to 50 °C and 17 m/s, the limits of a room."""
    wind, sun, door = map(day_with, ADDED)
    assert surprised(sun, steady_room(48.0, 0.5, 2.0))[0].air_temp_c == (48.0, 50.0, 48.0)
    assert surprised(door, steady_room(-4.0, 0.5, 2.0))[0].air_temp_c == (-4.0, -5.0, -4.0)
    assert surprised(door, steady_room(1.0, 0.5, 2.0))[0].air_temp_c == (1.0, -2.0, 1.0)
    assert surprised(wind, steady_room(20.0, 0.5, 16.0))[0].wind_m_s == (16.0, 17.0, 16.0)


def test_a_draw_lies_between_its_ends_and_turns_with_them():
    for code in CODES:
        share = drawn(code, "any")
        assert 0.0 < share < 1.0
        assert drawn(code, "any", 10.0, 14.0) == pytest.approx(10.0 + 4.0 * share)
        assert drawn(code, "any", 14.0, 10.0) == pytest.approx(14.0 - 4.0 * share)
