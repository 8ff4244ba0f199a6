"""Where a piece, its form and what is said of them change: each limit from both sides, sizes by hand."""

import math

import pytest

from shop_calc.trade.shape.form import build_form
from shop_calc.trade.shape.form_sides import form_sides
from shop_calc.trade.shape.layers import split_layers
from shop_calc.trade.shape.outline import place, polygon, rectangle
from shop_calc.trade.shape.piece import Cutout, DropEdge, build_piece
from shop_calc.trade.shape.piece_advice import piece_advice

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
