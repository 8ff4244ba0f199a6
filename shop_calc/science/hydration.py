"""Degree of hydration and set times from the make-up of the cement: a recalled model, for comparison only.

Fitted to ordinary paving mixes; a thin hand-trowelled mix with reducer, latex or silica fume lies outside.
The plan of a day never uses it.
"""

from dataclasses import dataclass

import numpy as np

from shop_calc.science.checks import require

#: Water to cement of the mixes behind the fit [-]. From memory.
VALID_WATER_RATIO = (0.36, 0.55)

# Degree of hydration at set over the water to cement ratio. From memory of Schindler 2004.
INITIAL_SET_HYDRATION = 0.15
FINAL_SET_HYDRATION = 0.26


@dataclass(frozen=True)
class HydrationCurve:
    """`alpha(te) = alpha_u exp(-(tau/te)^beta)`.

    Parameters
    ----------
    ultimate_fraction : float or array
        Degree of hydration in the end, alpha_u [-].
    shape_exponent : float or array
        Exponent beta [-].
    time_constant_h : float or array
        Time constant tau, equivalent age [h].

    Examples
    --------
    >>> f"{hydration_curve(0.40, 0.08, 0.55, 0.03, 370.0).shape_exponent:.6g}"
    '0.654329'

    References
    ----------
    As `hydration_curve`.
    """

    ultimate_fraction: float
    shape_exponent: float
    time_constant_h: float


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
        Ultimate degree [-], exponent [-] and time constant [h].

    Raises
    ------
    ValueError
        When an entry is not above 0, or a fraction above 1.

    Notes
    -----
    Without fly ash and slag, whose terms are left out. Range of the ratio: VALID_WATER_RATIO.

    Examples
    --------
    >>> f"{hydration_curve(0.40, 0.08, 0.55, 0.03, 370.0).time_constant_h:.6g}"
    '15.3884'

    References
    ----------
    From memory of A. K. Schindler and K. J. Folliard, ACI Materials Journal 102 (2005).
    """
    water = require("water to cement", water_cement_ratio, 0, 2, low_open=True)
    aluminate = require("C3A", c3a_fraction, 0, 1, low_open=True)
    silicate = require("C3S", c3s_fraction, 0, 1, low_open=True)
    sulphate = require("SO3", so3_fraction, 0, 1, low_open=True)
    fineness = require("Blaine fineness", blaine_m2_kg, 0, unit="m2/kg", low_open=True)
    return HydrationCurve(
        ultimate_fraction=1.031 * water / (0.194 + water),
        shape_exponent=181.4 * aluminate**0.146 * silicate**0.227 * fineness**-0.535 * sulphate**0.558,
        time_constant_h=66.78 * aluminate**-0.154 * silicate**-0.401 * fineness**-0.804 * sulphate**-0.758,
    )


def hydration_fraction(equivalent_age_h, curve):
    """Degree of hydration at an equivalent age.

    Parameters
    ----------
    equivalent_age_h : float or array
        Equivalent age at the reference temperature of the curve, above 0 [h].
    curve : HydrationCurve
        The curve of the cement [-].

    Returns
    -------
    float or array
        Degree of hydration [-].

    Raises
    ------
    ValueError
        When the age is not above 0.

    Examples
    --------
    >>> f"{hydration_fraction(24.0, hydration_curve(0.40, 0.08, 0.55, 0.03, 370.0)):.6g}"
    '0.328722'

    References
    ----------
    As `hydration_curve`.
    """
    age = require("equivalent age", equivalent_age_h, 0, unit="h", low_open=True)
    return curve.ultimate_fraction * np.exp(-((curve.time_constant_h / age) ** curve.shape_exponent))


def age_at_hydration_h(degree_fraction, curve):
    """Equivalent age at which a degree of hydration is reached.

    Parameters
    ----------
    degree_fraction : float or array
        Degree of hydration, above 0 and below the ultimate one [-].
    curve : HydrationCurve
        The curve of the cement [-].

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
    >>> f"{age_at_hydration_h(0.06, hydration_curve(0.40, 0.08, 0.55, 0.03, 370.0)):.6g}"
    '3.91595'

    References
    ----------
    `hydration_fraction` turned round.
    """
    share = degree_fraction / curve.ultimate_fraction
    require("degree of hydration over the ultimate one", share, 0, 1, low_open=True, high_open=True)
    return curve.time_constant_h * (-np.log(share)) ** (-1 / curve.shape_exponent)


def hydration_initial_set_h(water_cement_ratio, curve):
    """Initial set by degree of hydration.

    Parameters
    ----------
    water_cement_ratio : float or array
        Water to cement by mass [-].
    curve : HydrationCurve
        The curve of the cement [-].

    Returns
    -------
    float or array
        Equivalent age at initial set [h].

    Raises
    ------
    ValueError
        When the ratio is so high that the degree is never reached.

    Examples
    --------
    >>> f"{hydration_initial_set_h(0.40, hydration_curve(0.40, 0.08, 0.55, 0.03, 370.0)):.6g}"
    '3.91595'

    References
    ----------
    From memory of A. K. Schindler, "Prediction of concrete setting" (2004): 0.15 w/cm.
    """
    return age_at_hydration_h(INITIAL_SET_HYDRATION * water_cement_ratio, curve)


def hydration_final_set_h(water_cement_ratio, curve):
    """Final set by degree of hydration.

    Parameters
    ----------
    water_cement_ratio : float or array
        Water to cement by mass [-].
    curve : HydrationCurve
        The curve of the cement [-].

    Returns
    -------
    float or array
        Equivalent age at final set [h].

    Raises
    ------
    ValueError
        When the ratio is so high that the degree is never reached.

    Examples
    --------
    >>> f"{hydration_final_set_h(0.40, hydration_curve(0.40, 0.08, 0.55, 0.03, 370.0)):.6g}"
    '5.77711'

    References
    ----------
    From memory of A. K. Schindler, "Prediction of concrete setting" (2004): 0.26 w/cm.
    """
    return age_at_hydration_h(FINAL_SET_HYDRATION * water_cement_ratio, curve)
