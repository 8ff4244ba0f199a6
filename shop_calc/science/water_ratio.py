"""Which water counts: the water-cementitious ratio and its inverses, water inside liquids."""

import numpy as np

from shop_calc.science.checks import require


def water_in_liquid_kg(mass_kg, solids_fraction):
    """Water inside a liquid polymer, water reducer or other liquid.

    Not for a powder, nor for a liquid that is thinned with anything but water.

    Parameters
    ----------
    mass_kg : float or array
        Mass of the liquid [kg].
    solids_fraction : float or array
        Solids as a share of its mass [-].

    Returns
    -------
    float or array
        Water in it [kg].

    Raises
    ------
    ValueError
        When the mass is negative or the solids are not between 0 and 1.

    Notes
    -----
    m (1 - solids). The solids stand on the data sheet, by mass.

    Examples
    --------
    >>> round(water_in_liquid_kg(4.53592, 0.473), 6)
    2.39043

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    mass = require("mass of the liquid", mass_kg, 0, unit="kg")
    return mass * (1.0 - require("solids", solids_fraction, 0, 1))


def water_cementitious_ratio(cementitious_mass_kg, added_water_kg, free_water_kg=0.0, liquid_water_kg=0.0):
    """Water-cementitious ratio by mass: added, free and liquid-borne water, never absorbed water.

    Not water over powder: fillers and fine sand are no binder.

    Parameters
    ----------
    cementitious_mass_kg : float or array
        Cement and pozzolans together [kg].
    added_water_kg : float or array
        Water from the tap, ice included [kg].
    free_water_kg : float or array
        Water that aggregates bring on their surface, below 0 when they drink, all of them together [kg].
    liquid_water_kg : float or array
        Water inside liquid polymer, water reducer and other liquids, all of them together [kg].

    Returns
    -------
    float or array
        Water-cementitious ratio [-].

    Raises
    ------
    ValueError
        When there is no binder, a mass is negative, or the aggregates drink more than all the water.

    Notes
    -----
    Definition. What dry aggregate drinks is taken off, because it does not reach the paste.

    Examples
    --------
    >>> round(water_cementitious_ratio(31.5466, 10.9, free_water_kg=-0.4244, liquid_water_kg=1.6964), 6)
    0.385842

    References
    ----------
    From memory of ACI Concrete Terminology (ACI CT): water-cementitious material ratio.
    """
    binder = require("cementitious mass", cementitious_mass_kg, 0, unit="kg", low_open=True)
    water = require("added water", added_water_kg, 0, unit="kg") + require(
        "water in liquids", liquid_water_kg, 0, unit="kg"
    )
    free = require("free water", free_water_kg, unit="kg")
    total = water + free
    if np.any(total < 0):
        raise ValueError(
            f"free water: {float(np.min(free)):g} kg given; "
            f"it must be at least {-float(np.max(water)):g} kg, there is no more water to drink"
        )
    return total / binder


def water_for_ratio_kg(cementitious_mass_kg, ratio):
    """Water of the mix for a wanted water-cementitious ratio.

    Not the water to pour in: take off what aggregates and liquids bring.

    Parameters
    ----------
    cementitious_mass_kg : float or array
        Cement and pozzolans together [kg].
    ratio : float or array
        Wanted water-cementitious ratio by mass [-].

    Returns
    -------
    float or array
        Added, free and liquid-borne water together [kg].

    Raises
    ------
    ValueError
        When the mass or the ratio is negative.

    Notes
    -----
    Definition turned round.

    Examples
    --------
    >>> round(water_for_ratio_kg(31.5466, 0.337), 5)
    10.6312

    References
    ----------
    From memory of ACI Concrete Terminology (ACI CT): water-cementitious material ratio.
    """
    return require("cementitious mass", cementitious_mass_kg, 0, unit="kg") * require("w/cm", ratio, 0)


def cementitious_for_ratio_kg(water_kg, ratio):
    """Binder for given water and a wanted water-cementitious ratio.

    Not a way to mend a wet mix in the bucket: new binder also wants sand and water reducer.

    Parameters
    ----------
    water_kg : float or array
        Added, free and liquid-borne water together [kg].
    ratio : float or array
        Wanted water-cementitious ratio by mass [-].

    Returns
    -------
    float or array
        Cement and pozzolans together [kg].

    Raises
    ------
    ValueError
        When the water is negative or the ratio is not more than 0.

    Notes
    -----
    Definition turned round.

    Examples
    --------
    >>> round(cementitious_for_ratio_kg(10.6312, 0.337), 4)
    31.5466

    References
    ----------
    From memory of ACI Concrete Terminology (ACI CT): water-cementitious material ratio.
    """
    return require("water", water_kg, 0, unit="kg") / require("w/cm", ratio, 0, low_open=True)
