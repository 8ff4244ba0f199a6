"""The piece of a practice pour at one moment: what it bears, how dry it is, and what time does to it."""

from dataclasses import replace

import pytest
from practice_pieces import LEAST, PSI, a_pour, piece

from shop_calc.trade.rehearsal.bench import air_now, let_pass
from shop_calc.trade.timeline.room import Room

BEFORE = {"face_on_h": None, "settled_h": None}
EVERY_5_MIN = range(97)


def windy(rate_kg_m2_h=0.6, red_kg_m2_h=0.6):
    """Air that takes the same all day, and how much of that is red."""
    sums = {"demand_kg_m2": rate_kg_m2_h, "red_kg_m2": red_kg_m2_h}
    return replace(a_pour(), **{name: tuple(rate * k / 12 for k in EVERY_5_MIN) for name, rate in sums.items()})


# ---- what it bears


@pytest.mark.parametrize(("rested_h", "stress_pa"), [(0.0, 150.0), (0.25, 600.0), (1.0, 1950.0), (2.0, 3750.0)])
def test_yield_stress_grows_by_half_a_pascal_a_second_of_rest(rested_h, stress_pa):
    """yield_stress_start 150 Pa, build_up_rate 0.5 Pa/s, Roussel 2006 from memory: 150 + 0.5 x 3600 an hour."""
    resting = piece(settled_h=3.0 - rested_h, psi=5)
    assert resting.rest_h == pytest.approx(rested_h)
    assert resting.yield_pa == resting.bears_pa == pytest.approx(stress_pa)


def test_the_base_rests_from_its_packing_and_a_face_being_worked_has_no_rest():
    """The one load of this top is packed 20 min after its water."""
    assert piece(psi=5, **BEFORE).rest_h == pytest.approx(3.0 - 1.0 / 3.0)
    assert piece(psi=5, settled_h=3.5).yield_pa == 150.0


@pytest.mark.parametrize(("psi", "bears_pa"), [(9.99, 150.0), (10.0, 7660.84), (18.0, 13789.5), (90.0, 68947.6)])
def test_from_ten_psi_on_it_bears_a_ninth_of_its_resistance(psi, bears_pa):
    """power_law_from 10 psi. A deep punch meets nine times the shear strength, Skempton 1951 from memory: psi x 6894.76 / 9."""
    young = piece(a_pour(build_up_pa_s=0.0), psi=psi * (1 + 1e-9))
    assert young.bears_pa == pytest.approx(bears_pa, rel=1e-5)


def test_of_the_two_clocks_the_one_that_bears_more_counts_and_of_two_layers_the_softer():
    long_rest = piece(a_pour(yield_start_pa=20000.0, build_up_pa_s=0.0), psi=18)
    assert long_rest.bears_pa == 20000.0
    for fields in ({"psi": 18, "base_psi": 90}, {"psi": 90, "base_psi": 18}, {"psi": 90, "base_psi": 18, **BEFORE}):
        assert piece(a_pour(build_up_pa_s=0.0), **fields).bears_pa == pytest.approx(13789.5, rel=1e-5)


def test_an_edge_needs_one_and_a_half_times_half_its_own_weight():
    """Safety 1.5, 2250 kg/m3, 9.80665 m/s2, 1 1/2 in: 1.5 x 2250 x 9.80665 x 0.0381 / 2; the base alone is 1 1/4 in high."""
    assert piece().edge_pa == pytest.approx(630.506, abs=0.001)
    assert piece(**BEFORE).edge_pa == pytest.approx(525.422, abs=0.001)


def test_an_edge_that_drops_needs_it_for_all_its_height():
    """1 1/2 in more below the top: twice the height of the edge; of the base alone 2 3/4 in for 1 1/4."""
    pour = a_pour()
    dropping = replace(pour, told=replace(pour.told, drop_m=0.0381))
    assert piece(dropping).edge_pa == pytest.approx(2 * 630.506, abs=0.002)
    assert piece(dropping, **BEFORE).edge_pa == pytest.approx(525.422 * 2.75 / 1.25, abs=0.003)


@pytest.mark.parametrize(("share", "stands"), [(1.0 - LEAST, False), (1.0, True), (1.0 + LEAST, True)])
@pytest.mark.parametrize("layers", [{}, BEFORE])
def test_what_bears_just_what_it_needs_stands(share, stands, layers):
    need_pa = piece(**layers).edge_pa
    assert piece(a_pour(yield_start_pa=share * need_pa, build_up_pa_s=0.0), psi=5, **layers).stands == stands


def test_an_edge_does_not_wait_for_the_quarter_of_an_hour_that_the_base_waits():
    """base_ready_earliest 15 min."""
    strong = a_pour(yield_start_pa=1e5)
    assert piece(strong, psi=5, settled_h=3.0).stands
    for hour_h, stands in ((0.57, False), (0.59, True)):  # the base is packed at 0.3333 h
        assert piece(strong, psi=5, hour_h=hour_h, **BEFORE).stands == stands


# ---- how dry


