"""Where a piece, its form and what is said of them change: each limit from both sides, sizes by hand."""

import math

import pytest

from shop_calc.trade.shape import form
from shop_calc.trade.shape.bands import band
from shop_calc.trade.shape.form import build_form
from shop_calc.trade.shape.form_sides import form_sides
from shop_calc.trade.shape.layers import split_layers
from shop_calc.trade.shape.outline import circle, place, polygon, rectangle
from shop_calc.trade.shape.piece import Cutout, DropEdge, build_piece
from shop_calc.trade.shape.piece_advice import piece_advice, section_left
from shop_calc.trade.shape.strips import strips_beside_cutouts

IN = 0.0254
BOARD, STRIP = 0.75 * IN, 0.125 * IN


def advice(piece, face_in=0.25, stone_in=None):
    return piece_advice(piece, split_layers(piece, face_in * IN), stone_in and stone_in * IN)


def said(found, words):
    return any(words in each.text + each.reason for each in found)


def test_a_dropped_edge_adds_its_own_depth_to_the_volume():
    # 60 x 20 x 1.5 in; along the front 2 in wide it is 4 in deep: 1800 + 60 * 2 * 2.5 = 2100 in3
    one = build_piece(rectangle(60 * IN, 20 * IN), 1.5 * IN, {"front", "right"}, drop=DropEdge("front", 4 * IN, 2 * IN))
    assert one.volume_m3 / IN**3 == pytest.approx(2100.0)
    # and along the right 3 in wide 2.5 in deep: of its 20 in the front 2 are taken, 18 * 3 * 1 = 54 in3 more
    drops = (DropEdge("front", 4 * IN, 2 * IN), DropEdge("right", 2.5 * IN, 3 * IN))
    two = build_piece(rectangle(60 * IN, 20 * IN), 1.5 * IN, {"front", "right"}, drop=drops)
    assert two.volume_m3 / IN**3 == pytest.approx(2154.0)
    assert build_form(two, density_kg_m3=2000.0).mass_kg == pytest.approx(2000.0 * 2154.0 * IN**3)


def beside_sink(rail_in, thickness_in):
    """A top with a sink in the middle and two rails of this width."""
    sink = Cutout(place(rectangle(30 * IN, 18 * IN), (42 * IN, (9 + rail_in) * IN)), name="sink")
    return build_piece(rectangle(84 * IN, (18 + 2 * rail_in) * IN), thickness_in * IN, cutouts=[sink])


def test_a_strip_is_narrow_below_four_inches_or_three_thicknesses():
    for rail, thickness, narrow in ((4.04, 1.0, False), (3.98, 1.0, True), (6.03, 2.0, False), (5.97, 2.0, True)):
        assert said(advice(beside_sink(rail, thickness)), "strips beside sink are narrow") is narrow, (rail, thickness)


def turned(degrees):
    """A long board whose back has one inner corner that turns by so much."""
    rise = 0.5 * math.tan(math.radians(degrees / 2))
    return build_piece(polygon([(0, 0), (2, 0), (2, 1), (1.5, 1), (1.0, 1 - rise), (0.5, 1), (0, 1)]), 0.04)


def test_inside_corners_are_sharp_from_thirty_degrees_and_outer_ones_below_sixty():
    for degrees, sharp in ((29.8, False), (30.2, True)):
        assert said(advice(turned(degrees)), "Sharp inside corners") is sharp, degrees
    for degrees, sharp in ((60.3, False), (59.7, True)):
        tip = polygon([(0, 0), (2, 0), (2, 1.0), (1 / math.tan(math.radians(degrees)), 1.0)])
        assert said(advice(build_piece(tip, 0.04)), "chips when the sides come off") is sharp, degrees


