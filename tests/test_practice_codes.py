"""A class of two hundred: every question of every lesson, with the numbers of each student, and the cost of it."""

import pytest

from shop_calc.lesson.banks import banked_lessons
from shop_calc.lesson.check import Kind, judge
from shop_calc.lesson.draw import clean_code, draw
from shop_calc.lesson.margins import margin
from shop_calc.lesson.question import WORD_KINDS
from shop_calc.lesson.wording import shown_with, typed

CODES = [f"bench {k}" for k in range(200)]
EACH = [
    pytest.param(question, id=f"{each.name}.{question.id}") for each in banked_lessons() for question in each.questions
]


@pytest.fixture(scope="module")
def drawn():
    """Each question is drawn once for every code and then shared by the tests."""
    kept = {}

    def get(question):
        if id(question) not in kept:
            kept[id(question)] = [draw(question, code) for code in CODES]
        return kept[id(question)]

    return get


@pytest.mark.parametrize("question", EACH)
def test_two_hundred_students_right_is_accepted_and_each_slip_earns_its_own_hint(question, drawn):
    assert len(set(map(clean_code, CODES))) == 200
    for each in drawn(question):
        assert judge(question, each, typed(question, each, each.right)).kind is Kind.RIGHT
        for slip, value in each.slips:
            outcome = judge(question, each, typed(question, each, value))
            assert outcome.kind is Kind.SLIP and outcome.text == f"Not yet. {slip.hint}", slip.name


@pytest.mark.parametrize("question", EACH)
def test_no_slip_lies_within_the_margin_of_the_answer_or_of_another_slip(question, drawn):
    for each in drawn(question):
        values = [each.right, *(value for _, value in each.slips)]
        if question.kind in WORD_KINDS:
            assert len(set(values)) == len(values)
            continue
        for k, one in enumerate(values):
            for other in values[k + 1 :]:
                assert abs(one - other) > margin(question, one) and abs(one - other) > margin(question, other)


@pytest.mark.parametrize("question", EACH)
def test_blank_and_nonsense_have_their_outcome_for_everybody(question, drawn):
    for each in drawn(question)[:20]:
        for nonsense in ("seven bananas", object(), float("nan"), True, "__import__('os')"):
            assert judge(question, each, nonsense).kind is Kind.UNREADABLE
        assert "{" not in shown_with(question, each)


@pytest.mark.parametrize("question", EACH)
def test_numbers_are_drawn_from_their_grid_and_differ_from_student_to_student(question, drawn):
    for each in drawn(question):
        for number in question.numbers:
            drawn_here = each.printed[number.name]
            place = (drawn_here - number.low) / number.step
            assert place == pytest.approx(round(place), abs=1e-6) and number.low <= drawn_here <= number.high
    pages = {shown_with(question, each) for each in drawn(question)}
    assert len(pages) > 1
