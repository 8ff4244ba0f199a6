"""Practice as a lesson uses it: show a question, check an answer, ask for a hint, see it worked."""

import html
from dataclasses import dataclass
from importlib import import_module

from shop_calc import units
from shop_calc.lesson.check import Kind, Outcome, check
from shop_calc.lesson.draw import numbers_for, shown
from shop_calc.lesson.page import sign
from shop_calc.lesson.question import WORD_KINDS

_LOOK = "white-space:pre-wrap;line-height:1.5;max-width:46em;padding:4px 0"
__all__ = ["Kind", "Outcome", "Practice", "Said", "ask", "check", "hint", "solution", "worked"]


@dataclass(frozen=True)
class Said:
    """A text for the page, escaped, line by line.

    Parameters
    ----------
    text : str
        What is said [-].

    Examples
    --------
    >>> Said("Look again.")
    Look again.

    References
    ----------
    Common practice, no source.
    """

    text: str

    def __repr__(self):
        return self.text

    def _repr_mimebundle_(self, include=None, exclude=None):
        page = f'<div style="{_LOOK}">{html.escape(self.text)}</div>'
        return {"text/html": page, "text/plain": self.text}


def ask(question, code=None):
    """Show a question with its numbers and the unit in which the answer is wanted.

    Parameters
    ----------
    question : Question
        The question [-].
    code : str, optional
        Student code; without one the printed numbers [-].

    Returns
    -------
    Said
        Shown by the notebook [-].

    Examples
    --------
    >>> from shop_calc.lesson.question import Question
    >>> ask(Question("q", "How long?", lambda: 0.3048, "length", "ft", hints=("x", "y")))
    How long?
    Answer in ft, as a number; or with the unit you like, as a text.

    References
    ----------
    Common practice, no source.
    """
    if question.kind == "choice":
        wanted = "Answer with the letter, in quotes."
    elif question.kind == "order":
        example = ", ".join(reversed(question.letters))
        wanted = f"Answer with the letters in order, in quotes, like '{example}'."
    elif sign(question.unit):
        wanted = f"Answer in {sign(question.unit)}, as a number; or with the unit you like, as a text."
    else:
        wanted = "Answer with a plain number."
    return Said(f"{shown(question, code)}\n{wanted}")


def hint(question, n=1, code=None):
    """Give one hint: the two general ones first, then the working line by line, all but its last.

    Parameters
    ----------
    question : Question
        The question [-].
    n : int
        Which hint, from 1 [-].
    code : str, optional
        Student code [-].

    Returns
    -------
    Said
        Shown by the notebook [-].

    Raises
    ------
    ValueError
        When n is not a whole number from 1.

    Examples
    --------
    >>> from shop_calc.lesson.question import Question
    >>> q = Question("q", "", lambda: 1.0, "length", "ft", hints=("Walk round it.", "Count the ends."))
    >>> hint(q, 2)
    Hint 2: Count the ends.
    >>> hint(q, 3)
    There are 2 hints; the next step is the solution notebook.

    References
    ----------
    Common practice, no source.
    """
    if isinstance(n, bool) or not isinstance(n, int) or n < 1:
        raise ValueError(f"hint: {n!r} given; it must be a whole number from 1")
    steps = _steps(question, code)[:-1]
    hints = [*question.hints, *(_line(step) for step in steps)]
    if n > len(hints):
        return Said(f"There are {len(hints)} hints; the next step is the solution notebook.")
    return Said(f"Hint {n}: {hints[n - 1]}")


