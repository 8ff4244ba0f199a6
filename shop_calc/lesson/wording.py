"""A question as text, and an answer as a student would type it."""

from shop_calc.lesson.draw import draw
from shop_calc.lesson.page import sign
from shop_calc.lesson.question import WORD_KINDS
from shop_calc.units import plain_number


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
    return shown_with(question, draw(question, code))


def shown_with(question, drawn):
    """Write a question whose numbers are drawn already.

    Parameters
    ----------
    question : Question
        The question [-].
    drawn : Drawn
        Its numbers [as its fields].

    Returns
    -------
    str
        Plain text [-].

    Examples
    --------
    >>> from shop_calc.lesson.question import Number, Question
    >>> a = Number("a_m", "in", 50, 10, 90)
    >>> q = Question("q", "{a_m} long?", lambda a_m: a_m, "length", "m", numbers=(a,), hints=("x", "y"))
    >>> shown_with(q, draw(q))
    '50 in long?'

    References
    ----------
    Common practice, no source.
    """
    lines = [question.text.format(**blanks(question, drawn))]
    beside = drawn.choices
    if question.sheet:
        sheet = question.sheet(**drawn.given)
        if isinstance(sheet, str):
            lines.append(sheet)
        else:
            beside = sheet
    lines += [f"  {letter}  {words}" for letter, words in zip(question.letters, beside, strict=True)]
    return "\n".join(lines)


def blanks(question, drawn):
    """Write each number of a question as it is printed.

    Parameters
    ----------
    question : Question
        The question [-].
    drawn : Drawn
        Its numbers [as its fields].

    Returns
    -------
    dict
        Texts by the names of the numbers [-].

    Examples
    --------
    >>> from shop_calc.lesson.question import Number, Question
    >>> a = Number("a_m", "in", 50, 10, 90)
    >>> q = Question("q", "{a_m} long?", lambda a_m: a_m, "length", "m", numbers=(a,), hints=("x", "y"))
    >>> blanks(q, draw(q))
    {'a_m': '50 in'}

    References
    ----------
    Common practice, no source.
    """
    return {number.name: number.text(drawn.printed[number.name]) for number in question.numbers}


def wanted(question):
    """Say in which form the answer is wanted.

    Parameters
    ----------
    question : Question
        The question [-].

    Returns
    -------
    str
        One sentence [-].

    Examples
    --------
    >>> from shop_calc.lesson.question import Question
    >>> wanted(Question("q", "", lambda: 2.0, "length", "ft", hints=("x", "y")))
    'Answer in ft, as a number; or with the unit you like, as a text.'

    References
    ----------
    Common practice, no source.
    """
    how = how_typed(question)
    if question.kind in WORD_KINDS:
        return f"Answer with the {'letter' if question.kind == 'choice' else 'letters in order'}{how}."
    if sign(question.unit):
        unit = "inches" if question.unit == "in" else sign(question.unit)  # "in in" reads like a slip
        return f"Answer in {unit}{how}."
    return "Answer with a plain number."


def how_typed(question):
    """Say how the answer is typed: the part of `wanted` that means nothing where nothing can be typed.

    Parameters
    ----------
    question : Question
        The question [-].

    Returns
    -------
    str
        Part of a sentence; may be empty [-].

    Examples
    --------
    >>> from shop_calc.lesson.question import Question
    >>> how_typed(Question("q", "Which?", lambda: "one", "choice", choices=("one", "two"), hints=("x", "y")))
    ', in quotes'

    References
    ----------
    Common practice, no source.
    """
    if question.kind == "choice":
        return ", in quotes"
    if question.kind == "order":
        return f", in quotes, like '{', '.join(reversed(question.letters))}'"
    return ", as a number; or with the unit you like, as a text" if sign(question.unit) else ""


def typed(question, drawn, value):
    """Write an answer as a student would type it.

    Parameters
    ----------
    question : Question
        The question [-].
    drawn : Drawn
        Its numbers and choices [as its fields].
    value : float, str or tuple
        The right answer, or what a slip gives [SI, or words].

    Returns
    -------
    float or str
        A number in the asked unit, a letter, or letters in order [asked unit].

    Examples
    --------
    >>> from shop_calc.lesson.question import Question
    >>> q = Question("q", "", lambda: 0.6096, "length", "ft", hints=("x", "y"))
    >>> typed(q, draw(q), 0.6096)
    2.0

    References
    ----------
    Common practice, no source.
    """
    letters = dict(zip(drawn.choices, question.letters, strict=True))
    if question.kind == "choice":
        return letters[value]
    if question.kind == "order":
        return ", ".join(letters[word] for word in value)
    return float(plain_number(question.asked(value), 4))  # as the working above it has it
