"""Lesson 06: the first days of the piece and the ways to carry it, as pictures and as a table."""

import numpy as np

from shop_calc.lesson.pictures.carry_ways import CarryLane, CarryView, CarryWays
from shop_calc.lesson.pictures.first_days import FirstDays, StrengthOfFirstDays
from shop_calc.lesson.pictures.scales import day_name
from shop_calc.lesson.table import table
from shop_calc.science import strength_laws
from shop_calc.trade.after.carrying import WAYS
from shop_calc.trade.after.quarter_hour import not_before
from shop_calc.trade.timeline.room import room_at
from shop_calc.units import show

SHOWN_H = 72.0
SHORT = {"edge": "on edge", "fifth": "a fifth in", "ends": "by the ends"}
LONGEST_M = 2.4384  # end of the slider: 96 in
WEEK_H = 6.0 * 24.0  # later than that a weekday alone says too little


def mean_temp_c(plan, from_h, to_h):
    """Mean temperature of the piece over some hours under the recommended cover.

    Parameters
    ----------
    plan : Plan
        The planned job [-].
    from_h, to_h : float
        Hours after the first water [h].

    Returns
    -------
    float
        Mean temperature [°C].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> f"{mean_temp_c(make_plan(read_job(demo_job('garden_bench_top'))), 0.0, 12.0):.1f}"
    '17.6'

    References
    ----------
    As shop_calc.trade.after.strength_of_morning.
    """
    hardening, hours = plan.handling.hardening, np.linspace(from_h, to_h, 721)
    temps = np.interp(hours, hardening.time_h, hardening.temp_c)
    return float(np.mean((temps[1:] + temps[:-1]) / 2.0))


def first_days(plan, title=""):
    """Give the picture of the first three days: temperature, strength, and what each way of carrying asks for.

    Parameters
    ----------
    plan : Plan
        The planned job [-].
    title : str
        One line over the picture [-].

    Returns
    -------
    StrengthOfFirstDays
        The picture [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> first_days(make_plan(read_job(demo_job("garden_bench_top"))), "A top").alt[:5]
    'A top'

    References
    ----------
    As shop_calc.trade.after.strength_of_morning.
    """
    handling, inputs = plan.handling, plan.day.samples.inputs
    hardening, counted = handling.hardening, handling.strength.counted_pa
    hours = np.linspace(0.0, SHOWN_H, 289)
    shares = np.array([hardening.ratios_at(hour) for hour in hours]).T
    aci_pa, en_pa = np.where(shares > 0, shares, np.nan) * counted
    air_c = np.array([float(room_at(inputs.room, hour)[0]) for hour in hours])
    piece_c = np.interp(hours, hardening.time_h, hardening.temp_c)
    needs = tuple((SHORT[way.key], way.needed_strength_pa) for way in handling.carries if way.key in SHORT)
    shown = FirstDays(hours, piece_c, air_c, aci_pa, en_pa, needs, handling.morning.hour_h)
    return StrengthOfFirstDays(shown, plan.day.water_in, title=title)


def when(day, hour_h):
    """Say from which clock time something may be done.

    Parameters
    ----------
    day : Day
        The day, for its clock [h].
    hour_h : float or None
        Hours after the first water; None when it is not reached in 28 days [h].

    Returns
    -------
    str
        A few words [-].

    Examples
    --------
    >>> when(None, None)
    'not in 28 days'

    References
    ----------
    Common practice, no source.
    """
    if hour_h is None:
        return "not in 28 days"
    first = not_before(day, hour_h)
    if hour_h < WEEK_H:
        return f"from {day_name(first)[:3]} {first:%H:%M}"
    return f"from {day_name(first)}, after {hour_h / 24.0:.1f} days"


def carry_table(plan):
    """Set the ways of carrying side by side: what each pulls with, what that asks for, and from when it is free.

    Parameters
    ----------
    plan : Plan
        The planned job [-].

    Returns
    -------
    Table
        A row a way [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> carry_table(make_plan(read_job(demo_job("garden_bench_top")))).rows[-1][-1]
    'not in 28 days'

    References
    ----------
    As shop_calc.trade.after.carrying.
    """
    rows = [
        (way.title, *(show(value, "pressure") for value in (way.stress_pa, way.needed_strength_pa)),
         when(plan.day, way.earliest_h))
        for way in plan.handling.carries
    ]  # fmt: skip
    return table(("way to carry", "pull", "needed in compression", "free"), rows)


def carry_view(day, carries, sizes_m, morning_pa, counted_28_pa, morning_h):
    """Turn ways of carrying into what the picture takes.

    Parameters
    ----------
    day : Day
        The day, for its clock [h].
    carries : sequence of Carry
        Ways to carry [as their fields].
    sizes_m : (float, float, float)
        Length, width, thickness [m].
    morning_pa, counted_28_pa : float
        Compressive strength counted in the morning and at 28 days [Pa].
    morning_h : float
        The morning [h].

    Returns
    -------
    CarryView
        For `CarryWays` [-].

    Examples
    --------
    >>> carry_view(None, (), (1.5, 0.4, 0.04), 4e6, 24e6, 24.0).lanes
    ()

    References
    ----------
    ACI 318-19 19.2.3, from memory, for strength in bending.
    """
    lanes = tuple(
        CarryLane(way.title, WAYS[way.key][1], way.key == "edge", way.stress_pa, way.needed_rupture_pa,
                  way.earliest_h is not None and way.earliest_h <= morning_h + 1e-9, when(day, way.earliest_h),
                  way.tension)
        for way in carries
    )  # fmt: skip
    rupture = (float(strength_laws.rupture_modulus_pa(value)) for value in (morning_pa, counted_28_pa))
    return CarryView(*sizes_m, lanes, *rupture)


def ways_of(plan, title=""):
    """Give the picture of the ways to carry a planned piece.

    Parameters
    ----------
    plan : Plan
        The planned job [-].
    title : str
        One line over the picture [-].

    Returns
    -------
    CarryWays
        The picture [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> ways_of(make_plan(read_job(demo_job("garden_bench_top"))), "A top").alt[:5]
    'A top'

    References
    ----------
    As `carry_view`.
    """
    handling = plan.handling
    beam, counted = handling.beam, handling.strength.counted_pa
    share = handling.hardening.ratio_at(handling.morning.hour_h)
    sizes = (beam.length_m, beam.across_m, beam.thickness_m)
    view = carry_view(plan.day, handling.carries, sizes, share * counted, counted, handling.morning.hour_h)
    return CarryWays(view, LONGEST_M, title)
