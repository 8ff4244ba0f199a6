"""Looking at an answer: what it is, said without ever giving the right one away."""

import math
import numbers as number_types
import re
from dataclasses import dataclass
from enum import Enum

from shop_calc import units
from shop_calc.lesson.draw import draw
from shop_calc.lesson.margins import same
from shop_calc.lesson.page import escaped, sign
from shop_calc.lesson.question import OTHER_UNITS, WORD_KINDS


class Kind(Enum):
    """What came of an answer; compared by identity, never by its words."""

    RIGHT = "right"
    OTHER_UNIT = "right amount, other unit"
    SLIP = "not yet, and a slip we know"
    NOT_YET = "not yet"
    BLANK = "not answered yet"
    UNREADABLE = "cannot be read"


# A sign besides the colour; the colours pass 3:1 on white and on the dark page.
_LOOK = {
    Kind.RIGHT: ("✓", "#009E73"),
    Kind.OTHER_UNIT: ("⇄", "#3D8BC4"),
    Kind.SLIP: ("↻", "#D55E00"),
    Kind.NOT_YET: ("↻", "#D55E00"),
    Kind.BLANK: ("…", "#8A8F96"),
    Kind.UNREADABLE: ("?", "#8A8F96"),
}


@dataclass(frozen=True)
class Outcome:
    """What came of an answer, and what is said about it.

    Parameters
    ----------
    kind : Kind
        One of six [-].
    text : str
        Said to the student; shown escaped [-].

    Examples
    --------
    >>> Outcome(Kind.RIGHT, "Right.")
    ✓ Right.

    References
    ----------
    Common practice, no source.
    """

    kind: Kind
    text: str

    def __repr__(self):
        return f"{_LOOK[self.kind][0]} {self.text}"

    def _repr_mimebundle_(self, include=None, exclude=None):
        mark, colour = _LOOK[self.kind]
        page = (
            f'<div role="status" style="border-left:5px solid {colour};padding:4px 0 4px 12px;margin:4px 0">'
            f'<span aria-hidden="true" style="font-weight:700">{mark}</span> {escaped(self.text)}</div>'
        )
        return {"text/html": page, "text/plain": repr(self)}


class _Unreadable(Exception):
    """Why an answer could not be read, in words for the student."""


def _blank(answer):
    if answer is None or answer is Ellipsis:
        return True
    return isinstance(answer, str) and answer.strip(" .…_?") == ""


def _read_number(question, answer):
    """The answer in SI, and whether it came without a unit."""
    if isinstance(answer, bool):
        raise _Unreadable("A yes or no cannot be read here; a number is asked for.")
    if isinstance(answer, str):
        bare = answer.strip().replace("−", "-")
        if re.fullmatch(r"[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?", bare, re.IGNORECASE):
            answer = float(bare)
        else:
            return _read_text(question, answer)
    if isinstance(answer, tuple):
        raise _Unreadable("A comma makes several numbers of it; write one, without a comma.")
    try:
        value = float(answer)
    except (TypeError, ValueError, OverflowError):
        raise _Unreadable(f"This cannot be read; give one number, in {_ask(question)}.") from None
    if not math.isfinite(value):
        raise _Unreadable(f"This is not a number one can weigh or measure; give one in {_ask(question)}.")
    return question.inside(value), value


def _read_text(question, answer):
    if re.fullmatch(r"[\d\s/½¼¾⅓⅔⅛⅜⅝⅞-]+", answer):  # as on a tape: 2 3/4, in the unit asked
        try:
            bare = float(units.parse(answer, "number", entry="answer"))
            return question.inside(bare), bare
        except ValueError as error:
            raise _Unreadable(f"This cannot be read: {error}") from None
    if question.unit in ("", "-"):
        raise _Unreadable("This cannot be read; write a plain number, without a unit.")
    try:
        return float(units.parse(answer, question.kind, entry="answer")), None
    except ValueError as error:
        raise _Unreadable(f"This cannot be read: {error}") from None


def _ask(question):
    return sign(question.unit) or "plain numbers"


def _word(question, choices, answer):
    """The choice meant by a letter or by its words."""
    text = " ".join(str(answer).casefold().replace("(", " ").replace(")", " ").replace(".", " ").split())
    by_letter = dict(zip(question.letters, choices, strict=True))
    by_word = {" ".join(choice.casefold().split()): choice for choice in choices}
    found = by_letter.get(text) or by_word.get(text)
    if found is None:
        raise _Unreadable(f"This is none of the choices; answer with one of the letters {', '.join(by_letter)}.")
    return found


