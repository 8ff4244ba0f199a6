"""What comes of an act at the wrong moment in a practice pour: steel, sides, face, water, covers, the night."""

import pytest
from practice_pieces import at_psi, class_pour, ends, floated, severity

from shop_calc.trade.curing.cure_rules import pick_cover
from shop_calc.trade.rehearsal.acts import act
from shop_calc.trade.rehearsal.bench import begin, let_pass
from shop_calc.trade.rehearsal.consequences import CONSEQUENCES
from shop_calc.trade.rehearsal.damage import TRACE, past, short_of
from shop_calc.trade.rehearsal.night import expected_cover, night_demand
from shop_calc.trade.rehearsal.policies import by_cues
from shop_calc.trade.rehearsal.replay import before, play
from shop_calc.trade.rehearsal.reveal import true_stages
from shop_calc.trade.rehearsal.truth import open_pour


def test_a_scale_runs_from_the_limit_to_plain_and_stops_at_one():
    assert past(500.0, 500.0, 700.0) == 0.0 and past(700.0, 500.0, 700.0) == pytest.approx(TRACE)
    assert past(1e9, 500.0, 700.0) == 1.0 and past(0.0, 60.0, 40.0) == 1.0 and past(0.0, 60.0, 80.0) == 0.0
    assert short_of(90.0, 90.0, 60.0) == 0.0 and short_of(75.0, 90.0, 60.0) == TRACE and short_of(0, 90, 60) == 1.0


@pytest.mark.parametrize("number", [0, 5, 9])
def test_steel_too_early_traps_air_the_earlier_the_worse_and_in_its_window_does_nothing(number):
    harm = [
        max(severity(at_psi(number, psi), "steel", key) for key in ("air", "crust")) for psi in (5, 20, 45, 61, 140)
    ]
    assert harm[0] == 1.0 and harm[0] >= harm[1] > harm[2] > 0.0 and harm[3] == harm[4] == 0.0
    late = [severity(at_psi(number, psi), "steel", "hollows") for psi in (140, 200, 300)]
    assert late[0] == 0.0 < late[1] < late[2]


def test_steel_past_its_window_marks_dark_the_later_the_worse():
    harm = [severity(at_psi(6, psi), "steel", "dark") for psi in (300, 499, 600, 1000, 2500)]
    assert harm[0] == harm[1] == 0.0 and 0.0 < harm[2] < TRACE < harm[3] < harm[4]


def test_air_closed_in_early_comes_out_when_floated_in_time_and_not_later():
    early = act(at_psi(7, 20), "steel")
    assert early.kept and not act(early, "float").kept
    late = let_pass(early, 3.0)
    assert act(late, "float").kept


def test_the_side_of_a_soft_edge_sags_and_the_patch_of_a_stiff_one_shows():
    soft = [severity(at_psi(8, psi), "strip", "sag") for psi in (2, 6, 20, 30)]
    assert soft[0] == 1.0 > soft[1] > soft[2] == soft[3] == 0.0
    patches = []
    for psi in (30, 50, 70, 300):
        patches.append(severity(act(at_psi(8, psi - 8 if psi < 100 else psi), "strip"), "patch", "patch"))
    assert patches[0] == 0.0 and patches[1] < patches[2] < patches[3] == 1.0


def test_the_face_too_soon_mixes_too_late_is_a_cold_joint():
    start = begin(open_pour())
    truth = {stage.key: stage for stage in true_stages(start)}["face"]
    hours = (truth.likely_from_h - 0.1, truth.likely_from_h + 0.02, truth.likely_to_h - 0.02, truth.likely_to_h + 1.5)
    states = [let_pass(start, hour - start.hour_h) for hour in hours]
    mixed = [severity(state, "spread", "mixed") for state in states]
    joint = [severity(state, "spread", "cold joint") for state in states]
    assert mixed[0] > 0.0 == mixed[1] == mixed[2] == mixed[3]
    assert joint[0] == joint[1] == joint[2] == 0.0 and joint[3] >= TRACE


def test_layer_gap_of_nothing_twenty_minutes_and_three_hours():
    """0 min mixes in, 20 min is fine, 3 h is a cold joint, at 21 °C: trade answer on two-layer pieces."""
    start = begin(open_pour())
    spread = [act(let_pass(start, gap_h), "spread") for gap_h in (0.0, 20.0 / 60.0, 3.0)]
    keys = [{item.key for item in state.kept} for state in spread]
    assert keys[0] == {"mixed"} and keys[1] == set() and "cold joint" in keys[2]


def test_water_on_the_face_crazes_it_and_twice_is_worse():
    once = play(at_psi(9, 5), "sprinkle")
    twice = play(once, "sprinkle")
    assert once.kept[-1].key == "crazing" and twice.kept[-1].severity > once.kept[-1].severity >= TRACE
    held = 0.001 * once.pour.face_water_kg_m3
    assert f"{100 * 0.1 / held:.0f} % more" in once.kept[-1].reason


def test_a_flat_cover_marks_a_soft_face_and_one_held_off_does_not():
    soft, stiff = at_psi(10, 20), at_psi(10, 80)
    assert severity(soft, "cover fabric", "printed") >= TRACE and severity(stiff, "cover fabric", "printed") == 0.0
    assert act(soft, "cover tent").damage == soft.damage


def test_a_face_left_in_red_air_cracks_unless_it_is_covered_or_floated():
    red = next(p for p in map(class_pour, range(120)) if p.red_kg_m2[22] - p.red_kg_m2[10] > 2 * p.free_water_kg_m2)
    on = floated(begin(red))
    left = play(on, "wait 30; wait 30; wait 30; leave")
    covered = play(on, "cover tent; wait 30; wait 30; wait 30; leave")
    cracks = [max((i.severity for i in end.damage if i.key == "cracks"), default=0.0) for end in (left, covered)]
    assert cracks[0] >= TRACE > cracks[1]


def test_the_night_takes_what_its_air_takes_and_the_cover_keeps_it():
    for state in ends(by_cues, 12):
        left_h = next(entry.hour_h for entry in state.diary if entry.word == "leave")
        mean, peak, cold_c, hot_c, driest = night_demand(state.pour, left_h)
        assert 0.0 <= mean <= peak and cold_c <= hot_c and 0.0 <= driest <= 1.0
        pick = pick_cover(mean, peak, cold_c, hot_c, driest, False)[0]
        bare = play(before(state, len(state.diary) - 1), "uncover; leave")
        thirst = max((item.severity for item in bare.damage if item.key == "thirst"), default=0.0)
        assert pick == "fabric" or thirst == 0.0
    windy = next(p for p in map(class_pour, range(60)) if p.weather == "hot and windy")
    assert expected_cover(windy, 6.0)[0] == "fabric"


def test_every_consequence_says_how_it_shows_what_was_right_and_where_the_rule_comes_from():
    marks = {"read", "memory", "practice", "judgement"}
    for row in CONSEQUENCES.values():
        assert row.title and row.shows and row.remedy and row.source and row.mark in marks
        assert (row.mark == "memory") == row.source.startswith("from memory")
