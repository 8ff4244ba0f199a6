"""The form: heights, cut lengths with laps, knock-outs, caulk, screws, push and mass."""

import math
from itertools import pairwise

import numpy as np
import pytest
from demo_plans import demo_plan
from working_eval import check_working

from shop_calc.trade.shape.form import build_form, mass_on_table_kg, side_height_m, slab_thickness_m
from shop_calc.trade.shape.form_sides import form_sides
from shop_calc.trade.shape.outline import circle, l_shape, place, polygon, racetrack, rectangle, u_shape
from shop_calc.trade.shape.piece import Cutout, DropEdge, build_piece
from shop_calc.trade.working import find
from shop_calc.units import convert, shop_fraction

IN = 0.0254
PSF, LB, PCF = 47.88025898, 0.45359237, 16.01846337
BOARD = 0.75 * IN
STRIP = 0.125 * IN


def form_of(outline, thickness_in=1.5, exposed=True, cutouts=(), drop=(), **more):
    return build_form(build_piece(outline, thickness_in * IN, exposed, cutouts, drop), **more)


def lengths(outline, board=BOARD):
    return {side.edge: pytest.approx(side.length_m / IN) for side in form_sides(outline, board, STRIP)}


def test_sides_that_lap_the_base_are_as_high_as_the_piece_and_the_board():
    form = form_of(rectangle(36 * IN, 36 * IN), 2)
    assert shop_fraction(form.side_height_m / IN) == '2 3/4"'
    assert {shop_fraction(row.width_m / IN) for row in form.rows if "side" in row.name} == {'2 3/4"'}
    assert form_of(rectangle(36 * IN, 36 * IN), 2, sides_lap_base=False).side_height_m == pytest.approx(2 * IN)


def test_side_height_and_slab_thickness_undo_each_other():
    depths = np.array([0.02, 0.0381, 0.1])
    assert slab_thickness_m(side_height_m(depths, BOARD), BOARD) == pytest.approx(depths)
    assert shop_fraction(slab_thickness_m(2.5 * IN, BOARD) / IN) == '1 3/4"'


def test_short_sides_run_past_the_long_ones_so_that_they_slide_off_first():
    assert lengths(rectangle(60 * IN, 15 * IN)) == {"front": 60, "right": 16.5, "back": 60, "left": 16.5}
    assert lengths(rectangle(15 * IN, 60 * IN)) == {"front": 16.5, "right": 60, "back": 16.5, "left": 60}


def test_round_a_square_each_side_runs_past_one_neighbour():
    assert lengths(rectangle(36 * IN, 36 * IN)) == dict.fromkeys(("front", "right", "back", "left"), 36.75)


def test_the_cut_list_says_once_how_both_ends_are_cut():
    bench = {side.edge: side.note for side in form_sides(rectangle(60 * IN, 15 * IN), BOARD, STRIP)}
    assert bench == {"front": "", "back": "", **dict.fromkeys(("right", "left"), "both ends run past: front and back")}
    square = form_sides(rectangle(36 * IN, 36 * IN), BOARD, STRIP)
    assert {side.note for side in square} == {f"one end runs past {side.edge}" for side in square}
    u_top = {side.edge: side.note for side in form_sides(u_shape(1.5, 1.2, 0.7, 0.5, 0.4), BOARD, STRIP)}
    assert u_top["inner back"] == "both ends stop one board short: inner left and inner right"
    l_top = {side.edge: side.note for side in form_sides(l_shape(1.5, 1.2, 0.5, 0.7), BOARD, STRIP)}
    assert l_top["inner right"] == "one end stops one board short at inner back, the other end runs past back"


def test_laps_of_an_l_and_a_u():
    # inner corner: "inner back" (30) is shorter and runs through, "inner right" (35) stops a board short
    assert lengths(l_shape(60 * IN, 60 * IN, 30 * IN, 35 * IN)) == {
        "front": 60, "right": 26.5, "inner back": 30, "inner right": 34.25, "back": 31.5, "left": 60.75,
    }  # fmt: skip
    assert lengths(u_shape(60 * IN, 40 * IN, 20 * IN, 15 * IN, 20 * IN)) == {
        "front": 60, "right": 40.75, "back right": 20.75, "inner left": 15.75, "inner back": 18.5,
        "inner right": 15.75, "back left": 20.75, "left": 40.75,
    }  # fmt: skip


