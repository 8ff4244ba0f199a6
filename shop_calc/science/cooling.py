"""The heat balance read backwards: the water, or the ice, that brings a mix to the temperature wanted."""

import numpy as np

from shop_calc.science.checks import one_each, require
from shop_calc.science.heat_balance import (
    ICE_LATENT_HEAT_K,
    SOLID_SPECIFIC_HEAT,
    WATER_TEMP_C,
    ice_cooling_k,
    mix_temp_c,
    water_equivalent_kg,
)


def water_temperature_for_c(
    wanted_mix_temp_c,
    solid_mass_kg,
    solid_temp_c,
    water_mass_kg,
    other_water_mass_kg=0.0,
    other_water_temp_c=0.0,
    ice_mass_kg=0.0,
    *,
    ice_temp_c=0.0,
    solid_specific_heat=SOLID_SPECIFIC_HEAT,
    ice_latent_heat_k=ICE_LATENT_HEAT_K,
):
    """Temperature that the added water needs so that the mix comes out as wanted.

    Not a promise: a result below 0 or above 100 °C says that no liquid water can do it.

    Parameters
    ----------
    wanted_mix_temp_c : float or array, shape (...)
        Temperature that the mix is to have [°C].
    solid_mass_kg : float or array, shape (..., n)
        Masses of the n solids along the last axis, dry [kg].
    solid_temp_c : float or array, shape (..., n)
        Their temperatures [°C].
    water_mass_kg : float or array, shape (...)
        Added liquid water whose temperature is looked for [kg].
    other_water_mass_kg : float or array, shape (..., m)
        Waters that come as they are, such as moisture of aggregates and liquids, along the last axis [kg].
    other_water_temp_c : float or array, shape (..., m)
        Their temperatures [°C].
    ice_mass_kg : float or array, shape (...)
        Ice besides the added liquid water [kg].
    ice_temp_c : float or array, shape (...)
        Temperature of the ice [°C].
    solid_specific_heat : float or array, shape (n,)
        Specific heat of the solids against water [-].
    ice_latent_heat_k : float
        Latent heat of ice over the specific heat of water [K].

    Returns
    -------
    float or array, shape (...)
        Temperature of the added water; liquid only between 0 and 100 [°C].

    Raises
    ------
    ValueError
        When there is no added water, a mass is negative or a temperature is impossible.

    Notes
    -----
    `mix_temp_c` is a straight line in Tw; read backwards. Put back, it gives the wanted temperature.

    Examples
    --------
    >>> round(float(water_temperature_for_c(17.77, [100.0, 100.0], [30.0, 28.0], 32.0)), 5)
    2.32875

    References
    ----------
    Algebra on `heat_balance.mix_temp_c`, anyone can repeat it.
    """
    wanted = require("wanted mix temperature", wanted_mix_temp_c, *WATER_TEMP_C, unit="°C")
    water = require("added water", water_mass_kg, 0, unit="kg", low_open=True)
    waters, temps = _joined(water, WATER_TEMP_C[1], other_water_mass_kg, other_water_temp_c)
    hottest = mix_temp_c(
        solid_mass_kg,
        solid_temp_c,
        waters,
        temps,
        ice_mass_kg,
        ice_temp_c=ice_temp_c,
        solid_specific_heat=solid_specific_heat,
        ice_latent_heat_k=ice_latent_heat_k,
    )
    total = water_equivalent_kg(solid_mass_kg, waters, ice_mass_kg, solid_specific_heat=solid_specific_heat)
    return WATER_TEMP_C[1] - (hottest - wanted) * total / water


