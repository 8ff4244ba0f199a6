"""The mortar alone on its middle day, for many rooms and mixes at once: the lines of a map."""

import numpy as np

from shop_calc import defaults
from shop_calc.trade.timeline.cloud import middle_day
from shop_calc.trade.timeline.set_clock import run_clock, steady, time_at_resistance_h

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


def middle_times_h(mix_temp_c, air_temp_c, rh_fraction, wind_m_s, thickness_m, events=tuple(EVENTS), bands=None):
    """Say when each event of the set clock comes on the middle day, for many what-ifs at once.

    Not for an hour that anybody is told: the likely hour is the median of the 500 days, see timeline.day.

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
    inputs = (mix_temp_c, air_temp_c, rh_fraction, wind_m_s, thickness_m)
    shape = np.broadcast_shapes(*(np.shape(value) for value in inputs))
    flat = [np.broadcast_to(np.asarray(value, dtype=float), shape).reshape(-1) for value in inputs]
    parts = {event: [] for event in events}
    for low in range(0, flat[0].size, CHUNK):
        mix, temp, humidity, wind, thickness = (column[low : low + CHUNK] for column in flat)
        clock = run_clock(mix, thickness, steady(temp, humidity, wind), days=middle_day(bands) if bands else None)
        for event in events:
            parts[event].append(time_at_resistance_h(clock, defaults.si(EVENTS[event])))
    return {event: np.concatenate(columns).reshape(shape) for event, columns in parts.items()}
