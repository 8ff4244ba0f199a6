"""Practice: every kind of answer has its own outcome; the right one is never given away."""

import math
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from practice_samples import ALL, CODES, COVER, HINTS, ORDER, VOLUME, WARM

from shop_calc.lesson import slips
from shop_calc.lesson.check import Kind, check
from shop_calc.lesson.draw import draw
from shop_calc.lesson.practice import Practice, ask, hint, solution, worked
from shop_calc.lesson.wording import shown, typed


@pytest.mark.parametrize("code", CODES)
@pytest.mark.parametrize("question", ALL, ids=lambda q: q.id)
def test_right_each_slip_blank_and_nonsense_have_their_outcomes(question, code):
    assert check(question, solution(question, code), code).kind is Kind.RIGHT
    drawn = draw(question, code)
    for slip, value in drawn.slips:
        outcome = check(question, typed(question, drawn, value), code)
        assert outcome.kind is Kind.SLIP and slip.hint in outcome.text
    for blank in (None, ..., "", "  ", "...", "___", "?"):
        assert check(question, blank, code).kind is Kind.BLANK
    for nonsense in (
        "a lot",
        "12 bananas",
        object(),
        {},
        float("nan"),
        math.inf,
        True,
        "import os",
        "__import__('os')",
    ):
        assert check(question, nonsense, code).kind is Kind.UNREADABLE


@pytest.mark.parametrize("factor", [0.981, 1.019])
def test_two_percent_off_is_still_right(factor):
    assert check(VOLUME, solution(VOLUME) * factor).kind is Kind.RIGHT


@pytest.mark.parametrize("factor", [0.97, 1.03])
def test_three_percent_off_is_not(factor):
    assert check(VOLUME, solution(VOLUME) * factor).kind is Kind.NOT_YET


def test_the_right_answer_is_the_one_by_hand():
    # 60 x 15 x 1.5 in is 1350 in3, a tenth more is 1485 in3, over 1728
    assert solution(VOLUME) == pytest.approx(1485 / 1728, abs=5e-5)
    # (0.22*50*80 + 8*40)/(0.22*50 + 8)
    assert solution(WARM) == pytest.approx(1200 / 19, abs=5e-3)


@pytest.mark.parametrize(
    "answer",
    [
        "1485 in3",
        "0.859 ft3",
        "24.33 L",
        "0.02433 m3",
        "0.859",
        " .859 ",
        0.859,
        np.float64(0.859),
        Fraction(859, 1000),
    ],
)
def test_a_text_with_its_unit_and_any_sort_of_number_are_read(answer):
    assert check(VOLUME, answer).kind is Kind.RIGHT


@pytest.mark.parametrize(("answer", "unit"), [(1485, "in³"), (24.33, "L"), ("24.33", "L"), (0.0318, "yd³")])
def test_a_bare_number_right_in_another_unit_is_told_so_and_not_counted(answer, unit):
    outcome = check(VOLUME, answer)
    assert outcome.kind is Kind.OTHER_UNIT and unit in outcome.text and "ft³" in outcome.text


def test_celsius_for_fahrenheit_is_another_unit():
    assert check(WARM, (1200 / 19 - 32) / 1.8).kind is Kind.OTHER_UNIT


def test_a_unit_of_another_kind_cannot_be_read_and_the_message_says_so():
    outcome = check(VOLUME, "24 lb")
    assert outcome.kind is Kind.UNREADABLE and "lb" in outcome.text


@pytest.mark.parametrize(
    "answer", ["b", "B", " b) ", "(b)", "b.", "damp fabric under plastic", "Damp  Fabric under plastic"]
)
def test_a_choice_is_read_by_letter_or_by_words(answer):
    assert check(COVER, answer).kind is Kind.RIGHT


@pytest.mark.parametrize(
    "answer",
    [
        "c, a, b",
        "cab",
        "c a b",
        "C > A > B",
        ["c", "a", "b"],
        ("screed", "float", "steel"),
        "screed, float, steel",
    ],
)
def test_an_order_is_read_as_letters_or_words(answer):
    assert check(ORDER, answer).kind is Kind.RIGHT


@pytest.mark.parametrize("answer", ["c, a", "c, a, a", ["c"], 3, "c, a, b, b"])
def test_an_order_wants_each_once(answer):
    assert check(ORDER, answer).kind is Kind.UNREADABLE


def test_a_wrong_order_without_a_slip_is_not_yet():
    assert check(ORDER, "a, b, c").kind is Kind.NOT_YET


@pytest.mark.parametrize("question", ALL, ids=lambda q: q.id)
def test_no_failure_gives_the_answer_away(question):
    right = str(solution(question))
    for answer in (None, "nonsense", 1e9, 0.001, -5, "z", "a", "c", ["b", "a", "c"], 1485, 24.33):
        outcome = check(question, answer)
        if outcome.kind is not Kind.RIGHT:
            assert right not in outcome.text or question.kind == "choice"
            assert "damp fabric" not in outcome.text and "screed, float" not in outcome.text


