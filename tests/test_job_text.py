"""A job written and read again is the same job, whatever stood in its texts."""

import copy
import tomllib
from datetime import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shop_calc.trade.jobs.job import demo_job, demo_jobs, parse_job, read_job
from shop_calc.trade.jobs.job_text import job_text
from shop_calc.trade.plan import make_plan
from shop_calc.trade.problems import Problems

BENCH = tomllib.loads(demo_job("garden_bench_top").read_text(encoding="utf-8"))
SEEN = st.text(
    st.one_of(
        st.sampled_from("\"'\\#=[]{}.,🪨é²½→\u2028 u0041nrt"),
        st.characters(exclude_categories=("Cc", "Cs")),
    ),
    min_size=1,
    max_size=60,
).filter(str.strip)
UNSEEN = st.sampled_from([*map(chr, range(32)), *map(chr, range(127, 160)), "\ud800", "\udfff"])


def with_name(name):
    return {**copy.deepcopy(BENCH), "name": name}


@pytest.mark.parametrize("name", demo_jobs())
def test_every_demo_job_is_the_same_after_writing_and_reading(name):
    job = read_job(demo_job(name))
    again = parse_job(job_text(job.entries))
    assert again.entries == job.entries and again.assumed == job.assumed
    assert (again.piece, again.mix, again.rooms, again.cost, again.cutouts) == (
        job.piece, job.mix, job.rooms, job.cost, job.cutouts
    )  # fmt: skip
    assert make_plan(again).batch.set_aside_kg == make_plan(job).batch.set_aside_kg


@given(SEEN)
def test_any_text_that_can_be_seen_comes_back_as_it_was(text):
    entries = with_name(text)
    entries["finish"]["sealer"] = "none"
    entries["cost"]["prices"][text] = {"count": 2, "price": 1.5}
    again = parse_job(job_text(entries))
    assert again.entries == entries and again.name == text.strip()


@given(SEEN, UNSEEN, st.integers(0, 60))
def test_a_sign_that_cannot_be_seen_is_refused(text, sign, place):
    with pytest.raises(ValueError, match=r"^name: .* it must be one line of signs that can be seen"):
        job_text(with_name(text[:place] + "a" + sign + "b" + text[place:]))


@given(st.floats(0.25, 90.0), st.integers(1, 12), st.datetimes(datetime(2000, 1, 1), datetime(2100, 1, 1)))
def test_numbers_and_times_come_back_to_the_last_digit(minutes, hands, start):
    entries = copy.deepcopy(BENCH)
    entries["mixer"]["minutes_per_load"] = max(minutes, 5.0)
    entries["day"] |= {"hands": hands, "water_in": start}
    entries["room"] = [{"from": start, "air": "70 F", "humidity": 50, "wind": "0 mph"}]
    assert tomllib.loads(job_text(entries)) == entries


def test_every_sort_of_table_comes_back():
    entries = copy.deepcopy(BENCH)
    entries["piece"] |= {
        "drop": {"edge": "front", "depth": "3 in", "width": "2 in"},
        "cutout": [
            {"shape": "circle", "diameter": "2 in", "at": ["30 in", "7 1/2 in"], "exposed": True},
            {"shape": "polygon", "points": [["0 in", "0 in"], ["2 in", "0 in"], ["1 in", "2 in"]], "at": ["9 in", "5 in"]},
        ],
    }
    entries["mix"]["recipe"] = {
        "name": "mine", "w_cm": 0.33,
        "parts": {"portland cement": 100, "fine silica sand": {"amount": 100, "state": "oven-dry"}},
    }  # fmt: skip
    assert parse_job(job_text(entries)).entries == entries


def test_nothing_is_written_that_cannot_be_read():
    with pytest.raises(Problems, match="did you mean 'length'"):
        job_text({**BENCH, "piece": {**BENCH["piece"], "lenght": "5 ft"}})
    for value in (float("nan"), None, {1, 2}):
        with pytest.raises(ValueError, match=r"mix\.recipe"):
            job_text({**BENCH, "mix": {**BENCH["mix"], "recipe": {"w_cm": value}}})


def test_the_first_signs_after_the_hidden_ones_are_kept():
    # 0x80 to 0x9f are controls; from 0xa0 on they are a space, a mark, cent and pound
    for sign in "\u00a1\u00a2\u00a3":
        assert read_back(with_name(f"top {sign}")) == f"top {sign}"
    with pytest.raises(ValueError, match="signs that can be seen"):
        job_text(with_name("top \u009f"))


def read_back(entries):
    return tomllib.loads(job_text(entries))["name"]
