"""The likely hour of a stage is one number: plan, sheet, picture, backwards question and lessons print the same minute."""

import copy
import random
import re
from dataclasses import replace
from datetime import datetime, timedelta

import numpy as np
import pytest
from demo_plans import BENCH, bench

from shop_calc.lesson.moves import for_instructors, ready_by, rod_cup, stiffening
from shop_calc.lesson.moves.log_next import next_words
from shop_calc.lesson.pictures.from_plan import opening_times, ribbon_of
from shop_calc.lesson.pictures.set_curve import StiffeningCurve
from shop_calc.lesson.sheet.day_facts import day_facts
from shop_calc.trade.jobs.job import check_job
from shop_calc.trade.plan import make_plan
from shop_calc.trade.plan_backwards import backwards_lines
from shop_calc.trade.report import report
from shop_calc.trade.timeline.day import EVENTS, plan_day
from shop_calc.trade.timeline.ruler import ruler
from shop_calc.units import convert

CODES = (3, 14, 15, 92)  # four jobs, drawn afresh from these
TITLES = {"strip": "Sides off, patch the edges", "first_steel": "First steel", "last_steel": "Last steel"}
MINUTE_H = 1.0 / 60.0


def planned(code, **other):
    """A bench of another size, mortar and room for each code; an even room, so that a slider can stand where it stands."""
    draw = random.Random(code)
    entries = copy.deepcopy(BENCH)
    start = datetime(2026, 5, 4, draw.choice((6, 7, 8, 9)), draw.choice((0, 15, 40)))
    entries["piece"] |= {"length": f"{draw.uniform(40, 70):.0f} in", "thickness": f"{draw.choice((1.25, 1.5, 2.0))} in"}
    entries["day"] |= {
        "water_in": other.get("start", start), "hands": draw.choice((1, 2, 3)),
        "wanted_mix_temp": other.get("mix", f"{draw.uniform(55, 72):.0f} F"),
    }  # fmt: skip
    entries["materials"] |= {"stone_temp": f"{draw.uniform(50, 80):.0f} F"}
    air = {"air": f"{draw.uniform(52, 88):.0f} F", "humidity": draw.randint(30, 80), "wind": f"{draw.choice((0, 2, 6))} mph"}
    entries["room"] = [{"from": datetime(2026, 5, 1), **air}]
    return make_plan(check_job(entries))


def said(day, key):
    stage = day.stage(key)
    return tuple(f"{day.clock(hour):%H:%M}" for hour in (stage.likely_from_h, stage.likely_to_h))


@pytest.mark.parametrize("code", CODES)
def test_plan_sheet_ribbon_and_class_print_the_same_minutes(code):
    plan = planned(code)
    day, printed = plan.day, report(plan)
    sheet = {row["key"]: row["likely"] for row in day_facts(plan)["stages"]}
    told = {row[0]: row[2] for row in for_instructors.workshop_day(plan).rows}
    ribbon, last = ribbon_of(day).alt, str(stiffening.last_stages(day))
    for key, title in TITLES.items():
        opens, closes = said(day, key)
        assert re.search(rf"\d\d:\d\d +{opens}-{closes} +\d\d:\d\d +{title}: ", printed), title
        assert re.findall(r"\d\d:\d\d", sheet[key]) == [opens, closes], title
        assert re.findall(r"\d\d:\d\d", told[title]) == [opens, closes], title
        assert re.search(rf"{title},[^.]*likely {opens}–{closes}", ribbon), title
    stop = f"{day.clock(day.likely_h('stop')):%H:%M}"
    assert f"likely {said(day, 'last_steel')[0]} to {said(day, 'last_steel')[1]}" in last and f"Stop: likely {stop}" in last


@pytest.mark.parametrize("code", CODES)
def test_the_sliders_of_the_lessons_say_what_a_plan_says(code):
    plan = planned(code)
    day = plan.day
    inputs = day.samples.inputs
    room = [column[0] for column in (inputs.room.air_temp_c, inputs.room.rh_fraction, inputs.room.wind_m_s)]
    other = planned(code, mix="60 F").day  # where a slider starts
    moved = stiffening.mover(other)(inputs.mix_temp_c, *room)
    first = f"First steel likely from {said(day, 'first_steel')[0]}"
    assert str(stiffening.moved_words(other)(moved, "both")).startswith(first)
    assert next_words((day, day)).startswith(first)
    assert said(moved, "strip") == said(day, "strip")  # base and stone counted in
    there = ready_by.ready_by(plan)(inputs.mix_temp_c, room[0], inputs.thickness_m, room[2])
    assert f"about {said(day, 'last_steel')[1]}," in ready_by.ready_words(plan)(there).splitlines()[0]


