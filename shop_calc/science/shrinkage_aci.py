"""Shrinkage by ACI 209: standard conditions times a factor for every departure from them."""

import numpy as np

from shop_calc.science.checks import require

DAY_H = 24.0
ACI_STANDARD_STRAIN = 780e-6  # ACI 209R-92 2.4, for standard conditions when there are no tests (memory)
ACI_HALF_TIME_H = 35.0 * DAY_H  # moist cured 7 days; 55 days for steam cured (memory)
ACI_VALID_RH_FRACTION = (0.40, 1.00)  # memory


def aci_final_shrinkage_strain(
    rh_fraction, volume_surface_m, slump_m, fine_aggregate_fraction, cement_kg_m3, air_fraction, moist_cure_h
):
    """Shrinkage in the end by ACI 209.

    For concrete with stone. A mortar lies outside it (its sand share is 100 %): the result is then a size
    and no more.

    Parameters
    ----------
    rh_fraction : float or array
        Relative humidity; valid range `ACI_VALID_RH_FRACTION` [-].
    volume_surface_m : float or array
        Volume over drying surface; half the thickness when both faces dry [m].
    slump_m : float or array
        Slump of the fresh mix [m].
    fine_aggregate_fraction : float or array
        Sand, of all aggregate by mass [-].
    cement_kg_m3 : float or array
        Cement content [kg/m3].
    air_fraction : float or array
        Air content [-].
    moist_cure_h : float or array
        Length of moist curing [h].

    Returns
    -------
    float or array
        Strain [-].

    Raises
    ------
    ValueError
        When an entry is impossible.

    Notes
    -----
    780e-6 times: RH 1.40 - 1.02 h up to 0.80, then 3.00 - 3.00 h; size 1.2 exp(-4.72 V/S in m);
    slump 0.89 + 1.61 s; sand 0.30 + 1.4 p up to a half, then 0.90 + 0.2 p; cement 0.75 + 0.00061 c;
    air 0.95 + 0.8 a, never under 1; curing 1.202 - 0.2337 log10 days.
    The SI and US constants differ by under 1 %.

    Examples
    --------
    >>> s = aci_final_shrinkage_strain(0.70, 0.100, 0.075, 0.40, 409.0, 0.02, 168.0)
    >>> round(float(s) * 1e6, 3)
    349.529

    References
    ----------
    ACI 209R-92, section 2.5, and ACI 209.2R-08, A.1, from memory.
    """
    rh = require("relative humidity", rh_fraction, 0, 1)
    size = require("volume over surface", volume_surface_m, 0, unit="m", low_open=True)
    slump = require("slump", slump_m, 0, 0.305, unit="m")
    sand = require("share of sand", fine_aggregate_fraction, 0, 1)
    cement = require("cement content", cement_kg_m3, 0, 1500, unit="kg/m3")
    air = require("air content", air_fraction, 0, 0.3)
    cured = require("moist curing", moist_cure_h, 0, unit="h", low_open=True)
    product = np.minimum(1.40 - 1.02 * rh, 3.00 - 3.00 * rh)  # they cross at 0.81; printed joint at 0.80
    product = product * 1.2 * np.exp(-4.72 * size) * (0.89 + 1.61 * slump)
    product = product * np.minimum(0.30 + 1.4 * sand, 0.90 + 0.2 * sand)
    product = product * (0.75 + 0.00061 * cement) * np.maximum(0.95 + 0.8 * air, 1.0)
    curing = np.maximum(1.202 - 0.2337 * np.log10(np.divide(cured, DAY_H)), 0.0)
    return ACI_STANDARD_STRAIN * product * curing


def aci_shrinkage_strain(drying_h, final_strain, half_time_h=ACI_HALF_TIME_H):
    """Shrinkage after a time of drying by ACI 209.

    Its pace does not know how thick the piece is: a thin one is quicker.

    Parameters
    ----------
    drying_h : float or array
        Time since drying began [h].
    final_strain : float or array
        Strain in the end [-].
    half_time_h : float
        Time for half of it; 35 days after moist curing [h].

    Returns
    -------
    float or array
        Strain [-].

    Raises
    ------
    ValueError
        When the time is negative.

    Notes
    -----
    t/(35 d + t).

    Examples
    --------
    >>> round(aci_shrinkage_strain(600.0, 350e-6) * 1e6, 4)
    145.8333

    References
    ----------
    ACI 209R-92, equation (2-9), from memory.
    """
    time = require("time of drying", drying_h, 0, unit="h")
    half = require("half time", half_time_h, 0, unit="h", low_open=True)
    return require("final strain", final_strain, 0) * time / (half + time)
