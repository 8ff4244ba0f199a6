"""Names, links and folders that mean no good, and jobs too long to reckon: clear lines, and nothing is written elsewhere."""

import os
from datetime import datetime, timedelta
from pathlib import Path

import pytest
from case_jobs import entries

from shop_calc.__main__ import main
from shop_calc.lesson.classroom import write_keys
from shop_calc.lesson.classroom.roster import LARGEST, read_roster
from shop_calc.lesson.copies import RECORD, copy_lessons
from shop_calc.lesson.moves import log_seen
from shop_calc.trade.jobs.job import check_job, demo_job, read_job
from shop_calc.trade.jobs.job_check import MOST_ROWS
from shop_calc.trade.logbook.calibrate import calibrate
from shop_calc.trade.logbook.shop_log import read_log
from shop_calc.trade.plan import make_plan
from shop_calc.trade.problems import Problems

JOB = str(demo_job("garden_bench_top"))
LONG = "a" * 5000
CLASS = "code,name\nann,Ann\n"


@pytest.fixture
def there(monkeypatch, tmp_path):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "class.csv").write_text(CLASS, encoding="utf-8")
    (tmp_path / "precious").write_text("precious", encoding="utf-8")
    yield tmp_path
    assert (tmp_path / "precious").read_text(encoding="utf-8") == "precious"


def link(path, to):
    path.parent.mkdir(parents=True, exist_ok=True)
    try:
        path.symlink_to(to)
    except OSError:
        pytest.skip("no links on this system")


NOBODY = "~no such person/a"
CANNOT = [
    ("lessons", LONG), ("lessons", ""), ("lessons", NOBODY), ("lessons", "class.csv/below"), ("lessons", "class.csv"),
    ("keys", "class.csv", LONG), ("keys", "class.csv", ""), ("keys", "class.csv", NOBODY), ("keys", LONG, "out"),
    ("keys", "class.csv", "class.csv"), ("keys", ".", "out"),
    ("sheet", JOB, f"{LONG}.html"), ("sheet", JOB, f"{LONG}/a.html"), ("sheet", LONG, "a.html"),
    ("plan", LONG), ("plan", JOB, "--log", LONG), ("plan", NOBODY), ("plan", "."),
]  # fmt: skip


@pytest.mark.parametrize("words", CANNOT, ids=lambda words: " ".join(word[-16:] for word in words))
def test_names_that_cannot_be_are_answered_in_a_line(words, there, capsys):
    assert main(list(words)) == 2
    said = capsys.readouterr()
    assert said.out == "" and said.err.strip() and "Traceback" not in said.err
    assert sorted(path.name for path in there.iterdir()) == ["class.csv", "precious"]


@pytest.mark.parametrize("name", ["00_start_here.ipynb.part", "00_start_here.ipynb", f"{RECORD}.part"])
def test_lessons_are_not_written_through_a_link(name, there):
    link(there / "course" / name, there / "precious")
    copy_lessons(there / "course")
    assert (there / "course" / name).is_symlink()


def test_lessons_are_not_written_into_a_linked_folder(there):
    (there / "elsewhere").mkdir()
    link(there / "course" / "data", there / "elsewhere")
    done = copy_lessons(there / "course")
    assert list((there / "elsewhere").iterdir()) == [] and "data/defaults.csv" in done.kept


@pytest.mark.parametrize("name", ["answer_key.csv.part", "answer_key.csv", "key_00_start_here.html"])
def test_a_key_is_not_written_through_a_link(name, there):
    link(there / "out" / name, there / "precious")
    write_keys("class.csv", "out", ("00",), replace=True)
    assert (there / "out" / "answer_key.csv").read_text(encoding="utf-8-sig").startswith("code")


