"""What each act of a practice pour takes for the hands at the bench, what the hands feel, and what it leaves behind."""

from dataclasses import replace

import pytest
from practice_pieces import LEAST, PSI, a_pour, piece

from shop_calc.trade.rehearsal.acts import act
from shop_calc.trade.rehearsal.bench import begin, let_pass

STILL = {"demand_kg_m2": (0.0,) * 97, "red_kg_m2": (0.0,) * 97}  # air that takes nothing: only the act counts
FIRM = {"yield_start_pa": 1e5}  # bears any edge from the first
BEFORE = {"face_on_h": None, "settled_h": None}


def bench(hands=2.0, area_m2=4.0, **hidden):
    """The bench top with its four sides, its surface and the people at it as given."""
    pour = replace(a_pour(**hidden), **STILL)
    return replace(pour, told=replace(pour.told, hands=hands, area_m2=area_m2))


MINUTES = [  # act, person-minutes on four square metres, the piece
    ("spread", 4 * 20, BEFORE),  # face_minutes_per_area 20 min/m2
    ("screed", 4 * 15 / 2, {}),  # float_minutes_per_area 15: screed, then first float
    ("float", 4 * 15 / 2, {}),
    ("float", 4 * 8, {"float_h": 1.5}),  # trowel_minutes_per_area 8: one pass
    ("steel", 4 * 8, {"psi": 100}),
    # a quarter hour to strip, the same again to patch: judgement
    ("strip", 15 / 4, {}),
    ("strip", 15 / 4, {"off": ("left", "right")}),
    ("patch", 15 / 4, {"off": ("left",)}),
    ("patch", 15 * 3 / 4, {"off": ("left", "right", "back")}),
    ("patch", 15 / 2, {"off": ("left", "right", "back"), "patched": ("left",)}),
]


@pytest.mark.parametrize("hands", [1.0, 2.0, 5.0])
@pytest.mark.parametrize(("word", "person_minutes", "fields"), MINUTES)
def test_work_takes_its_minutes_shared_by_the_hands(word, person_minutes, fields, hands):
    before = piece(bench(hands), **fields)
    after = act(before, word)
    assert after.diary[-1].minutes == pytest.approx(person_minutes / hands)
    assert (after.hour_h - before.hour_h) * 60.0 == pytest.approx(person_minutes / hands)
    assert after.diary[-1].hour_h == before.hour_h and after.diary[-1].word == word


@pytest.mark.parametrize(
    ("word", "minutes", "fields"),
    [
        ("spread", 5.0, BEFORE),
        ("screed", 2.5, {}),
        ("float", 2.5, {}),
        ("float", 5.0, {"float_h": 1.5}),
        ("steel", 5.0, {}),
    ],
)
def test_even_a_small_top_takes_five_minutes_a_step(word, minutes, fields):
    """least_step_minutes 5; screed and first float are one step of the plan."""
    assert act(piece(bench(area_m2=0.05), **fields), word).diary[-1].minutes == pytest.approx(minutes)


@pytest.mark.parametrize("hands", [1.0, 2.0])
@pytest.mark.parametrize(
    ("word", "fields"),
    [
        ("stir", BEFORE),
        ("sprinkle", {}),
        ("cover tent", {}),
        ("cover fabric", {"psi": 300}),
        ("uncover", {"cover": "tent"}),
    ],
)
def test_what_is_quickly_done_takes_two_minutes_however_many_stand_there(word, fields, hands):
    """Judgement."""
    assert act(piece(bench(hands), **fields), word).diary[-1].minutes == 2.0


@pytest.mark.parametrize(("word", "minutes"), [("wait 5", 5), ("wait 15", 15), ("wait 30", 30), ("step away", 90)])
def test_a_wait_is_as_long_as_it_is_called(word, minutes):
    before = piece(bench())
    after = act(before, word)
    assert after.diary[-1].minutes == minutes and after.hour_h - before.hour_h == pytest.approx(minutes / 60.0)
    assert (after.face_on_h, after.settled_h, after.damage) == (1.0, 1.0, ())


