"""Answers as learners type them: off a tape, with a comma, as a part of one, with a word behind."""

import json
import re
from pathlib import Path

import pytest

from shop_calc.lesson.banks import bank
from shop_calc.lesson.check import Kind, check
from shop_calc.lesson.practice import Practice
from shop_calc.lesson.question import Question

WORKBOOKS = Path(__file__).parents[1] / "workbooks"
LENGTH = Question("l", "", lambda: 2.75 * 0.0254, "length", "in", hints=("x", "y"))
SHARE = Question("s", "", lambda: 0.24, "fraction", "%", hints=("x", "y"))
BAGS = Question("b", "", lambda: 28.0, "number", "-", hints=("x", "y"), tolerance=0.001)
HOURS = Question("h", "", lambda: 16 / 3, "duration", "h", hints=("x", "y"))


@pytest.mark.parametrize(
    ("question", "answer"),
    [(LENGTH, "2 3/4"), (LENGTH, "2-3/4"), (LENGTH, "2¾"), (HOURS, "5 1/3"), (BAGS, "28"), (LENGTH, '2 3/4"')],
)
def test_a_fraction_off_a_tape_counts_in_the_unit_that_is_asked(question, answer):
    assert check(question, answer).kind is Kind.RIGHT


def test_a_fraction_in_another_unit_is_told_so_and_one_with_two_readings_is_refused():
    feet = Question("f", "", lambda: 0.3048 / 2, "length", "in", hints=("x", "y"))
    assert check(feet, "1/2").kind is Kind.OTHER_UNIT and "counted in ft" in check(feet, "1/2").text
    assert check(LENGTH, "11/4").kind is Kind.UNREADABLE and "2-3/4 or 1-1/4" in check(LENGTH, "11/4").text


def test_a_comma_that_makes_two_numbers_is_named():
    said = check(BAGS, (1, 728))
    assert said.kind is Kind.UNREADABLE and "without a comma" in said.text


def test_a_share_written_as_a_part_of_one_is_right_in_another_unit():
    assert check(SHARE, 24).kind is Kind.RIGHT
    said = check(SHARE, 0.24)
    assert said.kind is Kind.OTHER_UNIT and "parts of one" in said.text and "24" not in said.text


@pytest.mark.parametrize("answer", ["28 bags", "28 lb", "a lot"])
def test_a_plain_number_with_a_word_behind_is_asked_for_again(answer):
    said = check(BAGS, answer)
    assert said.kind is Kind.UNREADABLE and "plain number" in said.text


def test_the_rim_counted_twice_and_the_solids_taken_for_water_are_known():
    # 72 x 22 on top, (72 + 2 x 22) x 2 down the edges, a quarter inch of each; 34 lb less 47 % of 12 lb
    assert "twice" in Practice("two_layer_sizing", keep=False).check("against_the_wall", (72 * 22 + 116 * 2) / 4).text
    assert "solids" in Practice("mix_and_yield", keep=False).check("poured", 34 - 0.47 * 12).text


LETTERS = re.compile(r"^(a, b.*) = \"(\w+)\"", re.MULTILINE)


@pytest.mark.parametrize("lesson", sorted(WORKBOOKS.glob("[01]?_*.ipynb")), ids=lambda path: path.stem)
def test_a_letter_typed_without_quotes_is_the_letter(lesson):
    cells = json.loads(lesson.read_text(encoding="utf-8"))["cells"]
    opening = next(text for text in ("".join(cell["source"]) for cell in cells) if text.startswith("practice = Practice("))
    named = LETTERS.search(opening)
    assert named, 'under `practice = Practice(...)` stands a, b, c, d, e, f, g, h = "abcdefgh"'
    names, letters = named.groups()
    assert names.split(", ") == list(letters)
    bank_name = re.search(r"Practice\(\"(\w+)\"", opening)[1]
    practice = Practice(bank_name, keep=False)
    for question in bank(bank_name):
        if question.kind == "choice":
            assert set(question.letters) <= set(letters)
        if question.kind == "order":  # b, a, c without quotes is a row of letters
            assert set(question.letters) <= set(letters)
            row = tuple(practice.solution(question.id).split(", "))
            assert practice.check(question.id, row).kind is Kind.RIGHT