@pytest.mark.parametrize(
    "outline", [rectangle(1.5, 0.4), l_shape(1.5, 1.2, 0.7, 0.5), u_shape(1.5, 1.2, 0.7, 0.5, 0.4)]
)
@pytest.mark.parametrize("board", [0.012, 0.019, 0.038])
def test_boards_fill_the_ring_round_the_piece_without_overlap(outline, board):
    ring = outline.polygon.buffer(board, join_style="mitre").area - outline.area_m2
    assert sum(side.length_m for side in form_sides(outline, board, STRIP)) * board == pytest.approx(ring)


def test_askew_corners_are_mitred_at_half_the_angle_and_measured_over_the_long_face():
    hexagon = polygon([(math.cos(k * math.pi / 3), math.sin(k * math.pi / 3)) for k in range(6)])
    sides = form_sides(hexagon, 0.02, STRIP)
    outer = 2 * (math.cos(math.pi / 6) + 0.02) * math.tan(math.pi / 6)
    assert [side.length_m for side in sides] == pytest.approx([outer] * 6)
    assert sides[0].note == "both ends are mitred to 60.0 degrees: edge 2 and edge 6"


def test_mitred_boards_round_an_inner_corner_are_measured_inside():
    arrow = polygon([(0, 0), (2, 0), (2, 1), (1, 0.5), (0, 1)])
    by_edge = {side.edge: side.length_m for side in form_sides(arrow, 0.02, STRIP)}
    outer = arrow.polygon.buffer(0.02, join_style="mitre", mitre_limit=20)
    sloping = [math.dist(a, b) for a, b in pairwise(outer.exterior.coords) if a[1] > 0.1 and b[1] > 0.1]
    assert by_edge["edge 3"] == by_edge["edge 4"] == pytest.approx(max(sloping))


def test_a_straight_joint_adds_nothing():
    straight = polygon([(0, 0), (1, 0), (2, 0), (2, 0.5), (0, 0.5)])
    by_edge = {side.edge: side for side in form_sides(straight, 0.02, STRIP)}
    assert by_edge["edge 1"].length_m == pytest.approx(1.0)
    assert by_edge["edge 3"].length_m == pytest.approx(0.54)


def test_a_strip_round_a_circle_is_measured_along_its_middle():
    (side,) = form_sides(circle(48 * IN), BOARD, STRIP)
    assert side.flexible and side.length_m / IN == pytest.approx(math.pi * (48 + 0.125))
    track = {side.edge: side for side in form_sides(racetrack(96 * IN, 32 * IN), BOARD, STRIP)}
    assert track["left end"].length_m / IN == pytest.approx(math.pi * 32.125 / 2)
    assert track["front"].length_m / IN == pytest.approx(64)


def test_round_corners_are_filled_inside_square_boards():
    assert lengths(rectangle(60 * IN, 15 * IN, IN)) == lengths(rectangle(60 * IN, 15 * IN))
    assert all("filled to the radius" in side.note for side in form_sides(rectangle(1.5, 0.4, 0.02), BOARD, STRIP))


def test_a_notch_smaller_than_the_board_is_made_with_a_block():
    sides = {side.edge: side for side in form_sides(l_shape(1.5, 1.5, 0.010, 0.012), BOARD, STRIP)}
    assert "block" in sides["inner right"].note
    assert all(side.length_m > 0 for side in sides.values())


def test_the_cut_list_of_a_bench_top():
    form = form_of(rectangle(60 * IN, 15 * IN), cutouts=[Cutout(place(circle(2 * IN), (30 * IN, 7 * IN)), name="pole")])
    rows = [
        (row.name, row.count, *(round(x / IN, 4) for x in (row.length_m, row.width_m, row.thickness_m)))
        for row in form.rows
    ]
    assert rows == [
        ("side: front, back", 2, 60.0, 2.25, 0.75),
        ("side: right, left", 2, 16.5, 2.25, 0.75),
        ("base board", 1, 60.0, 15.0, 0.75),
        ("knock-out pole", 1, 2.0, 2.0, 1.5),
    ]
    assert "wider all round at the top" in form.rows[-1].note and "wrapped" in form.rows[-1].note


