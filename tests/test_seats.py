"""Seats, overhangs, strips beside openings: by hand, by counting heads, and what stops a bench."""

import re

import numpy as np
import pytest
from demo_plans import bench, demo_plan

from shop_calc.trade.after import seat_rule, supports
from shop_calc.trade.after.handling import Stand
from shop_calc.trade.shape.outline import place, rectangle
from shop_calc.trade.shape.piece import Cutout, build_piece

PSI, LB, IN, FT = 6894.757293168361, 0.45359237, 0.0254, 0.3048
LB_FT3 = LB / FT**3


def strip(length_in, width_in, thickness_in, **more):
    return build_piece(rectangle(length_in * IN, width_in * IN), thickness_in * IN, **more)


def test_an_overhang_by_hand():
    # Derived: 10 in, 1.5 in thick, a 24 in share: own 3 g L^2/t = 17.36 psi, people 6 * 500 lb * 10 in/(24 * 1.5^2).
    own, people = seat_rule.seat_overhang_stress_pa(10 * IN, 40 * IN, 1.5 * IN, 150 * LB_FT3)
    assert own / PSI == pytest.approx(3 * 150 / 1728 * 100 / 1.5, rel=1e-6)
    assert people / PSI == pytest.approx(6 * 500 * 10 / (24 * 2.25), rel=1e-6)


@pytest.mark.parametrize("span_in", [20, 40, 60, 100, 130])
def test_a_span_full_of_people_by_counting_heads(span_in):
    own, people = seat_rule.seat_span_stress_pa(span_in * IN, 15 * IN, 1.5 * IN, 145 * LB_FT3)
    seats = [24 * k for k in range(-6, 7) if abs(24 * k) < span_in / 2]
    moment = sum(500 * (span_in / 2 - abs(x)) / 2 for x in seats)  # influence line of the moment at the middle
    assert people / PSI == pytest.approx(6 * moment / (15 * 2.25), rel=1e-6)
    assert own / PSI == pytest.approx(0.75 * 145 / 1728 * span_in**2 / 1.5, rel=1e-6)


def test_more_overhang_more_stress_thicker_less_and_wider_no_less_than_a_persons_share():
    overhangs = np.linspace(0.05, 1.5, 60)
    assert np.all(np.diff(sum(seat_rule.seat_overhang_stress_pa(overhangs, 0.4, 0.04, 2300.0))) > 0)
    thick = np.linspace(0.02, 0.1, 60)
    use = seat_rule.seat_use_map(1.0, thick, 0.4, 2300.0, 24e6)
    assert np.all(np.diff(use) < 0)
    assert seat_rule.seat_use_map(1.0, 0.04, 0.7, 2300.0, 24e6) == seat_rule.seat_use_map(1.0, 0.04, 3.0, 2300.0, 24e6)
    assert seat_rule.seat_use_map(thick[:, None] * 20, thick, 0.4, 2300.0, 24e6).shape == (60, 60)


def test_limit_is_rupture_over_scatter():
    assert seat_rule.seat_limit_pa(5000 * PSI) / PSI == pytest.approx(7.5 * 5000**0.5 / 1.5, rel=1e-9)


def test_a_thin_bench_on_legs_is_stopped_and_no_safe_span_is_named():
    for given in ({"place__span": "40 in", "place__overhang": "10 in"}, {"place__overhang": "12 in"}):
        plan = bench(**given, place__on="legs", piece__use="seat")
        stops = [line for line in plan.handling.advice if line.level == "stop"]
        assert len(stops) == len([key for key in given if key != "place__on"])
        for line in stops:
            beyond = line.text.startswith("Beyond")
            assert (supports.NOT_BEYOND if beyond else supports.NOT_ENOUGH) in line.text
            for word in ("continuous support", "shorter overhang" if beyond else "closer legs", "thicker", "engineer"):
                assert word in line.text
            # No length at all, so no span that might be taken for safe: only stresses.
            assert not re.search(r"\d\s*(\"|'|in\b|mm|ft|cm)", line.text + line.reason.replace("24 in", ""))


def test_no_span_is_named_for_a_seat_of_which_nothing_is_said():
    lines = [line for line in demo_plan("garden_bench_top").handling.advice if line.where == "place"]
    assert any(supports.NOT_ENOUGH in line.text for line in lines)
    for line in lines:
        assert not re.search(r"\d\s*(\"|'|in\b|mm|ft|cm)", line.text + line.reason)


def test_what_fails_on_the_best_two_legs_fails_on_any_two():
    piece = strip(60, 15, 1.5, use="seat")
    best = max(check.use_ratio for check in supports.best_legs(piece, 2300.0, 24e6))
    for share in np.linspace(0.03, 0.39, 25):
        checks = supports.check_supports(piece, 2300.0, 24e6, 60 * IN * (1 - 2 * share), 60 * IN * share)
        assert max(check.use_ratio for check in checks) >= best * (1 - 1e-3)


def test_a_thick_short_seat_holds_and_says_nothing_of_stopping():
    plan = bench(piece__thickness="3 in", piece__length="30 in", place__on="legs", place__span="18 in",
                 place__overhang="5 in", mix__strength_28d="6000 psi")  # fmt: skip
    assert all(check.holds for check in plan.handling.supports)
    assert not [line for line in plan.handling.advice if line.level == "stop"]


def test_continuous_support_is_what_ends_the_question():
    plan = bench(place__on="continuous")
    assert plan.handling.supports == () and plan.handling.legs == ()
    assert not [line for line in plan.handling.advice if "not" in line.text and "two legs" in line.text]
    edge = bench(place__on="continuous", place__overhang="12 in")
    assert [check.key for check in edge.handling.supports] == ["overhang"]


def test_a_span_longer_than_the_piece_is_refused():
    with pytest.raises(ValueError, match=r"span.*at most the length"):
        bench(place__span="6 ft")
    with pytest.raises(ValueError, match="on: "):
        Stand("stilts")


def test_strips_beside_a_sink_are_checked_with_a_person_leaning():
    # Derived: 3 in wide, 33 in long, 1.5 in thick, 100 lb at the middle, ends free to turn: 781 psi.
    sink = Cutout(place(rectangle(33 * IN, 15 * IN), (48 * IN, 10.5 * IN)), name="sink")
    piece = strip(96, 25, 1.5, cutouts=[sink])
    front = next(c for c in supports.check_supports(piece, 150 * LB_FT3, 24e6) if "front" in c.where)
    assert front.size_m == pytest.approx(33 * IN) and front.stress_pa / PSI == pytest.approx(781, abs=1)
    assert not front.holds


def test_beyond_the_stone_guide_is_a_caution_and_never_a_permission():
    # Dimension Stone Design Manual, as quoted: 3/4 in 24/6 in, 1-1/4 in 36/10 in.
    for thick, key, size, beyond in ((0.75, "span", 24, False), (0.75, "span", 25, True), (1.25, "overhang", 10, False),
                                     (1.5, "overhang", 11, True), (0.5, "span", 1, True)):  # fmt: skip
        assert seat_rule.beyond_stone_guide(key, size * IN, thick * IN) is beyond
    plan = bench(piece__thickness="4 in", piece__length="50 in", place__span="40 in", mix__strength_28d="8000 psi",
                 layers__face="1/4 in")  # fmt: skip
    assert plan.handling.supports[0].holds and plan.handling.supports[0].beyond_stone
    assert any("natural stone" in line.text for line in plan.handling.advice)
