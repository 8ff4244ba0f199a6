"""Face and base: the drawn piece against short formulas, other constructions, symmetry and limits."""

import itertools
import math

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from shapely.affinity import rotate, scale
from shapely.geometry import Polygon
from working_eval import check_working

from shop_calc.trade.shape.bands import MITRE_LIMIT, band, inside_out
from shop_calc.trade.shape.layers import rectangle_layers, split_layers
from shop_calc.trade.shape.outline import circle, l_shape, place, polygon, racetrack, rectangle, u_shape
from shop_calc.trade.shape.piece import Cutout, build_piece
from shop_calc.trade.shape.plain_volumes import (
    band_area_m2,
    face_volume_m3,
    round_hole_face_volume_m3,
    slab_volume_m3,
)

IN = 0.0254
T, FACE = 1.5 * IN, 0.25 * IN


def layers_of(outline, exposed, cutouts=(), thickness=T, face=FACE, drop=()):
    return split_layers(build_piece(outline, thickness, exposed, cutouts, drop), face)


def subsets(names):
    return [set(chosen) for k in range(len(names) + 1) for chosen in itertools.combinations(names, k)]


def corners(outline, exposed):
    """Outer and inner corners at which two exposed edges meet, counted from the drawing."""
    outer = inner = 0
    for first, second in zip(outline.edges, (*outline.edges[1:], outline.edges[0]), strict=True):
        if first.name in exposed and second.name in exposed:
            (ax, ay), (bx, by), (cx, cy) = first.coords[0], first.coords[1], second.coords[1]
            left = (bx - ax) * (cy - by) - (by - ay) * (cx - bx) > 0
            outer, inner = outer + left, inner + (not left)
    return outer, inner


def test_the_counter_of_the_example():
    layers = rectangle_layers(96 * IN, 25.5 * IN, T, FACE, back=0)
    assert layers.total_m3 / IN**3 == pytest.approx(3672)
    assert layers.core_m3 / IN**3 == pytest.approx(95.5 * 25.25 * 1.25)
    assert layers.face_m3 / IN**3 == pytest.approx(657.78, abs=0.01)
    assert layers.face_m3 / (12 * IN) ** 3 == pytest.approx(0.3807, abs=5e-5)


RIGHT_ANGLED = [rectangle(0.6, 0.4), l_shape(0.9, 0.8, 0.4, 0.3), u_shape(1.0, 0.8, 0.4, 0.3, 0.25)]
EXPOSURES = [(outline, chosen) for outline in RIGHT_ANGLED for chosen in subsets(outline.edge_names)]


def test_every_set_of_exposed_edges_of_rectangle_l_and_u_agrees_with_the_short_formula():
    assert len(EXPOSURES) == 16 + 64 + 256
    for outline, exposed in EXPOSURES:
        layers = layers_of(outline, exposed)
        length = sum(outline.edge(name).length_m for name in exposed)
        expected = face_volume_m3(outline.area_m2, T, FACE, length, *corners(outline, exposed))
        assert layers.face_m3 == pytest.approx(expected, rel=1e-11), exposed
        assert layers.face_m3 + layers.core_m3 == pytest.approx(layers.total_m3, rel=1e-12)


def test_every_set_of_exposed_cut_out_edges_agrees_with_the_short_formula():
    top, hole = rectangle(1.5, 0.6), place(rectangle(30 * IN, 16 * IN), (0.75, 0.3))
    plain = layers_of(top, ())
    for exposed in subsets(hole.edge_names):
        layers = layers_of(top, (), [Cutout(hole, exposed)])
        length = sum(hole.edge(name).length_m for name in exposed)
        meeting, _ = corners(hole, exposed)
        expected = band_area_m2(FACE, length, 0, meeting) * (T - FACE) - hole.area_m2 * FACE
        assert layers.face_m3 - plain.face_m3 == pytest.approx(expected, abs=1e-12)


def test_an_exposed_sink_adds_its_edges_and_four_inner_corners():
    top, hole = rectangle(96 * IN, 25.5 * IN), place(rectangle(30 * IN, 16 * IN), (48 * IN, 12.75 * IN))
    extra = layers_of(top, True, [Cutout(hole, True)]).face_m3 - layers_of(top, True, [Cutout(hole)]).face_m3
    assert extra / IN**3 == pytest.approx(29.0625)  # 92 in x 1/4 x 1-1/4 and four corners


