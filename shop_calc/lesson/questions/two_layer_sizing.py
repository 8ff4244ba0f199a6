"""Lesson 01: volumes, layers, form sides, and sizes as people write them."""

from fractions import Fraction
from math import pi

from shop_calc import units
from shop_calc.lesson.moves.sizing_sums import (
    box_steps,
    counter_face_m3,
    counter_steps,
    lapped_side_m,
    racetrack_steps,
    ripped_steps,
    ripped_volume_m3,
    side_steps,
    sink_steps,
    sink_volume_m3,
    tops_by_face_share,
)
from shop_calc.lesson.question import Number, Question
from shop_calc.lesson.reasoning.lesson_sheets import TWO_LAYERS
from shop_calc.lesson.slips import by, inch_for_foot, left_out, times, with_number, word
from shop_calc.trade.shape.layers import rectangle_layers
from shop_calc.trade.shape.plain_volumes import racetrack_volume_m3, slab_volume_m3
from shop_calc.trade.working import Step

_INCH_M = 0.0254


def _in_m(feet, inches, quarters):
    return (12 * feet + inches + quarters / 4) * _INCH_M


def _written(feet, inches, quarters):
    """A size as somebody writes it on a napkin."""
    return f"{feet:g}'{inches:g}-{Fraction(int(quarters), 4)}\""


def _written_steps(feet, inches, quarters):
    size = _in_m(feet, inches, quarters)
    given = (("f", feet, "-"), ("i", inches, "-"), ("q", quarters, "-"), ("n", _INCH_M, "m"))
    return (Step("width_m", "W", "(12 * f + i + q / 4) * n", given, size, "m", "derived", "an inch is 25.4 mm",
                 "feet, inches and quarters, each an inch long"),)  # fmt: skip