def test_stone_of_just_the_limit_may_be_used_and_the_limit_is_rounded_down():
    # base 3 in: a third is 1 in; 10 in wide: a fifth is 2 in
    top = build_piece(rectangle(60 * IN, 10 * IN), 3.25 * IN)
    for stone, third in ((1.0 + 1e-12, False), (1.005, True)):
        assert said(advice(top, stone_in=stone), "a third of the depth") is third, stone
    for stone, fifth in ((2.0 + 1e-12, False), (2.01, True)):
        assert said(advice(top, stone_in=stone), "a fifth of the narrowest width") is fifth, stone
    # base 1.3 in deep: a third is 0.4333 in = 11.006 mm: 6/16 in and 11.0 mm
    low = build_piece(rectangle(60 * IN, 10 * IN), 1.55 * IN)
    assert said(advice(low, stone_in=0.5), 'at most 3/8" (11 mm)')
    # 1.125 in: 0.375 in is 6/16 in to the last digit; 9.525 mm are 9.5
    even = build_piece(rectangle(60 * IN, 10 * IN), 1.375 * IN)
    assert said(advice(even, stone_in=0.5), 'at most 3/8" (9.5 mm)')


def corner(degrees, edge_in=0.5):
    """The side at an edge of a back that bends once, by so many degrees inside, and goes on straight behind the edge."""
    turn = math.radians(180.0 - degrees)
    x, y = 30.0 - edge_in * math.cos(turn), 20.0 - edge_in * math.sin(turn)
    points = [(0, 0), (60, 0), (60, 20), (30, 20), (x, y), (0, 20 - 30 * math.tan(turn))]
    return form_sides(polygon([(across * IN, deep * IN) for across, deep in points]), BOARD, STRIP)[3]


def test_a_short_edge_is_a_block_only_in_a_notch():
    for degrees, block in ((150.0, False), (179.7, False), (180.3, False), (182.0, True), (200.0, True)):
        assert ("block" in corner(degrees).note) is block, degrees


def test_boards_that_go_straight_on_are_not_mitred_and_one_degree_is():
    for degrees, mitred in ((180.0, False), (179.7, False), (179.0, True), (181.0, True), (180.3, False)):
        note = corner(degrees, edge_in=5.0).note
        assert ("at edge 3" in note) is mitred, (degrees, note)


def v_notch(half_deg):
    """A board with a V cut into its back; both of its walls are exposed and meet at (1.0, 0.5)."""
    opening = 0.5 * math.tan(math.radians(90.0 - half_deg))
    return polygon([(0, 0), (2, 0), (2, 1), (1 + opening, 1), (1, 0.5), (1 - opening, 1), (0, 1)])


@pytest.mark.parametrize(("half_deg", "widths"), [(60.0, 2.0), (78.4, 1 / math.cos(math.radians(78.4))), (80.0, 5.0)])
def test_the_mitre_of_an_inner_corner_ends_at_five_band_widths(half_deg, widths):
    # two strips of width w that meet at an angle have their mitre w / cos(half) from the corner
    strips = band(v_notch(half_deg).edges, {"edge 4", "edge 5"}, 0.01)
    assert strips.bounds[1] == pytest.approx(0.5 - 0.01 * widths, rel=1e-9)


@pytest.mark.parametrize("turn_deg", [5.9, 6.1, 45.0, 88.5])
def test_a_band_runs_on_to_a_wall_that_turns_off_by_six_degrees_and_ends_square_before_one_that_goes_on(turn_deg):
    # what is added is a triangle: w high and w / tan(turn) long; 0.01 m along a metre
    turn = math.radians(turn_deg)
    wall = (1 + 0.5 * math.cos(turn), 0.5 * math.sin(turn))
    edges = polygon([(0, 0), (1, 0), wall, (wall[0], 1), (0, 1)]).edges
    added = 0.01**2 / math.tan(turn) / 2 if turn_deg > 6 else 0.0
    assert band(edges, {"edge 1"}, 0.01).area == pytest.approx(0.01 + added, rel=1e-9)
    assert band(edges, {"edge 2"}, 0.01).area == pytest.approx(0.005 + added + _square_end(edges), rel=1e-9)


def _square_end(edges):
    """The other end of the second edge: its wall stands upright behind a corner of its own."""
    (ax, ay), (bx, by) = edges[1].coords
    turn = math.pi / 2 - math.atan2(by - ay, bx - ax)
    return 0.01**2 / math.tan(turn) / 2 if math.radians(6) <= turn < math.pi / 2 else 0.0


