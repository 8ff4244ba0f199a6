"""A checked piece: cut-outs, exposed edges, dropped edges, strips, advice, and what is refused."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shop_calc.trade.shape.layers import split_layers
from shop_calc.trade.shape.outline import circle, l_shape, place, polygon, racetrack, rectangle, u_shape
from shop_calc.trade.shape.piece import Cutout, DropEdge, build_piece
from shop_calc.trade.shape.piece_advice import piece_advice, section_left
from shop_calc.trade.shape.strips import narrowest_strip, strips_beside_cutouts
from shop_calc.units import parse

IN = 0.0254
TOP = rectangle(84 * IN, 26 * IN)
SINK = Cutout(place(rectangle(29.5 * IN, 17.5 * IN), (42 * IN, 13 * IN)), name="sink")


def tap(x, y, across=1.375):
    return Cutout(place(circle(across * IN), (x * IN, y * IN)), name="tap")


def test_volume_of_the_counter_with_a_sink():
    piece = build_piece(TOP, 2.5 * IN, cutouts=[SINK])
    assert piece.volume_m3 / IN**3 == pytest.approx(4169.375)  # 26 x 84 x 2-1/2 in less 29-1/2 x 17-1/2 in
    assert piece.volume_m3 / (12 * IN) ** 3 == pytest.approx(2.413, abs=0.005)


def test_edges_may_be_given_as_true_one_word_or_a_list():
    assert build_piece(TOP, IN, True).exposed == {"front", "right", "back", "left"}
    assert build_piece(TOP, IN, " Front ").exposed == {"front"}
    assert build_piece(TOP, IN, ["front", "LEFT"]).exposed == {"front", "left"}
    assert build_piece(TOP, IN, None).exposed == build_piece(TOP, IN).exposed == frozenset()


def test_exposed_length_counts_outer_and_cut_out_edges_one_by_one():
    sink = Cutout(SINK.outline, {"front", "left"}, "sink")
    piece = build_piece(TOP, IN, {"front"}, [sink, Cutout(tap(42, 23.5).outline, True)])
    assert piece.exposed_length_m / IN == pytest.approx(84 + 29.5 + 17.5 + math.pi * 1.375)


def test_a_piece_tells_the_strips_beside_its_sink():
    strips = strips_beside_cutouts(build_piece(TOP, 2.5 * IN, cutouts=[SINK]))
    widths = {strip.beside: strip.width_m / IN for strip in strips}
    assert widths == pytest.approx({"front edge": 4.25, "back edge": 4.25, "right edge": 27.25, "left edge": 27.25})
    assert strips[0].length_m / IN == pytest.approx(29.5)


def test_strips_between_cut_outs_and_round_edges():
    piece = build_piece(racetrack(96 * IN, 32 * IN), 2 * IN, cutouts=[tap(20, 16), tap(26, 16, 2)])
    width, where = narrowest_strip(piece)
    assert width / IN == pytest.approx(6 - 1.375 / 2 - 1, rel=1e-4)
    assert where == "between tap and tap"
    disc = build_piece(circle(40 * IN), 2 * IN, cutouts=[tap(20, 5, 4)])
    assert narrowest_strip(disc) == (pytest.approx(3 * IN, rel=1e-3), "between tap and rim")


def test_a_strip_that_would_run_through_open_air_does_not_count():
    comb = u_shape(2.0, 1.0, 0.05, 0.9, 0.5)  # a narrow notch; the right leg is no strip of the hole in the left one
    hole = Cutout(place(circle(0.2), (0.3, 0.7)), name="hole")
    beside = [strip.beside for strip in strips_beside_cutouts(build_piece(comb, 0.03, cutouts=[hole]))]
    assert "inner right edge" in beside
    assert "inner left edge" not in beside


def test_the_tongue_in_a_u_shaped_cut_out_is_a_strip():
    hole = Cutout(place(u_shape(0.5, 0.4, 0.04, 0.3, 0.23), (1.0, 0.5)), name="drain")
    assert narrowest_strip(build_piece(rectangle(2.0, 1.0), 0.03, cutouts=[hole])) == (0.04, "inside drain")


@given(st.floats(0.05, 0.95), st.floats(0.05, 0.95), st.floats(0.02, 0.3), st.floats(0.02, 0.3))
def test_the_narrowest_strip_beside_a_rectangular_cut_out(x, y, length, width):
    gaps = (x - length / 2, 1 - x - length / 2, y - width / 2, 1 - y - width / 2)
    hole = Cutout(place(rectangle(length, width), (x, y)))
    if min(gaps) <= 1e-5:
        with pytest.raises(ValueError, match="cut-out"):
            build_piece(rectangle(1, 1), 0.03, cutouts=[hole])
    else:
        assert narrowest_strip(build_piece(rectangle(1, 1), 0.03, cutouts=[hole]))[0] == pytest.approx(min(gaps))


# ---------------------------------------------------------------- advice


def advice(piece, face_in=0.25, stone_in=None):
    layers = split_layers(piece, face_in * IN)
    return piece_advice(piece, layers, None if stone_in is None else stone_in * IN)


def test_narrow_strips_beside_a_sink_are_named_with_width_and_side():
    said = [line for line in advice(build_piece(TOP, 2.5 * IN, cutouts=[SINK])) if "strips" in line.text]
    assert len(said) == 1 and said[0].level == "act"
    assert '4 1/4" (108 mm) to the front edge' in said[0].reason
    assert '4 1/4" (108 mm) to the back edge' in said[0].reason
    assert 'leaves 8 1/2" (216 mm) of 2\'-2" (660 mm)' in said[0].reason
    assert "two people" in said[0].text


def test_wide_strips_and_bridges_beside_small_holes_are_left_alone():
    wide = build_piece(rectangle(84 * IN, 40 * IN), 1.5 * IN, cutouts=[SINK_IN_WIDE, tap(10, 3)])
    assert [line for line in advice(wide) if "strips" in line.text] == []
    near = build_piece(rectangle(84 * IN, 40 * IN), 1.5 * IN, cutouts=[tap(10, 1.5)])
    assert len([line for line in advice(near) if "strips" in line.text]) == 1


SINK_IN_WIDE = Cutout(place(rectangle(30 * IN, 20 * IN), (42 * IN, 20 * IN)), name="sink")


def test_section_left_at_a_cut_out_off_the_middle():
    piece = build_piece(TOP, IN, cutouts=[tap(20, 20, 4)])
    left, across = section_left(piece, piece.cutouts[0])
    assert (left / IN, across / IN) == pytest.approx((22, 26), rel=1e-3)


@pytest.mark.parametrize(
    ("outline", "cutouts", "places"),
    [
        (TOP, [SINK], ["at sink (4)"]),
        (TOP, [Cutout(place(rectangle(0.4, 0.3, 0.02), (1.0, 0.33)), name="sink")], []),
        (TOP, [Cutout(place(circle(0.3), (1.0, 0.33)))], []),
        (TOP, [Cutout(place(racetrack(0.4, 0.3), (1.0, 0.33)))], []),
        (l_shape(2, 2, 1, 1), [], ["between inner back and inner right"]),
        (u_shape(2, 2, 1, 1, 0.5), [], ["inner left and inner back", "inner back and inner right"]),
        (polygon([(0, 0), (2, 0), (2, 1), (1, 0.99), (0, 1)]), [], []),
    ],
)
def test_sharp_inside_corners_are_to_be_rounded(outline, cutouts, places):
    said = [line for line in advice(build_piece(outline, 1.5 * IN, cutouts=cutouts)) if "inside corners" in line.text]
    assert len(said) == bool(places)
    for place_ in places:
        assert place_ in said[0].reason


def test_sharp_outer_corners_are_to_be_blunted():
    said = advice(build_piece(polygon([(0, 0), (2, 0), (0, 1)]), 1.5 * IN))
    assert [line.level for line in said] == ["note"]
    assert "edge 1 and edge 2 (27 degrees)" in said[0].reason


@pytest.mark.parametrize(
    ("stone_in", "words"),
    [(0.41, []), (0.42, ["third"]), (0.5, ["third"]), (3.1, ["third", "fifth"])],
)
def test_stone_is_at_most_a_third_of_the_base_and_a_fifth_of_the_narrowest_width(stone_in, words):
    said = advice(build_piece(rectangle(60 * IN, 15 * IN), 1.5 * IN), 0.25, stone_in)  # base 1-1/4 in deep
    assert [line.where for line in said] == ["mix"] * len(words)
    for line, word in zip(said, words, strict=True):
        assert f"a {word}" in line.reason and line.source == "ACI 318-19 26.4.2.1" and line.mark == "read"


def test_the_return_of_a_dropped_edge_limits_the_stone():
    piece = build_piece(rectangle(60 * IN, 15 * IN), 3 * IN, {"front"}, drop=DropEdge("front", 5 * IN, 2 * IN))
    said = advice(piece, 0.25, 0.5)
    assert ["fifth" in line.reason for line in said if line.where == "mix"] == [True]  # 2 in / 5 = 0.4 in


@pytest.mark.parametrize(("face_in", "count"), [(0.125, 0), (0.12, 1), (0.5, 0), (0.51, 1)])
def test_a_face_thinner_than_an_eighth_or_thicker_than_half_an_inch_is_warned_about(face_in, count):
    said = advice(build_piece(rectangle(60 * IN, 15 * IN), 1.5 * IN), face_in)
    assert [line.text.startswith("Keep the face between") for line in said] == [True] * count


# ---------------------------------------------------------------- refused


def moved(across, deep, size=4):
    return [Cutout(place(rectangle(size * IN, size * IN), (across * IN, deep * IN)), name="sink")]


FRONT = {"front", "left"}
DROPS = [
    (DropEdge("back", 3 * IN, 2 * IN), "dropped edge 'back': it is not exposed; .*exposed: front, left"),
    (DropEdge("top", 3 * IN, 2 * IN), "dropped edge: 'top' given; the edges are front, right, back, left"),
    (
        DropEdge("front", 1.5 * IN, 2 * IN),
        r"depth of dropped edge 'front': 1 1/2.* given; .*more than the thickness, 1 1/2",
    ),
    (DropEdge("front", math.nan, 2 * IN), "depth of dropped edge 'front': nan"),
    (DropEdge("front", 3 * IN, 0), "return width of dropped edge 'front': 0 m given; it must be more than 0"),
    (
        DropEdge("front", 3 * IN, 26 * IN),
        r"return width .*: 2'-2.* given; .*narrowest strip of the piece, 2'-2",
    ),
    ([DropEdge("front", 3 * IN, IN), DropEdge("front", 4 * IN, IN)], "'front': given twice"),
]


@pytest.mark.parametrize(("drop", "message"), DROPS)
def test_impossible_dropped_edges_are_refused(drop, message):
    with pytest.raises(ValueError, match=message):
        build_piece(TOP, 1.5 * IN, FRONT, drop=drop)


REFUSED = [
    (lambda: build_piece(TOP, 0), "thickness: 0 m given; it must be more than 0 m"),
    (
        lambda: build_piece(TOP, IN, {"frnt"}),
        "exposed edges: 'frnt' given; the edges are front, right, back, left",
    ),
    (
        lambda: build_piece(TOP, IN, use="boat"),
        "use: 'boat' given; it must be one of top, table, seat, wall-hung",
    ),
    (
        lambda: build_piece(TOP, IN, cutouts=[Cutout(SINK.outline, {"rim"}, "sink")]),
        "exposed edges of cut-out 'sink': 'rim' given; the edges are front",
    ),
    (
        lambda: build_piece(TOP, IN, cutouts=moved(84, 13)),
        r"cut-out 'sink': from the left 6'-10.* must lie inside the piece",
    ),
    (lambda: build_piece(TOP, IN, cutouts=moved(184, 13)), "must lie inside the piece, from the left 0"),
    (lambda: build_piece(TOP, IN, cutouts=moved(42, 13, 100)), "must lie inside the piece"),
    (lambda: build_piece(TOP, IN, cutouts=moved(42, 2)), "touches the edge: leave a strip, or draw a notch"),
    (lambda: build_piece(TOP, IN, cutouts=[*moved(20, 13), *moved(24, 13)]), "touches cut-out 'sink'"),
    (lambda: build_piece(TOP, IN, cutouts=[*moved(20, 13), *moved(22, 13)]), "touches cut-out 'sink'"),
    (lambda: build_piece(TOP, IN, cutouts=[*moved(20, 13, 8), *moved(20, 13, 2)]), "touches cut-out 'sink'"),
    (
        lambda: build_piece(circle(1), IN, True, drop=DropEdge("rim", 3 * IN, IN)),
        "dropped edge 'rim': it is round",
    ),
    (
        lambda: build_piece(TOP, IN, True, moved(42, 5), DropEdge("front", 3 * IN, 4 * IN)),
        "cut-out 'sink': it reaches into the dropped edge 'front'",
    ),
]


@pytest.mark.parametrize(("build", "message"), REFUSED)
def test_impossible_pieces_are_refused_in_words(build, message):
    with pytest.raises(ValueError, match=message):
        build()


def test_advice_refuses_an_impossible_stone():
    with pytest.raises(ValueError, match="largest stone: 0 m given"):
        advice(build_piece(TOP, IN), 0.25, 0)


@pytest.mark.parametrize("depth_mm", [19.05, 25.0, 31.75, 32.0, 40.0])
def test_a_stone_as_large_as_the_printed_limit_is_allowed(depth_mm):
    layers = split_layers(build_piece(rectangle(3, 1), depth_mm / 1000 + 0.00635), 0.00635)
    said = piece_advice(build_piece(rectangle(3, 1), depth_mm / 1000 + 0.00635), layers, 0.05)
    limit = next(line.reason for line in said if line.where == "mix").rsplit("at most ", 1)[1].rstrip(".")
    for printed in limit.rstrip(")").split(" ("):
        assert layers.base_depth_m / 3 - 0.0017 < parse(printed, "length") <= layers.base_depth_m / 3 * (1 + 1e-9)
