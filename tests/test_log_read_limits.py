"""Limits of the shop log as it is read, from both sides: lines, quotes, the longest pour, the hour that clocks change."""

import pytest
from log_rows import HEAD, ROW

from shop_calc.trade.logbook.log_cells import read_cue, read_number
from shop_calc.trade.logbook.log_lines import JOINED_LINES
from shop_calc.trade.logbook.log_plan import _some
from shop_calc.trade.logbook.log_read import LONGEST_POUR_H, parse_log
from shop_calc.trade.logbook.log_trust import trust_words
from shop_calc.trade.timeline.rod import rod_mass_kg


def test_a_file_of_nothing_but_a_separator_lacks_its_columns():
    for text, line in ((b"sep=;", 1), (b"sep=;\n", 2)):
        rows = parse_log(text)
        assert rows.events == ()
        assert [(problem.line, problem.column) for problem in rows.problems] == [(line, "pour_id")]


@pytest.mark.parametrize(("before", "line"), [("", 1), ("\n", 2), ("sep=,\n", 2)])
def test_a_column_that_is_not_known_is_remarked_at_the_line_of_the_header(before, line):
    rows = parse_log(f"{before}{HEAD},colour\n{ROW},\n".encode())
    assert [(remark.line, remark.column) for remark in rows.remarks] == [(line, "colour")]
    assert [event.line for event in rows.events] == [line + 1]


@pytest.mark.parametrize(("lines", "read"), [(JOINED_LINES, 2), (JOINED_LINES + 1, 1)])
def test_a_note_over_twenty_lines_is_one_row_and_a_longer_one_is_torn(lines, read):
    # JOINED_LINES is 20: the limit of the reader, a judgement
    note = '"' + "\n".join(["well"] * lines) + '"'
    rows = parse_log(f"{HEAD}\n{ROW}\n{ROW.replace('08:00:00', '09:00:00')}{note}\n".encode())
    assert len(rows.events) == read and bool(rows.problems) == (read == 1)


def test_a_row_with_an_open_quote_does_not_swallow_a_row_whose_note_is_quoted():
    torn, good = ROW.replace("08:00:00", "09:00:00") + '"never closed', ROW.replace("08:00:00", "10:00:00")
    rows = parse_log(f'{HEAD}\n{ROW}\n{torn}\n{good}"a, b"\n'.encode())
    assert [event.line for event in rows.events] == [2, 4] and rows.events[1].note == "a, b"
    assert [problem.line for problem in rows.problems] == [3]


def test_two_rows_with_open_quotes_do_not_swallow_the_quoted_row_between_them():
    times = ("09:00:00", "10:00:00", "11:00:00")
    first, good, second = (ROW.replace("08:00:00", time) for time in times)
    rows = parse_log(f'{HEAD}\n{ROW}\n{first}"never\n{good}"a, b"\n{second}"closed\n'.encode())
    assert [event.line for event in rows.events] == [2, 4] and rows.events[1].note == "a, b"
    assert [problem.line for problem in rows.problems] == [3, 5]


@pytest.mark.parametrize(("time", "kept"), [("2026-05-08T08:00", True), ("2026-05-08T08:01", False)])
def test_a_pour_lasts_four_days_and_not_a_minute_longer(time, kept):
    # LONGEST_POUR_H: four days after the first water, on 4 May at 08:00
    assert LONGEST_POUR_H == 4 * 24
    rows = parse_log(f"{HEAD}\n{ROW}\nbench,{time},check,,,,,,,,,,,\n".encode())
    assert len(rows.events) == 1 + kept and len(rows.problems) == 1 - kept


@pytest.mark.parametrize(
    ("first", "second", "asked"),
    [
        ("02:59", "02:00", True),
        ("03:00", "02:00", True),  # clocks go back by an hour
        ("03:01", "02:00", False),  # more than any clock goes back
        ("04:30", "03:59", True),
        ("04:50", "04:05", False),  # clocks change in the night, before four
        ("03:00", "03:00", False),  # two rows of one minute
    ],
)
def test_only_an_hour_back_and_only_in_the_night_is_taken_for_a_change_of_the_clock(first, second, asked):
    night = ROW.replace("08:00:00", "01:00:00")
    rows = parse_log(
        "\n".join((HEAD, night, *(f"bench,2026-05-04T{time}:00,check,,,,,,,,,,," for time in (first, second)))).encode()
    )
    assert len(rows.events) == 3
    assert [remark.line for remark in rows.remarks] == ([4] if asked else [])


@pytest.mark.parametrize(("length", "shown"), [(40, "x" * 40), (41, "x" * 37 + "...")])
def test_what_was_typed_is_repeated_in_at_most_forty_signs(length, shown):
    with pytest.raises(ValueError, match="given") as error:
        read_cue("x" * length)
    assert str(error.value).startswith(f"'{shown}' given")
    with pytest.raises(ValueError, match="given") as error:
        read_number("mix_temp_c", "x" * length)
    assert str(error.value).startswith(f"'{shown}' given")


@pytest.mark.parametrize(("count", "words"), [(3, "0; 1; 2"), (4, "0; 1; 2; and 1 more"), (5, "0; 1; 2; and 2 more")])
def test_more_lines_than_are_shown_are_counted(count, words):
    assert _some(list(range(count))) == words


def test_misses_are_said_in_minutes():
    # 0.9 h is 54 min, 1.0 h is 60 min
    said = trust_words(8, 1.0, 0.9, False)
    assert "missed by 54 min, by the defaults 60 min" in said


@pytest.mark.parametrize(
    ("column", "low", "high", "below", "above"),
    [
        # what a shop can have; a number beyond it is a slip of the unit (°F for °C, psi for kPa), judgements
        ("mix_temp_c", "0", "40", "-0.1", "40.5"),
        ("air_temp_c", "-5", "50", "-5.05", "50.5"),
        ("rh_fraction", "0", "1", "-0.01", "1.01"),
        ("wind_m_s", "0", "17", "-0.1", "17.1"),
        ("surface_temp_c", "-5", "60", "-5.05", "60.5"),
        ("pr_kpa", "0", "60000", "-1", "60100"),
        ("print_mm", "0", "100", "-1", "101"),
    ],
)
def test_a_number_is_taken_up_to_its_ends_and_refused_just_beyond(column, low, high, below, above):
    in_si = {"pr_kpa": 1000.0, "print_mm": 0.001}.get(column, 1.0)
    for cell in (low, high):
        assert read_number(column, cell) == pytest.approx(float(cell) * in_si, rel=1e-12)
    for cell in (below, above):
        with pytest.raises(ValueError, match="it must be from"):
            read_number(column, cell)


@pytest.mark.parametrize(("pours", "words"), [(4, "a good hint"), (5, "lean on it")])
def test_up_to_four_pours_a_fit_is_a_hint(pours, words):
    assert words in trust_words(pours, 0.5, 0.2, False)


@pytest.mark.parametrize(("diameter_mm", "taken"), [(100.0, True), (100.5, False), (0.0, False)])
def test_no_rod_is_thicker_than_a_hand_is_wide(diameter_mm, taken):
    # the scale under 1 kPa on 100 mm shows 1000 pi 0.1^2/4/9.80665 = 0.8009 kg
    if taken:
        assert rod_mass_kg(1000.0, diameter_mm / 1000) == pytest.approx(0.8009, abs=1e-4)
        return
    with pytest.raises(ValueError, match="rod diameter"):
        rod_mass_kg(1000.0, diameter_mm / 1000)
