"""Cost: packs rounded up, the share beside, prices of a job file, and what has none."""

import copy
import math
import tomllib

import pytest
from demo_plans import demo_plan
from hypothesis import given
from hypothesis import strategies as st
from working_eval import check_working

from shop_calc.trade.after.cost import cost_line, plan_cost
from shop_calc.trade.jobs.job import check_job, demo_job, demo_jobs, read_job
from shop_calc.trade.jobs.price_entries import Price
from shop_calc.trade.plan import make_plan
from shop_calc.trade.problems import Problems

LB, GAL, QT = 0.45359237, 231 * 0.0254**3, 231 * 0.0254**3 / 4
BENCH = tomllib.loads(demo_job("garden_bench_top").read_text(encoding="utf-8"))


def bench(prices, currency="$", **finish):
    entries = copy.deepcopy(BENCH)
    entries["cost"] = {"currency": currency, "prices": prices}
    entries["finish"] |= finish
    return make_plan(check_job(entries)).cost


def problem_lines(cost):
    entries = copy.deepcopy(BENCH) | {"cost": cost}
    with pytest.raises(Problems) as error:
        make_plan(check_job(entries))
    return "\n".join(error.value.lines)


def test_one_line_by_hand():
    # 69.55 lb of cement in 94 lb bags at 18.50: one bag, 0.7399 of it, 24.45 lb over.
    line = cost_line("portland cement", "mass", 69.55 * LB, 94 * LB, 18.5)
    assert (line.count, line.cash) == (1, 18.5)
    assert line.pro_rata == pytest.approx(69.55 / 94 * 18.5) and line.left_over / LB == pytest.approx(24.45)


@given(needed=st.floats(0.01, 500), pack=st.floats(0.05, 60), price=st.floats(0, 500))
def test_packs_are_enough_and_never_one_too_many(needed, pack, price):
    for kind in ("mass", "liquid"):
        line = cost_line("thing", kind, needed, pack, price)
        assert line.count * pack >= needed * (1 - 1e-6) and (line.count - 1) * pack < needed
        assert line.pro_rata <= line.cash * (1 + 1e-6)
        assert line.left_over == pytest.approx(max(line.count * pack - needed, 0), abs=1e-6 * pack)


def test_a_whole_number_of_packs_stays_one():
    assert cost_line("sand", "mass", 3 * 50 * LB, 50 * LB, 9.0).count == 3
    assert cost_line("sealer", "liquid", 2 * QT, QT, 9.0).count == 2


def test_sums_are_the_sums_of_the_lines():
    plan = demo_plan("garden_bench_top")
    cost = plan.cost
    assert cost.cash == pytest.approx(sum(line.cash for line in cost.lines))
    assert cost.pro_rata == pytest.approx(sum(line.pro_rata for line in cost.lines))
    assert cost.pro_rata < cost.cash
    assert cost.cash_m2 == pytest.approx(cost.cash / plan.layers.top_area_m2)
    assert cost.unpriced == () and cost.unused == () and cost.advice == ()


def test_masses_of_the_batch_and_liquids_by_their_density_are_what_is_bought():
    plan = demo_plan("garden_bench_top")
    lines = {line.what: line for line in plan.cost.lines}
    cement = plan.batch.ingredient("portland cement").total_kg
    assert lines["portland cement"].needed == pytest.approx(cement)
    # A 50 % dispersion: half solids at 1.10, half water: 1/(0.5/1.10 + 0.5) = 1.0476.
    liquid = plan.batch.ingredient("acrylic dispersion 50 %").total_kg
    litres = liquid / (1000 / (0.5 / 1.10 + 0.5))
    assert lines["acrylic dispersion 50 %"].needed == pytest.approx(litres, rel=1e-6)
    assert lines["acrylic dispersion 50 %"].pack == pytest.approx(GAL)
    assert lines["sealer"].needed == pytest.approx(plan.finish.sealer_both_m3)
    assert lines["form board, half sheet"].count == 1


def test_bought_water_is_a_litre_to_the_kilogram():
    plan = demo_plan("garden_bench_top")
    # 1000 kg/m3 at the shop's temperatures, as on the label of a bottle; the pack holds ten litres
    line = next(row for row in bench({"water": {"pack": "10 L", "price": 5.0}}).lines if row.what == "water")
    assert line.pro_rata == pytest.approx(5.0 * plan.batch.ingredient("water").total_kg / 10.0, rel=1e-9)


