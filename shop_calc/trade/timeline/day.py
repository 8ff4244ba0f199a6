"""The day: stages with three times each, from five hundred days that could be today.

The likely hour of a stage has one meaning everywhere a maker reads one (plan, sheet, picture, backwards question,
lesson): the median of the days that could be today, each with the weight it has by then, and never before the work of
the stage before it is done. `read_day` makes it; `Day.stage` and `Day.likely_h` hand it out.
"""

from dataclasses import dataclass
from datetime import datetime, timedelta
from math import floor

import numpy as np

from shop_calc.trade.timeline.day_inputs import DayInputs
from shop_calc.trade.timeline.day_samples import DaySamples, sample_day
from shop_calc.trade.timeline.stages import ORDER, STAGES, Stage
from shop_calc.trade.timeline.weighted_days import quantile, weighted

__all__ = [
    "EARLY_SHARE", "EVENTS", "LATE_SHARE", "LIKELY_SHARE", "Day", "DayInputs", "DaySamples", "plan_day", "read_day",
    "sample_day",
]  # fmt: skip

EARLY_SHARE, LIKELY_SHARE, LATE_SHARE = 0.05, 0.5, 0.95
# What one asks of a day -> the stage, and which end of its likely window.
EVENTS = {
    "strip": ("strip", "likely_from_h"),
    "strip_end": ("strip", "likely_to_h"),
    "first_steel": ("first_steel", "likely_from_h"),
    "first_steel_end": ("first_steel", "likely_to_h"),
    "last_steel": ("last_steel", "likely_from_h"),
    "last_steel_end": ("last_steel", "likely_to_h"),
    "stop": ("stop", "likely_from_h"),
}


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
    >>> from shop_calc.trade.timeline.room import steady_room
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

    def likely_h(self, event):
        """Likely hour of an event, a key of EVENTS; ValueError lists the keys when it is unknown."""
        if event not in EVENTS:
            raise ValueError(f"event: {event!r} given; it must be one of {', '.join(EVENTS)}")
        key, end = EVENTS[event]
        return getattr(self.stage(key), end)

    def clock(self, hour):
        """Turn hours after the first water into a datetime, to the minute."""
        return self.water_in + timedelta(minutes=floor(hour * 60.0 + 0.5))


def read_day(samples, weight=None, early_weight=None):
    """Read the three times of every stage off the days.

    Parameters
    ----------
    samples : DaySamples
        The days [h].
    weight : ndarray of shape (days,), optional
        New weights, after something was seen [-].
    early_weight : ndarray of shape (days,), optional
        Weights for the early edge, that is reckoned without evaporative cooling; `weight` if left out [-].

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
    >>> from shop_calc.trade.timeline.room import steady_room
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> day = read_day(sample_day(inputs))
    >>> day.stage("strip").look_from_h < day.stage("strip").likely_from_h < day.stage("strip").over_by_h
    True

    Notes
    -----
    Likely is the median of the weighted days. A likely window never starts before the one before it has ended: where
    the mortar is faster than the hands, the stage is listed as crowded.

    References
    ----------
    Common practice, no source.
    """
    weight = samples.days.weight if weight is None else weighted(samples.days, weight).weight
    early = weight if early_weight is None else weighted(samples.days, early_weight).weight
    stack = np.array([[samples.open_h[key], samples.close_h[key], samples.early_h[key]] for key in ORDER])
    middle = quantile(stack[:, :2], weight, LIKELY_SHARE)
    first = quantile(stack[:, 2], early, EARLY_SHARE)
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
            deadline_h = quantile(samples.deadline_h[key], weight, LIKELY_SHARE)
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
    >>> from shop_calc.trade.timeline.room import steady_room
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> str(plan_day(inputs).clock(2.5))
    '2026-05-04 10:30:00'

    References
    ----------
    Common practice, no source.
    """
    return read_day(sample_day(inputs, days))
