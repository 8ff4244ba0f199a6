"""The shop log: what is read however a spreadsheet saved it, and rows that are added without touching a row before."""

import errno
import multiprocessing
import os
import threading
from dataclasses import fields, replace
from datetime import datetime, timedelta, timezone

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from shop_calc import defaults
from shop_calc.trade.logbook import log_write
from shop_calc.trade.logbook.log_fields import COLUMNS, LONGEST_TEXT, keep_as_text, read_as_text
from shop_calc.trade.logbook.log_read import parse_log
from shop_calc.trade.logbook.shop_log import Event, append_events, gather_pours, pour_looks, read_log

START = datetime(2026, 5, 4, 8)
WATER = Event("bench", START, "water_in", recipe="demo mortar", mix_temp_c=16.5)
CHECK = Event("bench", START + timedelta(hours=2.5), "check", "face", cue="strip seen", resistance_pa=110_000.0,
              depth_m=0.0065, note="thumb, then rod")  # fmt: skip
WHOLE = ",".join(COLUMNS)
HEAD = WHOLE.replace("thickness_mm,", "")  # as logs have it in which nobody wrote a thickness
ROW = "bench,2026-05-04T08:00:00,water_in,,demo mortar,16.5,,,,,,,,"


def words(rows):
    return [str(problem) for problem in rows.problems]


@pytest.fixture
def file(tmp_path):
    return tmp_path / "log.csv"


def same(events):
    return [replace(event, line=0) for event in events]


# ---- however it was saved


def saved(delimiter, comma, end, mark):
    """The two rows as a spreadsheet of some country would save them."""
    numbers = [cell.replace(".", comma) for cell in ("16.5", "110", "6.5", "38.1")]
    rows = [
        list(COLUMNS),
        ["bench", "2026-05-04T08:00:00", "water_in", "", "demo mortar", numbers[0], *[""] * 7, numbers[3], ""],
        ["bench", "2026-05-04 10:30", "check", "face", *[""] * 6, "strip seen", *numbers[1:3], "", "thumb, then rod"],
    ]

    def cell(text):
        return f'"{text}"' if delimiter in text else text

    return mark + end.join(delimiter.join(cell(one) for one in row) for row in rows).encode() + end.encode()


@pytest.mark.parametrize("mark", [b"", b"\xef\xbb\xbf"])
@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize(("delimiter", "comma"), [(",", "."), (",", ","), (";", ","), (";", "."), ("\t", ",")])
def test_the_same_rows_however_a_spreadsheet_saved_them(delimiter, comma, end, mark):
    rows = parse_log(saved(delimiter, comma, end, mark))
    assert rows.problems == () and rows.remarks == ()
    assert same(rows.events)[0] == replace(WATER, thickness_m=0.0381)
    assert rows.events[1].resistance_pa == pytest.approx(110_000) and rows.events[1].depth_m == pytest.approx(0.0065)
    assert rows.events[1].thickness_m is None
    assert [event.line for event in rows.events] == [2, 3]


def test_a_first_line_that_names_the_separator_and_columns_in_another_order():
    rows = parse_log(b"sep=;\r\nevent;extra;time_iso;pour_id;mix_temp_c\r\nwater_in;x;2026-05-04T08:00;bench;16,5\r\n")
    assert rows.events[0].mix_temp_c == 16.5 and rows.problems == ()
    assert [remark.column for remark in rows.remarks] == ["extra"]


def test_windows_text_is_read_and_said():
    rows = parse_log(f"{HEAD}\n{ROW}22 °C outside\n".encode("cp1252"))
    assert rows.events[0].note == "22 °C outside"
    assert [str(remark) for remark in rows.remarks] == ["line 2, row: not UTF-8; read as Windows text"]


def test_a_cell_with_line_breaks_from_a_spreadsheet_is_one_row():
    rows = parse_log(f'{HEAD}\r\n{ROW}"two\r\nlines"\r\n{ROW.replace("08:00:00", "09:00:00")}\r\n'.encode())
    assert [event.note for event in rows.events] == ["two lines", ""]
    assert rows.events[1].line == 4


