"""The shop log as it is read: however a spreadsheet saved it, every bad row named, midnight and the clock."""

from dataclasses import replace

import pytest
from log_rows import HEAD, ROW, WATER, same

from shop_calc.trade.logbook.log_fields import COLUMNS
from shop_calc.trade.logbook.log_read import parse_log
from shop_calc.trade.logbook.shop_log import gather_pours, read_log


def words(rows):
    return [str(problem) for problem in rows.problems]


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
