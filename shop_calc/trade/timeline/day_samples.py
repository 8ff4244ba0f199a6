"""The day on every one of the five hundred days: when each stage opens and closes."""

from dataclasses import dataclass

import numpy as np

from shop_calc import defaults
from shop_calc.science import setting
from shop_calc.trade.timeline.clock_rows import clock_rows, days_of_rows
from shop_calc.trade.timeline.cloud import Cloud, day_cloud
from shop_calc.trade.timeline.day_inputs import DayInputs
from shop_calc.trade.timeline.early_hours import base_done_at_h, early_hours
from shop_calc.trade.timeline.set_clock import SetClock, age_at_h, run_clock, time_at_age_h, time_at_resistance_h

_WINDOWS = {  # stages of the late clock: names of the resistances that open and close them
    "strip": ("strip_pr_low", "strip_pr_high"),
    "first_steel": ("first_steel_pr_low", "first_steel_pr_high"),
    "last_steel": ("last_steel_pr_low", "last_steel_pr_high"),
}


@dataclass(frozen=True)
class DaySamples:
    """Every stage on every one of the 500 days, before weights are put to them.

    Parameters
    ----------
    inputs : DayInputs
        What they were made from [as its fields].
    days : Cloud
        The days [as its fields].
    open_h, close_h : dict of str to ndarray of shape (days,)
        When each stage opens and closes, with evaporative cooling [h].
    early_h : dict of str to ndarray of shape (days,)
        When each stage opens with evaporative cooling left out [h].
    deadline_h : dict of str to ndarray of shape (days,)
        Last good moment of a stage that must not be late [h].
    clock : SetClock
        Histories of shape (steps + 1, rows, days), each with and without evaporation: the first load of the base
        first, the face last, between them the last load of the base where there are several; one load that gives
        both is one pair of rows [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.timeline.room import steady_room
    >>> from datetime import datetime
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> sample_day(inputs).open_h["strip"].shape
    (500,)

    References
    ----------
    Common practice, no source.
    """

    inputs: DayInputs
    days: Cloud
    open_h: dict
    close_h: dict
    early_h: dict
    deadline_h: dict
    clock: SetClock