@pytest.mark.parametrize(
    ("data", "reason"),
    [
        (b"", "line 1, row: the file is empty"),
        (b"\n\n", "line 1, row: the file is empty"),
        ("pour_id".encode("utf-16"), "line 1, row: the file is UTF-16"),
        (b"name,when\nx,y\n", "line 1, pour_id: no such column"),
        (b"pour_id,time_iso,event,event\n", "line 1, event: the column stands twice"),
        (b"\x89PNG\r\n\x1a\n\x00\x00", "line 1, pour_id: no such column"),
    ],
)
def test_a_file_that_is_no_log_is_said_in_one_line(data, reason):
    rows = parse_log(data)
    assert rows.events == () and words(rows)[0].startswith(reason)


def test_missing_files_and_folders_are_said(tmp_path):
    with pytest.raises(ValueError, match="no such file"):
        read_log(tmp_path / "none.csv")
    with pytest.raises(ValueError, match="that is a folder"):
        read_log(tmp_path)
    with pytest.raises(ValueError, match="cannot be read"):
        read_log("log\0.csv")


# ---- every bad row named, every good row kept

BAD = [
    ("bench,8 am,check,,,,,,,,,,,", "time_iso"),
    ("bench,04/05/2026 10:00,check,,,,,,,,,,,", "time_iso"),
    ("bench,2026-05-04T25:00,check,,,,,,,,,,,", "time_iso"),
    ("bench,2026-05-04,check,,,,,,,,,,,", "time_iso"),
    ("bench,2026-05-04T10:00,looked,,,,,,,,,,,", "event"),
    (",2026-05-04T10:00,check,,,,,,,,,,,", "pour_id"),
    ("bench,2026-05-04T10:00,check,top,,,,,,,,,,", "layer"),
    ("bench,2026-05-04T10:00,check,,,sixteen,,,,,,,,", "mix_temp_c"),
    ("bench,2026-05-04T10:00,check,,,61,,,,,,,,", "mix_temp_c"),
    ("bench,2026-05-04T10:00,room,,,,nan,,,,,,,", "air_temp_c"),
    ("bench,2026-05-04T10:00,room,,,,,50,,,,,,", "rh_fraction"),
    ("bench,2026-05-04T10:00,room,,,,,,-1,,,,,", "wind_m_s"),
    ("bench,2026-05-04T10:00,check,,,,,,,,hard sheen,,,", "cue"),
    ("bench,2026-05-04T10:00,check,,,,,,,,strip,,,", "cue"),
    ('bench,2026-05-04T10:00,check,,,,,,,,,"1,034.5",,', "pr_kpa"),
    ("bench,2026-05-04T10:00,check,,,,,,,,,1e999,,", "pr_kpa"),
    ("bench,2026-05-04T10:00,check,,,,,,,,,1_000,,", "pr_kpa"),
    ("bench,2026-05-04T10:00,check,,,,,,,,,,-2,", "print_mm"),
    ("bench,2026-05-04T07:59,check,,,,,,,,,,,", "time_iso"),
    ("bench,2026-05-09T10:00,check,,,,,,,,,,,", "time_iso"),
    ("other,2026-05-04T10:00,check,,,,,,,,,,,", "event"),
    ("bench,2026-05-04T10:00,che", "row"),
    ("bench,2026-05-04T10:00,check,,,,,,,,,,,a, b", "row"),
    ("bench,2026-05-04T10:00+02:00,check,,,,,,,,,,,", "time_iso"),
]


@pytest.mark.parametrize(("bad", "column"), BAD)
def test_a_bad_row_is_named_by_line_column_and_reason_and_the_others_are_kept(bad, column):
    good = "bench,2026-05-04T10:30,check,face,,,,,,,strip seen,,,after"
    rows = parse_log(f"{HEAD}\n{ROW}\n{bad}\n{good}\n".encode())
    assert [event.note for event in rows.events] == ["", "after"]
    assert [(problem.line, problem.column) for problem in rows.problems] == [(3, column)]
    assert "must" in rows.problems[0].reason or column == "row" or "write all alike" in rows.problems[0].reason


def test_all_bad_cells_of_all_bad_rows_are_named_at_once():
    data = "\n".join([HEAD, ROW, *(bad for bad, _ in BAD)])
    rows = parse_log(data.encode())
    assert len(rows.events) == 1
    assert {problem.line for problem in rows.problems} == set(range(3, 3 + len(BAD)))
    both = parse_log(f"{HEAD}\nbench,8 am,guess,,,hot,,,,,,,,\n".encode())
    assert [problem.column for problem in both.problems] == ["time_iso", "mix_temp_c", "event"]


