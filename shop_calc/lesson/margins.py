"""How far an answer may be off, and whether answers can be told apart."""

import math

from shop_calc.lesson.question import WORD_KINDS

# Two values that lie apart by the margin to the last bit could be told apart on one machine and not on the next.
_CLEARLY = 1.0 + 1e-6


def _margins(question, values):
    least = abs(question.inside(question.within) - question.inside(0.0))
    share = 0.0 if question.kind == "temperature" else question.tolerance
    return [max(share * abs(value), least, 1e-12) for value in values]


def margin(question, value):
    """Say how far an answer may lie from `value`.

    Parameters
    ----------
    question : Question
        A question with a number for an answer [-].
    value : float
        The value aimed at [SI].

    Returns
    -------
    float
        Largest difference that still counts as the same [SI].

    Examples
    --------
    >>> from shop_calc.lesson.question import Number, Question
    >>> q = Question("q", "", lambda: 2.0, "length", "m", hints=("x", "y"), tolerance=0.01)
    >>> margin(q, 2.0)
    0.02

    References
    ----------
    Common practice, no source.
    """
    return _margins(question, [value])[0]


def same(question, first, second):
    """Say whether two answers count as the same.

    Parameters
    ----------
    question : Question
        The question [-].
    first, second : float, str or tuple
        Two answers; the margin is that of the second [SI, or words].

    Returns
    -------
    bool
        True when they do [-].

    Examples
    --------
    >>> from shop_calc.lesson.question import Number, Question
    >>> q = Question("q", "", lambda: 2.0, "length", "m", hints=("x", "y"))
    >>> same(q, 2.03, 2.0), same(q, 2.05, 2.0)
    (True, False)

    References
    ----------
    Common practice, no source.
    """
    if question.kind in WORD_KINDS:
        return first == second
    return bool(abs(first - second) <= margin(question, second))


def apart(question, values):
    """Say whether answers differ from one another by more than the margin of each.

    Parameters
    ----------
    question : Question
        The question [-].
    values : sequence of float, str or tuple
        The right answer and what slips give [SI, or words].

    Returns
    -------
    bool
        False when two of them could be taken for each other, or one is no number [-].

    Examples
    --------
    >>> from shop_calc.lesson.question import Question
    >>> q = Question("q", "", lambda: 2.0, "length", "m", hints=("x", "y"))
    >>> apart(q, [2.0, 4.0, 24.0]), apart(q, [2.0, 2.03, 24.0])
    (True, False)

    References
    ----------
    Common practice, no source.
    """
    if question.kind in WORD_KINDS:
        return len(set(values)) == len(values)
    if not all(map(math.isfinite, values)):
        return False
    reach = [(value, _CLEARLY * margin) for value, margin in zip(values, _margins(question, values), strict=True)]
    pairs = ((a, b) for k, a in enumerate(reach) for b in reach[k + 1 :])
    return all(abs(a - b) > max(at_a, at_b) for (a, at_a), (b, at_b) in pairs)