def test_an_exposed_tap_hole_adds_a_ring():
    top, hole = rectangle(96 * IN, 25.5 * IN), place(circle(1.375 * IN), (48 * IN, 20 * IN))
    extra = layers_of(top, True, [Cutout(hole, True)]).face_m3 - layers_of(top, True, [Cutout(hole)]).face_m3
    assert extra / IN**3 == pytest.approx(1.595, abs=0.001)
    assert extra == pytest.approx(round_hole_face_volume_m3(1.375 * IN, T, FACE), rel=1e-4)


def test_the_band_of_an_l():
    shape = l_shape(10, 10, 4, 4)
    assert band(shape.edges, set(shape.edge_names), 1).intersection(shape.polygon).area == pytest.approx(36)


def test_round_tops_against_true_circles():
    disc = layers_of(circle(1.2), True)
    assert disc.core_area_m2 == pytest.approx(math.pi * (0.6 - FACE) ** 2, rel=1e-5)
    track = layers_of(racetrack(96 * IN, 32 * IN), True, thickness=2 * IN)
    assert track.total_m3 / (12 * IN) ** 3 == pytest.approx(3.30, abs=0.005)
    core = 64 * 31.5 + math.pi * 15.75**2
    assert track.core_area_m2 / IN**2 == pytest.approx(core, rel=1e-5)
    only_front = layers_of(racetrack(96 * IN, 32 * IN), {"front"}, thickness=2 * IN)
    assert (only_front.top_area_m2 - only_front.core_area_m2) / IN**2 == pytest.approx(16, rel=1e-9)


SHAPES = {
    "rounded": rectangle(1.0, 0.6, 0.08),
    "slightly rounded": rectangle(1.0, 0.6, 0.003),  # rounder than the face is thick
    "U": u_shape(1.0, 0.8, 0.4, 0.3, 0.25),
    "circle": circle(0.7),
    "racetrack": racetrack(1.0, 0.4),
    "arrow": polygon([(0, 0), (1.0, 0.2), (2.0, 0), (1.2, 1.0), (0.9, 0.8), (0.6, 1.1)]),
    "cut corner": polygon([(0, 0), (1, 0), (1, 0.6), (0.997, 0.603), (0, 0.603)]),
}


@pytest.mark.parametrize("outline", SHAPES.values(), ids=SHAPES)
def test_with_all_edges_exposed_the_base_is_the_mitred_inner_offset(outline):
    assert layers_of(outline, True).core_plan.area == pytest.approx(
        outline.polygon.buffer(-FACE, join_style="mitre", mitre_limit=MITRE_LIMIT).area, rel=1e-9
    )
    around = band(inside_out(outline.edges), set(outline.edge_names), FACE).difference(outline.polygon)
    grown = outline.polygon.buffer(FACE, join_style="mitre", mitre_limit=MITRE_LIMIT).area
    assert around.area == pytest.approx(grown - outline.area_m2, rel=1e-6)


def half_plane_core(outline, exposed, face):
    """The base of a convex piece, built another way: a face thickness inside every exposed line."""
    core = outline.polygon
    for edge in outline.edges:
        if edge.name in exposed:
            (ax, ay), (bx, by) = edge.coords
            ux, uy = (bx - ax) / edge.length_m, (by - ay) / edge.length_m
            ax, ay = ax - uy * face - 50 * ux, ay + ux * face - 50 * uy
            bx, by = ax + 100 * ux, ay + 100 * uy
            core = core.intersection(
                Polygon([(ax, ay), (bx, by), (bx - 100 * uy, by + 100 * ux), (ax - 100 * uy, ay + 100 * ux)])
            )
    return core


CONVEX = {
    "tapering": polygon([(0, 0), (1.5, 0), (1.9, 0.5), (-0.2, 0.5)]),
    "kite": polygon([(0, 0), (1.0, -0.3), (1.3, 0.2), (0.4, 0.9)]),
    "hexagon": polygon([(math.cos(k * math.pi / 3), math.sin(k * math.pi / 3)) for k in range(6)]),
    "blunt": polygon([(0, 0), (1, -0.12), (2, 0), (2, 1), (0, 1)]),  # 167 degrees at the front
}


