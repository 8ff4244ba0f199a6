"""Curl: how much a weightless piece bows when its faces shrink unlike (its weight: `curl_weight`).

Curvature is positive when the upper face is the shorter: then the ends lift and the piece is a dish.
"""

import numpy as np

from shop_calc.science.checks import require

# R = 3182400/C inches by definition of the Curl Number C ("Archimedes' Principal, part II",
# Concrete Construction: rules 11d and 11f, read).
CURL_NUMBER_RADIUS_M = 3182400.0 * 0.0254


def gradient_curvature_per_m(strain_difference, thickness_m):
    """Curvature of one material whose upper face has shortened more than its lower, straight between them.

    Real moisture profiles are steeper near the face: then it is an upper bound.

    Parameters
    ----------
    strain_difference : float or array
        Shortening of the upper face less that of the lower, negative for a dome [-].
    thickness_m : float or array
        Thickness [m].

    Returns
    -------
    float or array
        Curvature [1/m].

    Raises
    ------
    ValueError
        When the thickness is not positive.

    Notes
    -----
    d_eps / h: half as thick is twice the curl.

    Examples
    --------
    >>> round(gradient_curvature_per_m(300e-6, 0.01905), 8)
    0.01574803

    References
    ----------
    Derived: plane sections.
    """
    difference = require("difference of strain", strain_difference, -0.01, 0.01)
    return difference / require("thickness", thickness_m, 0, unit="m", low_open=True)


def two_layer_curvature_per_m(strain_difference, upper_m, lower_m, upper_modulus_pa, lower_modulus_pa):
    """Curvature of two bonded layers of which the upper one shortens more.

    Elastic and at once: creep takes back a good part of it over weeks.

    Parameters
    ----------
    strain_difference : float or array
        Free shortening of the upper layer less that of the lower [-].
    upper_m, lower_m : float or array
        Thicknesses [m].
    upper_modulus_pa, lower_modulus_pa : float or array
        Moduli of elasticity [Pa].

    Returns
    -------
    float or array
        Curvature [1/m].

    Raises
    ------
    ValueError
        When a thickness or modulus is not positive.

    Notes
    -----
    6 d (1+m)^2 / (h (3(1+m)^2 + (1+mn)(m^2 + 1/(mn)))), m the ratio of thicknesses, n of moduli;
    1.5 d/h for equal layers. Agrees with laminate theory to rounding.

    Examples
    --------
    >>> round(float(two_layer_curvature_per_m(400e-6, 0.006, 0.019, 25e9, 25e9)), 8)
    0.0175104

    References
    ----------
    Timoshenko, J. Optical Society of America 11 (1925) 233, from memory.
    """
    difference = require("difference of strain", strain_difference, -0.01, 0.01)
    upper = require("upper layer", upper_m, 0, unit="m", low_open=True)
    lower = require("lower layer", lower_m, 0, unit="m", low_open=True)
    upper_e = require("modulus of the upper layer", upper_modulus_pa, 0, unit="Pa", low_open=True)
    lower_e = require("modulus of the lower layer", lower_modulus_pa, 0, unit="Pa", low_open=True)
    m, n = upper / lower, upper_e / lower_e
    whole = (1.0 + m) ** 2
    stiffness = 3.0 * whole + (1.0 + m * n) * (m**2 + 1.0 / (m * n))
    return 6.0 * difference * whole / ((upper + lower) * stiffness)


def bow_m(curvature_per_m, length_m):
    """Height of the arc between the ends and the middle, weightless.

    For a plate take the diagonal for its corners.

    Parameters
    ----------
    curvature_per_m : float or array
        Curvature [1/m].
    length_m : float or array
        Length, or diagonal [m].

    Returns
    -------
    float or array
        Bow; positive when the ends lift [m].

    Raises
    ------
    ValueError
        When the length is negative.

    Notes
    -----
    kappa L^2 / 8, a parabola for the arc: 0.1 % off while the bow is under 1/50 of the length.

    Examples
    --------
    >>> round(bow_m(0.01574803, 2.159), 9)
    0.009175749

    References
    ----------
    Derived: geometry.
    """
    length = require("length", length_m, 0, unit="m")
    return require("curvature", curvature_per_m, unit="1/m") * length**2 / 8.0


def drying_bow_m(strain_difference, thickness_m, length_m):
    """Bow of a piece that dries through one face, weightless.

    Parameters
    ----------
    strain_difference : float or array
        Shortening of the upper face less that of the lower [-].
    thickness_m, length_m : float or array
        Thickness, and length or diagonal [m].

    Returns
    -------
    float or array
        Bow; positive when the ends lift [m].

    Raises
    ------
    ValueError
        When a size is impossible.

    Notes
    -----
    `bow_m` of `gradient_curvature_per_m`. It comes back flat when both faces are equally moist.

    Examples
    --------
    >>> round(drying_bow_m(300e-6, 0.01905, 2.159) * 1000, 5)
    9.17575

    References
    ----------
    Derived: geometry.
    """
    return bow_m(gradient_curvature_per_m(strain_difference, thickness_m), length_m)


def two_layer_bow_m(strain_difference, upper_m, lower_m, upper_modulus_pa, lower_modulus_pa, length_m):
    """Bow of two bonded layers of which the upper one shortens more, weightless.

    Parameters
    ----------
    strain_difference : float or array
        Free shortening of the upper layer less that of the lower [-].
    upper_m, lower_m : float or array
        Thicknesses [m].
    upper_modulus_pa, lower_modulus_pa : float or array
        Moduli of elasticity [Pa].
    length_m : float or array
        Length or diagonal [m].

    Returns
    -------
    float or array
        Bow; positive when the ends lift [m].

    Raises
    ------
    ValueError
        When an entry is impossible.

    Notes
    -----
    `bow_m` of `two_layer_curvature_per_m`.

    Examples
    --------
    >>> round(float(two_layer_bow_m(400e-6, 0.005, 0.020, 22e9, 28e9, 2.4)) * 1000, 6)
    9.950995

    References
    ----------
    Timoshenko, J. Optical Society of America 11 (1925) 233, from memory.
    """
    layers = (upper_m, lower_m, upper_modulus_pa, lower_modulus_pa)
    return bow_m(two_layer_curvature_per_m(strain_difference, *layers), length_m)


def curl_number_lift_m(curl_count, from_centre_m, settlement_m):
    """Height of a point of a curled floor slab over the ground it was cast on.

    For slabs whose Curl Number was measured; not for pieces on legs.

    Parameters
    ----------
    curl_count : float or array
        Curl Number C [-].
    from_centre_m : float or array
        Distance of the point from the middle [m].
    settlement_m : float or array
        How far the middle has sunk [m].

    Returns
    -------
    float or array
        Height; below 0 is contact [m].

    Raises
    ------
    ValueError
        When the Curl Number is not positive or the point lies beyond its radius.

    Notes
    -----
    R - sqrt(R^2 - z^2) - s with R = 3182400 in / C.

    Examples
    --------
    >>> round(float(curl_number_lift_m(50.0, 3.2258, 0.0006096)) * 1000, 5)
    2.6087

    References
    ----------
    "Archimedes' Principal, part II", Concrete Construction, rule 11f.
    """
    radius = CURL_NUMBER_RADIUS_M / require("Curl Number", curl_count, 0, low_open=True)
    place = require("distance from the middle", from_centre_m, 0, float(np.min(radius)), unit="m")
    # R - sqrt(R^2 - z^2), written so that a flat arc loses no digits
    rise = place**2 / (radius + np.sqrt(radius**2 - place**2))
    return rise - require("settlement", settlement_m, 0, unit="m")