def test_rows_of_nothing_are_passed_over():
    rows = parse_log(f"{HEAD}\n\n{ROW}\n,,,,,,,,,,,,,\n   \n".encode())
    assert len(rows.events) == 1 and rows.problems == ()


# ---- midnight and the clock


def test_a_pour_over_midnight_runs_on():
    data = f"{HEAD}\nlate,2026-05-04T22:30,water_in,,m,16,,,,,,,,\nlate,2026-05-04T24:00,check,,,,,,,,,,,\n"
    data += "late,2026-05-05T01:15,check,,,,,,,,,,,\n"
    pour = gather_pours(parse_log(data.encode()).events)[0]
    assert pour.hours == (0.0, 1.5, 2.75)


@pytest.mark.parametrize(
    ("times", "hours"),
    [
        (("2026-10-25T01:30+02:00", "2026-10-25T02:30+02:00", "2026-10-25T02:30+01:00"), (0.0, 1.0, 2.0)),
        (("2026-03-29T01:30+01:00", "2026-03-29T03:30+02:00"), (0.0, 1.0)),
        (("2026-05-04T22:00Z", "2026-05-05T01:00+02:00"), (0.0, 1.0)),
    ],
)
def test_hours_are_right_over_a_change_of_the_clock_when_offsets_are_written(times, hours):
    rows = [f"night,{time},{'check' if number else 'water_in'},,,,,,,,,,," for number, time in enumerate(times)]
    assert gather_pours(parse_log("\n".join([HEAD, *rows]).encode()).events)[0].hours == hours


def test_a_clock_that_goes_back_in_the_night_without_offsets_is_remarked():
    times = ("2026-10-25T01:00", "2026-10-25T02:50", "2026-10-25T02:10")
    rows = [f"night,{time},{'check' if number else 'water_in'},,,,,,,,,,," for number, time in enumerate(times)]
    read = parse_log("\n".join([HEAD, *rows]).encode())
    assert len(read.events) == 3 and read.remarks[0].line == 4 and "clocks changed" in read.remarks[0].reason


def test_a_forgotten_look_may_be_added_later():
    later, forgotten = (f"bench,2026-05-04T{hour}:00,check,,,,,,,,,,," for hour in (11, "09"))
    rows = parse_log("\n".join((HEAD, ROW, later, forgotten)).encode())
    assert rows.problems == () == rows.remarks
    assert gather_pours(rows.events)[0].hours == (0.0, 1.0, 3.0)


# ---- adding


def test_what_is_added_is_read_back(file):
    append_events(file, (WATER, CHECK))
    append_events(file, replace(CHECK, time=START + timedelta(hours=3), cue="first steel: not yet"))
    log = read_log(file)
    assert log.problems == () and same(log.events)[:2] == [WATER, CHECK]
    assert log.events[2].cue == "first_steel not yet"
    assert file.read_text().count(WHOLE) == 1


TEXT = st.text(st.characters(blacklist_categories=("Cc", "Cs", "Zl", "Zp")), max_size=40)
NUMBER = st.one_of(st.none(), st.floats(0, 15))
EVENT = st.builds(
    Event,
    pour_id=TEXT.filter(lambda text: text.strip()),
    time=st.datetimes(datetime(1900, 1, 1), datetime(2100, 1, 1)).map(lambda when: when.replace(microsecond=0)),
    event=st.just("water_in"), layer=st.sampled_from(("", "face", "base")), recipe=TEXT, mix_temp_c=NUMBER,
    air_temp_c=st.one_of(st.none(), st.floats(-5, 50)), rh_fraction=st.one_of(st.none(), st.floats(0, 1)),
    wind_m_s=NUMBER, cue=st.sampled_from(("", "strip seen", "stop not yet")), resistance_pa=NUMBER, depth_m=st.none(),
    note=st.one_of(TEXT, st.sampled_from(("=1+1", "+49", "-", "@x", "'=1", "''=1", " =1", "a;=1", "a;' =1", "＝1"))),
)  # fmt: skip


