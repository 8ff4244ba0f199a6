"""Right answers are noted in the student's own folder: whole or not at all, safe to delete, never needed."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from shop_calc.lesson import progress as kept
from shop_calc.lesson.check import Kind
from shop_calc.lesson.practice import Practice
from shop_calc.lesson.progress import keep, progress, right_answers, work_folder

FRESH = "Nothing is kept yet. A right answer in a lesson is noted, and shows here."


def answer_right(code=None, **how):
    practice = Practice("start_here", code, **how)
    return practice.check("tile", practice.solution("tile"))


def test_a_right_answer_is_noted_and_shows(work_folder):
    assert str(progress()) == FRESH
    assert str(answer_right()) == "✓ Right." and right_answers() == {"start_here": ["tile"]}
    first = next(line for line in str(progress()).splitlines() if line.startswith("00"))
    assert "1 of 2" in first and "●○" in first and "who decides" in first
    assert str(work_folder / "practice.json") in str(progress())
    assert json.loads((work_folder / "practice.json").read_text())["right"] == {"": {"start_here": ["tile"]}}
    assert os.listdir(work_folder) == ["practice.json"]


def test_only_right_answers_are_noted_and_each_code_has_its_own(work_folder):
    practice = Practice("start_here")
    for answer in (..., "x", 7, "2 lb"):
        assert practice.check("tile", answer).kind is not Kind.RIGHT
    assert os.listdir(work_folder) == []
    answer_right("Mar 7")
    assert right_answers() == {} and right_answers("mar7") == {"start_here": ["tile"]}
    assert str(progress()) == FRESH and "1 of 2" in str(progress("MAR 7"))


def test_solutions_note_nothing(work_folder):
    assert answer_right(keep=False).kind is Kind.RIGHT and os.listdir(work_folder) == []


def test_the_file_is_safe_to_delete(work_folder):
    answer_right()
    (work_folder / "practice.json").unlink()
    assert str(progress()) == FRESH and answer_right().kind is Kind.RIGHT and "1 of 2" in str(progress())


@pytest.mark.parametrize(
    "content",
    [
        b"", b"{", b"[]", b"null", b"7", b'{"right": 3}', b'{"right": {"": 3}}', b'{"right": {"": {"start_here": 3}}}',
        b'{"right": {"": {"start_here": [3, null, {}]}}}', b"\xff\xfe\x00", b'{"format": 99}', b"[" * 100_000,
        b'{"right": {"": {"no_such_lesson": ["x"]}, "other": 5}}',
    ],
)  # fmt: skip
def test_a_file_that_somebody_else_wrote_does_no_harm(work_folder, content):
    (work_folder / "practice.json").write_bytes(content)
    assert str(progress())
    assert str(answer_right()) == "✓ Right." and right_answers()["start_here"] == ["tile"]


def test_what_other_codes_and_lessons_have_is_kept(work_folder):
    keep("two_layer_sizing", "sink", "b")
    keep("start_here", "tile", "a")
    keep("two_layer_sizing", "racetrack", "b")
    assert right_answers("b") == {"two_layer_sizing": ["racetrack", "sink"]}
    assert right_answers("a") == {"start_here": ["tile"]}


def test_a_folder_that_cannot_be_made_is_said_once_and_gently(tmp_path, monkeypatch):
    (tmp_path / "file").write_text("x")
    monkeypatch.setenv("SHOP_CALC_WORK", str(tmp_path / "file" / "below"))
    monkeypatch.setattr(kept, "_told", set())
    first, second = answer_right(), answer_right()
    assert first.kind is second.kind is Kind.RIGHT
    assert "nothing else depends on that" in first.text and second.text == "Right."
    assert str(progress()) == FRESH


def test_a_write_that_fails_half_way_leaves_the_old_file(work_folder, monkeypatch):
    answer_right()
    before = (work_folder / "practice.json").read_bytes()

    def full(*_, **__):
        raise OSError("no space left")

    monkeypatch.setattr(kept, "_told", set())
    monkeypatch.setattr(kept.os, "replace", full)
    assert "could not be noted" in keep("start_here", "who_decides")
    assert (work_folder / "practice.json").read_bytes() == before and os.listdir(work_folder) == ["practice.json"]


def test_without_the_variable_the_user_s_own_data_folder_is_meant(monkeypatch, tmp_path):
    monkeypatch.delenv("SHOP_CALC_WORK")
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    found = work_folder()
    assert found.name == "shop-calc" and not found.exists()
    if sys.platform.startswith("linux"):
        assert found == tmp_path / "data" / "shop-calc"
    monkeypatch.setenv("SHOP_CALC_WORK", "  ")
    assert work_folder() == found


def test_reading_writes_nothing_and_needs_no_folder(monkeypatch, tmp_path):
    monkeypatch.setenv("SHOP_CALC_WORK", str(tmp_path / "not" / "yet"))
    assert right_answers() == {} and str(progress()) == FRESH and not (tmp_path / "not").exists()
    keep("start_here", "tile")
    assert (tmp_path / "not" / "yet" / "practice.json").is_file()


def test_two_lessons_that_write_at_once_leave_a_file_that_can_be_read(work_folder):
    code = "import sys; from shop_calc.lesson.progress import keep\nfor k in range(60): keep(sys.argv[1], f'q{k}')"
    both = [subprocess.Popen([sys.executable, "-c", code, name], cwd=Path(__file__).parents[1]) for name in ("a", "b")]
    assert [each.wait() for each in both] == [0, 0]
    # the later of two writes at the very same moment stands; nobody answers that fast in two lessons
    assert set(right_answers()) <= {"a", "b"} and right_answers() and os.listdir(work_folder) == ["practice.json"]