@pytest.mark.parametrize("outline", CONVEX.values(), ids=CONVEX)
def test_beside_a_wall_at_any_outer_angle_the_band_runs_to_the_wall(outline):
    for exposed in subsets(outline.edge_names):
        layers = layers_of(outline, exposed)
        assert layers.core_plan.symmetric_difference(half_plane_core(outline, exposed, FACE)).area < 1e-9


def test_at_an_inner_corner_with_a_wall_and_straight_on_the_band_ends_square():
    shape = l_shape(1.0, 1.0, 0.4, 0.4)
    assert layers_of(shape, {"inner back"}).face_plan.area == pytest.approx(0.4 * FACE)
    skew = polygon([(0, 0), (1, 0), (1, 1), (0.5, 0.5), (0, 1)])  # inner corner of 270 degrees, exposed on one side
    chosen = layers_of(skew, {"edge 3"})
    away = layers_of(skew, {"edge 3", "edge 4"})
    length = math.sqrt(0.5)
    # the outer end is a corner of 45 degrees: the wall cuts a triangle off the strip
    assert chosen.face_plan.area == pytest.approx(length * FACE - FACE**2 / 2)
    assert away.face_plan.area == pytest.approx(2 * (length * FACE - FACE**2 / 2) + FACE**2)
    straight = polygon([(0, 0), (1, 0), (2, 0), (2, 1), (0, 1)])
    assert layers_of(straight, {"edge 1"}).face_plan.area == pytest.approx(FACE)


def test_the_point_of_a_very_sharp_inner_corner_is_cut_off():
    notch = polygon([(0, 0), (2, 0), (2, 1), (1.02, 1), (1, 0.4), (0.98, 1), (0, 1)])
    lowest = min(y for _, y in layers_of(notch, {"edge 4", "edge 5"}).face_plan.exterior.coords)
    assert 0.4 - lowest == pytest.approx(MITRE_LIMIT * FACE)


@pytest.mark.parametrize("outline", [*RIGHT_ANGLED, SHAPES["arrow"]])
def test_mirrored_or_turned_pieces_have_the_same_layers(outline):
    points = [edge.coords[0] for edge in outline.edges]
    drawn = polygon(points)
    for exposed in subsets(drawn.edge_names)[:: 5 if len(points) > 5 else 1]:
        base = layers_of(drawn, exposed)
        for change in (lambda g: rotate(g, 37), lambda g: scale(g, -1, 1), lambda g: scale(g, 1, -1)):
            other = polygon(list(change(drawn.polygon).exterior.coords))
            layers = layers_of(other, exposed)
            assert layers.face_m3 == pytest.approx(base.face_m3, rel=1e-9)


@pytest.mark.parametrize("factor", [0.5, 4.0])
def test_volumes_grow_with_the_cube_of_the_size(factor):
    hole = place(circle(0.2), (0.3, 0.3))
    small = layers_of(rectangle(1.0, 0.6), {"front", "left"}, [Cutout(hole, True)])
    large = layers_of(
        rectangle(1.0 * factor, 0.6 * factor),
        {"front", "left"},
        [Cutout(place(circle(0.2 * factor), (0.3 * factor, 0.3 * factor)), True)],
        T * factor,
        FACE * factor,
    )
    assert large.face_m3 == pytest.approx(small.face_m3 * factor**3)
    assert large.core_m3 == pytest.approx(small.core_m3 * factor**3)


def test_more_face_with_more_thickness_and_with_more_edges():
    top = rectangle(1.5, 0.6)
    faces = [layers_of(top, True, face=share * T).face_m3 for share in (1e-6, 0.05, 0.2, 0.5, 0.9, 0.999)]
    assert faces == sorted(faces)
    chain = [set(), {"front"}, {"front", "left"}, {"front", "left", "right"}, set(top.edge_names)]
    faces = [layers_of(top, exposed).face_m3 for exposed in chain]
    assert faces == sorted(faces) and len(set(faces)) == 5


