"""Dropped edges, the working of the two volumes line by line, and faces that cannot be."""

import pytest
from working_eval import check_working

from shop_calc.trade.shape.layers import split_layers
from shop_calc.trade.shape.outline import circle, l_shape, place, polygon, racetrack, rectangle, u_shape
from shop_calc.trade.shape.piece import Cutout, DropEdge, build_piece
from shop_calc.trade.working import find

IN = 0.0254
T, FACE = 1.5 * IN, 0.25 * IN
KITE = polygon([(0, 0), (1.0, -0.3), (1.3, 0.2), (0.4, 0.9)])


def layers_of(outline, exposed, cutouts=(), thickness=T, face=FACE, drop=()):
    return split_layers(build_piece(outline, thickness, exposed, cutouts, drop), face)


def test_a_dropped_front_with_a_faced_end_and_a_wall_end():
    layers = layers_of(rectangle(60, 15), {"front", "left"}, (), 1.5, 0.25, DropEdge("front", 3, 2))
    assert layers.total_m3 == pytest.approx(60 * 15 * 1.5 + 60 * 2 * 1.5)
    # in the return: 1/4 in off the front, and off the left end along the rest of 2; the right end is a wall
    assert layers.core_m3 == pytest.approx((60 - 0.25) * (15 - 0.25) * 1.25 + (60 - 0.25) * (2 - 0.25) * 1.5)
    assert layers.form_width_m == 2


def test_two_drops_meet_at_a_corner_once():
    same = [DropEdge("front", 3, 2), DropEdge("left", 3, 2)]
    layers = layers_of(rectangle(60, 15), {"front", "left"}, (), 1.5, 0.25, same)
    assert layers.total_m3 == pytest.approx(60 * 15 * 1.5 + (60 * 2 + 13 * 2) * 1.5)
    unlike = [DropEdge("left", 2.5, 3), DropEdge("front", 3, 2)]
    layers = layers_of(rectangle(60, 15), {"front", "left"}, (), 1.5, 0.25, unlike)
    assert layers.total_m3 == pytest.approx(60 * 15 * 1.5 + 60 * 2 * 1.5 + 13 * 3 * 1.0)
    core = (59.75 * 14.75) * 1.25 + 59.75 * 1.75 * 1.5 + 13 * 2.75 * 1.0
    assert layers.core_m3 == pytest.approx(core)


def test_drops_round_an_inner_corner_include_its_square():
    shape = l_shape(60, 60, 30, 30)
    inner = {"inner back", "inner right"}
    layers = layers_of(shape, inner, (), 1.5, 0.25, [DropEdge(name, 3, 2) for name in sorted(inner)])
    assert layers.total_m3 == pytest.approx(2700 * 1.5 + (30 * 2 * 2 + 4) * 1.5)


def test_all_four_edges_dropped_hang_like_a_box():
    top = rectangle(60, 15)
    layers = layers_of(top, True, (), 1.5, 0.25, [DropEdge(name, 4, 2) for name in top.edge_names])
    assert layers.total_m3 == pytest.approx(60 * 15 * 4 - 56 * 11 * 2.5)
    assert layers.core_m3 == pytest.approx(59.5 * 14.5 * 3.75 - 56 * 11 * 2.5)


# ---------------------------------------------------------------- working


WORKED = {
    "rectangle": (rectangle(1.5, 0.6), True, [], ()),
    "L with drop": (l_shape(1.5, 1.2, 0.6, 0.5), {"front", "right"}, [], [DropEdge("front", 0.08, 0.05)]),
    "two sinks": (
        rectangle(2.4, 0.65, 0.05),
        {"front"},
        [
            Cutout(place(rectangle(0.4, 0.3), (0.7, 0.3)), {"left"}, "one"),
            Cutout(place(racetrack(0.5, 0.3), (1.7, 0.3)), True, "two"),
        ],
        (),
    ),
    "drawn": (KITE, {"edge 1", "edge 2"}, [], ()),
}


@pytest.mark.parametrize("case", WORKED.values(), ids=WORKED)
def test_every_line_of_the_working_gives_its_value_again(case):
    outline, exposed, cutouts, drop = case
    layers = layers_of(outline, exposed, cutouts, drop=drop)
    assert check_working(layers.working) >= 5
    assert find(layers.working, "face_volume_m3").value == layers.face_m3
    assert find(layers.working, "core_volume_m3").value == layers.core_m3
    assert find(layers.working, "total_volume_m3").value == layers.total_m3
    assert len({step.name for step in layers.working}) == len(layers.working)
    assert all(step.words for step in layers.working)


def test_right_angled_pieces_show_the_short_formula_and_others_say_how():
    square = find(layers_of(l_shape(0.9, 0.8, 0.4, 0.3), True).working, "core_area_m2")
    assert square.formula == "A - t * P + (c_out - c_in) * t ** 2"
    assert dict((s, v) for s, v, _ in square.inputs)["c_in"] == 1
    assert find(layers_of(circle(1.0), True).working, "core_area_m2").formula.startswith("by ")
    assert find(layers_of(KITE, {"edge 1"}).working, "core_area_m2").formula.startswith("by ")


# ---------------------------------------------------------------- refused


SINK = Cutout(place(rectangle(1.0, 0.5), (0.75, 0.27)), True, "sink")
REFUSED = [
    (
        lambda: layers_of(rectangle(1.5, 0.6), True, face=T),
        r"face thickness: 1 1/2.* given; .* less than the thickness, 1 1/2",
    ),
    (
        lambda: layers_of(rectangle(1.5, 0.6), True, face=0),
        "face thickness: 0 m given; it must be more than 0 m",
    ),
    (lambda: layers_of(rectangle(1.5, 0.6), True, face=-0.001), "face thickness: -0.001 m given"),
    (
        lambda: layers_of(rectangle(1.5, 0.05), True, face=0.025),
        r"half of the narrowest strip, .*\(25 mm\) \(across the piece\)",
    ),
    (
        lambda: layers_of(rectangle(1.5, 0.6), True, [SINK], face=0.0101),
        r"face thickness: .*\(10\.1 mm\) given; .*narrowest strip, .*\(10 mm\) \(between sink and front edge\)",
    ),
    (
        lambda: layers_of(u_shape(1.0, 0.8, 0.4, 0.3, 0.05), (), face=0.026),
        r"half of the narrowest strip, .*\(25 mm\)",
    ),
    (
        lambda: layers_of(rectangle(1.5, 0.6), {"front"}, (), T, FACE, DropEdge("front", 0.1, FACE)),
        r"face thickness: 1/4.* less than the return width of dropped edge 'front', 1/4",
    ),
]


@pytest.mark.parametrize(("split", "message"), REFUSED)
def test_impossible_faces_are_refused_in_words(split, message):
    with pytest.raises(ValueError, match=message):
        split()


def test_faces_that_meet_in_a_narrow_tip_are_refused_when_they_part_the_base():
    waist = polygon([(0, 0), (4, 0), (2.4, 2), (4, 4), (0, 4), (1.6, 2)])
    with pytest.raises(ValueError, match="half of the narrowest strip"):
        layers_of(waist, True, thickness=1.0, face=0.45)


@pytest.mark.parametrize("share", [0.999, 0.5])
def test_just_under_the_limit_a_base_is_left(share):
    layers = layers_of(rectangle(1.5, 0.6), True, [SINK], thickness=0.04, face=0.01 * share)
    assert layers.core_plan.is_valid and layers.core_plan.geom_type == "Polygon"
    assert layers.core_m3 > 0
