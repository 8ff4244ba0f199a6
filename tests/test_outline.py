"""Outlines: sizes, edge names, curves, narrowest strips, and what they refuse."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.affinity import rotate, scale
from shapely.geometry import Polygon

from shop_calc.trade.shape.outline import (
    SHAPES,
    build_outline,
    circle,
    l_shape,
    place,
    polygon,
    racetrack,
    rectangle,
    u_shape,
)

EACH = {
    "rectangle": rectangle(1.524, 0.381),
    "rounded": rectangle(1.524, 0.381, 0.05),
    "L": l_shape(2.0, 1.5, 0.8, 0.6),
    "U": u_shape(2.0, 1.5, 0.8, 0.6, 0.5),
    "circle": circle(1.2),
    "racetrack": racetrack(2.4, 0.8),
    "polygon": polygon([(0, 0), (2, 0), (2.2, 1), (0, 1)]),
}


@pytest.mark.parametrize("shape", EACH.values(), ids=EACH)
def test_edges_close_the_outline_anticlockwise(shape):
    assert shape.polygon.is_valid and shape.polygon.exterior.is_ccw
    for first, second in zip(shape.edges, (*shape.edges[1:], shape.edges[0]), strict=True):
        assert first.coords[-1] == second.coords[0]
    assert len(set(shape.edge_names)) == len(shape.edges)
    assert shape.perimeter_m == pytest.approx(shape.polygon.length, rel=3e-4)


@pytest.mark.parametrize("shape", EACH.values(), ids=EACH)
def test_the_front_lies_on_the_line_from_which_depth_is_measured(shape):
    assert shape.polygon.bounds[0] == pytest.approx(0, abs=1e-4)
    assert shape.polygon.bounds[1] == pytest.approx(0, abs=1e-4)


def test_rectangle_edges_lie_where_their_names_say():
    edges = {edge.name: edge.coords for edge in EACH["rectangle"].edges}
    assert edges == {
        "front": ((0, 0), (1.524, 0)),
        "right": ((1.524, 0), (1.524, 0.381)),
        "back": ((1.524, 0.381), (0, 0.381)),
        "left": ((0, 0.381), (0, 0)),
    }


def test_inner_edges_are_named_after_the_side_they_look_to():
    for name in ("L", "U"):
        for edge in EACH[name].edges:
            (ax, ay), (bx, by) = edge.coords
            outward = (np.sign(by - ay), np.sign(ax - bx))  # to the right hand of someone walking round
            side = {(0, -1): "front", (1, 0): "right", (0, 1): "back", (-1, 0): "left"}[outward]
            words = edge.name.split()
            assert words[1 if words[0] == "inner" else 0] == side


def test_the_l_lacks_its_back_right_corner_and_the_u_opens_at_the_back():
    assert not EACH["L"].polygon.contains(Polygon([(1.9, 1.4), (1.95, 1.4), (1.95, 1.45)]))
    assert EACH["L"].polygon.area == pytest.approx(2.0 * 1.5 - 0.8 * 0.6)
    notch = Polygon([(0.5, 0.9), (1.3, 0.9), (1.3, 1.5), (0.5, 1.5)])
    assert EACH["U"].polygon.intersection(notch).area == pytest.approx(0)
    assert EACH["U"].polygon.area == pytest.approx(2.0 * 1.5 - notch.area)


@pytest.mark.parametrize(
    ("shape", "area", "perimeter"),
    [
        (circle(1.2), math.pi * 0.36, math.pi * 1.2),
        (circle(0.034925), math.pi * 0.034925**2 / 4, math.pi * 0.034925),
        (racetrack(2.4, 0.8), 1.6 * 0.8 + math.pi * 0.16, 3.2 + math.pi * 0.8),
        (racetrack(0.81, 0.8), 0.01 * 0.8 + math.pi * 0.16, 0.02 + math.pi * 0.8),
        (rectangle(1.0, 0.5, 0.1), 0.5 - (4 - math.pi) * 0.01, 3.0 - 0.8 + math.pi * 0.2),
    ],
)
def test_curves_have_the_area_and_length_of_the_true_curve(shape, area, perimeter):
    assert shape.area_m2 == pytest.approx(area, rel=1e-12)
    assert shape.perimeter_m == pytest.approx(perimeter, rel=1e-12)
    assert shape.polygon.hausdorff_distance(shape.polygon.convex_hull) == 0


def test_round_points_stay_within_two_ten_thousandths_of_the_true_radius():
    points = np.asarray(circle(2.0).polygon.exterior.coords) - 1.0
    assert np.abs(np.hypot(*points.T) - 1).max() < 2e-4


@pytest.mark.parametrize(
    ("shape", "narrow"),
    [
        (rectangle(1.524, 0.381), 0.381),
        (l_shape(2.0, 1.5, 0.8, 0.6), 0.9),
        (l_shape(2.0, 1.5, 1.8, 0.6), 0.2),
        (u_shape(2.0, 1.5, 0.8, 0.6, 0.5), 0.5),
        (u_shape(2.0, 1.5, 0.8, 0.6, 0.9), 0.3),
        (u_shape(2.0, 1.5, 0.8, 1.4, 0.5), 0.1),
        (circle(1.2), 1.2),
        (racetrack(2.4, 0.8), 0.8),
    ],
)
def test_narrowest_strip_of_the_named_shapes(shape, narrow):
    assert shape.narrowest_m == pytest.approx(narrow)


@pytest.mark.parametrize("name", ["rectangle", "L", "U"])
def test_drawn_point_by_point_a_shape_has_the_same_area_strip_and_tongue(name):
    shape = EACH[name]
    drawn = polygon([edge.coords[0] for edge in shape.edges])
    assert drawn.area_m2 == pytest.approx(shape.area_m2)
    assert drawn.narrowest_m == pytest.approx(shape.narrowest_m, rel=1e-6)
    assert drawn.tongue_m == pytest.approx(shape.tongue_m, rel=1e-6)


@pytest.mark.parametrize(
    ("points", "narrow"),
    [
        ([(0, 0), (8, 0), (8, 1), (0, 2)], 1.0),  # tapering: at the narrow end
        ([(0, 0), (3, 0), (0, 4)], 2.0),  # a triangle: the circle that fits
        ([(0, 0), (4, 0), (2.4, 2), (4, 4), (0, 4), (1.6, 2)], 0.8),  # a waist between two inner corners
        ([(0, 0), (4, 0), (4, 2), (3.7, 2.3), (0, 2.3)], 2.3),  # a cut-off corner is no strip
        ([(0, 0), (4, 0), (4, 1.7), (3.9, 1.7), (3.9, 1.9), (0, 1.9)], 1.7),  # a small notch
        ([(7, 6), (3, 6), (3, 10), (0, 10), (0, 6), (1, 6), (1, 2), (7, 2)], 2.0),  # two boxes joined by a neck
        ([(0, 0), (6, 0), (6, 3.3), (5, 3), (5, 6), (0, 6)], 3.0),  # a sloping edge beside an inner corner
        ([(0, 0), (6, 0), (6, 6), (4, 6), (4, 2), (3.5, 2), (3.5, 6), (0, 6)], 2.0),  # a notch is air
        ([(0, 0), (6, 0), (6, 4), (3, 1), (0, 4)], 1.0),  # an inner corner against a straight edge
        ([(math.cos(a) * 3, math.sin(a)) for a in np.linspace(0, 2 * math.pi, 61)[:-1]], 2.0),  # an ellipse
    ],
)
def test_narrowest_strip_of_drawn_outlines(points, narrow):
    flipped, quarter = [(-x, y) for x, y in points], [(-y, x) for x, y in points]
    for turned in (points, points[::-1], points[2:] + points[:2], flipped, quarter):
        assert polygon(turned).narrowest_m == pytest.approx(narrow, rel=3e-3)


@given(st.floats(0.2, 5), st.floats(0.2, 5), st.floats(0.1, 0.9), st.floats(0.1, 0.9), st.floats(-170, 170))
def test_the_strip_of_an_l_does_not_depend_on_how_it_is_turned(length, width, a, b, angle):
    shape = l_shape(length, width, a * length, b * width)
    turned = polygon(list(rotate(shape.polygon, angle).exterior.coords))
    assert turned.narrowest_m == pytest.approx(shape.narrowest_m, rel=2e-3)


def test_points_may_go_round_either_way_and_keep_their_edge_names():
    points = [(0, 0), (2, 0), (2, 1), (0.5, 1)]
    one, other = polygon(points), polygon(points[::-1])
    assert one.edge("edge 2").coords == ((2, 0), (2, 1))
    assert set(other.edge("edge 2").coords) == {(2, 1), (2, 0)}
    assert other.polygon.exterior.is_ccw
    assert polygon([*points, points[0]]).area_m2 == one.area_m2


def test_shape_words_build_the_same_outlines():
    assert build_outline("L", length_m=2.0, width_m=1.5, notch_length_m=0.8, notch_width_m=0.6) == EACH["L"]
    assert build_outline(" Rectangle ", length_m=1.524, width_m=0.381) == EACH["rectangle"]
    assert build_outline("polygon", points_m=[(0, 0), (2, 0), (2.2, 1), (0, 1)]) == EACH["polygon"]
    assert set(SHAPES) == {"rectangle", "L", "U", "circle", "racetrack", "polygon"}


@pytest.mark.parametrize("shape", EACH.values(), ids=EACH)
def test_a_placed_outline_has_its_middle_there_and_is_otherwise_the_same(shape):
    moved = place(shape, (3.0, -2.0))
    left, front, right, back = moved.polygon.bounds
    assert ((left + right) / 2, (front + back) / 2) == pytest.approx((3.0, -2.0))
    assert moved.area_m2 == pytest.approx(shape.area_m2)
    assert moved.edge_names == shape.edge_names
    assert moved.edges[0].coords[0] == tuple(moved.polygon.exterior.coords[0])


@pytest.mark.parametrize("factor", [0.01, 3.0])
def test_twice_the_size_is_four_times_the_area(factor):
    small, large = u_shape(2.0, 1.5, 0.8, 0.6, 0.5), u_shape(*(s * factor for s in (2.0, 1.5, 0.8, 0.6, 0.5)))
    assert large.area_m2 == pytest.approx(small.area_m2 * factor**2)
    assert large.narrowest_m == pytest.approx(small.narrowest_m * factor)
    assert scale(small.polygon, factor, factor, origin=(0, 0)).equals_exact(large.polygon, 1e-9)


REFUSED = [
    (lambda: rectangle(0, 1), "length: 0 m given; it must be more than 0 m"),
    (lambda: rectangle(1, -0.1), "width: -0.1 m given"),
    (lambda: rectangle(math.nan, 1), "length: nan m given"),
    (lambda: rectangle("5 ft", 1), "length: '5 ft' given; it must be a number"),
    (
        lambda: rectangle(1, 0.5, 0.25),
        r"corner radius: .*\(250 mm\) given; .* half of the shorter side, .*\(250 mm",
    ),
    (lambda: l_shape(1, 1, 1, 0.5), r"notch length: .* given; it must be less than the length"),
    (
        lambda: l_shape(1, 1, 0.5, 2),
        r"notch width: .*\(2000 mm\) given; it must be less than the width, .*\(1000",
    ),
    (lambda: u_shape(1, 1, 0.6, 0.5, 0.4), "distance to the notch and notch length together: .* the length"),
    (lambda: u_shape(1, 1, 0.6, 0.5, 0), "distance to the notch: 0 m given"),
    (lambda: circle(0), "diameter: 0 m given"),
    (lambda: racetrack(0.8, 0.8), r"length: .* given; it must be more than the width, .*circle"),
    (lambda: polygon([(0, 0), (1, 1)]), "points: 2 given; an outline needs at least 3"),
    (
        lambda: polygon([(0, 0), (2, 2), (2, 0), (0, 2)]),
        r"crosses or touches itself near x .*1000 mm\) y .*1000 mm\)",
    ),
    (lambda: polygon([(0, 0), (1, 0), (2, 0)]), "crosses or touches itself"),
    (lambda: polygon([(0, 0), (1, 0), (1, 0), (0, 1)]), "points: 2 and 3 are the same place"),
    (lambda: polygon([(0, 0), (1, 0), (math.inf, 1)]), "each must be a pair of sizes"),
    (lambda: polygon("nonsense"), "each must be a pair of sizes"),
    (lambda: build_outline("oval", length_m=1), "outline: 'oval' given; it must be one of rectangle, L, U"),
    (lambda: build_outline("L", length_m=1, width_m=1, notch_length_m=0.2), "notch width: missing"),
    (
        lambda: build_outline("circle", length_m=1),
        "length: not a size of this outline; outline circle takes diameter",
    ),
    (lambda: place(circle(0.1), 3.0), "place: 3.0 given; it must be two sizes"),
    (lambda: circle(0.1).edge("front"), "edge: 'front' given; this circle has rim"),
]


@pytest.mark.parametrize(("build", "message"), REFUSED)
def test_impossible_outlines_are_refused_in_words(build, message):
    with pytest.raises(ValueError, match=message):
        build()
