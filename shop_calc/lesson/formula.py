"""Plain arithmetic of a line of the working: worked out again, written with numbers in it; never run as code."""

import ast
import math
import numbers
import operator
import re
from dataclasses import replace

from shop_calc import units
from shop_calc.trade.explain import printed_formula

_TWO = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
    ast.Div: operator.truediv,
    ast.Pow: operator.pow,
}
_ONE = {ast.UAdd: operator.pos, ast.USub: operator.neg}
_FUNCTIONS = {"sqrt": math.sqrt, "exp": math.exp, "log": math.log}
_CONSTANTS = {"pi": math.pi}
# From which size on a larger one of a unit is written, and how many of the unit that is; below, the unit itself.
_SIZES = {"Pa": ((1e6, "MPa", 1e6), (1e4, "kPa", 1e3)), "J": ((1e6, "MJ", 1e6), (1e4, "kJ", 1e3))}
_NAME = re.compile(r"[A-Za-z_]\w*")
_POWER = re.compile(r"\s*\*\*\s*")
_TIMES = re.compile(r"\s*([×/])\s*")
_PI = re.compile(r"\bpi_?\b")


def evaluate(formula, inputs):
    """Work a formula out.

    Not for text that a person typed: a formula stands in the working of a plan or of a question.

    Parameters
    ----------
    formula : str
        Sums with + - * / ** ( ), numbers, names, sqrt, exp, log and pi [-].
    inputs : dict or sequence of (symbol, value, unit)
        The value of each name [SI].

    Returns
    -------
    float
        What comes out [SI].

    Raises
    ------
    ValueError
        When it holds anything else.

    Examples
    --------
    >>> evaluate("V * (1 + a)", {"V": 2.0, "a": 0.25})
    2.5

    References
    ----------
    Common practice, no source.
    """
    names = dict(inputs) if isinstance(inputs, dict) else {symbol: value for symbol, value, _ in inputs}

    def work(node):
        if isinstance(node, ast.Expression):
            return work(node.body)
        if isinstance(node, ast.Constant) and isinstance(node.value, (int, float)):
            return node.value
        if isinstance(node, ast.Name) and node.id in names:
            return names[node.id]
        if isinstance(node, ast.Name) and node.id in _CONSTANTS:
            return _CONSTANTS[node.id]
        if isinstance(node, ast.BinOp) and type(node.op) in _TWO:
            return _TWO[type(node.op)](work(node.left), work(node.right))
        if isinstance(node, ast.UnaryOp) and type(node.op) in _ONE:
            return _ONE[type(node.op)](work(node.operand))
        if isinstance(node, ast.Call) and getattr(node.func, "id", None) in _FUNCTIONS and not node.keywords:
            return _FUNCTIONS[node.func.id](*map(work, node.args))
        raise ValueError(f"{formula!r}: {ast.unparse(node)!r} is not plain arithmetic in {', '.join(names)}")

    try:
        tree = ast.parse(formula, mode="eval")
    except SyntaxError:
        raise ValueError(f"{formula!r}: not plain arithmetic in {', '.join(names)}") from None
    return work(tree)


def is_arithmetic(step):
    """Say whether a line of the working can be worked out again from its formula.

    Parameters
    ----------
    step : Step
        A line of a working [-].

    Returns
    -------
    bool
        False for a procedure, whose formula starts with "by " [-].

    Examples
    --------
    >>> from shop_calc.trade.working import Step
    >>> is_arithmetic(Step("a_m2", "A", "by cutting it up", (), 1.0, "m2", "derived", "geometry"))
    False

    References
    ----------
    Common practice, no source.
    """
    return not step.formula.startswith("by ")


def faulty_lines(steps, rel_tol=1e-9):
    """Find the lines of a working that do not come out, or use a number that another line gave otherwise.

    Parameters
    ----------
    steps : sequence of Step
        The working [-].
    rel_tol : float
        How far a value may be off, as a share of it [fraction].

    Returns
    -------
    list of Step
        The lines at fault; lines that only carry an error on are not [-].

    Examples
    --------
    >>> from shop_calc.trade.working import Step
    >>> good = Step("a", "a", "2 * b", (("b", 1.0, "-"),), 2.0, "-", "derived", "arithmetic")
    >>> bad = Step("c", "c", "a + 1", (("a", 2.5, "-"),), 3.5, "-", "derived", "arithmetic")
    >>> [step.name for step in faulty_lines((good, bad))]
    ['c']

    References
    ----------
    Common practice, no source.
    """
    known, found = {}, []
    for step in steps:
        ok = all(
            math.isclose(value, known[symbol], rel_tol=rel_tol) for symbol, value, _ in step.inputs if symbol in known
        )
        if ok and is_arithmetic(step):
            again = evaluate(step.formula, step.inputs)
            ok = math.isclose(again, step.value, rel_tol=rel_tol, abs_tol=1e-15)
        if not ok:
            found.append(step)
        known[step.symbol] = step.value
    return found


