"""Several dropped edges: volumes and face by hand and against unions drawn another way, and what is refused."""

import math
from itertools import pairwise

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Point, box
from working_eval import check_working

from shop_calc.trade.shape.bands import MITRE_LIMIT, band, inner_corner
from shop_calc.trade.shape.drop_words import drop_words
from shop_calc.trade.shape.drops import DropEdge, drop_regions, edge_below_m2, thin_part
from shop_calc.trade.shape.layers import split_layers
from shop_calc.trade.shape.outline import l_shape, polygon, racetrack, rectangle, u_shape
from shop_calc.trade.shape.piece import build_piece
from shop_calc.trade.working import find

IN = 0.0254


def alike(names, depth, width):
    return [DropEdge(name, depth, width) for name in names]


def of(outline, exposed, drops, thickness=1.5, face=0.25):
    piece = build_piece(outline, thickness, exposed, drop=drops)
    return piece, split_layers(piece, face)


def test_a_counter_with_a_dropped_front_and_both_ends_by_hand():
    # inches: 96 x 25.5 x 1.5, back to the wall; front and ends 3 deep, returning 2. Below the top hang a front of 96 x 2
    # and two ends of (25.5 - 2) x 2, all 1.5 high. Face: 1/4 off front and ends, in the returns too.
    piece, layers = of(rectangle(96, 25.5), {"front", "left", "right"}, alike(("front", "left", "right"), 3, 2))
    hanging = 96 * 2 + 2 * 23.5 * 2
    assert piece.volume_m3 == pytest.approx(96 * 25.5 * 1.5 + hanging * 1.5)
    base_in_returns = 95.5 * 1.75 + 2 * 23.5 * 1.75
    assert layers.core_m3 == pytest.approx(95.5 * 25.25 * 1.25 + base_in_returns * 1.5)
    # and the face put together: the top, three skins above the thickness, three below it, corners counted once
    skins = 95.5 * 0.25 + 2 * 25.5 * 0.25
    assert layers.face_m3 == pytest.approx(96 * 25.5 * 0.25 + skins * 1.25 + skins * 1.5)
    assert layers.form_width_m == 2 and layers.drop_m == 1.5
    # outside of front and ends below the top: 96 and twice 25.5, 1.5 high
    assert edge_below_m2(piece) == pytest.approx((96 + 2 * 25.5) * 1.5)


def test_ends_that_hang_less_deep_leave_the_corners_to_the_front():
    # front 4 deep, 2 wide, whole length; ends 3 deep, 3 wide, behind the front only
    drops = [DropEdge("front", 4, 2), *alike(("left", "right"), 3, 3)]
    piece, layers = of(rectangle(96, 25.5), {"front", "left", "right"}, drops)
    assert piece.volume_m3 == pytest.approx(96 * 25.5 * 1.5 + 96 * 2 * 2.5 + 2 * 23.5 * 3 * 1.5)
    core = 95.5 * 25.25 * 1.25 + 95.5 * 1.75 * 2.5 + 2 * 23.5 * 2.75 * 1.5
    assert layers.core_m3 == pytest.approx(core)
    assert edge_below_m2(piece) == pytest.approx(96 * 2.5 + 2 * (2 * 2.5 + 23.5 * 1.5))
    assert layers.drop_m == 2.5
    assert check_working(layers.working) >= 5 and find(layers.working, "total_volume_m3").value == layers.total_m3


def test_an_l_with_a_dropped_front_and_a_dropped_inside_corner():
    # 60 x 60, notch 30 x 30: front 60 x 2; inside 30 x 2 twice and the square 2 x 2 between them
    shape = l_shape(60, 60, 30, 30)
    piece, layers = of(shape, True, alike(("front", "inner back", "inner right"), 3, 2))
    assert piece.volume_m3 == pytest.approx(2700 * 1.5 + (60 * 2 + 2 * 30 * 2 + 4) * 1.5)
    # base in the returns: the front less 1/4 at its face and both ends; inside less 1/4 along both edges and where each
    # meets the end it runs to: 1.75 x 29.75 twice, and of the square all that lies behind both faces, 4 - 1/16
    inside = 2 * 29.75 * 1.75 + 4 - 0.0625
    assert layers.core_m3 - find(layers.working, "core_area_m2").value * 1.25 == pytest.approx((59.5 * 1.75 + inside) * 1.5)


