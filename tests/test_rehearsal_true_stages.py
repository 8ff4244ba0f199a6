"""The stages told after a practice pour: worked by hand on histories of our own, and true to what the looks found."""

from dataclasses import replace

import pytest
from practice_pieces import a_pour

from shop_calc.trade.rehearsal.acts import act
from shop_calc.trade.rehearsal.bench import begin, let_pass
from shop_calc.trade.rehearsal.reveal import true_stages
from shop_calc.trade.rehearsal.signs import look

# At 500 psi and 3.4 h (set_time_initial) a resistance comes at 3.4 h times its 500th part to the power 1/7 (set_exponent).
AGE_H = {10: 1.9443, 40: 2.3701, 60: 2.5115, 150: 2.8627, 250: 3.0795, 500: 3.4, 1000: 3.7539}
STARTS_H = 1.0 / 3.0  # the one load of this top is packed 20 min after its water


def paced(open_pace=1.0, covered_pace=2.0, last_pace=None, rate_kg_m2_h=0.0, **hidden):
    """A pour that ages by so many hours an hour, open and covered, in eight hours of steps; and what the air takes."""
    pour = a_pour(**hidden)
    steps = range(97)
    ages = {True: [open_pace * k / 12 for k in steps], False: [covered_pace * k / 12 for k in steps]}
    if last_pace:
        ages[True][-1] = ages[True][-2] + last_pace / 12
    demand = tuple(rate_kg_m2_h * k / 12 for k in steps)
    histories = {(layer, bare): tuple(ages[bare]) for layer in ("base", "face") for bare in (True, False)}
    return replace(pour, ages_h=histories, demand_kg_m2=demand, red_kg_m2=demand)


def faced(pour, hour_h=1.0):
    """The face on and settled at an hour."""
    return let_pass(begin(pour), hour_h - STARTS_H).having(face_on_h=hour_h, settled_h=hour_h)


def windows(state):
    return {stage.key: (stage.likely_from_h, stage.likely_to_h) for stage in true_stages(state)}


def changes_at(state, sign, cue):
    """Hours until a look no longer finds a cue, the piece lying as it does."""
    low, high = 0.0, 40.0
    for _ in range(50):
        middle = (low + high) / 2.0
        low, high = (middle, high) if look(let_pass(state, middle), sign).cue == cue else (low, middle)
    return state.hour_h + high


def of_height(pour, thickness_m, base_depth_m=0.03175):
    return replace(pour, told=replace(pour.told, thickness_m=thickness_m, base_depth_m=base_depth_m))


# ---- the late clock


def test_an_open_piece_reaches_each_resistance_at_its_age():
    """strip 10 to 40 psi, first steel 60 to 150, last steel 250 to 500, stop 1000: rows of data/defaults.csv."""
    found = windows(faced(paced()))
    assert found["strip"] == pytest.approx((AGE_H[10], AGE_H[40]), abs=1e-4)
    assert found["first_steel"] == pytest.approx((AGE_H[60], AGE_H[150]), abs=1e-4)
    assert found["last_steel"] == pytest.approx((AGE_H[250], AGE_H[500]), abs=1e-4)
    assert found["stop"] == pytest.approx((AGE_H[1000], AGE_H[1000]), abs=1e-4)


@pytest.mark.parametrize("told_at_h", [1.5, 2.9, 6.0])
def test_a_piece_that_lay_covered_for_half_an_hour_is_half_an_hour_earlier_from_then_on(told_at_h):
    """Under its cover it ages 2 h an hour from 1:00 to 1:30; before and after 1 h an hour. Told early or late, the same."""
    covered = let_pass(faced(paced()).having(cover="tent"), 0.5)
    found = windows(let_pass(covered.having(cover="open"), told_at_h - 1.5))
    assert found["strip"][0] == pytest.approx(1.0 + (AGE_H[10] - 1.0) / 2.0, abs=1e-4)  # 1:28, under the cover
    assert found["first_steel"] == pytest.approx((AGE_H[60] - 0.5, AGE_H[150] - 0.5), abs=1e-4)
    assert found["stop"][0] == pytest.approx(AGE_H[1000] - 0.5, abs=1e-4)


def test_what_set_before_the_base_was_packed_is_told_at_its_own_hour():
    """Initial set after 0.3 h: 60 psi after 0.3 / 3.4 of the hours above, before the first look at 20 min."""
    found = windows(faced(paced(initial_set_h=0.3)))
    assert found["first_steel"] == pytest.approx((0.2216, 0.2526), abs=1e-4)
    assert found["stop"][0] == pytest.approx(0.3312, abs=1e-4) and found["stop"][0] < STARTS_H


def test_after_the_last_step_of_the_history_its_pace_is_carried_on():
    """Initial set after 10 h, so that 1000 psi come at 11.041 h. Half an hour under cover gave 0.5 h; at 8:00 the open age is
    7.9583 + 0.5 and goes on by 0.5 h an hour: 8 + (11.041 - 8.4583) / 0.5 = 13.165 h.
    """
    covered = let_pass(faced(paced(last_pace=0.5, initial_set_h=10.0)).having(cover="tent"), 0.5).having(cover="open")
    stop_h = windows(covered)["stop"][0]
    assert stop_h == pytest.approx(13.165, abs=1e-3)
    assert look(let_pass(covered, stop_h - 1.5 - 0.001), "thumb").cue == "past"
    assert look(let_pass(covered, stop_h - 1.5 + 0.001), "thumb").cue == "rings"


# ---- the face on the base


