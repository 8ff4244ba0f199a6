"""Say a working line by line: formula, inputs, value, mark and source."""

import re

from shop_calc import units
from shop_calc.trade.working import find

_KINDS = {
    "m": "length", "m2": "area", "m3": "volume", "kg": "mass", "kg/m3": "density", "C": "temperature",
    "delta_K": "temperature_difference", "h": "duration", "s": "time", "Pa": "pressure", "kg/m2": "areal_mass",
    "kg/m2/h": "rate", "m/s": "speed", "J/mol": "energy", "Pa/s": "pressure_rate", "W": "power", "N": "force",
}  # fmt: skip


def shown_value(value, unit, system="both"):
    """Write a value of a working as people read it.

    Parameters
    ----------
    value : float
        The value in SI [unit].
    unit : str
        Its unit, as a Step names it [-].
    system : str
        us, si or both [-].

    Returns
    -------
    str
        The value with its unit [-].

    Examples
    --------
    >>> shown_value(0.0381, "m")
    '1 1/2" (38.1 mm)'
    >>> shown_value(0.62607, "-")
    '0.626'
    >>> shown_value(622.8, "Pa**0.5")
    '623 Pa^½'

    References
    ----------
    Common practice, no source.
    """
    if isinstance(value, str):
        return value
    if unit in _KINDS:
        return units.show(value, _KINDS[unit], system)
    text = units.plain_number(value, 3)
    return text if unit in ("-", "") else f"{text} {unit.replace('**0.5', '^½')}"


def printed_formula(step):
    """Write a formula as a person would: × and ² instead of the signs of a keyboard.

    Parameters
    ----------
    step : Step
        A line of a working [-].

    Returns
    -------
    str
        The formula [-].

    Examples
    --------
    >>> from shop_calc.trade.working import Step
    >>> printed_formula(Step("a_m2", "A", "L**2 * n", (), 1.0, "m2", "derived", "geometry"))
    'A = L² × n'

    References
    ----------
    Common practice, no source.
    """
    if step.formula.startswith("by "):
        return f"{step.symbol}: {step.formula}"
    text = step.formula.replace("**2", "²").replace("**3", "³").replace("**", " ^ ")
    text = re.sub(r"\s*\*\s*", " × ", text)
    return f"{_greek(step.symbol)} = {_greek(text)}"


def _greek(text):
    """A density by its letter, in the formula as in the list of what went in."""
    return text.replace("rho", "ρ")


def _told(working, symbol, value):
    """What an input is, in the words of the step that made it, and the name to ask further with."""
    made = [step for step in working if step.symbol == symbol and step.value == value]
    return f"{made[0].words} ({made[0].name})" if made and made[0].words else ""


def explain(working, name, system="both"):
    """Explain one value of a working.

    Parameters
    ----------
    working : sequence of Step
        The working of a plan [-].
    name : str
        Name of the value or an unmistakable part of it [-].
    system : str
        us, si or both [-].

    Returns
    -------
    str
        Several lines: what it is, value, formula, inputs, mark and source [-].

    Raises
    ------
    ValueError
        When no value, or more than one, fits the name.

    Examples
    --------
    >>> from shop_calc.trade.working import Step
    >>> steps = (Step("face_m3", "V_f", "V - V_c", (("V", 3.0, "m3"), ("V_c", 2.0, "m3")), 1.0, "m3", "derived",
    ...               "geometry", "volume of the face"),)
    >>> print(explain(steps, "face", "si"))
    volume of the face
      face_m3 = 1 m³
      V_f = V - V_c
        V = 3 m³
        V_c = 2 m³
      derived: geometry

    References
    ----------
    Common practice, no source.
    """
    step = find(working, name)
    lines = [step.words or step.name.replace("_", " "), f"  {step.name} = {shown_value(step.value, step.unit, system)}"]
    lines.append(f"  {printed_formula(step)}")
    for symbol, value, unit in step.inputs:
        told = _told(working, symbol, value)
        lines.append(f"    {_greek(symbol)} = {shown_value(value, unit, system)}{told and ', ' + told}")
    lines.append(f"  {step.mark}: {step.source}")
    return "\n".join(lines)
