"""The form of the printed plan: headings, columns that break where the page ends, and what is said only past a limit."""

import functools
from dataclasses import replace

import pytest
from demo_plans import NAMES, demo_plan
from demo_plans import bench as changed_bench

from shop_calc.trade.report import report
from shop_calc.trade.report_parts import WIDTH, columns, heading

FT2 = 0.3048**2


@functools.cache
def bench():
    """One plan for the tests that change a part of it and print it."""
    return demo_plan("garden_bench_top")


@pytest.fixture(params=NAMES)
def plan(request):
    return demo_plan(request.param)


def part(text, title):
    """The lines below a heading up to the next empty line but one, with the line under the heading."""
    _, found, rest = text.partition(f"\n{title}")
    assert found, title
    first, _, body = rest.partition("\n")
    under, _, body = body.partition("\n")
    assert under == "-" * len(title + first)
    lines, after = body.split("\n"), []
    for number, line in enumerate(lines):
        if number + 1 < len(lines) and lines[number + 1] and set(lines[number + 1]) == {"-"}:
            break
        after.append(line)
    return "\n".join(after)


def test_every_part_has_its_heading_and_what_belongs_under_it(plan):
    text = report(plan, "both")
    form = part(text, "Cut for the form")
    assert all(row.name in form for row in plan.form.rows) and "Caulk " in form and "screws, from outside" in form
    mix = part(text, "The mix")
    assert "water to binder" in mix and "In all, face and base together" in mix
    assert all(each.name in mix for each in plan.batch.ingredients)
    water = " ".join(part(text, "Water today").split())
    assert water.startswith(" ".join(plan.batch.water.words.split())) and "water and ice reach" in water
    order = " ".join(part(text, "Order at the mixer").split())
    for step in plan.batch.order:
        assert " ".join(f"{step.number}. {step.text}".split()) in order
    assert "lost by the last steel" in part(text, "What the air takes")
    night = " ".join(part(text, "The first night, ").split())
    assert night.startswith(plan.cure.picked.title) and f"-> {plan.cure.picked.title} water lost" in night
    moving = " ".join(part(text, "Strength and moving").split())
    assert moving.startswith(plan.handling.morning.words("both")) and "earliest" in moving
    assert moving.endswith(f"lifting index {plan.handling.lift.index_ratio:.1f}.")
    bow = " ".join(part(text, "How far it may bow").split())
    assert bow.startswith("likely between level both faces dry alike") and "In air of" in bow
    polish = " ".join(part(text, "Polish and seal").split())
    assert all(" ".join(step.work.split()) in polish for step in plan.finish.steps)
    if plan.handling.supports or plan.handling.legs:
        assert "may bear" in part(text, "What it may stand on")


def test_nothing_of_a_demo_job_runs_past_the_page(plan):
    for system in ("us", "si", "both"):
        assert max(map(len, report(plan, system).splitlines())) <= WIDTH


@pytest.mark.parametrize(("spread", "told"), [(0.0, False), (0.0049, False), (0.00507, True), (0.1, True)])
def test_a_band_of_water_to_binder_is_printed_once_it_shows(spread, told):
    # 0.005 is the half of the last digit that is printed; a band as narrow as that is one number
    plan = bench()
    mix = replace(plan.mix, w_cm_low=0.35, w_cm_high=0.35 + spread)
    text = report(replace(plan, mix=mix), "us")
    assert ("the bag does not say" in text) is told
    assert (f"0.35 to {0.35 + spread:.2f}" in text) is told


@pytest.mark.parametrize(("ratio", "told"), [(1.0, False), (1.04, False), (1.06, True), (3.0, True)])
def test_the_bound_of_the_water_that_is_lost_is_printed_when_it_is_more(ratio, told):
    # one part in twenty more is no news
    plan = bench()
    choices = tuple(replace(each, water_lost_kg_m2=0.5, bound_kg_m2=0.5 * ratio) for each in plan.cure.choices)
    text = " ".join(report(replace(plan, cure=replace(plan.cure, choices=choices)), "si").split())
    assert text.count("water lost about") == len(choices)
    assert text.count(", at most 0") + text.count(", at most 1") == (len(choices) if told else 0)


@pytest.mark.parametrize(
    ("changes", "told"), [({}, True), ({"base_m3": 0.0}, False), ({"face_kg": 0.0}, False), ({"face_kg": 0.1}, True)]
)
def test_a_load_without_face_or_without_base_sets_nothing_aside(changes, told):
    plan = bench()
    loads = (replace(plan.batch.loads[0], **changes), *plan.batch.loads[1:])
    text = report(replace(plan, batch=replace(plan.batch, loads=loads)), "si")
    sheet = text.split("Weigh sheet, load ")[1]
    assert ("set aside for the face: " in sheet) is told


