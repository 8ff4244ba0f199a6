"""Lesson 08: bars of money, the block at its ends, what the tables and the prose say against the plan."""

import json
from dataclasses import replace
from itertools import product
from math import ceil
from pathlib import Path

import pytest
from picture_checks import off_the_sheet, said, unreadable

from shop_calc.lesson.blocks import Block, slider
from shop_calc.lesson.moves import packs_and_money as shopping
from shop_calc.lesson.moves import polish_seal_cost as finishing
from shop_calc.lesson.pictures import demo
from shop_calc.lesson.pictures.cost_bars import CostBars, CostRow
from shop_calc.trade.jobs.job import demo_job, read_job
from shop_calc.trade.plan import make_plan
from shop_calc.units import convert

PLAN = make_plan(read_job(demo_job("garden_bench_top")))
NOTEBOOK = Path(__file__).parents[1] / "workbooks" / "08_polish_seal_cost.ipynb"
MONEY = "${:,.2f}".format


def lesson_text():
    cells = json.loads(NOTEBOOK.read_text(encoding="utf-8"))["cells"]
    outputs = (
        "".join(output.get("text", []) or output.get("data", {}).get("text/plain", []))
        for cell in cells
        for output in cell.get("outputs", [])
    )
    return "\n".join(outputs), " ".join(" ".join("".join(cell["source"]) for cell in cells).split())


def test_bars_are_the_money_and_their_filled_part_is_what_is_used():
    picture = CostBars(demo.COSTS, MONEY)
    for (shelf, used, _), row in zip(picture.bars, demo.COSTS, strict=True):
        assert (shelf.get_width(), used.get_width()) == (row.cash, row.used)
        assert shelf.get_x() == used.get_x() == 0 and used.get_zorder() > shelf.get_zorder()
        assert shelf.get_facecolor() != used.get_facecolor()


def test_every_sum_is_said_in_the_picture_and_in_its_alt_text():
    picture = CostBars(demo.COSTS, MONEY)
    words = " ".join(said(picture.figure))
    sums = "packs $95.50, used $73.00, on the shelf $22.50"  # 38 + 28 + 18.5 + 11; 28.9 + 28 + 5.2 + 10.9
    assert sums in words and sums in picture.alt
    assert "cement: $18.50, used $5.20, left over 67.5 lb (30.6 kg)" in picture.alt
    assert "form board: $28.00, used $28.00, left over nothing" in picture.alt


@pytest.mark.parametrize("system", ["us", "si"])
def test_what_is_left_is_said_in_one_system(system):
    picture = CostBars(demo.COSTS, MONEY)
    picture.update(demo.COSTS, system)
    assert ("lb" in picture.alt) == (system == "us") and ("kg" in picture.alt) == (system == "si")


def test_dear_packs_and_long_names_stay_on_the_sheet():
    rows = [replace(row, name=row.name + " as nobody would ever call it", cash=40 * row.cash) for row in demo.COSTS]
    for picture in (CostBars(rows, MONEY), CostBars(demo.COSTS, MONEY), CostBars(rows, "{:,.2f} EUR".format)):
        picture.update(rows)
        assert unreadable(picture.figure) == []
        assert all(shelf.get_width() <= picture.most for shelf, _, _ in picture.bars)
    with pytest.raises(ValueError):
        CostBars(rows, MONEY).update(rows[1:])  # built for so many rows and no others


def test_the_picture_of_the_lesson_is_the_plan():
    picture = shopping.cost_picture(PLAN.cost, "A top")
    assert sum(shelf.get_width() for shelf, _, _ in picture.bars) == pytest.approx(PLAN.cost.cash)
    assert sum(used.get_width() for _, used, _ in picture.bars) == pytest.approx(PLAN.cost.pro_rata)
    prices = [shelf.get_width() for shelf, _, _ in picture.bars]
    assert prices == sorted(prices, reverse=True)


def made():
    model = shopping.shopper(PLAN)
    rows = [
        slider("tops_count", label="Tops", value=1, low=1, high=12, unit="-", step_us=1, step_si=1),
        slider("coats_count", label="Coats", value=2, low=1, high=3, unit="-", step_us=1, step_si=1),
        slider("coverage_m2_m3", label="Sealer covers", value=4000, low=2500, high=8000, unit="m2/m3"),
    ]
    return Block(model, shopping.shopped_words, rows, picture=shopping.shopping_picture(model))


def test_the_block_begins_at_the_plan_and_no_bar_leaves_its_scale_at_any_end():
    block = made()
    assert block.result.cash == pytest.approx(PLAN.cost.cash)
    assert block.result.pro_rata == pytest.approx(PLAN.cost.pro_rata)
    assert block.result.sealer_m3 == pytest.approx(PLAN.finish.sealer_both_m3)
    for ends in product(*(row.ends for row in block.rows.values())):
        block.set(**dict(zip(block.rows, ends, strict=True)))
        result = block.result
        assert max(line.cash for line in result.lines) / result.tops_count <= shopping.MOST
        assert result.pro_rata <= result.cash + 1e-9 and "packs" in block.text
        assert off_the_sheet(block.picture.figure) == []


