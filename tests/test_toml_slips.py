"""A job file that is no TOML: the line, and what people usually meant, without a word of the reader's."""

import pytest

from shop_calc.trade.jobs.job import parse_job
from shop_calc.trade.jobs.job_check import check_job
from shop_calc.trade.jobs.job_entries import shown
from shop_calc.trade.problems import Problems

TOP = 'format = 1\nname = "x"\n'


def said(text):
    with pytest.raises(Problems) as caught:
        parse_job(text)
    return str(caught.value)


@pytest.mark.parametrize(
    ("lines", "place", "hint"),
    [
        ("[piece]\nlength = 5 ft\n", "line 4: length = 5 ft;", "sizes stand between quotes"),
        ('[piece]\nlength = "10\'6""\n', "line 4:", "inch mark between quotes takes a backslash"),
        ('[piece]\nlength = "6" wide"\n', "line 4:", "inch mark between quotes takes a backslash"),
        ("[piece]\nlength = \u201c5 ft\u201d\n", "line 4:", "quotes must be straight"),
        ("[piece]\nlength = \"5 ft\n", "line 4:", "a quote is missing"),
        ('[piece]\nlength: "5 ft"\n', "line 4:", "a line is an entry"),
        ("[piece\n", "line 3: [piece;", "between brackets"),
        ("[piece]\n[piece]\n", "line 4: [piece];", "stands twice"),
        ('[piece]\nlength = "5 ft"\nlength = "6 ft"\n', "line 5:", "stands twice"),
        ("[day]\nwater_in = 2026-13-03T07:30:00\n", "line 4:", "no such date or time"),
        ("[day]\nwater_in = 2026-05-04 8:00\n", "line 4:", "no such date or time"),
        ("[day]\nwater_in = 04/05/2026\n", "line 4:", "no such date or time"),
        ('[piece]\nexposed = ["front"\nuse = "top"\n', "line 5:", "lacks its bracket"),
        ('[piece]\nlength = "5\\\\ ft"\n'.replace("\\\\", "\\"), "line 4:", "backslash"),
    ],
)
def test_a_line_that_cannot_be_read_is_shown_with_what_was_meant(lines, place, hint):
    words = said(TOP + lines)
    assert words.startswith(f"job file, {place}") and hint in words, words
    assert "\n" not in words and "Expected" not in words and "(at line" not in words


def test_a_long_line_and_signs_that_steer_a_terminal_are_not_repeated():
    words = said(TOP + "length = 5 " + "f" * 200 + "\n")
    assert len(words) < 200 and "..." in words
    assert "\x1b" not in said(TOP + "length \x1b[31m = 5 ft\n")


def test_what_was_typed_is_repeated_as_it_was_typed():
    day = "[day]\nwater_in = 2026-10-03\n[[layers]]\nface = \"1/4 in\"\n"
    words = said(TOP + day)
    assert "day.water_in: 2026-10-03 given; it must be date and time" in words
    assert "[[layers]]: double brackets given; write [layers] in single ones" in words
    assert "datetime" not in words and "{" not in words
    assert shown({"a": 1}) == "a table of a" and shown([{"a": 1}]) == "a list of tables" and shown({}) == "a table of nothing"


def test_an_entry_that_is_missing_is_named_with_what_it_is():
    with pytest.raises(Problems) as caught:
        check_job({"format": 1, "name": "x", "piece": {}})
    assert "piece.thickness: nothing given; it must be there: " in str(caught.value)