def ice_for_kg(
    wanted_mix_temp_c,
    solid_mass_kg,
    solid_temp_c,
    water_mass_kg,
    water_temp_c,
    other_water_mass_kg=0.0,
    other_water_temp_c=0.0,
    *,
    ice_temp_c=0.0,
    solid_specific_heat=SOLID_SPECIFIC_HEAT,
    ice_latent_heat_k=ICE_LATENT_HEAT_K,
):
    """Ice to put in instead of part of the added water so that the mix comes out as wanted.

    Not for a mix that is to be warmed: the result is then 0 and the mix stays colder than wanted.

    Parameters
    ----------
    wanted_mix_temp_c : float or array, shape (...)
        Temperature that the mix is to have [°C].
    solid_mass_kg : float or array, shape (..., n)
        Masses of the n solids along the last axis, dry [kg].
    solid_temp_c : float or array, shape (..., n)
        Their temperatures [°C].
    water_mass_kg : float or array, shape (...)
        Added water and ice together [kg].
    water_temp_c : float or array, shape (...)
        Temperature of the added water that stays liquid [°C].
    other_water_mass_kg : float or array, shape (..., m)
        Waters that come as they are, such as moisture of aggregates and liquids, along the last axis [kg].
    other_water_temp_c : float or array, shape (..., m)
        Their temperatures [°C].
    ice_temp_c : float or array, shape (...)
        Temperature of the ice [°C].
    solid_specific_heat : float or array, shape (n,)
        Specific heat of the solids against water [-].
    ice_latent_heat_k : float
        Latent heat of ice over the specific heat of water [K].

    Returns
    -------
    float or array, shape (...)
        Ice, part of the added water [kg].

    Raises
    ------
    ValueError
        When more ice is needed than there is added water, a mass is negative or a temperature is impossible.

    Notes
    -----
    `mix_temp_c` is a straight line in Wi while water + ice stay the same; read backwards. Sources allow at
    most 75 % of the water as ice (`heat_balance.ICE_SHARE_MAX`), ask for care above 20 % and doubt the
    arithmetic above 50 %; here only the impossible is refused.

    Examples
    --------
    >>> round(float(ice_for_kg(18.0, [100.0, 100.0], [30.0, 28.0], 32.0, 22.0, ice_latent_heat_k=79.6)), 5)
    6.02362

    References
    ----------
    Algebra on `heat_balance.mix_temp_c`, anyone can repeat it.
    """
    wanted = require("wanted mix temperature", wanted_mix_temp_c, *WATER_TEMP_C, unit="°C")
    water = require("added water", water_mass_kg, 0, unit="kg")
    waters, temps = _joined(water, water_temp_c, other_water_mass_kg, other_water_temp_c)
    without = mix_temp_c(solid_mass_kg, solid_temp_c, waters, temps, solid_specific_heat=solid_specific_heat)
    total = water_equivalent_kg(solid_mass_kg, waters, solid_specific_heat=solid_specific_heat)
    cooling = np.asarray(water_temp_c) + ice_cooling_k(ice_temp_c, ice_latent_heat_k)
    ice = np.maximum((without - wanted) * total / cooling, 0.0)
    if np.any(ice > water):
        raise ValueError(
            f"wanted mix temperature: {float(np.min(wanted)):g} °C given; that takes "
            f"{float(np.max(ice)):.4g} kg of ice, and there are {float(np.min(water)):.4g} kg of water for it"
        )
    return ice


def _joined(water_mass_kg, water_temp_c, other_mass_kg, other_temp_c):
    """Added water and the other waters as one list along the last axis: masses, temperatures."""
    first = np.broadcast_arrays(np.asarray(water_mass_kg), np.asarray(water_temp_c))
    other_temp = one_each("temperatures of other water", other_temp_c, other_mass_kg)
    others = np.broadcast_arrays(np.atleast_1d(other_mass_kg), other_temp)
    lead = np.broadcast_shapes(first[0].shape, others[0].shape[:-1])
    count = others[0].shape[-1:]
    return tuple(
        np.concatenate([np.broadcast_to(a[..., None], (*lead, 1)), np.broadcast_to(b, lead + count)], axis=-1)
        for a, b in zip(first, others, strict=True)
    )