def test_more_tops_share_packs_and_the_form_is_paid_once():
    model = shopping.shopper(PLAN)
    one, twelve = model(1, 2, 4000.0), model(12, 2, 4000.0)
    assert twelve.cash / 12 < one.cash / 2
    board = [next(line for line in shop.lines if line.kind == "number").cash for shop in (one, twelve)]
    assert board[0] == board[1]
    for line, first in zip(twelve.lines, one.lines, strict=True):
        if line.kind != "number":
            assert line.count == ceil(12 * first.exact_count)
            assert line.left_over == pytest.approx(line.count * line.pack - 12 * first.needed)
    pigment = [next(line for line in model(n, 2, 4000.0).lines if "pigment" in line.what) for n in range(1, 13)]
    assert [line.count for line in pigment] == list(range(1, 13))  # a pack each, as the lesson says


def test_a_sealer_that_goes_twice_as_far_is_half_as_much_and_still_one_can():
    model = shopping.shopper(PLAN)
    first, far = model(1, 2, 4000.0), model(1, 2, 8000.0)
    assert far.sealer_m3 == pytest.approx(first.sealer_m3 / 2)
    # 1604 ft2 mil/gal times a quarter over 1.5 mil, trade article CV-1: 267 ft2/gal
    film = model(1, 2, convert(267.36, "ft2/gal", "m2/m3"))
    gallons = convert(PLAN.finish.both_m2, "m2", "ft2") / 267.36 * 2 * 1.10
    assert convert(film.sealer_m3, "m3", "gal") == pytest.approx(gallons, rel=1e-9)
    assert first.cash == film.cash == far.cash  # one can whatever it covers, as the lesson says


def test_the_depths_shown_are_one_of_each_kind():
    said_of = [row[1] for row in finishing.fibre_depths(PLAN.finish.depth_m).rows]
    assert len(set(said_of)) == 4 and said_of[0] == said_of[1]
    assert "most" in said_of[3]  # 3/64 in lies in 1/32 to 1/16 in


def test_the_cautions_name_dust_slurry_and_the_plug():
    words = " ".join(row[0] for row in finishing.cautions(PLAN, "polish").rows)
    assert all(word in words for word in ("Silica", "respirator", "GFCI", "caustic", "20 minutes", "eye protection"))
    with pytest.raises(ValueError, match="move, polish"):
        finishing.cautions(PLAN, "wax")


def test_a_towel_loses_more_in_dry_air_and_twice_as_much_in_twice_the_time():
    size, hour = ("28 in", "16 in"), dict(air="70 F", humidity="50 %")
    low, likely, high = finishing.towel_band(*size, **hour, hours=1.0)
    assert low < likely < high
    assert finishing.towel_band(*size, **hour, hours=2.0)[1] == pytest.approx(2 * likely)
    assert finishing.towel_band(*size, air="70 F", humidity="30 %", hours=1.0)[1] > likely
    assert finishing.towel_band(*size, air="70 F", humidity="100 %", hours=1.0)[1] == pytest.approx(0.0, abs=1e-6)


def test_the_lesson_says_what_the_plan_says():
    shown, prose = lesson_text()
    for words in ("Tue 5 May 15:45", "(200, 400, 800) ours", "sheet Sun 10 May 16:00 · seal Mon 11 May 08:00",
                  "3.04 cup (719 mL)", "1.69 cup (399 mL)", "cash $270.00", "used $110.24"):  # fmt: skip
        assert words in shown, words
    needed = next(line.needed for line in PLAN.cost.lines if line.what == "portland cement")
    assert convert(needed, "kg", "lb") == pytest.approx(26.6, abs=0.05) and "26.6 lb of cement" in prose
    packs = [line for line in PLAN.cost.lines if line.kind != "number"]
    assert len(packs) == 11 and "Eleven packs" in prose
    fibre = next(line for line in packs if line.what == "AR glass fibre")
    assert 36 <= 1 / fibre.exact_count < 40 and "three dozen" in prose
    assert convert(PLAN.finish.coverage_m2_m3, "m2/m3", "ft2/gal") == pytest.approx(163, abs=0.5)
    night_f = convert(PLAN.handling.hardening.temp_c[60:100].mean(), "C", "F")
    assert night_f == pytest.approx(62, abs=2.5) and "some 62" in prose


def test_a_row_without_rest_says_so():
    assert CostRow("board", 28.0, 28.0, 0.0, "number").left_words() == "nothing"
    assert CostRow("clamps", 28.0, 14.0, 2.0, "number").left_words("us") == "2"
