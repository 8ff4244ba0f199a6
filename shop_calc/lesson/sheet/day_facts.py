"""What the sheet says of the day: windows, cues, the ruler, the lines of the weather."""

import math

import numpy as np

from shop_calc import defaults
from shop_calc.lesson.sheet.lanes import Clock, hours, lane
from shop_calc.lesson.sheet.printed import both, clock, span
from shop_calc.lesson.sheet.words import HANDS, IF_THEN
from shop_calc.trade.timeline.drying import moving_air
from shop_calc.trade.timeline.hands import person_hours
from shop_calc.trade.timeline.ruler import ruler
from shop_calc.trade.timeline.weighted_days import quantile
from shop_calc.trade.timeline.wind_limit import wind_lines
from shop_calc.units import show

LANE_WIDE, SPARE = 250.0, 36.0  # px
MOST_TICKS, MOST_RULER = 9, 9
ROUGH_FROM_C, FROST_C = 30.0, 0.0  # as the plan warns
STRONGEST_M_S = 17.0  # beyond it nobody works outdoors


def day_facts(plan):
    """Print the stages of the day, each with its lane.

    Parameters
    ----------
    plan : Plan
        The plan [SI].

    Returns
    -------
    dict
        "stages", each with times and words as strings; "hours", the clock over the lanes; "work" of one person and
        the "hands" there are [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> facts = day_facts(make_plan(read_job(demo_job("garden_bench_top"))))
    >>> facts["stages"][4]["title"]
    'Sides off, patch the edges'

    References
    ----------
    Common practice, no source.
    """
    day = plan.day
    axis, ticks = clock_of_the_day(day)
    stages = [_stage(day, stage, axis, [hour for hour, _ in ticks]) for stage in day.stages]
    tonight = plan.cure.picked.title
    stages[-1]["tool"] = tonight[0].lower() + tonight[1:]  # not "cover" where the night wants it open
    return {
        "stages": stages,
        "hours": hours(axis, ticks, day.load_offsets_h),
        "work": show(person_hours(plan), "duration"),
        "hands": f"{plan.job.day['hands']:.0f}",
    }


def clock_of_the_day(day):
    """Lay the hours of a day out on the lanes.

    Parameters
    ----------
    day : Day
        The day [h].

    Returns
    -------
    tuple of (Clock, list of (float, str))
        The clock, and its full hours with their names [h].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> axis, ticks = clock_of_the_day(make_plan(read_job(demo_job("garden_bench_top"))).day)
    >>> [name for _, name in ticks]
    ['8', '9', '10', '11', '12', '13', '14']

    References
    ----------
    Common practice, no source.
    """
    past_h = day.water_in.minute / 60.0 + day.water_in.second / 3600.0
    last = max(max(stage.over_by_h, stage.deadline_h or 0.0) for stage in day.stages)
    from_h, to_h = -past_h, math.ceil(last + past_h - 1e-9) - past_h
    step = next((size for size in (1, 2, 3, 4, 6, 12) if (to_h - from_h) / size < MOST_TICKS), 24)
    first = -day.water_in.hour % step
    ticks = [(hour, str(day.clock(hour).hour)) for hour in np.arange(from_h + first, to_h + 1e-6, step)]
    return Clock(from_h, to_h, LANE_WIDE, SPARE), ticks


def _stage(day, stage, axis, ticks_h):
    times = {
        "likely": span(day, stage.likely_from_h, stage.likely_to_h),
        "look": clock(day, stage.look_from_h),
        "over": clock(day, stage.over_by_h),
        "deadline": "" if stage.deadline_h is None else clock(day, stage.deadline_h),
    }
    said = f"{stage.title}: look from {times['look']}, likely {times['likely']}, over by {times['over']}"
    said += f", not after {times['deadline']}" if times["deadline"] else ""
    return times | {
        "key": stage.key,
        "title": stage.title,
        "tool": stage.tool,
        "cue": stage.cue,
        "hands": HANDS.get(stage.key, ""),
        "safety": stage.words.safety,
        "if_then": IF_THEN[stage.key],
        "lane": lane(axis, stage, ticks_h, _ends(day, stage), said),
    }


