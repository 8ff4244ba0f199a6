"""Water vapour in air: saturation pressure, vapour pressure, dew point and wet bulb.

Two constants tie evaporation to heat: the latent heat of water and the psychrometric constant. They live
here so that the wet bulb, the evaporation formula and the cooling slab all use the same pair.
"""

import numpy as np

from shop_calc.science.checks import require

#: Range the formula is used over [°C]: within 0.2 % of IAPWS-IF97 over 0 to 40 °C, 0.3 % at 50.
VALID_TEMP_C = (-5.0, 50.0)

#: Latent heat of evaporation near 20 °C [J/kg]. From memory of FAO Irrigation and Drainage Paper 56 (1998).
LATENT_HEAT_J_KG = 2.45e6

#: Psychrometric constant near sea level [Pa/K]: 0.665e-3 times an air pressure of 100 kPa.
#: From memory of FAO Irrigation and Drainage Paper 56 (1998), eq. 8.
PSYCHROMETRIC_PA_K = 66.5

# e = BASE_PA exp(SLOPE T/(OFFSET_C + T)), the Magnus form, with the constants of the Menzel evaporation
# sheet.
BASE_PA = 610.0
SLOPE = 17.3
OFFSET_C = 237.3

# Numbers beyond these are typing slips (a Fahrenheit figure taken for Celsius), not weather.
_COLDEST_C, _HOTTEST_C = -50.0, 100.0


def saturation_pressure_pa(air_temp_c):
    """Pressure of water vapour over a free water surface at this temperature.

    Not for ice: below 0 °C it is the pressure over supercooled water.

    Parameters
    ----------
    air_temp_c : float or array
        Temperature of the surface or of the saturated air [°C].

    Returns
    -------
    float or array
        Saturation vapour pressure [Pa].

    Raises
    ------
    ValueError
        Below -50 or above 100 °C.

    Notes
    -----
    `610 exp(17.3 T/(237.3 + T))`, meant for VALID_TEMP_C. Held against IAPWS-IF97 (package iapws) it is
    within 0.2 % over 5 to 40 °C.

    Examples
    --------
    >>> f"{saturation_pressure_pa(20.0):.6g}"
    '2340.67'

    References
    ----------
    From memory of C. A. Menzel, "Causes and prevention of crack development in plastic concrete",
    Proceedings of the Portland Cement Association (1954), with the Magnus form of the pressure.
    """
    return _saturation(require("air temperature", air_temp_c, _COLDEST_C, _HOTTEST_C, unit="°C"))


def _saturation(temp):
    """The formula itself, for numbers already checked."""
    return BASE_PA * np.exp(SLOPE * temp / (OFFSET_C + temp))


def vapour_pressure_pa(air_temp_c, rh_fraction):
    """Pressure of the water vapour that this air holds.

    Parameters
    ----------
    air_temp_c : float or array
        Air temperature [°C].
    rh_fraction : float or array
        Relative humidity, 0 to 1 [-].

    Returns
    -------
    float or array
        Vapour pressure of the air [Pa].

    Raises
    ------
    ValueError
        When the humidity is outside 0 to 1 or the temperature outside -50 to 100 °C.

    Examples
    --------
    >>> f"{vapour_pressure_pa(20.0, 0.5):.6g}"
    '1170.34'

    References
    ----------
    Definition of relative humidity; pressure as in `saturation_pressure_pa`.
    """
    humidity = require("relative humidity", rh_fraction, 0, 1, unit="(as a fraction)")
    return humidity * saturation_pressure_pa(air_temp_c)


def dew_point_c(air_temp_c, rh_fraction):
    """Temperature at which this air would start to wet a surface.

    Parameters
    ----------
    air_temp_c : float or array
        Air temperature [°C].
    rh_fraction : float or array
        Relative humidity, more than 0 and at most 1 [-].

    Returns
    -------
    float or array
        Dew point [°C].

    Raises
    ------
    ValueError
        When the humidity is 0 or outside 0 to 1, or the temperature is outside -50 to 100 °C.

    Notes
    -----
    The saturation pressure turned round. Within 0.05 °C of psychrolib while the dew point is above 0 °C;
    below, psychrolib gives the frost point instead.

    Examples
    --------
    >>> f"{dew_point_c(20.0, 0.5):.6g}"
    '9.28746'

    References
    ----------
    Derived from `saturation_pressure_pa`.
    """
    require("relative humidity", rh_fraction, 0, 1, unit="(as a fraction)", low_open=True)
    strength = np.log(vapour_pressure_pa(air_temp_c, rh_fraction) / BASE_PA)
    return OFFSET_C * strength / (SLOPE - strength)


def wet_bulb_c(air_temp_c, rh_fraction):
    """Temperature that a wet rag on a thermometer settles at in moving air.

    Parameters
    ----------
    air_temp_c : float or array
        Air temperature [°C].
    rh_fraction : float or array
        Relative humidity, 0 to 1 [-].

    Returns
    -------
    float or array
        Wet-bulb temperature [°C].

    Raises
    ------
    ValueError
        When the humidity is outside 0 to 1 or the temperature outside -50 to 100 °C.

    Notes
    -----
    Solves `e_s(T_wet) + gamma T_wet = e_air + gamma T_air` with the psychrometric constant of this module.
    Within 0.15 °C of psychrolib (ASHRAE Fundamentals, sea level) over 10 to 40 °C, mostly high because 66.5
    Pa/K belongs to 100 kPa and not to 101.3. Below a wet bulb of 0 °C psychrolib wets the bulb with ice,
    this function does not.

    Examples
    --------
    >>> f"{wet_bulb_c(20.0, 0.5):.6g}"
    '13.8244'

    References
    ----------
    Derived: balance of heat gained from the air and heat spent on evaporation.
    """
    air = require("air temperature", air_temp_c, _COLDEST_C, _HOTTEST_C, unit="°C")
    wanted = vapour_pressure_pa(air, rh_fraction) + PSYCHROMETRIC_PA_K * air
    wet = air
    for _ in range(8):  # Newton from above on a rising, convex curve: it cannot overshoot; 5 are enough
        saturated = _saturation(wet)
        slope = saturated * SLOPE * OFFSET_C / (OFFSET_C + wet) ** 2 + PSYCHROMETRIC_PA_K
        wet = wet - (saturated + PSYCHROMETRIC_PA_K * wet - wanted) / slope
    return wet
