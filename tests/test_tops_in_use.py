"""Tops that nobody is meant to sit on: leaning, kneeling slowly, dropping; what is stopped, what is only a limit of use."""

import copy
import tomllib
from datetime import datetime

import numpy as np
import pytest
import structuralcodes.codes.ec2_2004 as ec2
from demo_plans import bench

from shop_calc.trade.after import mends, seat_rule, supports, use_rule
from shop_calc.trade.after.drop_pull import span_pull
from shop_calc.trade.after.handling import Stand
from shop_calc.trade.after.support_advice import support_advice
from shop_calc.trade.jobs.job import check_job, demo_job
from shop_calc.trade.plan import make_plan
from shop_calc.trade.problems import Problems
from shop_calc.trade.report import report
from shop_calc.trade.shape.outline import place, rectangle
from shop_calc.trade.shape.piece import Cutout, DropEdge, build_piece
from shop_calc.units import show

PSI, LB, IN, FT = 6894.757293168361, 0.45359237, 0.0254, 0.3048
RHO = 145 * LB / FT**3
COUNTER = tomllib.loads(demo_job("counter_worked_example").read_text(encoding="utf-8"))
SINK = [{"shape": "rectangle", "name": "sink", "length": "30 in", "width": "16 in", "at": ["48 in", "12.5 in"]}]


def counter(stand, thickness="1 1/2 in", **piece):
    entries = copy.deepcopy(COUNTER)
    entries["piece"].update({"width": "25 in", "thickness": thickness, **piece})
    if entries["piece"]["outline"] == "circle":
        del entries["piece"]["length"], entries["piece"]["width"]
        entries["piece"]["exposed"] = "all"
    return make_plan(check_job({**entries, "place": stand}))


def placed(plan, *levels):
    return [line for line in plan.handling.advice if line.where == "place" and line.level in levels]


# ---- by hand


def test_the_three_loads_by_hand():
    # a hand of 100 lb; 250 lb on one knee, times 1.3; times 2 exactly when it is let go at the touch (energy: P d = k d^2/2)
    assert [load / LB for load in use_rule.use_loads_kg()] == pytest.approx([100, 325, 500], rel=1e-6)
    # a stair tread bears 300 lb on 2 in square by code (IRC Table R301.5, as adopted in WAC 51-51-0301, read): less than ours
    assert use_rule.use_loads_kg()[1] / LB > 300


def test_a_counter_over_a_cabinet_by_hand():
    # 24 in span, rails 25 in apart, 1 1/2 in thick, a knee of 4 in square in the middle, nu 0.2. Roark's plate, all edges
    # held, from memory: m/P = ((1 + nu) ln(2 b/(pi r)) + beta)/(4 pi), b 24 in, beta 0.435 to 0.650 for a/b 1.0 to 1.2, and
    # r = 0.5615 4 in = 2.246 in: (1.2 1.918 + 0.479)/12.566 = 0.2213. Kneeling: 6 325 0.2213/1.5^2 = 191.8 psi.
    top = use_rule.span_use(24 * IN, 25 * IN, 1.5 * IN, RHO, "front and back")
    assert top.ratio == pytest.approx(0.2213, rel=0.02)
    assert top.kneel_pa / PSI == pytest.approx(191.8, rel=0.02)
    assert top.lean_pa / top.kneel_pa == pytest.approx(100 / 325) and top.drop_pa / top.kneel_pa == pytest.approx(2 / 1.3)
    # its own weight: 0.0479 q a^2 of a square plate (Timoshenko, from memory), q = 145/1728 1.5 psi, a 24.5 in: 5.7 lb
    # at nu 0.3; 6 5.7/1.5^2 = 9.7 psi, at nu 0.2 some 8 % less
    assert top.own_pa / PSI == pytest.approx(9.7 * 0.93, rel=0.03)


def test_without_rails_its_own_weight_is_that_of_a_beam_and_a_little_more_at_the_edge():
    # 0.75 rho g L^2/t: 0.75 145/1728 36^2/1.5 = 54.4 psi; the free edge of a plate has up to 6 % more
    top = use_rule.span_use(36 * IN, 25 * IN, 1.5 * IN, RHO)
    assert 54.4 * 1.0 <= top.own_pa / PSI <= 54.4 * 1.06