# ---- what is left behind


def test_each_layer_is_settled_anew_by_board_and_first_float_and_never_again():
    """Resting begins when the last of spread, screed and first float is done; looks and later floats do not shake it."""
    on = act(piece(bench(), psi=5.0, **BEFORE), "spread")
    assert on.face_on_h == on.settled_h == pytest.approx(3.0 + 40.0 / 60.0) and on.stirred
    level = act(on, "screed")
    assert level.settled_h == level.hour_h > on.settled_h and level.screeded_h == on.hour_h
    again = act(level, "screed")
    assert again.settled_h == level.settled_h
    floated = act(level, "float")
    assert floated.float_h == floated.settled_h == floated.hour_h
    later = act(floated, "float")
    assert later.settled_h == floated.settled_h and later.float_h == later.hour_h


def test_sides_come_off_one_by_one_and_all_open_edges_are_patched_at_once():
    two = act(act(piece(bench(**FIRM)), "strip"), "strip")
    assert two.off == ("left", "right") and two.patched == ()
    assert [entry.said.split(".")[0] for entry in two.diary] == ["Left side off", "Right side off"]
    patched = act(two, "patch")
    assert patched.patched == ("left", "right") and patched.diary[-1].said.startswith("Left, right patched.")
    three = act(act(patched, "strip"), "patch")
    assert three.patched == ("left", "right", "back") and three.diary[-1].said.startswith("Back patched.")


def test_steel_keeps_when_it_came_and_what_it_met():
    twice = act(act(piece(bench(), psi=100), "steel"), "steel")
    (first_h, first_pa), (second_h, second_pa) = twice.steel
    assert (first_h, first_pa) == (3.0, pytest.approx(100 * PSI))
    assert second_h == pytest.approx(3.0 + 16.0 / 60.0) and second_pa > first_pa


@pytest.mark.parametrize(("lost", "left"), [(0.25, 0.15), (0.1, 0.0), (0.05, 0.0), (0.0, 0.0)])
@pytest.mark.parametrize("word", ["sprinkle", "cover mist"])
def test_a_flick_of_water_wets_the_skin_again_by_a_tenth_of_a_millimetre(word, lost, left):
    """0.1 kg/m2, judgement; a skin that is wet is not made wetter."""
    after = act(piece(bench(), skin_kg_m2=lost, water_kg_m2=0.1), word)
    assert after.skin_kg_m2 == pytest.approx(left, abs=1e-12) and after.water_kg_m2 == pytest.approx(0.2)


def test_mist_on_a_face_that_has_set_is_no_water_in_its_skin():
    """last_steel_pr_high 500 psi."""
    after = act(piece(bench(), psi=501, skin_kg_m2=0.3), "cover mist")
    assert after.water_kg_m2 == 0.0 and after.skin_kg_m2 == 0.3 and after.cover == "mist"


@pytest.mark.parametrize(("word", "psi", "skin"), [
    ("screed", 20, 0.0), ("screed", 100, 0.0), ("float", 59.9, 0.0), ("float", 60.1, 0.2),
])  # fmt: skip
def test_board_and_float_work_a_soft_skin_back(word, psi, skin):
    """first_steel_pr_low 60 psi: stiffer than that a float closes nothing any more."""
    after = act(piece(bench(), psi=psi, skin_kg_m2=0.2, red_kg_m2=0.2), word)
    assert (after.skin_kg_m2, after.red_kg_m2) == (skin, skin)


def test_closed_air_comes_out_under_a_float_until_first_steel_and_other_harm_stays():
    closed = act(act(piece(bench(), psi=20), "steel"), "sprinkle")
    assert {item.key for item in closed.kept} == {"air", "crazing"}
    again = {psi: act(closed.having(face_age_h=closed.pour.age_at_h(psi * PSI)), "float") for psi in (59.9, 60.1)}
    assert {item.key for item in again[59.9].kept} == {"crazing"}
    assert {item.key for item in again[60.1].kept} == {"air", "crazing"}


