"""The air in words, as what hangs in a shop shows it."""

from shop_calc import units


def air_speed(wind_m_s):
    """Write the speed of the air as a small wind gauge shows it, to a tenth.

    Parameters
    ----------
    wind_m_s : float
        Air speed [m/s].

    Returns
    -------
    str
        In miles and in kilometres an hour [-].

    Examples
    --------
    >>> air_speed(0.194)
    '0.4 mph (0.7 km/h)'

    References
    ----------
    Common practice, no source.
    """
    return f"{units.convert(wind_m_s, 'm/s', 'mi/h'):.1f} mph ({units.convert(wind_m_s, 'm/s', 'km/h'):.1f} km/h)"