def test_a_face_that_cuts_the_base_in_two_is_refused():
    # two squares of 1 m that overlap by a corner of 50 mm: from a face of 25 mm on, the bases of both no longer meet there,
    # though the strip between the two inner corners is 71 mm wide
    corners = [(0, 0), (1, 0), (1, 0.95), (2, 0.95), (2, 2), (0.95, 2), (0.95, 1), (0, 1)]
    assert layers_of(polygon(corners), True, thickness=0.08, face=0.0249).core_m3 > 0
    with pytest.raises(ValueError, match="the face of the edges cuts the base into 2 parts"):
        layers_of(polygon(corners), True, thickness=0.08, face=0.0251)


def test_limits_of_no_face_and_of_no_exposed_edge():
    top = rectangle(1.5, 0.6)
    thin = layers_of(top, True, face=1e-7)
    assert thin.face_m3 / thin.total_m3 == pytest.approx(1e-7 * (1 / T + 4.2 / 0.9), rel=1e-4)
    for outline in (top, *SHAPES.values()):
        layers = layers_of(outline, ())
        assert layers.face_m3 == pytest.approx(outline.area_m2 * FACE)
        assert layers.face_plan.area == pytest.approx(0, abs=1e-15)


@given(
    st.floats(0.3, 3), st.floats(0.3, 3), st.floats(0.15, 0.85), st.floats(0.15, 0.85),
    st.sets(st.sampled_from(["front", "right", "inner back", "inner right", "back", "left"])),
    st.floats(0.001, 0.0375), st.booleans(),
)  # fmt: skip
def test_any_l_with_or_without_a_tap_hole(length, width, a, b, exposed, face, faced):
    outline = l_shape(length, width, a * length, b * width)
    hole = Cutout(place(circle(0.03), ((1 - a) * length / 2, (1 - b) * width / 2)), faced)
    narrow = min(outline.narrowest_m, *(gap - 0.015 for gap in ((1 - a) * length / 2, (1 - b) * width / 2)))
    if narrow <= 1e-3:
        return
    if face >= narrow / 2 * (1 - 1e-3):
        if face > narrow / 2 * (1 + 1e-3):
            with pytest.raises(ValueError, match="half of the narrowest strip"):
                layers_of(outline, exposed, [hole], face=face)
        return
    layers = layers_of(outline, exposed, [hole], face=face)
    assert layers.face_m3 + layers.core_m3 == pytest.approx(layers.total_m3)
    assert 0 < layers.core_m3 < layers.total_m3
    assert layers.narrowest_width_m == pytest.approx(narrow, rel=1e-3)
    length_m = sum(outline.edge(name).length_m for name in exposed)
    short = face_volume_m3(layers.top_area_m2, T, face, length_m, *corners(outline, exposed))
    ring = round_hole_face_volume_m3(0.03, T, face) if faced else 0.0
    assert layers.face_m3 == pytest.approx(short + ring, rel=1e-5)
    check_working(layers.working)


def test_layers_know_the_sizes_they_follow_from():
    layers = layers_of(rectangle(1.5, 0.6), {"front"}, [Cutout(place(rectangle(0.5, 0.3), (0.7, 0.32)), name="sink")])
    assert (layers.thickness_m, layers.face_thickness_m, layers.base_depth_m) == pytest.approx((T, FACE, T - FACE))
    assert layers.top_area_m2 == pytest.approx(0.9 - 0.15)
    assert layers.exposed_length_m == pytest.approx(1.5)
    assert (layers.narrowest_width_m, layers.narrowest_where) == (
        pytest.approx(0.13),
        "between sink and back edge",
    )
    assert layers.total_m3 == pytest.approx(slab_volume_m3(1.5, 0.6, T, 0.15))
    assert layers.plan.contains(shapely.Point(0.1, 0.1)) and not layers.core_plan.contains(shapely.Point(0.7, 0.3))


def test_one_round_edge_beside_walls_ends_square():
    # square to the last chord, which is a degree off the arc
    rounded = layers_of(rectangle(1.0, 0.6, 0.08), {"front"}).face_plan.area
    assert rounded == pytest.approx(0.84 * FACE + math.pi / 4 * (0.08**2 - (0.08 - FACE) ** 2), rel=3e-4)
    track = layers_of(racetrack(1.0, 0.4), {"left end"}).face_plan.area
    assert track == pytest.approx(math.pi / 2 * (0.2**2 - (0.2 - FACE) ** 2), rel=3e-4)
