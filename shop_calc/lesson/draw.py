"""The numbers of a question: drawn from a student code, and never such that a slip looks right."""

import hashlib
import unicodedata
from dataclasses import dataclass
from itertools import combinations

from shop_calc.lesson.margins import apart

_TRIES = 400  # judgement: enough for any grid of numbers that has a good draw at all
_REMEMBERED = 2000  # sets of numbers for each question: two hundred students many times over
_IMPOSSIBLE = (ValueError, ZeroDivisionError, OverflowError)  # numbers that make no possible piece


@dataclass(frozen=True)
class Drawn:
    """A question with the numbers of one student in it.

    Parameters
    ----------
    printed : dict
        Numbers by name, as the text gives them [unit of each].
    given : dict
        The same, as the answer function takes them [SI].
    choices : tuple of str
        Words to choose from or to order, as they stand beside the letters a, b, c [-].
    right : float, str or tuple
        The right answer [SI, or words].
    slips : tuple of (Slip, value)
        What each foreseen slip gives, in the order of the question [SI, or words].

    Examples
    --------
    >>> Drawn({"a_m": 5}, {"a_m": 0.005}, (), 0.005, ()).right
    0.005

    References
    ----------
    Common practice, no source.
    """

    printed: dict
    given: dict
    choices: tuple
    right: object
    slips: tuple


def clean_code(code):
    """Bring a student code to one spelling, whichever keyboard and machine it was typed on.

    Parameters
    ----------
    code : str or None
        As typed; the three dots of a blank count as none [-].

    Returns
    -------
    str
        Lower case, without spaces and signs that cannot be seen; empty when there is none [-].

    Examples
    --------
    >>> clean_code("  Mar 7 "), clean_code("Zoe\\u0308") == clean_code("ZO\\u00cb"), clean_code(0)
    ('mar7', True, '0')

    References
    ----------
    Unicode Standard Annex 15 for the one spelling (NFKC).
    """
    if code is None or code is Ellipsis:
        return ""
    text = unicodedata.normalize("NFKC", unicodedata.normalize("NFKC", str(code)).casefold())
    return "".join(sign for sign in text if not sign.isspace() and unicodedata.category(sign) not in ("Cc", "Cf", "Cs"))


def _hash(*parts):
    return hashlib.sha256("|".join(map(str, parts)).encode()).digest()


def _draw(question, code, attempt):
    drawn = {}
    for number in question.numbers:
        seed = int.from_bytes(_hash(code, question.id, number.name, attempt)[:8], "big")
        drawn[number.name] = number.at(seed % number.count)
    return drawn


def _choices(question, code, right):
    """The choices in an order of the student's own; things to be ordered never stand in the right order."""
    if not code or question.fixed:
        return question.choices
    for attempt in range(_TRIES):
        order = tuple(sorted(question.choices, key=lambda choice: _hash(code, question.id, choice, attempt)))
        if question.kind == "choice" or order != right:
            break
    return order


def _values(question, given):
    """The right answer and what each slip gives; worked once for the same numbers, for a class has few of some."""
    known, key = question.memory, tuple(given.values())
    if key not in known:
        right = question.answer(**given)
        found = (tuple(right) if question.kind == "order" else right, slip_values(question, given))
        if len(known) >= _REMEMBERED:
            known.clear()
        known[key] = found
    return known[key]


def _with(question, code, printed):
    """The question with these numbers; nothing when a slip could be taken for the answer or for another slip."""
    given = inside(question, printed)
    right, slips = _values(question, given)
    if not apart(question, [right, *(value for _, value in slips)]):
        return None
    return Drawn(printed, given, _choices(question, code, right), right, slips)


def _alike(question):
    """Which two of the answer and the slips are too near to each other with the printed numbers, for whoever writes it."""
    given = inside(question, {number.name: number.printed for number in question.numbers})
    right, slips = _values(question, given)
    named = [("the answer", right), *((repr(slip.name), value) for slip, value in slips)]
    pairs = (f"{one[0]} and {other[0]}" for one, other in combinations(named, 2) if not apart(question, [one[1], other[1]]))
    return next(pairs, "the answer and its slips")


