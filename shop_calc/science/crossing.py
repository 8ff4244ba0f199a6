"""When a rising history reaches a target."""

import numpy as np


def crossing_time_h(time_h, values, target):
    """First time a rising history reaches its target, linear between the steps.

    Parameters
    ----------
    time_h : array, shape (n_steps + 1,)
        Times of the history [h].
    values : array, shape (n_steps + 1, ...)
        The history, never falling [unit of target].
    target : float or array, shape (...)
        Value to reach [unit of values].

    Returns
    -------
    float or array, shape (...)
        Time of the crossing; nan where the history ends below the target [h].

    Examples
    --------
    >>> f"{crossing_time_h(np.array([0.0, 1.0, 2.0]), np.array([0.0, 0.5, 2.0]), 1.23456):.6g}"
    '1.48971'

    References
    ----------
    Derived: linear interpolation.
    """
    values = np.asarray(values)
    shape = np.broadcast_shapes(values.shape[1:], np.shape(target))
    rows = np.broadcast_to(values, values.shape[:1] + shape).reshape(len(values), -1)
    goal = np.broadcast_to(target, shape).reshape(-1)
    # Counting the points below the target finds the crossing, because a rising history never falls back.
    after = np.count_nonzero(rows < goal, axis=0)
    never = after == len(rows)
    after = np.clip(after, 1, len(rows) - 1)
    column = np.arange(rows.shape[1])
    low, high = rows[after - 1, column], rows[after, column]
    rise = np.where(high > low, high - low, 1.0)
    share = np.clip((goal - low) / rise, 0.0, 1.0)
    when = time_h[after - 1] + share * (time_h[after] - time_h[after - 1])
    return np.where(never, np.nan, when).reshape(shape)[()]