def test_two_unlike_returns_run_on_into_an_inside_corner_and_the_deeper_has_it():
    shape = l_shape(60, 60, 30, 30)
    piece, _ = of(shape, True, [DropEdge("inner back", 4, 2), DropEdge("inner right", 3, 5)])
    assert piece.volume_m3 == pytest.approx(2700 * 1.5 + (30 * 2 + 2 * 5) * 2.5 + 30 * 5 * 1.5)
    other, _ = of(shape, True, [DropEdge("inner back", 3, 2), DropEdge("inner right", 4, 5)])
    assert other.volume_m3 == pytest.approx(2700 * 1.5 + 30 * 2 * 1.5 + (30 * 5 + 2 * 5) * 2.5)


def test_a_facing_on_the_board_makes_every_return_wider_and_the_corner_between_two_with_them():
    # 0.5 of facing: 2.5 and 5.5 wide
    drops = [DropEdge("inner back", 4, 2), DropEdge("inner right", 3, 5)]
    deep, other = (region.area for _, region in drop_regions(l_shape(60, 60, 30, 30), drops, 0.5))
    assert (deep, other) == pytest.approx((30 * 2.5 + 2.5 * 5.5, 30 * 5.5))


def test_an_inner_corner_of_any_angle_is_filled_up_to_where_the_inner_lines_meet():
    # by hand, 45 degrees at the corner (0, 0): lines 1 and 2 behind edges along (1, 0) and (1, -1)/sqrt 2 meet where
    # y = 1 and (x + y)/sqrt 2 = w: at (w sqrt 2 - 1, 1)
    shape = polygon([(-3, 0), (0, 0), (2, -2), (9, 9), (-3, 9)])
    first, second = shape.edges[0], shape.edges[1]
    root = math.sqrt(2)
    mitre = inner_corner(first, second, 1.0, 1.0)
    assert mitre.area == pytest.approx(math.tan(math.pi / 8))  # alike: two triangles 1 by tan 22.5
    # the lines meet behind the end of the wider one: it ends square, the narrower one runs on to it, at (1, 1)
    assert inner_corner(first, second, 1.0, 2.0).area == pytest.approx(0.5)
    assert inner_corner(first, second, 2.0, 1.0).area == pytest.approx(0.5)
    wide = inner_corner(first, second, 1.0, 1.2)
    corners = shapely.Polygon([(0, 0), (0, 1), (1.2 * root - 1, 1), (1.2 / root, 1.2 / root)])
    assert wide.symmetric_difference(corners).area < 1e-12
    assert inner_corner(*rectangle(2, 1).edges[:2], 0.1, 0.1) is None


def test_the_point_between_two_unlike_returns_is_cut_off_too():
    notch = polygon([(0, 0), (2, 0), (2, 1), (1.02, 1), (1, 0.4), (0.98, 1), (0, 1)])
    corner = inner_corner(notch.edges[3], notch.edges[4], 0.02, 0.01)
    # square to the way of the point, so that its two ends lie a width aside at most
    farthest = max(math.dist((1, 0.4), point) for point in corner.exterior.coords)
    assert MITRE_LIMIT * 0.02 <= farthest <= math.hypot(MITRE_LIMIT * 0.02, 0.02)
    same = inner_corner(notch.edges[3], notch.edges[4], 0.01, 0.01)
    assert min(y for _, y in same.exterior.coords) == pytest.approx(0.4 - MITRE_LIMIT * 0.01)


# ---- any set of drops against boxes united another way

SHAPES = {
    "rectangle": (rectangle(10, 8), {
        "front": lambda w, _: box(0, 0, 10, w), "right": lambda w, _: box(10 - w, 0, 10, 8),
        "back": lambda w, _: box(0, 8 - w, 10, 8), "left": lambda w, _: box(0, 0, w, 8),
    }),
    "L": (l_shape(10, 8, 4, 3), {
        "front": lambda w, _: box(0, 0, 10, w), "right": lambda w, _: box(10 - w, 0, 10, 5),
        "inner back": lambda w, all_: box(6 - all_.get("inner right", 0), 5 - w, 10, 5),
        "inner right": lambda w, all_: box(6 - w, 5 - all_.get("inner back", 0), 6, 8),
        "back": lambda w, _: box(0, 8 - w, 6, 8), "left": lambda w, _: box(0, 0, w, 8),
    }),
    "U": (u_shape(12, 8, 4, 3, 4), {
        "front": lambda w, _: box(0, 0, 12, w), "right": lambda w, _: box(12 - w, 0, 12, 8),
        "back right": lambda w, _: box(8, 8 - w, 12, 8),
        "inner left": lambda w, all_: box(8, 5 - all_.get("inner back", 0), 8 + w, 8),
        "inner back": lambda w, all_: box(4 - all_.get("inner right", 0), 5 - w, 8 + all_.get("inner left", 0), 5),
        "inner right": lambda w, all_: box(4 - w, 5 - all_.get("inner back", 0), 4, 8),
        "back left": lambda w, _: box(0, 8 - w, 4, 8), "left": lambda w, _: box(0, 0, w, 8),
    }),
}  # fmt: skip


