"""The backward question: it must be done by then; so when does the water go in, and how cold must the mix be?"""

from dataclasses import dataclass
from datetime import timedelta
from math import floor

import numpy as np

from shop_calc import units
from shop_calc.trade.timeline.what_if import EVENTS, middle_times_h

STEP_H = 1.0 / 6.0  # candidate starts every ten minutes
LOOK_BACK_H = 24.0
COLDEST_MIX_C, WARMEST_MIX_C = 4.0, 32.0

WORDS = {
    "strip": "the sides can come off",
    "strip_end": "the edges are patched",
    "first_steel": "the first steel can start",
    "first_steel_end": "the first steel is done",
    "last_steel": "the last steel can start",
    "last_steel_end": "the last steel is done",
    "stop": "every tool has stopped",
}


@dataclass(frozen=True)
class Backwards:
    """What it takes to have an event by a given time.

    Parameters
    ----------
    event : str
        A key of WORDS [-].
    by_h : float
        When it must have come, hours after the first water of the job [h].
    planned_h : float
        When it comes as the job stands [h].
    latest_start_h : float or None
        Latest first water at the job's mix temperature; None when no start of the last 24 h does it [h].
    mix_temp_c : float or None
        Coolest mix that does it with the job's own start; None when none from 4 to 32 °C does [°C].
    starts_h : ndarray of shape (starts,)
        Candidate starts, hours after the first water of the job [h].
    mix_temps_c : ndarray of shape (temps,)
        Candidate mix temperatures [°C].
    event_h : ndarray of shape (temps, starts)
        When the event comes for each [h].
    answer : tuple of str
        The answer, a sentence a line [-].

    Examples
    --------
    >>> WORDS["strip"]
    'the sides can come off'

    References
    ----------
    Common practice, no source.
    """

    event: str
    by_h: float
    planned_h: float
    latest_start_h: float | None
    mix_temp_c: float | None
    starts_h: np.ndarray
    mix_temps_c: np.ndarray
    event_h: np.ndarray
    answer: tuple

    @property
    def reachable(self):
        """True where start and mix temperature have the event in time; shape (temps, starts)."""
        return self.event_h <= self.by_h


def work_backwards(inputs, event, by):
    """Solve for the start, and for the mix temperature, that have an event by a clock time.

    Parameters
    ----------
    inputs : DayInputs
        The day as it stands [as its fields].
    event : str
        A key of WORDS; "last_steel_end" for "I must leave by then" [-].
    by : datetime
        The clock time [-].

    Returns
    -------
    Backwards
        Start, mix temperature and the whole field of both [as its fields].

    Raises
    ------
    ValueError
        When the event is unknown or the time is more than two days away.

    Examples
    --------
    >>> from datetime import datetime
    >>> from shop_calc.trade.timeline.day import DayInputs
    >>> from shop_calc.trade.timeline.room import steady_room
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> round(work_backwards(inputs, "strip", datetime(2026, 5, 4, 12)).latest_start_h, 2)
    1.62

    Notes
    -----
    Reckoned on the middle day; the bands of the plan still stand around it. The air keeps to the clock: an earlier
    start meets the air of the earlier hour.

    References
    ----------
    As shop_calc.trade.timeline.set_clock.
    """
    if event not in EVENTS:
        raise ValueError(f"event: {event!r} given; it must be one of {', '.join(EVENTS)}")
    by_h = (by - inputs.water_in).total_seconds() / 3600.0
    if abs(by_h) > 48.0:
        raise ValueError(f"wanted time: {by:%Y-%m-%d %H:%M} given; it must be within two days of the first water")
    steps = round(LOOK_BACK_H / STEP_H)
    starts_h = by_h + STEP_H * np.arange(-steps, 1)
    mix_temps_c = np.arange(COLDEST_MIX_C, WARMEST_MIX_C + 0.5, 1.0)

    def event_at(mix_temp_c, start_h):
        met_water_h = np.asarray(start_h) + inputs.face_load_h
        after_h = middle_times_h(
            mix_temp_c, 0.0, 0.5, 0.0, inputs.thickness_m, (event,), air=inputs.room, start_h=met_water_h,
            bands=inputs.bands,
        )  # fmt: skip
        return after_h[event] + met_water_h

    event_h = event_at(mix_temps_c[:, np.newaxis], starts_h)
    planned_h = float(event_at(inputs.mix_temp_c, 0.0))
    latest_start_h = _latest(starts_h, event_at(inputs.mix_temp_c, starts_h), by_h)
    mix_temp_c = _coolest(mix_temps_c, event_at(mix_temps_c, 0.0), by_h)
    answer = _answer(inputs, event, by, by_h, planned_h, latest_start_h, mix_temp_c)
    return Backwards(event, by_h, planned_h, latest_start_h, mix_temp_c, starts_h, mix_temps_c, event_h, answer)


def _latest(starts_h, event_h, by_h):
    """Latest start that is in time, between the candidates by a straight line."""
    in_time = np.flatnonzero(event_h <= by_h)
    if in_time.size == 0:
        return None
    last = int(in_time[-1])
    if not np.isfinite(event_h[last + 1]):  # there is a next one: a start at the wanted time itself is never in time
        return float(starts_h[last])
    share = (by_h - event_h[last]) / (event_h[last + 1] - event_h[last])
    return float(starts_h[last] + share * (starts_h[last + 1] - starts_h[last]))


def _coolest(mix_temps_c, event_h, by_h):
    """Coolest mix that is in time; a warmer mix is always earlier."""
    in_time = np.flatnonzero(event_h <= by_h)
    if in_time.size == 0:
        return None
    first = int(in_time[0])
    if first == 0 or not np.isfinite(event_h[first - 1]):
        return float(mix_temps_c[first])
    share = (event_h[first - 1] - by_h) / (event_h[first - 1] - event_h[first])
    return float(mix_temps_c[first - 1] + share * (mix_temps_c[first] - mix_temps_c[first - 1]))


def _answer(inputs, event, by, by_h, planned_h, latest_start_h, mix_temp_c):
    def said(moment):  # the day is named only where it is another one
        return f"{moment:%H:%M}" if moment.date() == inputs.water_in.date() else f"{moment:%a %H:%M}"

    def clock(hour):
        return said(inputs.water_in + timedelta(minutes=floor(hour * 60 + 0.5)))

    lines = [f"As planned, {WORDS[event]} about {clock(planned_h)}; wanted by {said(by)}."]
    if latest_start_h is None:
        lines.append("No start of the 24 hours before it is early enough at this mix temperature.")
    else:
        mix = units.show(inputs.mix_temp_c, "temperature")
        lines.append(f"With a mix of {mix}, water in at {clock(latest_start_h)} at the latest.")
    start = clock(0.0)
    if mix_temp_c is None:
        warm = units.show(WARMEST_MIX_C, "temperature")
        lines.append(
            f"With water in at {start} no mix up to {warm} is early enough: start earlier, or warm the room."
            if by_h > 0
            else f"Water in at {start} is after the wanted time."
        )
    elif mix_temp_c <= COLDEST_MIX_C:
        lines.append(f"With water in at {start} any mix is early enough, even one of "
                     f"{units.show(COLDEST_MIX_C, 'temperature')}.")  # fmt: skip
    else:
        lines.append(f"With water in at {start}, a mix of {units.show(mix_temp_c, 'temperature')} or warmer.")
    return tuple(lines)
