"""The piece as a beam, by hand: shear, a strip beside an opening, sloping sides, pieces that lie far from the corner."""

import numpy as np
import pytest

from shop_calc.science.loads import GRAVITY_M_S2
from shop_calc.trade.after import seat_rule, supports
from shop_calc.trade.after.piece_beam import edge_stress_pa, flat_stress_pa, piece_beam
from shop_calc.trade.shape.outline import circle, place, polygon, rectangle
from shop_calc.trade.shape.piece import Cutout, DropEdge, build_piece

RHO, IN = 2300.0, 0.0254


def cut(length, width, thick, hole, at):
    return build_piece(rectangle(length, width), thick, cutouts=[Cutout(place(rectangle(*hole), at), name="hole")])


def test_shear_and_moment_of_a_plain_strip_held_a_fifth_in():
    # w L held at 0.2 L and 0.8 L: each bears w L/2; shear -0.1, +0.2, 0, -0.2, +0.1 w L at 0.1, 0.3, 0.5, 0.7, 0.9 L;
    # moment -0.005, +0.005 and 0.025 w L^2 at 0.1, 0.3 and 0.5 L
    beam = piece_beam(build_piece(rectangle(2.0, 0.5), 0.04), RHO)
    load = RHO * 0.5 * 0.04 * GRAVITY_M_S2 * 2.0
    shear = np.interp(np.array([0.1, 0.3, 0.5, 0.7, 0.9]) * 2.0, beam.x_m, beam.shear_n(0.2))
    assert shear == pytest.approx(load * np.array([-0.1, 0.2, 0.0, -0.2, 0.1]), abs=1e-6 * load)
    moment = np.interp(np.array([0.1, 0.3, 0.5]) * 2.0, beam.x_m, beam.moment_n_m(0.2))
    assert moment == pytest.approx(load * 2.0 * np.array([-0.005, 0.005, 0.025]), abs=1e-4 * load)


@pytest.mark.parametrize("at", [(0.6, 0.35), (1.4, 0.35), (0.6, 0.25), (1.4, 0.25)])
def test_on_edge_beside_an_opening_by_hand(at):
    # 2.0 x 0.6 m, opening 0.5 x 0.3 m of which the middle is 0.6 m from an end: strips 0.2 and 0.1 m deep.
    # In rho g t: 1.05 in all, held at the ends with 0.495 and 0.555. Beside the opening the shear is at most
    # 0.495 - 0.6 0.35 = 0.285, the moment 0.495 0.85 - 0.3 0.85^2 + 0.15 0.5^2 = 0.2415.
    # Both strips about their common middle, by t: 0.2^3/12 + 0.2 0.15^2 + 0.1^3/12 + 0.1 0.3^2 = 0.01425, skin 0.35:
    # 0.2415 0.35/0.01425 = 5.9316. The deeper strip takes 8/9 of the shear over a quarter of a metre: 6 0.06333/0.2^2 = 9.5.
    beam = piece_beam(cut(2.0, 0.6, 0.04, (0.5, 0.3), at), RHO)
    by_hand = 0.2415 * 0.35 / 0.01425 + 9.5
    assert edge_stress_pa(beam) == pytest.approx(by_hand * RHO * GRAVITY_M_S2, rel=1e-5)


@pytest.mark.parametrize("across", [0.2, 0.4])
def test_on_edge_beside_an_opening_near_one_side_the_thin_strip_may_be_the_worse(across):
    # 2.0 x 0.6 m, a long opening 1.6 x 0.3 m in the middle of the length: strips 0.05 and 0.25 m deep. In rho g t:
    # 0.72 in all, each end 0.36; shear at the opening 0.36 - 0.6 0.2 = 0.24, moment in the middle
    # 0.36 1.0 - 0.3 1.0 + 0.15 0.8^2 = 0.156. Common middle (0.05 0.025 + 0.25 0.475)/0.3 = 0.4 from the thin side;
    # 0.05^3/12 + 0.05 0.375^2 + 0.25^3/12 + 0.25 0.075^2 = 0.00975, skin 0.4: 6.4. Shear by the cubes, 125 to 1:
    # the deep strip takes 0.24 125/126 0.8 = 0.190476: 6 0.190476/0.25^2 = 18.2857; the thin one 6 0.00152381/0.05^2 = 3.657.
    beam = piece_beam(cut(2.0, 0.6, 0.04, (1.6, 0.3), (1.0, across)), RHO)
    assert edge_stress_pa(beam) == pytest.approx((0.156 * 0.4 / 0.00975 + 18.285714) * RHO * GRAVITY_M_S2, rel=1e-3)


@pytest.mark.parametrize("at", [0.4, 1.7])
def test_a_tap_hole_off_the_middle_hardly_changes_a_piece_on_edge(at):
    # plain strip: 6 (rho g t b L^2/8)/(t b^2) = 0.75 rho g L^2/b, worst in the middle, on whichever side the hole is
    beam = piece_beam(cut(2.0, 0.6, 0.04, (0.02, 0.02), (at, 0.3)), RHO)
    assert edge_stress_pa(beam) == pytest.approx(0.75 * RHO * GRAVITY_M_S2 * 4.0 / 0.6, rel=2e-3)