@settings(max_examples=2 * settings().max_examples)
@given(EVENT, st.sampled_from((b"", b"\xef\xbb\xbf" + ";".join(COLUMNS).encode() + b"\r\n")))
def test_any_row_comes_back_as_it_was(tmp_path_factory, event, head):
    file = tmp_path_factory.mktemp("log") / "log.csv"
    if head:
        file.write_bytes(head)
    append_events(file, event)
    (back,) = read_log(file).events
    for field in fields(Event):
        have, want = getattr(back, field.name), getattr(event, field.name)
        if field.name in ("pour_id", "recipe", "note"):
            assert have == want.strip()
        elif isinstance(want, float):
            assert have == pytest.approx(want, rel=1e-9, abs=1e-9)
        elif field.name != "line":
            assert have == want


@settings(max_examples=4 * settings().max_examples)
@given(st.one_of(
    st.binary(max_size=400),
    st.binary(max_size=200).map(lambda tail: f"{HEAD}\n{ROW}\n".encode() + tail),
    st.text(st.sampled_from('bench,;\t"\n\r=+-@\'0123456789T:.einf\x00é'), max_size=200).map(
        lambda text: f"{HEAD}\r\n{ROW}\r\n{text}".encode()
    ),
))  # fmt: skip
def test_no_bytes_are_a_traceback_and_the_row_before_them_is_kept(data):
    rows = parse_log(data)
    for pour in gather_pours(rows.events):
        pour_looks(pour)
        pour.room()
    if data.startswith(tuple(f"{HEAD}{end}{ROW}{end}".encode() for end in ("\n", "\r\n"))):
        assert same(rows.events)[0] == WATER


@pytest.mark.parametrize("cell", ["=1+1", "+1", "-1", "@SUM(A1)", "'=1", " =1", "x;=1", "x; -1", "＝1"])
def test_no_cell_is_run_as_a_formula(file, cell):
    append_events(file, replace(WATER, note=cell, pour_id=cell, recipe=cell))
    line = file.read_text(encoding="utf-8").splitlines()[1]
    for delimiter in (",", ";"):  # whichever a spreadsheet takes for the end of a cell
        for part in line.split(delimiter):
            first = part.strip().strip('"').strip()[:1]
            assert first not in tuple("=+@＝"), part
            assert first != "-" or part.strip().lstrip("-").replace(".", "").isdigit(), part
    (back,) = read_log(file).events
    assert back.note == back.pour_id == back.recipe == cell.strip()


def test_negative_numbers_stay_numbers(file):
    append_events(file, (WATER, Event("bench", START, "room", air_temp_c=-3.5)))
    assert ",-3.5," in file.read_text() and read_log(file).events[1].air_temp_c == -3.5


@given(st.text(st.sampled_from("=+-@';, \tab＝"), max_size=12))
def test_the_mark_of_text_comes_off_again(text):
    assert read_as_text(keep_as_text(text)) == text


@pytest.mark.parametrize(
    ("event", "message"),
    [
        (replace(WATER, note="two\nlines"), "note: a line break"),
        (replace(WATER, note="bell\x07"), "note: a line break"),
        (replace(WATER, note="x" * (LONGEST_TEXT + 1)), "at most"),
        (replace(WATER, pour_id=" "), "pour_id: nothing given"),
        (replace(WATER, event="poured"), "event: 'poured' given"),
        (replace(WATER, layer="top"), "layer: 'top' given"),
        (replace(WATER, mix_temp_c=60.0), "mix_temp_c"),
        (replace(WATER, mix_temp_c=float("nan")), "mix_temp_c"),
        (replace(WATER, cue="hard"), "cue"),
        (replace(WATER, time="8 am"), "time"),
        (replace(WATER, note=3), "must be text"),
    ],
)
def test_a_row_that_cannot_be_is_refused_before_anything_is_written(file, event, message):
    append_events(file, WATER)
    before = file.read_bytes()
    with pytest.raises(ValueError, match=message):
        append_events(file, (CHECK, event))
    assert file.read_bytes() == before


def test_rows_are_added_the_way_the_file_is_written(file):
    head = b"\xef\xbb\xbfnote;pour_id;time_iso;event;mix_temp_c;extra\r\n"
    file.write_bytes(head)
    append_events(file, WATER_ONLY := Event("bench", START, "water_in", mix_temp_c=16.5, note="a;b"))
    assert file.read_bytes() == head + b'"a;b";bench;2026-05-04T08:00:00;water_in;16,5;\r\n'
    assert same(read_log(file).events) == [WATER_ONLY]
    with pytest.raises(ValueError, match="no such column"):
        append_events(file, CHECK)
    assert file.read_bytes().count(b"\r\n") == 2