def test_a_base_board_under_standing_sides_reaches_beyond_them():
    base = [row for row in form_of(rectangle(1.5, 0.4), sides_lap_base=False).rows if row.name == "base board"]
    assert base[0].length_m == pytest.approx(1.5 + 2 * (BOARD + 2 * IN))
    assert base[0].width_m == pytest.approx(0.4 + 2 * (BOARD + 2 * IN))


def test_caulk_runs_round_the_bottom_up_the_corners_and_round_knock_outs():
    hole = Cutout(place(rectangle(30 * IN, 16 * IN), (48 * IN, 12 * IN)))
    form = form_of(rectangle(96 * IN, 25.5 * IN), cutouts=[hole])
    assert form.caulk_length_m / IN == pytest.approx(2 * (96 + 25.5) + 4 * 1.5 + 92)
    disc = form_of(circle(48 * IN))
    assert disc.caulk_length_m / IN == pytest.approx(math.pi * 48 + 1.5)  # one joint of the strip
    drop = form_of(rectangle(60 * IN, 15 * IN), drop=DropEdge("front", 3 * IN, 2 * IN))
    assert drop.caulk_length_m / IN == pytest.approx(150 + 4 * 3 + 60, rel=1e-6)


def test_screws_are_never_farther_apart_than_asked():
    sides = form_sides(rectangle(60 * IN, 15 * IN), BOARD, STRIP)
    for spacing in (4 * IN, 8 * IN, 1.0):
        count = form_of(rectangle(60 * IN, 15 * IN), screw_spacing_m=spacing).screw_count - 4 * 2
        assert count == sum(max(2, math.ceil(round(side.length_m / spacing, 9)) + 1) for side in sides)


def test_a_dropped_edge_raises_all_sides_and_needs_filler_boards():
    drops = [DropEdge("front", 3 * IN, 2 * IN), DropEdge("left", 2.5 * IN, 3 * IN)]
    form = form_of(rectangle(60 * IN, 15 * IN), drop=drops)
    assert form.side_height_m / IN == pytest.approx(3.75) and form.depth_m / IN == pytest.approx(3)
    fillers = [row for row in form.rows if row.name == "filler board"]
    assert [round(row.thickness_m / IN, 6) for row in fillers] == [0.5, 1.0]
    assert sum(row.thickness_m for row in fillers) / IN == pytest.approx(3 - 1.5)
    assert '2" (50.8 mm) clear of the front side' in fillers[0].note and "left" not in fillers[0].note
    assert '3" (76.2 mm) clear of the left side' in fillers[1].note
    # by hand: 15 - 2 in deep below the front return; 60 - 3 in long where the left one is clear too; less a strip each
    sawn = [(round(row.length_m / IN, 3), round(row.width_m / IN, 3)) for row in fillers]
    assert sawn == [(60.0, 12.875), (56.875, 12.875)]
    assert fillers[0].note.startswith('1/2" (12.7 mm) thick') and fillers[1].note.startswith('1" (25.4 mm) thick')


def test_a_knock_out_says_what_its_two_sizes_do_not():
    shapes = {
        "round": circle(2 * IN),
        "both ends round": racetrack(16 * IN, 12 * IN),
        'corners rounded to 1" (25.4 mm)': rectangle(16 * IN, 12 * IN, IN),
        "size at the bottom": rectangle(16 * IN, 12 * IN),
        "cut to its outline": polygon([(0, 0), (10 * IN, 0), (5 * IN, 8 * IN)]),
    }
    for words, shape in shapes.items():
        hole = Cutout(place(shape, (30 * IN, 10 * IN)), name="hole")
        row = form_of(rectangle(60 * IN, 20 * IN), cutouts=[hole]).rows[-1]
        assert row.note.startswith(words), (words, row.note)


