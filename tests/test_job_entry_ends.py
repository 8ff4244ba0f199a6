"""The ends of what a job file may hold, from both sides, and how a message names them."""

import copy
import tomllib
from datetime import datetime

import pytest

from shop_calc.trade.after.finish import FinishChoice
from shop_calc.trade.jobs.job import check_job, demo_job
from shop_calc.trade.jobs.job_fields import FIELDS
from shop_calc.trade.jobs.price_entries import read_costs
from shop_calc.trade.problems import Collector, Problems

BENCH = tomllib.loads(demo_job("garden_bench_top").read_text(encoding="utf-8"))


def refusal(section, name, value):
    """What is said to an entry of a part of the file, or nothing."""
    entries = copy.deepcopy(BENCH)
    (entries if section is None else entries.setdefault(section, {}))[name] = value
    if name == "water_in":
        entries["room"] = [dict(entries["room"][0], **{"from": value})]
    try:
        check_job(entries)
    except Problems as problems:
        return "\n".join(problems.lines)
    return ""


@pytest.mark.parametrize(
    ("section", "name", "value", "words"),
    [
        # 300 signs of a name, a million of anything counted, years from 1900 to 2200: judgements of the reader
        (None, "name", "n" * 300, ""),
        (None, "name", "n" * 301, "some words of at most 300 characters"),
        ("mix", "stone_material", "n" * 301, "it must be a name in words"),
        ("day", "hands", 1_000_000, "it must be at least 1 and at most 12"),  # row hands of data/defaults.csv
        ("day", "hands", 1_000_001, "it must be a whole number"),
        ("day", "hands", 12, ""),
        ("day", "hands", 13, "it must be at least 1 and at most 12"),
        ("day", "water_in", datetime(1900, 1, 1, 8), ""),
        ("day", "water_in", datetime(1899, 12, 31, 8), "a year from 1900 to 2200"),
        ("day", "water_in", datetime(2200, 12, 31, 8), ""),
        ("day", "water_in", datetime(2201, 1, 1, 8), "a year from 1900 to 2200"),
        # rows minutes_per_load and rest_after_mixing: 3 to 180 min, 0 to 60 min; a bare number is minutes
        ("mixer", "minutes_per_load", 180, ""),
        ("mixer", "minutes_per_load", 181, "it must be at least 3 and at most 180"),
        ("mixer", "minutes_per_load", 2.9, "it must be at least 3 and at most 180"),
        ("mixer", "minutes_per_load", 1_000_000, "it must be at least 3 and at most 180"),
        # row humidity: 1 to 100 %
        ("place", "humidity", 1, ""),
        ("place", "humidity", 0.9, "it must be percent, from 1 to 100"),
        ("place", "humidity", 100, ""),
        ("place", "humidity", 101, "it must be percent, from 1 to 100"),
        ("place", "humidity", "0.5 %", "it must be at least 1 and at most 100"),
    ],
)
def test_an_entry_is_taken_up_to_its_end_and_refused_beyond_it(section, name, value, words):
    said = refusal(section, name, value)
    assert words in said and bool(words) == bool(said), said


def costs(table):
    found = Collector()
    read = read_costs(found, table)
    try:
        found.raise_if_any()
    except Problems as problems:
        return read, "\n".join(problems.lines)
    return read, ""


@pytest.mark.parametrize(
    ("row", "words"),
    [
        ({"pack": "94 lb", "price": 1e6}, ""),  # dearer is a slip of the comma, a judgement
        ({"pack": "94 lb", "price": 1_000_001}, "a plain number from 0 to 1e+06"),
        ({"count": 1000, "price": 1}, ""),
        ({"count": 1001, "price": 1}, "a plain number from 0 to 1000"),
    ],
)
def test_a_price_and_a_count_have_an_end(row, words):
    _, said = costs({"prices": {"thing": row}})
    assert words in said and bool(words) == bool(said), said


@pytest.mark.parametrize(("count", "kept"), [(60, 60), (61, 0)])
def test_a_price_list_has_at_most_sixty_materials(count, kept):
    read, said = costs({"prices": {f"thing {number}": {"count": 1, "price": 1} for number in range(count)}})
    assert len(read["prices"]) == kept and ("at most 60 materials" in said) is (kept == 0)


@pytest.mark.parametrize(("sign", "kept"), [("euro", "euro"), ("euros", "")])
def test_a_currency_has_at_most_four_letters(sign, kept):
    read, said = costs({"currency": sign})
    assert read["currency"] == kept and ("at most 4 letters" in said) is (kept == "")


def test_polishing_goes_from_200_to_800_where_nothing_is_said():
    # common practice, no source; the file and the function alike
    entries = copy.deepcopy(BENCH)
    entries["finish"] = {}
    finish = check_job(entries).finish
    assert (finish["first_grit"], finish["last_grit"]) == (200, 800)
    defaults = {field.name: field.default for field in FIELDS["finish"]}
    assert (defaults["first_grit"], defaults["last_grit"]) == (200, 800)
    assert (FinishChoice().first_grit, FinishChoice().last_grit) == (200, 800)
