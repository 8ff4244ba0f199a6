"""Practice as a lesson uses it: show a question, check an answer, ask for a hint, see it worked."""

from dataclasses import replace

from shop_calc.lesson import progress
from shop_calc.lesson.banks import bank
from shop_calc.lesson.check import Kind, Outcome, check
from shop_calc.lesson.draw import draw
from shop_calc.lesson.said import Said
from shop_calc.lesson.wording import how_typed, shown, typed, wanted
from shop_calc.lesson.working_text import step_texts, worked_text

__all__ = ["Kind", "Outcome", "Practice", "Said", "ask", "check", "hint", "solution", "worked"]


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
    return Said(f"{shown(question, code)}\n{wanted(question)}", how_typed(question))


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
    There are 2 hints. practice.worked("q") shows all of the working.

    References
    ----------
    Common practice, no source.
    """
    if isinstance(n, bool) or not isinstance(n, int) or n < 1:
        raise ValueError(f"hint: {n!r} given; it must be a whole number from 1")
    hints = [*question.hints, *step_texts(question, draw(question, code))[:-1]]
    if n > len(hints):
        return Said(f'There are {len(hints)} hints. practice.worked("{question.id}") shows all of the working.')
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
    drawn = draw(question, code)
    return typed(question, drawn, drawn.right)


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
    return Said(worked_text(question, code))


class Practice:
    """The questions of one lesson, with the student's code.

    The questions stand in a module `shop_calc.lesson.questions.<name>` as `QUESTIONS`.

    Parameters
    ----------
    name : str
        Name of that module [-].
    code : str, optional
        Student code, the same in every lesson; without one the printed numbers [-].
    keep : bool
        Whether right answers are noted in the student's folder, for the view of `progress` [-].
    """

    def __init__(self, name, code=None, keep=True):
        self.name, self.code, self._keep = name, code, keep
        self._questions = {question.id: question for question in bank(name)}

    def __getitem__(self, id):
        try:
            return self._questions[id]
        except KeyError:
            raise ValueError(f"question: {id!r} given; there are {', '.join(self._questions)}") from None

    def ask(self, id):
        """Show a question."""
        return ask(self[id], self.code)

    def check(self, id, answer):
        """Look at an answer; the outcome is shown and never an error. A right one is noted."""
        outcome = check(self[id], answer, self.code)
        if outcome.kind is Kind.RIGHT and self._keep:
            return replace(outcome, text=f"{outcome.text} {progress.keep(self.name, id, self.code)}".rstrip())
        return outcome

    def hint(self, id, n=1):
        """Give hint n."""
        return hint(self[id], n, self.code)

    def worked(self, id):
        """Show the working, for the solution notebook."""
        return worked(self[id], self.code)

    def solution(self, id):
        """The right answer as a student would type it, for the solution notebook."""
        return solution(self[id], self.code)