@given(
    st.one_of(
        st.text(max_size=30), st.floats(), st.integers(), st.lists(st.text(max_size=3), max_size=4), st.none()
    )
)
def test_whatever_is_typed_there_is_an_outcome_and_no_error(answer):
    for question in ALL:
        outcome = check(question, answer)
        assert outcome.kind in Kind and outcome.text


def test_an_outcome_shows_what_was_typed_as_text():
    outcome = check(VOLUME, "<script>alert(1)</script> ft3")
    bundle = outcome._repr_mimebundle_()
    assert "<script>" not in bundle["text/html"]
    assert bundle["text/plain"] == repr(outcome)


def test_outcomes_differ_by_sign_and_words_and_not_by_colour_alone():
    seen = {repr(check(VOLUME, answer)) for answer in (0.859, 1485, solution(VOLUME) / 1.1, 7, None, "x")}
    assert len(seen) == 6


def test_the_question_shows_numbers_choices_and_the_unit_wanted():
    text = str(ask(VOLUME))
    assert "60 in long, 15 in wide, 1.5 in thick, with 10 % more" in text and "Answer in ft³" in text
    assert "  b  damp fabric under plastic" in shown(COVER) and "letter" in str(ask(COVER))
    assert "80 °F" in shown(WARM)
    page = ask(VOLUME)._repr_mimebundle_()
    assert page["text/plain"] == text


def test_hints_go_from_general_to_the_working_and_stop_before_the_answer():
    assert [str(hint(VOLUME, n)) for n in (1, 2)] == [f"Hint 1: {HINTS[0]}", f"Hint 2: {HINTS[1]}"]
    third, fourth = str(hint(VOLUME, 3)), str(hint(VOLUME, 4))
    assert "l × w × t" in third and "(1 + a)" not in third
    assert "There are 3 hints" in fourth
    for wrong in (0, -1, True, 1.5, "1"):
        with pytest.raises(ValueError, match="whole number"):
            hint(VOLUME, wrong)


def test_the_working_shows_this_student_s_numbers_line_by_line():
    # drawn for this code: 48 x 14 x 1.25 in, a quarter more
    assert str(worked(VOLUME, "mar7")).splitlines() == [
        "1. net volume: V = l × w × t",
        "   with l = 48 in, w = 14 in, t = 1.25 in",
        "   V = 48 × 14 × 1.25 = 840 in³ (0.4861 ft³)",
        "2. volume m3: V_a = V × (1 + a)",
        "   with V = 840 in³, a = 25 % (0.25)",
        "   V_a = 840 × (1 + 0.25) = 1050 in³ (0.6076 ft³)",
        "Answer: 0.6076 ft³",
    ]
    assert str(worked(ORDER)) == "Answer: c (screed); a (float); b (steel)"


def test_a_choice_is_worked_by_saying_why_the_others_are_not_it():
    assert str(worked(COVER)).splitlines() == [
        "Answer: b, damp fabric under plastic",
        "Not a: What does the wind take?",
        "Not c: Where do the drops run?",
    ]


def test_a_lesson_s_questions_are_found_by_name_and_a_wrong_name_is_refused(monkeypatch, work_folder):
    import sys
    import types

    module = types.ModuleType("shop_calc.lesson.questions.made_up")
    module.QUESTIONS = ALL
    monkeypatch.setitem(sys.modules, module.__name__, module)
    practice = Practice("made_up", code="mar 7")
    assert practice.check("volume", practice.solution("volume")).kind is Kind.RIGHT
    assert "48 in" in str(practice.ask("volume"))
    assert str(practice.hint("volume", 1)).startswith("Hint 1") and "Answer" in str(practice.worked("volume"))
    with pytest.raises(ValueError, match="volume, warm"):
        practice.check("no_such", 1)
    with pytest.raises(ValueError, match="name"):
        Practice("../secret")
    with pytest.raises(ValueError, match="start_here"):
        Practice("no_such_lesson")


@pytest.mark.parametrize(
    "slip",
    [each.slip for each in slips.CABINET]
    + [slips.by(lambda: 1.0, "one", "Look."), slips.times(2.0, "twice", "Look."), slips.word("open", "Look."),
       slips.with_number(lambda numbers: {}, "none", "Look.")],
    ids=lambda slip: slip.name,
)  # fmt: skip
def test_every_slip_has_a_name_and_a_hint_that_ends_as_a_sentence(slip):
    assert slip.name and slip.hint.rstrip()[-1] in "?."


def test_an_answer_that_no_slip_explains_is_told_how_to_ask_for_a_hint():
    said = repr(Practice("strip_move_support", keep=False).check("plank", 1.0))
    assert 'practice.hint("plank")' in said


def test_sides_left_on_until_the_last_steel_earn_their_own_hint():
    late = ("spread the face", "screed", "first float", "first steel", "last steel", "sides off", "patch the edges", "cover")
    said = repr(Practice("practice_pour", keep=False).check("order", late))
    assert "can an edge still be patched" in said
