"""Temperature of the piece from the morning on, until its strength is tested at 28 days."""

from itertools import pairwise

import numpy as np

from shop_calc import defaults
from shop_calc.science import slab_heat
from shop_calc.trade.timeline.drying import moving_air
from shop_calc.trade.timeline.room import room_at

LAST_H = 28.0 * 24.0  # nothing later is foretold: the strength at 28 days is what one tests
STEP_H = 0.25  # between the morning and the last known air; strength moves slowly by then


def temps_after(room, thickness_m, start_c, from_h, until_h=LAST_H, step_h=STEP_H):
    """Follow the temperature of a slab that no longer evaporates through the rows of a room.

    Not for the first hours of a wet open face: evaporation cools it.

    Parameters
    ----------
    room : Room
        Air, hours after the first water; its last row holds for good [as its fields].
    thickness_m : float
        Thickness [m].
    start_c : float
        Temperature at `from_h` [°C].
    from_h, until_h : float
        First and last hour [h].
    step_h : float
        Step while the air still changes; after it the steps grow [h].

    Returns
    -------
    tuple of ndarray
        Hours and temperatures [h, °C].

    Examples
    --------
    >>> from shop_calc.trade.timeline.room import steady_room
    >>> hours, temps = temps_after(steady_room(10.0, 0.5, 0.0), 0.0381, 20.0, 24.0)
    >>> f"{float(np.interp(26.0, hours, temps)):.4f}"
    '12.9364'

    Notes
    -----
    Between two rows it nears the air as an exponential, exactly. Heat of hydration is left out: a thin piece never
    feels warm.

    References
    ----------
    Heat balance of shop_calc.science.slab_heat without evaporation.
    """
    changes = [hour for hour in room.from_h if from_h < hour < until_h]
    settled = min(max([from_h, *changes]) + 12.0, until_h)
    fine = np.arange(from_h, settled, step_h)
    coarse = settled + (until_h - settled) * np.linspace(0.0, 1.0, 80) ** 2
    times = np.unique(np.concatenate((fine, changes, coarse)))
    temps = np.empty_like(times)
    storage = defaults.si("slab_density") * defaults.si("slab_heat_capacity") * thickness_m
    now_c, edges = start_c, [from_h, *changes, until_h]
    for start, end in pairwise(edges):
        air_c, _, wind_m_s = (float(value) for value in room_at(room, start))
        exchange = float(slab_heat.convection_w_m2_k(moving_air(wind_m_s)))
        exchange += defaults.si("h_radiation") + defaults.si("h_bottom")
        inside = (times >= start) & (times <= end)
        temps[inside] = air_c + (now_c - air_c) * np.exp(-(times[inside] - start) * 3600.0 * exchange / storage)
        now_c = air_c + (now_c - air_c) * np.exp(-(end - start) * 3600.0 * exchange / storage)
    return times, temps
