"""Absolute volume: how much room given masses take when mixed, and the same the other way round."""

import numpy as np

from shop_calc.science.checks import one_each, require

# 62.4 lb/ft3 with the exact pound and foot, 999.552 kg/m3. The worked examples of the trade count with it;
# water itself weighs 999.1 kg/m3 at 15 °C and 998.2 at 20 °C (IAPWS), 0.05 and 0.14 % less.
WATER_DENSITY_KG_M3 = 62.4 * 0.45359237 / 0.3048**3

# Nothing on earth is denser than osmium, 22.6: a larger number is a density, not a relative one.
RELATIVE_DENSITY_HIGHEST = 25.0
# Foamed beads, the lightest grains that go into a mortar, have about 0.02; below that it is a slip of the keys.
RELATIVE_DENSITY_LOWEST = 0.01


def solid_volume_m3(mass_kg, relative_density, water_density_kg_m3=WATER_DENSITY_KG_M3):
    """Room that the grains, or the liquid, of one ingredient take up.

    Not for a heap or a full bag: the air between loose grains is not in it.

    Parameters
    ----------
    mass_kg : float or array
        Mass; oven-dry with the oven-dry relative density, saturated surface-dry with that one [kg].
    relative_density : float or array
        Density against water, 1 for water itself; broadcast against `mass_kg` [-].
    water_density_kg_m3 : float
        Density of water that the relative density refers to [kg/m3].

    Returns
    -------
    float or array
        Volume of grains or liquid, shape of the inputs broadcast [m3].

    Raises
    ------
    ValueError
        When a mass is negative or a relative density is not between 0.01 and 25.

    Notes
    -----
    Valid for any mass. A relative density is known to about 0.01, so a cement volume to about 0.3 %.

    Examples
    --------
    >>> round(solid_volume_m3(100.0, 3.15), 7)
    0.0317603

    References
    ----------
    US Navy Engineering Aid training manual NAVEDTRA 14070/14071, ch. 17: absolute volume.
    """
    mass = require("mass", mass_kg, 0, unit="kg")
    relative = _relative(relative_density)
    return mass / (relative * _water(water_density_kg_m3))


def mix_volume_m3(mass_kg, relative_density, air_fraction=0.0, water_density_kg_m3=WATER_DENSITY_KG_M3):
    """Volume of a mix of several ingredients with its air.

    Not for water that porous grains have drunk: it fills their pores and adds no volume, so leave it out.

    Parameters
    ----------
    mass_kg : array, shape (..., n)
        Masses of the n ingredients along the last axis [kg].
    relative_density : array, shape (n,) or (..., n)
        Their relative densities, same order [-].
    air_fraction : float or array, shape (...)
        Air as a share of the volume of the mix [-].
    water_density_kg_m3 : float
        Density of water that the relative densities refer to [kg/m3].

    Returns
    -------
    float or array, shape (...)
        Volume of the mix [m3].

    Raises
    ------
    ValueError
        When lists differ in length, a mass is negative, or air is not at least 0 and less than 1.

    Notes
    -----
    V = sum(m / (rd rho_w)) / (1 - air). Arithmetic; as good as the air content, which is rarely known to 1 %.

    Examples
    --------
    >>> round(float(mix_volume_m3([80.0, 100.0, 33.0], [3.15, 2.65, 1.0], 0.04)), 6)
    0.100183

    References
    ----------
    US Navy Engineering Aid training manual NAVEDTRA 14070/14071, ch. 17: absolute volume.
    """
    air = require("air", air_fraction, 0, 1, high_open=True)
    return _sum_of_volumes(mass_kg, relative_density, water_density_kg_m3) / (1.0 - air)


def air_volume_m3(total_volume_m3, air_fraction):
    """Volume of the air in a mix.

    Not for the voids between loose grains: see `bulk.void_fraction`.

    Parameters
    ----------
    total_volume_m3 : float or array
        Volume of the mix, air included [m3].
    air_fraction : float or array
        Air as a share of the volume of the mix [-].

    Returns
    -------
    float or array
        Volume of air [m3].

    Raises
    ------
    ValueError
        When the volume is negative, or air is not at least 0 and less than 1.

    Notes
    -----
    Definition of the air content.

    Examples
    --------
    >>> round(air_volume_m3(0.76455, 0.05), 7)
    0.0382275

    References
    ----------
    US Navy Engineering Aid training manual NAVEDTRA 14070/14071, ch. 17: absolute volume.
    """
    volume = require("volume of the mix", total_volume_m3, 0, unit="m3")
    return volume * require("air", air_fraction, 0, 1, high_open=True)


