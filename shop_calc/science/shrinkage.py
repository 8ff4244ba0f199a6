"""Shrinkage of a mix: what stone takes away from it, and its size and pace by EN 1992-1-1.

Strains are shortening, positive, as pure numbers: 300e-6 is 0.3 mm in a metre.
"""

import numpy as np

from shop_calc.science.checks import require

DAY_H = 24.0

# EN 1992-1-1:2004, B.2(1): alpha_ds1, alpha_ds2 by cement class (read in the structuralcodes package).
EN_DRYING_FACTORS = {"S": (3.0, 0.13), "N": (4.0, 0.12), "R": (6.0, 0.11)}

# EN 1992-1-1:2004, Table 3.3: notional size in m, coefficient kh (read, same place).
_SIZE_M = (0.100, 0.200, 0.300, 0.500)
_SIZE_FACTOR = (1.00, 0.85, 0.75, 0.70)

EN_VALID_NOTIONAL_SIZE_M = (0.100, 1.000)  # Table 3.3 starts at 100 mm: thinner pieces are extrapolated
EN_VALID_RH_FRACTION = (0.40, 1.00)  # Table 3.2 goes down to 20 %, B.1 to 40 %; the lower end is dubious
PICKETT_EXPONENT = (1.2, 1.7)  # Pickett 1956, from memory: range for sand and stone


def aggregate_restraint_ratio(aggregate_fraction, exponent):
    """Shrinkage of a mix over that of what binds it, by the share of hard particles.

    With paste as the binder the fraction is all aggregate; between two layers made from one mortar
    it is the coarse aggregate put into the second, and 1 less it the mortar left.

    Parameters
    ----------
    aggregate_fraction : float or array
        Volume of particles that do not shrink, of the whole [-].
    exponent : float or array
        Pickett's exponent n, usually 1.2 to 1.7 [-].

    Returns
    -------
    float or array
        Ratio, 1 without aggregate and 0 with nothing else [-].

    Raises
    ------
    ValueError
        When the fraction is not between 0 and 1 or the exponent is outside 0 to 3.

    Notes
    -----
    S/Sp = (1 - g)^n. Not for soft or porous aggregate, which shrinks itself.

    Examples
    --------
    >>> round(float(aggregate_restraint_ratio(0.6, 1.2)), 6)
    0.333021

    References
    ----------
    Pickett, ACI Journal 52-36 (1956), from memory.
    """
    left = 1.0 - require("share of aggregate", aggregate_fraction, 0, 1)
    return left ** require("exponent", exponent, 0, 3, low_open=True)


def pickett_exponent(modulus_ratio, poisson_ratio=0.2, aggregate_poisson_ratio=0.2):
    """Pickett's exponent from stiffness.

    Measured mixes are the better source where there are any.

    Parameters
    ----------
    modulus_ratio : float or array
        Modulus of the mix over that of the aggregate [-].
    poisson_ratio, aggregate_poisson_ratio : float or array
        Poisson's ratios of mix and aggregate [-].

    Returns
    -------
    float or array
        Exponent n [-].

    Raises
    ------
    ValueError
        When the ratio of moduli is negative or a Poisson's ratio outside 0 to 0.5.

    Notes
    -----
    n = 3(1 - mu) / (1 + mu + 2(1 - 2 mu_g) E/Eg). Stiffer aggregate, larger exponent, less shrinkage.

    Examples
    --------
    >>> round(pickett_exponent(0.3), 6)
    1.538462

    References
    ----------
    Pickett, ACI Journal 52-36 (1956), from memory.
    """
    stiffness = require("ratio of moduli", modulus_ratio, 0)
    mu = require("Poisson's ratio", poisson_ratio, 0, 0.5)
    mu_g = require("Poisson's ratio of the aggregate", aggregate_poisson_ratio, 0, 0.5)
    return 3.0 * (1.0 - mu) / (1.0 + mu + 2.0 * (1.0 - 2.0 * mu_g) * stiffness)


def notional_size_m(thickness_m, drying_faces_count):
    """Notional size 2 A/u of a wide thin piece.

    Parameters
    ----------
    thickness_m : float or array
        Thickness [m].
    drying_faces_count : int
        Faces that dry, 1 or 2 [-].

    Returns
    -------
    float or array
        Notional size h0 [m].

    Raises
    ------
    ValueError
        When the thickness is not positive or the faces are not 1 or 2.

    Notes
    -----
    The thickness when both faces dry, twice it when one does; edges left out.

    Examples
    --------
    >>> round(notional_size_m(0.0301625, 1), 7)
    0.060325

    References
    ----------
    EN 1992-1-1:2004, B.1(1), below equation (B.6): definition of h0.
    """
    if drying_faces_count not in (1, 2):
        raise ValueError(f"faces that dry: {drying_faces_count!r} given; it must be 1 or 2")
    return require("thickness", thickness_m, 0, unit="m", low_open=True) * 2.0 / drying_faces_count


