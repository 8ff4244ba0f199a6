"""What its own weight takes back of a strip's curl."""

import numpy as np

from shop_calc.science.checks import require
from shop_calc.science.curl import bow_m
from shop_calc.science.loads import GRAVITY_M_S2


def self_weight_sag_m(length_m, thickness_m, modulus_pa, density_kg_m3):
    """Sag of a strip on end supports under its own weight: what weight takes from a dome.

    Elastic and at once; left for weeks it creeps to two or three times as much (from memory).

    Parameters
    ----------
    length_m, thickness_m : float or array
        Length between the ends, and thickness [m].
    modulus_pa : float or array
        Modulus of elasticity [Pa].
    density_kg_m3 : float or array
        Density [kg/m3].

    Returns
    -------
    float or array
        Sag at the middle [m].

    Raises
    ------
    ValueError
        When an entry is not positive.

    Notes
    -----
    5 w L^4/(384 E I) with I = b t^3/12: 5 rho g L^4/(32 E t^2).

    Examples
    --------
    >>> round(self_weight_sag_m(2.4, 0.038, 25e9, 2300.0) * 1000, 5)
    3.23897

    References
    ----------
    Derived: elementary beam theory.
    """
    return 5.0 / 32.0 * _gl4_et2_m(length_m, thickness_m, modulus_pa, density_kg_m3)


def dome_gap_m(curvature_per_m, length_m, thickness_m, modulus_pa, density_kg_m3):
    """Gap under the middle of a strip that stands on its ends, arched up, its weight counted.

    Parameters
    ----------
    curvature_per_m : float or array
        Size of the free curvature, ends down [1/m].
    length_m, thickness_m : float or array
        Length and thickness [m].
    modulus_pa : float or array
        Modulus of elasticity [Pa].
    density_kg_m3 : float or array
        Density [kg/m3].

    Returns
    -------
    float or array
        Gap, 0 when the weight has pressed it flat [m].

    Raises
    ------
    ValueError
        When an entry is impossible.

    Notes
    -----
    Free bow less `self_weight_sag_m`. Exact until the middle touches.

    Examples
    --------
    >>> round(float(dome_gap_m(0.012, 2.4, 0.038, 25e9, 2300.0)) * 1000, 5)
    5.40103

    References
    ----------
    Derived: elementary beam theory.
    """
    free = bow_m(require("curvature", curvature_per_m, 0, unit="1/m"), length_m)
    return np.maximum(free - self_weight_sag_m(length_m, thickness_m, modulus_pa, density_kg_m3), 0.0)


def dish_lift_m(curvature_per_m, length_m, thickness_m, modulus_pa, density_kg_m3):
    """Height of the ends of a strip that lies dished on a flat bed, its weight counted.

    For a strip; corners of a plate curl more. The bed is taken as hard and flat.

    Parameters
    ----------
    curvature_per_m : float or array
        Free curvature, ends up [1/m].
    length_m, thickness_m : float or array
        Length and thickness [m].
    modulus_pa : float or array
        Modulus of elasticity [Pa].
    density_kg_m3 : float or array
        Density [kg/m3].

    Returns
    -------
    float or array
        Height of the ends over the bed [m].

    Raises
    ------
    ValueError
        When an entry is impossible.

    Notes
    -----
    A short strip rests on its middle: kappa L^2/8 - w L^4/(128 E I). A long one lies flat but for a
    length a at each end, where the weight of the end makes just the moment that flattens it:
    w a^2/2 = E I kappa; the end stands kappa a^2/4 high, whatever the length. It is flat only when
    its curvature is nil. Either form is the other's limit at a = L/2.

    Examples
    --------
    >>> round(float(dish_lift_m(0.012, 2.4, 0.038, 25e9, 2300.0)) * 1000, 5)
    6.69662

    References
    ----------
    Derived: elementary beam theory with contact.
    """
    kappa = require("curvature", curvature_per_m, 0, unit="1/m")
    # w L^4/(E I) = 12 rho g L^4/(E t^2); half^4 of it is what the lifted end weighs against its stiffness
    half = require("length", length_m, 0, unit="m", low_open=True) / 2.0
    per_m3 = 12.0 * _gl4_et2_m(half, thickness_m, modulus_pa, density_kg_m3) / half**4
    reach = np.minimum(np.sqrt(2.0 * kappa / per_m3), half)
    return kappa * reach**2 / 2.0 - per_m3 * reach**4 / 8.0


def _gl4_et2_m(length_m, thickness_m, modulus_pa, density_kg_m3):
    length = require("length", length_m, 0, unit="m", low_open=True)
    thickness = require("thickness", thickness_m, 0, unit="m", low_open=True)
    modulus = require("modulus of elasticity", modulus_pa, 0, unit="Pa", low_open=True)
    density = require("density", density_kg_m3, 0, unit="kg/m3", low_open=True)
    return density * GRAVITY_M_S2 * length**4 / (modulus * thickness**2)