def test_sloping_sides_are_as_wide_as_they_are_at_each_cut():
    # a trapezoid 2.0 m below, 1.0 m above, 0.5 m deep: 0.25 m wide at a quarter metre from its end, then 0.5 m
    beam = piece_beam(build_piece(polygon([(0, 0), (2, 0), (1.5, 0.5), (0.5, 0.5)]), 0.04), RHO)
    assert beam.length_m == pytest.approx(2.0) and beam.across_m == pytest.approx(0.5)
    width = np.interp([0.1, 0.25, 0.4, 1.0, 1.6, 1.75], beam.x_m, beam.width_m)
    assert width == pytest.approx([0.1, 0.25, 0.4, 0.5, 0.4, 0.25], abs=1e-4)
    assert np.trapezoid(beam.line_kg_m, beam.x_m) == pytest.approx(RHO * 0.04 * 0.75, rel=1e-3)


@pytest.mark.parametrize(
    ("size", "at"), [((1.0, 0.3), (0.5, 5.0)), ((0.3, 1.0), (5.0, 0.5)), ((0.3, 1.0), (0.15, 0.5))]
)
def test_the_length_is_the_longer_side_wherever_the_piece_lies_on_the_paper(size, at):
    beam = piece_beam(build_piece(place(rectangle(*size), at), 0.04), RHO)
    assert (beam.length_m, beam.across_m) == pytest.approx((1.0, 0.3))


@pytest.mark.parametrize("at", [(0.75, 0.25), (4.0, 3.0)])
def test_a_dropped_edge_weighs_the_same_wherever_the_piece_lies(at):
    # 1.5 x 0.5 x 0.04 m, its front 0.05 m wide and 0.10 m deep: 0.03 + 1.5 0.05 0.06 = 0.0345 m3
    piece = build_piece(place(rectangle(1.5, 0.5), at), 0.04, exposed=True, drop=DropEdge("front", 0.10, 0.05))
    beam = piece_beam(piece, RHO)
    assert np.trapezoid(beam.line_kg_m, beam.x_m) == pytest.approx(RHO * 0.0345, rel=1e-4)
    # evenly over the length
    assert np.interp([0.1, 0.75, 1.4], beam.x_m, beam.line_kg_m) == pytest.approx(RHO * 0.0345 / 1.5, rel=1e-6)


def test_a_piece_without_a_hole_or_corner_near_its_ends_is_cut_to_its_very_ends():
    beam = piece_beam(build_piece(rectangle(1.2, 0.4), 0.04), RHO)
    assert (beam.x_m[0], beam.x_m[-1]) == pytest.approx((0.0, 1.2))
    assert beam.width_m == pytest.approx(0.4, rel=1e-6) and beam.line_kg_m == pytest.approx(RHO * 0.016, rel=1e-6)
    assert flat_stress_pa(beam, 0.0) == pytest.approx(0.75 * RHO * GRAVITY_M_S2 * 1.44 / 0.04, rel=1e-4)
    round_top = piece_beam(build_piece(circle(0.9), 0.04), RHO)
    assert (
        round_top.x_m[-1] == pytest.approx(0.9, rel=1e-3) and len(round_top.x_m) < 120
    )  # no cut for each of its corners


# ---- the guide for stone, and what is longer than the piece


@pytest.mark.parametrize(
    ("key", "size_in", "thick_in", "beyond"),
    [
        # Dimension Stone Design Manual, as quoted: 3/4 in spans 24 in and hangs over 6 in, 1-1/4 in 36 and 10 in
        ("span", 24.0, 0.75, False), ("span", 24.2, 0.75, True), ("overhang", 6.0, 0.75, False),
        ("overhang", 6.05, 0.75, True), ("span", 36.0, 1.25, False), ("span", 36.3, 1.25, True),
        ("overhang", 10.0, 1.25, False), ("overhang", 10.1, 1.25, True), ("span", 30.0, 1.2, True),
        ("span", 20.0, 0.7, True),
    ],
)  # fmt: skip
def test_the_guide_for_stone_is_left_just_past_its_lengths(key, size_in, thick_in, beyond):
    assert seat_rule.beyond_stone_guide(key, size_in * IN, thick_in * IN) is beyond


@pytest.mark.parametrize(
    ("reach_in", "people", "together_in"),
    [(23.9, 1, 23.9), (24.0, 1, 24.0), (24.1, 2, 24.2), (47.9, 2, 71.8), (48.0, 2, 72.0), (48.5, 3, 73.5)],
)
def test_a_further_person_sits_down_where_there_is_room_for_one_more(reach_in, people, together_in):
    # one every 24 in from the tip inwards: at 48.5 in they sit 48.5, 24.5 and 0.5 in out; one in the hold itself adds nothing
    assert float(seat_rule._people(reach_in * IN, 24 * IN)) / IN == pytest.approx(together_in, rel=1e-9), people