def test_a_file_that_is_no_log_is_not_touched(file):
    file.write_text("shopping list\n")
    with pytest.raises(ValueError, match="no shop log"):
        append_events(file, WATER)
    assert file.read_text() == "shopping list\n"


# ---- crash, full disk, two writers


@pytest.mark.parametrize("cut", range(1, 80, 3))
def test_a_row_torn_by_a_crash_spoils_no_other(file, cut):
    append_events(file, (WATER, replace(CHECK, note='a "quoted", note')))
    whole = file.read_bytes()
    file.write_bytes(whole[:-cut])
    append_events(file, replace(CHECK, time=START + timedelta(hours=3), note="after"))
    assert file.read_bytes().startswith(whole[:-cut])  # nothing before is rewritten
    log = read_log(file)
    assert same(log.events)[0] == WATER and log.events[-1].note == "after"
    if len(log.events) == 2:
        assert [problem.line for problem in log.problems] == [3] and "torn" in log.problems[0].reason
    else:  # cut off in its last cell or at its line end: the numbers are whole
        assert log.events[1].resistance_pa == CHECK.resistance_pa


class FailingWrite:
    """A disk that takes some bytes and then is full."""

    def __init__(self, taken):
        self.taken = taken

    def __call__(self, handle, block):
        if not self.taken:
            raise OSError(errno.ENOSPC, "No space left on device")
        return os_write(handle, block[: self.taken])


os_write = os.write


@pytest.mark.parametrize("taken", [0, 1, 40])
def test_a_full_disk_adds_nothing_and_loses_nothing(file, monkeypatch, taken):
    append_events(file, WATER)
    before = file.read_bytes()
    monkeypatch.setattr(log_write.os, "write", FailingWrite(taken))
    with pytest.raises(OSError, match=r"nothing was added.*earlier row is as it was") as error:
        append_events(file, CHECK)
    assert error.value.errno == errno.ENOSPC
    monkeypatch.undo()
    assert file.read_bytes() == before
    append_events(file, CHECK)
    assert same(read_log(file).events) == [WATER, CHECK]


@pytest.mark.skipif(not os.path.exists("/dev/full"), reason="no /dev/full here")
def test_the_full_device_is_said():
    with pytest.raises(OSError, match="nothing was added"):
        append_events("/dev/full", WATER)


def test_a_folder_or_a_missing_folder_is_said(tmp_path):
    for place in (tmp_path, tmp_path / "none" / "log.csv"):
        with pytest.raises(OSError, match="nothing was added"):
            append_events(place, WATER)


def add_many(path, name, count):
    for number in range(count):
        note = f"{name} {number} " + "x" * 300
        append_events(path, Event(name, START + timedelta(minutes=number), "water_in", note=note))


def test_two_writers_at_once_lose_no_row_and_mix_none(file):
    context = multiprocessing.get_context("spawn")
    writers = [context.Process(target=add_many, args=(file, name, 60)) for name in ("one", "two")]
    for writer in writers:
        writer.start()
    for writer in writers:
        writer.join(60)
    log = read_log(file)
    assert log.problems == () and file.read_text().count(WHOLE) == 1
    for name in ("one", "two"):
        notes = [event.note.split()[1] for event in log.events if event.pour_id == name]
        assert notes == [str(number) for number in range(60)]