def pretty(step):
    """Write a line of the working with its formula as a person would: ×, raised figures and π.

    Parameters
    ----------
    step : Step
        A line of a working [-].

    Returns
    -------
    str
        Symbol and formula, for the page [-].

    Examples
    --------
    >>> from shop_calc.trade.working import Step
    >>> pretty(Step("a", "A", "pi * d**2 / 4", (("d", 2.0, "m"),), 3.1416, "m2", "derived", "geometry"))
    'A = π × d² / 4'
    >>> pretty(Step("d", "d", "L * c * 1e-6", (("L", 2.0, "m"), ("c", 5.0, "-")), 1e-5, "m", "derived", "arithmetic"))
    'd = L × c × 10⁻⁶'

    References
    ----------
    Common practice, no source.
    """
    text = printed_formula(replace(step, formula=_POWER.sub("**", step.formula)))
    return _TIMES.sub(r" \1 ", _PI.sub("π", text)).replace("1e-6", "10⁻⁶")


def with_numbers(step):
    """Write the same with its numbers put in.

    Parameters
    ----------
    step : Step
        A line whose formula is arithmetic [-].

    Returns
    -------
    str
        Symbol and sum, for the page [-].

    Examples
    --------
    >>> from shop_calc.trade.working import Step
    >>> with_numbers(Step("a", "A", "pi * d**2 / 4", (("d", 2.0, "m"),), 3.1416, "m2", "derived", "geometry"))
    'A = π × 2² / 4'

    References
    ----------
    Common practice, no source.
    """
    values = {symbol: _put_in(value, unit) for symbol, value, unit in step.inputs if not is_pi(symbol)}

    def one(found):
        text = values.get(found.group(), found.group())
        return f"({text})" if text.startswith("-") else text

    return pretty(replace(step, formula=_NAME.sub(one, step.formula)))


def _put_in(value, unit):
    """A number as it stands in a sum; where another size of its unit is written, that stands with it."""
    number, written = readable(value, unit)
    return f"{number} {written}" if written != unit else number


def readable(value, unit):
    """Write a value of the working in a size of its unit that can be read: kPa and MPa for many pascals, kJ for joules.

    Parameters
    ----------
    value : float or str
        A value [SI].
    unit : str
        Its unit [-].

    Returns
    -------
    tuple of (str, str)
        The number to four significant figures, and the unit that it is in [-].

    Examples
    --------
    >>> readable(5515806.0, "Pa"), readable(421377.0, "Pa"), readable(1076.0, "Pa"), readable(1.829, "m")
    (('5.516', 'MPa'), ('421.4', 'kPa'), ('1076', 'Pa'), ('1.829', 'm'))

    References
    ----------
    Common practice, no source.
    """
    if unit in _SIZES and isinstance(value, numbers.Real):
        for least, written, share in _SIZES[unit]:
            if abs(value) >= least:
                return sized(value / share), written
    return sized(value), unit


def is_pi(symbol):
    """Say whether a symbol stands for π, whose value nobody needs to be told.

    Parameters
    ----------
    symbol : str
        A symbol of a formula [-].

    Returns
    -------
    bool
        True for pi [-].

    Examples
    --------
    >>> is_pi("pi_"), is_pi("p")
    (True, False)

    References
    ----------
    Common practice, no source.
    """
    return _PI.fullmatch(symbol) is not None


def sized(value):
    """Write a number of the working to four significant figures, without a power of ten.

    Parameters
    ----------
    value : float or str
        A value [any].

    Returns
    -------
    str
        For the page [-].

    Examples
    --------
    >>> sized(0.000012345), sized(22119.6), sized("open")
    ('0.00001235', '22120', 'open')

    References
    ----------
    Common practice, no source.
    """
    return units.plain_number(value, 4) if isinstance(value, numbers.Real) else str(value)
