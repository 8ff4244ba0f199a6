"""Temperature of a fresh mix from the masses and temperatures of its parts, ice among them.

Heat is counted in kilograms of water: a mass times its specific heat against water. So the same line holds
in °C and, with another ice term, in °F (see `mix_temp_c`). Ice counts apart from the liquid water.
"""

import numpy as np

from shop_calc.science.checks import one_each, require

# Rock, sand and cement against water. From memory of ACI 305R and the textbooks; 0.92/4.184 in SI tables.
SOLID_SPECIFIC_HEAT = 0.22

# Latent heat over specific heat of water: melting ice cools its own mass of water by 80 °C. Round figure from
# memory of ACI 305R; IAPWS gives 333.5 kJ/kg, 79.7 °C.
ICE_LATENT_HEAT_K = 80.0

# Ice against water. IAPWS gives 2.10 kJ/(kg K) at the melting point, 1.96 at -18 °C.
ICE_SPECIFIC_HEAT = 0.50

# The thermochemical kilocalorie; IAPWS gives 4184 J/(kg K) for water at 20 °C too.
WATER_SPECIFIC_HEAT_J_KG_K = 4184.0

# Share of the added water that may be ice. Read in hot-weather guidance, publisher not recorded (unnamed).
ICE_SHARE_WARN = 0.20  # above it: watch that all of it melts
ICE_SHARE_UNRELIABLE = 0.50  # above it the reckoned temperature is unreliable
ICE_SHARE_MAX = 0.75

# Degrees of each material for one degree of mix, by the rule of thumb. Common practice, for lean mixes.
RULE_OF_THUMB_RATIO = {"cement": 8.0, "water": 4.0, "aggregate": 2.0}

SOLID_TEMP_C = (-60.0, 200.0)  # hot cement reaches 80 °C; further out a slip of units is likelier
WATER_TEMP_C = (0.0, 100.0)  # liquid


def ice_cooling_k(ice_temp_c=0.0, ice_latent_heat_k=ICE_LATENT_HEAT_K):
    """Degrees by which ice, until it is water at 0 °C, cools its own mass of water.

    Not the whole cooling against tap water: the melt then warms up to the mix, like any water at 0 °C.

    Parameters
    ----------
    ice_temp_c : float or array
        Temperature of the ice, 0 when it is melting and wet [°C].
    ice_latent_heat_k : float
        Latent heat of ice over the specific heat of water [K].

    Returns
    -------
    float or array
        Heat taken up over the specific heat of water [K].

    Raises
    ------
    ValueError
        When the ice is warmer than 0 or colder than -60 °C, or the latent heat is not between 70 and 90 K.

    Notes
    -----
    L - 0.50 T. Ice straight from a freezer at -18 °C cools 11 % more than wet ice.

    Examples
    --------
    >>> round(ice_cooling_k(-17.777), 4)
    88.8885

    References
    ----------
    From memory of ACI 305R, temperature of freshly mixed concrete with ice.
    """
    temp = require("temperature of ice", ice_temp_c, -60, 0, unit="°C")
    latent = require("latent heat of ice", ice_latent_heat_k, 70, 90, unit="K")
    return latent - ICE_SPECIFIC_HEAT * temp


def water_equivalent_kg(
    solid_mass_kg, water_mass_kg, ice_mass_kg=0.0, *, solid_specific_heat=SOLID_SPECIFIC_HEAT
):
    """Water that would take as much heat per degree as the whole mix.

    Not a quantity of water in the mix.

    Parameters
    ----------
    solid_mass_kg : float or array, shape (..., n)
        Masses of the n solids along the last axis, dry [kg].
    water_mass_kg : float or array, shape (..., m)
        Masses of the m liquid waters along the last axis, moisture of aggregates included [kg].
    ice_mass_kg : float or array, shape (...)
        Ice, melted in the end [kg].
    solid_specific_heat : float or array, shape (n,)
        Specific heat of the solids against water [-].

    Returns
    -------
    float or array, shape (...)
        Heat capacity as a mass of water [kg].

    Raises
    ------
    ValueError
        When a mass is negative or a specific heat is not more than 0.

    Notes
    -----
    sum(c m) with c = 1 for water. In kcal/°C the number is the same.

    Examples
    --------
    >>> round(float(water_equivalent_kg([331.3, 1829.4], [72.9, 80.0])), 4)
    628.254

    References
    ----------
    From memory of ACI 305R, temperature of freshly mixed concrete.
    """
    solids = _solids(solid_mass_kg, solid_specific_heat)
    water = np.atleast_1d(require("mass of water", water_mass_kg, 0, unit="kg"))
    ice = require("ice", ice_mass_kg, 0, unit="kg")
    return np.sum(solids, axis=-1) + np.sum(water, axis=-1) + ice


