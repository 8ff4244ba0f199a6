"""Strength with age: two curves, both shown, the lower one used."""

import numpy as np

from shop_calc.science.checks import require
from shop_calc.science.maturity import en_adjusted_age_h

DAY_H = 24.0

# EN 1992-1-1:2004, 3.1.2(6): coefficient s by cement class (read).
EN_S_FACTOR = {"R": 0.20, "N": 0.25, "S": 0.38}

# ACI 209R-92, Table 2.2.1: a in days and b, by curing and cement type (memory).
ACI_209_DAYS = {
    ("moist", "I"): (4.0, 0.85),
    ("moist", "III"): (2.3, 0.92),
    ("steam", "I"): (1.0, 0.95),
    ("steam", "III"): (0.70, 0.98),
}

# A plan ends at 28 days: only the lower ends are ever left, every morning, and the plan says so.
EN_VALID_AGE_H = (3 * DAY_H, 100 * 365 * DAY_H)  # 3.1.2(5): below 3 days the code wants tests
ACI_VALID_AGE_H = (1 * DAY_H, 100 * 365 * DAY_H)  # fitted from 1 day on, from memory


def en_s_factor(cement_class):
    """Coefficient s of a cement class.

    Parameters
    ----------
    cement_class : str
        "R" rapid, "N" normal or "S" slow [-].

    Returns
    -------
    float
        Coefficient s of the EN 1992 curve [-].

    Raises
    ------
    ValueError
        When the class is none of the three.

    Notes
    -----
    On one measured series the best s rises with slag: 0.18, 0.26, 0.33, 0.39 at 0, 15, 30, 50 %.
    Not for blends with much slag or ash, unless the cement's own class is known.

    Examples
    --------
    >>> f"{en_s_factor('N'):.5f}"
    '0.25000'

    References
    ----------
    EN 1992-1-1:2004, 3.1.2(6).
    """
    try:
        return EN_S_FACTOR[str(cement_class).strip().upper()]
    except KeyError:
        raise ValueError(f"cement class: {cement_class!r} given; it must be R, N or S") from None


def en_strength_ratio(age_h, s_factor):
    """Compressive strength at an age, as a share of that at 28 days, by EN 1992-1-1.

    Do not lift or load early on this number alone: on open portland mixes class N is 24 and 20 %
    above the measured ratio at 3 and 7 days.

    Parameters
    ----------
    age_h : float or array
        Age at 20 C, or the temperature-adjusted age [h].
    s_factor : float or array
        Coefficient s, see `EN_S_FACTOR` [-].

    Returns
    -------
    float or array
        Ratio to the 28-day strength, 0 at age 0; valid range `EN_VALID_AGE_H` [-].

    Raises
    ------
    ValueError
        When the age is negative or s is outside 0.05 to 1.

    Notes
    -----
    exp(s (1 - sqrt(28/t))), t in days. Never above exp(s). structuralcodes gives the same.

    Examples
    --------
    >>> round(float(en_strength_ratio(72.0, 0.25)), 6)
    0.59824

    References
    ----------
    EN 1992-1-1:2004, 3.1.2(6), equations (3.1) and (3.2).
    """
    age = require("age", age_h, 0, unit="h")
    s = require("coefficient s", s_factor, 0.05, 1.0)
    with np.errstate(divide="ignore"):
        return np.exp(s * (1.0 - np.sqrt(np.divide(28.0 * DAY_H, age))))


def en_strength_ratio_at(time_h, temp_c, s_factor):
    """EN 1992 strength ratio after a temperature history given as steps.

    Not for histories above 80 C or with frost in them.

    Parameters
    ----------
    time_h : float or array (..., n)
        Length of each step [h].
    temp_c : float or array (..., n)
        Temperature of the concrete in each step [°C].
    s_factor : float or array
        Coefficient s, see `EN_S_FACTOR` [-].

    Returns
    -------
    float or array (...)
        Ratio to the 28-day strength at 20 C [-].

    Raises
    ------
    ValueError
        As `maturity.en_adjusted_age_h` and `en_strength_ratio`.

    Notes
    -----
    Maturity rules leave out that a hot start costs strength later on.

    Examples
    --------
    >>> round(float(en_strength_ratio_at(16.0, 25.0, 0.20)), 6)
    0.384054

    References
    ----------
    EN 1992-1-1:2004, 3.1.2(6) with equation (B.10).
    """
    return en_strength_ratio(en_adjusted_age_h(time_h, temp_c), s_factor)


