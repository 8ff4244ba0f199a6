"""The room over the day: what the air is like from each hour on."""

from dataclasses import dataclass

import numpy as np

from shop_calc.science import checks


@dataclass(frozen=True)
class Room:
    """Air over the piece, row by row, each row in force until the next one starts.

    Parameters
    ----------
    from_h : tuple of float
        When each row starts, hours after the first water, rising; the first row also holds before it [h].
    air_temp_c : tuple of float
        Air temperature [°C].
    rh_fraction : tuple of float
        Relative humidity [-].
    wind_m_s : tuple of float
        Air speed over the piece [m/s].

    Examples
    --------
    >>> steady_room(21.0, 0.5, 0.0).air_temp_c
    (21.0,)

    References
    ----------
    Common practice, no source.
    """

    from_h: tuple
    air_temp_c: tuple
    rh_fraction: tuple
    wind_m_s: tuple

    def __post_init__(self):
        if not self.from_h:
            raise ValueError("room: no row given; it must have at least one")
        if any(b <= a for a, b in zip(self.from_h, self.from_h[1:], strict=False)):
            raise ValueError("room: times given do not rise; each row must start after the one before it")
        checks.require("air temperature", np.asarray(self.air_temp_c), -5, 50, unit="°C")
        checks.require("humidity", np.asarray(self.rh_fraction), 0, 1)
        checks.require("wind", np.asarray(self.wind_m_s), 0, 17, unit="m/s")


def steady_room(air_temp_c, rh_fraction, wind_m_s):
    """Give a room that stays as it is.

    Parameters
    ----------
    air_temp_c : float
        Air temperature [°C].
    rh_fraction : float
        Relative humidity [-].
    wind_m_s : float
        Air speed [m/s].

    Returns
    -------
    Room
        One row from hour zero [as its fields].

    Examples
    --------
    >>> steady_room(21.0, 0.5, 0.0).from_h
    (0.0,)

    References
    ----------
    Common practice, no source.
    """
    return Room((0.0,), (float(air_temp_c),), (float(rh_fraction),), (float(wind_m_s),))


def room_at(room, time_h):
    """Give the air in force at any hours.

    Parameters
    ----------
    room : Room
        The room [as its fields].
    time_h : float or array
        Hours after the first water [h].

    Returns
    -------
    tuple of ndarray
        Air temperature, humidity and air speed, each of the shape of time_h [°C, -, m/s].

    Examples
    --------
    >>> day = Room((0.0, 9.0), (21.0, 12.0), (0.5, 0.6), (0.0, 0.0))
    >>> float(room_at(day, 10.5)[0])
    12.0

    References
    ----------
    Common practice, no source.
    """
    row = np.clip(np.searchsorted(room.from_h, np.asarray(time_h) + 1e-9, side="right") - 1, 0, None)
    return tuple(np.asarray(column)[row] for column in (room.air_temp_c, room.rh_fraction, room.wind_m_s))


def room_steps(room, start_h, step_s, count):
    """Give the air of each time step, in the middle of the step.

    Parameters
    ----------
    room : Room
        The room [as its fields].
    start_h : float or array
        Hour at which the first step starts, after the first water [h].
    step_s : float
        Length of a step [s].
    count : int
        Number of steps [-].

    Returns
    -------
    tuple of ndarray
        Air temperature, humidity and air speed of shape (count, ...) where ... is the shape of start_h
        [°C, -, m/s].

    Examples
    --------
    >>> room_steps(steady_room(21.0, 0.5, 0.0), 0.0, 300.0, 4)[0].shape
    (4,)

    References
    ----------
    Common practice, no source.
    """
    start_h = np.asarray(start_h, dtype=float)
    middle_h = (np.arange(count) + 0.5) * step_s / 3600.0
    return room_at(room, middle_h.reshape(-1, *([1] * start_h.ndim)) + start_h)


def shifted(room, hours_h):
    """Give the same room seen from a later first water.

    Parameters
    ----------
    room : Room
        The room [as its fields].
    hours_h : float
        How much later the first water is [h].

    Returns
    -------
    Room
        The same air on the clock, with hours counted from the new first water [as its fields].

    Examples
    --------
    >>> shifted(steady_room(21.0, 0.5, 0.0), 1.5).from_h
    (-1.5,)

    References
    ----------
    Common practice, no source.
    """
    return Room(tuple(h - hours_h for h in room.from_h), room.air_temp_c, room.rh_fraction, room.wind_m_s)