def _read_order(question, choices, answer):
    if isinstance(answer, str):
        parts = [part for part in re.split(r"[,;>\n]+|\s+-+>?\s+", answer) if part.strip()]
        if len(parts) == 1:
            parts = answer.split() if " " in answer.strip() else list(answer.strip())
    elif isinstance(answer, number_types.Number):
        raise _Unreadable("Give the letters in order, for example 'b, a, c'.")
    else:
        try:
            parts = list(answer)
        except TypeError:
            raise _Unreadable("Give the letters in order, for example 'b, a, c'.") from None
    order = tuple(_word(question, choices, part) for part in parts)
    if sorted(order) != sorted(choices):
        raise _Unreadable(f"Each of {', '.join(question.letters)} is wanted once; {len(order)} given.")
    return order


def check(question, answer, code=None):
    """Look at an answer and say what came of it; never an error, never the right answer.

    Parameters
    ----------
    question : Question
        The question [-].
    answer : float, str or sequence
        A number in the asked unit, a text with its unit, a letter or word, or letters in order [-].
    code : str, optional
        Student code that drew the numbers [-].

    Returns
    -------
    Outcome
        Kind and text [-].

    Examples
    --------
    >>> from shop_calc.lesson.question import Question
    >>> q = Question("q", "", lambda: 0.3048, "length", "ft", hints=("x", "y"))
    >>> [check(q, answer).kind.name for answer in (1.01, "12 in", 12, ...)]
    ['RIGHT', 'RIGHT', 'OTHER_UNIT', 'BLANK']

    References
    ----------
    Common practice, no source.
    """
    if _blank(answer):
        return Outcome(Kind.BLANK, "Not answered yet. Put your answer in place of the three dots and run the cell.")
    return judge(question, draw(question, code), answer)


def judge(question, drawn, answer):
    """Look at an answer to a question whose numbers are drawn already.

    Parameters
    ----------
    question : Question
        The question [-].
    drawn : Drawn
        Its numbers, the right answer and what each slip gives [as its fields].
    answer : float, str or sequence
        What was typed; not a blank [-].

    Returns
    -------
    Outcome
        Kind and text [-].

    Examples
    --------
    >>> from shop_calc.lesson.question import Question
    >>> q = Question("q", "", lambda: 0.3048, "length", "ft", hints=("x", "y"))
    >>> judge(q, draw(q), "1 ft")
    ✓ Right.

    References
    ----------
    Common practice, no source.
    """
    bare = None
    try:
        if question.kind == "choice":
            value = _word(question, drawn.choices, answer)
        elif question.kind == "order":
            value = _read_order(question, drawn.choices, answer)
        else:
            value, bare = _read_number(question, answer)
    except _Unreadable as reason:
        return Outcome(Kind.UNREADABLE, str(reason))
    if same(question, value, drawn.right):
        return Outcome(Kind.RIGHT, f"Right. {question.why(drawn.given)}".rstrip())
    for slip, wrong in drawn.slips:
        if same(question, value, wrong):
            return Outcome(Kind.SLIP, f"Not yet. {slip.hint}")
    unit = _other_unit(question, bare, drawn.right)
    if unit:
        return Outcome(
            Kind.OTHER_UNIT,
            f"The amount is right, counted in {unit}; the question asks for {_ask(question)}. "
            "Convert it, or write the unit behind the number.",
        )
    if question.otherwise:
        return Outcome(Kind.NOT_YET, f"Not yet. {question.otherwise(value, **drawn.given)}")
    look = "read each choice once more" if question.kind in WORD_KINDS else "look at the units of each number once more"
    return Outcome(Kind.NOT_YET, f'Not yet. For a hint, run practice.hint("{question.id}") in a new cell, or {look}.')


def _other_unit(question, bare, right):
    """The unit in which a bare number would have been right, or nothing."""
    if bare is None or question.kind in WORD_KINDS:
        return ""
    others = question.others if question.others is not None else OTHER_UNITS.get(question.kind, ())
    for unit in others:
        if unit != question.unit and same(question, question.inside(bare, unit), right):
            return sign(unit) or "parts of one"
    return ""
