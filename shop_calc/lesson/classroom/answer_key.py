"""Every question with every student's numbers: the right answer, what is accepted, and what a known slip gives."""

import csv
import io
from dataclasses import dataclass

from shop_calc.lesson.draw import draw
from shop_calc.lesson.margins import margin
from shop_calc.lesson.page import sign
from shop_calc.lesson.question import WORD_KINDS
from shop_calc.lesson.wording import typed

# What a spreadsheet would take for a formula, in the wide letters of a Japanese keyboard too.
_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
HEADER = (
    "code", "name", "lesson", "number", "question", "answer", "unit", "accepted from", "accepted to", "known slips",
)  # fmt: skip


@dataclass(frozen=True)
class KeyLine:
    """One question of one student.

    Parameters
    ----------
    student : Student
        Whose numbers [-].
    question : Question
        The question [-].
    drawn : Drawn
        Numbers, right answer, slips [as its fields].

    Examples
    --------
    >>> from shop_calc.lesson.banks import bank
    >>> from shop_calc.lesson.classroom.roster import Student
    >>> tile = bank("start_here")[0]
    >>> KeyLine(Student("bench 1"), tile, draw(tile)).answer
    216.0

    References
    ----------
    Common practice, no source.
    """

    student: object
    question: object
    drawn: object

    @property
    def answer(self):
        """As the student would type it."""
        return typed(self.question, self.drawn, self.drawn.right)

    @property
    def unit(self):
        """Unit of the answer as people read it; empty for words."""
        return "" if self.question.kind in WORD_KINDS else sign(self.question.unit)

    @property
    def accepted(self):
        """Least and largest number that is accepted, in the unit of the answer; nothing for words."""
        if self.question.kind in WORD_KINDS:
            return ()
        off = margin(self.question, self.drawn.right)
        return tuple(float(f"{self.question.asked(self.drawn.right + way * off):.6g}") for way in (-1, 1))

    @property
    def known_slips(self):
        """Each foreseen slip with what it gives."""
        if self.question.kind == "order":
            return "; ".join(typed(self.question, self.drawn, value) for _, value in self.drawn.slips)
        return "; ".join(
            f"{slip.name}: {_shown(typed(self.question, self.drawn, value))}" for slip, value in self.drawn.slips
        )


def _shown(answer):
    return f"{answer:g}" if isinstance(answer, float) else answer


def answer_key(students, lessons):
    """Work every question with the numbers of every student.

    Parameters
    ----------
    students : sequence of Student
        The class [-].
    lessons : sequence of Banked
        Lessons with their questions [-].

    Returns
    -------
    dict of str to list of list of KeyLine
        By the name of the lesson's file: a list for each student, in the order of the questions [-].

    Examples
    --------
    >>> from shop_calc.lesson.banks import banked_lessons
    >>> from shop_calc.lesson.classroom.roster import roster
    >>> key = answer_key(roster([("bench 1", "")]), banked_lessons()[:1])
    >>> [line.question.id for line in key["00_start_here"][0]]
    ['tile', 'who_decides']

    References
    ----------
    Common practice, no source.
    """
    return {
        each.stem: [
            [KeyLine(student, question, draw(question, student.code)) for question in each.questions]
            for student in students
        ]
        for each in lessons
    }


def harmless(cell):
    """Write a text for a spreadsheet so that it stays a text.

    Parameters
    ----------
    cell : str
        What stands in the cell [-].

    Returns
    -------
    str
        The same; with an apostrophe before it where a spreadsheet would take it for a formula [-].

    Examples
    --------
    >>> harmless("=2+5"), harmless(" -1"), harmless("bench 1")
    ("'=2+5", "' -1", 'bench 1')

    References
    ----------
    Common practice, no source.
    """
    return f"'{cell}" if cell.lstrip(" \xa0").startswith(_FORMULA) else cell


def key_csv(key):
    """Write the key for a spreadsheet, one row for each question of each student.

    Parameters
    ----------
    key : dict
        As `answer_key` gives it [-].

    Returns
    -------
    str
        CSV; what a spreadsheet could take for a formula is neutralised [-].

    Examples
    --------
    >>> from shop_calc.lesson.banks import banked_lessons
    >>> from shop_calc.lesson.classroom.roster import roster
    >>> print(key_csv(answer_key(roster([("=1+1", "")]), banked_lessons()[:1])).splitlines()[1][:27])
    '=1+1,,00_start_here,1,tile

    References
    ----------
    Common practice, no source.
    """
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(HEADER)
    for lesson, students in key.items():
        for lines in students:
            for number, line in enumerate(lines, 1):
                low, high = line.accepted or ("", "")
                answer = line.answer if isinstance(line.answer, float) else harmless(line.answer)
                texts = (harmless(text) for text in (line.student.code, line.student.name, lesson))
                tail = (answer, line.unit, low, high, harmless(line.known_slips))
                writer.writerow((*texts, number, line.question.id, *tail))
    return out.getvalue()
