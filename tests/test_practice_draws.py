"""Numbers of a student: the same on every machine, on their grid, and never such that a slip hides."""

import math

import pytest
from practice_samples import COVER, HINTS, ORDER, RATIO, VOLUME, WARM

from shop_calc.lesson import slips
from shop_calc.lesson.check import Kind, check
from shop_calc.lesson.draw import clean_code, draw, numbers_for
from shop_calc.lesson.practice import solution
from shop_calc.lesson.question import Number, Question
from shop_calc.lesson.wording import shown


def test_numbers_are_the_same_on_every_machine():
    # written down once: sha256 of code, question, number and attempt
    assert numbers_for(VOLUME, "Mar 7")[0] == numbers_for(VOLUME, "mar7")[0] == {
        "length_m": 48, "width_m": 14, "thickness_m": 1.25, "allowance_fraction": 25
    }  # fmt: skip
    assert numbers_for(VOLUME)[0] == {
        "length_m": 60,
        "width_m": 15,
        "thickness_m": 1.5,
        "allowance_fraction": 10,
    }


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("Mar 7", " mar7 "),
        ("ZOË", "zoe\u0308"),  # one letter, or a letter and two dots
        ("straße", "STRASSE"),
        ("ａ１", "a1"),  # letters of a Japanese keyboard
        ("a\u200bb", "ab"),  # a space that nobody sees
        ("7\ud800", "7"),  # half a sign, as a broken file gives it
        (7, "7"),
        (..., None),
        ("   ", ""),
    ],
)
def test_a_code_has_one_spelling_on_every_keyboard(one, other):
    assert clean_code(one) == clean_code(other)
    assert draw(VOLUME, one) == draw(VOLUME, other)


@pytest.mark.parametrize("code", ["0", 0, "a|b", "🙂", "x" * 10_000, "'; --", "{length_m}", "../../x"])
def test_any_text_is_a_code(code):
    assert check(VOLUME, solution(VOLUME, code), code).kind is Kind.RIGHT and clean_code(code)


def test_choices_and_things_to_order_stand_in_an_order_of_the_student_s_own():
    covers = {draw(COVER, f"code {k}").choices for k in range(60)}
    assert len(covers) == 6 and all(sorted(each) == sorted(COVER.choices) for each in covers)
    orders = {draw(ORDER, f"code {k}").choices for k in range(60)}
    assert len(orders) == 5 and ("screed", "float", "steel") not in orders  # never given away
    assert draw(COVER).choices == COVER.choices
    kept = Question(
        "kept", "", lambda: "1/8 in", "choice", choices=("1/8 in", "1/4 in", "1/2 in"), hints=HINTS, fixed=True
    )
    assert {draw(kept, f"code {k}").choices for k in range(20)} == {kept.choices}


def test_a_letter_means_what_stands_beside_it_on_the_student_s_own_page():
    for k in range(20):
        code = f"code {k}"
        line = next(line for line in shown(COVER, code).splitlines() if line.endswith("damp fabric under plastic"))
        assert check(COVER, line.split()[0], code).kind is Kind.RIGHT


def test_a_slip_at_the_very_edge_of_the_margin_is_not_left_to_the_last_bit():
    # a slip 2 % off lies on the edge: 0.02 * x against x * 1.02 - x, which round differently from x to x
    edge = Question(
        "edge", "{a_m}", lambda a_m: a_m, "length", "m", numbers=(Number("a_m", "m", 5, 1, 9),),
        slips=(slips.by(lambda a_m: a_m * (1.02 if a_m > 2 else 2), "edge", "Look."),), hints=HINTS,
    )  # fmt: skip
    assert {draw(edge, f"c{k}").printed["a_m"] for k in range(60)} == {1, 2}


def test_numbers_that_make_no_piece_or_no_number_are_drawn_anew():
    def refuse(a_m):
        if a_m > 3:
            raise ValueError("no such piece")
        return a_m

    q = Question(
        "q", "{a_m}", refuse, "length", "m", numbers=(Number("a_m", "m", 1, 0, 9),),
        slips=(slips.by(lambda a_m: 1 / a_m + 5, "one over", "Look."),
               slips.by(lambda a_m: math.nan if a_m == 2 else 99.0, "none", "Look.")),
        hints=HINTS,
    )  # fmt: skip
    assert {draw(q, f"c{k}").printed["a_m"] for k in range(60)} == {1, 3}


def test_where_no_draw_is_good_the_printed_numbers_stay():
    only = Question(
        "only", "{a_m}", lambda a_m: a_m, "length", "m", numbers=(Number("a_m", "m", 1, 2, 9),),
        slips=(slips.by(lambda a_m: a_m if a_m > 1 else 5.0, "same", "Look."),), hints=HINTS,
    )  # fmt: skip
    assert draw(only, "x").printed == {"a_m": 1}


def test_codes_draw_different_numbers_on_the_grid():
    drawn = [numbers_for(VOLUME, f"code {k}")[0] for k in range(60)]
    assert len({tuple(each.values()) for each in drawn}) > 40
    for each in drawn:
        assert each["length_m"] in range(48, 97, 6) and 1.25 <= each["thickness_m"] <= 2


@pytest.mark.parametrize("question", [VOLUME, WARM, RATIO], ids=lambda q: q.id)
def test_no_drawn_slip_can_be_taken_for_the_answer(question):
    for k in range(60):
        drawn = draw(question, f"code {k}")
        for _, wrong in drawn.slips:
            assert check(question, question.asked(wrong), f"code {k}").kind is Kind.SLIP
            assert abs(wrong - drawn.right) > 0


def test_numbers_that_hide_a_slip_are_drawn_anew():
    close = Question(
        "close",
        "{a_m} and {b_m}",
        lambda a_m, b_m: a_m + b_m,
        "length",
        "m",
        numbers=(Number("a_m", "m", 5, 5, 5), Number("b_m", "m", 3, 0, 3, 0.05)),
        slips=(slips.left_out("b_m", "And the other?"),),
        hints=HINTS,
    )
    for k in range(80):
        printed, _ = numbers_for(close, f"c{k}")
        assert printed["b_m"] > 0.1  # 2 % of five metres


def test_a_question_whose_printed_numbers_hide_a_slip_is_refused():
    same = Question(
        "same", "", lambda: 2.0, "length", "m", slips=(slips.times(1.01, "near", "x"),), hints=HINTS
    )
    with pytest.raises(ValueError, match="the answer and 'near' cannot be told apart"):
        numbers_for(same)


@pytest.mark.parametrize(
    ("changes", "part"),
    [
        ({"hints": ("one",)}, "two are needed"),
        ({"kind": "colour"}, "no such kind"),
        ({"kind": "temperature", "unit": "F"}, "within"),
        ({"kind": "choice"}, "choices"),
    ],
)
def test_an_unfinished_question_is_refused(changes, part):
    parts = {"id": "q", "text": "", "answer": lambda: 1.0, "kind": "length", "unit": "m", "hints": HINTS}
    with pytest.raises(ValueError, match=part):
        Question(**{**parts, **changes})
