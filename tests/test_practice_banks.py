"""Every question of every lesson: right, each foreseen slip, blank, nonsense; with and without a code."""

import json
import re

import pytest

from shop_calc.lesson.banks import bank, bank_names, banked_lessons
from shop_calc.lesson.check import Kind, check
from shop_calc.lesson.copies import lessons_folder
from shop_calc.lesson.draw import draw, numbers_for
from shop_calc.lesson.formula import faulty_lines
from shop_calc.lesson.outline import source
from shop_calc.lesson.practice import hint, solution, worked
from shop_calc.lesson.question import WORD_KINDS
from shop_calc.lesson.wording import shown, typed
from shop_calc.lesson.working_text import steps_of

BANKS = {name: bank(name) for name in bank_names()}
EACH = [
    pytest.param(question, id=f"{name}.{question.id}") for name, bank in BANKS.items() for question in bank
]
CODES = (None, "mar 7", "lab 3", "A-113")


@pytest.mark.parametrize("name", BANKS)
def test_ids_are_unique_in_a_lesson(name):
    ids = [question.id for question in BANKS[name]]
    assert len(ids) == len(set(ids))


@pytest.mark.parametrize("question", EACH)
def test_right_slips_blank_and_nonsense(question):
    for code in CODES:
        assert check(question, solution(question, code), code).kind is Kind.RIGHT, code
        drawn = draw(question, code)
        for slip, value in drawn.slips:
            outcome = check(question, typed(question, drawn, value), code)
            assert outcome.kind is Kind.SLIP and slip.hint in outcome.text, (slip.name, code)
        assert check(question, ..., code).kind is Kind.BLANK
        assert check(question, "seven bananas", code).kind is Kind.UNREADABLE


@pytest.mark.parametrize("question", EACH)
def test_each_question_foresees_a_slip_and_its_hints_differ(question):
    assert question.slips and len(set(question.hints)) == len(question.hints)


@pytest.mark.parametrize("question", EACH)
def test_question_hints_and_working_can_be_shown(question):
    assert "{" not in shown(question) and "Answer" in str(worked(question, "mar 7"))
    assert all(str(hint(question, n, "mar 7")) for n in range(1, 9))


WORKED = [each for each in EACH if each.values[0].working and each.values[0].kind not in WORD_KINDS]


@pytest.mark.parametrize("question", WORKED)
def test_the_working_ends_at_the_answer(question):
    for code in CODES:
        _, numbers = numbers_for(question, code)
        assert question.working(**numbers)[-1].value == pytest.approx(question.answer(**numbers), rel=1e-9)


@pytest.mark.parametrize("question", EACH)
def test_every_line_of_the_working_comes_out(question):
    for code in CODES:
        assert faulty_lines(steps_of(question, draw(question, code))) == [], code


@pytest.mark.parametrize("each", banked_lessons(), ids=lambda each: each.stem)
def test_every_question_is_asked_and_its_answer_looked_at_in_its_lesson(each):
    cells = json.loads((lessons_folder() / each.lesson.file).read_text(encoding="utf-8"))["cells"]
    code = "\n".join(source(cell) for cell in cells if cell["cell_type"] == "code")
    for what in ("ask", "check"):
        named = re.findall(rf"practice\.{what}\(\s*['\"](\w+)['\"]", code)
        wanted = [question.id for question in each.questions]
        assert named == wanted, f"each of QUESTIONS, in its order, needs `practice.{what}` in {each.lesson.file}"
    for text in map(source, cells):
        for id, answer in re.findall(r"practice\.check\(\s*['\"](\w+)['\"],\s*(\w+)\)", text):
            assert re.search(rf"^{answer} = \.\.\.(\s+#.*)?$", text, re.MULTILINE), id  # blank as shipped, in the same cell