def test_an_overhang_by_hand():
    # 10 in: the load stands 8 in out and is shared by 10 in: 6 325 8/(10 1.5^2) = 693 psi; own 3 145/1728 100/1.5 = 16.8 psi
    bar = use_rule.overhang_use(10 * IN, 25 * IN, 1.5 * IN, RHO)
    assert bar.kneel_pa / PSI == pytest.approx(6 * 325 * 8 / (10 * 2.25), rel=1e-6)
    assert bar.own_pa / PSI == pytest.approx(3 * 145 / 1728 * 100 / 1.5, rel=1e-6)
    # 2 in: half of the 4 in square is beyond the support, 1 in out on average, shared by 4 in: 0.5 1/4
    assert use_rule.overhang_use(2 * IN, 25 * IN, 1.5 * IN, RHO).ratio == pytest.approx(0.125)
    # an end of 12 in: seven tenths of it share the load 11 in out
    assert use_rule.overhang_use(13 * IN, 12 * IN, 1.5 * IN, RHO).ratio == pytest.approx(11 / 8.4)


def test_a_window_seat_carried_all_round_by_adding_up_its_people():
    # 48 in between its ends: one in the middle, none beside it, for 24 in off the middle is outside a 12 in seat's room
    one = seat_rule.SITTING_DOWN * 250 * LB
    own, people = use_rule.railed_seat_stress_pa(48 * IN, 18 * IN, 1.5 * IN, RHO)
    own_73, people_73 = use_rule.railed_seat_stress_pa(73 * IN, 18 * IN, 1.5 * IN, RHO)
    assert people_73 > people and own_73 > own
    # held on the long sides alone and spread over all of the width, a strip of 24 in: one person, P L/8 over b t^2/6
    strip = 6 * one * 9.80665 * 18 * IN / 8 / (24 * IN * (1.5 * IN) ** 2)
    assert 0.6 * strip < people < 1.6 * strip


@pytest.mark.parametrize("strength_psi", [3500, 5000, 7000])
def test_the_limit_is_under_the_low_end_of_another_code_and_over_that_of_plain_structures(strength_psi):
    # EN 1992-1-1:2004 by a reference package: fctm = 0.3 fck^(2/3), low end 0.7 of it, in bending (1.6 - h/1000) times
    limit = seat_rule.seat_limit_pa(strength_psi * PSI) / 1e6
    fck = strength_psi * PSI / 1e6
    low_end = 0.7 * ec2.fctm(fck) * (1.6 - 38.1 / 1000)
    assert limit < 0.85 * low_end
    # ACI 318-19 14.5.2, from memory: 0.60 5 sqrt(fc), loads times 1.6. Plain concrete as a structure may have less than
    # half of what a top is allowed here: no number of this check is a design.
    assert limit / (0.60 * 5 * strength_psi**0.5 / 1.6 * PSI / 1e6) == pytest.approx(5 / 1.875, rel=1e-3)


# ---- the steps


def check(own, lean, kneel, drop, limit=296.0, key="span"):
    return supports.SupportCheck(key, "there", 0.6, own, kneel, limit, False, lean, drop, 0.2, 0.038)


@pytest.mark.parametrize(
    ("own", "lean", "kneel", "drop", "step"),
    [
        (10, 50, 150, 286, "free"), (10, 50, 150, 286.1, "care"), (10, 50, 286, 440, "care"),
        (10, 60, 286.1, 450, "nobody"), (10, 286, 900, 1400, "nobody"), (10, 286.1, 900, 1400, "lean"),
        (10, 434, 1400, 2100, "lean"), (10, 434.1, 1400, 2100, "stop"), (297, 1, 3, 5, "stop"),
    ],
)  # fmt: skip
def test_each_step_begins_where_it_should(own, lean, kneel, drop, step):
    # 296 psi is what it may have, 444 psi its rupture
    assert check(own, lean, kneel, drop).step == step
    assert check(own, lean, kneel, drop).holds is (step in ("free", "care"))


def test_a_seat_and_a_strip_have_one_question():
    seat = supports.SupportCheck("span", "there", 0.6, 10.0, 300.0, 296.0, False)
    strip = supports.SupportCheck("rail", "there", 0.6, 10.0, 300.0, 296.0, False)
    assert (seat.step, strip.step) == ("stop", "lean")