def test_a_tool_lifts_the_cover_first_and_what_it_did_is_found_then():
    lying = piece(bench(), psi=100, cover="plastic", cover_from_h=1.0)
    for word in ("steel", "screed", "float", "strip", "sprinkle", "cover tent", "uncover"):
        after = act(lying, word)
        assert "blotches" in {item.key for item in after.damage}
        assert after.cover == ("tent" if word == "cover tent" else "open") and after.cover_from_h == 3.0


# ---- what the hands feel


@pytest.mark.parametrize(("psi", "felt"), [
    (2.5 * (1 - LEAST), "moves like cream"), (2.5 * (1 + LEAST), "tightens"),  # a quarter of strip_pr_low 10: judgement
    (40 * (1 - LEAST), "tightens"), (40 * (1 + LEAST), "drags a little"),  # strip_pr_high 40
    (249, "drags a little"), (251, "pulls open"),  # plain to see from last_steel_pr_low 250
])  # fmt: skip
def test_a_float_moves_cream_then_tightens_then_drags_and_at_last_tears(psi, felt):
    assert felt in act(piece(bench(), psi=psi), "float").diary[-1].said


@pytest.mark.parametrize(("psi", "steeled", "felt"), [
    (39, False, "closes at once"), (41, False, "closes the pores"),  # harm is felt where it is plain: from 40 psi down
    (249, False, "closes the pores"), (251, False, "rides over"),  # the first pass so late
    (250 * (1 - LEAST), True, "closes the pores"), (250 * (1 + LEAST), True, "hard sheen"),  # last_steel_pr_low 250
    (700, True, "hard sheen"), (710, True, "rings"),  # 707 = root of 500 times 1000
])  # fmt: skip
def test_the_blade_closes_the_pores_then_brings_a_sheen_and_a_trace_of_harm_is_not_felt(psi, steeled, felt):
    steel = ((2.0, 100 * PSI),) if steeled else ()
    said = act(piece(bench(), psi=psi, steel=steel), "steel").diary[-1].said
    assert felt in said and said.count(".") == 1


def test_the_harm_of_an_act_stands_in_its_line_of_the_diary_a_trace_too():
    plain, trace, none = (act(piece(bench(), psi=psi), "steel").diary[-1].harm for psi in (30, 50, 100))
    assert plain == trace == ("air",) and none == ()


# ---- the end of the day


@pytest.mark.parametrize(("left_h", "hours"), [(6.0, 18.0), (15.5, 8.5), (20.5, 27.5)])
def test_the_night_lasts_until_eight_in_the_morning(left_h, hours):
    """morning_hour 8; the first water of this pour was at 8:00, and four hours pass at least after the last tool."""
    left = piece(bench(), psi=600, hour_h=left_h)
    after = act(left, "leave")
    assert after.over and after.hour_h == pytest.approx(left_h + hours)
    assert after.diary[-1].minutes == pytest.approx(hours * 60.0) and after.diary[-1].hour_h == left_h
    assert after.face_age_h - left.face_age_h > hours / 2.0


@pytest.mark.parametrize(("hour_h", "over"), [(19.91, False), (19.92, True), (20.2, True)])
def test_whoever_still_stands_there_after_twenty_hours_goes_home(hour_h, over):
    """Judgement; the wait of five minutes ends at 19.9933 h, at 20.0033 h, later."""
    after = act(piece(bench(), hour_h=hour_h), "wait 5")
    assert after.over == over and (after.diary[-1].word == "leave") == over


def test_the_first_quarter_hour_is_enough_to_the_minute():
    """base_ready_earliest 15 min: a clock read to the minute does not make a quarter of an hour too short."""
    start = begin(bench(**FIRM, initial_set_h=40.0))
    assert act(start, "wait 15").stands and not let_pass(start, 0.2499).stands
    assert act(act(start, "wait 15"), "spread").damage == ()
