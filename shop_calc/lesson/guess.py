"""The number a learner wrote down first, brought back beside the one that was worked out."""

from shop_calc import units
from shop_calc.lesson.check import Kind, check
from shop_calc.lesson.page import sign
from shop_calc.lesson.practice import Said
from shop_calc.lesson.question import Question

NEAR = 0.10  # judgement: a guess within a tenth is a good one
_NO_GUESS = " No guess was written down."
_DIFFERENCE = {"temperature": "temperature_difference"}  # a share of a reading means nothing


def guessed(guess, value, kind, unit, what="It is"):
    """Say how far a first guess lies from what came out; never an error, whatever was typed.

    Parameters
    ----------
    guess : float or str
        A number in `unit`, a text with its unit, or the three dots of a blank [unit].
    value : float
        What came out [SI unit of the kind].
    kind : str
        A kind of `shop_calc.units` [-].
    unit : str
        Unit in which the guess was asked [-].
    what : str
        How the line starts [-].

    Returns
    -------
    Said
        Shown by the notebook, escaped [-].

    Examples
    --------
    >>> guessed(3.0, 4.0, "duration", "h")
    It is 4 h. You wrote 3 h: 25 % too low.
    >>> guessed(..., 4.0, "duration", "h")
    It is 4 h. No guess was written down.
    >>> guessed("3 L", 0.00445, "liquid", "qt")
    It is 4.7 qt (4.45 L). You wrote 3.17 qt (3 L): 33 % too low.

    References
    ----------
    Common practice, no source.
    """
    line = f"{what} {_shown(value, kind, unit)}."
    asked = Question("guess", "", lambda: value, kind, unit, hints=("", " "), tolerance=NEAR, within=1.0)
    outcome = check(asked, guess)
    if outcome.kind is Kind.BLANK:
        return Said(f"{line}{_NO_GUESS}", _NO_GUESS)
    if outcome.kind is Kind.UNREADABLE:
        return Said(f"{line} The guess cannot be read: give one number, in {unit}.")
    wrote = _si(guess, kind, unit)
    return Said(f"{line} You wrote {_shown(wrote, kind, unit)}: {_how_far(wrote, value, kind)}.")


def _shown(value, kind, unit):
    """As people read it, the asked unit first: who guessed quarts is not answered in gallons."""
    text = units.show(value, kind)
    if kind != "liquid" or sign(unit) in text.split():
        return text
    asked = units.convert(value, units.KINDS[kind].si_unit, unit)
    return f"{units.plain_number(float(asked))} {sign(unit)} ({units.show(value, kind, 'si')})"


def _si(guess, kind, unit):
    """A guess that `check` could read, in SI."""
    try:
        return float(units.convert(float(guess), unit, units.KINDS[kind].si_unit))
    except (TypeError, ValueError):
        return float(units.parse(guess, kind, entry="guess"))


def _how_far(wrote, value, kind):
    if kind in _DIFFERENCE or value == 0:
        off = abs(wrote - value)
        if off == 0:
            return "the very number"
        text = units.show(off, _DIFFERENCE.get(kind, kind))
    else:
        off = abs(wrote / value - 1.0)
        if round(100 * off) == 0:
            return "the very number"
        text = f"{100 * off:.0f} %"
    return f"{text} too {'high' if wrote > value else 'low'}"