def test_the_face_is_set_aside_where_a_load_has_both_and_only_there():
    for name in NAMES:
        plan = demo_plan(name)
        sheets = report(plan, "si").split("Weigh sheet, load ")[1:]
        assert len(sheets) == len(plan.batch.loads)
        for sheet, load in zip(sheets, plan.batch.loads, strict=True):
            assert ("set aside for the face: " in sheet) is (load.face_kg > 0 and load.base_m3 > 0)
    kinds = {(load.face_kg > 0, load.base_m3 > 0) for load in demo_plan("large_l_four_loads").batch.loads}
    assert len(kinds) > 1  # loads of one layer alone are among them


@pytest.mark.parametrize(("system", "area_m2", "word"), [("si", 1.0, "m²"), ("us", FT2, "ft²"), ("both", FT2, "ft²")])
def test_the_cost_of_one_square_foot_or_metre_is_that_of_its_area(system, area_m2, word):
    # 1 ft2 is 0.3048^2 m2
    plan = bench()
    cost = part(report(plan, system), "Cost of ")
    (line,) = [line for line in cost.splitlines() if line.startswith(f"for one {word}")]
    per = [amount * area_m2 / plan.layers.top_area_m2 for amount in (plan.cost.cash, plan.cost.pro_rata)]
    assert line.split()[-2:] == [f"${amount:,.2f}" for amount in per]
    assert cost.splitlines()[0].split() == ["what", "packs", "cash", "used", "of", "it"]


def test_what_has_no_price_is_said_once_and_the_sum_says_that_it_is_not_all():
    prices = {"portland cement": {"pack": "94 lb", "price": 18.5}}
    text = report(changed_bench(cost__prices=prices), "us")
    words = " ".join(text.split())
    assert words.count("Not in the sum: ") == 1 and "No price for" not in words
    unpriced = words.split("Not in the sum: ")[1].split(". ")[0]
    assert "fine silica sand" in unpriced and "sealer" in unpriced and words.count(unpriced) == 1
    assert "in all, of what has a price" in part(text, "Cost of ")
    assert "of what has a price" not in part(report(bench(), "us"), "Cost of ")


# ---- columns


def test_a_heading_is_underlined_to_its_end():
    assert heading("The mix") == "The mix\n-------\n"


def test_a_row_as_wide_as_the_page_stays_whole_and_one_sign_more_breaks():
    # two blanks between columns: 10 + 2 + 88 = 100
    assert columns([("a" * 10, "b " * 43 + "bb")]) == "a" * 10 + "  " + "b " * 43 + "bb"
    lines = columns([("a" * 10, "b " * 43 + "bbb")]).splitlines()
    assert len(lines) == 2 and lines[1] == " " * 12 + "bbb"


@pytest.mark.parametrize(("start", "beside"), [(65, True), (66, False)])
def test_a_long_text_stands_beside_its_row_while_there_is_room_and_below_it_after(start, beside):
    # beside 65 signs there is room for 33 more; after that it goes below, under the second column
    cells = ("c" * 10, "d" * (start - 12))
    lines = columns([(*cells, "word " * 10)]).splitlines()
    whole = "  ".join(cells)
    assert len(lines) == 2
    if beside:
        assert lines[0] == f"{whole}  {'word ' * 6}".rstrip() and lines[1] == " " * (start + 2) + "word word word word"
    else:
        assert lines[0] == whole and lines[1] == " " * 12 + ("word " * 10).rstrip()


def test_a_single_column_is_never_broken():
    assert columns([("word " * 30,)]) == ("word " * 30).rstrip()


ROOM = "x " * 99 + "x"  # words of one sign fill a line to the last place


def _with_step(plan, **changes):
    return replace(plan, batch=replace(plan.batch, order=(replace(plan.batch.order[0], **changes),)))


def _with_stage(plan, **words):
    stage = plan.day.stage("last_steel" if "too_late" in words else "base")
    changed = replace(stage, words=replace(stage.words, **words))
    if "too_late" in words:
        changed = replace(changed, deadline_h=stage.over_by_h)
    return replace(
        plan, day=replace(plan.day, stages=(changed, *(each for each in plan.day.stages if each is not stage)))
    )


def _with_advice(plan, **changes):
    return replace(plan, advice=(replace(plan.advice[0], **changes),))


@pytest.mark.parametrize(
    "change",
    [
        lambda plan: _with_step(plan, text=ROOM),
        lambda plan: _with_step(plan, caution=ROOM),
        lambda plan: _with_stage(plan, cue=ROOM),
        lambda plan: _with_stage(plan, too_late=ROOM),
        lambda plan: _with_stage(plan, safety=ROOM),
        lambda plan: _with_advice(plan, text=ROOM),
        lambda plan: _with_advice(plan, reason=ROOM),
    ],
    ids=["step", "caution", "cue", "too late", "safety", "advice", "reason"],
)
def test_every_paragraph_breaks_at_the_hundredth_sign(change):
    text = report(change(bench()), "us")
    filled = [len(line) for line in text.splitlines() if "x x x x" in line]
    assert len(filled) >= 2 and max(filled) in (WIDTH - 1, WIDTH)
