"""Degree of hydration and set times from the make-up of the cement: a recalled model, for comparison only.

Fitted to ordinary paving mixes of 0.36 to 0.55 water to cement (from memory); a thin hand-trowelled mix with
reducer, latex or silica fume lies outside. No plan and no lesson uses it.
"""

from dataclasses import dataclass

import numpy as np

from shop_calc.science.checks import require

# Degree of hydration at set over the water to cement ratio. From memory of Schindler 2004.
INITIAL_SET_HYDRATION = 0.15
FINAL_SET_HYDRATION = 0.26


@dataclass(frozen=True)
class HydrationCurve:
    """`alpha(te) = alpha_u exp(-(tau/te)^beta)`, and where set falls on it.

    Parameters
    ----------
    ultimate_fraction : float or array
        Degree of hydration in the end, alpha_u [-].
    time_constant_h : float or array
        Time constant tau, equivalent age [h].
    shape_exponent : float or array
        Exponent beta [-].
    initial_set_h : float or array
        Equivalent age at initial set [h].
    final_set_h : float or array
        Equivalent age at final set [h].

    Examples
    --------
    >>> f"{hydration_curve(0.40, 0.08, 0.55, 0.03, 370.0).shape_exponent:.6g}"
    '0.654329'

    References
    ----------
    As `hydration_curve`.
    """

    ultimate_fraction: float
    time_constant_h: float
    shape_exponent: float
    initial_set_h: float
    final_set_h: float


def hydration_curve(water_cement_ratio, c3a_fraction, c3s_fraction, so3_fraction, blaine_m2_kg):
    """Curve of hydration of a plain portland cement at 21.1 °C.

    Parameters
    ----------
    water_cement_ratio : float or array
        Water to cement by mass [-].
    c3a_fraction : float or array
        Tricalcium aluminate in the cement, by mass [-].
    c3s_fraction : float or array
        Tricalcium silicate in the cement, by mass [-].
    so3_fraction : float or array
        Sulphate as SO3 in the cement, by mass [-].
    blaine_m2_kg : float or array
        Fineness by Blaine [m2/kg].

    Returns
    -------
    HydrationCurve
        Ultimate degree and exponent [-], time constant and set times [h].

    Raises
    ------
    ValueError
        When an entry is not above 0, a fraction is above 1, or the mix never reaches final set.

    Notes
    -----
    Without fly ash and slag, whose terms are left out. Set at degrees of hydration 0.15 and 0.26 w/cm. Fitted
    to mixes of 0.36 to 0.55, from memory.

    Examples
    --------
    >>> f"{hydration_curve(0.40, 0.08, 0.55, 0.03, 370.0).initial_set_h:.6g}"
    '3.91595'

    References
    ----------
    From memory of A. K. Schindler and K. J. Folliard, ACI Materials Journal 102 (2005), for the curve, and of
    A. K. Schindler, "Prediction of concrete setting" (2004), for the set times.
    """
    water = require("water to cement", water_cement_ratio, 0, 2, low_open=True)
    aluminate = require("C3A", c3a_fraction, 0, 1, low_open=True)
    silicate = require("C3S", c3s_fraction, 0, 1, low_open=True)
    sulphate = require("SO3", so3_fraction, 0, 1, low_open=True)
    fineness = require("Blaine fineness", blaine_m2_kg, 0, unit="m2/kg", low_open=True)
    curve = (
        1.031 * water / (0.194 + water),
        66.78 * aluminate**-0.154 * silicate**-0.401 * fineness**-0.804 * sulphate**-0.758,
        181.4 * aluminate**0.146 * silicate**0.227 * fineness**-0.535 * sulphate**0.558,
    )
    initial = age_at_hydration_h(INITIAL_SET_HYDRATION * water, *curve)
    return HydrationCurve(*curve, initial, age_at_hydration_h(FINAL_SET_HYDRATION * water, *curve))


def hydration_fraction(equivalent_age_h, ultimate_fraction, time_constant_h, shape_exponent):
    """Degree of hydration at an equivalent age.

    Parameters
    ----------
    equivalent_age_h : float or array
        Equivalent age at the reference temperature of the curve, above 0 [h].
    ultimate_fraction : float or array
        Degree of hydration in the end [-].
    time_constant_h : float or array
        Time constant [h].
    shape_exponent : float or array
        Exponent [-].

    Returns
    -------
    float or array
        Degree of hydration [-].

    Raises
    ------
    ValueError
        When an entry is not above 0.

    Examples
    --------
    >>> f"{hydration_fraction(24.0, 0.6943, 15.388, 0.6543):.6g}"
    '0.328734'

    References
    ----------
    As `hydration_curve`.
    """
    age = require("equivalent age", equivalent_age_h, 0, unit="h", low_open=True)
    ultimate, constant, exponent = _curve(ultimate_fraction, time_constant_h, shape_exponent)
    return ultimate * np.exp(-((constant / age) ** exponent))


def age_at_hydration_h(degree_fraction, ultimate_fraction, time_constant_h, shape_exponent):
    """Equivalent age at which a degree of hydration is reached.

    Parameters
    ----------
    degree_fraction : float or array
        Degree of hydration, above 0 and below the ultimate one [-].
    ultimate_fraction : float or array
        Degree of hydration in the end [-].
    time_constant_h : float or array
        Time constant [h].
    shape_exponent : float or array
        Exponent [-].

    Returns
    -------
    float or array
        Equivalent age [h].

    Raises
    ------
    ValueError
        When the degree is not above 0 or not below the ultimate one.

    Examples
    --------
    >>> f"{age_at_hydration_h(0.06, 0.6943, 15.388, 0.6543):.6g}"
    '3.91553'

    References
    ----------
    `hydration_fraction` turned round.
    """
    ultimate, constant, exponent = _curve(ultimate_fraction, time_constant_h, shape_exponent)
    share = degree_fraction / ultimate
    require("degree of hydration over the ultimate one", share, 0, 1, low_open=True, high_open=True)
    return constant * (-np.log(share)) ** (-1 / exponent)


def _curve(ultimate_fraction, time_constant_h, shape_exponent):
    """The three numbers of a curve, checked."""
    return (
        require("ultimate degree of hydration", ultimate_fraction, 0, low_open=True),
        require("time constant", time_constant_h, 0, unit="h", low_open=True),
        require("exponent of the hydration curve", shape_exponent, 0, low_open=True),
    )
