"""Factors between units: pint's, the usual ones kept in a table."""

import math
from functools import lru_cache

from shop_calc.units.kept_lines import LINES
from shop_calc.units.words import PINT, canonical, pieces

# Where 0 °C lies on each scale: definitions of the scales.
_ZERO = {"C": 0.0, "F": 32.0, "K": 273.15}


@lru_cache(maxsize=1)
def _registry():
    import pint  # half a second: only when a pair is asked for that is not kept

    return pint.UnitRegistry()


def _pint_name(unit):
    terms = [f"({PINT[name]})**{power}" for name, power in pieces(unit) if name != "-"]
    return " * ".join(terms) or "dimensionless"


def _as_force(unit):
    """Read a pound as a pound of force: "lb/ft2" as a pressure, "lb" as a pull."""
    return "/".join("lbf" if part == "lb" else part for part in unit.split("/"))


@lru_cache(maxsize=512)
def line(from_unit, to_unit):
    """Give the straight line between two units: to = factor * from + offset.

    Not for numbers: that is `convert`.

    Parameters
    ----------
    from_unit, to_unit : str
        Units as people or data files write them [-].

    Returns
    -------
    tuple of float
        Factor [to_unit/from_unit] and offset [to_unit].

    Raises
    ------
    ValueError
        When a unit is not known, or when the two measure different things.

    Examples
    --------
    >>> line("in", "mm")
    (25.4, 0.0)

    References
    ----------
    pint's table of units; the zero points 32 °F and 273.15 K are definitions.
    """
    source, target = canonical(from_unit), canonical(to_unit)
    for text, unit in ((from_unit, source), (to_unit, target)):
        if unit is None:
            raise ValueError(f"unit: {text!r} given; it must be a unit of the table in shop_calc.units")
    if source == target:
        return 1.0, 0.0
    try:
        return LINES.get((source, target)) or ask_pint(source, target)
    except ValueError:
        raise ValueError(f"unit: {from_unit!r} to {to_unit!r} asked; the two measure different things") from None


def ask_pint(source, target):
    """Ask pint for the straight line between two units of our own names, past the table.

    Parameters
    ----------
    source, target : str
        Names that `words.canonical` gave [-].

    Returns
    -------
    tuple of float
        Factor [target/source] and offset [target].

    Raises
    ------
    ValueError
        When the two measure different things.

    Examples
    --------
    >>> ask_pint("gal", "in3")
    (231.0, 0.0)

    References
    ----------
    pint's table of units; the zero points 32 °F and 273.15 K are definitions.
    """
    import pint

    for read in (str, _as_force):
        try:
            factor = _registry().convert(1.0, _pint_name(read(source)), _pint_name(read(target)))
            break
        except pint.DimensionalityError:
            factor = None
    if factor is None:
        raise ValueError(f"unit: {source!r} to {target!r} asked; the two measure different things")
    short = float(f"{factor:.12g}")
    if math.isclose(short, factor, rel_tol=1e-15):  # 0.9999999999999999 and the like are rounding in pint
        factor = short
    if source in _ZERO and target in _ZERO:
        return factor, _ZERO[target] - factor * _ZERO[source]
    return factor, 0.0


def convert(value, from_unit, to_unit):
    """Change a number, or an array of numbers, from one unit to another.

    Not for text a person typed: that is `parse`. "F", "C" and "K" on both sides are readings of a
    thermometer, with their offset; with "delta_K", "delta_C" or "delta_F" on either side both are
    differences. "lb" is a mass, and a pound of force where the other side is a force or a pressure.

    Parameters
    ----------
    value : float or array
        What is to be changed [from_unit].
    from_unit, to_unit : str
        Units as people or data files write them: "in", "lb/ft3", "psi", "kJ/mol" [-].

    Returns
    -------
    float or array
        The same quantity [to_unit].

    Raises
    ------
    ValueError
        When a unit is not known, or when the two measure different things.

    Notes
    -----
    Factors come from pint and are kept, so that only the first call of a pair is slow. They hold the
    definitions 1 in = 25.4 mm, 1 lb = 0.45359237 kg, 1 US gallon = 231 in3.

    Examples
    --------
    >>> round(convert(62.4, "lb/ft3", "kg/m3"), 4)
    999.5521
    >>> round(convert(72.0, "F", "C"), 5)
    22.22222

    References
    ----------
    Definitions of the yard and pound (1959) and of the gallon; pint's table of units for everything else.
    """
    factor, offset = line(from_unit, to_unit)
    if isinstance(value, (list, tuple)):
        import numpy as np

        value = np.asarray(value, dtype=float)
    return value * factor + offset if offset else value * factor
