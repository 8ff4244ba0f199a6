"""How much a base shrinks by two codes, and what bow follows from two layers or from one dry face."""

import numpy as np

from shop_calc import defaults
from shop_calc.science import curl, shrinkage, shrinkage_aci
from shop_calc.science.checks import require

MEAN_ABOVE_FCK_PA = 8e6  # EN 1992-1-1 Table 3.1: fcm = fck + 8 MPa
LOWEST_FCK_PA = 10e6  # its autogenous part starts there
# What ACI 209 is told of a base that nobody described, such as one from a bag: judgement.
COMMON_BASE = {"fine_aggregate_fraction": 0.6, "cement_kg_m3": 450.0, "air_fraction": 0.02}


def base_shrinkage(thickness_m, rh_fraction, strength_28d_pa, cement_class="N", *, recipe=None):
    """Size of the shrinkage of the base in the end by both codes, and 28 days after the pour.

    Not a value of this mix: both were made from ordinary concrete and thick members, and scatter by 30 %.

    Parameters
    ----------
    thickness_m : float or array
        Thickness, both faces drying [m].
    rh_fraction : float or array
        Air in which it stands [-].
    strength_28d_pa : float
        Likely strength at 28 days [Pa].
    cement_class : str
        R, N or S [-].
    recipe : dict or None
        slump_m, fine_aggregate_fraction, cement_kg_m3 and air_fraction for ACI 209; a common base when left out [as
        named].

    Returns
    -------
    tuple of float or array
        EN in the end, ACI in the end, EN at 28 days, ACI at 28 days [-].

    Raises
    ------
    ValueError
        When an entry is impossible.

    Examples
    --------
    >>> en, aci, _, _ = base_shrinkage(0.0381, 0.5, 34.5e6)
    >>> f"{en * 1e6:.2f} {aci * 1e6:.2f}"
    '544.18 966.67'

    References
    ----------
    EN 1992-1-1:2004, 3.1.4(6) and B.2; ACI 209R-92 section 2.5, from memory.
    """
    require("thickness", thickness_m, 0, unit="m", low_open=True)
    fck = max(strength_28d_pa - MEAN_ABOVE_FCK_PA, LOWEST_FCK_PA)
    moist_h = defaults.si("moist_cure")
    size = shrinkage.notional_size_m(thickness_m, 2)
    en = shrinkage.en_final_shrinkage_strain(fck, rh_fraction, size, cement_class)
    aci = shrinkage_aci.aci_final_shrinkage_strain(
        rh_fraction,
        size / 2.0,
        moist_cure_h=moist_h,
        **{"slump_m": defaults.si("slump"), **(COMMON_BASE if recipe is None else recipe)},
    )
    month = 28.0 * shrinkage.DAY_H
    en_28 = shrinkage.en_shrinkage_strain(month, moist_h, fck, rh_fraction, size, cement_class)
    return en, aci, en_28, shrinkage_aci.aci_shrinkage_strain(month - moist_h, aci)


def two_layer_bow_m(base_strain, phi, exponent, face_m, base_m, length_m):
    """Free bow of face on base of one mortar, the base stretched with stone.

    An upper bound: creep takes back a good part of it over weeks.

    Parameters
    ----------
    base_strain : float or array
        Shrinkage of the base [-].
    phi : float or array
        Mortar share of the base [-].
    exponent : float or array
        Pickett's exponent n [-].
    face_m, base_m : float or array
        Thickness of face and base [m].
    length_m : float or array
        Length or diagonal [m].

    Returns
    -------
    float or array
        Bow, ends up [m].

    Raises
    ------
    ValueError
        When an entry is impossible.

    Examples
    --------
    >>> f"{two_layer_bow_m(600e-6, 0.62608, 1.5, 0.00635, 0.03175, 1.571) * 1000:.4f}"
    '3.6808'

    Notes
    -----
    The face shrinks base/phi^n; the difference of the two bends them (Timoshenko).

    References
    ----------
    Pickett 1956, from memory; Timoshenko 1925, from memory; moduli of data/defaults.csv, judgement.
    """
    ratio = shrinkage.aggregate_restraint_ratio(1.0 - np.asarray(phi), exponent)
    return curl.two_layer_bow_m(
        base_strain * (1.0 / ratio - 1.0),
        face_m,
        base_m,
        defaults.si("modulus_face"),
        defaults.si("modulus_base"),
        length_m,
    )


def one_face_bow_m(base_strain, two_layer_m, thickness_m, length_m, share=None):
    """Free bow of a piece of which only the top has dried.

    It comes and goes with moisture: back to the bow of the two layers once both faces are as dry.

    Parameters
    ----------
    base_strain : float or array
        Shrinkage of the base in the end [-].
    two_layer_m : float or array
        Bow of the two layers in the end [m].
    thickness_m, length_m : float or array
        Thickness, and length or diagonal [m].
    share : float or None
        How far the top is ahead, as a share of the whole shrinkage; that of the table when left out [-].

    Returns
    -------
    float or array
        Bow, ends up [m].

    Raises
    ------
    ValueError
        When a size is impossible.

    Examples
    --------
    >>> f"{one_face_bow_m(500e-6, 0.0, 0.01905, 2.159) * 1000:.5f}"
    '9.17575'

    Notes
    -----
    A straight run of drying through the thickness, and the same share of what the two layers do.

    References
    ----------
    Derived: plane sections; the share is judgement, row one_face_share of data/defaults.csv.
    """
    share = defaults.si("one_face_share") if share is None else require("share of the drying", share, 0, 1)
    return curl.drying_bow_m(share * base_strain, thickness_m, length_m) + share * two_layer_m


def bow_map_m(thickness_m, rh_fraction, length_m, face_m, phi, strength_28d_pa=34.5e6, recipe=None):
    """Both bows over thickness and humidity, for a map.

    Parameters
    ----------
    thickness_m, rh_fraction : array
        Thickness and humidity, broadcast against one another [m, -].
    length_m, face_m : float
        Length or diagonal, and thickness of the face [m].
    phi : float
        Mortar share of the base [-].
    strength_28d_pa : float
        Likely strength at 28 days [Pa].
    recipe : dict or None
        As `base_shrinkage` [as named].

    Returns
    -------
    tuple of ndarray
        Bow of the two layers, and of a piece of which only the top dries; likely values [m].

    Raises
    ------
    ValueError
        When the face is as thick as the piece, or an entry is impossible.

    Examples
    --------
    >>> layers, drying = bow_map_m(np.array([0.019, 0.0381]), 0.5, 1.571, 0.00635, 0.62608)
    >>> f"{1000 * layers[0]:.3f} {1000 * layers[1]:.3f}"
    '16.408 4.634'

    References
    ----------
    As `base_shrinkage` and `two_layer_bow_m`.
    """
    base_m = require("base under the face", thickness_m - np.asarray(face_m), 0, unit="m", low_open=True)
    en, aci, _, _ = base_shrinkage(thickness_m, rh_fraction, strength_28d_pa, recipe=recipe)
    strain = (en + aci) / 2.0
    ends = two_layer_bow_m(strain, phi, defaults.si("pickett_n"), face_m, base_m, length_m)
    return ends, one_face_bow_m(strain, ends, thickness_m, length_m)
