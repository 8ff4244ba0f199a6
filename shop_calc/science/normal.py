"""The normal law: how likely a place below, and its logarithm far down in the tail.

Between the values of the standard library's `math.erfc` a cubic is laid that has their slope too. For rows of places it is
as quick as a compiled function, and needs no package that takes longer to load than a log takes to fit.
"""

from functools import cache
from math import erfc, exp, log, pi, sqrt

import numpy as np

_PER_UNIT, _END = 64, 30  # values a standard deviation, and how far down they go; beyond, the series
_ROOT_TWO_PI = sqrt(2.0 * pi)  # derived: what makes the density add up to one


def normal_below(place):
    """Probability that a standard normal quantity lies below a place.

    Parameters
    ----------
    place : float or array
        In standard deviations from the mean [-].

    Returns
    -------
    float or array
        Probability [-].

    Examples
    --------
    >>> f"{normal_below(1.0):.10f}"
    '0.8413447461'

    Notes
    -----
    Within 2e-11 of itself below the mean, and of 1 above.

    References
    ----------
    Derived: cubic between values of the complementary error function.
    """
    place = np.asarray(place, dtype=float)
    small = np.exp(_log_small(-np.abs(place)))
    return np.where(place > 0.0, 1.0 - small, small)[()]


def log_normal_below(place):
    """Natural logarithm of `normal_below`, exact also where that is too small for a number.

    Parameters
    ----------
    place : float or array
        In standard deviations from the mean [-].

    Returns
    -------
    float or array
        Logarithm of the probability [-].

    Examples
    --------
    >>> f"{log_normal_below(-40.0):.6f}"
    '-804.608442'

    Notes
    -----
    Within 2e-11, or 1e-13 of itself where that is more.

    References
    ----------
    Derived, as `normal_below`; beyond 30 standard deviations the asymptotic series of the complementary error function, from
    memory of NIST, Digital Library of Mathematical Functions, 7.12.1.
    """
    place = np.asarray(place, dtype=float)
    small = _log_small(-np.abs(place))
    return np.where(place > 0.0, np.log1p(-np.exp(small)), small)[()]


@cache
def _cubics():
    """Coefficients of the cubic in every interval from 0 downwards, lowest power first; shape (4, intervals)."""
    places = [-number / _PER_UNIT for number in range(_PER_UNIT * _END + 1)]
    below = [0.5 * erfc(-place / sqrt(2.0)) for place in places]
    high = np.array([log(value) for value in below])
    slope = np.array([
        -exp(-0.5 * place * place) / (_ROOT_TWO_PI * value) / _PER_UNIT for place, value in zip(places, below, strict=True)
    ])  # fmt: skip
    rise, first, last = np.diff(high), slope[:-1], slope[1:]
    return np.array([high[:-1], first, 3.0 * rise - 2.0 * first - last, first + last - 2.0 * rise])


def _log_small(place):
    """Logarithm of the probability below places that are not above the mean."""
    down = np.minimum(-place, _END) * _PER_UNIT
    number = np.fmin(down, _PER_UNIT * _END - 1).astype(int)
    share = down - number
    constant, linear, square, cube = (row[number] for row in _cubics())
    found = ((cube * share + square) * share + linear) * share + constant
    return np.where(place < -_END, _far(np.minimum(place, -_END)), found) if np.any(place < -_END) else found


def _far(place):
    """The same far down: the density over the place, with the series of what is missing."""
    inverse = 1.0 / (place * place)
    series = 1.0 - inverse * (1.0 - 3.0 * inverse * (1.0 - 5.0 * inverse * (1.0 - 7.0 * inverse)))
    return -0.5 * place * place - np.log(-place * _ROOT_TWO_PI) + np.log(series)
