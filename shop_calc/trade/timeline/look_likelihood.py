"""How likely looks are: an interval between two looks, readings with scatter, and the prior of initial set."""

import numpy as np

from shop_calc import defaults
from shop_calc.science.normal import log_normal_below


def log_between(after_z, before_z):
    """Log probability that a cue with normal scatter lies between two looks.

    Parameters
    ----------
    after_z : float or array or None
        How far the mortar was past the cue at the look that did not find it, over the scatter [-].
    before_z : float or array or None
        The same at the look that found it [-].

    Returns
    -------
    float or array
        Natural logarithm of the probability [-].

    Examples
    --------
    >>> f"{log_between(-1.0, 1.0):.5f}"
    '-0.38172'

    Notes
    -----
    Both ends are taken from the side where they are small, so that far tails keep their digits.

    References
    ----------
    Interval-censored normal likelihood.
    """
    if before_z is None:
        return log_normal_below(-np.asarray(after_z))
    if after_z is None:
        return log_normal_below(np.asarray(before_z))
    low, high = np.minimum(after_z, before_z), np.asarray(before_z, dtype=float)
    turned = low > 0
    low, high = np.where(turned, -high, low), np.where(turned, -low, high)
    top, bottom = log_normal_below(high), log_normal_below(low)
    with np.errstate(divide="ignore"):  # two looks at one moment leave nothing between them
        return top + np.log(-np.expm1(np.minimum(bottom - top, 0.0)))


def log_readings(difference, scatter, shared=0.0):
    """Log likelihood of readings with normal scatter and one error that they all share.

    Parameters
    ----------
    difference : array of shape (readings, ...)
        Reading less model, in the logarithm of resistance [-].
    scatter : array of shape (readings,)
        Standard deviation of each alone [-].
    shared : float
        Standard deviation of the error they share [-].

    Returns
    -------
    array of shape (...)
        Natural logarithm of the likelihood, without its constant [-].

    Examples
    --------
    >>> f"{float(log_readings(np.array([0.3]), np.array([0.2]), 0.15)):.5f}"
    '-0.72000'

    References
    ----------
    Normal density whose covariance is a diagonal plus a constant (Sherman-Morrison).
    """
    difference = np.asarray(difference, dtype=float)
    inverse = 1.0 / np.asarray(scatter, dtype=float) ** 2
    column = inverse.reshape(-1, *([1] * (difference.ndim - 1)))
    pull = (difference * column).sum(axis=0)
    return -0.5 * ((difference**2 * column).sum(axis=0) - shared**2 * pull**2 / (1.0 + shared**2 * inverse.sum()))


def log_prior_of_set(deviation):
    """Log prior of initial set at a place of its band, with a wide part.

    Parameters
    ----------
    deviation : float or array
        Place in the band, in its standard deviations [-].

    Returns
    -------
    float or array
        Natural logarithm, without its constant [-].

    Examples
    --------
    >>> f"{log_prior_of_set(3.0):.5f}"
    '-4.22256'

    Notes
    -----
    Normal, but now and then (odd_mix_share) the mix is not the one that was planned, and then anything goes
    (odd_mix_width times as far): looks far outside every plan blame the mix, and are believed.

    References
    ----------
    Judgement; numbers in data/defaults.csv.
    """
    share, wide = defaults.si("odd_mix_share"), defaults.get("odd_mix_width").value
    usual = -0.5 * np.square(deviation) + np.log(1.0 - share)
    odd = -0.5 * np.square(deviation / wide) + np.log(share / wide)
    return np.logaddexp(usual, odd)


def prior_pull_of_set(deviation):
    """How hard the prior of initial set pulls back to the middle of the band.

    Parameters
    ----------
    deviation : float or array
        Place in the band, in its standard deviations [-].

    Returns
    -------
    float or array
        Minus the derivative of `log_prior_of_set` [-].

    Examples
    --------
    >>> f"{prior_pull_of_set(1.0):.5f}"
    '0.99242'

    References
    ----------
    Derived from `log_prior_of_set`.
    """
    share, wide = defaults.si("odd_mix_share"), defaults.get("odd_mix_width").value
    usual = -0.5 * np.square(deviation) + np.log(1.0 - share)
    is_usual = np.exp(usual - log_prior_of_set(deviation))
    return deviation * (is_usual + (1.0 - is_usual) / wide**2)
