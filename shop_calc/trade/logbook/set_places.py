"""Where the three quantities of a set clock lie in their default bands, counted in standard normal deviations."""

import numpy as np

from shop_calc import defaults
from shop_calc.trade.timeline.cloud import spread

NAMES = ("set_time_initial", "set_exponent", "activation_energy")
BAND_END = 1.6448536269514722  # deviations at the 95 % end of a band


def mean_share():
    """Say how much of the default band of initial set is the recipe's mean, the rest being pour to pour.

    Returns
    -------
    float
        Standard deviation of the mean over that of a pour [-].

    Examples
    --------
    >>> f"{mean_share():.4f}"
    '0.9355'

    References
    ----------
    Derived; pour_scatter of data/defaults.csv is a judgement.
    """
    low, _, high = defaults.si_band("set_time_initial")
    total = np.log(high / low) / (2 * BAND_END)
    return float(np.sqrt(1.0 - min(defaults.si("pour_scatter") / total, 0.95) ** 2))


def value_at(name, place):
    """Value of one of NAMES at a place of its default band.

    Parameters
    ----------
    name : str
        One of NAMES [-].
    place : float
        Standard normal deviations; of the recipe's mean for initial set, which is the narrower part of the band [-].

    Returns
    -------
    float
        The value [SI unit].

    Examples
    --------
    >>> value_at("set_exponent", 0.0)
    7.0

    References
    ----------
    data/defaults.csv.
    """
    place = mean_share() * place if name == "set_time_initial" else place
    return float(spread(*defaults.si_band(name), place))


def values_at(places):
    """Values of all three of NAMES.

    Parameters
    ----------
    places : array, shape (3,)
        As for `value_at` [-].

    Returns
    -------
    tuple of float
        Initial set, exponent, activation energy [h, -, J/mol].

    Examples
    --------
    >>> values_at((0.0, 0.0, 0.0))[:2]
    (3.4, 7.0)

    References
    ----------
    data/defaults.csv.
    """
    return tuple(value_at(name, place) for name, place in zip(NAMES, places, strict=True))


def steepness_at(name, place):
    """How fast the logarithm of a value grows along its band.

    Parameters
    ----------
    name : str
        One of NAMES [-].
    place : float
        As for `value_at` [-].

    Returns
    -------
    float
        Derivative of the logarithm of the value by the place; at the middle that of the lower half [-].

    Examples
    --------
    >>> f"{steepness_at('set_exponent', 1.0):.5f}"
    '0.11804'

    References
    ----------
    Derived: the band is spread by ratio.
    """
    low, middle, high = defaults.si_band(name)
    share = mean_share() if name == "set_time_initial" else 1.0
    return share * float(np.log(high / middle if place > 0 else middle / low)) / BAND_END