def test_more_strength_never_makes_it_worse_and_more_span_never_better():
    order = ("free", "care", "nobody", "lean", "stop")
    piece = build_piece(rectangle(96 * IN, 25 * IN), 1.5 * IN)
    for rails in ("front and back", "back", "none"):
        steps = [order.index(supports.check_supports(piece, RHO, 24e6, span * IN, rails=rails)[0].step)
                 for span in np.arange(8, 97, 4)]  # fmt: skip
        assert np.all(np.diff(steps) >= 0)
        steps = [order.index(supports.check_supports(piece, RHO, strength, 36 * IN, 12 * IN, rails=rails)[i].step)
                 for i in (0, 1) for strength in (60e6, 40e6, 24e6, 10e6)]  # fmt: skip
        assert np.all(np.diff(steps[:4]) >= 0) and np.all(np.diff(steps[4:]) >= 0)


# ---- realistic jobs, each with the step that somebody who sets tops for a living would give it

CABINET = {"on": "cabinet"}
JOBS = {
    "cabinets of 12 in": ({**CABINET, "span": "12 in"}, {}, ["free"]),
    "cabinets of 18 in": ({**CABINET, "span": "18 in"}, {}, ["free"]),
    "cabinets of 24 in": ({**CABINET, "span": "24 in"}, {}, ["care"]),
    "cabinets of 36 in": ({**CABINET, "span": "36 in"}, {}, ["care"]),
    "a dishwasher bay": ({**CABINET, "span": "24 in", "rails": "back"}, {}, ["nobody"]),
    "a strip by a sink": ({**CABINET, "span": "36 in"}, {"cutout": SINK}, ["care", "lean", "lean"]),
    "an edge of 1 1/4 in": ({**CABINET, "overhang": "1 1/4 in", "overhang_at": "side"}, {}, ["free"]),
    "a bar of 6 in": ({**CABINET, "overhang": "6 in"}, {}, ["nobody"]),
    "a bar of 10 in": ({**CABINET, "overhang": "10 in"}, {}, ["nobody"]),
    "a bar of 12 in": ({**CABINET, "overhang": "12 in"}, {}, ["nobody"]),
    "a bar of 15 in": ({**CABINET, "overhang": "15 in"}, {}, ["nobody"]),
    "a bench, legs 3 ft apart": ({"on": "legs", "span": "3 ft"}, {"use": "seat"}, ["stop"]),
    "a bench, legs 4 ft apart": ({"on": "legs", "span": "4 ft"}, {"use": "seat"}, ["stop"]),
    "a bench on brackets": ({"on": "wall", "span": "24 in"}, {"use": "seat"}, ["stop"]),
    "a window seat on a box": ({**CABINET, "span": "48 in", "rails": "front and back"}, {"use": "seat"}, ["free"]),
    "a vanity on brackets": ({"on": "wall", "span": "24 in", "rails": "back"}, {"use": "wall-hung"}, ["nobody"]),
    "a table on a pedestal": ({"on": "legs", "overhang": "10 in"},
                              {"use": "table", "outline": "circle", "diameter": "36 in"}, ["nobody"]),
    "a table on two trestles": ({"on": "legs", "span": "60 in"}, {"use": "table"}, ["lean"]),
    "a thin top on two trestles": ({"on": "legs", "span": "72 in"}, {"use": "table", "thickness": "1 in"}, ["stop"]),
}  # fmt: skip


@pytest.mark.parametrize("name", JOBS)
def test_a_realistic_job_gets_the_step_that_it_deserves(name):
    stand, piece, steps = JOBS[name]
    plan = counter(stand, **piece)
    assert [check.step for check in plan.handling.supports] == steps
    assert len(placed(plan, "stop")) == steps.count("stop")  # a limit of use stops no pour
    assert ("DO NOT POUR LIKE THIS" in report(plan)) is ("stop" in steps)
    told = " ".join(line.text for line in placed(plan, "act", "stop"))
    for step, words in {"nobody": "nobody sits, kneels or stands on it", "lean": "before anybody"}.items():
        assert (words in told) is (step in steps)
    if "care" in steps:
        (line,) = [line for line in placed(plan, "note") if "one person may kneel down on it slowly" in line.text]
        assert "nobody drops onto it" in line.text and ("away from its openings" in line.text) is ("cutout" in piece)


