"""A working in the units of the shop: each line whose sum comes out in them as it does in SI."""

from itertools import product

from shop_calc import units
from shop_calc.lesson.formula import evaluate, is_arithmetic
from shop_calc.lesson.question import OTHER_UNITS

# Units to try for an amount, the likeliest first. In pounds of force a pound weighs one.
_SHOP = {
    "-": ("-",), "m": ("in", "ft"), "m2": ("in2", "ft2"), "m3": ("in3", "ft3"), "kg": ("lb",), "kg/m3": ("lb/ft3",),
    "C": ("F",), "delta_K": ("delta_F",), "Pa": ("psi",), "N": ("lbf",), "m/s2": ("lbf/lb",), "m/s": ("mph",),
    "h": ("h", "min"), "kg/m2": ("lb/ft2",), "kg/m2/h": ("lb/ft2/h",), "kg/m2/h/Pa": ("lb/ft2/h/psi",),
}  # fmt: skip
_METRIC = {"m", "mm", "cm", "m2", "m3", "L", "kg", "kg/m2", "kg/m3", "kg/m2/h", "C", "delta_C", "kPa", "MPa", "m/s"}
_FACTORS = {
    "lbf/lb": 1.0 / 9.80665,
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
    >>> round(turned(1.3608, "kg", "lb"), 4), turned(9.80665, "m/s2", "lbf/lb"), turned(0.25, "-", "-")
    (3.0, 1.0, 0.25)

    References
    ----------
    Standard gravity, 9.80665 m/s2.
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
    list of (list of str, str), or None
        For each line the units of its inputs and of its result; None when the question is metric or a line does not
        come out in shop units [-].

    Examples
    --------
    >>> from shop_calc.trade.working import Step
    >>> line = Step("v_m3", "V", "A * t", (("A", 0.6, "m2"), ("t", 0.0381, "m")), 0.02286, "m3", "derived", "geometry")
    >>> shop_units([line], [(0.0381, "m", "1.5 in", "in")], "ft3")
    [(['in2', 'in'], 'in3')]

    References
    ----------
    Common practice, no source.
    """
    if asked in _METRIC or any(unit in _METRIC for *_, unit in printed):
        return None
    carried, found = {}, []
    for step in steps:
        if not is_arithmetic(step):
            found.append(None)
            continue
        best = _best(step, [_wanted(each, printed, carried) for each in step.inputs], asked)
        if best is None:
            return None
        carried[step.symbol] = best[1]
        found.append(best)
    return found


def _wanted(each, printed, carried):
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


def _best(step, wanted, asked):
    """Units of one line: as few turned as can be, the result as asked if that may be."""
    inputs = [_choices(of, here) for (_, _, of), here in zip(step.inputs, wanted, strict=True)]
    results = _choices(step.unit, asked, *wanted)
    ways = 1
    for each in inputs:
        ways *= len(each)
    if not 0 < ways <= _MANY or not results:
        return None
    best = None
    for chosen in product(*inputs):
        turns = sum(unit != here != "" for unit, here in zip(chosen, wanted, strict=True))
        for unit in results:
            cost = turns, unit != asked, sum(map(_late, chosen)), results.index(unit)
            if (best is None or cost < best[0]) and _comes_out(step, chosen, unit):
                best = cost, (list(chosen), unit)
    return best and best[1]


def _late(unit):
    return unit in ("ft", "ft2", "ft3", "min")


def _comes_out(step, chosen, unit):
    """Whether the sum in these units gives what it gives in SI, for its own numbers and for others."""
    for shift in (0.0, 0.07):
        given = [(name, value * (1.0 + shift) + shift * place, of) for place, (name, value, of) in enumerate(step.inputs, 1)]
        there = [(name, turned(value, of, its), its) for (name, value, of), its in zip(given, chosen, strict=True)]
        try:
            right, got = turned(evaluate(step.formula, given), step.unit, unit), evaluate(step.formula, there)
        except (ValueError, ArithmeticError, TypeError):
            return False
        if isinstance(got, complex) or abs(got - right) > 1e-9 * max(abs(got), abs(right), 1e-12):
            return False
    return True
