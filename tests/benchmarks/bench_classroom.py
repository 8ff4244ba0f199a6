"""Medians of a class, on request: python -m pytest tests/benchmarks/bench_classroom.py --benchmark-only

Aims on two quiet cores are written beside each.
"""

import pytest

from shop_calc.lesson.banks import banked_lessons
from shop_calc.lesson.check import check
from shop_calc.lesson.classroom import answer_key, key_csv, roster, write_keys

LESSONS = banked_lessons()
CLASS = roster([(f"bench {k}", f"Seat {k}") for k in range(200)])


def forget():
    """What one class has worked must not help the next."""
    for each in LESSONS:
        for question in each.questions:
            question.memory.clear()


def test_key_of_two_hundred_students(benchmark):
    """Aim: 5 s for every question of every lesson."""
    benchmark.pedantic(lambda: key_csv(answer_key(CLASS, LESSONS)), setup=forget, rounds=3)


def test_all_files_of_two_hundred_students(benchmark, tmp_path):
    (tmp_path / "class.csv").write_text("code\n" + "\n".join(student.code for student in CLASS), encoding="utf-8")
    benchmark.pedantic(lambda: write_keys(tmp_path / "class.csv", tmp_path / "out", replace=True), setup=forget, rounds=3)


@pytest.mark.parametrize("each", LESSONS, ids=lambda each: each.stem)
def test_one_check_of_every_question_of_a_lesson(benchmark, each):
    """Aim: 20 ms for one check; this is the time of them all."""
    benchmark.pedantic(
        lambda: [check(question, 1.0, "bench 1") for question in each.questions], setup=forget, rounds=20
    )