def test_a_plain_counter_over_a_cabinet_is_no_reason_to_stop():
    plan = counter({"on": "cabinet", "span": "24 in"})
    (check,) = plan.handling.supports
    assert check.stress_pa / PSI == pytest.approx(198, abs=2) and check.limit_pa / PSI == pytest.approx(295.8, abs=0.1)
    assert not placed(plan, "stop")
    (shim,) = placed(plan, "act")
    assert shim.text.startswith("Shim it") and "dishwasher" in shim.text
    # what it counts on is said with what happens where that is missing
    assert 'rails = "back" or "none"' in shim.reason and "486 psi" in shim.reason
    assert "dishwasher" not in placed(counter({"on": "cabinet", "span": "24 in"}, "2 1/2 in"), "act")[0].text


def test_the_day_from_which_one_may_kneel_is_when_the_counted_strength_is_there():
    plan = counter({"on": "cabinet", "span": "24 in"})
    (check,) = plan.handling.supports
    (line,) = [line for line in placed(plan, "note") if "kneel down" in line.text]
    day = datetime.strptime(line.text.split(", from ")[1][:10] + " 2026", "%a %d %b %Y")
    # 7.5 sqrt(f) over 1.5 is the stress: f = (198/5)^2 psi, of the 3500 psi that are counted
    share = (check.stress_pa / PSI / 5) ** 2 / 3500
    hours = (day - plan.day.water_in).total_seconds() / 3600
    assert plan.handling.hardening.ratio_at(hours) < share <= plan.handling.hardening.ratio_at(hours + 24)


@pytest.mark.parametrize("rails", ["none", "back", "front and back"])
@pytest.mark.parametrize("thickness_in", [0.75, 1.0, 1.5])
@pytest.mark.parametrize("span_in", [24, 36, 60])
def test_what_is_said_to_mend_it_does(span_in, thickness_in, rails):
    limit = float(seat_rule.seat_limit_pa(3500 * PSI))
    found = mends.span_mends(span_in * IN, 25 * IN, thickness_in * IN, RHO, rails, limit)
    assert all(mend.stress_pa <= limit for mend in found)
    thick = [mend for mend in found if "thickness" in mend.words]
    for mend in thick:
        inches = inches_said(mend.words)
        use = use_rule.span_use(span_in * IN, 25 * IN, inches * IN, RHO, rails)
        assert use.own_pa + use.kneel_pa == pytest.approx(mend.stress_pa, rel=1e-3)
        thinner = use_rule.span_use(span_in * IN, 25 * IN, (inches - 0.25) * IN, RHO, rails)
        assert inches > thickness_in and (thinner.own_pa + thinner.kneel_pa > limit or inches - 0.25 <= thickness_in)


def test_a_rail_under_the_middle_halves_the_span():
    found = {mend.words: mend for mend in mends.span_mends(48 * IN, 25 * IN, 1.5 * IN, RHO, "front and back", 1e9)}
    half = use_rule.span_use(24 * IN, 25 * IN, 1.5 * IN, RHO, "front and back")
    assert found["a rail across under its middle"].stress_pa == pytest.approx(half.own_pa + half.kneel_pa, rel=1e-9)
    # carried along nothing, it gets both: what is enough for half the span on two rails and for nothing less
    enough = 1.001 * (half.own_pa + half.kneel_pa)
    both = [mend for mend in mends.span_mends(48 * IN, 25 * IN, 1.5 * IN, RHO, "none", enough) if "rail" in mend.words]
    words = "a rail under its front and one under its back edge, and a rail across under its middle"
    assert [(mend.words, mend.stress_pa) for mend in both] == [(words, pytest.approx(enough / 1.001, rel=1e-9))]


@pytest.mark.parametrize("thickness_in", [1.5, 1.55, 1.65, 3.8])
def test_thicker_goes_up_to_four_inches_and_no_further(thickness_in):
    four = use_rule.overhang_use(15 * IN, 25 * IN, 4 * IN, RHO)
    for share, words in ((1.0001, ['4" (102 mm) of thickness']), (0.9999, [])):
        found = mends.overhang_mends(15 * IN, 25 * IN, thickness_in * IN, RHO, share * (four.own_pa + four.kneel_pa))
        assert [mend.words for mend in found] == words


