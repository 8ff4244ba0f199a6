"""The bow of a two-layer piece with its band: both faces drying alike, and a top that dries alone."""

import numpy as np

from shop_calc import defaults
from shop_calc.science.checks import require
from shop_calc.trade.after.curling import base_shrinkage, one_face_bow_m, two_layer_bow_m


def bow_bands(
    thickness_m, face_m, length_m, phi, *, rh_fraction=None, strength_28d_pa=None, cement_class="N", recipe=None
):
    """Give the bow of a piece with its band, for both faces drying alike and for a top that dries alone.

    Parameters
    ----------
    thickness_m, face_m : float
        Thickness of the piece and of its face [m].
    length_m : float
        Length or diagonal along which it bows [m].
    phi : float
        Mortar share of the base [-].
    rh_fraction : float or None
        Air in which it will stand; that of the table when left out [-].
    strength_28d_pa : float or None
        Likely strength at 28 days; that of the table when left out [Pa].
    cement_class : str
        R, N or S [-].
    recipe : dict or None
        As `curling.base_shrinkage` [as named].

    Returns
    -------
    tuple of three tuples
        Shrinkage of the base (EN and ACI in the end, EN and ACI at 28 days) [-]; low, likely and high bow with both
        faces dry [m]; the same with only the top dry [m].

    Raises
    ------
    ValueError
        When an entry is impossible.

    Examples
    --------
    >>> _, both, top = bow_bands(0.0381, 0.00635, 1.571, 0.62608, rh_fraction=0.45)
    >>> f"{1000 * both[1]:.4f} {1000 * top[1]:.4f}"
    '4.8642 6.7707'

    Notes
    -----
    The likely shrinkage of the base is the mean of the two codes. The band adds up, as independent factors, the
    smaller code less its scatter or the larger and its scatter, the ends of the exponent, the ends of the share.

    References
    ----------
    As `curling`.
    """
    rh = defaults.si("humidity") if rh_fraction is None else require("humidity", rh_fraction, 0, 1)
    fc = defaults.si("strength_28d") if strength_28d_pa is None else strength_28d_pa
    base_m = thickness_m - face_m
    sizes = tuple(float(value) for value in base_shrinkage(thickness_m, rh, fc, cement_class, recipe=recipe))
    en, aci = sizes[:2]
    scatter = defaults.si("shrinkage_scatter")
    strains = np.array([min(en, aci) * (1.0 - scatter), (en + aci) / 2.0, max(en, aci) * (1.0 + scatter)])
    exponents, shares = np.array(defaults.si_band("pickett_n")), np.array(defaults.si_band("one_face_share"))

    def two(strain, exponent):
        return two_layer_bow_m(strain, phi, exponent, face_m, base_m, length_m)

    def one(strain, exponent, share):
        return one_face_bow_m(strain, two(strain, exponent), thickness_m, length_m, share)

    return sizes, _band(two, strains, exponents), _band(one, strains, exponents, shares)


def _band(function, *triples):
    """Low, likely and high of a product of independent factors, each given as (low, likely, high)."""
    middle = [triple[1] for triple in triples]
    likely = float(function(*middle))
    if likely <= 0.0:
        return likely, likely, likely
    ends = []
    for end in (0, 2):
        away = [
            np.log(max(float(function(*middle[:i], triple[end], *middle[i + 1 :])), 1e-12 * likely) / likely)
            for i, triple in enumerate(triples)
        ]
        ends.append(likely * float(np.exp((end - 1) * np.sqrt(np.sum(np.square(away))))))
    return ends[0], likely, ends[1]