def aci_strength_ratio(age_h, a_h, b_factor):
    """Compressive strength at an age, as a share of that at 28 days, by ACI 209.

    Not before the set, and not for cements other than those of `ACI_209_DAYS`.

    Parameters
    ----------
    age_h : float or array
        Age at 20 C [h].
    a_h : float or array
        Constant a; ACI prints it in days [h].
    b_factor : float or array
        Constant b [-].

    Returns
    -------
    float or array
        Ratio to the 28-day strength, 0 at age 0; valid range `ACI_VALID_AGE_H` [-].

    Raises
    ------
    ValueError
        When the age is negative or a constant is not positive.

    Notes
    -----
    t / (a + b t). At 28 days it gives 1.007 for moist-cured Type I, as printed constants do. On the
    open portland mixes it is within 9 % of the measured ratio from 3 to 90 days.

    Examples
    --------
    >>> round(float(aci_strength_ratio(168.0, 96.0, 0.85)), 6)
    0.703518

    References
    ----------
    ACI 209R-92, equation (2-1) and Table 2.2.1, from memory.
    """
    age = require("age", age_h, 0, unit="h")
    a = require("constant a", a_h, 0, unit="h", low_open=True)
    return age / (a + require("constant b", b_factor, 0, low_open=True) * age)


def lower_strength_ratio(age_h, a_h, b_factor, s_factor):
    """The lower of the ACI 209 and EN 1992 strength ratios.

    Not a measurement: where a piece must carry a person, break a cylinder.

    Parameters
    ----------
    age_h : float or array
        Age at 20 C [h].
    a_h, b_factor : float or array
        Constants of ACI 209 [h] and [-].
    s_factor : float or array
        Coefficient s of EN 1992 [-].

    Returns
    -------
    float or array
        Ratio to the 28-day strength [-].

    Raises
    ------
    ValueError
        As the two curves.

    Notes
    -----
    Taking the lower one is our judgement. With Type I beside class N, ACI 209 is the lower from 3 hours
    to 21 days and EN 1992 from there to 94. At 7 days even the lower one is 9 % above the open data.

    Examples
    --------
    >>> round(float(lower_strength_ratio(72.0, 96.0, 0.85, 0.25)), 6)
    0.458015

    References
    ----------
    ACI 209R-92 Table 2.2.1, from memory; EN 1992-1-1:2004, 3.1.2(6).
    """
    return np.minimum(aci_strength_ratio(age_h, a_h, b_factor), en_strength_ratio(age_h, s_factor))


def lower_ratio_age_h(strength_ratio, a_h, b_factor, s_factor):
    """Age at which the lower of the two curves reaches a wanted ratio.

    Parameters
    ----------
    strength_ratio : float or array
        Wanted ratio to the 28-day strength, below both curves' limits [-].
    a_h, b_factor : float or array
        Constants of ACI 209 [h] and [-].
    s_factor : float or array
        Coefficient s of EN 1992 [-].

    Returns
    -------
    float or array
        Age at 20 C, the later of the two [h].

    Raises
    ------
    ValueError
        When one curve never gets there: the limits are 1/b and exp(s).

    Notes
    -----
    Inverse of `lower_strength_ratio`: a r/(1 - b r), and 28 d / (1 - ln r / s)^2.

    Examples
    --------
    >>> round(float(lower_ratio_age_h(0.458015, 96.0, 0.85, 0.25)), 3)
    72.0

    References
    ----------
    ACI 209R-92 Table 2.2.1, from memory; EN 1992-1-1:2004, 3.1.2(6).
    """
    s = require("coefficient s", s_factor, 0.05, 1.0)
    b = require("constant b", b_factor, 0, low_open=True)
    limit = float(np.min(np.minimum(1.0 / np.asarray(b), np.exp(s))))
    ratio = require("wanted ratio", strength_ratio, 0, limit, low_open=True, high_open=True)
    aci = require("constant a", a_h, 0, unit="h", low_open=True) * ratio / (1.0 - b * ratio)
    return np.maximum(aci, 28.0 * DAY_H / (1.0 - np.log(ratio) / s) ** 2)