def solution(question, code=None):
    """Give the right answer, as a student would type it.

    For the solution notebooks and the tests, not for a lesson.

    Parameters
    ----------
    question : Question
        The question [-].
    code : str, optional
        Student code [-].

    Returns
    -------
    float or str
        A number in the asked unit, a letter, or letters in order [asked unit].

    Examples
    --------
    >>> from shop_calc.lesson.question import Question
    >>> solution(Question("q", "", lambda: 0.6096, "length", "ft", hints=("x", "y")))
    2.0

    References
    ----------
    Common practice, no source.
    """
    _, given = numbers_for(question, code)
    right = question.answer(**given)
    letter = dict(zip(question.choices, question.letters, strict=True))
    if question.kind == "choice":
        return letter[right]
    if question.kind == "order":
        return ", ".join(letter[word] for word in right)
    return float(f"{question.asked(right):.4g}")


def worked(question, code=None):
    """Show the working line by line, with the numbers of this student.

    Parameters
    ----------
    question : Question
        The question [-].
    code : str, optional
        Student code [-].

    Returns
    -------
    Said
        Shown by the notebook [-].

    Examples
    --------
    >>> from shop_calc.lesson.question import Question
    >>> worked(Question("q", "", lambda: 0.6096, "length", "ft", hints=("x", "y")))
    Answer: 2 ft

    References
    ----------
    Common practice, no source.
    """
    right = solution(question, code)
    if question.kind in WORD_KINDS:
        words = dict(zip(question.letters, question.choices, strict=True))
        picked = "; ".join(f"{letter}, {words[letter]}" for letter in right.split(", "))
        return Said(f"Answer: {picked}")
    lines = [_line(step) for step in _steps(question, code)]
    return Said("\n".join([*lines, f"Answer: {right:g} {sign(question.unit)}".strip()]))


def _steps(question, code):
    if question.working is None:
        return ()
    _, given = numbers_for(question, code)
    return tuple(question.working(**given))


def _line(step):
    """One line of working: what it is, the formula, the numbers in it, the result."""
    put_in = ", ".join(f"{name} = {_number(value)} {sign(unit)}".strip() for name, value, unit in step.inputs)
    said = f"{step.words or step.name.replace('_', ' ')}: {step.symbol} = {step.formula}"
    result = f"{_number(step.value)} {sign(step.unit)}".strip()
    return f"{said} = {result}{_in_us(step)}" + (f", with {put_in}" if put_in else "")


def _in_us(step):
    """The same in US units, where a shop reads it otherwise."""
    kind = next((kind for kind in units.KINDS.values() if kind.si_unit == step.unit != "-"), None)
    if kind is None or not isinstance(step.value, (int, float)):
        return ""
    us = units.show(step.value, kind, "us")
    return f" ({us})" if us != units.show(step.value, kind, "si") else ""


def _number(value):
    return f"{value:.4g}" if isinstance(value, (int, float)) else str(value)


class Practice:
    """The questions of one lesson, with the student's code.

    The questions stand in a module `shop_calc.lesson.questions.<name>` as `QUESTIONS`.

    Parameters
    ----------
    name : str
        Name of that module [-].
    code : str, optional
        Student code, the same in every lesson; without one the printed numbers [-].
    """

    def __init__(self, name, code=None):
        if not name.isidentifier():
            raise ValueError(f"practice: {name!r} given; it must be the name of a lesson's questions")
        module = import_module(f"shop_calc.lesson.questions.{name}")
        self.code, self._questions = code, {question.id: question for question in module.QUESTIONS}

    def __getitem__(self, id):
        try:
            return self._questions[id]
        except KeyError:
            raise ValueError(f"question: {id!r} given; there are {', '.join(self._questions)}") from None

    def ask(self, id):
        """Show a question."""
        return ask(self[id], self.code)

    def check(self, id, answer):
        """Look at an answer; the outcome is shown and never an error."""
        return check(self[id], answer, self.code)

    def hint(self, id, n=1):
        """Give hint n."""
        return hint(self[id], n, self.code)

    def worked(self, id):
        """Show the working, for the solution notebook."""
        return worked(self[id], self.code)

    def solution(self, id):
        """The right answer as a student would type it, for the solution notebook."""
        return solution(self[id], self.code)
