"""How a slider shows an SI value: unit, ends and steps in either system."""

import math
from dataclasses import dataclass

from shop_calc import units
from shop_calc.units.words import canonical

# unit of the table: unit inside, unit shown in US, unit shown in SI
SHOWN = {
    "mm": ("m", "in", "mm"),
    "in": ("m", "in", "mm"),
    "m2/m3": ("m2/m3", "ft2/gal", "m2/L"),
    "m": ("m", "ft", "m"),
    "ft": ("m", "ft", "m"),
    "m2": ("m2", "ft2", "m2"),
    "ft2": ("m2", "ft2", "m2"),
    "L": ("m3", "qt", "L"),
    "qt": ("m3", "qt", "L"),
    "m3": ("m3", "ft3", "m3"),
    "ft3": ("m3", "ft3", "L"),
    "kg": ("kg", "lb", "kg"),
    "lb": ("kg", "lb", "kg"),
    "g": ("kg", "oz", "g"),
    "oz": ("kg", "oz", "g"),
    "kg/m2": ("kg/m2", "lb/ft2", "kg/m2"),
    "kg/m3": ("kg/m3", "lb/ft3", "kg/m3"),
    "kg/m2/h": ("kg/m2/h", "lb/ft2/h", "kg/m2/h"),
    "lb/ft2/h": ("kg/m2/h", "lb/ft2/h", "kg/m2/h"),
    "C": ("C", "F", "C"),
    "F": ("C", "F", "C"),
    "K": ("delta_K", "delta_F", "delta_C"),  # in the table a difference, not a reading
    "delta_K": ("delta_K", "delta_F", "delta_C"),
    "km/h": ("m/s", "mph", "km/h"),
    "mi/h": ("m/s", "mph", "km/h"),
    "m/s": ("m/s", "mph", "m/s"),
    "psi": ("Pa", "psi", "MPa"),
    "kPa": ("Pa", "psi", "kPa"),
    "MPa": ("Pa", "psi", "MPa"),
    "kJ/mol": ("J/mol", "kJ/mol", "kJ/mol"),
    "min": ("h", "min", "min"),
    "d": ("h", "d", "d"),
    "fraction": ("fraction", "%", "%"),
    "-": ("-", "-", "-"),
    "%": ("fraction", "%", "%"),
}
_INCH_STEPS = (1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 6, 12)


def units_of(unit):
    """Say which unit stands inside, and which are shown.

    Parameters
    ----------
    unit : str
        Unit of the table or of the lesson [-].

    Returns
    -------
    tuple of str
        Unit inside, US unit, SI unit; a unit used alike in both systems stands three times [-].

    Examples
    --------
    >>> units_of("mm")
    ('m', 'in', 'mm')

    References
    ----------
    Common practice, no source.
    """
    return SHOWN.get(unit) or SHOWN.get(canonical(unit), (unit, unit, unit))


def convert(value, unit, to):
    """Convert between two units of one slider.

    Parameters
    ----------
    value : float
        Number [unit].
    unit, to : str
        From and to; "%" and "fraction" included [-].

    Returns
    -------
    float
        Number in the other unit [to].

    Examples
    --------
    >>> convert(0.25, "fraction", "%")
    25.0

    References
    ----------
    Common practice, no source.
    """
    if unit == to:
        return float(value)
    return float(units.convert(value, unit, to))


def nice_step(span, unit):
    """Choose a step that a person would choose, about a hundred to the whole slider.

    Parameters
    ----------
    span : float
        Length of the slider [unit].
    unit : str
        Unit shown; inches go in halves, quarters, eighths [-].

    Returns
    -------
    float
        Step [unit].

    Examples
    --------
    >>> nice_step(130.0, "in"), nice_step(33.0, "C")
    (1, 0.5)

    References
    ----------
    Common practice, no source.
    """
    raw = span / 130.0
    if unit == "in" and span >= 12 * _INCH_STEPS[0]:  # below that a tape is too coarse: decimals
        steps = _INCH_STEPS if span < 1 else _INCH_STEPS[1:]
        return next((step for step in steps if step >= raw * 0.999), 24)
    power = 10.0 ** math.floor(math.log10(raw))
    factor = next(f for f in (1, 2, 5, 10) if f * power >= raw * 0.999)
    return float(f"{factor * power:.3g}")


@dataclass(frozen=True)
class Grid:
    """What a slider shows in one system.

    Parameters
    ----------
    unit : str
        Unit shown [-].
    low, high, step : float
        Ends and step, all multiples of the step and inside the valid range [unit].
    decimals : int
        Decimals of a value [-].

    Examples
    --------
    >>> Grid("in", 12.0, 60.0, 0.5, 4).step
    0.5

    References
    ----------
    Common practice, no source.
    """

    unit: str
    low: float
    high: float
    step: float
    decimals: int


def grid(low, high, inside, unit, step=None):
    """Lay a grid of round numbers inside a valid range.

    Parameters
    ----------
    low, high : float
        Valid range [inside].
    inside, unit : str
        Unit of the range, and unit shown [-].
    step : float, optional
        Step wanted instead of the chosen one [unit].

    Returns
    -------
    Grid
        Ends never outside the range [-].

    Raises
    ------
    ValueError
        When the range is empty or upside down, or the step wider than the range.

    Examples
    --------
    >>> grid(0.3, 3.6, "m", "mm")
    Grid(unit='mm', low=300.0, high=3600.0, step=50.0, decimals=1)

    References
    ----------
    Common practice, no source.
    """
    if not low < high:
        raise ValueError(f"slider range: {low:g} to {high:g} given; the low end must be below the high end")
    first, last = convert(low, inside, unit), convert(high, inside, unit)
    step = step or nice_step(last - first, unit)
    ends = math.ceil(first / step - 1e-6) * step, math.floor(last / step + 1e-6) * step
    if not ends[0] < ends[1]:
        raise ValueError(f"slider step: {step:g} {unit} given; wider than the range")
    decimals = max(0, -math.floor(math.log10(step))) + 1
    if unit == "in":
        decimals = max(decimals, 5 if step < 1 / 16 else 4)  # as many as a sixteenth has
    return Grid(unit, round(ends[0], 9), round(ends[1], 9), step, decimals)
