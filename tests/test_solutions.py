"""Every question of every lesson is worked in the solutions, and its answer accepted by its own check."""

import json
from pathlib import Path

import pytest

from shop_calc.lesson import solutions
from shop_calc.lesson.banks import bank_names, banked_lessons
from shop_calc.lesson.check import Kind
from shop_calc.lesson.outline import source
from shop_calc.lesson.practice import Practice

WORKBOOKS = Path(__file__).parents[1] / "workbooks"
LESSONS = banked_lessons(WORKBOOKS)
EACH = pytest.mark.parametrize("each", LESSONS, ids=lambda each: each.stem)


def cells(each):
    path = WORKBOOKS / "solutions" / each.lesson.file
    return {cell["id"]: cell for cell in json.loads(path.read_text(encoding="utf-8"))["cells"]}


def said(cell):
    return "".join("".join(output["data"]["text/plain"]) for output in cell["outputs"])


def test_every_lesson_with_questions_stands_in_the_list():
    assert {each.name for each in LESSONS} <= set(bank_names()) and LESSONS[0].name == "start_here"


@EACH
def test_the_stored_solutions_are_those_of_the_lesson_as_it_is_now(each):
    built = {cell.id: cell.source for cell in solutions.build(each).cells}
    assert {id: source(cell) for id, cell in cells(each).items()} == built, (
        "run `python -m shop_calc.lesson.solutions workbooks`"
    )


@EACH
def test_each_question_is_worked_and_its_answer_accepted(each):
    found, practice = cells(each), Practice(each.name, keep=False)
    for place, question in enumerate(each.questions, 1):
        assert said(found[f"q{place}-check"]).startswith("✓ Right."), question.id
        worked = said(found[f"q{place}-worked"])
        assert worked == str(practice.worked(question.id)) and "Answer: " in worked
        assert said(found[f"q{place}-ask"]) == str(practice.ask(question.id))
        assert practice.check(question.id, practice.solution(question.id)).kind is Kind.RIGHT


@EACH
def test_solutions_work_with_a_code_and_note_nothing(each, work_folder):
    practice = Practice(each.name, code="bench 7", keep=False)
    for question in each.questions:
        assert practice.check(question.id, practice.solution(question.id)).kind is Kind.RIGHT
    assert list(work_folder.iterdir()) == []


@EACH
def test_a_question_to_compute_has_its_working(each):
    bare = [q.id for q in each.questions if q.kind not in ("choice", "order") and q.numbers and q.working is None]
    assert bare == [], "each needs `working=`: a function of its numbers that gives the Steps"


def test_the_command_writes_what_it_then_finds_in_order(tmp_path, capsys):
    lesson = WORKBOOKS / "00_start_here.ipynb"
    (tmp_path / lesson.name).write_bytes(lesson.read_bytes())
    assert solutions.main([str(tmp_path), "--check"]) == 1 and "stale" in capsys.readouterr().out
    assert not (tmp_path / "solutions").exists()
    assert solutions.main([str(tmp_path)]) == 0
    once = (tmp_path / "solutions" / lesson.name).read_bytes()
    assert solutions.main([str(tmp_path)]) == 0
    assert (tmp_path / "solutions" / lesson.name).read_bytes() == once == (
        WORKBOOKS / "solutions" / lesson.name
    ).read_bytes()
