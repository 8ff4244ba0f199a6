"""Evaporation of the day and the cover for the night."""

import itertools
import re
from dataclasses import replace
from datetime import datetime

import pytest

from shop_calc import defaults, units
from shop_calc.science.evaporation import menzel_rate_kg_m2_h
from shop_calc.trade.curing.covers import CHOICES
from shop_calc.trade.curing.cure import first_night, moist_cure_days, pick_cover
from shop_calc.trade.timeline.day import DayInputs, plan_day
from shop_calc.trade.timeline.drying import face_clock, face_drying, face_level, moving_air
from shop_calc.trade.timeline.room import Room, steady_room

MILD = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.50, 0.0), 16.0, 0.0381, 0.03175, 0.58)
FACE = {"face_thickness_m": 0.00635, "face_water_kg_m3": 280.0}
MPH = units.convert(1.0, "mph", "m/s")


def night(room, **more):
    day = plan_day(replace(MILD, room=room))
    return first_night(day, face_clock(day), **FACE, piece_water_kg_m2=8.0, **more)


def dried(**change):
    day = plan_day(replace(MILD, **change))
    return face_drying(day, face_clock(day), **FACE)


def test_a_warm_slab_in_cold_air_warns_although_it_is_cold():
    # Concrete 70 °F, air 40 °F, 50 %, 10 mph: 0.162 lb/ft2/h in Lerch's table (1957, from memory), over the face limit.
    rate = menzel_rate_kg_m2_h(units.convert(70.0, "F", "C"), units.convert(40.0, "F", "C"), 0.50, 10 * MPH)
    assert units.convert(rate, "kg/m2/h", "lb/ft2/h") == pytest.approx(0.162, abs=0.008)
    assert face_level(rate) == "red"
    drying = dried(mix_temp_c=21.1, room=steady_room(4.4, 0.50, 10 * MPH))
    assert drying.level != "green"
    assert any("not only hot weather" in line.text for line in drying.advice)


def test_hot_dry_and_windy_is_red():
    # 95 °F, 20 %, 10 mph.
    drying = dried(room=steady_room(35.0, 0.20, 10 * MPH))
    assert drying.level == "red"
    assert any(line.level == "act" for line in drying.advice)


def test_a_mild_still_room_is_green_and_silent():
    drying = dried()
    assert drying.level == "green" and drying.advice == ()
    assert drying.peak_low_kg_m2_h < drying.peak_kg_m2_h < drying.peak_high_kg_m2_h


def test_the_ordinary_limit_is_not_the_limit_of_a_face():
    # 0.12 lb/ft2/h is fine for ordinary concrete (limit 0.20, ACI 305R/308) and not for a low-bleed face (0.10).
    assert face_level(units.convert(0.12, "lb/ft2/h", "kg/m2/h")) == "red"


def test_a_still_room_moves_a_little():
    # Thin paste lost 0.146-0.182 kg/m2/h at 23 °C, 50 % (NIST/DTU, CCR 30, 2000, 1157).
    rate = menzel_rate_kg_m2_h(23.0, 23.0, 0.50, moving_air(0.0))
    assert 0.146 <= rate <= 0.182


def test_mild_stays_open_and_hot_and_windy_gets_damp_fabric():
    assert night(steady_room(21.0, 0.50, 0.0)).pick == "open"
    hot = night(steady_room(33.0, 0.25, 4.0))
    assert hot.pick == "fabric" and "full contact" in hot.reason


@pytest.mark.parametrize("air_c", [2.0, 8.0, 15.0, 21.0, 26.0, 30.0, 38.0])
@pytest.mark.parametrize("humidity", [0.15, 0.4, 0.8])
def test_bare_plastic_is_never_recommended(air_c, humidity):
    for wind, fume in itertools.product((0.0, 2.0, 8.0), (False, True)):
        rate = float(menzel_rate_kg_m2_h(air_c, air_c, humidity, moving_air(wind)))
        pick, heat, reason = pick_cover(rate, rate, air_c, air_c, humidity, fume)
        assert pick in ("open", "fabric") and reason, (wind, fume)
        assert heat == (air_c < 10.0), (wind, fume)


