"""The backward question: it must be done by then; so when does the water go in, and how cold must the mix be?"""

import math
from dataclasses import dataclass
from datetime import timedelta
from math import floor

from shop_calc import units
from shop_calc.trade.timeline.day import EVENTS, plan_day

LOOK_BACK_H = 24
COLDEST_MIX_C, WARMEST_MIX_C = 5.0, 32.0  # 5 is the coldest that a job may ask for
NEAR_H = 0.1 / 60.0  # so near to the wanted time is near enough: clocks are read to the minute
_ROUNDS = 40
LATE_MINUTE = 0.2  # "at the latest" is said down to the minute, but for a few seconds

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
        When it comes as the job stands: the likely hour of the plan [h].
    latest_start_h : float or None
        Latest first water at the job's mix temperature, hours after that of the job; None when no start of the 24
        hours before the wanted time does it [h].
    mix_temp_c : float or None
        Coolest mix that does it with the job's own start; None when none from 5 to 32 °C does [°C].
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
    answer: tuple


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
        Start and mix temperature [as its fields].

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
    >>> f"{work_backwards(inputs, 'strip', datetime(2026, 5, 4, 12)).latest_start_h:.2f}"
    '1.65'

    Notes
    -----
    Every start and every mortar that is tried is planned as a day of its own, so that the hours are the likely hours
    of the plan (see shop_calc.trade.timeline.day), base, loads and hands counted in; the answer, planned forward, comes
    at the wanted minute. The air keeps to the clock: an earlier start meets the air of the earlier hour. The stone of
    the base stays as warm as it lies. Starts are tried every hour back from the wanted time, then in between.

    References
    ----------
    As shop_calc.trade.timeline.day; false position, a textbook method.
    """
    if event not in EVENTS:
        raise ValueError(f"event: {event!r} given; it must be one of {', '.join(EVENTS)}")
    by_h = (by - inputs.water_in).total_seconds() / 3600.0
    if abs(by_h) > 48.0:
        raise ValueError(f"wanted time: {by:%Y-%m-%d %H:%M} given; it must be within two days of the first water")

    def late_h(day_inputs):
        """How much later than wanted the event is; a mortar that does not set is never in time."""
        day = plan_day(day_inputs)
        hour = day.likely_h(event) + (day.water_in - inputs.water_in).total_seconds() / 3600.0
        return hour - by_h if math.isfinite(hour) else math.inf

    planned_h = late_h(inputs) + by_h
    latest_start_h = _latest(lambda start_h: late_h(inputs.started_at(inputs.water_in + timedelta(hours=start_h))), by_h)
    mix_temp_c = _coolest(lambda mix_c: late_h(inputs.mixed_at(mix_c))) if by_h > 0 else None
    answer = _answer(inputs, event, by, by_h, planned_h, latest_start_h, mix_temp_c)
    return Backwards(event, by_h, planned_h, latest_start_h, mix_temp_c, answer)


def _latest(late_h, by_h):
    """Latest start that is in time: back hour by hour, then between."""
    start_h, late = by_h, math.inf  # a start at the wanted time itself is never in time
    for back in range(1, LOOK_BACK_H + 1):
        earlier_h = by_h - back
        earlier = late_h(earlier_h)
        if earlier <= 0:
            return _between(late_h, (earlier_h, earlier), (start_h, late))
        start_h, late = earlier_h, earlier
    return None


def _coolest(late_h):
    """Coolest mix that is in time; a warmer mix is always earlier."""
    cold, warm = late_h(COLDEST_MIX_C), late_h(WARMEST_MIX_C)
    if cold <= 0:
        return COLDEST_MIX_C
    return None if warm > 0 else _between(late_h, (WARMEST_MIX_C, warm), (COLDEST_MIX_C, cold))


def _between(late_h, good, bad):
    """Where being in time ends, between a place that is in time and one that is not, each with how late it is."""
    (good, early), (bad, late) = good, bad
    for _ in range(_ROUNDS):
        if early >= -NEAR_H:
            break
        share = early / (early - late) if math.isfinite(late) else 0.5
        place = good + min(max(share, 0.02), 0.98) * (bad - good)
        found = late_h(place)
        if found <= NEAR_H / 10:
            good, early = place, found
        else:
            bad, late = place, found
    return good


def _answer(inputs, event, by, by_h, planned_h, latest_start_h, mix_temp_c):
    def said(moment):  # the day is named only where it is another one
        return f"{moment:%H:%M}" if moment.date() == inputs.water_in.date() else f"{moment:%a %H:%M}"

    def clock(hour, rounding=0.5):
        return said(inputs.water_in + timedelta(minutes=floor(hour * 60 + rounding)))

    lines = [f"As planned, {WORDS[event]} about {clock(planned_h)}; wanted by {said(by)}."]
    if latest_start_h is None:
        lines.append("No start of the 24 hours before it is early enough at this mix temperature.")
    else:
        mix = units.show(inputs.mix_temp_c, "temperature")
        lines.append(f"With a mix of {mix}, water in at {clock(latest_start_h, LATE_MINUTE)} at the latest.")
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