def sample_day(inputs, days=None):
    """Run the day on every one of the 500 days.

    Parameters
    ----------
    inputs : DayInputs
        What the day depends on [as its fields].
    days : Cloud, optional
        Other days than the usual 500 [as its fields].

    Returns
    -------
    DaySamples
        Opening and closing of every stage on every day [h].

    Examples
    --------
    >>> from shop_calc.trade.timeline.room import steady_room
    >>> from datetime import datetime
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> round(float(np.median(sample_day(inputs).open_h["first_steel"])), 2)
    3.04

    Notes
    -----
    Two clocks. The early one starts anew whenever the layer is worked; the late one starts when water meets
    cement in that layer's own load. The early clock says when the base bears the face. Sides come off by the late
    clock of the slowest: first or last load of the base, or face. At 10 psi the mortar bears about 7.7 kPa in shear
    (a ninth of it, from memory of Skempton's bearing factor), and an edge of 1 1/2 in asks for 0.6 kPa with its
    safety factor, so it stands by then whatever the early clock says.

    References
    ----------
    Resistances of the stages: data/defaults.csv. Clocks: science.build_up and science.setting.
    """
    days = day_cloud(inputs.bands) if days is None else days
    start_h, mix_temp_c = clock_rows(inputs)
    base_start_h, base_done_h = inputs.base_loads_h[0], base_done_at_h(inputs)
    clock = run_clock(
        mix_temp_c,
        inputs.thickness_m,
        inputs.room,
        start_h=start_h,
        days=days_of_rows(inputs, days),
        evaporating=np.tile([True, False], len(start_h) // 2)[:, np.newaxis],
        least_h=base_done_h - base_start_h,
    )
    return stage_hours(inputs, days, clock)


def sample_again(samples, days):
    """Run the day on other days whose slab goes through the same temperatures.

    Parameters
    ----------
    samples : DaySamples
        The days already run [h].
    days : Cloud
        The same days, in the same order, with another initial set, exponent or early clock [as its fields].

    Returns
    -------
    DaySamples
        As from `sample_day`, at a fraction of its cost [h].

    Examples
    --------
    >>> from shop_calc.trade.timeline.room import steady_room
    >>> from datetime import datetime
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> samples = sample_day(inputs)
    >>> from dataclasses import replace
    >>> later = replace(samples.days, initial_set_h=samples.days.initial_set_h + 0.1)
    >>> again = sample_again(samples, later).open_h["first_steel"]
    >>> bool((again > samples.open_h["first_steel"]).all())
    True

    Notes
    -----
    None of these quantities moves the temperature of the slab, so that its history still holds. Where it ends too
    early for the new days, the whole day is run again.

    References
    ----------
    Derived.
    """
    inputs, clock = samples.inputs, samples.clock
    rows = days_of_rows(inputs, days)
    needed_h = setting.age_at_resistance_h(defaults.si("stop_pr"), rows.initial_set_h, rows.exponent)
    reached_h = clock.history.equivalent_age_h[-1]
    if np.any(needed_h > reached_h):
        return sample_day(inputs, days)
    return stage_hours(inputs, days, SetClock(clock.history, rows.initial_set_h, rows.exponent))


def stage_hours(inputs, days, clock):
    """Read every stage off the clock, on every day.

    Parameters
    ----------
    inputs : DayInputs
        What the day depends on [as its fields].
    days : Cloud
        The days [as its fields].
    clock : SetClock
        Their clock, rows as in DaySamples [as its fields].

    Returns
    -------
    DaySamples
        Opening and closing of every stage on every day [h].

    Examples
    --------
    >>> from shop_calc.trade.timeline.room import steady_room
    >>> from datetime import datetime
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> samples = sample_day(inputs)
    >>> bool((stage_hours(inputs, samples.days, samples.clock).open_h["strip"] == samples.open_h["strip"]).all())
    True

    References
    ----------
    As `sample_day`.
    """
    start_h, _ = clock_rows(inputs)
    base_start_h, base_done_h = inputs.base_loads_h[0], base_done_at_h(inputs)

    def reach(name):
        """Hours after the first water at which base and face reach a resistance; shape (layers, 2, days).

        First axis as the pairs of rows of the clock, base first and face last; second with and without evaporation.
        """
        hours = time_at_resistance_h(clock, defaults.si(name)) + start_h
        return hours.reshape(-1, 2, hours.shape[-1])

    early = early_hours(inputs, days)
    face_on_h, float_close_h = early.face_on_h, early.float_close_h
    open_h = {"base": np.full_like(face_on_h, base_start_h), "face": face_on_h, "float": early.float_open_h}
    close_h = {"base": np.full_like(face_on_h, base_done_h), "face": early.float_open_h, "float": float_close_h}
    early_h = dict(open_h)
    for key, (opens, closes) in _WINDOWS.items():
        opening, closing = reach(opens), reach(closes)
        if key == "strip":  # the slowest; its edge stands by then, see sample_day
            open_h[key], early_h[key] = np.maximum(opening.max(axis=0), float_close_h)
            close_h[key] = np.maximum(closing[-1, 0], open_h[key])
        else:
            (open_h[key], early_h[key]), close_h[key] = opening[-1], closing[-1, 0]
    open_h["stop"], early_h["stop"] = reach("stop_pr")[-1]
    close_h["stop"] = open_h["stop"]
    open_h["look"], close_h["look"] = float_close_h, np.maximum(open_h["strip"], float_close_h)
    early_h["look"] = float_close_h

    gap_age_h = age_at_h(clock, base_done_h - base_start_h) + defaults.get("layer_gap").value / 60.0
    no_print_h = np.maximum(reach("layer_gap_pr")[0, 0], base_done_h)
    # fmin: where the pause ends after the clock does, the base is too stiff before that
    deadline_h = {"face": np.fmin(time_at_age_h(clock, gap_age_h)[0] + base_start_h, no_print_h)}
    return DaySamples(inputs, days, open_h, close_h, early_h, deadline_h, clock)