def en_drying_base_strain(characteristic_strength_pa, rh_fraction, cement_class):
    """Drying shrinkage that EN 1992-1-1 expects of a thin member in the end, before the size factor.

    For concrete; a mortar without stone shrinks more, see `aggregate_restraint_ratio`.

    Parameters
    ----------
    characteristic_strength_pa : float or array
        Characteristic cylinder strength fck; the mean is 8 MPa more [Pa].
    rh_fraction : float or array
        Relative humidity; valid range `EN_VALID_RH_FRACTION` [-].
    cement_class : str
        "R", "N" or "S" [-].

    Returns
    -------
    float or array
        Strain eps_cd0 [-].

    Raises
    ------
    ValueError
        When an entry is impossible or the class unknown.

    Notes
    -----
    0.85 (220 + 110 a1) exp(-a2 fcm/10) 1.55 (1 - RH^3) 1e-6. Coefficient of variation about 30 %,
    by the code itself. Class N gives Table 3.2 after rounding.

    Examples
    --------
    >>> round(float(en_drying_base_strain(30e6, 0.60, "N")) * 1e6, 3)
    432.088

    References
    ----------
    EN 1992-1-1:2004, B.2(1), equations (B.11) and (B.12).
    """
    strength = require("characteristic strength", characteristic_strength_pa, 0, unit="Pa")
    rh = require("relative humidity", rh_fraction, 0, 1)
    try:
        size, fall = EN_DRYING_FACTORS[str(cement_class).strip().upper()]
    except KeyError:
        raise ValueError(f"cement class: {cement_class!r} given; it must be R, N or S") from None
    mean_mpa = strength / 1e6 + 8.0
    return 0.85e-6 * (220.0 + 110.0 * size) * np.exp(-fall * mean_mpa / 10.0) * 1.55 * (1.0 - rh**3)


def en_final_shrinkage_strain(characteristic_strength_pa, rh_fraction, size_m, cement_class):
    """Shrinkage in the end, drying and autogenous, by EN 1992-1-1.

    Parameters
    ----------
    characteristic_strength_pa : float or array
        Characteristic cylinder strength fck, 10 MPa at least [Pa].
    rh_fraction : float or array
        Relative humidity [-].
    size_m : float or array
        Notional size; valid range `EN_VALID_NOTIONAL_SIZE_M` [m].
    cement_class : str
        "R", "N" or "S" [-].

    Returns
    -------
    float or array
        Strain [-].

    Raises
    ------
    ValueError
        When an entry is impossible or the class unknown.

    Notes
    -----
    kh eps_cd0 + 2.5 (fck - 10) 1e-6. Not for pieces that are kept wet.

    Examples
    --------
    >>> round(float(en_final_shrinkage_strain(30e6, 0.70, 1.6, "N")) * 1e6, 3)
    303.466

    References
    ----------
    EN 1992-1-1:2004, 3.1.4(6), equations (3.8), (3.9) and (3.12), Table 3.3.
    """
    size = require("notional size", size_m, 0, unit="m", low_open=True)
    factor = np.interp(size, _SIZE_M, _SIZE_FACTOR)
    drying = factor * en_drying_base_strain(characteristic_strength_pa, rh_fraction, cement_class)
    return drying + _autogenous_final_strain(characteristic_strength_pa)


def en_shrinkage_strain(age_h, drying_start_h, characteristic_strength_pa, rh_fraction, size_m, cement_class):
    """Shrinkage at an age, drying and autogenous, by EN 1992-1-1.

    For thin pieces its pace looks too fast: show ACI 209 (`shrinkage_aci`) beside it.

    Parameters
    ----------
    age_h : float or array
        Age [h].
    drying_start_h : float or array
        Age at which drying begins, the end of curing [h].
    characteristic_strength_pa : float or array
        Characteristic cylinder strength fck, 10 MPa at least [Pa].
    rh_fraction : float or array
        Relative humidity [-].
    size_m : float or array
        Notional size; valid range `EN_VALID_NOTIONAL_SIZE_M` [m].
    cement_class : str
        "R", "N" or "S" [-].

    Returns
    -------
    float or array
        Strain since casting [-].

    Raises
    ------
    ValueError
        When an entry is impossible or the class unknown.

    Notes
    -----
    Drying grows as t/(t + 0.04 h0^1.5), t in days and h0 in mm; autogenous as 1 - exp(-0.2 sqrt t).
    structuralcodes gives the same numbers.

    Examples
    --------
    >>> round(float(en_shrinkage_strain(672.0, 72.0, 40e6, 0.50, 0.025, "R")) * 1e6, 3)
    547.572

    References
    ----------
    EN 1992-1-1:2004, 3.1.4(6), equations (3.8) to (3.13), Table 3.3.
    """
    days = require("age", age_h, 0, unit="h") / DAY_H
    since = np.maximum(days - require("start of drying", drying_start_h, 0, unit="h") / DAY_H, 0.0)
    size = require("notional size", size_m, 0, unit="m", low_open=True)
    pace = since / (since + 0.04 * (size * 1000.0) ** 1.5)
    factor = np.interp(size, _SIZE_M, _SIZE_FACTOR)
    drying = pace * factor * en_drying_base_strain(characteristic_strength_pa, rh_fraction, cement_class)
    sealed = 1.0 - np.exp(-0.2 * np.sqrt(days))
    return drying + sealed * _autogenous_final_strain(characteristic_strength_pa)


def _autogenous_final_strain(characteristic_strength_pa):
    strength = require("characteristic strength", characteristic_strength_pa, 10e6, unit="Pa")
    return 2.5e-6 * (strength / 1e6 - 10.0)
