"""Evaporation of free water from a fresh concrete surface: Menzel 1954 and Uno 1998.

Both describe a surface as wet as a puddle. Real surfaces scatter 40 % about them, so a result is a band and
never four digits. Wind is the wind half a metre above the surface; a room that feels still moves at 1 to 2
km/h.
"""

from dataclasses import dataclass

import numpy as np

from shop_calc.science.checks import require
from shop_calc.science.moist_air import saturation_pressure_pa, vapour_pressure_pa

#: Half-width of the band round any estimate [-]. Read in Hover, ACI SP-338 (2020).
ESTIMATE_BAND = 0.40

#: Range of the wind in the charts that both formulas were drawn for [m/s]: 0 to 25 mph.
VALID_WIND_M_S = (0.0, 11.2)

#: Range of concrete and air temperature of those charts [°C]: 40 to 100 °F, and air down to 30 °F.
VALID_TEMP_C = (-1.0, 38.0)

KM_H_PER_M_S = 3.6

# Menzel in SI as printed: kg/m2/h from kPa and km/h. From memory; the US form 0.44 (0.253 + 0.096 V) from
# psi and mph is 0.3116 (0.253 + 0.0597 V) in these units, so the printed SI figures run 1.1 to 1.7 % higher
# than the US ones.
MENZEL_PER_KPA = 0.315
MENZEL_STILL = 0.253
MENZEL_PER_KM_H = 0.060

# Uno 1998 is (Tc^2.5 - r Ta^2.5)(1 + 0.4 V) 1e-6 lb/ft2/h with °F and mph. Exact twin, derived:
# 4.882428 kg/m2 per lb/ft2 * 1.8^2.5 * 0.4/1.609344 = 5.27507; 32/1.8 = 17.778; 1.609344/0.4 = 4.02336.
UNO_FACTOR = 5.275
UNO_SHIFT_C = 17.778
UNO_WIND_SHIFT_KM_H = 4.02336


@dataclass(frozen=True)
class RateBand:
    """An evaporation rate with its band.

    Parameters
    ----------
    low_kg_m2_h, likely_kg_m2_h, high_kg_m2_h : float or array
        Lower end, estimate, upper end [kg/m2/h].

    Examples
    --------
    >>> estimate_band_kg_m2_h(0.5).likely_kg_m2_h
    0.5

    References
    ----------
    As `estimate_band_kg_m2_h`.
    """

    low_kg_m2_h: float
    likely_kg_m2_h: float
    high_kg_m2_h: float


def _wind_km_h(wind_m_s):
    """Wind in the unit of the printed formulas; over 60 m/s is a slip, not a workshop."""
    return KM_H_PER_M_S * require("wind", wind_m_s, 0, 60, unit="m/s")


def menzel_coefficient_kg_m2_h_pa(wind_m_s):
    """Water lost for each pascal between the wet surface and the air.

    Parameters
    ----------
    wind_m_s : float or array
        Wind over the surface [m/s].

    Returns
    -------
    float or array
        Rate for each pascal of vapour pressure difference [kg/m2/h/Pa].

    Raises
    ------
    ValueError
        When the wind is below 0 or above 60 m/s.

    Notes
    -----
    `0.315 (0.253 + 0.060 V)` kg/m2/h for each kPa, V in km/h.

    Examples
    --------
    >>> f"{menzel_coefficient_kg_m2_h_pa(0.0):.6g}"
    '7.9695e-05'

    References
    ----------
    From memory of Menzel (1954), as `menzel_rate_kg_m2_h`.
    """
    return MENZEL_PER_KPA * (MENZEL_STILL + MENZEL_PER_KM_H * _wind_km_h(wind_m_s)) / 1000


def menzel_rate_kg_m2_h(concrete_temp_c, air_temp_c, rh_fraction, wind_m_s):
    """Evaporation from a wet surface, from vapour pressures (Menzel).

    Not for a surface that has stopped shining: a drying skin loses less. Not for dew: the result is never
    negative.

    Parameters
    ----------
    concrete_temp_c : float or array
        Temperature of the surface [°C].
    air_temp_c : float or array
        Air temperature [°C].
    rh_fraction : float or array
        Relative humidity, 0 to 1 [-].
    wind_m_s : float or array
        Wind over the surface [m/s].

    Returns
    -------
    float or array
        Evaporation rate [kg/m2/h].

    Raises
    ------
    ValueError
        When an entry cannot be (humidity outside 0 to 1, wind below 0, temperatures outside -50 to 100 °C).

    Notes
    -----
    `W = 0.315 (e0 - r ea)(0.253 + 0.060 V)`, pressures in kPa, V in km/h. These SI coefficients give 1.1 %
    (still) to 1.7 % (windy) more than the US form 0.44 (0.253 + 0.096 V). On the Lerch table (29 rows,
    recalled) no row but one is missed by 0.008 lb/ft2/h; the odd one, 100 °F, stands 16 % above this formula
    and above Uno's. Range: VALID_TEMP_C, VALID_WIND_M_S; real surfaces within ESTIMATE_BAND.

    Examples
    --------
    >>> f"{menzel_rate_kg_m2_h(21.0, 21.0, 0.5, 2.0):.6g}"
    '0.26862'

    References
    ----------
    From memory of C. A. Menzel, "Causes and prevention of crack development in plastic concrete",
    Proceedings of the Portland Cement Association (1954).
    """
    surface = saturation_pressure_pa(require("concrete temperature", concrete_temp_c, -50, 100, unit="°C"))
    difference = surface - vapour_pressure_pa(air_temp_c, rh_fraction)
    return np.maximum(difference, 0.0) * menzel_coefficient_kg_m2_h_pa(wind_m_s)


