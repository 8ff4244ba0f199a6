"""The sketch on the shop sheet: sizes stay off the openings and outside the piece."""

import re
import tomllib

from demo_plans import demo_plan

from shop_calc.lesson.sheet import sketch as drawn
from shop_calc.lesson.sheet.day_facts import day_facts
from shop_calc.lesson.sheet.weigh_facts import weigh_facts
from shop_calc.trade.jobs.job import check_job, demo_job
from shop_calc.trade.plan import make_plan
from shop_calc.trade.shape.outline import circle, l_shape, place, rectangle, u_shape
from shop_calc.trade.shape.piece import Cutout, build_piece

IN = 0.0254


def kitchen(*holes):
    return build_piece(l_shape(126 * IN, 96 * IN, 100.5 * IN, 70.5 * IN), 1.5 * IN, True, holes)


def test_a_sink_near_an_end_does_not_push_the_sizes_into_the_piece():
    sink = Cutout(place(rectangle(30 * IN, 16 * IN), (60 * IN, 12.75 * IN)), name="sink")
    cooktop = Cutout(place(rectangle(28.5 * IN, 19.5 * IN), (102 * IN, 12.75 * IN)), name="cooktop")
    plain, holed = drawn.sketch(kitchen()), drawn.sketch(kitchen(sink, cooktop))
    places = re.compile(r"<g transform=[^>]+>")
    assert len(places.findall(plain)) == 6
    assert places.findall(holed) == places.findall(plain)


def test_the_number_of_a_small_opening_keeps_its_place_to_the_right():
    tap, sink = place(circle(1.375 * IN), (60 * IN, 12 * IN)), place(rectangle(30 * IN, 20 * IN), (60 * IN, 12 * IN))
    piece = kitchen(Cutout(tap, name="tap"))
    paper = drawn._Paper(piece)
    assert paper.small(tap.polygon) and not paper.small(sink.polygon)
    right = paper.spot(tap.polygon.bounds[2:])[0]
    assert paper.taken[0][2] == right + 20


def test_the_last_line_of_the_day_wants_what_the_night_wants():
    for name, words in (("garden_bench_top", "leave it open"), ("sink_top_hot_day", "damp fabric flat, plastic over it")):
        last = day_facts(demo_plan(name))["stages"][-1]
        assert last["key"] == "stop" and last["tool"] == words and "cover" not in last["if_then"]


def test_only_the_load_of_face_has_a_box_for_the_face():
    job = tomllib.loads(demo_job("garden_bench_top").read_text(encoding="utf-8"))
    job["mixer"]["usable"], job["layers"]["face"] = "10 L", "3/8 in"
    plan = make_plan(check_job(job))
    assert plan.batch.face_alone
    facts = weigh_facts(plan)
    (step,) = [step for step in facts["steps"] if step["kind"] == "aside"]
    (row,) = [row for row in step["rows"] if row["name"] == "all of it, covered"]
    assert len(row["masses"]) == len(facts["groups"]) > 1
    assert [bool(mass) for mass in row["masses"]] == [group["name"] == "face" for group in facts["groups"]]


def test_the_size_of_a_notch_stands_before_its_mouth_where_a_sink_is_behind_it():
    sink = Cutout(place(rectangle(30 * IN, 16 * IN), (66 * IN, 12 * IN)), name="sink")
    piece = build_piece(u_shape(132 * IN, 108 * IN, 82 * IN, 82 * IN, 25 * IN), 1.5 * IN, True, [sink])
    paper = drawn._Paper(piece)
    left, high, right, low = paper._box(sink.outline.polygon)
    found = re.findall(r"<g transform=.translate\(([\d.-]+) ([\d.-]+)\)", drawn.sketch(piece))
    places = [(float(x), float(y)) for x, y in found]
    assert len(places) >= 5
    assert not any(left - 20 < x < right + 20 and high - 12 < y < low + 12 for x, y in places)


def test_the_number_of_a_flat_opening_stands_beside_it_and_not_on_its_edge():
    sink = Cutout(place(rectangle(30 * IN, 8 * IN), (60 * IN, 12 * IN)), name="sink")
    piece = kitchen(sink)
    paper = drawn._Paper(piece)
    right = paper.spot(sink.outline.polygon.bounds[2:])[0]
    number = re.search(r'<text x="([\d.]+)"[^>]*>1</text>', drawn.sketch(piece))
    assert paper.small(sink.outline.polygon) and right + 3 < float(number.group(1)) < right + 12
