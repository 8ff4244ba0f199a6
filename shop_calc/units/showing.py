"""Show SI values as people in the shop read them."""

import math
from decimal import ROUND_HALF_UP, Decimal
from functools import lru_cache

from shop_calc.units.factors import convert
from shop_calc.units.kinds import kind_of

# Our unit names as they are printed; a name that is not here prints as it is.
_PRINTED = {
    "in2": "in²", "ft2": "ft²", "cm2": "cm²", "m2": "m²", "in3": "in³", "ft3": "ft³", "m3": "m³", "um": "µm",
    "lb/ft3": "lb/ft³", "kg/m3": "kg/m³", "F": "°F", "C": "°C", "delta_F": "°F", "delta_C": "°C",
    "mi/h": "mph", "floz": "fl oz", "lbf": "lb", "lbf/ft2": "lb/ft²", "lb/ft2": "lb/ft²", "kg/m2": "kg/m²",
    "lb/ft2/h": "lb/ft²·h", "kg/m2/h": "kg/m²·h", "ft2/gal": "ft²/gal", "m2/L": "m²/L",
    "W/m2/K": "W/m²K", "W/m/K": "W/mK", "J/kg/K": "J/kgK", "-": "",
}  # fmt: skip
NOT_KNOWN = "not known"


def printed(unit):
    """Give a unit as it is printed.

    Parameters
    ----------
    unit : str
        Our name of the unit [-].

    Returns
    -------
    str
        The same with raised figures and degree signs [-].

    Examples
    --------
    >>> printed("lb/ft3"), printed("mi/h")
    ('lb/ft³', 'mph')

    References
    ----------
    Common practice, no source.
    """
    return _PRINTED.get(unit, unit)


def plain_number(value, digits=3, decimals=None):
    """Write a number to so many significant digits, keeping its whole digits, never as a power of ten.

    Not for missing values: `show` says "not known".

    Parameters
    ----------
    value : float
        The number [any unit].
    digits : int
        Significant digits [-].
    decimals : int or None
        The most decimals, when fewer [-].

    Returns
    -------
    str
        The number; halves are rounded away from zero, zeros at the end are dropped [-].

    Examples
    --------
    >>> plain_number(26.35), plain_number(1152.4), plain_number(-0.0001, 3, 1)
    ('26.4', '1152', '0')

    References
    ----------
    Common practice, no source.
    """
    exact = Decimal(f"{value:.12g}")  # after two conversions 1.005 may be 1.0049999999999999
    if exact == 0:
        return "0"
    places = max(digits - 1 - exact.adjusted(), 0)
    places = min(places, decimals) if decimals is not None else places
    text = format(exact.quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP), "f")
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text in ("-0", "") else text


def shop_fraction(inches, denominator=16):
    """Write inches as a tape shows them: feet, inches and a fraction.

    Not for film thicknesses, which are below what a tape can show.

    Parameters
    ----------
    inches : float
        A length [in].
    denominator : int
        The finest division of the tape [-].

    Returns
    -------
    str
        Feet from 12 in upwards, whole inches, the fraction in its lowest terms [-].

    Raises
    ------
    ValueError
        When the length is not a number or the division is not a whole number from 1 up.

    Notes
    -----
    Halves are rounded away from zero.

    Examples
    --------
    >>> shop_fraction(50.125)
    '4\\'-2 1/8"'

    References
    ----------
    Common practice, no source.
    """
    if not math.isfinite(inches):
        raise ValueError(f"length: {inches} in given; it must be a number")
    if denominator != int(denominator) or denominator < 1:
        raise ValueError(f"denominator: {denominator} given; it must be a whole number, at least 1")
    exact = Decimal(f"{abs(inches):.12g}") * int(denominator)
    steps = int(exact.quantize(Decimal(1), ROUND_HALF_UP))
    feet, rest = divmod(steps, 12 * int(denominator))
    whole, top = divmod(rest, int(denominator))
    common = math.gcd(top, int(denominator))
    part = f"{top // common}/{int(denominator) // common}" if top else ""
    if feet:
        size = f"{feet}'-{whole} {part}".rstrip() + '"'
    else:
        size = " ".join(text for text in (str(whole) if whole or not part else "", part) if text) + '"'
    return f"-{size}" if inches < 0 and steps else size