def draw(question, code=None):
    """Put the numbers of one student into a question, the same on every machine.

    Numbers with which a slip could be taken for the answer, or for another slip, are drawn anew.

    Parameters
    ----------
    question : Question
        The question [-].
    code : str, optional
        Student code; without one the printed numbers [-].

    Returns
    -------
    Drawn
        Numbers, choices, the right answer and what each slip gives [as its fields].

    Raises
    ------
    ValueError
        When the printed numbers themselves do not keep the slips apart.

    Examples
    --------
    >>> from shop_calc.lesson.question import Number, Question
    >>> a = Number("a_m", "in", 50, 10, 90)
    >>> q = Question("q", "{a_m}", lambda a_m: 2 * a_m, "length", "in", numbers=(a,), hints=("x", "y"))
    >>> round(draw(q).right, 5), draw(q, "Mar 7") == draw(q, "mar7")
    (2.54, True)

    References
    ----------
    Common practice, no source.
    """
    code = clean_code(code)
    for attempt in range(_TRIES if code else 0):
        try:
            found = _with(question, code, _draw(question, code, attempt))
        except _IMPOSSIBLE:
            continue
        if found:
            return found
        if all(number.count == 1 for number in question.numbers):
            break  # it can only be drawn once
    # a student is never left without a question
    found = _with(question, code, {number.name: number.printed for number in question.numbers})
    if not found:
        raise ValueError(f"question {question.id}: with its printed numbers {_alike(question)} cannot be told apart")
    return found


def inside(question, printed):
    """Bring the printed numbers to SI.

    Parameters
    ----------
    question : Question
        The question [-].
    printed : dict
        Numbers by name [unit of each].

    Returns
    -------
    dict
        Numbers by name, as the answer function takes them [SI].

    Examples
    --------
    >>> from shop_calc.lesson.question import Number, Question
    >>> a = Number("a_m", "mm", 5, 1, 9)
    >>> q = Question("q", "{a_m}", lambda a_m: a_m, "length", "m", numbers=(a,), hints=("x", "y"))
    >>> inside(q, {"a_m": 5})
    {'a_m': 0.005}

    References
    ----------
    Common practice, no source.
    """
    return {number.name: number.inside(printed[number.name]) for number in question.numbers}


def slip_values(question, numbers):
    """Compute what each foreseen slip would give.

    Parameters
    ----------
    question : Question
        The question [-].
    numbers : dict
        Its numbers [SI].

    Returns
    -------
    tuple of (Slip, value)
        In the order of the question [SI, or words].

    Examples
    --------
    >>> from shop_calc.lesson.question import Question
    >>> from shop_calc.lesson.slips import Slip
    >>> twice = Slip("twice", lambda answer, numbers: 2 * answer(**numbers), "Count again.")
    >>> q = Question("q", "", lambda: 2.0, "length", "m", slips=(twice,), hints=("x", "y"))
    >>> slip_values(q, {})[0][1]
    4.0

    References
    ----------
    Common practice, no source.
    """
    return tuple((slip, slip.wrong(question.answer, numbers)) for slip in question.slips)


def numbers_for(question, code=None):
    """Give the numbers of a question, the same on every machine.

    Parameters
    ----------
    question : Question
        The question [-].
    code : str, optional
        Student code; without one the printed numbers [-].

    Returns
    -------
    tuple of dict
        The numbers as printed, and in SI [unit of each; SI].

    Examples
    --------
    >>> from shop_calc.lesson.question import Number, Question
    >>> a = Number("a_m", "in", 50, 10, 90)
    >>> q = Question("q", "{a_m}", lambda a_m: a_m, "length", "m", numbers=(a,), hints=("x", "y"))
    >>> numbers_for(q)[0], numbers_for(q, "Mar 7")[0] == numbers_for(q, "mar7")[0]
    ({'a_m': 50}, True)

    References
    ----------
    Common practice, no source.
    """
    drawn = draw(question, code)
    return drawn.printed, drawn.given