@pytest.mark.parametrize(("growth_pa_s", "opens_h"), [(1.0, 0.5833), (0.5, 0.5833), (0.25, 0.7505), (0.125, 1.1676)])
def test_the_base_takes_the_face_once_it_bears_itself_and_a_quarter_of_an_hour_has_gone(growth_pa_s, opens_h):
    """1 1/4 in need 525.4 Pa; from 150 Pa that is 375.4 Pa / growth: 6.3, 12.5, 25.0 and 50.1 min after the packing."""
    start = begin(paced(build_up_pa_s=growth_pa_s))
    assert windows(start)["face"][0] == pytest.approx(opens_h, abs=1e-4)
    assert changes_at(start, "edge", "moves") == pytest.approx(opens_h, abs=1e-4)


def test_a_base_that_hardly_grows_at_rest_is_borne_by_its_setting():
    """power_law_from 10 psi; a base 1 m high needs 16549 Pa, nine times that are 21.602 psi: 3.4 h x (21.602/500)^(1/7)."""
    for height_m, opens_h in ((0.03175, AGE_H[10]), (1.0, 2.1704)):
        start = begin(of_height(paced(build_up_pa_s=0.001), 1.01, height_m))
        assert windows(start)["face"][0] == pytest.approx(opens_h, abs=1e-3)
        assert changes_at(start, "edge", "moves") == pytest.approx(opens_h, abs=1e-3)


def test_the_base_waits_no_longer_than_an_hour_at_21_c_and_not_until_no_thumb_prints_it():
    """layer_gap 60 min after the packing; layer_gap_pr 60 psi, with initial set after 1 h at 2.5115 / 3.4 h."""
    assert windows(begin(paced(open_pace=0.5)))["face"][1] == pytest.approx(STARTS_H + 2.0, abs=1e-4)
    assert windows(begin(paced()))["face"][1] == pytest.approx(STARTS_H + 1.0, abs=1e-4)
    assert windows(begin(paced(initial_set_h=1.0)))["face"][1] == pytest.approx(0.7386, abs=1e-4)


# ---- shine and edge


@pytest.mark.parametrize(
    ("rate_kg_m2_h", "closes_h"), [(0.5, 1.5), (0.3, 1.0 + 0.25 / 0.3), (0.2, AGE_H[10]), (0.0, AGE_H[10])]
)
def test_board_and_float_have_until_the_shine_goes_or_the_face_sets(rate_kg_m2_h, closes_h):
    """free_water 0.25 kg/m2 from the spreading at 1:00; strip_pr_low 10 psi at 1.944 h."""
    on = faced(paced(rate_kg_m2_h=rate_kg_m2_h))
    assert windows(on)["float"] == pytest.approx((1.0, closes_h), abs=1e-4)
    if rate_kg_m2_h > 0.25:
        assert changes_at(on.having(skin_kg_m2=0.125), "sheen", "fading") == pytest.approx(
            1.0 + 0.125 / rate_kg_m2_h, abs=1e-4
        )


def test_a_face_that_is_not_on_yet_is_reckoned_from_when_it_may_go_on():
    """The base opens at 0.5833 h: 0.25 kg/m2 at 0.5 an hour later."""
    assert windows(begin(paced(rate_kg_m2_h=0.5)))["float"] == pytest.approx((0.5833, 1.0833), abs=1e-4)


TALL = {"initial_set_h": 12.0, "exponent": 2.0}  # so that 10 and 12.96 psi lie far apart
AT_10_PSI_H = 1.6971  # 12 h x (10 / 500)^(1/2)


@pytest.mark.parametrize(("growth_pa_s", "opens_h"), [(10.0, AT_10_PSI_H), (3.4, 1.7990), (3.0, 1.9055), (1.0, 1.9320)])
def test_a_side_comes_off_when_both_clocks_let_it(growth_pa_s, opens_h):
    """An edge 0.6 m high, far above any top, needs 9929.2 Pa: settled at 1:00 with 150 Pa that is 9779.2 Pa / growth later,
    never before 10 psi (strip_pr_low), and at the latest at nine times 9929.2 Pa = 12.961 psi: 12 h x (12.961 / 500)^(1/2).
    """
    on = faced(of_height(paced(build_up_pa_s=growth_pa_s, **TALL), 0.6))
    assert windows(on)["strip"][0] == pytest.approx(opens_h, abs=2e-4)
    assert windows(on)["look"] == pytest.approx((1.0, opens_h), abs=2e-4)
    assert changes_at(on, "edge", "leans") == pytest.approx(opens_h, abs=2e-4)


def test_the_slower_layer_opens_the_strip_and_the_face_closes_it():
    """A base half an hour older or younger than its face."""
    for older_h in (-0.5, 0.5):
        on = faced(paced())
        on = on.having(base_age_h=on.base_age_h + older_h, path=((1.0, on.base_age_h + older_h, on.face_age_h),))
        opens_h, closes_h = windows(on)["strip"]
        assert opens_h == pytest.approx(AGE_H[10] + max(-older_h, 0.0), abs=1e-4)
        assert closes_h == pytest.approx(max(AGE_H[40], opens_h), abs=1e-4)


def test_the_stages_of_a_day_are_told_alike_before_and_after_its_looks():
    pour = a_pour()
    on = faced(pour)
    after = act(act(act(on, "wait 30"), "look edge"), "wait 30")
    early, late = windows(on), windows(after)
    for key in early:
        assert early[key] == pytest.approx(late[key], abs=0.003)
