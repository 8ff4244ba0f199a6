"""A piece with dropped edges as a beam: its weight, and the tip of a return that is pulled harder than the plate."""

import numpy as np
import pytest

from shop_calc.science.loads import GRAVITY_M_S2
from shop_calc.trade.after.piece_beam import flat_stress_pa, piece_beam, worst_place
from shop_calc.trade.shape.outline import l_shape, rectangle
from shop_calc.trade.shape.piece import DropEdge, build_piece

RHO = 2300.0


def test_the_tip_of_a_narrow_return_is_pulled_harder_than_the_plate():
    # 600 x 40 mm with a rib 12 wide and 80 deep at the front. In mm: area 24000 + 480; from the top the middle lies at
    # (24000 20 + 480 60)/24480 = 20.7843; I_zz = 600 40^3/12 + 24000 0.7843^2 + 12 40^3/12 + 480 39.2157^2 = 4016941;
    # across, from the front, at (24000 300 + 480 6)/24480 = 294.2353; I_yy = 40 600^3/12 + 24000 5.7647^2 + 40 12^3/12
    # + 480 288.2353^2 = 760680904; I_yz = 24000 5.7647 (-0.7843) + 480 (-288.2353) 39.2157 = -5534118.
    # Tension at the inner corner of the tip, z 59.2157, y -282.2353, per moment:
    # (760680904 59.2157 - 5534118 282.2353)/(760680904 4016941 - 5534118^2) = 1.43741e-5: modulus 69569, of 160000 plain
    piece = build_piece(rectangle(2.0, 0.6), 0.04, True, drop=DropEdge("front", 0.08, 0.012))
    beam = piece_beam(piece, RHO)
    middle = np.argmin(np.abs(beam.x_m - 1.0))
    i_yy, i_zz, i_yz = 760680904.0, 4016941.0, -5534118.0
    by_hand = (i_yy * i_zz - i_yz**2) / (i_yy * 59.2157 + i_yz * 282.2353)
    assert by_hand == pytest.approx(69569, rel=1e-3)
    assert beam.sag_modulus_m3[middle] == pytest.approx(by_hand * 1e-9, rel=1e-4)
    assert beam.hog_modulus_m3[middle] == pytest.approx(0.6 * 0.04**2 / 6)  # its top is pulled less than a plate's: no help
    # by the ends it sags: w L^2/8 over that modulus; held a good fifth in, sagging and hogging are equal, and the tip decides
    weight = RHO * GRAVITY_M_S2 * (0.6 * 0.04 + 0.012 * 0.04)
    assert flat_stress_pa(beam, 0.0) == pytest.approx(weight * 4.0 / 8 / (by_hand * 1e-9), rel=1e-3)
    stress, place_m, plain = worst_place(beam, 0.0)
    assert place_m == pytest.approx(1.0, abs=0.03) and stress / plain == pytest.approx(0.00016 / (by_hand * 1e-9), rel=1e-4)


def test_a_broad_return_is_no_help_either():
    # a return of 0.3 of 0.6 m, 0.06 deep: the section is stronger than the plate; the plate is counted
    beam = piece_beam(build_piece(rectangle(2.0, 0.6), 0.04, True, drop=DropEdge("front", 0.06, 0.3)), RHO)
    assert beam.sag_modulus_m3 == pytest.approx(0.6 * 0.04**2 / 6) and beam.hog_modulus_m3 == pytest.approx(0.6 * 0.04**2 / 6)
    weight = RHO * GRAVITY_M_S2 * (0.6 * 0.04 + 0.3 * 0.02)
    assert flat_stress_pa(beam, 0.0) == pytest.approx(weight * 4.0 / 8 / (0.6 * 0.04**2 / 6), rel=1e-4)


def test_front_and_back_alike_bend_straight_and_ends_only_weigh():
    # two ribs 20 wide, 80 deep of a plate 400 x 40: in mm area 16000 + 1600, middle (16000 20 + 1600 60)/17600 = 23.6364,
    # I = 400 40^3/12 + 16000 3.6364^2 + 40 40^3/12 + 1600 36.3636^2 = 4674000 (rounded), tip at 56.3636
    drops = [DropEdge(name, 0.08, 0.02) for name in ("front", "back")]
    beam = piece_beam(build_piece(rectangle(2.0, 0.4), 0.04, True, drop=drops), RHO)
    inertia = 400 * 40**3 / 12 + 16000 * (40 / 11) ** 2 + 40 * 40**3 / 12 + 1600 * (400 / 11) ** 2
    middle = np.argmin(np.abs(beam.x_m - 1.0))
    assert beam.sag_modulus_m3[middle] == pytest.approx(inertia / (620 / 11) * 1e-9, rel=1e-9)
    ends = piece_beam(build_piece(rectangle(2.0, 0.4), 0.04, True, drop=[
        DropEdge(name, 0.08, 0.05) for name in ("left", "right")]), RHO)  # fmt: skip
    assert ends.sag_modulus_m3 == pytest.approx(0.4 * 0.04**2 / 6)  # across an end it is all deep: stronger, not counted
    # by the ends: their weight lies over the holds, 0.05 x 0.4 x 0.04 each; moment of the plate and that of the ends at 0.025
    tip = RHO * GRAVITY_M_S2 * 0.05 * 0.4 * 0.04 * 0.025
    moment = RHO * GRAVITY_M_S2 * 0.4 * 0.04 * 4.0 / 8 + tip
    assert flat_stress_pa(ends, 0.0) == pytest.approx(moment / (0.4 * 0.04**2 / 6), rel=1e-4)


@pytest.mark.parametrize("shape", [rectangle(2.0, 0.6), l_shape(2.0, 1.5, 1.2, 0.9)])
def test_front_and_ends_weigh_as_much_on_the_cuts_as_in_the_piece(shape):
    drops = [DropEdge("front", 0.1, 0.05), DropEdge("left", 0.08, 0.07), DropEdge("right", 0.08, 0.03)]
    piece = build_piece(shape, 0.04, True, drop=drops)
    for across in (False, True):
        beam = piece_beam(piece, RHO, across=across)
        assert np.trapezoid(beam.line_kg_m, beam.x_m) == pytest.approx(RHO * piece.volume_m3, rel=1e-3)
        assert np.all(beam.sag_modulus_m3 <= beam.width_m * 0.04**2 / 6 * (1 + 1e-12))
        assert (beam.length_m, beam.across_m) == pytest.approx(piece.outline.box_m[:: -1 if across else 1])


def test_a_piece_with_drops_is_stressed_alike_from_left_and_right():
    stresses = []
    for names in (("left", "front"), ("right", "front")):
        drops = [DropEdge(names[0], 0.1, 0.05), DropEdge(names[1], 0.08, 0.03)]
        beam = piece_beam(build_piece(rectangle(2.0, 0.6), 0.04, True, drop=drops), RHO)
        stresses.append([flat_stress_pa(beam, ratio) for ratio in (0.0, 0.2071)])
    assert stresses[0] == pytest.approx(stresses[1], rel=1e-4)
