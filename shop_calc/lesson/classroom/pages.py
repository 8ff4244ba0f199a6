"""The printed pages of a class: the key of a lesson, and a question sheet for each student."""

import re
from functools import cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from shop_calc.lesson.page import sign
from shop_calc.lesson.question import WORD_KINDS
from shop_calc.lesson.wording import shown_with

_TIED = re.compile(r"(?<=\d) (?=[A-Za-z°%µ])")  # a number and its unit stay on one line
_FOLDER = Path(__file__).parent


@cache
def _template(name):
    # autoescape: a name or a code never becomes part of the page's own code
    tidy = {"trim_blocks": True, "lstrip_blocks": True}
    found = Environment(loader=FileSystemLoader(_FOLDER), autoescape=True, undefined=StrictUndefined, **tidy)
    return found.get_template(name)


def _asked(question):
    """What stands beside the blank on paper."""
    if question.kind == "choice":
        return "letter"
    return "letters in order" if question.kind == "order" else sign(question.unit)


def _tolerance(question):
    if question.kind in WORD_KINDS:
        return ""
    if question.within:
        return f"± {question.within:g} {sign(question.unit)}"
    return f"± {100 * question.tolerance:g} %"


def key_page(each, students):
    """Print the key of one lesson: a row for each student, a column for each question.

    Parameters
    ----------
    each : Banked
        The lesson [-].
    students : list of list of KeyLine
        Its part of an answer key [-].

    Returns
    -------
    str
        A page of HTML that prints on paper laid across [-].

    Examples
    --------
    >>> from shop_calc.lesson.banks import banked_lessons
    >>> from shop_calc.lesson.classroom import answer_key, roster
    >>> lesson = banked_lessons()[0]
    >>> "&lt;b&gt;" in key_page(lesson, answer_key(roster([("<b>", "")]), [lesson])[lesson.stem])
    True

    References
    ----------
    Common practice, no source.
    """
    columns = [
        {"number": number, "name": q.id.replace("_", " "), "asked": _asked(q), "off": _tolerance(q)}
        for number, q in enumerate(each.questions, 1)
    ]
    rows = [
        {"student": lines[0].student, "answers": [_cell(line.answer) for line in lines]} for lines in students if lines
    ]
    return _template("key.html.j2").render(lesson=each.lesson, columns=columns, rows=rows)


def _cell(answer):
    return f"{answer:g}" if isinstance(answer, float) else answer


def question_sheets(each, students):
    """Print the questions of one lesson, a sheet for each student with that student's numbers.

    Parameters
    ----------
    each : Banked
        The lesson [-].
    students : list of list of KeyLine
        Its part of an answer key [-].

    Returns
    -------
    str
        A page of HTML; each student starts on a new sheet of paper [-].

    Examples
    --------
    >>> from shop_calc.lesson.banks import banked_lessons
    >>> from shop_calc.lesson.classroom import answer_key, roster
    >>> lesson = banked_lessons()[0]
    >>> "A practice tile is" in question_sheets(lesson, answer_key(roster([("bench 1", "")]), [lesson])[lesson.stem])
    True

    References
    ----------
    Common practice, no source.
    """
    sheets = [
        {
            "student": lines[0].student,
            "questions": [_question(line) for line in lines],
        }
        for lines in students
        if lines
    ]
    return _template("sheets.html.j2").render(lesson=each.lesson, sheets=sheets)


def _question(line):
    text = _TIED.sub("\u00a0", shown_with(line.question, line.drawn))
    first, *others = text.split("\n")
    return {"first": first, "others": "\n".join(others), "asked": _asked(line.question)}