def _length_us(value, digits):
    inches = convert(value, "m", "in")
    if 0 < abs(inches) < 1 / 32:  # a tape would show nothing; the number says that something is there
        return f"{plain_number(inches, digits, 3) if abs(inches) >= 0.0005 else plain_number(inches, digits)} in"
    return shop_fraction(inches)


def _length_si(value, digits):
    if abs(value) >= 10:
        return f"{plain_number(value, max(digits, 4))} m"
    return f"{plain_number(value * 1000, digits)} mm"


def _hours(hours, digits):
    """Clock lengths: 36 s, 45 min, 2 h 23 min, 7 days."""
    sign, size = ("-" if hours < 0 else ""), abs(hours)
    minutes = int(Decimal(f"{size * 60:.12g}").quantize(Decimal(1), ROUND_HALF_UP))
    if size >= 48:
        return f"{sign}{plain_number(size / 24, digits)} days"
    if size * 60 < 2:
        text = plain_number(size * 3600, digits)
        return f"{sign}{text} s" if text != "0" else "0 min"
    if minutes < 60:
        return f"{sign}{minutes} min"
    whole, rest = divmod(minutes, 60)
    return f"{sign}{whole} h {rest} min" if rest else f"{sign}{whole} h"


def _in_units(value, kind, ladder, digits):
    unit = next(name for least, name in ladder if abs(value) >= least or least == 0.0)
    if value == 0:
        unit = kind.us_unit if ladder is kind.us else kind.si_shown
    number = plain_number(convert(value, kind.si_unit, unit), digits, kind.decimals)
    return f"{number} {printed(unit)}".rstrip()


def show(value, kind, system="both", digits=None):
    """Write an SI value as people in the shop read it.

    Not for arrays, and not for further arithmetic: the text is rounded.

    Parameters
    ----------
    value : float
        The quantity; NaN and None are shown as "not known" [SI unit of the kind].
    kind : str
        One of KINDS [-].
    system : str
        "us", "si" or "both" [-].
    digits : int or None
        Significant digits; None takes the kind's own, 3 [-].

    Returns
    -------
    str
        Text with unit; with "both" the US reading first and the metric one in brackets [-].

    Raises
    ------
    ValueError
        When kind or system is not known, or the value is not one number.

    Notes
    -----
    US lengths are rounded to 1/16 in. Whole digits are never rounded away: 1152 lb stays 1152 lb.

    Examples
    --------
    >>> show(1.273175, "length")
    '4\\'-2 1/8" (1273 mm)'
    >>> show(16.0, "temperature")
    '60.8 °F (16 °C)'

    References
    ----------
    Common practice, no source.
    """
    kind = kind_of(kind)
    if system not in ("us", "si", "both"):
        raise ValueError(f"system: {system!r} given; it must be 'us', 'si' or 'both'")
    try:
        value, digits = float("nan" if value is None else value), digits or kind.digits
    except TypeError:
        raise ValueError(f"{kind.title}: {value!r} given; it must be one number") from None
    if math.isnan(value):
        return NOT_KNOWN
    if math.isinf(value):
        return "without limit"
    return _shown(value, kind.name, system, digits)


@lru_cache(maxsize=4096)  # a plan, its sheet and a day at the bench say the same few hundred numbers again and again
def _shown(value, kind, system, digits):
    kind = kind_of(kind)
    if kind.name in ("duration", "time"):
        return _hours(convert(value, kind.si_unit, "h"), digits)
    if kind.name == "mass_ratio":
        return f"{plain_number(value, digits)} by mass"
    if kind.name == "length":
        us, si = _length_us(value, digits), _length_si(value, digits)
    else:
        us, si = _in_units(value, kind, kind.us, digits), _in_units(value, kind, kind.si, digits)
    if system == "both":
        return us if us == si else f"{us} ({si})"
    return us if system == "us" else si