@pytest.mark.parametrize(
    ("numbers", "words"),
    [
        ((0.1, 0.2, 8.0, 15.0, 0.6, False), "blankets"),
        ((0.1, 0.2, 18.0, 21.0, 0.6, True), "Silica fume"),
        ((0.30, 0.4, 18.0, 21.0, 0.6, False), "on average"),
        ((0.1, 0.6, 18.0, 21.0, 0.6, False), "At its worst"),
        ((0.1, 0.2, 18.0, 21.0, 0.3, False), "as dry as 30 %"),
        ((0.1, 0.2, 18.0, 28.0, 0.6, False), "as warm as"),
    ],
)
def test_the_first_rule_that_fits_gives_the_reason(numbers, words):

    assert re.search(words, pick_cover(*numbers)[2])


def test_all_choices_stand_side_by_side():
    cure = night(steady_room(21.0, 0.50, 0.0))
    assert tuple(choice.key for choice in cure.choices) == CHOICES
    lost = {choice.key: choice.water_lost_kg_m2 for choice in cure.choices}
    assert lost["open"] > lost["membrane"] > lost["fabric"] == 0.0
    open_face = cure.choice("open")
    assert open_face.water_lost_kg_m2 <= open_face.bound_kg_m2 <= 8.0
    # ASTM C309: 0.55 kg/m2 in 72 h.
    assert lost["membrane"] == pytest.approx(0.55 * (cure.until_h - cure.from_h) / 72.0)


def test_an_open_face_is_colder_and_younger_in_the_morning():
    cure = night(steady_room(21.0, 0.30, 2.0))
    assert cure.choice("open").morning_temp_c < cure.choice("fabric").morning_temp_c
    assert cure.choice("open").morning_age_h < cure.choice("fabric").morning_age_h
    assert cure.choice("mist").morning_temp_c <= cure.choice("open").morning_temp_c


def test_the_night_is_asked_and_not_only_the_day():
    cold_night = Room((0.0, 8.0), (21.0, 6.0), (0.5, 0.6), (0.0, 0.0))
    assert night(cold_night).heat
    assert any("Carbon monoxide" in line.reason for line in night(cold_night).advice)


def test_open_always_carries_the_published_objection():
    texts = [line.text for line in night(steady_room(21.0, 0.50, 0.0)).advice]
    assert any("trades strength" in text for text in texts)
    assert any("bare plastic" in text for text in texts)


def test_polymer_cures_in_air_and_others_stay_moist():
    assert "in air above" in night(steady_room(21.0, 0.5, 0.0), polymer_share=0.05).after
    assert "moist for 7 days" in night(steady_room(21.0, 0.5, 0.0)).after
    # UFGS 03301A as read: 7, 14 and 21 days.
    assert [moist_cure_days(*case) for case in ((False, False), (True, False), (True, True))] == [7, 14, 21]


def test_curing_water_is_at_most_11_degrees_colder():
    # UFGS 03700 as read: 20 °F (11 °C).
    cure = night(steady_room(33.0, 0.25, 4.0))
    assert any("colder than" in line.reason for line in cure.advice)


def test_an_unknown_cover_is_answered_with_the_known_ones():
    with pytest.raises(ValueError, match="fabric"):
        night(steady_room(21.0, 0.5, 0.0)).choice("newspaper")


def test_each_limit_of_a_night_in_the_open_has_two_sides():
    """Table of defaults: 10 and 27 °C, 35 % humidity, amber on average and red at the worst."""
    amber, red = defaults.si("face_amber"), defaults.si("face_red")
    mild = {"mean_kg_m2_h": 0.1, "peak_kg_m2_h": 0.2, "coldest_c": 15.0, "hottest_c": 20.0, "driest_fraction": 0.5}
    for name, limit, beyond in (("mean_kg_m2_h", amber, 1.005), ("peak_kg_m2_h", red, 1.005), ("hottest_c", 27.0, 1.005),
                                ("driest_fraction", 0.35, 0.995), ("coldest_c", 10.0, 0.995)):  # fmt: skip
        assert pick_cover(**mild | {name: limit}, silica_fume=False)[0] == "open", name
        assert pick_cover(**mild | {name: limit * beyond}, silica_fume=False)[:2] == ("fabric", name == "coldest_c"), name
    assert "is as dry as 30 %" in pick_cover(**mild | {"driest_fraction": 0.3}, silica_fume=False)[2]