@pytest.mark.parametrize(("depth_in", "psf", "lb_ft"), [(1.5, 18.75, 1.17), (18, 225, 168.8), (36, 450, 675)])
def test_the_fresh_mix_pushes_like_a_liquid(depth_in, psf, lb_ft):
    # M.K. Hurd on ACI 347: full liquid head
    form = form_of(rectangle(60 * IN, 60 * IN), depth_in, density_kg_m3=150 * PCF)
    assert form.pressure_pa / PSF == pytest.approx(psf, abs=0.01)
    assert form.push_kg_m / LB * 0.3048 == pytest.approx(lb_ft, abs=0.0501)  # 168.75 is printed 168.8


def test_mass_on_the_table():
    sheet = form_of(rectangle(8 * 12 * IN, 4 * 12 * IN), density_kg_m3=150 * PCF)
    assert sheet.mass_kg / LB == pytest.approx(600)  # 4 x 8 ft x 1-1/2 in at 150 lb/ft3
    track = form_of(racetrack(96 * IN, 32 * IN), 2, density_kg_m3=150 * PCF)
    assert track.mass_kg / LB == pytest.approx(495, abs=0.5)
    assert mass_on_table_kg(np.array([0.1, 0.2]), 2400.0) == pytest.approx([240, 480])
    assert convert(sheet.mass_kg, "kg", "lb") == pytest.approx(600)


def test_the_lighter_face_weighs_on_the_table_and_the_heavier_base_pushes_on_the_sides():
    """Bench of 5 ft x 15 in x 1 1/2 in, 22.124 L: 4.445 L of mortar at 2120.2 and 17.678 L of base at 2326.0 kg/m3."""
    plan = demo_plan("garden_bench_top")
    assert plan.form.mass_kg == pytest.approx(4.4453e-3 * 2120.2 + 17.6784e-3 * 2326.0, abs=0.01)
    assert plan.form.mass_kg == pytest.approx(plan.handling.lift.mass_kg, rel=1e-9)
    assert plan.form.pressure_pa == pytest.approx(2326.0 * 9.80665 * 0.0381, rel=1e-4)


@pytest.mark.parametrize(
    ("outline", "drop"),
    [
        (rectangle(1.5, 0.4), DropEdge("front", 0.08, 0.05)),
        (l_shape(1.5, 1.2, 0.7, 0.5), ()),
        (circle(0.6), ()),
        (racetrack(1.5, 0.6), DropEdge("back", 0.09, 0.04)),
        (polygon([(0, 0), (2, 0), (2, 1), (1, 0.5), (0, 1)]), ()),
    ],
)
def test_every_line_of_the_working_gives_its_value_again(outline, drop):
    form = form_of(outline, drop=drop, cutouts=[Cutout(place(circle(0.04), (0.3, 0.3)))])
    assert check_working(form.working) == len(form.working)
    assert find(form.working, "caulk_length_m").value == form.caulk_length_m
    assert find(form.working, "form_pressure_pa").value == form.pressure_pa
    assert find(form.working, "mass_on_table_kg").value == form.mass_kg
    assert len({step.name for step in form.working}) == len(form.working)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: form_of(rectangle(1, 1), base_board_m=0), "base board: 0 m given; it must be more than 0 m"),
        (lambda: form_of(rectangle(1, 1), side_board_m=-1), "side board: -1 m given"),
        (lambda: form_of(rectangle(1, 1), screw_spacing_m=0), "screw spacing: 0 m given"),
        (lambda: form_of(rectangle(1, 1), density_kg_m3=0), "density: 0 kg/m3 given"),
        (
            lambda: slab_thickness_m(0.019, 0.019),
            "side height: 0.019 m given; it must be more than the base board",
        ),
        (lambda: slab_thickness_m(np.array([0.05, 0.01]), 0.019), "side height: 0.01 m given"),
        (lambda: side_height_m(0), "thickness: 0 m given"),
        (lambda: mass_on_table_kg(-1), "volume: -1 m3 given"),
    ],
)
def test_impossible_forms_are_refused_in_words(call, message):
    with pytest.raises(ValueError, match=message):
        call()