@st.composite
def dropped(draw):
    outline, strips = SHAPES[draw(st.sampled_from(sorted(SHAPES)))]
    names = draw(st.lists(st.sampled_from(sorted(strips)), min_size=1, max_size=5, unique=True))
    # under a third of the narrowest arm, so that two never meet from opposite sides
    depth, width = st.sampled_from((1.5, 2.0, 2.5)), st.floats(0.3, 1.3)
    return outline, strips, [DropEdge(name, draw(depth), draw(width)) for name in names]


@given(dropped())
def test_the_volume_of_several_drops_is_that_of_their_union_layer_by_layer(case):
    outline, strips, drops = case
    piece, layers = of(outline, True, drops, 1.0, 0.1)
    widths = {drop.edge: drop.width_m for drop in drops}
    inside = outline.polygon
    cut = {drop.edge: strips[drop.edge](drop.width_m, widths).intersection(inside) for drop in drops}
    levels = sorted({1.0, *(drop.depth_m for drop in drops)})
    expected, base, skin = inside.area, 0.0, 0.0
    core = layers.core_plan
    for high, low in pairwise(levels):
        union = shapely.union_all([cut[drop.edge] for drop in drops if drop.depth_m >= low])
        expected += union.area * (low - high)
        base += union.intersection(core).area * (low - high)
        skin += union.boundary.intersection(inside.exterior.buffer(1e-9)).length * (low - high)
    assert piece.volume_m3 == pytest.approx(expected, rel=1e-9)
    assert layers.core_m3 == pytest.approx(core.area * 0.9 + base, rel=1e-9)
    assert layers.face_m3 + layers.core_m3 == pytest.approx(piece.volume_m3, rel=1e-12)
    assert edge_below_m2(piece) == pytest.approx(skin, rel=1e-6)
    shared = sum(region.area for _, region in piece.drop_regions)
    assert shared == pytest.approx(shapely.union_all([region for _, region in piece.drop_regions]).area, rel=1e-9)
    assert {drop.edge for group, _ in piece.drop_regions for drop in group} == set(widths)


@given(dropped(), st.floats(0.01, 11.9), st.floats(0.01, 7.9))
def test_every_spot_is_as_deep_as_the_deepest_return_over_it(case, x, y):
    outline, strips, drops = case
    if outline.polygon.boundary.distance(Point(x, y)) < 1e-6 or not outline.polygon.contains(Point(x, y)):
        return
    widths = {drop.edge: drop.width_m for drop in drops}
    over = [drop.depth_m for drop in drops if strips[drop.edge](drop.width_m, widths).contains(Point(x, y))]
    edge = min((strips[drop.edge](drop.width_m, widths).boundary.distance(Point(x, y)) for drop in drops), default=1.0)
    if edge < 1e-6:
        return
    piece = build_piece(outline, 1.0, True, drop=drops)
    found = [group[0].depth_m for group, region in piece.drop_regions if region.contains(Point(x, y))]
    assert found == ([max(over)] if over else [])


def test_the_order_in_which_drops_are_given_does_not_matter():
    drops = [DropEdge("front", 4, 2), DropEdge("left", 3, 3), DropEdge("right", 4, 1)]
    pieces = [build_piece(rectangle(60, 20), 1.5, True, drop=order) for order in (drops, drops[::-1])]
    assert pieces[0].drop == pieces[1].drop and pieces[0].volume_m3 == pieces[1].volume_m3


