"""Rows added to the shop log come back as they were, in the form that the file already has."""

from dataclasses import fields, replace
from datetime import datetime, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from log_rows import CHECK, HEAD, ROW, START, WATER, WHOLE, same

from shop_calc.trade.logbook.log_cells import LONGEST_TEXT, keep_as_text, read_as_text
from shop_calc.trade.logbook.log_fields import COLUMNS
from shop_calc.trade.logbook.log_read import parse_log
from shop_calc.trade.logbook.shop_log import Event, append_events, gather_pours, pour_looks, read_log


@pytest.fixture
def file(tmp_path):
    return tmp_path / "log.csv"


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
