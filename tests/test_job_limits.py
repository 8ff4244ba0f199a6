"""Limits of a job file, from both sides: what is repeated of an entry, corners, tables, the clock of the morning after."""

import copy
import tomllib

import pytest
from demo_plans import demo_plan

from shop_calc.trade.jobs.job import check_job, demo_job
from shop_calc.trade.jobs.job_entries import shown
from shop_calc.trade.jobs.job_text import job_text
from shop_calc.trade.plan_backwards import next_clock
from shop_calc.trade.problems import Problems

BENCH = tomllib.loads(demo_job("garden_bench_top").read_text(encoding="utf-8"))


@pytest.mark.parametrize(("length", "end"), [(58, "x'"), (59, "...")])
def test_an_entry_is_repeated_in_at_most_sixty_signs(length, end):
    # two quotes and 58 signs are sixty
    said = shown("x" * length)
    assert len(said) == 60 and said.endswith(end)


def polygon(corners):
    """A comb of so many corners, 2 ft deep, on a top of 20 ft."""
    teeth = [[f"{number * 0.1:.1f} ft", f"{2.0 + 0.1 * (number % 2):.1f} ft"] for number in range(corners - 2)]
    entries = copy.deepcopy(BENCH)
    entries["piece"] = {"outline": "polygon", "thickness": "2 in", "use": "top", "exposed": "none",
                        "points": [["0 ft", "0 ft"], [f"{(corners - 3) * 0.1:.1f} ft", "0 ft"], *reversed(teeth)]}  # fmt: skip
    return entries


@pytest.mark.parametrize(("corners", "read"), [(3, True), (200, True), (201, False)])
def test_an_outline_has_three_to_two_hundred_corners(corners, read):
    if read:
        assert len(check_job(polygon(corners)).piece["points"]) == corners
        return
    with pytest.raises(Problems, match=r"piece\.points: .* 3 to 200 corners"):
        check_job(polygon(corners))


def test_two_corners_are_no_outline():
    entries = polygon(3)
    entries["piece"]["points"].pop()
    with pytest.raises(Problems, match=r"piece\.points: .* 3 to 200 corners"):
        check_job(entries)


def test_rows_and_tables_of_a_part_are_written_under_headings_of_their_own_and_deeper_ones_on_a_line():
    entries = copy.deepcopy(BENCH)
    entries["piece"]["cutout"] = [{"shape": "circle", "diameter": "2 in", "at": ["30 in", "7 1/2 in"]}]
    entries["mix"]["recipe"] = {"w_cm": 0.33, "parts": {"portland cement": 100, "fine silica sand": 100}}
    lines = job_text(entries).splitlines()
    assert "[[piece.cutout]]" in lines and "[mix.recipe]" in lines and "[[room]]" in lines
    assert 'parts = { "portland cement" = 100, "fine silica sand" = 100 }' in lines


@pytest.mark.parametrize("sign", ["\ue000", "\ue001", "\ue100", "\uf8ff", "~"])
def test_signs_next_to_those_that_are_refused_are_kept(sign):
    # 0xe000 to 0xf8ff are signs of somebody's own font; 0xd800 to 0xdfff are halves of signs, 0x7f to 0x9f controls
    assert tomllib.loads(job_text({**BENCH, "name": f"top {sign}"}))["name"] == f"top {sign}"


@pytest.mark.parametrize("sign", ["\x1f", "\x7f", "\x80", "\x81", "\x9f", "\ud800", "\udfff"])
def test_signs_that_cannot_be_seen_are_refused(sign):
    with pytest.raises(ValueError, match="signs that can be seen"):
        job_text({**BENCH, "name": f"top {sign}"})


@pytest.mark.parametrize(
    ("text", "wanted"),
    [("08:01", "2026-05-04 08:01:00"), ("08:00", "2026-05-05 08:00:00"), ("07:59", "2026-05-05 07:59:00")],
)
def test_a_time_that_is_past_is_meant_of_the_day_after(text, wanted):
    # the bench begins on 4 May 2026 at 08:00
    assert str(next_clock(demo_plan("garden_bench_top"), text)) == wanted