QUESTIONS = (
    Question(
        "against_the_wall",
        "A counter {length_m} long, {width_m} wide and {thickness_m} thick stands with its back against a wall; the "
        "front and both ends show. Its face is {face_m}. How much of it is face?",
        counter_face_m3,
        "volume",
        "in3",
        numbers=(
            Number("length_m", "in", 72, 48, 96, 6),
            Number("width_m", "in", 22, 18, 26, 1),
            Number("thickness_m", "in", 2, 1.75, 2.5, 0.25),
            Number("face_m", "in", 0.25, 0.25, 0.375, 0.125),
            Number("ends", "-", 2, 2, 2),
        ),
        slips=(
            by(lambda length_m, width_m, thickness_m, face_m, ends: rectangle_layers(
                length_m, width_m, thickness_m, face_m).face_m3, "the wall faced too",
               "Who sees the edge at the wall? Nothing is spent on it."),
            by(lambda length_m, width_m, thickness_m, face_m, ends: length_m * width_m * face_m, "the top only",
               "That is the top. Does the face stop at the rim?"),
            by(lambda length_m, width_m, thickness_m, face_m, ends: face_m
               * (length_m * width_m + (length_m + ends * width_m) * thickness_m), "the rim counted twice",
               "The top and the edges meet along the rim, and the edges at the corners. What have you counted twice?"),
            left_out("ends", "The front is there. Walk on: what is round the corner, left and right?"),
            by(lambda length_m, width_m, thickness_m, face_m, ends:
               length_m * width_m * thickness_m - counter_face_m3(length_m, width_m, thickness_m, face_m, ends),
               "the base given", "That is the base. What is left of the whole?"),
        ),
        hints=(
            "Work out the whole, then the base, and take one from the other.",
            "The base is one face thickness shorter at each end, one narrower at the front, one lower at the top, "
            "and goes right to the wall.",
        ),
        working=counter_steps,
        tolerance=0.005,
    ),
    Question(
        "foot_or_inch",
        "A top is {length_m} by {width_m} and {thickness_m} thick. How many cubic feet is that?",
        slab_volume_m3,
        "volume",
        "ft3",
        numbers=(
            Number("length_m", "ft", 5, 4, 8, 1),
            Number("width_m", "ft", 2, 1.5, 3, 0.5),
            Number("thickness_m", "in", 1.5, 1.25, 2.5, 0.25),
        ),
        slips=(
            inch_for_foot(1, "Square feet times inches are neither cubic feet nor cubic inches. How many feet thick is it?"),
            times(144.0, "divided by 12 once",
                  "An inch is a twelfth of a foot along each of three sides. Did you divide only once?"),
            times(12.0**4, "multiplied by 12", "Is an inch more than a foot, or less?"),
        ),
        hints=("All three sizes in the same unit first.", "The thickness in feet is the inches over twelve."),
        working=box_steps,
    ),
    Question(
        "racetrack",
        "A table is {length_m} long over all, {width_m} wide and {thickness_m} thick; both its ends are half circles. "
        "How many cubic feet?",
        racetrack_volume_m3,
        "volume",
        "ft3",
        numbers=(
            Number("length_m", "in", 84, 72, 108, 6),
            Number("width_m", "in", 36, 28, 42, 2),
            Number("thickness_m", "in", 1.5, 1.5, 2.5, 0.25),
        ),
        slips=(
            by(lambda length_m, width_m, thickness_m: length_m * width_m * thickness_m, "a rectangle",
               "That is the rectangle round it. What is missing at its four corners?"),
            by(lambda length_m, width_m, thickness_m: (length_m * width_m + pi * width_m**2 / 4) * thickness_m,
               "the ends put on top of the length",
               "The length is over all: how long is the straight part between the ends?"),
            by(lambda length_m, width_m, thickness_m: ((length_m - width_m) * width_m + pi * width_m**2) * thickness_m,
               "radius for diameter", "The width is the diameter of the ends. Does a circle's area want the radius?"),
            by(lambda length_m, width_m, thickness_m:
               ((length_m - width_m) * width_m + pi * width_m**2 / 8) * thickness_m, "one end forgotten",
               "How many ends has a table? Two halves make a whole."),
        ),
        hints=(
            "Cut the plan in your mind: a rectangle and two half circles.",
            "The straight part is shorter than the table by one width; the half circles make one whole circle.",
        ),
        working=racetrack_steps,
    ),
    Question(
        "side_height",
        "The piece is to be {thickness_m} thick. The sides lap the edge of a base board {board_m} thick. How high are "
        "the sides ripped?",
        lapped_side_m,
        "length",
        "in",
        numbers=(Number("thickness_m", "in", 2, 1.5, 3, 0.25), Number("board_m", "in", 0.75, 0.5, 0.75, 0.25)),
        slips=(
            left_out("board_m", "That is the piece. What else does the side reach down along?"),
            with_number(lambda numbers: {"thickness_m": numbers["thickness_m"] - 2 * numbers["board_m"]},
                        "taken off instead of added", "Is the side higher than the piece, or lower? Draw the corner."),
            with_number(lambda numbers: {"thickness_m": numbers["thickness_m"] + numbers["board_m"]},
                        "the board counted twice", "How many boards does the side lap?"),
        ),
        hints=("Draw the corner: base board, piece on it, side outside both.", "The side covers both edges."),
        working=side_steps,
        tolerance=0.01,
    ),
    Question(
        "sink",
        "A counter {length_m} by {width_m}, {thickness_m} thick, with an opening for a sink, {sink_length_m} by "
        "{sink_width_m}. How many cubic feet, with nothing added for waste?",
        sink_volume_m3,
        "volume",
        "ft3",
        numbers=(
            Number("length_m", "in", 90, 72, 96, 6),
            Number("width_m", "in", 25, 24, 30, 1),
            Number("thickness_m", "in", 1.5, 1.5, 2.5, 0.5),
            Number("sink_length_m", "in", 30.5, 27.5, 31.5, 1),
            Number("sink_width_m", "in", 16.5, 15.5, 18.5, 1),
        ),
        slips=(
            left_out("sink_length_m", "That is the counter before the saw. What goes out with the knock-out?"),
            by(lambda length_m, width_m, thickness_m, sink_length_m, sink_width_m:
               length_m * width_m * thickness_m + sink_length_m * sink_width_m * thickness_m, "the opening added",
               "Does an opening need mix, or save it?"),
            by(lambda length_m, width_m, thickness_m, sink_length_m, sink_width_m:
               sink_length_m * sink_width_m * thickness_m, "the opening given", "That is what goes out. What stays?"),
        ),
        hints=("Two areas first, one taken from the other.", "What is left, times the thickness."),
        working=sink_steps,
    ),
    Question(
        "ripped_sides",
        "Somebody ripped the sides of a square form to {height_m}, and they lap a base board {board_m} thick. The form "
        "is {side_m} by {side_m} inside. How many cubic feet go into it?",
        ripped_volume_m3,
        "volume",
        "ft3",
        numbers=(
            Number("side_m", "in", 36, 24, 48, 6),
            Number("height_m", "in", 2.5, 2.25, 3, 0.25),
            Number("board_m", "in", 0.75, 0.5, 0.75, 0.25),
        ),
        slips=(
            left_out("board_m", "Part of that height stands beside the base board. How thick is the piece?"),
            with_number(lambda numbers: {"height_m": numbers["height_m"] + 2 * numbers["board_m"]},
                        "board added instead of taken off", "The side is higher than the piece; which way round now?"),
            inch_for_foot(1, "Feet times feet times inches? How many feet thick is it?"),
        ),
        hints=("How thick does the piece come out? Draw the corner.", "Height less base board, then side times side."),
        working=ripped_steps,
    ),
    Question(
        "as_written",
        "On a napkin somebody wrote this for a width. How many inches is that?",
        lambda **size: units.parse(_written(**size), "length"),
        "length",
        "in",
        numbers=(Number("feet", "-", 3, 2, 6), Number("inches", "-", 8, 1, 10), Number("quarters", "-", 3, 1, 3)),
        slips=(
            by(lambda feet, inches, quarters: _in_m(feet, inches, -quarters), "the dash taken for a minus",
               "The dash ties the fraction to the inches; nothing is taken away."),
            by(lambda feet, inches, quarters: _in_m(feet / 12, inches, quarters), "feet for inches",
               "The first mark is that of feet. How many inches has one?"),
            by(lambda feet, inches, quarters: _in_m(feet * 10 / 12, inches, quarters), "a foot of ten inches",
               "How many inches has a foot?"),
            by(lambda feet, inches, quarters: _in_m(feet / 12, 0, quarters), "the middle lost",
               "Read it aloud: feet, inches, quarters."),
        ),
        hints=("Read it aloud, with its units.", "Feet times twelve, then the inches, then the fraction."),
        tolerance=0.001,
        working=_written_steps,
        sheet=lambda **size: f"  {_written(**size)}",
    ),
    Question(
        "share_of_face",
        "All three are 1-1/2 in thick with a face of 1/4 in on the top and on all four edges. Put them in order by "
        "their share of face, the largest share first.",
        tops_by_face_share,
        "order",
        choices=("the bench top, 60 by 15 in", "a sheet, 96 by 48 in", "a tile, 12 by 12 in"),
        slips=(
            word(("a sheet, 96 by 48 in", "the bench top, 60 by 15 in", "a tile, 12 by 12 in"),
                 "That is the order by amount. Share means: out of each piece's own volume. Which piece has most edge "
                 "for its top?"),
            word(("the bench top, 60 by 15 in", "a tile, 12 by 12 in", "a sheet, 96 by 48 in"),
                 "The bench is long and narrow. But how much top has the tile for each inch of its edge?"),
        ),
        hints=(
            "The top takes the same share of each. What do the edges add?",
            "Divide the length of the edges by the area of the top.",
        ),
        reason="The top takes a sixth of each. The tile has most edge for its top, the sheet least.",
    ),
    TWO_LAYERS,
)  # fmt: skip
