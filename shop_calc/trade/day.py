"""The day: stages with three times each, from five hundred days that could be today."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from math import floor

import numpy as np

from shop_calc import defaults
from shop_calc.science import build_up, checks
from shop_calc.trade import hands as work
from shop_calc.trade.cloud import Cloud, day_cloud, quantile, weighted
from shop_calc.trade.room import Room
from shop_calc.trade.set_clock import SetClock, age_at_h, run_clock, time_at_age_h, time_at_resistance_h
from shop_calc.trade.stages import ORDER, STAGES, Stage

EARLY_SHARE, LATE_SHARE = 0.05, 0.95
_WINDOWS = {  # stages of the late clock: names of the resistances that open and close them
    "strip": ("strip_pr_low", "strip_pr_high"),
    "first_steel": ("first_steel_pr_low", "first_steel_pr_high"),
    "last_steel": ("last_steel_pr_low", "last_steel_pr_high"),
}


@dataclass(frozen=True)
class DayInputs:
    """What the day depends on.

    Parameters
    ----------
    water_in : datetime
        Clock time at which water first meets powder [-].
    room : Room
        Air over the piece, hours counted from the first water [as its fields].
    mix_temp_c : float
        Temperature of the mortar when it leaves the mixer; the face has it [°C].
    thickness_m : float
        Thickness of the piece [m].
    base_depth_m : float
        Depth of the base layer [m].
    area_m2 : float
        Top surface [m2].
    base_loads_h : tuple of float
        When each load that goes into the base meets water, hours after the first [h].
    face_load_h : float
        When the load that gives the face share meets water [h].
    minutes_per_load : float
        From one load's water until it is placed [min].
    hands : float
        People at work [-].
    base_mix_temp_c : float or None
        Temperature of the base when stone has gone in; that of the mortar when left out [°C].
    bands : dict or None
        Bands that a shop's own log gives, see cloud.day_cloud [SI].

    Examples
    --------
    >>> from shop_calc.trade.room import steady_room
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> inputs.face_load_h
    0.0

    References
    ----------
    Common practice, no source.
    """

    water_in: datetime
    room: Room
    mix_temp_c: float
    thickness_m: float
    base_depth_m: float
    area_m2: float
    base_loads_h: tuple = (0.0,)
    face_load_h: float = 0.0
    minutes_per_load: float = 20.0
    hands: float = 1.0
    base_mix_temp_c: float | None = None
    bands: dict | None = None

    def __post_init__(self):
        checks.require("mix temperature", self.mix_temp_c, 0, 40, unit="°C")
        checks.require("base mix temperature", self.base_temp_c, 0, 40, unit="°C")
        checks.require("thickness", self.thickness_m, 0, unit="m", low_open=True)
        checks.require("base depth", self.base_depth_m, 0, self.thickness_m, unit="m", low_open=True)
        checks.require("minutes per load", self.minutes_per_load, 0, 180, unit="min", low_open=True)
        checks.require("load times", np.asarray(self.base_loads_h), 0, unit="h")

    @property
    def base_temp_c(self):
        """Temperature of the base after mixing [°C]."""
        return self.mix_temp_c if self.base_mix_temp_c is None else self.base_mix_temp_c


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
        Histories of shape (steps + 1, rows, days): base first and face last, each with and without evaporation;
        two rows when one load gives both, else four [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.room import steady_room
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


@dataclass(frozen=True)
class Day:
    """The day as it goes on the wall.

    Parameters
    ----------
    water_in : datetime
        Clock time of the first water [-].
    stages : tuple of Stage
        In order [h].
    load_offsets_h : tuple of float
        When each load meets water [h].
    samples : DaySamples
        The days behind the bands [as its fields].
    weight : ndarray of shape (days,)
        Weight of each day [-].
    crowded : tuple of str
        Stages whose likely window had to wait for the work before it [-].

    Examples
    --------
    >>> from shop_calc.trade.room import steady_room
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> plan_day(inputs).stage("strip").title
    'Sides off, patch the edges'

    References
    ----------
    Common practice, no source.
    """

    water_in: datetime
    stages: tuple
    load_offsets_h: tuple
    samples: DaySamples
    weight: np.ndarray
    crowded: tuple

    def stage(self, key):
        """Look one stage up by its key; ValueError lists the keys when it is unknown."""
        for stage in self.stages:
            if stage.key == key:
                return stage
        raise ValueError(f"stage: {key!r} given; it must be one of {', '.join(s.key for s in self.stages)}")

    def clock(self, hour):
        """Turn hours after the first water into a datetime, to the minute."""
        return self.water_in + timedelta(minutes=floor(hour * 60.0 + 0.5))


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
    >>> from shop_calc.trade.room import steady_room
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> round(float(np.median(sample_day(inputs).open_h["first_steel"])), 1)
    3.1

    Notes
    -----
    Two clocks. The early one starts anew whenever the layer is worked; the late one starts when water meets
    cement in that layer's own load. Sides come off when both allow it.

    References
    ----------
    Resistances of the stages: data/defaults.csv. Clocks: science.build_up and science.setting.
    """
    days = day_cloud(inputs.bands) if days is None else days
    base_start_h, face_start_h = inputs.base_loads_h[0], inputs.face_load_h
    layers = [(base_start_h, inputs.base_temp_c), (face_start_h, inputs.mix_temp_c)]
    layers = layers[:1] if layers[0] == layers[1] else layers  # one load for both: step it once
    start_h, mix_temp_c = (np.repeat(column, 2)[:, np.newaxis] for column in zip(*layers, strict=True))
    evaporating = np.tile([True, False], len(layers))[:, np.newaxis]
    base_done_h = inputs.base_loads_h[-1] + inputs.minutes_per_load / 60.0
    clock = run_clock(
        mix_temp_c,
        inputs.thickness_m,
        inputs.room,
        start_h=start_h,
        days=days,
        evaporating=evaporating,
        least_h=base_done_h - base_start_h + 1.0,
    )

    def reach(name):
        """Hours after the first water at which base and face reach a resistance; shape (2, 2, days).

        First axis base and face, second with and without evaporation.
        """
        hours = time_at_resistance_h(clock, defaults.si(name)) + start_h
        return np.stack((hours[:2], hours[-2:]))

    base_open_h = base_done_h + np.maximum(
        defaults.get("base_ready_earliest").value / 60.0, _edge_h(days, inputs.base_depth_m)
    )
    face_h = work.step_h(inputs.area_m2, defaults.get("face_minutes_per_area").value, inputs.hands)
    float_h = work.step_h(inputs.area_m2, defaults.get("float_minutes_per_area").value, inputs.hands)
    face_on_h = np.maximum(base_open_h, face_start_h + inputs.minutes_per_load / 60.0)
    float_open_h = face_on_h + face_h
    float_close_h = float_open_h + float_h
    stands_h = float_close_h + _edge_h(days, inputs.thickness_m)

    open_h = {"base": np.full_like(face_on_h, base_start_h), "face": face_on_h, "float": float_open_h}
    close_h = {"base": np.full_like(face_on_h, base_done_h), "face": float_open_h, "float": float_close_h}
    early_h = dict(open_h)
    for key, (opens, closes) in _WINDOWS.items():
        opening, closing = reach(opens), reach(closes)
        if key == "strip":  # both layers must hold, and the edge must stand by itself
            open_h[key], early_h[key] = np.maximum(opening.max(axis=0), stands_h)
            close_h[key] = np.maximum(closing[1, 0], open_h[key])
        else:
            (open_h[key], early_h[key]), close_h[key] = opening[1], closing[1, 0]
    open_h["stop"], early_h["stop"] = reach("stop_pr")[1]
    close_h["stop"] = open_h["stop"]
    open_h["look"], close_h["look"] = float_close_h, np.maximum(open_h["strip"], float_close_h)
    early_h["look"] = float_close_h

    gap_age_h = age_at_h(clock, base_done_h - base_start_h) + defaults.get("layer_gap").value / 60.0
    no_print_h = np.maximum(reach("layer_gap_pr")[0, 0], base_done_h)
    deadline_h = {"face": np.minimum(time_at_age_h(clock, gap_age_h)[0] + base_start_h, no_print_h)}
    return DaySamples(inputs, days, open_h, close_h, early_h, deadline_h, clock)