def test_a_drop_beside_a_cut_off_corner_overlaps_its_neighbours_without_being_refused():
    # a clipped corner: three drops, of which the outer two overlap across the short one between them
    shape = polygon([(0, 0), (9, 0), (10, 1), (10, 8), (0, 8)])
    piece = build_piece(shape, 1.0, True, drop=alike(("edge 1", "edge 2", "edge 3"), 2, 2))
    around = shapely.union_all([band(shape.edges, {"edge 1", "edge 2", "edge 3"}, 2)]).intersection(shape.polygon)
    assert piece.volume_m3 == pytest.approx(shape.area_m2 + around.area)


def test_returns_that_share_a_line_to_the_last_digit_are_told_apart():
    # without snapping the shapes are joined wrongly here: the union loses one of them, and the thin part gains it
    corners = [(0.3741932829175663, 0.1173766233923234), (0.8660122090900987, 0.19718383188258118),
               (0.3549339043622167, 0.49357693953453613), (-0.44822498242381187, 0.011024755266561923),
               (0.25225508832523064, -0.39237064328788446)]  # fmt: skip
    drops = [DropEdge("edge 3", 0.0508, 0.1729130706769902), DropEdge("edge 1", 0.0762, 0.1339002522898054),
             DropEdge("edge 4", 0.0508, 0.12901142806559276)]  # fmt: skip
    piece = build_piece(polygon(corners), 0.0381, True, drop=drops)
    parts = [region.area for _, region in piece.drop_regions]
    thin = thin_part(piece.outline, piece.drop_regions)
    assert thin.area + sum(parts) == pytest.approx(piece.outline.area_m2, rel=1e-9)
    assert len(parts) == 3 and min(parts) > 0.05


def test_words_of_the_drops():
    given_drops = [*alike(("left", "right"), 3 * IN, 2 * IN), DropEdge("front", 4 * IN, 2 * IN)]
    drops = build_piece(rectangle(96 * IN, 25.5 * IN), 1.5 * IN, True, drop=given_drops).drop
    assert drop_words(drops, "us") == ('front to 4", returning 2"', 'right and left to 3", returning 2"')
    assert drop_words(()) == ()


REFUSED = [
    (rectangle(96 * IN, 20 * IN), alike(("front", "back"), 3 * IN, 10 * IN),
     r"returns of the dropped edges 'front' and 'back': 10\" \(254 mm\) and 10\".* given, with 1'-8\" \(508 mm\) between"),
    (rectangle(20 * IN, 25 * IN), alike(("left", "right"), 3 * IN, 12 * IN), "leave room for a filler board"),
    (u_shape(60 * IN, 40 * IN, 20 * IN, 20 * IN, 20 * IN), alike(("left", "inner right"), 3 * IN, 11 * IN), "leave room"),
    (polygon([(0, 0), (1, 0), (0.5, 0.8)]), alike(("edge 1", "edge 2", "edge 3"), 0.1, 0.5), "they fill the whole piece"),
    (rectangle(96 * IN, 20 * IN), [*alike(("front",), 3 * IN, IN), *alike(("left", "front"), 3 * IN, IN)],
     "dropped edge 'front': given twice"),
    (rectangle(96 * IN, 20 * IN), [*alike(("front",), 3 * IN, IN), *alike(("frnt",), 3 * IN, IN)],
     "dropped edge: 'frnt' given; the edges are front, right, back, left"),
    (rectangle(96 * IN, 20 * IN), [*alike(("front",), 3 * IN, IN), *alike(("left",), 1.5 * IN, IN)],
     r"depth of dropped edge 'left': 1 1/2\" \(38.1 mm\) given; it must be more than the thickness"),
    (rectangle(96 * IN, 20 * IN), [*alike(("front",), 3 * IN, IN), *alike(("left",), 3 * IN, 21 * IN)],
     "return width of dropped edge 'left'"),
    (racetrack(96 * IN, 32 * IN), alike(("front", "left end"), 3 * IN, IN), "dropped edge 'left end': it is round"),
]  # fmt: skip


@pytest.mark.parametrize(("outline", "drops", "message"), REFUSED)
def test_drops_that_cannot_be_are_refused_in_words(outline, drops, message):
    with pytest.raises(ValueError, match=message):
        build_piece(outline, 1.5 * IN, True, drop=drops)


def test_a_hair_of_room_between_two_returns_is_room():
    assert build_piece(rectangle(96 * IN, 20 * IN), 1.5 * IN, True, drop=alike(("front", "back"), 3 * IN, 9.99 * IN))