def test_a_key_is_never_written_over_the_list_it_was_made_from(there):
    (there / "out").mkdir()
    (there / "out" / "answer_key.csv").write_text(CLASS, encoding="utf-8")
    with pytest.raises(ValueError, match="written over it"):
        write_keys("out/answer_key.csv", "out", ("00",))
    assert (there / "out" / "answer_key.csv").read_text(encoding="utf-8") == CLASS


@pytest.mark.parametrize("text", ["[" * 100_000, '{"a":' * 50_000, "[1]", '{"data/defaults.csv": 5}', "\x00"])
def test_a_torn_record_of_what_was_delivered_touches_no_edit(text, there):
    copy_lessons("course")
    (there / "course" / RECORD).write_text(text, encoding="utf-8")
    (there / "course" / "data" / "defaults.csv").write_text("mine", encoding="utf-8")
    assert copy_lessons("course").kept == ("data/defaults.csv",)


def test_a_class_list_that_never_ends_is_not_read(there):
    with open("large.csv", "wb") as file:
        file.truncate(3_000_000_000)  # sparse
    with pytest.raises(ValueError, match=f"more than {LARGEST:,} bytes"):
        read_roster("large.csv")
    os.remove("large.csv")
    if Path("/dev/zero").exists():
        with pytest.raises(ValueError, match="a device or a pipe"):
            read_roster("/dev/zero")


def test_more_rows_than_any_piece_has_are_refused_before_they_are_reckoned():
    job = entries("plain")
    hole = {"shape": "circle", "diameter": "1/2 in", "at": ["5 in", "5 in"]}
    start = datetime(2026, 5, 4, 8)
    job["piece"]["cutout"] = [hole] * (MOST_ROWS["piece.cutout"] + 1)
    job["room"] = [job["room"][0] | {"from": start + timedelta(seconds=each)} for each in range(MOST_ROWS["room"] + 1)]
    with pytest.raises(Problems) as error:
        check_job(job)
    assert "[[piece.cutout]]: 31 rows given; it must be at most 30" in error.value.lines
    assert "[[room]]: 1,001 rows given; it must be at most 1,000" in error.value.lines


LOG = "pour_id,time_iso,event,layer,mix_temp_c,cue,note,recipe\n"
WATER = "p,2026-05-04T08:00,water_in,,16,,,demo mortar\n"


@pytest.mark.parametrize("rows", ["", WATER, f"{WATER}p,2026-05-04T11:00,check,face,,first_steel seen,,\n"])
def test_pictures_of_a_log_without_looks_or_room_say_what_is_missing(rows, there):
    Path("log.csv").write_text(LOG + rows, encoding="utf-8")
    log, plan = read_log("log.csv"), make_plan(read_job(JOB))
    for pour in log.pours:
        with pytest.raises(ValueError, match=r"pour: 'p' given; it has no"):
            log_seen.predicted_seen(plan.day, pour)
    with pytest.raises(ValueError, match="log: no pour to show"):
        log_seen.pours_seen(plan.day, log, "demo mortar")
    assert log_seen.misses_table(calibrate(log, "demo mortar")).rows[0] == ("plan without a log", "no look")


@pytest.mark.parametrize("sign", "\u202a\u202d\u202e\u2066\u2067\x1b\x07")
def test_a_log_holds_no_sign_that_turns_the_words_round(sign, there):
    Path("log.csv").write_text(LOG + f"p{sign}txt,2026-05-04T08:00,water_in,,16,,,demo mortar\n", encoding="utf-8")
    log = read_log("log.csv")
    assert log.pours == () and not any(sign in str(line) for line in log.problems)
    with pytest.raises(ValueError) as error:
        read_log(f"no{sign}log.csv")
    assert sign not in str(error.value)


def test_the_example_of_a_count_can_be_one():
    job = entries("plain")
    job["finish"], job["day"]["hands"] = {"first_grit": 2.5}, "two"
    with pytest.raises(Problems) as error:
        check_job(job)
    assert [line.rpartition("as in ")[2] for line in error.value.lines] == ["hands = 2", "first_grit = 200"]
