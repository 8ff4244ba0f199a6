"""The numbers of a question: drawn from a student code, and never such that a slip looks right."""

import hashlib

from shop_calc.lesson.question import WORD_KINDS

_TRIES = 400  # judgement: enough for any grid of numbers that has a good draw at all


def clean_code(code):
    """Bring a student code to one spelling.

    Parameters
    ----------
    code : str or None
        As typed [-].

    Returns
    -------
    str
        Lower case, without spaces; empty when there is none [-].

    Examples
    --------
    >>> clean_code("  Mar 7 ")
    'mar7'

    References
    ----------
    Common practice, no source.
    """
    return "".join(str(code or "").casefold().split())


def _draw(question, code, attempt):
    drawn = {}
    for number in question.numbers:
        seed = hashlib.sha256(f"{code}|{question.id}|{number.name}|{attempt}".encode()).digest()
        grid = number.grid()
        drawn[number.name] = grid[int.from_bytes(seed[:8], "big") % len(grid)]
    return drawn


def _printed(question, code):
    """The numbers as printed, drawn anew until no slip looks like the answer or like another slip."""
    if not code:
        numbers = {number.name: number.printed for number in question.numbers}
        if not told_apart(question, inside(question, numbers)):
            raise ValueError(
                f"question {question.id}: with its printed numbers a slip cannot be told from the answer"
            )
        return numbers
    for attempt in range(_TRIES):
        numbers = _draw(question, code, attempt)
        try:
            if told_apart(question, inside(question, numbers)):
                return numbers
        except ValueError:
            continue  # these numbers make no possible piece
    raise ValueError(f"question {question.id}: no numbers found for this code that keep the slips apart")


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
    least = abs(question.inside(question.within) - question.inside(0.0))
    share = 0.0 if question.kind == "temperature" else question.tolerance
    return max(share * abs(value), least, 1e-12)


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


def told_apart(question, numbers):
    """Say whether the answer and all slips differ by more than the tolerance.

    Parameters
    ----------
    question : Question
        The question [-].
    numbers : dict
        Its numbers [SI].

    Returns
    -------
    bool
        False when two of them would count as the same [-].

    Examples
    --------
    >>> from shop_calc.lesson.question import Question
    >>> from shop_calc.lesson.slips import Slip
    >>> none = Slip("none", lambda answer, numbers: answer(**numbers), "No slip at all.")
    >>> q = Question("q", "", lambda: 2.0, "length", "m", slips=(none,), hints=("x", "y"))
    >>> told_apart(q, {})
    False

    References
    ----------
    Common practice, no source.
    """
    values = [question.answer(**numbers), *(value for _, value in slip_values(question, numbers))]
    pairs = ((a, b) for k, a in enumerate(values) for b in values[k + 1 :])
    return not any(same(question, a, b) or same(question, b, a) for a, b in pairs)


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

    Raises
    ------
    ValueError
        When no numbers keep the slips apart.

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
    printed = _printed(question, clean_code(code))
    return printed, inside(question, printed)


def shown(question, code=None):
    """Write the question with its numbers, and its choices below.

    Parameters
    ----------
    question : Question
        The question [-].
    code : str, optional
        Student code [-].

    Returns
    -------
    str
        Plain text [-].

    Examples
    --------
    >>> from shop_calc.lesson.question import Question
    >>> shown(Question("q", "Which?", lambda: "one", "choice", choices=("one", "two"), hints=("x", "y")))
    'Which?\\n  a  one\\n  b  two'

    References
    ----------
    Common practice, no source.
    """
    printed, _ = numbers_for(question, code)
    blanks = {number.name: number.text(printed[number.name]) for number in question.numbers}
    lines = [question.text.format(**blanks)]
    lines += [f"  {letter}  {word}" for letter, word in zip(question.letters, question.choices, strict=True)]
    return "\n".join(lines)
