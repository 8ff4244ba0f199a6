"""Aggregates given saturated surface-dry: full pores, no water on the grains.

Free moisture here is a share of the saturated surface-dry mass. One aggregate or an array of them.
"""

from shop_calc.science.checks import require


def oven_dry_from_ssd_kg(ssd_mass_kg, absorption_fraction):
    """Oven-dry mass of a saturated surface-dry aggregate.

    Not for damp or dry sand from the heap: see `moisture.oven_dry_from_batch_kg`.

    Parameters
    ----------
    ssd_mass_kg : float or array
        Mass with full pores and a dry surface [kg].
    absorption_fraction : float or array
        Water that the pores hold, on oven-dry mass [-].

    Returns
    -------
    float or array
        Oven-dry mass [kg].

    Raises
    ------
    ValueError
        When the mass is negative or the absorption is not at least 0 and less than 1.

    Notes
    -----
    Definition of absorption.

    Examples
    --------
    >>> round(oven_dry_from_ssd_kg(542.043, 0.013), 4)
    535.0869

    References
    ----------
    From memory of ASTM C127 and C128, definitions of absorption.
    """
    mass = require("saturated surface-dry mass", ssd_mass_kg, 0, unit="kg")
    return mass / (1.0 + _absorption(absorption_fraction))


def ssd_from_oven_dry_kg(oven_dry_mass_kg, absorption_fraction):
    """Saturated surface-dry mass of an oven-dry aggregate.

    Not the mass to weigh out: that depends on today's moisture, see `moisture.batch_mass_kg`.

    Parameters
    ----------
    oven_dry_mass_kg : float or array
        Oven-dry mass [kg].
    absorption_fraction : float or array
        Water that the pores hold, on oven-dry mass [-].

    Returns
    -------
    float or array
        Mass with full pores and a dry surface [kg].

    Raises
    ------
    ValueError
        When the mass is negative or the absorption is not at least 0 and less than 1.

    Notes
    -----
    Definition of absorption, inverse of `oven_dry_from_ssd_kg`.

    Examples
    --------
    >>> round(ssd_from_oven_dry_kg(535.0869, 0.013), 4)
    542.043

    References
    ----------
    From memory of ASTM C127 and C128, definitions of absorption.
    """
    mass = require("oven-dry mass", oven_dry_mass_kg, 0, unit="kg")
    return mass * (1.0 + _absorption(absorption_fraction))


def free_moisture_on_ssd_fraction(moisture_fraction, absorption_fraction):
    """Free moisture on saturated surface-dry mass, from total moisture on oven-dry mass.

    Not total moisture less absorption: that difference is still on oven-dry mass.

    Parameters
    ----------
    moisture_fraction : float or array
        Total moisture, on oven-dry mass [-].
    absorption_fraction : float or array
        Water that the pores hold, on oven-dry mass [-].

    Returns
    -------
    float or array
        Free moisture, below 0 for an aggregate that drinks, on saturated surface-dry mass [-].

    Raises
    ------
    ValueError
        When moisture or absorption is not at least 0 and less than 1.

    Notes
    -----
    (mc - abs) / (1 + abs).

    Examples
    --------
    >>> round(free_moisture_on_ssd_fraction(0.0437, 0.0129), 7)
    0.0304077

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    absorption = _absorption(absorption_fraction)
    return (_moisture(moisture_fraction) - absorption) / (1.0 + absorption)


def ssd_batch_mass_kg(ssd_mass_kg, free_moisture_fraction):
    """Mass of moist aggregate to weigh out for a wanted saturated surface-dry mass.

    Not with total moisture: the pores would be counted twice, see `free_moisture_on_ssd_fraction`.

    Parameters
    ----------
    ssd_mass_kg : float or array
        Saturated surface-dry mass that the recipe asks for [kg].
    free_moisture_fraction : float or array
        Free moisture on saturated surface-dry mass, below 0 for an aggregate that drinks [-].

    Returns
    -------
    float or array
        Mass on the scale [kg].

    Raises
    ------
    ValueError
        When the mass is negative, or the moisture is not between -0.5 and 1.

    Notes
    -----
    SSD (1 + free).

    Examples
    --------
    >>> round(ssd_batch_mass_kg(542.043, 0.029615), 4)
    558.0956

    References
    ----------
    US Navy Engineering Aid training manual NAVEDTRA 14070/14071, ch. 17: free moisture.
    """
    mass = require("saturated surface-dry mass", ssd_mass_kg, 0, unit="kg")
    return mass * (1.0 + _free(free_moisture_fraction))


def ssd_water_correction_kg(ssd_mass_kg, free_moisture_fraction):
    """Change of the added water for aggregate given saturated surface-dry; positive means add.

    Not with total moisture: see `free_moisture_on_ssd_fraction`.

    Parameters
    ----------
    ssd_mass_kg : float or array
        Saturated surface-dry mass that the recipe asks for [kg].
    free_moisture_fraction : float or array
        Free moisture on saturated surface-dry mass, below 0 for an aggregate that drinks [-].

    Returns
    -------
    float or array
        Water to add for a dry aggregate, below 0 water to leave out for a wet one [kg].

    Raises
    ------
    ValueError
        When the mass is negative, or the moisture is not between -0.5 and 1.

    Notes
    -----
    -SSD free. With `ssd_batch_mass_kg` the whole batch weighs the same as the recipe.

    Examples
    --------
    >>> round(ssd_water_correction_kg(522.991, 0.0617), 5)
    -32.26854

    References
    ----------
    US Navy Engineering Aid training manual NAVEDTRA 14070/14071, ch. 17: free moisture.
    """
    mass = require("saturated surface-dry mass", ssd_mass_kg, 0, unit="kg")
    return -mass * _free(free_moisture_fraction)


def _free(fraction):
    return require("free moisture", fraction, -0.5, 1, high_open=True)


def _moisture(fraction):
    return require("moisture", fraction, 0, 1, high_open=True)


def _absorption(fraction):
    return require("absorption", fraction, 0, 1, high_open=True)
