"""Units told by a name's suffix, and quantities of the project's own data files."""

import math
import re

from shop_calc.units.numerals import Unreadable, decimal, fraction, mixed
from shop_calc.units.words import canonical, is_us

# The glossary of suffixes. The longest that fits wins: rate_kg_m2_h is not in hours.
_SUFFIXES = {
    "m": "m", "m2": "m2", "m3": "m3", "mm": "mm", "kg": "kg", "kg_m": "kg/m", "kg_m2": "kg/m2",
    "kg_m3": "kg/m3", "kg_m2_h": "kg/m2/h", "kg_m2_h_pa": "kg/m2/h/Pa", "pa": "Pa", "pa_s": "Pa/s",
    "kpa": "kPa", "mpa": "MPa", "c": "C", "k": "delta_K", "c_h": "delta_K·h", "h": "h", "s": "s",
    "m_s": "m/s", "km_h": "km/h", "j_mol": "J/mol", "j_kg": "J/kg", "j_kg_k": "J/kg/K", "w": "W",
    "w_m2": "W/m2", "w_m2_k": "W/m2/K", "w_m_k": "W/m/K", "n": "N", "n_m": "N·m", "deg": "deg",
    "m2_m3": "m2/m3", "m2_kg": "m2/kg", "m3_kg": "m3/kg", "m2_s": "m2/s",
    "per_h": "1/h", "per_m": "1/m", "per_k": "1/delta_K",
}  # fmt: skip
_DIMENSIONLESS = re.compile(
    r"(.*_)?(relative_densit(y|ies)|rd|fractions?|ratios?|factors?|counts?|shares?"
    r"|exponents?|numbers?|multipliers?)"
)


def suffix_unit(name):
    """Return the unit that the suffix of an argument or field name stands for.

    Parameters
    ----------
    name : str
        Such as "mix_temp_c" or "rate_kg_m2_h" [-].

    Returns
    -------
    str or None
        A unit that `convert` knows, "-" for a pure number, None when the name tells nothing [-].

    Notes
    -----
    `_c` is a temperature, `_k` a difference of temperatures, `_pa_s` pascals per second, `_c_h` degree-hours
    and `_n_m` newton metres. A name that is only a suffix ("m") tells nothing.

    Examples
    --------
    >>> suffix_unit("rate_kg_m2_h"), suffix_unit("relative_density"), suffix_unit("name")
    ('kg/m2/h', '-', None)

    References
    ----------
    Common practice, no source.
    """
    parts = name.lower().split("_")
    for start in range(1, len(parts)):
        unit = _SUFFIXES.get("_".join(parts[start:]))
        if unit:
            return unit
    return "-" if _DIMENSIONLESS.fullmatch(name.lower()) else None


_NUMBER = re.compile(r"[+-]?([0-9][0-9,]*(\.[0-9]*)?|\.[0-9]+)([eE][+-]?[0-9]{1,3})?")
_FRACTION = re.compile(r"([+-]?)(?:([0-9]{1,9})[ -])?([0-9]{1,9})/([0-9]{1,9})(?![0-9])")


def parse_quantity(text):
    """Read a number and unit of the project's own data files: "62.4 lb/ft3", "0.5 Pa/s", "0.05".

    Not for what a person types: any unit that `convert` knows is taken, and no unit at all.

    Parameters
    ----------
    text : str
        One number, optionally followed by one unit [-].

    Returns
    -------
    tuple
        (number, unit); the unit is "-" for a pure number [-].

    Raises
    ------
    ValueError
        When the text is not one number and one known unit.

    Examples
    --------
    >>> parse_quantity("62.4 lb/ft3"), parse_quantity("1 1/2 in"), parse_quantity("0.05")
    ((62.4, 'lb/ft3'), (1.5, 'in'), (0.05, '-'))

    References
    ----------
    Common practice, no source.
    """
    clean = text.strip().replace("−", "-")
    try:
        if found := _FRACTION.match(clean):
            sign, whole, top, bottom = found.groups()
            number = mixed(whole, top, bottom) if whole else fraction(top, bottom)
            number = -number if sign == "-" else number
        elif found := _NUMBER.match(clean):
            run = found.group().lstrip("+-")
            us = is_us(canonical(clean[found.end() :]) or "-")
            number = decimal(run, us) if "," in run else float(run)
            number = -number if clean[0] == "-" else number
        else:
            raise Unreadable("it does not begin with a number")
        if not math.isfinite(number):
            raise Unreadable("its number is too large")
        rest = clean[found.end() :].strip()
        unit = canonical(rest) if rest else "-"
        if unit is None:
            raise Unreadable(f"{rest!r} is not a unit of the table in shop_calc.units")
    except ValueError as problem:
        raise ValueError(f"quantity: {text!r} given; {problem}") from None
    return number, unit
