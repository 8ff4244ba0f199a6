"""Lessons copied out of the package: complete, renewed when untouched, never over an edit."""

import hashlib
import json

import pytest

from shop_calc.__main__ import main
from shop_calc.lesson import copies


def test_all_lessons_and_data_arrive(tmp_path, capsys):
    assert main(["lessons", str(tmp_path / "course")]) == 0
    assert "new" in capsys.readouterr().out
    names = {path.name for path in (tmp_path / "course").rglob("*")}
    assert {path.name for path in copies.lessons_folder().glob("*.ipynb")} <= names
    assert {"defaults.csv", "garden_bench_top.toml", "README.md"} <= names
    assert not [name for name in names if name.endswith(".part")]


def test_an_edited_file_is_kept_and_an_old_copy_renewed(tmp_path):
    first = copies.copy_lessons(tmp_path)
    edited, old = tmp_path / "data" / "materials.csv", tmp_path / "data" / "defaults.csv"
    edited.write_text("mine")
    old.write_text("as delivered last year")
    record = json.loads((tmp_path / copies.RECORD).read_text())


    record["data/defaults.csv"] = hashlib.sha256(b"as delivered last year").hexdigest()
    (tmp_path / copies.RECORD).write_text(json.dumps(record))
    second = copies.copy_lessons(tmp_path)
    assert second.kept == ("data/materials.csv",) and edited.read_text() == "mine"
    assert second.renewed == ("data/defaults.csv",) and old.read_text() != "as delivered last year"
    assert len(second.same) == len(first.new) - 2


def test_without_a_record_nothing_that_differs_is_touched(tmp_path):
    copies.copy_lessons(tmp_path)
    (tmp_path / copies.RECORD).write_text("no json {")
    (tmp_path / "data" / "materials.csv").write_text("mine")
    assert copies.copy_lessons(tmp_path).kept == ("data/materials.csv",)


@pytest.mark.parametrize("make", ["file", "home", "below"])
def test_folders_that_cannot_be_are_named(tmp_path, make, capsys):
    path = tmp_path / "there"
    if make == "file":
        path.write_text("")
    else:
        path = copies.lessons_folder() if make == "home" else copies.lessons_folder() / "mine"
    assert main(["lessons", str(path)]) == 2
    assert "folder: " in capsys.readouterr().err
