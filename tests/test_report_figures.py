"""Figures of the printed plan that people compare down a column or act on: stresses, strengths, the end of a stage."""

import functools
from dataclasses import replace

from demo_plans import demo_plan

from shop_calc.trade.after.handling_advice import handling_advice
from shop_calc.trade.after.stress_words import no_concrete, stress
from shop_calc.trade.report import report


@functools.cache
def bench():
    """One plan for the tests that change a part of it and print it."""
    return demo_plan("garden_bench_top")


def test_a_small_stress_stays_in_psi():
    # 1 psi is 6894.757 Pa
    assert stress(6894.757 / 2) == "0.5 psi (3.45 kPa)"
    assert stress(6894.757 / 2, "us") == "0.5 psi" and stress(6894.757 / 2, "si") == "3.45 kPa"
    assert stress(0.0, "us") == "0 psi" and stress(2 * 6894.757, "us") == "2 psi"


def with_carry(**changes):
    plan = bench()
    first, *rest = plan.handling.carries
    handling = replace(plan.handling, carries=(*rest, replace(first, **changes)))
    return replace(plan, handling=handling)


def test_the_table_of_moves_has_no_pounds_on_a_square_foot():
    plan = with_carry(stress_pa=4730.0, needed_strength_pa=518.0)
    moving = report(plan, "us").split("Strength and moving")[1].split("What it may stand on")[0].split("way to carry")[1]
    assert "0.7 psi  " in moving and "0.1 psi  " in moving
    assert "lb/ft²" not in moving.split("The piece weighs")[0]


def test_a_strength_that_no_concrete_has_is_not_printed():
    # 20,000 psi are 137.9 MPa
    assert not no_concrete(137e6) and no_concrete(139e6)
    plan = with_carry(needed_strength_pa=3324e6, earliest_h=None)
    assert "more than any has" in report(plan, "us")
    said = [line.reason for line in handling_advice(plan.handling, plan.day, plan.piece)]
    assert sum("more than any concrete has in compression" in reason for reason in said) == 1
    assert not any("3324" in reason for reason in said)


def test_the_face_is_over_by_its_deadline_at_the_latest():
    plan = bench()
    face = plan.day.stage("face")
    for deadline_h, shown_h in ((face.over_by_h - 0.3, face.over_by_h - 0.3), (face.over_by_h + 0.3, face.over_by_h)):
        stages = tuple(replace(each, deadline_h=deadline_h) if each is face else each for each in plan.day.stages)
        text = report(replace(plan, day=replace(plan.day, stages=stages)), "us")
        (row,) = [line for line in text.splitlines() if "Face onto the base: " in line]
        assert row.split()[2] == f"{plan.day.clock(shown_h):%H:%M}"


def test_the_day_ends_with_the_cover_that_the_night_wants():
    for name, words in (("garden_bench_top", "Stop: leave it open"), ("sink_top_hot_day", "Stop: damp fabric flat")):
        text = report(demo_plan(name), "us")
        assert words in text and "Stop, cover" not in text


def test_a_load_of_base_alone_does_not_wait_for_setting_aside():
    sheets = report(demo_plan("large_l_four_loads"), "si").split("Weigh sheet, load ")[1:]
    assert "\nto the base\n" in sheets[0] and "after setting aside" not in sheets[0]
    assert "\nto the base, after setting aside\n" in report(bench(), "si")


def test_one_person_does_not_share_the_piece():
    plan = bench()
    alone = replace(plan.handling, lift=replace(plan.handling.lift, people=1))
    text = " ".join(report(replace(plan, handling=alone), "us").split())
    assert "for one to lift, who may lift " in text and "each of 1" not in text


def test_the_base_is_packed_as_it_is_mixed_and_not_at_the_first_water():
    (row,) = [line for line in report(bench(), "us").splitlines() if "Pack the base" in line]
    assert "Pack the base, each load as it is mixed: gloved hands" in row and len(row) <= 100