def _ends(day, stage):
    """What stands at the ends of a band; the sharper of the two where there is a moment that ruins the piece."""
    look = f"{day.clock(stage.look_from_h):%H:%M}"
    if stage.deadline_h is not None:
        return look, f"not after {day.clock(stage.deadline_h):%H:%M}"
    return look, f"{day.clock(stage.over_by_h):%H:%M}"


def ruler_facts(day):
    """Print the ruler: sides off seen then, first steel so.

    Parameters
    ----------
    day : Day
        The day [h].

    Returns
    -------
    list of dict
        "seen", "look" and "likely" as clock times, at most nine [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> ruler_facts(make_plan(read_job(demo_job("garden_bench_top"))).day)[0]["seen"]
    '10:00'

    References
    ----------
    As shop_calc.trade.timeline.looks.ruler.
    """
    open_h = np.asarray(day.samples.open_h["strip"])
    wide = float(quantile(open_h, day.weight, 0.95)) - float(quantile(open_h, day.weight, 0.05))
    step = next((size for size in (0.25, 0.5, 1.0, 2.0) if wide / size < MOST_RULER - 1), 4.0)
    return [
        {
            "seen": clock(day, row.seen_h), "look": clock(day, row.look_from_h), "likely": clock(day, row.likely_h),
        }
        for row in ruler(day, step_h=step)[:MOST_RULER]
    ]  # fmt: skip


def weather_facts(plan):
    """Print the air the plan counts with, and the lines that it must not cross.

    Parameters
    ----------
    plan : Plan
        The plan [SI].

    Returns
    -------
    dict
        "rooms" and limits as strings; "reach" is over, none or line [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> weather_facts(make_plan(read_job(demo_job("garden_bench_top"))))["reach"]
    'line'

    References
    ----------
    Limits: data/defaults.csv; wind: shop_calc.trade.timeline.wind_limit.
    """
    day, drying = plan.day, plan.drying
    room = day.samples.inputs.room
    lines = wind_lines(day, drying, plan.cure.before)
    moving = float(moving_air(lines.wind_m_s))
    reach = "over" if moving >= lines.protect_m_s else "none" if lines.care_m_s > STRONGEST_M_S else "line"
    return {
        "rooms": [
            {
                "from": clock(day, max(hour, 0.0)), "air": both(air_c, "temperature"), "damp": show(damp, "fraction"),
                "wind": both(wind, "speed") if wind > 0 else {"us": "still", "si": ""},
            }
            for hour, air_c, damp, wind in _in_force(room)
        ],
        "reach": reach,
        "peak": show(drying.peak_kg_m2_h, "rate") if reach == "over" else "",
        "peak_at": clock(day, drying.peak_at_h) if reach == "over" else "",
        "care": both(lines.care_m_s, "speed") if moving < lines.care_m_s <= STRONGEST_M_S else None,
        "protect": both(lines.protect_m_s, "speed") if reach == "line" and lines.protect_m_s <= STRONGEST_M_S else None,
        "rough": both(ROUGH_FROM_C, "temperature"),
        "cold": both(defaults.si("cure_air_cold"), "temperature"),
        "hot": both(defaults.si("cure_air_hot"), "temperature"),
        "dry": show(defaults.si("cure_humidity_low"), "fraction"),
        "frost": both(FROST_C, "temperature"),
    }  # fmt: skip


def _in_force(room):
    """Rows of the room that hold from the first water on."""
    rows = list(zip(room.from_h, room.air_temp_c, room.rh_fraction, room.wind_m_s, strict=True))
    first = max((place for place, row in enumerate(rows) if row[0] <= 1e-9), default=0)
    return rows[first:]