def inches_said(words):
    whole, _, part = words.split('"')[0].partition(" ")
    above, _, below = part.partition("/")
    return float(whole) + (float(above) / float(below) if below else 0.0)


def test_where_nothing_but_support_under_all_of_it_helps_that_is_said():
    plan = counter({"on": "cabinet", "span": "60 in", "rails": "none"}, "3/4 in", width="16 in")
    (line,) = placed(plan, "stop")
    assert supports.NOT_ENOUGH in line.text
    assert mends.overhang_mends(40 * IN, 10 * IN, 1.5 * IN, RHO, 1e6) == ()


def test_a_strip_that_may_be_leaned_on_is_not_yet_one_to_kneel_on():
    plan = counter({"on": "cabinet"}, "2 1/2 in", cutout=SINK)
    (line,) = [line for line in placed(plan, "act") if "on the strip" in line.text]
    assert line.text.startswith("Nobody sits, kneels or stands on the strip between sink and front edge; between")
    strip = next(check for check in plan.handling.supports if check.key == "rail")
    # 6 (P L/4)/(b t^2) with 325 in place of 100 lb, and its own weight
    assert f"{(strip.own_pa + 3.25 * strip.people_pa) / PSI:.0f} psi" in line.reason


def test_a_seat_stays_strict_and_counts_on_no_rail_that_nobody_named():
    assert Stand("cabinet").rails_for("seat") == "none"
    plan = bench(place__on="cabinet", place__span="48 in")
    (line,) = [line for line in plan.handling.advice if line.level == "stop"]
    assert "must not be sat or knelt on" in line.text and 'say rails = "front and back"' in line.reason
    # one in the middle; two more would sit over the supports themselves
    assert plan.handling.supports[0].people_pa / PSI == pytest.approx(6 * 500 * 48 / 4 / (15 * 2.25), rel=1e-6)


def test_a_loose_end_that_a_load_can_tip_is_fixed_down():
    # 60 x 15 x 1.5 in bench, some 111 lb: 12 in beyond a leg, its middle 18 in inside it: 111 18/12 = 167 lb tip it
    plan = bench(place__on="legs", place__span="36 in", place__overhang="12 in")
    (line,) = [line for line in plan.handling.advice if line.text.startswith("Fix it down")]
    assert f"{plan.handling.lift.mass_kg / LB * 18 / 12:.0f} lb" in line.reason and "a person sitting" in line.text
    short = bench(place__on="legs", place__span="50 in", place__overhang="5 in")
    assert not [line for line in short.handling.advice if line.text.startswith("Fix it down")]
    bar = counter({"on": "cabinet", "overhang": "12 in", "overhang_at": "side"})  # 25 in wide: half an inch behind its rail
    assert any("somebody leaning on the end" in line.text for line in placed(bar, "act"))
    assert not any("Fix it" in line.text for line in placed(counter({"on": "cabinet", "overhang": "12 in"}), "act"))


def test_rails_are_read_from_the_job_and_refused_by_their_words():
    assert counter({"on": "legs", "span": "24 in", "rails": "front and back"}).handling.supports[0].step == "care"
    with pytest.raises(Problems, match=r"place.rails.*front and back, back, none"):
        counter({"on": "legs", "span": "24 in", "rails": "sides"})
    with pytest.raises(ValueError, match="rails: 'sides' given; it must be one of front and back, back, none"):
        Stand("legs", rails="sides")


def test_between_rails_a_side_overhang_is_not_part_of_the_span():
    whole = counter({"on": "cabinet", "span": "24 in"})
    bar = counter({"on": "cabinet", "span": "24 in", "overhang": "12 in", "overhang_at": "side"}, width="37 in")
    assert bar.handling.supports[0].stress_pa == pytest.approx(whole.handling.supports[0].stress_pa, rel=0.01)


