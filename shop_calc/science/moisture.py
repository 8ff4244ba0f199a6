"""Moisture of aggregates given oven-dry: what to weigh out, and what to change the water by.

Shares are on oven-dry mass; `ssd_basis` is for recipes that give their sand saturated surface-dry.
Every function takes one aggregate or an array of them and answers for each; sums are the caller's.
"""

import numpy as np

from shop_calc.science.checks import require


def moisture_fraction(damp_mass_kg, oven_dry_mass_kg):
    """Moisture of a sample weighed before and after drying it in a pan or an oven.

    Not the free moisture: part of this water sits in the pores, see `ssd_basis`.

    Parameters
    ----------
    damp_mass_kg : float or array
        Mass of the sample as it lies in the heap [kg].
    oven_dry_mass_kg : float or array
        Mass of the same sample dried until it loses no more [kg].

    Returns
    -------
    float or array
        Total moisture, on oven-dry mass [-].

    Raises
    ------
    ValueError
        When the damp sample weighs less than the dry one, or the dry one nothing.

    Notes
    -----
    Definition. A kitchen scale that shows 1 g gives 0.1 % on a 1 kg sample.

    Examples
    --------
    >>> round(moisture_fraction(1.0437, 0.9915), 6)
    0.052648

    References
    ----------
    From memory of ASTM C566, calculation of total moisture.
    """
    dry = require("oven-dry mass", oven_dry_mass_kg, 0, unit="kg", low_open=True)
    damp = require("damp mass", damp_mass_kg, 0, unit="kg")
    if np.any(damp < dry):
        raise ValueError(
            f"damp mass: {float(np.min(damp)):g} kg given; it must be at least {float(np.max(dry)):g} kg, "
            "the mass after drying"
        )
    return damp / dry - 1.0


def batch_mass_kg(oven_dry_mass_kg, moisture_fraction):
    """Mass of moist aggregate to weigh out for a wanted oven-dry mass.

    Not for a recipe that gives its sand saturated surface-dry: see `ssd_basis.ssd_batch_mass_kg`.

    Parameters
    ----------
    oven_dry_mass_kg : float or array
        Oven-dry mass that the recipe asks for [kg].
    moisture_fraction : float or array
        Total moisture of the heap, on oven-dry mass [-].

    Returns
    -------
    float or array
        Mass on the scale, never less than the oven-dry mass [kg].

    Raises
    ------
    ValueError
        When the mass is negative or the moisture is not at least 0 and less than 1.

    Notes
    -----
    Definition of moisture: wet sand is weighed heavier, never lighter, so that the same grains go in.

    Examples
    --------
    >>> round(batch_mass_kg(560.64, 0.0637), 5)
    596.35277

    References
    ----------
    US Navy Engineering Aid training manual NAVEDTRA 14070/14071, ch. 17: moisture correction.
    """
    return _oven_dry(oven_dry_mass_kg) * (1.0 + _moisture(moisture_fraction))


def oven_dry_from_batch_kg(batch_mass_kg, moisture_fraction):
    """Oven-dry mass in a weighed amount of moist aggregate.

    Not for packed dry sand unless its moisture is measured: even that holds some tenths of a percent.

    Parameters
    ----------
    batch_mass_kg : float or array
        Mass on the scale [kg].
    moisture_fraction : float or array
        Total moisture, on oven-dry mass [-].

    Returns
    -------
    float or array
        Oven-dry mass [kg].

    Raises
    ------
    ValueError
        When the mass is negative or the moisture is not at least 0 and less than 1.

    Notes
    -----
    Inverse of `batch_mass_kg`.

    Examples
    --------
    >>> round(oven_dry_from_batch_kg(596.35277, 0.0637), 5)
    560.64

    References
    ----------
    From memory of ASTM C566, definition of total moisture.
    """
    mass = require("mass on the scale", batch_mass_kg, 0, unit="kg")
    return mass / (1.0 + _moisture(moisture_fraction))


def absorbed_water_kg(oven_dry_mass_kg, absorption_fraction):
    """Water in the pores of an aggregate once it is saturated.

    Not water of the mix: it adds mass and no volume, and never counts for the water-cementitious ratio.

    Parameters
    ----------
    oven_dry_mass_kg : float or array
        Oven-dry mass [kg].
    absorption_fraction : float or array
        Water that the pores hold, on oven-dry mass [-].

    Returns
    -------
    float or array
        Water in the pores [kg].

    Raises
    ------
    ValueError
        When the mass is negative or the absorption is not at least 0 and less than 1.

    Notes
    -----
    Full saturation is assumed; in the first half hour dry stone takes most, not all, of it.

    Examples
    --------
    >>> round(absorbed_water_kg(759.31, 0.0053), 6)
    4.024343

    References
    ----------
    From memory of ASTM C127 and C128, definitions of absorption.
    """
    return _oven_dry(oven_dry_mass_kg) * _absorption(absorption_fraction)


def free_water_kg(oven_dry_mass_kg, moisture_fraction, absorption_fraction):
    """Water that an aggregate brings to the mix, negative when it drinks from it.

    Not the water to add: that has the opposite sign, see `water_correction_kg`.

    Parameters
    ----------
    oven_dry_mass_kg : float or array
        Oven-dry mass [kg].
    moisture_fraction : float or array
        Total moisture, on oven-dry mass [-].
    absorption_fraction : float or array
        Water that the pores hold, on oven-dry mass [-].

    Returns
    -------
    float or array
        Water on the surface of the grains; below 0, water that the pores still lack [kg].

    Raises
    ------
    ValueError
        When the mass is negative, or moisture or absorption is not at least 0 and less than 1.

    Notes
    -----
    OD (mc - abs).

    Examples
    --------
    >>> round(free_water_kg(560.64, 0.0637, 0.0071), 6)
    31.732224

    References
    ----------
    US Navy Engineering Aid training manual NAVEDTRA 14070/14071, ch. 17: moisture correction.
    """
    share = _moisture(moisture_fraction) - _absorption(absorption_fraction)
    return _oven_dry(oven_dry_mass_kg) * share


def water_correction_kg(oven_dry_mass_kg, moisture_fraction, absorption_fraction):
    """Change of the added water that keeps the water of the mix as designed; positive means add.

    Not for aggregate that comes saturated surface-dry: its correction is nil.

    Parameters
    ----------
    oven_dry_mass_kg : float or array
        Oven-dry mass [kg].
    moisture_fraction : float or array
        Total moisture, on oven-dry mass [-].
    absorption_fraction : float or array
        Water that the pores hold, on oven-dry mass [-].

    Returns
    -------
    float or array
        Water to add for a dry aggregate, below 0 water to leave out for a wet one [kg].

    Raises
    ------
    ValueError
        When the mass is negative, or moisture or absorption is not at least 0 and less than 1.

    Notes
    -----
    -OD (mc - abs). With `batch_mass_kg` the whole batch grows by exactly OD abs against the recipe.

    Examples
    --------
    >>> round(water_correction_kg(54.431, 0.0013, 0.0102), 7)
    0.4844359

    References
    ----------
    US Navy Engineering Aid training manual NAVEDTRA 14070/14071, ch. 17: moisture correction.
    """
    return -free_water_kg(oven_dry_mass_kg, moisture_fraction, absorption_fraction)


def _oven_dry(oven_dry_mass_kg):
    return require("oven-dry mass", oven_dry_mass_kg, 0, unit="kg")


def _moisture(fraction):
    return require("moisture", fraction, 0, 1, high_open=True)


def _absorption(fraction):
    return require("absorption", fraction, 0, 1, high_open=True)