def test_a_job_without_prices_has_no_money_and_says_what_is_bought():
    plan = make_plan(read_job(demo_job("counter_worked_example")))
    assert plan.cost.lines == () and plan.cost.cash == 0 and plan.cost.working == ()
    assert "portland cement" in plan.cost.unpriced and "water" not in plan.cost.unpriced


def test_what_has_no_price_is_named_and_a_slip_of_a_name_is_guessed():
    bag, sand = {"pack": "94 lb", "price": 18.5}, {"pack": "50 lb", "price": 9}
    cost = bench({"portland cement": bag, "fine silica snad": sand})
    assert "fine silica sand" in cost.unpriced and cost.unused == ("fine silica snad",)
    (line,) = cost.advice
    assert "Is the price of 'fine silica snad' meant for fine silica sand?" in line.reason


def test_a_price_list_may_serve_many_jobs():
    cost = bench({"white portland cement": {"pack": "94 lb", "price": 40}, "sealer": {"pack": "1 qt", "price": 38}},
                 sealer="none")  # fmt: skip
    assert cost.unused == ("white portland cement",)
    assert cost.lines[0].count == 0 and cost.cash == 0


def test_a_bag_is_bought_by_what_it_makes():
    entries = tomllib.loads(demo_job("round_table_cold_shop").read_text(encoding="utf-8"))
    entries["cost"] = {"prices": {"demo counter bag": {"pack": "80 lb", "price": 30}}}
    plan = make_plan(check_job(entries))
    (line,) = plan.cost.lines
    need_m3 = plan.batch.mortar_m3
    # The label makes 0.60 ft3 of a bag; the pigment, 0.5 % of the bag, adds a quarter of a percent to that.
    assert line.exact_count == pytest.approx(need_m3 / (0.60 * 0.3048**3), rel=4e-3)
    assert line.count == math.ceil(line.exact_count)


def test_money_is_written_in_the_shops_own_sign():
    plan = demo_plan("garden_bench_top")
    assert plan.cost.money(1234.5) == "$1,234.50"
    assert bench({}, currency="kr").money(2.0) == "2.00 kr"
    assert bench({}, currency="").money(2.0) == "2.00"


@pytest.mark.parametrize(
    ("cost", "words"),
    [
        ({"prices": {"portland cement": {"pack": "94 lb", "price": "18"}}}, "plain number"),
        ({"prices": {"portland cement": {"pack": "94 lb", "price": -1}}}, "from 0"),
        ({"prices": {"portland cement": {"pack": "94", "price": 18}}}, "mass or a volume"),
        ({"prices": {"portland cement": {"pack": "94 ft", "price": 18}}}, "mass or a volume"),
        ({"prices": {"portland cement": {"pack": "0 lb", "price": 18}}}, "pack"),
        ({"prices": {"portland cement": 18}}, "pack"),
        ({"prices": {"portland cement": {"pack": "94 lb"}}}, "price"),
        ({"prices": {"portland cement": {"pack": "2 gal", "price": 18}}}, "must be a mass"),
        ({"prices": {"sealer": {"pack": "2 lb", "price": 18}}}, "must be a volume"),
        ({"prices": {"board": {"count": "two", "price": 18}}}, "plain number"),
        ({"prices": 7}, "cost.prices"),
        ({"currency": "dollars and cents"}, "sign of at most"),
        ({"currencies": "$"}, "no such entry"),
        (7, "a part of the file"),
    ],
)
def test_prices_that_cannot_be_are_named(cost, words):
    assert words in problem_lines(cost)


def test_prices_given_from_a_notebook_work_as_well():
    plan = demo_plan("garden_bench_top")
    prices = (Price("portland cement", 18.5, pack_kg=94 * LB), Price("form board", 34.0, count=2))
    cost = plan_cost(plan.batch, plan.mix, plan.layers.top_area_m2, prices=prices, currency="€")
    assert cost.cash == pytest.approx(18.5 + 68.0)


@pytest.mark.parametrize("name", demo_jobs())
def test_the_working_gives_its_own_values(name):
    plan = make_plan(read_job(demo_job(name)))
    assert check_working(plan.cost.working) == (2 * len(plan.cost.lines) + 4 if plan.cost.lines else 0)
