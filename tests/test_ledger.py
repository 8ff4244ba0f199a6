"""data/ledger.csv says of every number where it comes from; it must be whole and fresh."""

import csv
from functools import cache

import pytest
from make_ledger import COLUMNS, FILE, ledger, marks_in

from shop_calc.trade.working import MARKS

AGAIN = "python tests/make_ledger.py writes it anew"


@cache
def stored():
    with open(FILE, encoding="utf-8", newline="") as file:
        lines = csv.DictReader(file)
        assert tuple(lines.fieldnames) == COLUMNS
        return list(lines)


def key(row):
    return row["kind"], row["name"], *((row["mark"], row["source"]) if row["kind"] == "working" else ())


def test_nothing_is_missing_and_nothing_is_stale():
    fresh, kept = {key(row): row for row in ledger()}, {key(row): row for row in stored()}
    assert sorted(set(fresh) - set(kept)) == [], f"missing: {AGAIN}"
    assert sorted(set(kept) - set(fresh)) == [], f"there is no such number any more: {AGAIN}"
    for name, row in fresh.items():
        for column in COLUMNS[:-2]:
            assert kept[name][column] == row[column], f"{name}, {column}: {AGAIN}"
        assert bool(kept[name]["without_row"]) == bool(row["without_row"]), f"{name}: {AGAIN}"
        if row["row_count"] not in ("", "0"):  # the last digit may differ from machine to machine
            assert float(kept[name]["worst_miss_fraction"]) == pytest.approx(float(row["worst_miss_fraction"]), abs=0.02)


def test_every_number_has_its_mark_and_its_source():
    for row in stored():
        assert row["source"], row["name"]
        words = row["mark"].split()
        assert row["mark"] == "as its parts" or (words and set(words) <= set(MARKS)), row["name"]
        assert (row["kind"], row["mark"]) != ("constant", "as its parts"), row["name"]


def test_a_function_has_rows_within_their_tolerance_or_a_reason():
    for row in stored():
        if row["kind"] == "function":
            assert (int(row["row_count"]) > 0) != bool(row["without_row"]), row["name"]
            if row["rows"]:
                assert len(row["rows"].split()) == int(row["row_count"])
                assert 0 <= float(row["worst_miss_fraction"]) <= 1.001, row["name"]


def test_the_kinds_are_all_there():
    counts = {kind: sum(row["kind"] == kind for row in stored()) for kind in ("function", "constant", "default", "working")}
    assert counts["function"] > 300 and counts["constant"] > 100 and counts["default"] > 100 and counts["working"] > 150


def test_marks_are_read_from_words():
    assert marks_in("From memory of Schindler 2004.") == "memory"
    assert marks_in("read: NIOSH; the jolt is our judgement") == "read judgement"
    assert marks_in("a bread shop") == ""
