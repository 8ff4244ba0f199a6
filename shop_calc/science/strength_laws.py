"""Strength from water and cement, strength from an own series of tests, and strength in bending."""

import numpy as np

from shop_calc.science.checks import require

# Least squares on 79 public portland mixes at 28 days, ln(strength) on w/c: derived from
# data/open/concrete_1030.csv.
ABRAMS_PA, ABRAMS_BASE = 134.1e6, 13.49
ABRAMS_VALID_RATIO = (0.27, 0.90)
ABRAMS_SCATTER = 0.145  # standard deviation of ln(strength) about the line, same fit

# 7.5 sqrt(fc) in psi, ACI 318-19 19.2.3 (memory), in Pa^0.5. The SI edition has 0.62 sqrt(MPa), 0.45 % less.
RUPTURE_ROOT_PA = 7.5 * 6894.757293168361**0.5


def hyperbolic_strength_pa(age_h, limit_strength_pa, half_time_h, start_h):
    """Strength by a hyperbola fitted to a mix's own tests.

    Use it only with constants from tests of the same mix; never with borrowed ones.

    Parameters
    ----------
    age_h : float or array
        Age, or equivalent age at the temperature of the tests [h].
    limit_strength_pa : float or array
        Strength it tends to [Pa].
    half_time_h : float or array
        Time after the start at which half of it is there, 1 over the usual rate constant k [h].
    start_h : float or array
        Age at which strength begins, near final set [h].

    Returns
    -------
    float or array
        Strength, 0 before the start [Pa].

    Raises
    ------
    ValueError
        When an age or a strength is negative or the half time is not positive.

    Notes
    -----
    S = Su k (t - t0) / (1 + k (t - t0)). The limit lies above the 28-day strength.

    Examples
    --------
    >>> round(float(hyperbolic_strength_pa(168.0, 60e6, 24 / 0.35, 6.0)))
    42156134

    References
    ----------
    Form of Carino 1984, from memory.
    """
    age = require("age", age_h, 0, unit="h")
    limit = require("limit strength", limit_strength_pa, 0, unit="Pa")
    half = require("half time", half_time_h, 0, unit="h", low_open=True)
    since = np.maximum(age - require("start of strength", start_h, 0, unit="h"), 0.0)
    return limit * since / (half + since)


def abrams_strength_pa(water_cement_ratio, zero_water_pa=ABRAMS_PA, base_factor=ABRAMS_BASE):
    """28-day compressive strength from water and cement.

    Shows a direction and a size, not the strength of a mix: a single mix is off by 15 % as a rule.
    Not for blended cement, polymers, or for water that the aggregate drank.

    Parameters
    ----------
    water_cement_ratio : float or array
        Water to portland cement by mass; valid range `ABRAMS_VALID_RATIO` [-].
    zero_water_pa : float
        Where the fitted line meets no water; a constant, not a strength that exists [Pa].
    base_factor : float
        By how much strength is divided when the ratio grows by 1 [-].

    Returns
    -------
    float or array
        Compressive strength at 28 days [Pa].

    Raises
    ------
    ValueError
        When the ratio is not between 0 and 2.

    Notes
    -----
    A / B^(w/c), A 134.1 MPa and B 13.49 by least squares on 79 public mixes, correlation -0.936.

    Examples
    --------
    >>> round(float(abrams_strength_pa(0.50)))
    36510922

    References
    ----------
    Form of Abrams 1918, from memory; constants derived from the data of Yeh, J. Materials in Civil
    Engineering 18 (2006) 597-604.
    """
    ratio = require("water to cement", water_cement_ratio, 0, 2, low_open=True)
    base = require("base", base_factor, 1, low_open=True)
    return require("constant A", zero_water_pa, 0, unit="Pa", low_open=True) * base ** (-ratio)


def rupture_modulus_pa(strength_pa):
    """Bending strength of plain concrete from its compressive strength.

    Not for light aggregate, not for a face full of fibre (fibre is not credited), and not for a
    surface that dried in the sun: drying alone can take a third of it (from memory).

    Parameters
    ----------
    strength_pa : float or array
        Compressive strength at the same age [Pa].

    Returns
    -------
    float or array
        Modulus of rupture [Pa].

    Raises
    ------
    ValueError
        When the strength is negative.

    Notes
    -----
    7.5 sqrt(fc) in psi. Tests of plain flexure scatter widely: divide by 1.5 before use.

    Examples
    --------
    >>> round(float(rupture_modulus_pa(20684271.9)))
    2832311

    References
    ----------
    ACI 318-19, 19.2.3, from memory.
    """
    return RUPTURE_ROOT_PA * np.sqrt(require("strength", strength_pa, 0, unit="Pa"))


def strength_for_rupture_pa(rupture_pa):
    """Compressive strength that goes with a wanted modulus of rupture.

    Not a way to prove strength from a bending test of a small strip.

    Parameters
    ----------
    rupture_pa : float or array
        Wanted modulus of rupture [Pa].

    Returns
    -------
    float or array
        Compressive strength [Pa].

    Raises
    ------
    ValueError
        When the wanted value is negative.

    Notes
    -----
    The inverse of `rupture_modulus_pa`: it grows with the square.

    Examples
    --------
    >>> round(float(strength_for_rupture_pa(2832311.0)), -2)
    20684300.0

    References
    ----------
    ACI 318-19, 19.2.3, from memory.
    """
    return (require("modulus of rupture", rupture_pa, 0, unit="Pa") / RUPTURE_ROOT_PA) ** 2
