"""Many days at once: when each stage would come in other rooms, with other mixes and other starts."""

import numpy as np

from shop_calc import defaults
from shop_calc.trade.timeline.cloud import day_cloud, middle_day
from shop_calc.trade.timeline.day import EARLY_SHARE, LATE_SHARE
from shop_calc.trade.timeline.set_clock import run_clock, steady, time_at_resistance_h
from shop_calc.trade.timeline.weighted_days import quantile

# The late clock's events and the resistance that defines each.
EVENTS = {
    "strip": "strip_pr_low",
    "strip_end": "strip_pr_high",
    "first_steel": "first_steel_pr_low",
    "first_steel_end": "first_steel_pr_high",
    "last_steel": "last_steel_pr_low",
    "last_steel_end": "last_steel_pr_high",
    "stop": "stop_pr",
}
CHUNK = 8_192  # elements stepped together: they stay in the processor's cache


def middle_times_h(mix_temp_c, air_temp_c, rh_fraction, wind_m_s, thickness_m, events=tuple(EVENTS), *, air=None,
                   start_h=0.0, bands=None):  # fmt: skip
    """Say when each event of the set clock comes on the middle day, for many what-ifs at once.

    Parameters
    ----------
    mix_temp_c : float or array of shape (...)
        Mix temperature [°C].
    air_temp_c : float or array of shape (...)
        Air temperature, the same all day [°C].
    rh_fraction : float or array of shape (...)
        Relative humidity [-].
    wind_m_s : float or array of shape (...)
        Air speed [m/s].
    thickness_m : float or array of shape (...)
        Thickness of the piece [m].
    events : tuple of str
        Which events, keys of EVENTS [-].
    air : Room, optional
        A changing room instead of the three constants [as its fields].
    start_h : float or array of shape (...)
        When water is added, on the hours of `air` [h].
    bands : dict of str to (low, middle, high), optional
        Bands that a shop's own log gives, see cloud.day_cloud; their middle counts [SI unit of each].

    Returns
    -------
    dict of str to ndarray of shape (...)
        Hours after the water of this mortar; nan where it does not set in four days [h].

    Raises
    ------
    ValueError
        When an entry is impossible or an event unknown.

    Examples
    --------
    >>> f"{float(middle_times_h(16.0, 21.0, 0.5, 0.0, 0.0381)['first_steel']):.2f}"
    '3.05'

    Notes
    -----
    Every uncertain quantity has its default, or the middle that the log gives; no edge criterion, no hands: this is
    the mortar alone.

    References
    ----------
    As shop_calc.trade.timeline.set_clock.
    """
    unknown = [event for event in events if event not in EVENTS]
    if unknown:
        raise ValueError(f"event: {unknown[0]!r} given; it must be one of {', '.join(EVENTS)}")
    inputs = (mix_temp_c, air_temp_c, rh_fraction, wind_m_s, thickness_m, start_h)
    shape = np.broadcast_shapes(*(np.shape(value) for value in inputs))
    flat = [np.broadcast_to(np.asarray(value, dtype=float), shape).reshape(-1) for value in inputs]
    parts = {event: [] for event in events}
    for low in range(0, flat[0].size, CHUNK):
        mix, temp, humidity, wind, thickness, start = (column[low : low + CHUNK] for column in flat)
        clock = run_clock(
            mix, thickness, air or steady(temp, humidity, wind), start_h=start if air else 0.0,
            days=middle_day(bands) if bands else None,
        )  # fmt: skip
        for event in events:
            parts[event].append(time_at_resistance_h(clock, defaults.si(EVENTS[event])))
    return {event: np.concatenate(columns).reshape(shape) for event, columns in parts.items()}


def band_times_h(mix_temp_c, air_temp_c, rh_fraction, wind_m_s, thickness_m, event, *, days=None):
    """Give the 5 %, 50 % and 95 % times of one event over the 500 days, for many what-ifs at once.

    Parameters
    ----------
    mix_temp_c : float or array of shape (cells,)
        Mix temperature [°C].
    air_temp_c : float or array of shape (cells,)
        Air temperature, the same all day [°C].
    rh_fraction : float or array of shape (cells,)
        Relative humidity [-].
    wind_m_s : float or array of shape (cells,)
        Air speed [m/s].
    thickness_m : float or array of shape (cells,)
        Thickness of the piece [m].
    event : str
        A key of EVENTS [-].
    days : Cloud, optional
        Other days than the usual 500 [as its fields].

    Returns
    -------
    ndarray of shape (3, cells)
        Early without evaporation, likely, late; hours after the water [h].

    Raises
    ------
    ValueError
        When an entry is impossible or the event unknown.

    Examples
    --------
    >>> band_times_h(16.0, 21.0, 0.5, 0.0, 0.0381, "strip").shape
    (3, 1)

    Notes
    -----
    The early end leaves evaporative cooling out: evaporation never makes a plan say "come later".

    References
    ----------
    As shop_calc.trade.timeline.set_clock.
    """
    if event not in EVENTS:
        raise ValueError(f"event: {event!r} given; it must be one of {', '.join(EVENTS)}")
    days = day_cloud() if days is None else days
    inputs = (mix_temp_c, air_temp_c, rh_fraction, wind_m_s, thickness_m)
    columns = np.broadcast_arrays(*(np.atleast_1d(np.asarray(value, dtype=float)) for value in inputs))
    cells = columns[0].size
    together = max(CHUNK // (2 * days.weight.size), 1)
    answer = np.empty((3, cells))
    evaporating = np.array([True, False]).reshape(2, 1, 1)
    resistance_pa = defaults.si(EVENTS[event])
    for low in range(0, cells, together):
        mix, temp, humidity, wind, thickness = (column[low : low + together, np.newaxis] for column in columns)
        clock = run_clock(
            mix, thickness, steady(temp, humidity, wind),
            until_pa=resistance_pa, days=days, evaporating=evaporating,
        )  # fmt: skip
        cooled, warm = time_at_resistance_h(clock, resistance_pa)
        answer[0, low : low + together] = quantile(warm, days.weight, EARLY_SHARE)
        answer[1, low : low + together] = quantile(cooled, days.weight, 0.5)
        answer[2, low : low + together] = quantile(cooled, days.weight, LATE_SHARE)
    return answer