def test_a_span_is_at_most_as_long_as_the_piece():
    piece = build_piece(rectangle(60 * IN, 15 * IN), 1.5 * IN, use="seat")
    for given in ((60 * IN, None), (None, 60 * IN)):
        assert len(supports.check_supports(piece, RHO, 24e6, *given)) == 1
    for given in ((60.3 * IN, None), (None, 60.3 * IN)):
        with pytest.raises(ValueError, match="at most the length of the piece"):
            supports.check_supports(piece, RHO, 24e6, *given)


@pytest.mark.parametrize(
    ("corners", "high"),
    [
        ([(0, 0), (0.4, 0), (0.4, 0.3)], 0.15),
        ([(0, 0), (0.4, 0), (0, 0.3)], 0.15),
        ([(0, 0), (0.4, 0), (0.4, 0.1), (0, 0.3)], 0.2),
    ],
)
def test_beside_a_sloping_opening_the_strips_are_those_of_its_middle(corners, high):
    # 0.4 m long, its lower side 0.1 m from the front of a piece of 0.6 m; half way along it is so high
    points = [(x + 0.8, y + 0.1) for x, y in corners]
    piece = build_piece(rectangle(2.0, 0.6), 0.04, cutouts=[Cutout(polygon(points), name="hole")])
    ((left, right, strips),) = piece_beam(piece, RHO).openings
    assert (left, right) == pytest.approx((0.8, 1.2))
    assert strips == (pytest.approx((0.0, 0.1)), pytest.approx((0.1 + high, 0.6)))


@pytest.mark.parametrize("shift", [(0.0, 0.0), (3.0, 5.0)])
def test_an_opening_is_where_it_is_wherever_the_piece_lies(shift):
    outline = place(rectangle(2.0, 0.6), (1.0 + shift[0], 0.3 + shift[1]))
    hole = Cutout(place(rectangle(0.5, 0.3), (0.6 + shift[0], 0.35 + shift[1])), name="hole")
    beam = piece_beam(build_piece(outline, 0.04, cutouts=[hole]), RHO)
    ((left, right, strips),) = beam.openings
    assert (left, right) == pytest.approx((0.35, 0.85))
    assert strips == (pytest.approx((0.0, 0.2)), pytest.approx((0.5, 0.6)))
    assert edge_stress_pa(beam) == pytest.approx(
        (0.2415 * 0.35 / 0.01425 + 9.5) * RHO * GRAVITY_M_S2, rel=1e-3
    )  # as above


@pytest.mark.parametrize(("size", "x"), [((0.2, 0.2), 1.7), ((0.6, 0.4), 0.6)])
def test_a_piece_turned_over_is_stressed_alike_on_edge(size, x):
    # a front that runs to a point, so that the strip beside the opening begins above the lowest corner
    stresses = []
    for flip in (lambda y: y, lambda y: 0.8 - y):
        outline = polygon([(at, flip(y)) for at, y in ((0, 0.2), (1, 0), (2, 0.2), (2, 0.8), (0, 0.8))])
        hole = Cutout(place(rectangle(*size), (x, flip(0.5))), name="hole")
        stresses.append(edge_stress_pa(piece_beam(build_piece(outline, 0.04, cutouts=[hole]), RHO)))
    assert stresses[0] == pytest.approx(stresses[1], rel=1e-6)


def test_a_strip_that_begins_above_the_lowest_corner_by_hand():
    # the same piece with the hole of 0.2 m at 0.3 m from an end, by the ends, per thickness and specific weight: width
    # 0.6 + 0.2 x up to the point, area 1.4 less 0.04; reaction 0.7 - 0.04 1.7/2 = 0.666; at the far side of the hole, 0.4 m,
    # M = 0.666 0.4 - 0.6 0.4^2/2 - 0.2 0.4^3/6 + 0.04 0.1 = 0.220267; at the near, V = 0.666 - 0.6 0.2 - 0.2 0.2^2/2 = 0.542.
    # Strips at its middle 0.14 to 0.4 and 0.6 to 0.8: centre (0.26 0.27 + 0.2 0.7)/0.46 = 0.456957, inertia (0.26^3 + 0.2^3)/12
    # + 0.26 0.186957^2 + 0.2 0.243043^2 = 0.023033, skin 0.8 - 0.456957; the deeper strip as a chord 6 0.542 0.1 0.26/0.025576
    outline = polygon([(0, 0.2), (1, 0), (2, 0.2), (2, 0.8), (0, 0.8)])
    hole = Cutout(place(rectangle(0.2, 0.2), (0.3, 0.5)), name="hole")
    by_hand = 0.220267 * 0.343043 / 0.023033 + 6 * 0.542 * 0.1 * 0.26 / 0.025576
    stress = edge_stress_pa(piece_beam(build_piece(outline, 0.04, cutouts=[hole]), RHO))
    assert stress == pytest.approx(by_hand * RHO * GRAVITY_M_S2, rel=1e-4)
