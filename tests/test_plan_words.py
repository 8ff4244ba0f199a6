"""Words of the plan that have to fit the job they are said of."""

import tomllib
from datetime import datetime, timedelta

import pytest

from shop_calc.trade.curing.cure_rules import _span
from shop_calc.trade.jobs.job import check_job, demo_job
from shop_calc.trade.plan import make_plan
from shop_calc.units import show


def bench(**changes):
    job = tomllib.loads(demo_job("garden_bench_top").read_text(encoding="utf-8"))
    for place, value in changes.items():
        part, _, entry = place.partition("__")
        job.setdefault(part, {})[entry] = value
    return make_plan(check_job(job))


def said(plan, word):
    return [line.text for line in plan.advice if word in line.text]


def test_an_overhang_is_not_told_to_set_its_legs_closer():
    plan = bench(place__on="legs", place__span="36 in", place__overhang="12 in")
    (beyond,) = said(plan, "Beyond the support it must not")
    (between,) = said(plan, "Between the supports it must not")
    assert "shorter overhang" in beyond and "legs" not in beyond and "closer legs" in between


@pytest.mark.parametrize(("sealer", "words"), [("oil", "Seal with an oil or wax"), ("film", "Seal with a film")])
def test_the_sealer_has_its_article(sealer, words):
    assert said(bench(finish__sealer=sealer), words)


def test_a_night_of_one_temperature_is_no_span():
    assert _span(18.0, 18.0) == "64.4 °F (18 °C)"
    assert _span(10.0, 18.0) == "50 °F (10 °C) to 64.4 °F (18 °C)"


def test_a_heavy_piece_on_legs_is_told_of_its_legs():
    (line,) = said(bench(piece__width="40 in", piece__thickness="3 in", place__on="legs"), "what stands below can carry it")
    assert "legs and their fixings" in line


@pytest.mark.parametrize(("tap", "wanted", "told"), [("45 F", "60 F", False), ("60 F", "72 F", True)])
def test_water_that_is_not_warm_is_not_called_so(tap, wanted, told):
    plan = bench(materials__water_temp=tap, materials__powder_temp="62 F", day__wanted_mix_temp=wanted)
    assert plan.batch.water.method == "warmed"
    assert (plan.batch.water.water_temp_c > 27.0) is told
    assert bool(said(plan, "Put the warm water to the sand first")) is told


def test_a_piece_of_the_evening_is_left_longer_than_the_morning():
    # started at 22:00, the trowel leaves it some hours past midnight; the plan looks at eight
    late = bench(day__water_in=datetime(2026, 5, 4, 22))
    stop = late.day.clock(late.day.stage("stop").likely_from_h)
    (line,) = said(late, "Better leave it where it lies until ")
    until = datetime.strptime("2026 " + line.rstrip(".")[-12:], "%Y %d %b %H:%M")
    assert timedelta(hours=12) <= until - stop < timedelta(hours=12, minutes=15)
    assert not said(bench(), "Better leave it where it lies")


def test_a_depth_too_small_for_a_tape_is_said_in_thousandths():
    # 0.2 mm are 0.00787 in; a film of a micrometre keeps its figures
    assert show(0.0002, "length", "us") == "0.008 in" and show(0.0005, "length", "us") == "0.02 in"
    assert show(1e-6, "length", "us") == "0.0000394 in"


def test_all_weak_strips_beside_openings_are_said_at_once_with_the_worst():
    hole = {"shape": "rectangle", "exposed": False, "name": "sink", "length": "30 in", "width": "7 in",
            "at": ["30 in", "6.5 in"]}  # fmt: skip
    one = bench(piece__cutout=[hole], piece__width="18 in")
    two = bench(piece__cutout=[{**hole, "at": ["30 in", "7.5 in"]}])
    (line,) = [line for line in two.advice if line.text.startswith("Support these strips ")]
    weak = [check for check in two.handling.supports if check.key == "rail" and not check.holds]
    assert len(weak) == 2 and all(check.where in line.text for check in weak)
    worst = max(weak, key=lambda check: check.use_ratio)
    assert line.reason.startswith(f"The worst, {worst.where}: ") and show(worst.stress_pa, "pressure") in line.reason
    (single,) = [line for line in one.advice if line.text.startswith("Support the strip ")]
    assert "leans on it." in single.text