def test_threads_of_one_program_do_not_mix_either(file):
    threads = [threading.Thread(target=add_many, args=(file, f"thread {number}", 20)) for number in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(60)
    assert len(read_log(file).events) == 80


def test_a_file_that_somebody_holds_is_waited_for_and_then_said(file, monkeypatch):
    fcntl = pytest.importorskip("fcntl")
    append_events(file, WATER)
    monkeypatch.setattr(log_write, "TRIES", 3)
    with open(file, "rb") as held:
        fcntl.flock(held, fcntl.LOCK_EX)
        with pytest.raises(OSError, match="another program holds it"):
            append_events(file, CHECK)
    append_events(file, CHECK)
    assert len(read_log(file).events) == 2


class ByteLocks:
    """Locks of single bytes as Windows gives them: from the place of the handle, refused with EACCES while held."""

    LK_NBLCK, LK_UNLCK = 2, 0

    def __init__(self):
        self.held, self.places = set(), []

    def locking(self, handle, how, count):
        byte = os.fstat(handle).st_ino, os.lseek(handle, 0, os.SEEK_CUR)
        assert count == 1
        if how == self.LK_UNLCK:
            self.held.remove(byte)
        elif byte in self.held:
            raise PermissionError(errno.EACCES, "Permission denied")
        else:
            self.held.add(byte)
            self.places.append(byte[1])


def test_where_locks_are_bytes_the_same_byte_far_behind_the_end_is_held_and_given_back(file, monkeypatch):
    locks = ByteLocks()
    monkeypatch.setattr(log_write, "fcntl", None)
    monkeypatch.setattr(log_write, "msvcrt", locks, raising=False)
    monkeypatch.setattr(log_write, "TRIES", 2)
    append_events(file, WATER)
    append_events(file, CHECK)
    assert same(read_log(file).events) == [WATER, CHECK] and not locks.held
    assert len(set(locks.places)) == 1 and locks.places[0] > 50_000_000  # beyond the largest log that is read
    locks.held.add((file.stat().st_ino, locks.places[0]))
    with pytest.raises(OSError, match="another program holds it"):
        append_events(file, CHECK)
    assert len(read_log(file).events) == 2


def test_without_locks_one_write_still_does(file, monkeypatch):
    def no_locks(handle):
        raise OSError(errno.ENOLCK, "No locks available")

    monkeypatch.setattr(log_write, "_lock", no_locks)
    append_events(file, WATER)
    append_events(file, CHECK)
    assert same(read_log(file).events) == [WATER, CHECK]


def test_adding_costs_no_more_in_a_long_log(file):
    append_events(file, WATER)
    row = file.read_bytes().splitlines(keepends=True)[1]
    with open(file, "ab") as long:
        long.write(row * 100_000)
    size = file.stat().st_size
    append_events(file, CHECK)
    assert size < file.stat().st_size < size + 300
    with open(file, "rb") as long:
        long.seek(size)
        assert long.read().startswith(b"bench,2026-05-04T10:30:00,check")


# ---- pours


def test_room_water_and_looks_of_a_pour():
    at = lambda hour: START + timedelta(hours=hour)  # noqa: E731
    events = (
        Event("p", START, "water_in", "base", recipe="m", mix_temp_c=17.0),
        Event("p", START, "room", air_temp_c=20.0, rh_fraction=0.4),
        Event("p", at(0.5), "water_in", "face", mix_temp_c=15.0),
        Event("p", at(2), "room", air_temp_c=24.0),
        Event("p", at(2.5), "check", "face", cue="strip seen", depth_m=0.005, surface_temp_c=18.0),
        Event("p", at(2.6), "check", "base", cue="strip not yet", resistance_pa=50_000.0),
    )
    (pour,) = gather_pours(events)
    assert (pour.start_h("base"), pour.start_h("face")) == (0.0, 0.5)
    assert (pour.mix_temp_c("base"), pour.mix_temp_c("face")) == (17.0, 15.0)
    room = pour.room()
    assert room.from_h == (0.0, 2.0) and room.air_temp_c == (20.0, 24.0) and room.rh_fraction == (0.4, 0.4)
    assert room.wind_m_s == (defaults.si("wind"),) * 2
    assert [look.kind for look, _ in pour_looks(pour, "face")] == ["seen", "print"]
    assert [look.kind for look, _ in pour_looks(pour, "base")] == ["not_yet", "rod"]
    assert pour.surface("face") == ((2.5, 18.0),) and pour.surface("base") == ()
    assert gather_pours(events[:1])[0].room() is None


def test_times_with_and_without_an_offset_can_be_added(file):
    zone = timezone(timedelta(hours=2))
    append_events(file, replace(WATER, time=START.replace(tzinfo=zone)))
    assert "2026-05-04T08:00:00+02:00" in file.read_text()
    assert read_log(file).events[0].time.utcoffset() == timedelta(hours=2)


@pytest.mark.parametrize("name", ["first_pour", "eight_pours"])
def test_the_demo_logs_have_no_bad_row(name):
    log = read_log(defaults.data_folder() / "logs" / f"{name}.csv")
    assert log.problems == () == log.remarks
    assert "invented" in log.events[0].note


def test_the_demo_log_with_slips_names_them():
    log = read_log(defaults.data_folder() / "logs" / "log_with_slips.csv")
    assert [problem.column for problem in log.problems] == ["event", "time_iso", "rh_fraction", "cue", "pr_kpa"]
    assert len(log.pours) == 3