@pytest.mark.parametrize("code", CODES)
@pytest.mark.parametrize("event", ["strip", "first_steel_end", "last_steel_end"])
def test_the_backwards_answer_planned_forward_as_a_job_comes_at_the_wanted_minute(code, event):
    plan = planned(code)
    hour = f"{plan.day.clock(plan.day.likely_h(event)):%H:%M}"
    by = plan.day.clock(plan.day.likely_h(event)) - timedelta(minutes=25)
    lines = backwards_lines(plan, event, by)
    assert f"about {hour};" in lines[0]
    start = re.search(r"water in at (\d\d:\d\d) at the latest", lines[1]).group(1)
    start = datetime.combine(by.date(), datetime.strptime(start, "%H:%M").time())
    sooner = planned(code, start=start).day
    assert -1 <= (sooner.clock(sooner.likely_h(event)) - by).total_seconds() / 60 <= 0
    warm = re.search(r"a mix of [\d.]+ °F \(([\d.]+) °C\) or warmer", lines[2])
    if warm:  # to a tenth of a degree
        warmer = planned(code, mix=f"{warm.group(1)} °C").day
        assert abs((warmer.clock(warmer.likely_h(event)) - by).total_seconds()) <= 60


@pytest.mark.parametrize("code", CODES)
def test_curve_dots_and_ruler_say_it_too(code):
    plan = planned(code)
    inputs = plan.day.samples.inputs
    cup = plan_day(replace(inputs, base_mix_temp_c=None, area_m2=0.3, hands=3.0))
    words = StiffeningCurve(rod_cup.set_curve(cup), cup.water_in).alt
    for name, key in (("Sides off", "strip"), ("First steel", "first_steel"), ("Last steel", "last_steel")):
        marked_h = opening_times(cup, key).marks_h[1]
        assert marked_h == pytest.approx(cup.likely_h(key), abs=1e-9), key  # nobody waits for hands here
        reached = re.search(rf"{name}[^:]*: reached about (\d\d:\d\d)", words).group(1)
        apart = datetime.strptime(reached, "%H:%M") - datetime.strptime(said(cup, key)[0], "%H:%M")
        assert abs(apart.total_seconds()) <= 60, key
    rows = ruler(plan.day)
    assert all(row.look_from_h <= row.likely_h <= row.over_by_h for row in rows)


@pytest.mark.parametrize("wind_m_s", [0.0, 4.0])
@pytest.mark.parametrize("thickness_m", [0.0254, 0.0508])
def test_the_lines_of_the_map_are_near_what_a_plan_says_there(thickness_m, wind_m_s):
    model = ready_by.ready_by(bench())
    shown = model(15.5556, 21.1111, thickness_m, wind_m_s).shown
    assert shown.here[2] == pytest.approx(model(15.5556, 21.1111, thickness_m, wind_m_s).done_h, abs=1e-12)
    for row in (0, 4, 9):
        for column in (0, 5, 10):
            mix_c, air_c = convert(ready_by.MIXES_F[row], "F", "C"), convert(ready_by.ROOMS_F[column], "F", "C")
            told_h = model(float(mix_c), float(air_c), thickness_m, wind_m_s).done_h
            assert abs(shown.answer[row, column] - told_h) < max(0.025 * told_h, 3 * MINUTE_H), (row, column)


def test_every_event_has_its_stage_and_unknown_ones_are_named():
    day = bench().day
    assert [day.likely_h(event) for event in EVENTS] == sorted(day.likely_h(event) for event in EVENTS)
    with pytest.raises(ValueError, match="event: 'lunch' given"):
        day.likely_h("lunch")


def test_likely_is_the_median_of_the_days_until_hands_hold_it_up():
    day = bench().day
    assert not day.crowded
    for event, (key, end) in EVENTS.items():
        hours = (day.samples.open_h if end == "likely_from_h" else day.samples.close_h)[key]
        assert np.mean(hours <= day.likely_h(event)) == pytest.approx(0.5, abs=0.003), event
    held = plan_day(replace(day.samples.inputs, area_m2=6.0, hands=1.0))
    assert held.crowded
    key = next(key for key in held.crowded if key in TITLES)
    assert held.stage(key).likely_from_h > np.median(held.samples.open_h[key]) + MINUTE_H