def mass_by_difference_kg(
    total_volume_m3,
    mass_kg,
    relative_density,
    air_fraction,
    wanted_relative_density,
    water_density_kg_m3=WATER_DENSITY_KG_M3,
):
    """Mass of the last ingredient that fills up a given volume.

    Not for two unknown ingredients at once: fix one of them first.

    Parameters
    ----------
    total_volume_m3 : float or array, shape (...)
        Volume that the whole mix is to have, air included [m3].
    mass_kg : array, shape (..., n)
        Masses of the n ingredients already fixed, along the last axis [kg].
    relative_density : array, shape (n,) or (..., n)
        Their relative densities, same order [-].
    air_fraction : float or array, shape (...)
        Air as a share of the volume of the mix [-].
    wanted_relative_density : float
        Relative density of the ingredient that is looked for [-].
    water_density_kg_m3 : float
        Density of water that the relative densities refer to [kg/m3].

    Returns
    -------
    float or array, shape (...)
        Mass of the ingredient that is looked for [kg].

    Raises
    ------
    ValueError
        When the fixed ingredients and the air already fill more than the volume.

    Notes
    -----
    m = (V (1 - air) - sum(m_i / (rd_i rho_w))) rd rho_w. Six printed examples agree to 1.5 lb per cubic yard;
    the rest is their own rounding on the way.

    Examples
    --------
    >>> round(float(mass_by_difference_kg(1.0, [435.0, 135.0, 1072.0], [3.0, 1.0, 2.68], 0.08, 2.64)), 3)
    632.512

    References
    ----------
    US Navy Engineering Aid training manual NAVEDTRA 14070/14071, ch. 17: absolute volume.
    """
    total = require("volume of the mix", total_volume_m3, 0, unit="m3")
    air = require("air", air_fraction, 0, 1, high_open=True)
    room = total * (1.0 - air) - _sum_of_volumes(mass_kg, relative_density, water_density_kg_m3)
    if np.any(room < 0):
        excess_l = -1e3 * float(np.min(room))
        raise ValueError(
            f"masses: with the air they fill {excess_l:.4g} L more than the volume of the mix; "
            "they must leave room for the last ingredient"
        )
    return room * _relative(wanted_relative_density) * _water(water_density_kg_m3)


def extended_volume_m3(
    mortar_volume_m3, added_mass_kg, added_relative_density, water_density_kg_m3=WATER_DENSITY_KG_M3
):
    """Volume of a mortar after stone or coarse sand is stirred in.

    Not when the stone is dry and its water is left out: the stone then drinks from the mortar.

    Parameters
    ----------
    mortar_volume_m3 : float or array, shape (...)
        Volume of the mortar with its air [m3].
    added_mass_kg : array, shape (..., n)
        Masses of the n ingredients stirred in, along the last axis [kg].
    added_relative_density : array, shape (n,) or (..., n)
        Their relative densities, on the same moisture basis as the masses [-].
    water_density_kg_m3 : float
        Density of water that the relative densities refer to [kg/m3].

    Returns
    -------
    float or array, shape (...)
        Volume after stirring in [m3].

    Raises
    ------
    ValueError
        When a volume or mass is negative, or lists differ in length.

    Notes
    -----
    Every grain displaces its own volume; no air is counted to come in with it.

    Examples
    --------
    >>> round(float(extended_volume_m3(0.05, [27.0, 54.0], [2.65, 2.65])), 7)
    0.0805797

    References
    ----------
    Arithmetic on absolute volumes; common practice, no source for the added air being nil.
    """
    mortar = require("volume of mortar", mortar_volume_m3, 0, unit="m3")
    return mortar + _sum_of_volumes(added_mass_kg, added_relative_density, water_density_kg_m3)


def mortar_fraction(
    mortar_volume_m3, added_mass_kg, added_relative_density, water_density_kg_m3=WATER_DENSITY_KG_M3
):
    """Share of the mortar, phi, in a mortar extended with stone or coarse sand.

    Not a measure of whether it can be packed: compare it with `bulk.void_fraction` of the stone.

    Parameters
    ----------
    mortar_volume_m3 : float or array, shape (...)
        Volume of the mortar with its air [m3].
    added_mass_kg : array, shape (..., n)
        Masses of the n ingredients stirred in, along the last axis [kg].
    added_relative_density : array, shape (n,) or (..., n)
        Their relative densities [-].
    water_density_kg_m3 : float
        Density of water that the relative densities refer to [kg/m3].

    Returns
    -------
    float or array, shape (...)
        Volume of mortar in a unit volume of the extended mix, 1 when nothing is added [-].

    Raises
    ------
    ValueError
        When there is no mortar, a mass is negative, or lists differ in length.

    Notes
    -----
    phi = V_mortar / (V_mortar + sum(M_i / (rd_i rho_w))).

    Examples
    --------
    >>> round(float(mortar_fraction(0.05, [27.0, 54.0], [2.65, 2.65])), 6)
    0.620503

    References
    ----------
    Arithmetic on absolute volumes, anyone can repeat it.
    """
    mortar = require("volume of mortar", mortar_volume_m3, 0, unit="m3", low_open=True)
    return mortar / extended_volume_m3(mortar, added_mass_kg, added_relative_density, water_density_kg_m3)


def _sum_of_volumes(mass_kg, relative_density, water_density_kg_m3):
    relative = one_each("relative densities", relative_density, mass_kg)
    return np.sum(solid_volume_m3(np.atleast_1d(mass_kg), relative, water_density_kg_m3), axis=-1)


def _relative(relative_density):
    return require("relative density", relative_density, RELATIVE_DENSITY_LOWEST, RELATIVE_DENSITY_HIGHEST)


def _water(water_density_kg_m3):
    return require("density of water", water_density_kg_m3, 900, 1100, unit="kg/m3")
