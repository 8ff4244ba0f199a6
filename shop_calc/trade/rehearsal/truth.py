"""The hidden day of a practice pour, drawn from a code: its mortar, its air, and what they do hour by hour."""

from dataclasses import replace
from functools import cache
from statistics import NormalDist

import numpy as np

from shop_calc import defaults
from shop_calc.science import evaporation
from shop_calc.trade.jobs.job import demo_job, read_job
from shop_calc.trade.plan import make_plan
from shop_calc.trade.rehearsal.pour import GRID_H, Pour
from shop_calc.trade.rehearsal.weather import (
    OTHER_MIX_SHARE,
    WEATHERS,
    draw_room,
    drawn,
    pick_weather,
    surprised,
    tidy_code,
)
from shop_calc.trade.timeline.cloud import SAMPLED, cloud_at, middle_day
from shop_calc.trade.timeline.drying import moving_air
from shop_calc.trade.timeline.room import room_at
from shop_calc.trade.timeline.set_clock import run_clock

LEAST_H = 8.0  # hours that the histories cover at least; beyond them their last step is carried on
FALSE_SET_SHARE = 0.2  # invented: how often the mortar stiffens falsely in its bucket
DRAWN_BETWEEN = (0.02, 0.98)  # of each quantity's spread: one day in twenty-five is not rehearsed. Judgement


@cache
def demo_plan():
    """Plan the bench top that runs through the lessons.

    Returns
    -------
    Plan
        The plan; made once [as its fields].

    Examples
    --------
    >>> demo_plan().job.name
    'Garden bench top'

    References
    ----------
    Invented for the demonstration: data/jobs/garden_bench_top.toml.
    """
    return make_plan(read_job(demo_job("garden_bench_top")))


def draw_pour(code, weather=None, plan=None):
    """Draw a practice pour from a code.

    Parameters
    ----------
    code : str
        Any text; the same text gives the same day everywhere [-].
    weather : str, optional
        A key of WEATHERS; if left out drawn from the code, or the room of `plan` [-].
    plan : Plan, optional
        The job to rehearse; the bench top of the lessons if left out [as its fields].

    Returns
    -------
    Pour
        With its histories ready to be read [as its fields].

    Raises
    ------
    ValueError
        When the code is empty or the weather unknown.

    Examples
    --------
    >>> draw_pour("Oak 1", "cold shop").weather, draw_pour("oak1", "cold shop").false_set
    ('cold shop', True)

    Notes
    -----
    Hidden is one day out of the spreads from which the plan takes its 500. Histories run once, for base and face,
    open and covered; a piece that is covered for a while ages by the one history and then by the other. That lies
    between the two, and is exact for a piece that is always open or always covered.

    References
    ----------
    Spreads: data/defaults.csv. Rooms, surprises and false set: invented.
    """
    code = tidy_code(code)
    own = plan is not None and weather is None
    plan = demo_plan() if plan is None else plan
    told = plan.day.samples.inputs
    if not own:
        kind = pick_weather(code, weather)
        told = _told(code, kind, told)
    room, surprise = surprised(code, told.room)
    inverse, between = NormalDist().inv_cdf, DRAWN_BETWEEN
    rows = np.array([[inverse(drawn(code, field, *between))] for field in SAMPLED])
    hidden = cloud_at(rows, told.bands)
    false_set = drawn(code, "false set") < FALSE_SET_SHARE
    histories = _histories(told, room, hidden)
    return Pour(code, "as planned" if own else kind.name, plan, told, room, surprise, false_set, hidden, *histories)


def open_pour(plan=None):
    """Give a pour without secrets: the middle day of a plan, its room as expected.

    Not for practice: here the likely time and the truth are the same.

    Parameters
    ----------
    plan : Plan, optional
        The job; the bench top of the lessons if left out [as its fields].

    Returns
    -------
    Pour
        With its histories ready to be read [as its fields].

    Examples
    --------
    >>> open_pour().surprise
    ''

    References
    ----------
    Defaults: data/defaults.csv.
    """
    plan = demo_plan() if plan is None else plan
    told = plan.day.samples.inputs
    hidden = middle_day(told.bands)
    return Pour("open", "as planned", plan, told, told.room, "", False, hidden, *_histories(told, told.room, hidden))


def _told(code, kind, inputs):
    planned = drawn(code, "mix as planned") >= OTHER_MIX_SHARE
    mix_c = drawn(code, "mix", *(kind.mix_c if planned else kind.other_mix_c))
    room = draw_room(code, kind)
    base_c = mix_c + (1.0 - inputs.base_follows) * (room.air_temp_c[0] - mix_c)  # its stone is as warm as the shop
    return replace(inputs, room=room, mix_temp_c=mix_c, base_mix_temp_c=base_c)


def _histories(told, room, hidden):
    """Ages, rates and losses on one grid of hours after the first water."""
    start_h = np.array([[told.base_loads_h[0]]] * 2 + [[told.face_load_h]] * 2)
    mix_c = np.array([[told.base_temp_c]] * 2 + [[told.mix_temp_c]] * 2)
    clock = run_clock(
        mix_c, told.thickness_m, room, start_h=start_h, days=hidden, evaporating=np.array([[True], [False]] * 2),
        least_h=LEAST_H,
    )  # fmt: skip
    own_h, temps, ages = clock.history.time_h, clock.history.temp_c[..., 0], clock.history.equivalent_age_h[..., 0]
    hours = np.arange(0.0, own_h[-1] + 1e-9, GRID_H)
    on_grid = [np.interp(hours - start, own_h, column) for start, column in zip(start_h[:, 0], ages.T, strict=True)]
    rows = (("base", True), ("base", False), ("face", True), ("face", False))
    ages_h = {row: tuple(column.tolist()) for row, column in zip(rows, on_grid, strict=True)}
    temp_c = np.interp(hours - start_h[2, 0], own_h, temps[:, 2])
    air_c, rh_fraction, wind_m_s = room_at(room, hours)
    air_c = air_c + hidden.room_error_k[0]
    rate = evaporation.menzel_rate_kg_m2_h(temp_c, air_c, rh_fraction, moving_air(wind_m_s))
    rate = rate * hidden.evaporation_factor[0]
    columns = rate, _summed(rate), _summed(np.where(rate >= defaults.si("face_red"), rate, 0.0)), temp_c
    return (ages_h, *(tuple(column.tolist()) for column in columns))


def _summed(rate):
    """Trapezoids from the first water on."""
    return np.concatenate(([0.0], np.cumsum((rate[1:] + rate[:-1]) / 2.0 * GRID_H)))


def weathers():
    """List the kinds of day.

    Returns
    -------
    tuple of str
        Names for `draw_pour` [-].

    Examples
    --------
    >>> weathers()
    ('mild', 'hot and windy', 'cold shop')

    References
    ----------
    Invented for the rehearsal.
    """
    return tuple(WEATHERS)