def mix_temp_c(
    solid_mass_kg,
    solid_temp_c,
    water_mass_kg,
    water_temp_c,
    ice_mass_kg=0.0,
    *,
    ice_temp_c=0.0,
    solid_specific_heat=SOLID_SPECIFIC_HEAT,
    ice_latent_heat_k=ICE_LATENT_HEAT_K,
):
    """Temperature of a mix as it leaves the mixer, from masses and temperatures of its parts.

    Not for the mix an hour later: setting heat and the room are not in it; nor is the heat of mixing, which
    adds `mixer_heat_rise_k` at most. Not where water freezes.

    Parameters
    ----------
    solid_mass_kg : float or array, shape (..., n)
        Masses of the n solids along the last axis, dry [kg].
    solid_temp_c : float or array, shape (..., n)
        Their temperatures [°C].
    water_mass_kg : float or array, shape (..., m)
        Masses of the m liquid waters along the last axis: added without the ice, moisture of aggregates [kg].
    water_temp_c : float or array, shape (..., m)
        Their temperatures; moisture has that of its aggregate [°C].
    ice_mass_kg : float or array, shape (...)
        Ice put in instead of water [kg].
    ice_temp_c : float or array, shape (...)
        Temperature of the ice, 0 when it is melting and wet [°C].
    solid_specific_heat : float or array, shape (n,)
        Specific heat of the solids against water [-].
    ice_latent_heat_k : float
        Latent heat of ice over the specific heat of water [K].

    Returns
    -------
    float or array, shape (...)
        Temperature of the mix [°C].

    Raises
    ------
    ValueError
        When a mass is negative, a temperature is impossible, or there is more ice than the rest can melt.

    Notes
    -----
    T = [0.22 sum(Ts Ws) + sum(Tw Ww) - Li Wi] / [0.22 sum(Ws) + sum(Ww) + Wi], Li = 80 °C for ice
    at 0 °C. The °F form has Li = 112: melting takes 1.8 x 80 = 144 °F, and the melt enters at 32 °F, not at
    zero: 144 - 32 = 112. Both give the same temperature; with Li = 79.6 °C it would be 111.3. Examples in
    print and recalled ones agree to their own rounding. For many scenarios at once put the scenario on the
    first axis: k water temperatures are an array of shape (k, 1).

    Examples
    --------
    >>> round(float(mix_temp_c([100.0, 100.0], [30.0, 28.0], 27.0, 22.0, ice_mass_kg=5.0)), 5)
    19.34211

    References
    ----------
    From memory of ACI 305R, temperature of freshly mixed concrete; an example of it was read in Concrete
    Construction, question and answer on hot cement.
    """
    ice = require("ice", ice_mass_kg, 0, unit="kg")
    solids = _solids(solid_mass_kg, solid_specific_heat)
    water = np.atleast_1d(require("mass of water", water_mass_kg, 0, unit="kg"))
    solid_temp = require("temperature of solids", solid_temp_c, *SOLID_TEMP_C, unit="°C")
    water_temp = require("temperature of water", water_temp_c, *WATER_TEMP_C, unit="°C")
    heat = np.sum(solids * one_each("temperatures of solids", solid_temp, solids), axis=-1)
    heat = heat + np.sum(water * one_each("temperatures of water", water_temp, water), axis=-1)
    heat = heat - ice * ice_cooling_k(ice_temp_c, ice_latent_heat_k)
    total = water_equivalent_kg(solid_mass_kg, water_mass_kg, ice, solid_specific_heat=solid_specific_heat)
    if np.any(total <= 0):
        raise ValueError("masses: nothing given; there must be more than 0 kg of something to mix")
    temp = heat / total
    if np.any((temp < 0) & (ice > 0)):
        raise ValueError(
            f"ice: {float(np.max(ice)):g} kg given; it must be so little that all of it melts in this mix"
        )
    return temp


