"""The cut list on the shop sheet: what all boards of a kind share is said once, what each is cut to stays with it."""

import copy
import re
import tomllib

from shop_calc.lesson.sheet.facts import sheet_facts
from shop_calc.lesson.sheet.fit import parts_of_the_mix
from shop_calc.lesson.sheet.weigh_facts import cut_facts
from shop_calc.trade.jobs.job import check_job, demo_job
from shop_calc.trade.plan import make_plan

BENCH = tomllib.loads(demo_job("garden_bench_top").read_text(encoding="utf-8"))
DEEP_L = {"outline": "L", "length": "12 ft", "width": "9 ft", "notch_length": "118 in", "notch_width": "82 in",
           "thickness": "1 3/4 in", "exposed": "all", "use": "top"}  # fmt: skip
FOUR_DEPTHS = [
    {"edge": ["front", "left"], "depth": "3 in", "width": "2 in"},
    {"edge": ["inner back", "inner right"], "depth": "5 in", "width": "1 1/2 in"},
    {"edge": "right", "depth": "2 1/2 in", "width": "2 1/4 in"},
    {"edge": "back", "depth": "2 3/4 in", "width": "2 1/4 in"},
]


def planned(drops, piece=None):
    entries = copy.deepcopy(BENCH)
    entries["piece"] = (piece or entries["piece"]) | {"drop": drops}
    return make_plan(check_job(entries))


def test_what_all_say_stands_once_and_each_keeps_its_numbers_and_mitres():
    plan = planned(FOUR_DEPTHS, DEEP_L)
    rows, shown = plan.form.rows, cut_facts(plan)["rows"]
    for kind, words in (("filler board", "coated on top, fixed"), ("return face", "the edge of the filler board")):
        mine = [row["note"] for row in shown if row["name"].startswith(kind)]
        assert len(mine) > 2 and [words in note for note in mine] == [True] + [False] * (len(mine) - 1)
        assert "; all of them " in mine[0]
    for row, told in zip(rows, shown, strict=True):
        if row.name == "filler board":
            assert re.findall(r"[^;]*\d[^;]*", row.note) == re.findall(r"[^;]*\d[^;]*", told["note"].split("; all of them")[0])
        if "mitred" in row.note:
            at = re.search(r"mitred to (?:([\d.]+) degrees at )?(.*)", row.note).group(2).replace(".0 degrees", "°")
            assert at.replace(" degrees", "°") in told["note"] and "degrees" not in told["note"]


def test_of_two_boards_each_says_all():
    shown = cut_facts(planned([{"edge": ["front", "left"], "depth": "3 in", "width": "2 in"}]))["rows"]
    faces = [row["note"] for row in shown if row["name"].startswith("return face")]
    assert faces == ["on the edge of the filler board; one end mitred 45° at " + name for name in ("front", "left")]


def test_a_long_name_takes_no_second_line_on_the_page_of_the_mix():
    tall = {len(name): parts_of_the_mix(sheet_facts(make_plan(check_job(BENCH | {"name": name}))))["top"]
            for name in ("x" * 60, "x" * 100)}  # fmt: skip
    assert len(set(tall.values())) == 1