def test_carried_along_its_edges_a_top_spans_its_depth_and_not_its_length():
    # guide for stone of 1 1/4 in and more: 36 in between supports
    piece = build_piece(rectangle(96 * IN, 25 * IN), 1.5 * IN)
    beyond = {rails: supports.check_supports(piece, RHO, 60e6, 48 * IN, rails=rails)[0].beyond_stone
              for rails in ("front and back", "back", "none")}  # fmt: skip
    assert beyond == {"front and back": False, "back": True, "none": True}
    wide = build_piece(rectangle(96 * IN, 40 * IN), 1.5 * IN)
    assert supports.check_supports(wide, RHO, 60e6, 48 * IN, rails="front and back")[0].beyond_stone


def test_the_lines_say_the_stresses_and_only_what_can_be_done_there():
    span = counter({"on": "cabinet", "span": "24 in", "rails": "back"})
    bar = counter({"on": "cabinet", "overhang": "10 in"})
    for plan, brackets in ((span, False), (bar, True)):
        (check,) = plan.handling.supports
        (line,) = [line for line in placed(plan, "act") if "nobody sits" in line.text]
        assert ("brackets" in line.text) is brackets and all(mend.words in line.text for mend in check.mends)
        for words, pull in (("leaning", check.lean_pa), ("kneeling down slowly", check.people_pa),
                            ("dropping onto a knee", check.drop_pa)):  # fmt: skip
            assert f"{words} {show(check.own_pa + pull, 'pressure')}" in line.reason
        assert f"kneeling is {check.use_ratio:.2f} times that" in line.reason


def test_a_strip_thick_enough_to_kneel_on_is_left_alone():
    # 4 1/2 in wide, 30 in long, 4 in thick: 6 (325 30/4)/(4.5 16) = 203 psi and 14 psi of its own, of 296
    plan = counter({"on": "cabinet"}, "4 in", cutout=SINK)
    assert any(check.key == "rail" for check in plan.handling.supports)
    assert not [line for line in placed(plan, "act") if "on the strip" in line.text]


def test_an_overhang_as_wide_as_the_piece_leaves_a_little_between_rails():
    piece = build_piece(rectangle(96 * IN, 25 * IN), 1.5 * IN)
    for overhang, left in ((12, 13), (22, 3), (23, 2.5), (25, 2.5)):
        assert supports.between_rails_m(piece, overhang * IN, "front and back") / IN == pytest.approx(left)
    assert supports.between_rails_m(piece, 12 * IN, "back") / IN == pytest.approx(25)


def test_with_a_dropped_front_the_ratio_the_mends_and_a_strip_count_it_too():
    drop = DropEdge("front", 3 * IN, 2 * IN)
    piece = build_piece(rectangle(96 * IN, 25 * IN), 1.5 * IN, True, drop=drop)
    (check,) = supports.check_supports(piece, RHO, 30e6, 24 * IN, rails="back")
    assert check.people_pa == pytest.approx(6 * 9.80665 * check.ratio * use_rule.use_loads_kg()[1] / (1.5 * IN) ** 2)
    heavier, _ = span_pull(piece, 24 * IN)
    plain = mends.span_mends(24 * IN, 25 * IN, 1.5 * IN, RHO, "back", check.limit_pa)
    assert heavier > 1 and check.mends
    for mend in check.mends:
        assert mend.stress_pa == pytest.approx(heavier * next(one.stress_pa for one in plain if one.words == mend.words))
    sink = Cutout(place(rectangle(30 * IN, 16 * IN), (48 * IN, 12.5 * IN)), name="sink")
    tops = [build_piece(rectangle(96 * IN, 25 * IN), 1.5 * IN, True, [sink], drops) for drops in ((), drop)]
    # strip 4 1/2 in wide with 2 in of it twice as thick: by weight (4.5 + 2)/4.5, and pulled harder by its tip
    bare, dropped = (next(check for check in supports.check_supports(top, RHO, 24e6) if "front" in check.where) for top in tops)
    assert dropped.own_pa / bare.own_pa == pytest.approx(6.5 / 4.5 * dropped.people_pa / bare.people_pa, rel=1e-6)


def test_every_line_of_it_carries_its_mark_and_source():
    for stand, piece, _ in JOBS.values():
        plan = counter(stand, **piece)
        for line in support_advice(plan.handling, plan.day, plan.piece):
            assert line.mark and line.source and line.where == "place"