def test_strips_beside_a_cut_out_are_as_long_as_it_is_along_them():
    sink = Cutout(place(rectangle(0.7, 0.4), (1.1, 0.5)), name="sink")

    def along(outline):
        return {strip.beside: strip.length_m for strip in strips_beside_cutouts(build_piece(outline, 0.04, cutouts=[sink]))}

    assert along(rectangle(2, 1)) == pytest.approx({"front edge": 0.7, "back edge": 0.7, "right edge": 0.4, "left edge": 0.4})
    # beside a wall that leans 3-4-5, the shadow of the sink along it: 0.7 * 0.6 + 0.4 * 0.8
    leaning = polygon([(0, 0), (2, 0), (2.75, 1), (0, 1)])
    assert along(leaning)["edge 2 edge"] == pytest.approx(0.7 * 0.6 + 0.4 * 0.8)
    round_top = build_piece(circle(2.0), 0.04, cutouts=[Cutout(place(rectangle(0.7, 0.4), (0.6, 0.9)), name="sink")])
    assert strips_beside_cutouts(round_top)[0].length_m == pytest.approx(0.7)


def test_two_edges_bound_a_strip_when_they_are_within_thirty_degrees_of_parallel():
    for degrees, strip in ((20.0, True), (29.8, True), (30.3, False), (40.0, False)):
        wedge = polygon([(0, 0), (1, 0), (1, 0.1 + math.tan(math.radians(degrees))), (0, 0.1)])
        narrowest = wedge.narrowest_m  # the strip is as wide as its narrow end; else the largest circle counts
        assert (narrowest == pytest.approx(0.1)) is strip and narrowest >= 0.1 - 1e-9, degrees


def test_the_cut_through_a_cut_out_is_taken_at_its_middle():
    # a board 0.6 to 1.0 deep over 2 m: at x = 0.5 it is 0.7, and a hole of 0.2 leaves 0.5; the same standing on end
    low = [(0, 0), (2, 0), (2, 1), (0, 0.6)]
    for points, at in ((low, (0.5, 0.35)), ([(y, x) for x, y in low], (0.35, 0.5))):
        hole = Cutout(place(rectangle(0.2, 0.2), at), name="hole")
        piece = build_piece(polygon(points), 0.04, cutouts=[hole])
        assert section_left(piece, piece.cutouts[0]) == pytest.approx((0.5, 0.7))
        assert hole.outline.box_m == pytest.approx((0.2, 0.2)) and piece.outline.box_m == pytest.approx(max(points))
    assert place(polygon(low), (5.0, 7.0)).box_m == pytest.approx((2.0, 1.0))


def test_a_thin_and_a_thick_face_are_told_their_own_reason():
    top = build_piece(rectangle(60 * IN, 15 * IN), 1.5 * IN)
    assert said(advice(top, face_in=0.1), "hard to keep whole") and said(advice(top, face_in=0.6), "costs more")


def test_every_dropped_edge_has_one_filler_board():
    dropped = build_piece(rectangle(60 * IN, 20 * IN), 1.5 * IN, {"front"}, drop=DropEdge("front", 4 * IN, 2 * IN))
    assert [row.count for row in build_form(dropped).rows if row.name == "filler board"] == [1]


def test_the_small_sizes_of_a_form_are_those_of_the_trade():
    # common practice, no source: 1/8 in sheet bends, a screw every 8 in, a knock-out 1/16 in wider at its top, two a corner
    inch = 0.0254
    assert pytest.approx((inch / 8, 8 * inch, inch / 16)) == (form.STRIP_M, form.SCREW_SPACING_M, form.TAPER_M)
    assert form.CORNER_SCREWS == 2


@pytest.mark.parametrize(
    ("length_in", "width_in", "count"),
    [
        # by hand: front and back are as long as the piece, right and left 2 x 3/4 in longer than it is wide; a screw at both
        # ends and none further apart than 8 in; two at each of four corners
        (60.0, 15.0, 2 * (9 + 4) + 8),
        (64.0, 15.0, 2 * (9 + 4) + 8),
        (64.5, 15.0, 2 * (10 + 4) + 8),
        (64.0, 22.5, 2 * (9 + 4) + 8),
        (64.0, 22.6, 2 * (9 + 5) + 8),
        (8.0, 4.0, 2 * (2 + 2) + 8),
    ],
)
def test_screws_of_a_form_by_hand(length_in, width_in, count):
    piece = build_piece(rectangle(length_in * 0.0254, width_in * 0.0254), 0.0381, True)
    assert build_form(piece).screw_count == count
