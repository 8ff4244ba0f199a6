"""Unit weight, yield and air from a filled measure, in the form of ASTM C138."""

import numpy as np

from shop_calc.science.checks import require

US_QUART_M3 = 57.75 * 0.0254**3  # 57.75 in3 and 25.4 mm are exact


def density_kg_m3(full_mass_kg, empty_mass_kg, measure_volume_m3):
    """Density of fresh mix in a struck-off measure.

    Not for a cup that is heaped or only half full: strike it off with a plate.

    Parameters
    ----------
    full_mass_kg : float or array
        Mass of the full measure [kg].
    empty_mass_kg : float or array
        Mass of the empty measure [kg].
    measure_volume_m3 : float or array
        Volume of the measure [m3].

    Returns
    -------
    float or array
        Density of the mix as it fills the measure, air included [kg/m3].

    Raises
    ------
    ValueError
        When the full measure weighs less than the empty one.

    Notes
    -----
    Definition. The standard asks for a measure of at least 6 L; a one-quart cup is a check, not the test.

    Examples
    --------
    >>> round(density_kg_m3(24.539, 8.437, 0.0070792), 3)
    2274.551

    References
    ----------
    From memory of ASTM C138/C138M, calculation of density.
    """
    full = require("full measure", full_mass_kg, 0, unit="kg")
    empty = require("empty measure", empty_mass_kg, 0, unit="kg")
    if np.any(full < empty):
        raise ValueError(
            f"full measure: {float(np.min(full)):g} kg given; "
            f"it must be at least {float(np.max(empty)):g} kg, the empty measure"
        )
    return (full - empty) / require("volume of the measure", measure_volume_m3, 0, unit="m3", low_open=True)


def yield_volume_m3(batch_mass_kg, density_kg_m3):
    """Volume that a weighed batch really makes.

    Not with a density guessed from a table: weigh a filled measure of this batch.

    Parameters
    ----------
    batch_mass_kg : float or array
        Mass of everything that went in, water included [kg].
    density_kg_m3 : float or array
        Density of the fresh mix [kg/m3].

    Returns
    -------
    float or array
        Volume of the batch [m3].

    Raises
    ------
    ValueError
        When the mass is negative or the density is not more than 0.

    Notes
    -----
    Mass over density.

    Examples
    --------
    >>> round(yield_volume_m3(1762.66, 2322.677), 6)
    0.758892

    References
    ----------
    From memory of ASTM C138/C138M, calculation of yield.
    """
    mass = require("mass of the batch", batch_mass_kg, 0, unit="kg")
    return mass / require("density of the mix", density_kg_m3, 0, unit="kg/m3", low_open=True)


def relative_yield_ratio(yield_m3, design_volume_m3):
    """Made volume against the volume that the recipe was meant to make.

    Not a measure of quality: below 1 the batch is short, above 1 it holds more air or water than planned.

    Parameters
    ----------
    yield_m3 : float or array
        Volume that the batch made [m3].
    design_volume_m3 : float or array
        Volume that it was designed for [m3].

    Returns
    -------
    float or array
        Relative yield [-].

    Raises
    ------
    ValueError
        When the made volume is negative or the designed one is not more than 0.

    Notes
    -----
    Definition.

    Examples
    --------
    >>> round(relative_yield_ratio(0.758892, 0.764555), 6)
    0.992593

    References
    ----------
    From memory of ASTM C138/C138M, calculation of relative yield.
    """
    made = require("volume made", yield_m3, 0, unit="m3")
    return made / require("designed volume", design_volume_m3, 0, unit="m3", low_open=True)


def gravimetric_air_fraction(air_free_density_kg_m3, density_kg_m3):
    """Air content from the density with air and the density reckoned without it.

    Not where relative densities are uncertain: 0.5 % in the air-free density is half a point of air.

    Parameters
    ----------
    air_free_density_kg_m3 : float or array
        Mass over absolute volume of all ingredients [kg/m3].
    density_kg_m3 : float or array
        Measured density of the fresh mix [kg/m3].

    Returns
    -------
    float or array
        Air as a share of the volume of the mix [-].

    Raises
    ------
    ValueError
        When the mix is said to be denser than without air.

    Notes
    -----
    (T - D) / T. A mix heavier than its air-free density has a wrong mass or relative density somewhere.

    Examples
    --------
    >>> round(gravimetric_air_fraction(2374.42, 2255.56), 7)
    0.0500585

    References
    ----------
    From memory of ASTM C138/C138M, calculation of air content.
    """
    free = require("air-free density", air_free_density_kg_m3, 0, unit="kg/m3", low_open=True)
    measured = require("density of the mix", density_kg_m3, 0, unit="kg/m3", low_open=True)
    if np.any(measured > free):
        raise ValueError(
            f"density of the mix: {float(np.max(measured)):g} kg/m3 given; "
            f"it must be at most {float(np.min(free)):g} kg/m3, the density without air"
        )
    return (free - measured) / free


def cup_mass_kg(density_kg_m3, cup_volume_m3=US_QUART_M3, empty_mass_kg=0.0):
    """Reading of the scale when a struck-off cup holds a mix of the expected density.

    Not to adjust water by: a light cup says air or a weighing slip, look for the slip first.

    Parameters
    ----------
    density_kg_m3 : float or array
        Density expected of the mix [kg/m3].
    cup_volume_m3 : float or array
        Volume of the cup to the brim, a US quart unless told otherwise [m3].
    empty_mass_kg : float or array
        Mass of the empty cup [kg].

    Returns
    -------
    float or array
        Mass of the full cup [kg].

    Raises
    ------
    ValueError
        When a density or volume is not more than 0, or the cup's mass is negative.

    Notes
    -----
    Inverse of `density_kg_m3`. A quart cup filled 1/16 in low on a 4 in mouth reads about 1.4 % light.

    Examples
    --------
    >>> round(cup_mass_kg(2120.21), 6)
    2.006467

    References
    ----------
    Arithmetic on ASTM C138/C138M (from memory); the quart as a measure is common practice, no source.
    """
    density = require("density of the mix", density_kg_m3, 0, unit="kg/m3", low_open=True)
    volume = require("volume of the cup", cup_volume_m3, 0, unit="m3", low_open=True)
    return require("empty cup", empty_mass_kg, 0, unit="kg") + density * volume
