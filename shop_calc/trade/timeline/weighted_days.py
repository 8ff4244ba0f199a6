"""Days that are not all equally likely: other weights after something was seen, and weighted quantiles."""

from dataclasses import replace

import numpy as np


def weighted(cloud, weight):
    """Give the same days with other weights, after something was seen.

    Parameters
    ----------
    cloud : Cloud
        The days [as its fields].
    weight : ndarray of shape (days,)
        New weights; they are scaled to sum to one [-].

    Returns
    -------
    Cloud
        The days re-weighted [as its fields].

    Raises
    ------
    ValueError
        When no day fits, so that all weights are zero.

    Examples
    --------
    >>> from shop_calc.trade.timeline.cloud import day_cloud
    >>> days = day_cloud()
    >>> round(float(weighted(days, days.exponent > 7).weight.max()), 5)
    0.00402

    References
    ----------
    Bayes' rule.
    """
    weight = np.asarray(weight, dtype=float)
    total = weight.sum()
    if not np.isfinite(total) or total <= 0:
        raise ValueError("looks at the bench: none of the 500 days fits what was seen; check times and cues")
    return replace(cloud, weight=weight / total)


def quantile(values, weight, share):
    """Give a weighted quantile over the days, along the last axis.

    Parameters
    ----------
    values : ndarray of shape (..., days)
        One number a day; a day without an answer (nan) counts as later than all others [any unit].
    weight : ndarray of shape (days,)
        Weights that sum to one [-].
    share : float
        The wanted share, 0.5 for the median [-].

    Returns
    -------
    float or ndarray of shape (...)
        The quantile; nan when it falls among days without an answer [unit of values].

    Examples
    --------
    >>> float(quantile(np.array([3.0, 1.0, 2.0]), np.ones(3) / 3, 0.5))
    2.0

    Notes
    -----
    Linear between the middles of the weights (Hazen's plotting position for equal weights).

    References
    ----------
    From memory of Hazen 1914 for the plotting position.
    """
    values = np.asarray(values, dtype=float)
    filled = np.where(np.isnan(values), np.inf, values)
    order = np.argsort(filled, axis=-1, kind="stable")
    sorted_values = np.take_along_axis(filled, order, axis=-1)
    sorted_weight = np.asarray(weight, dtype=float)[order]
    position = np.cumsum(sorted_weight, axis=-1) - sorted_weight / 2
    upper = np.clip((position < share).sum(axis=-1, keepdims=True), 1, values.shape[-1] - 1)  # 0 of a single day
    lower = np.maximum(upper - 1, 0)
    low_at, high_at = (np.take_along_axis(position, at, axis=-1)[..., 0] for at in (lower, upper))
    low, high = (np.take_along_axis(sorted_values, at, axis=-1)[..., 0] for at in (lower, upper))
    gap = np.where(high_at > low_at, high_at - low_at, 1.0)
    between = np.clip((share - low_at) / gap, 0.0, 1.0)
    with np.errstate(invalid="ignore"):  # a day without an answer stands at infinity
        answer = np.where(between <= 0, low, low + between * (high - low))
    answer = np.where(np.isfinite(answer), answer, np.nan)
    return float(answer) if answer.ndim == 0 else answer
