"""Dropped edges in a job file: one table as ever, several, a list of edges; and what a slip is told."""

import copy
import tomllib

import pytest
from case_jobs import PLAIN

from shop_calc.lesson.sheet.build import sheet_body
from shop_calc.lesson.sheet.facts import sheet_facts
from shop_calc.lesson.sheet.fit import parts_of_the_day
from shop_calc.trade.job_parts import day_inputs, piece_of
from shop_calc.trade.jobs.job import check_job, parse_job
from shop_calc.trade.jobs.job_text import job_text
from shop_calc.trade.plan import make_plan
from shop_calc.trade.problems import Problems
from shop_calc.trade.report import report

IN = 0.0254
FRONT = {"edge": "front", "depth": "3 in", "width": "2 in"}


def with_drop(drop, **piece):
    entries = copy.deepcopy(PLAIN)
    entries["piece"] |= {**piece, "drop": drop}
    return entries


def piece(drop, **more):
    return piece_of(check_job(with_drop(drop, **more)))


def test_one_table_as_ever_is_one_row_of_an_array():
    assert piece(FRONT).drop == piece([FRONT]).drop and len(piece(FRONT).drop) == 1
    assert piece([]).drop == ()


def test_a_list_of_edges_is_a_row_for_each():
    rows = [FRONT | {"edge": name} for name in ("front", "left", "right")]
    assert piece(FRONT | {"edge": ["front", "left", "right"]}).drop == piece(rows).drop
    # 60 x 15 x 1.5 in; below it 60 x 2 and twice 13 x 2, 1.5 high
    assert piece(rows).volume_m3 / IN**3 == pytest.approx(1350 + (120 + 52) * 1.5)
    assert piece([FRONT | {"edge": [" Front "]}]).drop[0].edge == "front"


def test_depths_may_differ():
    mixed = piece([FRONT | {"depth": "4 in"}, FRONT | {"edge": ["left", "right"]}])
    assert mixed.volume_m3 / IN**3 == pytest.approx(1350 + 120 * 2.5 + 52 * 1.5)


@pytest.mark.parametrize("drop", [FRONT, [FRONT, FRONT | {"edge": ["left", "right"], "depth": "4 in"}]])
def test_a_file_with_drops_is_written_and_read_again(drop):
    entries = with_drop(drop)
    again = parse_job(job_text(entries))
    assert again.entries == entries
    assert job_text(entries).count("[[piece.drop]]") == (2 if isinstance(drop, list) else 0)


def said(drop, **more):
    with pytest.raises(Problems) as caught:
        make_plan(check_job(with_drop(drop, **more)))
    return str(caught.value)


@pytest.mark.parametrize(
    ("drop", "words"),
    [
        ([FRONT, FRONT | {"edge": "left", "depth": "2 cows"}], "piece.drop 2.depth: "),
        ([FRONT, {"edge": "left", "depth": "3 in"}], "piece.drop 2.width: nothing given; it must be there"),
        ([FRONT, FRONT | {"edge": []}], "piece.drop 2.edge: [] given; it must be an edge, or a list of edges"),
        (FRONT | {"edge": 3}, "piece.drop.edge: 3 given; it must be an edge, or a list of edges"),
        (FRONT | {"edge": ["front", ""]}, "piece.drop.edge: "),
        (FRONT | {"egde": "front"}, "piece.drop.egde: no such entry; did you mean 'edge'?"),
        ("3 in", "[piece.drop]: '3 in' given; it must be a part of the file"),
        (["front"], "[piece.drop 1]: 'front' given; it must be a part of the file with entries below it"),
        (FRONT | {"depth": "3000 ft"}, "piece.drop.depth: '3000 ft' given; it must be at least 3/8\" (10 mm) and at most 1'"),
        ([FRONT] * 31, "[[piece.drop]]: 31 rows given; it must be at most 30"),
        ([FRONT, FRONT], "dropped edge 'front': given twice; each edge drops once"),
        (FRONT | {"edge": ["front", "front"]}, "dropped edge 'front': given twice"),
        ([FRONT, FRONT | {"edge": "inner back"}], "dropped edge: 'inner back' given; the edges are front, right, back, left"),
        ([FRONT, FRONT | {"edge": "left", "depth": "1 1/2 in"}], "depth of dropped edge 'left': 1 1/2"),
        ([FRONT | {"width": "8 in"}, FRONT | {"edge": "back", "width": "7 in"}], "leave room for a filler board"),
    ],
)
def test_a_slip_is_named_by_its_entry_or_its_edge(drop, words):
    assert words in said(drop)


def test_a_wall_edge_does_not_drop():
    assert "dropped edge 'left': it is not exposed" in said([FRONT, FRONT | {"edge": "left"}], exposed=["front"])


def test_the_base_stands_as_high_as_the_deepest_drop_before_the_face_goes_on():
    # base 1.25 in deep, at a drop of 4 in it stands 3.75 in high; three times the height asks three times the yield stress
    drops = [FRONT | {"depth": "4 in"}, FRONT | {"edge": "left"}]
    plain, deep = (make_plan(check_job(entries)) for entries in (PLAIN, with_drop(drops)))
    assert deep.day.samples.inputs.standing_m / IN == pytest.approx(3.75)
    assert plain.day.samples.inputs.standing_m / IN == pytest.approx(1.25)
    demand = [next(step.value for step in plan.working if step.name == "base_edge_demand_pa") for plan in (plain, deep)]
    assert demand[1] / demand[0] == pytest.approx(3.0)
    assert deep.day.stage("face").likely_from_h > plain.day.stage("face").likely_from_h
    assert day_inputs(deep.job, deep.layers, deep.batch).drop_m / IN == pytest.approx(2.5)


def test_the_plan_says_every_drop_weighs_it_and_mixes_for_it():
    text = report(make_plan(check_job(with_drop([FRONT | {"depth": "4 in"}, FRONT | {"edge": ["left", "right"]}]))), "us")
    assert 'front to 4", returning 2"' in text and 'right and left to 3", returning 2"' in text
    assert "return face: front" in text and "filler board" in text
    three = FRONT | {"edge": ["front", "left", "right"]}
    plain, plan = (make_plan(check_job(entries)) for entries in (PLAIN, with_drop(three)))
    assert plan.layers.total_m3 / plain.layers.total_m3 == pytest.approx(1608 / 1350)  # 258 in3 more on 1350
    assert plan.form.mass_kg == pytest.approx(plan.handling.lift.mass_kg, rel=1e-9)
    assert plan.batch.mixed_m3 > plan.layers.total_m3


def test_the_sheet_says_edges_that_drop_alike_in_one_line_and_makes_room_for_it():
    drops = [FRONT | {"depth": "4 in"}, FRONT | {"edge": ["left", "right"]}]
    plain, plan = (sheet_facts(make_plan(check_job(entries))) for entries in (PLAIN, with_drop(drops)))
    assert [(drop["edge"], drop["many"]) for drop in plan["piece"]["drops"]] == [("front", False), ("right and left", True)]
    assert parts_of_the_day(plan)["piece"] >= parts_of_the_day(plain)["piece"] + 2 * 16.5 - 1e-9
    page = sheet_body(make_plan(check_job(with_drop(drops))))
    assert "Edges right and left drop to" in page and "Edge front drops to" in page


def test_toml_of_the_documentation():
    text = '[[piece.drop]]\nedge = ["front", "left"]\ndepth = "3 in"\nwidth = "2 in"\n'
    assert tomllib.loads(text)["piece"]["drop"][0]["edge"] == ["front", "left"]