def _edge_h(days, height_m):
    """Hours of rest until an edge of this height stands alone, on each day."""
    demand_pa = build_up.edge_demand_pa(
        height_m, defaults.si("slab_density"), safety_factor=defaults.get("edge_safety_factor").value
    )
    return build_up.rest_to_stress_linear_s(demand_pa, days.yield_start_pa, days.build_up_pa_s) / 3600.0


def read_day(samples, weight=None):
    """Read the three times of every stage off the days.

    Parameters
    ----------
    samples : DaySamples
        The days [h].
    weight : ndarray of shape (days,), optional
        New weights, after something was seen [-].

    Returns
    -------
    Day
        The stages with look from, likely window and over by [h].

    Raises
    ------
    ValueError
        When no day has weight left.

    Examples
    --------
    >>> from shop_calc.trade.room import steady_room
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> day = read_day(sample_day(inputs))
    >>> day.stage("strip").look_from_h < day.stage("strip").likely_from_h < day.stage("strip").over_by_h
    True

    Notes
    -----
    A likely window never starts before the one before it has ended: where the mortar is faster than the hands,
    the stage is listed as crowded.

    References
    ----------
    Common practice, no source.
    """
    weight = samples.days.weight if weight is None else weighted(samples.days, weight).weight
    stack = np.array([[samples.open_h[key], samples.close_h[key], samples.early_h[key]] for key in ORDER])
    middle = quantile(stack[:, :2], weight, 0.5)
    first = quantile(stack[:, 2], weight, EARLY_SHARE)
    last = quantile(stack[:, 1], weight, LATE_SHARE)
    stages, crowded, free_from_h = [], [], 0.0
    for row, key in enumerate(ORDER):
        opens_h, closes_h = (float(value) for value in middle[row])
        if opens_h < free_from_h - 1e-9:
            if free_from_h - opens_h > 1.0 / 60.0:
                crowded.append(key)
            opens_h = free_from_h
        closes_h = max(closes_h, opens_h)
        deadline_h = None
        if key in samples.deadline_h:
            deadline_h = quantile(samples.deadline_h[key], weight, 0.5)
        stages.append(
            Stage(
                STAGES[key],
                min(float(first[row]), opens_h),
                opens_h,
                closes_h,
                max(float(last[row]), closes_h),
                deadline_h,
            )
        )
        free_from_h = closes_h
    inputs = samples.inputs
    loads_h = tuple(sorted({*inputs.base_loads_h, inputs.face_load_h}))
    return Day(inputs.water_in, tuple(stages), loads_h, samples, weight, tuple(crowded))


def plan_day(inputs, days=None):
    """Plan the day: sample it and read it.

    Parameters
    ----------
    inputs : DayInputs
        What the day depends on [as its fields].
    days : Cloud, optional
        Other days than the usual 500 [as its fields].

    Returns
    -------
    Day
        The stages with their three times [h].

    Examples
    --------
    >>> from shop_calc.trade.room import steady_room
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> str(plan_day(inputs).clock(2.5))
    '2026-05-04 10:30:00'

    References
    ----------
    Common practice, no source.
    """
    return read_day(sample_day(inputs, days))
