"""The form of a piece with several dropped edges: filler boards, faces of the returns, caulk, mass; sizes by hand."""

import math

import pytest
from working_eval import check_working

from shop_calc.trade.shape.drop_advice import drop_advice, filler_width_m
from shop_calc.trade.shape.drops import DropEdge
from shop_calc.trade.shape.form import build_form
from shop_calc.trade.shape.form_returns import return_faces
from shop_calc.trade.shape.outline import l_shape, polygon, racetrack, rectangle, u_shape
from shop_calc.trade.shape.piece import build_piece

IN = 0.0254
STRIP = 0.125  # in, 1/8 in sheet


def form_of(outline, *drops):
    drops = [DropEdge(name, depth * IN, width * IN) for name, depth, width in drops]
    return build_form(build_piece(outline, 1.5 * IN, True, drop=drops), density_kg_m3=2400.0)


def rows(form, start):
    return [(row.name, row.count, *(round(size / IN, 4) for size in (row.length_m, row.width_m, row.thickness_m)))
            for row in form.rows if row.name.startswith(start)]  # fmt: skip


def note(form, name):
    return next(row.note for row in form.rows if row.name == name)


def test_front_and_both_ends_by_hand():
    form = form_of(rectangle(96 * IN, 25.5 * IN), *((name, 3, 2) for name in ("front", "left", "right")))
    # all sides 3 in and the base board of 3/4 in high; the ends run past front and back, 25.5 + 2 x 3/4
    assert rows(form, "side") == [("side: front, back", 2, 96.0, 3.75, 0.75), ("side: right, left", 2, 27.0, 3.75, 0.75)]
    # the filler board: 96 - 2 x 2 by 25.5 - 2, less a strip on three edges; 3 - 1.5 thick
    assert rows(form, "filler") == [("filler board", 1, 92 - 2 * STRIP, 23.5 - STRIP, 1.5)]
    assert '2" (50.8 mm) clear of the front, right and left sides' in note(form, "filler board")
    assert "cut to shape" not in note(form, "filler board")
    # its faces, on the side of the mix: 92 along the front, 23.5 at the ends, mitred where they meet
    assert rows(form, "return") == [
        ("return face: left, right", 2, 23.5, 1.5, STRIP), ("return face: front", 1, 92.0, 1.5, STRIP),
    ]  # fmt: skip
    assert "both ends are mitred to 45.0 degrees: left and right" in note(form, "return face: front")
    # round the bottom, up four joints of 3, along the faces
    assert form.caulk_length_m / IN == pytest.approx(2 * (96 + 25.5) + 4 * 3 + 92 + 2 * 23.5)
    assert form.mass_kg == pytest.approx(2400.0 * 4101 * IN**3)  # 3672 + (192 + 94) 1.5 in3
    assert check_working(form.working) == len(form.working)


def test_a_deeper_front_has_a_lower_board_of_its_own():
    form = form_of(rectangle(96 * IN, 25.5 * IN), ("front", 4, 2), ("left", 3, 3), ("right", 3, 3))
    assert form.side_height_m / IN == pytest.approx(4.75)
    assert rows(form, "filler") == [
        ("filler board", 1, 96.0, 23.5 - STRIP, 1.0), ("filler board", 1, 90 - 2 * STRIP, 23.5 - STRIP, 1.5),
    ]  # fmt: skip
    assert rows(form, "return") == [
        ("return face: front", 1, 96.0, 1.0, STRIP), ("return face: left, right", 2, 23.5, 1.5, STRIP),
        ("return face: front", 1, 90.0, 1.5, STRIP),
    ]  # fmt: skip
    assert note(form, "return face: front").endswith("cut square, between the sides")
    assert form.caulk_length_m / IN == pytest.approx(243 + 4 * 4 + 96 + 90 + 2 * 23.5)


def test_faces_in_an_inside_corner_of_the_piece_are_measured_on_the_board():
    # notch 30 x 30 of 60 x 60: the faces run 30 + 2 on the side of the mix; the board behind the mitre is a strip longer
    form = form_of(l_shape(60 * IN, 60 * IN, 30 * IN, 30 * IN), ("inner back", 3, 2), ("inner right", 3, 2))
    found = {face.edge: face for face in return_faces(build_piece(
        l_shape(60 * IN, 60 * IN, 30 * IN, 30 * IN), 1.5 * IN, True,
        drop=[DropEdge(name, 3 * IN, 2 * IN) for name in ("inner back", "inner right")]), STRIP * IN)}  # fmt: skip
    assert [found[name].along_mix_m / IN for name in ("inner back", "inner right")] == pytest.approx([32, 32])
    assert [found[name].length_m / IN for name in ("inner back", "inner right")] == pytest.approx([32 + STRIP] * 2)
    assert "one end is mitred to 45.0 degrees at inner right" in found["inner back"].note
    (board,) = rows(form, "filler")
    assert board == ("filler board", 1, 60.0, 60.0, 1.5)
    assert "the size round it, cut to shape" in note(form, "filler board")


@pytest.mark.parametrize("outline", [l_shape(60 * IN, 60 * IN, 30 * IN, 30 * IN), racetrack(60 * IN, 30 * IN)])
def test_a_return_that_ends_under_the_piece_has_a_face_at_its_end(outline):
    name = "inner back" if outline.shape == "L" else "front"
    form = form_of(outline, (name, 3, 2))
    ends = rows(form, f"return face: {name} end")
    assert sum(count for _, count, *_ in ends) == (1 if outline.shape == "L" else 2)
    assert all(length == pytest.approx(2 + STRIP) for _, _, length, *_ in ends)  # mitred at its inner corner
    assert form.caulk_length_m > 0


