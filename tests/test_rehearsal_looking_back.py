"""Looking back on a practice pour: its account, the half hours, the same day played again, and its rows in the log."""

from dataclasses import replace

import pytest
from practice_pieces import PSI, a_pour, piece

from shop_calc.trade.rehearsal.account import account
from shop_calc.trade.rehearsal.acts import act
from shop_calc.trade.rehearsal.bench import begin
from shop_calc.trade.rehearsal.damage import Damage, damage_words
from shop_calc.trade.rehearsal.debrief import debrief
from shop_calc.trade.rehearsal.replay import before, moved, play
from shop_calc.trade.rehearsal.rows import log_events

BEFORE = {"face_on_h": None, "settled_h": None}
FIRM = {"yield_start_pa": 1e5}  # bears any edge from the first


def ended(*damage):
    """A pour that is over, with this damage."""
    return begin(a_pour()).having(over=True, damage=damage)


def sag(at_h, severity, **fields):
    return Damage("sag", at_h, "strip", severity, "Soft.", **fields)


# ---- the account


@pytest.mark.parametrize("severities", [(0.3, 0.7, 0.5), (0.7, 0.3, 0.5), (0.3, 0.5, 0.7)])
def test_of_each_kind_of_harm_the_worst_is_told(severities):
    """Plain to see from a quarter on, bad from six tenths; judgement."""
    sags = [sag(2.0 + 0.1 * k, severity) for k, severity in enumerate(severities)]
    end = ended(*sags, Damage("crazing", 1.0, "sprinkle", 0.4, "Water."))
    found = debrief(end)
    assert [(item.key, item.severity) for item in found.damage] == [("crazing", 0.4), ("sag", 0.7)]
    text = account(end)
    assert text.count("A sagging or torn edge, bad") == text.count("A sagging or torn edge") == 1
    worst_min = round(6 * severities.index(0.7))
    assert f"(10:{worst_min:02d}, next side off)" in text  # the first water was at 8:00


@pytest.mark.parametrize(("severity", "size"), [
    (0.01, "a trace"), (0.249, "a trace"), (0.251, "plain to see"), (0.599, "plain to see"), (0.601, "bad"), (1.0, "bad"),
])  # fmt: skip
def test_harm_is_a_trace_then_plain_to_see_then_bad(severity, size):
    """Judgement; what is only a trace does not stay."""
    item = sag(2.0, severity)
    assert item.size == size and item.stays == (size != "a trace")
    assert damage_words((item,)) == f"a sagging or torn edge, {size}"


def test_a_trace_and_what_was_floated_out_are_told_in_a_line_of_their_own():
    text = account(ended(sag(2.0, 0.24), Damage("air", 2.5, "steel", 0.9, "Early.", healed_h=2.6)))
    assert text.splitlines() == [
        "In the morning nothing shows that should not.",
        "A trace, seen only by who looks for it: a sagging or torn edge.",
        "Undone by floating in time: air and water under a closed skin.",
    ]
    assert "A trace" not in account(ended(sag(2.0, 0.26)))


# ---- the half hours


def test_every_act_is_tried_half_an_hour_earlier_and_half_an_hour_later():
    end = play(begin(a_pour(**FIRM)), "step away; spread; screed; leave")
    spread, screed, left = debrief(end).decisions
    assert (spread.earlier.at_h - spread.at_h, spread.later.at_h - spread.at_h) == pytest.approx((-0.5, 0.5))
    assert screed.later.at_h - screed.at_h == pytest.approx(0.5)
    assert screed.earlier.said == "not possible then: the face is not on yet"
    assert left.earlier is None and left.later is None


def test_an_act_moved_before_the_beginning_comes_after_what_was_begun_there():
    end = play(begin(a_pour(**FIRM)), "spread; wait 5; screed")
    found = moved(end, 2, -0.5)
    assert found.at_h == pytest.approx(end.face_on_h) and found.said == ""


def test_the_piece_at_an_earlier_hour_has_what_was_begun_until_then():
    end = play(begin(a_pour(**FIRM)), "wait 15; spread; wait 30; screed; wait 30; float")
    spread, screed = end.diary[1], end.diary[3]
    for hour_h, on, level in (
        (spread.hour_h - 0.001, False, False), (spread.hour_h, True, False), (screed.hour_h - 0.001, True, False),
        (screed.hour_h, True, True), (screed.hour_h + 0.4, True, True),
    ):  # fmt: skip
        then = before(end, 5, hour_h)
        assert (then.face_on_h is not None, then.screeded_h is not None, then.float_h) == (on, level, None)
        assert then.hour_h >= hour_h - 1e-9


# ---- the log


def minutes(state, row):
    return (row.time - state.pour.water_in).total_seconds() / 60.0


def test_the_face_is_placed_when_its_spreading_ends():
    """Four square metres at 20 min each for one pair of hands: from 3:00 to 4:20."""
    pour = a_pour()
    pour = replace(pour, told=replace(pour.told, hands=1.0, area_m2=4.0))
    after = act(piece(pour, psi=5, **BEFORE), "spread")
    rows = [row for row in log_events(after) if minutes(after, row) >= 180.0]
    assert [(row.event, row.layer, minutes(after, row)) for row in rows] == [
        ("action", "", 180.0), ("placed", "face", 260.0),
    ]  # fmt: skip


def thumbs(state):
    return [row for row in log_events(state) if row.event == "check"]


def test_a_thumb_on_the_base_stays_one_on_the_base_once_the_face_is_on():
    base = act(piece(a_pour(**FIRM), psi=20, **BEFORE), "look thumb")
    assert [row.layer for row in thumbs(base)] == ["base"]
    both = act(base.having(hour_h=3.5, face_on_h=3.4, settled_h=3.4), "look thumb")
    assert [row.layer for row in thumbs(both)] == ["base", ""]
    assert [row.cue for row in thumbs(both)] == ["", "first_steel not yet"]


@pytest.mark.parametrize(
    ("psi", "depth_m"), [(5, None), (9.99, None), (10.01, 0.012687), (20, 0.00635), (40, 0.003175)]
)
def test_a_print_too_deep_to_say_anything_is_no_number_in_the_log(psi, depth_m):
    """print_deepest 12.7 mm, a half inch: half of the quarter inch's 20 psi (thumb_print_pr)."""
    (row,) = thumbs(act(piece(psi=psi), "look thumb"))
    assert row.depth_m == (None if depth_m is None else pytest.approx(depth_m, rel=1e-4)) and row.resistance_pa is None


def test_the_rod_is_in_the_log_with_what_it_met():
    (row,) = thumbs(act(piece(psi=100), "look rod"))
    assert row.resistance_pa == pytest.approx(100 * PSI) and row.depth_m is None and row.layer == ""
