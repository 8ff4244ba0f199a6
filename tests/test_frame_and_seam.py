"""Pieces that are carried on a frame, and pieces that had better be cast in two."""

import copy

import pytest
from case_jobs import PLAIN
from demo_plans import demo_plan

from shop_calc.trade.after.frame_and_seam import SHEET_M, frame_advice, seam_advice
from shop_calc.trade.jobs.job import check_job
from shop_calc.trade.plan import make_plan

IN = 0.0254


def plan_of(hands=2, **piece):
    entries = copy.deepcopy(PLAIN)
    entries["piece"] |= piece
    entries["day"] |= {"hands": hands}
    entries["mixer"] = {"vessel": "drum", "rated": "9 ft3"}
    return make_plan(check_job(entries))


def seam(plan):
    found = [line for line in plan.advice if "in two with a seam" in line.text]
    assert tuple(found) == seam_advice(plan.handling, plan.piece)
    return found[0] if found else None


def test_a_bench_is_cast_as_one():
    assert seam(demo_plan("garden_bench_top")) is None


@pytest.mark.parametrize(("length", "told"), [("96 in", False), ("96 1/16 in", True)])
def test_a_light_strip_is_spoken_of_from_the_length_of_a_board(length, told):
    # 2 in thick, so that it may be held flat; 8 hands, so that it is not heavy: 96 x 12 x 2 in is some 190 lb
    plan = plan_of(8, length=length, width="12 in", thickness="2 in")
    assert plan.handling.lift.index_ratio < 3.0 and plan.handling.carry("fifth").earliest_h <= plan.handling.morning.hour_h
    line = seam(plan)
    assert (line is not None) is told
    if told:
        assert line.level == "note" and "8'-0\" (2438 mm)" in line.reason and "quarter" not in line.reason


def test_long_and_heavy_is_something_to_do_with_its_numbers():
    plan = plan_of(2, length="120 in", width="25 1/2 in")
    line, lift = seam(plan), plan.handling.lift
    assert line.level == "act" and line.where == "form"
    assert "As one it is 10'-0\" (3048 mm) long" in line.reason
    assert f"{lift.index_ratio:.1f} times what they may lift together" in line.reason and lift.index_ratio > 3.0
    # half of 120 x 25.5 x 1.5 in, at the density of the piece
    pounds = 120 * 25.5 * 1.5 * IN**3 * plan.handling.density_kg_m3 / 2 / 0.45359237
    assert f"Each half weighs about {pounds:.0f} lb" in line.reason
    assert "a quarter of that" in line.reason  # 10 ft of 1 1/2 in do not hold a good fifth in by the morning
    assert plan.handling.carry("fifth").earliest_h is None or plan.handling.carry("fifth").earliest_h > 24


def test_half_as_long_bends_with_a_quarter():
    whole, half = (plan_of(2, length=f"{length} in", width="25 1/2 in").handling for length in (120, 60))
    assert half.carry("fifth").stress_pa == pytest.approx(whole.carry("fifth").stress_pa / 4, rel=1e-3)


def test_heavy_alone_and_weak_alone_are_no_reason():
    short = plan_of(2, length="40 in", width="40 in", thickness="3 in")
    assert short.handling.lift.index_ratio > 3.0 and seam(short) is None
    thin = plan_of(8, length="95 in", width="12 in", thickness="3/4 in")
    assert thin.handling.lift.index_ratio < 3.0 and seam(thin) is None
    assert thin.handling.carry("fifth").earliest_h > 5 * 24


def test_an_l_parts_at_its_inside_corner():
    line = seam(demo_plan("large_l_four_loads"))
    assert "at the inside corner" in line.text and line.level == "note" and "do not twist" in line.reason


def test_a_seam_is_never_a_reason_not_to_pour():
    for name in ("counter_worked_example", "large_l_four_loads", "sink_top_hot_day", "round_table_cold_shop"):
        line = seam(demo_plan(name))
        assert line is None or line.level == "note"
    assert pytest.approx(96 * IN) == SHEET_M  # practice: boards of 4 x 8 ft


def test_a_dropped_edge_is_packed_up_and_its_tip_is_named():
    drop = {"edge": "front", "depth": "3 in", "width": "2 in"}
    plan = plan_of(length="60 in", width="20 in", drop=drop)
    (line,) = frame_advice(plan.handling, plan.piece)
    assert line in plan.advice
    assert 'packed up 1 1/2" (38.1 mm) under the thin part' in line.text
    # tests/test_piece_beam.py works this section by hand: 0.169175/0.133333 of the plate
    found = plan.handling.carry("ends").stress_pa
    assert "Its tip is counted" in line.reason and "from one end" in line.reason
    broad = plan_of(length="60 in", width="20 in", drop=drop | {"width": "9 in", "depth": "2 in"})
    (line,) = frame_advice(broad.handling, broad.piece)
    assert "Its tip" not in line.reason and "not counted as help" in line.reason
    assert found > 1.2 * plan_of(length="60 in", width="20 in").handling.carry("ends").stress_pa
    assert frame_advice(demo_plan("garden_bench_top").handling, demo_plan("garden_bench_top").piece) == ()