def test_faces_at_askew_corners_are_mitred_at_half_the_angle():
    hexagon = polygon([(math.cos(k * math.pi / 3), math.sin(k * math.pi / 3)) for k in range(6)])
    drops = [DropEdge(f"edge {k}", 0.08, 0.1) for k in range(1, 7)]
    faces = return_faces(build_piece(hexagon, 0.04, True, drop=drops), 0.003)
    # the inner hexagon has an apothem 0.1 less: 2 (cos 30 - 0.1) tan 30
    side = 2 * (math.cos(math.pi / 6) - 0.1) * math.tan(math.pi / 6)
    assert [face.length_m for face in faces] == pytest.approx([side] * 6)
    assert sorted(face.edge for face in faces) == [f"edge {k}" for k in range(1, 7)]  # none of them is an end
    assert all("both ends are mitred to 60.0 degrees" in face.note for face in faces)


def test_returns_that_part_the_thin_part_leave_two_filler_boards_and_a_word_about_the_gap():
    # a U whose bridge in front of the opening is 2 in wide: returns of 1 and of 0.95 in leave 0.05 in, less than two faces,
    # so that only the arms, 20 in wide and 40 - 1 - 1/8 deep, have a board
    drops = [DropEdge("front", 3 * IN, IN), DropEdge("inner back", 3 * IN, 0.95 * IN)]
    piece = build_piece(u_shape(60 * IN, 40 * IN, 20 * IN, 38 * IN, 20 * IN), 1.5 * IN, True, drop=drops)
    assert rows(build_form(piece), "filler") == [("filler board", 2, 20.0, 39 - STRIP, 1.5)]
    assert filler_width_m(piece) == pytest.approx(0.05 * IN)
    assert [line for line in drop_advice(piece) if "hardly a filler board" in line.text]


@pytest.mark.parametrize(("width_in", "told"), [(9.1, True), (8.99, False)])
def test_a_filler_board_is_narrow_below_two_inches(width_in, told):
    # 20 in between front and back: 20 - 2 x 9 = 2
    drops = [DropEdge(name, 3 * IN, width_in * IN) for name in ("front", "back")]
    piece = build_piece(rectangle(60 * IN, 20 * IN), 1.5 * IN, True, drop=drops)
    assert filler_width_m(piece) / IN == pytest.approx(20 - 2 * width_in)
    assert any("hardly a filler board" in line.text for line in drop_advice(piece)) is told


def test_between_the_straight_edges_of_a_racetrack_the_board_is_as_wide_as_the_returns_leave_it():
    # 30 in less the returns: 30 - 10 - 19 = 1
    drops = [DropEdge("front", 3 * IN, 10 * IN), DropEdge("back", 3 * IN, 19 * IN)]
    for given, width, told in ((drops[:1], 20, False), (drops, 1, True)):
        piece = build_piece(racetrack(60 * IN, 30 * IN), 1.5 * IN, True, drop=given)
        assert filler_width_m(piece) / IN == pytest.approx(width)
        assert any("hardly a filler board" in line.text for line in drop_advice(piece)) is told


def test_it_is_said_by_how_much_the_dropped_edges_hang_deeper():
    # 3 - 1.5
    piece = build_piece(rectangle(60 * IN, 20 * IN), 1.5 * IN, True, drop=DropEdge("front", 3 * IN, 2 * IN))
    (line,) = [line for line in drop_advice(piece) if line.where == "base"]
    assert "They hang 1 1/2\" (38.1 mm) deeper than the rest" in line.reason


@pytest.mark.parametrize(
    ("outline", "names", "held"),
    [
        (rectangle(60 * IN, 20 * IN), ("left", "right"), True),
        (rectangle(60 * IN, 20 * IN), ("front", "left"), False),
        (u_shape(60 * IN, 40 * IN, 20 * IN, 15 * IN, 20 * IN), ("inner left", "inner right"), False),  # through air
        (u_shape(60 * IN, 40 * IN, 20 * IN, 15 * IN, 20 * IN), ("left", "inner right"), True),
    ],
)
def test_a_board_between_two_returns_is_held_fast(outline, names, held):
    piece = build_piece(outline, 1.5 * IN, True, drop=[DropEdge(name, 3 * IN, 2 * IN) for name in names])
    assert any("shut in" in line.reason for line in drop_advice(piece)) is held


def test_a_dropped_edge_dries_by_the_square_of_its_shorter_way():
    # 2 in against 1.5 in: (2/1.5)^2 = 1.78; 3 in are twice as far and take 4 times as long; a return of 1 in is
    # thinner than the top and is not spoken of, nor is what makes less than a quarter more: 1.69 in 1.27, 1.67 in 1.24
    for width, words in ((2, "about 1.8 times"), (3, "about 4.0 times"), (1, None), (1.69, "about 1.3 times"), (1.67, None)):
        piece = build_piece(rectangle(60 * IN, 20 * IN), 1.5 * IN, True, drop=DropEdge("front", 3 * IN, width * IN))
        lines = [line.reason for line in drop_advice(piece) if line.where == "seal"]
        assert (words in lines[0]) if words else not lines
    assert drop_advice(build_piece(rectangle(60 * IN, 20 * IN), 1.5 * IN, True)) == ()


def test_without_a_drop_there_is_no_filler():
    assert not rows(form_of(rectangle(1.5, 0.6)), "filler") and not rows(form_of(rectangle(1.5, 0.6)), "return")