def uno_rate_kg_m2_h(concrete_temp_c, air_temp_c, rh_fraction, wind_m_s):
    """Evaporation from a wet surface, from temperatures alone (Uno).

    A second opinion beside `menzel_rate_kg_m2_h`; not for temperatures near freezing.

    Parameters
    ----------
    concrete_temp_c : float or array
        Temperature of the surface, above -17 °C [°C].
    air_temp_c : float or array
        Air temperature, above -17 °C [°C].
    rh_fraction : float or array
        Relative humidity, 0 to 1 [-].
    wind_m_s : float or array
        Wind over the surface [m/s].

    Returns
    -------
    float or array
        Evaporation rate, never negative [kg/m2/h].

    Raises
    ------
    ValueError
        When an entry cannot be (humidity outside 0 to 1, wind below 0, temperatures outside -17 to 100 °C).

    Notes
    -----
    `5.275 ([Tc + 17.778]^2.5 - r [Ta + 17.778]^2.5)(V + 4.02336) 1e-6`, V in km/h: the US form `(Tc^2.5 - r
    Ta^2.5)(1 + 0.4 V) 1e-6` lb/ft2/h in exact conversion. Beside Menzel on the rows of the Lerch table: -9
    to +7 % with air above 10 °C, -9 to +22 % with colder air; far apart where the concrete is colder than
    the air and the rate is small. Range: VALID_TEMP_C, VALID_WIND_M_S.

    Examples
    --------
    >>> f"{uno_rate_kg_m2_h(21.0, 21.0, 0.5, 2.0):.6g}"
    '0.277191'

    References
    ----------
    P. J. Uno, "Plastic shrinkage cracking and evaporation formulas", ACI Materials Journal 95-M34 (1998).
    """
    entries = (concrete_temp_c, air_temp_c, rh_fraction, wind_m_s)
    return _uno(*entries, UNO_FACTOR, UNO_SHIFT_C, UNO_WIND_SHIFT_KM_H)


def uno_rounded_rate_kg_m2_h(concrete_temp_c, air_temp_c, rh_fraction, wind_m_s):
    """Uno's formula with the rounded metric coefficients 5, 18 and 4.

    Only to meet figures printed with them: they run 3 to 5 % below the exact conversion `uno_rate_kg_m2_h`.

    Parameters
    ----------
    concrete_temp_c : float or array
        Temperature of the surface, above -17 °C [°C].
    air_temp_c : float or array
        Air temperature, above -17 °C [°C].
    rh_fraction : float or array
        Relative humidity, 0 to 1 [-].
    wind_m_s : float or array
        Wind over the surface [m/s].

    Returns
    -------
    float or array
        Evaporation rate, never negative [kg/m2/h].

    Raises
    ------
    ValueError
        As `uno_rate_kg_m2_h`.

    Examples
    --------
    >>> f"{uno_rounded_rate_kg_m2_h(21.0, 21.0, 0.5, 2.0):.6g}"
    '0.265962'

    References
    ----------
    P. J. Uno, ACI Materials Journal 95-M34 (1998), metric form.
    """
    return _uno(concrete_temp_c, air_temp_c, rh_fraction, wind_m_s, 5.0, 18.0, 4.0)


def _uno(concrete_temp_c, air_temp_c, rh_fraction, wind_m_s, factor, shift_c, wind_shift_km_h):
    """Uno's form with the coefficients given; below -17 °C its power of a temperature has no meaning."""
    surface = require("concrete temperature", concrete_temp_c, -17, 100, unit="°C") + shift_c
    air = require("air temperature", air_temp_c, -17, 100, unit="°C") + shift_c
    humidity = require("relative humidity", rh_fraction, 0, 1, unit="(as a fraction)")
    difference = np.maximum(surface**2.5 - humidity * air**2.5, 0.0)
    return factor * 1e-6 * difference * (_wind_km_h(wind_m_s) + wind_shift_km_h)


def estimate_band_kg_m2_h(rate_kg_m2_h):
    """Put the 40 % band round an estimated evaporation rate.

    Parameters
    ----------
    rate_kg_m2_h : float or array
        Estimated rate [kg/m2/h].

    Returns
    -------
    RateBand
        Low, likely and high rate [kg/m2/h].

    Raises
    ------
    ValueError
        When the rate is below 0.

    Examples
    --------
    >>> f"{estimate_band_kg_m2_h(1.18883).low_kg_m2_h:.6g}"
    '0.713298'

    References
    ----------
    K. C. Hover, ACI SP-338 (2020): measured rates within 40 % of the estimate.
    """
    rate = require("evaporation rate", rate_kg_m2_h, 0, unit="kg/m2/h")
    return RateBand(rate * (1 - ESTIMATE_BAND), rate, rate * (1 + ESTIMATE_BAND))
