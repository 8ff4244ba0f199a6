"""Saving the shop sheet: whole or not at all, nothing overwritten unasked."""

import errno
import os
import shutil
from functools import cache

import pytest

from shop_calc.__main__ import main
from shop_calc.lesson.sheet import save, save_sheet
from shop_calc.lesson.sheet.save import write_whole
from shop_calc.trade.jobs.job import demo_job, demo_jobs, read_job
from shop_calc.trade.plan import make_plan

BENCH = "garden_bench_top"


@cache
def planned(name):
    return make_plan(read_job(demo_jobs()[name]))


def left_in(folder):
    return sorted(path.name for path in folder.iterdir())


def test_a_file_that_is_there_is_left_alone_until_told(tmp_path):
    file = tmp_path / "bench.html"
    file.write_text("mine")
    with pytest.raises(ValueError, match="is there already"):
        save_sheet(planned(BENCH), file)
    assert file.read_text() == "mine"
    save_sheet(planned(BENCH), file, replace=True)
    assert file.read_text(encoding="utf-8").startswith("<!doctype html>")
    assert left_in(tmp_path) == ["bench.html"]


@pytest.mark.parametrize(
    ("name", "why"),
    [("no/such/bench.html", "there is no folder"), ("bench.docx", "must end in"), ("bench", "must end in"),
     (".html", "must end in")],
)  # fmt: skip
def test_a_name_that_cannot_be_is_refused_in_plain_words(tmp_path, name, why):
    with pytest.raises(ValueError, match=why):
        save_sheet(planned(BENCH), tmp_path / name)
    assert left_in(tmp_path) == []


def test_a_folder_is_not_a_file(tmp_path):
    (tmp_path / "bench.html").mkdir()
    with pytest.raises(ValueError, match="that is a folder"):
        save_sheet(planned(BENCH), tmp_path / "bench.html")


@pytest.mark.parametrize(
    ("code", "words"),
    [
        (errno.ENOSPC, "the disk is full"),
        (errno.EROFS, "the disk is read-only"),
        (errno.EACCES, "must not be written to"),
    ],
)
@pytest.mark.parametrize("where", ["open", "fsync", "replace"])
def test_a_disk_that_refuses_leaves_the_old_file_and_nothing_else(tmp_path, monkeypatch, code, words, where):
    file = tmp_path / "bench.html"
    file.write_bytes(b"old")

    def refuse(*_):
        raise OSError(code, os.strerror(code))

    monkeypatch.setattr(save.os, where, refuse)
    with pytest.raises(ValueError, match=words):
        write_whole(file, b"new", replace=True)
    monkeypatch.undo()
    assert file.read_bytes() == b"old"
    assert left_in(tmp_path) == ["bench.html"]


def test_whoever_comes_second_does_not_write_over_the_first(tmp_path, monkeypatch):
    file = tmp_path / "bench.html"
    link = os.link

    def late(source, target):
        file.write_bytes(b"first")  # between the look and the move
        return link(source, target)

    monkeypatch.setattr(save.os, "link", late)
    with pytest.raises(ValueError, match="is there already"):
        write_whole(file, b"second")
    assert file.read_bytes() == b"first"
    assert left_in(tmp_path) == ["bench.html"]


def test_a_refusal_names_what_was_to_be_written(tmp_path):
    for what in ("sheet", "job file"):
        with pytest.raises(ValueError, match=f"^{what}: .*; there is no folder"):
            write_whole(tmp_path / "none" / "a.txt", b"a", what=what)


def test_a_disk_without_links_still_gets_its_file(tmp_path, monkeypatch):
    def none(*_):
        raise PermissionError(errno.EPERM, "no links here")

    monkeypatch.setattr(save.os, "link", none)
    assert write_whole(tmp_path / "bench.html", b"whole").read_bytes() == b"whole"
    assert left_in(tmp_path) == ["bench.html"]


def test_without_a_browser_a_pdf_is_refused_with_the_way_out(tmp_path, monkeypatch):
    monkeypatch.setattr(save, "find_browser", lambda: None)
    with pytest.raises(ValueError, match=r"no Chromium, Chrome or Edge .* write bench.html and print it"):
        save_sheet(planned(BENCH), tmp_path / "bench.pdf")
    assert left_in(tmp_path) == []


def test_a_browser_that_fails_is_named_and_leaves_nothing(tmp_path, monkeypatch):
    monkeypatch.setattr(save, "find_browser", lambda: shutil.which("false") or "false")
    with pytest.raises(ValueError, match="did not print"):
        save_sheet(planned(BENCH), tmp_path / "bench.pdf")
    assert left_in(tmp_path) == []


def test_the_command_writes_refuses_and_replaces(tmp_path, capsys):
    job, file = str(demo_job(BENCH)), str(tmp_path / "bench.html")
    assert main(["sheet", job, file]) == 0
    assert capsys.readouterr().out.startswith(f"{file}: two pages, written")
    assert main(["sheet", job, file]) == 2
    assert "--replace writes over it" in capsys.readouterr().err
    assert main(["sheet", job, file, "--replace", "--paper", "a4"]) == 0
    assert main(["sheet", "no_such_job.toml", file, "--replace"]) == 2
