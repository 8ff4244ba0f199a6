"""Every question of every lesson: right, each foreseen slip, blank, nonsense; with and without a code."""

import importlib
import pkgutil

import pytest

from shop_calc.lesson import questions
from shop_calc.lesson.check import Kind, check
from shop_calc.lesson.draw import numbers_for, shown, slip_values
from shop_calc.lesson.practice import hint, solution, worked

BANKS = {
    info.name: importlib.import_module(f"{questions.__name__}.{info.name}").QUESTIONS
    for info in pkgutil.iter_modules(questions.__path__)
}
EACH = [
    pytest.param(question, id=f"{name}.{question.id}") for name, bank in BANKS.items() for question in bank
]
CODES = (None, "mar 7", "lab 3", "A-113")


def as_typed(question, value):
    letters = dict(zip(question.choices, question.letters, strict=True))
    if question.kind == "choice":
        return letters[value]
    return [letters[word] for word in value] if question.kind == "order" else question.asked(value)


@pytest.mark.parametrize("name", BANKS)
def test_ids_are_unique_in_a_lesson(name):
    ids = [question.id for question in BANKS[name]]
    assert len(ids) == len(set(ids))


@pytest.mark.parametrize("code", CODES)
@pytest.mark.parametrize("question", EACH)
def test_right_slips_blank_and_nonsense(question, code):
    assert check(question, solution(question, code), code).kind is Kind.RIGHT
    _, numbers = numbers_for(question, code)
    for slip, value in slip_values(question, numbers):
        outcome = check(question, as_typed(question, value), code)
        assert outcome.kind is Kind.SLIP and slip.hint in outcome.text, slip.name
    assert check(question, ..., code).kind is Kind.BLANK
    assert check(question, "seven bananas", code).kind is Kind.UNREADABLE


@pytest.mark.parametrize("question", EACH)
def test_each_question_foresees_a_slip_and_its_hints_differ(question):
    assert question.slips and len(set(question.hints)) == len(question.hints)


@pytest.mark.parametrize("question", EACH)
def test_question_hints_and_working_can_be_shown(question):
    assert "{" not in shown(question) and "Answer" in str(worked(question, "mar 7"))
    assert all(str(hint(question, n, "mar 7")) for n in range(1, 9))


@pytest.mark.parametrize("question", EACH)
def test_the_working_ends_at_the_answer(question):
    if question.working is None:
        pytest.skip("no working given")
    _, numbers = numbers_for(question)
    assert question.working(**numbers)[-1].value == pytest.approx(question.answer(**numbers), rel=1e-9)