@pytest.mark.parametrize(("lost", "dryness"), [(0.0, 0.0), (0.1, 0.4), (0.25, 1.0), (0.5, 2.0)])
def test_a_skin_is_dry_when_it_has_lost_what_it_could_give(lost, dryness):
    """free_water 0.25 kg/m2."""
    assert piece(skin_kg_m2=lost).dryness == pytest.approx(dryness)


@pytest.mark.parametrize(("psi", "lost", "crusted"), [
    (20, 0.374, False), (20, 0.376, True), (59.9, 0.376, True), (60.1, 0.376, False),
])  # fmt: skip
def test_a_crust_is_a_dry_skin_over_soft_mortar(psi, lost, crusted):
    """Half more than free_water 0.25 kg/m2, judgement; soft is below first_steel_pr_low, 60 psi."""
    assert piece(psi=psi, skin_kg_m2=lost).crusted == crusted
    assert not piece(psi=psi, skin_kg_m2=lost, **BEFORE).crusted


# ---- what time does


def test_open_skin_loses_what_the_air_takes_between_the_two_hours():
    """0.6 kg/m2/h, all of it red, from 3:00 to 3:30."""
    after = let_pass(piece(windy(), psi=20, skin_kg_m2=0.02, lost_kg_m2=0.5, red_kg_m2=0.01), 0.5)
    assert after.hour_h == 3.5
    assert (after.skin_kg_m2, after.lost_kg_m2, after.red_kg_m2) == pytest.approx((0.32, 0.8, 0.31))


def test_only_the_red_part_of_the_loss_counts_towards_cracks():
    after = let_pass(piece(windy(0.6, 0.2), psi=20), 0.5)
    assert (after.skin_kg_m2, after.red_kg_m2) == pytest.approx((0.3, 0.1))


@pytest.mark.parametrize(("psi", "red"), [(59.9, 0.3), (60.1, 0.0)])
def test_a_face_that_takes_steel_cracks_no_more(psi, red):
    """first_steel_pr_low 60 psi."""
    after = let_pass(piece(windy(), psi=psi), 0.5)
    assert after.red_kg_m2 == pytest.approx(red) and after.skin_kg_m2 == pytest.approx(0.3)


@pytest.mark.parametrize(
    ("fields", "lost"),
    [({"cover": "mist"}, 0.3), ({"cover": "tent"}, 0.0), ({"cover": "fabric"}, 0.0), (BEFORE, 0.0)],
)
def test_a_cover_keeps_the_water_and_mist_is_none(fields, lost):
    after = let_pass(piece(windy(), psi=20, **fields), 0.5)
    assert (after.skin_kg_m2, after.lost_kg_m2, after.red_kg_m2) == pytest.approx((lost, lost, lost))


def test_each_layer_ages_by_its_own_history_open_or_covered():
    """Histories of our own: 1 h an hour the open base, 2 the covered one, 3 the open face, 4 the covered one."""
    pace = {("base", True): 1, ("base", False): 2, ("face", True): 3, ("face", False): 4}
    pour = replace(a_pour(), ages_h={key: tuple(each * k / 12 for k in EVERY_5_MIN) for key, each in pace.items()})
    for cover, base, face in (("open", 1, 3), ("mist", 1, 3), ("tent", 2, 4)):
        before = piece(pour, cover=cover)
        after = let_pass(before, 0.25)
        grown = after.base_age_h - before.base_age_h, after.face_age_h - before.face_age_h
        assert grown == pytest.approx((base / 4, face / 4))
        assert after.path == ((3.25, after.base_age_h, after.face_age_h),)


@pytest.mark.parametrize("hours_h", [0.0, -1.0])
def test_no_time_and_the_morning_after_change_nothing(hours_h):
    now = piece(windy())
    assert let_pass(now, hours_h) is now
    over = now.having(over=True)
    assert let_pass(over, 1.0) is over


@pytest.mark.parametrize(("hour_h", "air"), [
    (0.0, (20.0, 0.5, 0.0)), (0.9999, (20.0, 0.5, 0.0)), (12 * (1 / 12) - 1e-12, (25.0, 0.4, 1.0)),
    (1.0, (25.0, 0.4, 1.0)), (1.5, (25.0, 0.4, 1.0)), (2.0, (22.0, 0.6, 0.2)), (30.0, (22.0, 0.6, 0.2)),
])  # fmt: skip
def test_the_thermometer_shows_the_room_from_the_hour_it_changed_on(hour_h, air):
    """Twelve waits of five minutes are an hour, whatever the last binary digit says."""
    room = Room((0.0, 1.0, 2.0), (20.0, 25.0, 22.0), (0.5, 0.4, 0.6), (0.0, 1.0, 0.2))
    assert air_now(piece(replace(a_pour(), room=room), hour_h=hour_h)) == air


@pytest.mark.parametrize(("age_h", "psi"), [(3.4, 500.0), (1.7, 500.0 / 128.0), (6.8, 64000.0)])
def test_resistance_rises_with_the_seventh_power_of_the_age(age_h, psi):
    """set_time_initial 3.4 h, set_exponent 7; 500 psi at initial set by ASTM C403."""
    assert piece(a_pour()).having(face_age_h=age_h).face_pa == pytest.approx(psi * PSI)
    assert piece(a_pour()).having(base_age_h=age_h).base_pa == pytest.approx(psi * PSI)
