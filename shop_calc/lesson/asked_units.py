"""A working in the units of the shop: each line whose sum comes out in them as it does in SI."""

from itertools import product
from math import prod

from shop_calc import units
from shop_calc.lesson.formula import evaluate, is_arithmetic
from shop_calc.lesson.question import OTHER_UNITS
from shop_calc.science.loads import GRAVITY_M_S2

# Units to try for an amount, the likeliest first. In pounds of force a pound weighs one.
_SHOP = {
    "-": ("-",), "fraction": ("fraction",), "m": ("in", "ft"), "m2": ("in2", "ft2"), "m3": ("in3", "ft3", "gal"),
    "m2/m3": ("ft2/gal",), "1/m": ("1/in",), "N*m": ("lbf*in",), "kg": ("lb",), "kg/m3": ("lb/ft3",),
    "C": ("F",), "delta_K": ("delta_F",), "Pa": ("psi",), "N": ("lbf",), "m/s2": ("lbf/lb",), "m/s": ("mph",),
    "h": ("h", "min"), "kg/m2": ("lb/ft2",), "kg/m2/h": ("lb/ft2/h",), "kg/m2/h/Pa": ("lb/ft2/h/psi",),
    "s/m": ("per mph",),
}  # fmt: skip
_METRIC = {"m", "mm", "cm", "m2", "m3", "L", "kg", "kg/m2", "kg/m3", "kg/m2/h", "C", "delta_C", "kPa", "MPa", "m/s"}
_FACTORS = {
    "lbf/lb": 1.0 / GRAVITY_M_S2,
    "lbf*in": float(units.convert(1.0, "N", "lbf") * units.convert(1.0, "m", "in")),
    "1/in": 0.0254,
    "per mph": float(units.convert(1.0, "mph", "m/s")),
    "lb/ft2/h/psi": float(units.convert(1.0, "kg/m2/h", "lb/ft2/h") / units.convert(1.0, "Pa", "psi")),
}
_MANY = 2000  # judgement: more ways than this to choose units are not tried


def turned(value, of, unit):
    """Turn a value of a working into a unit of the shop.

    Parameters
    ----------
    value : float
        A value of a working [SI].
    of, unit : str
        Its unit, and the one wanted [-].

    Returns
    -------
    float
        The value in that unit [unit].

    Examples
    --------
    >>> round(turned(1.36078, "kg", "lb"), 4), turned(9.80665, "m/s2", "lbf/lb"), turned(0.25, "-", "-")
    (3.0, 1.0, 0.25)

    References
    ----------
    Standard gravity: `shop_calc.science.loads`.
    """
    if unit in _FACTORS:
        return value * _FACTORS[unit]
    return value if unit == of else float(units.convert(value, of, unit))


def kind_of(unit):
    """Say what a unit counts.

    Parameters
    ----------
    unit : str
        A unit [-].

    Returns
    -------
    str
        A kind of `shop_calc.units`; empty where there is no choice of units [-].

    Examples
    --------
    >>> kind_of("m3"), kind_of("qt"), kind_of("Pa"), kind_of("W")
    ('volume', 'volume', 'pressure', '')

    References
    ----------
    Common practice, no source.
    """
    if unit == "Pa" or unit in OTHER_UNITS["liquid"]:
        return "pressure" if unit == "Pa" else "volume"
    return next((kind for kind, names in OTHER_UNITS.items() if unit in names), "")


def shop_units(steps, printed=(), asked=""):
    """Choose shop units in which every sum of a working comes out as it does in SI.

    Parameters
    ----------
    steps : sequence of Step
        A right working [SI].
    printed : sequence of (value, unit, str, str)
        Numbers of the question: in SI, their SI unit, as printed, the unit printed [SI].
    asked : str
        Unit in which the question asks; may be empty [-].

    Returns
    -------
    list of (tuple of str, tuple of str, str), or None
        For each line the units in which its inputs came, those in which it takes them, and that of its result; None
        when the question is metric or a line does not come out in shop units [-].

    Examples
    --------
    >>> from shop_calc.trade.working import Step
    >>> line = Step("v_m3", "V", "A * t", (("A", 0.6, "m2"), ("t", 0.0381, "m")), 0.02286, "m3", "derived", "geometry")
    >>> shop_units([line], [(0.0381, "m", "1.5 in", "in")], "ft3")
    [(('', 'in'), ('in2', 'in'), 'in3')]

    References
    ----------
    Common practice, no source.
    """
    if asked in _METRIC or any(unit in _METRIC for *_, unit in printed):
        return None
    carried, found = {}, []
    for step in steps:
        came = tuple(_came(each, printed, carried) for each in step.inputs)
        best = _best(step, came, asked)
        if best is None:
            return None
        carried[step.symbol] = best[1]
        found.append((came, *best))
    return found


def _came(each, printed, carried):
    """The unit in which an input stands already: as printed, or as the line above left it."""
    symbol, value, of = each
    if symbol in carried:
        return carried[symbol]
    return next((unit for given, its, _, unit in printed if value == given and of == its != "-"), "")


def _choices(of, *first):
    """Units to try for one amount; none where the shop has no unit for it."""
    known = _SHOP.get(of, ())
    more = [unit for unit in first if unit and kind_of(unit) == kind_of(of) != ""]
    return tuple(dict.fromkeys([*(more if known else ()), *known]))


def _best(step, came, asked):
    """Units of one line: as few turned as can be, the result as asked if that may be."""
    inputs = [_choices(of, here) for (_, _, of), here in zip(step.inputs, came, strict=True)]
    results = _choices(step.unit, asked, *came)
    if not results or not 0 < prod(map(len, inputs)) <= _MANY:
        return None
    if not is_arithmetic(step):
        return tuple(each[0] for each in inputs), results[0]
    best = None
    for chosen in product(*inputs):
        turns = sum(unit != here != "" for unit, here in zip(chosen, came, strict=True))
        for unit in results:
            cost = turns, unit != asked, sum(map(_late, chosen)), results.index(unit)
            if (best is None or cost < best[0]) and _comes_out(step, chosen, unit):
                best = cost, (chosen, unit)
    return best and best[1]


def _late(unit):
    return unit in ("ft", "ft2", "ft3", "gal", "min")


def _comes_out(step, chosen, unit):
    """Whether the sum in these units gives what it gives in SI."""
    there = {name: turned(value, of, its) for (name, value, of), its in zip(step.inputs, chosen, strict=True)}
    try:
        got = evaluate(step.formula, there)
    except (ValueError, ArithmeticError):
        return False
    right = turned(evaluate(step.formula, step.inputs), step.unit, unit)
    return not isinstance(got, complex) and abs(got - right) <= 1e-9 * max(abs(got), abs(right))