def degrees_for_one_ratio(
    part_mass_kg,
    part_specific_heat,
    solid_mass_kg,
    water_mass_kg,
    ice_mass_kg=0.0,
    *,
    solid_specific_heat=SOLID_SPECIFIC_HEAT,
):
    """Degrees by which one part must change to move the mix by one degree.

    Not with the rule of thumb 8-4-2 for rich mixes: that is for lean ones (RULE_OF_THUMB_RATIO).

    Parameters
    ----------
    part_mass_kg : float or array
        Mass of the part whose temperature changes [kg].
    part_specific_heat : float or array
        Its specific heat against water, 1 for water [-].
    solid_mass_kg : float or array, shape (..., n)
        Masses of all solids along the last axis, this part included [kg].
    water_mass_kg : float or array, shape (..., m)
        Masses of all liquid waters along the last axis, this part included [kg].
    ice_mass_kg : float or array, shape (...)
        Ice [kg].
    solid_specific_heat : float or array, shape (n,)
        Specific heat of the solids against water [-].

    Returns
    -------
    float or array
        Degrees of the part for one degree of the mix, alike in °C and °F [-].

    Raises
    ------
    ValueError
        When the part weighs nothing or a mass is negative.

    Notes
    -----
    sum(c m) / (c m of the part), the derivative of `mix_temp_c` turned upside down.

    Examples
    --------
    >>> round(float(degrees_for_one_ratio(100.0, 0.22, [100.0, 100.0], 32.0)), 5)
    3.45455

    References
    ----------
    Algebra on `mix_temp_c`, anyone can repeat it.
    """
    mass = require("mass of the part", part_mass_kg, 0, unit="kg", low_open=True)
    total = water_equivalent_kg(
        solid_mass_kg, water_mass_kg, ice_mass_kg, solid_specific_heat=solid_specific_heat
    )
    return total / (mass * _specific(part_specific_heat))


def mixer_heat_rise_k(power_w, time_s, water_equivalent_kg):
    """Warming of the mix if all power of the mixer became heat in it; an upper bound.

    Not an estimate: part of the rated power is never drawn, part warms the motor, the vessel and the room.

    Parameters
    ----------
    power_w : float or array
        Rated power of the mixer [W].
    time_s : float or array
        Mixing time [s].
    water_equivalent_kg : float or array
        Heat capacity of the mix as a mass of water, from the function of that name [kg].

    Returns
    -------
    float or array
        Rise of temperature [K].

    Raises
    ------
    ValueError
        When power or time is negative or the mix has no heat capacity.

    Notes
    -----
    P t / (cw sum(c m)).

    Examples
    --------
    >>> round(mixer_heat_rise_k(1400.0, 240.0, 17.488), 6)
    4.592059

    References
    ----------
    Energy balance, anyone can repeat it.
    """
    power = require("power of the mixer", power_w, 0, unit="W")
    time = require("mixing time", time_s, 0, unit="s")
    capacity = require("heat capacity as a mass of water", water_equivalent_kg, 0, unit="kg", low_open=True)
    return power * time / (WATER_SPECIFIC_HEAT_J_KG_K * capacity)


def _solids(mass_kg, specific_heat):
    mass = np.atleast_1d(require("mass of solids", mass_kg, 0, unit="kg"))
    return mass * one_each("specific heats", _specific(specific_heat), mass)


def _specific(specific_heat):
    return require("specific heat against water", specific_heat, 0, 2, low_open=True)
