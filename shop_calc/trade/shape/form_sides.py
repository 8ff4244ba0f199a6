"""Sides of a form: how long each board is cut, and which one laps the other at a corner."""

import math
from dataclasses import dataclass

from shop_calc.trade.working import Step

SQUARE_DEG = 0.5  # judgement: a corner this near to square is lapped, not mitred
_PRACTICE = ("practice", "common practice, no source")


@dataclass(frozen=True)
class Side:
    """One side of a form.

    Parameters
    ----------
    edge : str
        The edge it forms [-].
    length_m : float
        Cut length; with mitred ends, over the longer face [m].
    flexible : bool
        True for a strip that is bent round [-].
    note : str
        How its ends are cut [-].
    working : Step
        How the length came about [-].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> round(form_sides(rectangle(1.52400, 0.38100), 0.019050, 0.003175)[1].length_m, 6)
    0.4191

    References
    ----------
    Common practice, no source.
    """

    edge: str
    length_m: float
    flexible: bool
    note: str
    working: Step


def _board_lengths(outline):
    """Length of the board behind each edge; None where it is round."""
    if outline.shape == "rectangle":  # with round corners too: the corners of its form are filled
        sizes = dict(outline.sizes)
        return [sizes["L"], sizes["W"]] * 2
    return [edge.length_m if edge.straight else None for edge in outline.edges]


def _angle_deg(outline, i):
    """Inside angle of the form at the end of edge i."""
    if outline.shape == "rectangle":
        return 90.0
    first, second = outline.edges[i], outline.edges[(i + 1) % len(outline.edges)]
    (ax, ay), (bx, by) = first.coords
    (cx, cy), (dx, dy) = second.coords
    cross = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    dot = (bx - ax) * (dx - cx) + (by - ay) * (dy - cy)
    return 180.0 - math.degrees(math.atan2(cross, dot))


def _end_cuts(outline, lengths):
    """What each board gets at each end: board thicknesses, how, and past which edge; and the edges at inner corners."""
    count = len(lengths)
    in_notch = set()
    ends = [[(0.0, "", ""), (0.0, "", "")] for _ in range(count)]  # start and end of each board
    for i in range(count):
        k = (i + 1) % count
        if count == 1 or lengths[i] is None or lengths[k] is None:
            continue
        angle = _angle_deg(outline, i)
        if angle > 180.0 + SQUARE_DEG:
            in_notch |= {outline.edges[i].name, outline.edges[k].name}
        shorter_first = lengths[i] <= lengths[k]
        short, long = ((i, 1), (k, 0)) if shorter_first else ((k, 0), (i, 1))
        if abs(angle - 90.0) < SQUARE_DEG:
            ends[short[0]][short[1]] = (1.0, "runs past", outline.edges[long[0]].name)
        elif abs(angle - 270.0) < SQUARE_DEG:
            ends[long[0]][long[1]] = (-1.0, "stops one board short at", outline.edges[short[0]].name)
        elif abs(angle - 180.0) >= SQUARE_DEG:
            share = 1.0 / math.tan(math.radians(angle) / 2)
            for (board, end), other in ((short, long), (long, short)):
                how = f"is mitred to {angle / 2:.1f} degrees at"
                ends[board][end] = (share, how, outline.edges[other[0]].name)
    return ends, in_notch


def _end_words(outline, cuts):
    """How the two ends of a board are cut, in one phrase."""
    places = [edge.name for edge in outline.edges]
    cut = sorted(((how, at) for _, how, at in cuts if how), key=lambda end: places.index(end[1]))
    if len(cut) == 2 and cut[0][0] == cut[1][0]:
        how = cut[0][0].replace("runs", "run").replace("stops", "stop").replace("is mitred", "are mitred")
        how = how.removesuffix(" at")
        return f"both ends {how}: {cut[0][1]} and {cut[1][1]}"
    return ", ".join(f"{start} end {how} {at}" for start, (how, at) in zip(("one", "the other"), cut, strict=False))


def _bent_side(edge, strip_m):
    turn = (edge.length_m, "m")
    sweep = math.pi * (2.0 if edge.name == "rim" else 1.0)
    length = edge.length_m + sweep * strip_m / 2
    inputs = (("E", *turn), ("q", sweep, "-"), ("s", strip_m, "m"))
    formula = "E + q * s / 2"
    words = f"cut length of the bent strip at {edge.name}: measured along the middle of its thickness"
    name = f"{edge.name.replace(' ', '_')}_strip_length_m"
    note = "bent round blocks or ribs every few inches; ends butted and taped, not lapped"
    step = Step(name, "L_s", formula, inputs, length, "m", "derived", "geometry", words)
    return Side(edge.name, length, True, note, step)


def form_sides(outline, board_m, strip_m):
    """Cut lengths of the sides round an outline.

    Not the heights: all sides of a form are equally high.

    Parameters
    ----------
    outline : Outline
        Outer outline of the piece [m].
    board_m : float
        Thickness of the side boards [m].
    strip_m : float
        Thickness of the strip bent round curves [m].

    Returns
    -------
    tuple of Side
        One for each edge, in order [-].

    Notes
    -----
    At a square outer corner the shorter side runs past the end of the longer one: it comes off first, and a
    side that is held between two others cannot slide. At a square inner corner both boards stand in the
    notch: the shorter runs through and the longer stops one board short. Of two equal sides the first in
    order counts as the shorter, so that on a square each board is held at one end only. Other corners are
    mitred at half the inside angle. A bent strip is measured along the middle of its thickness.

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> [round(side.length_m, 4) for side in form_sides(rectangle(1.5240, 0.3810), 0.019050, 0.003175)]
    [1.524, 0.4191, 1.524, 0.4191]

    References
    ----------
    Common practice, no source.
    """
    lengths = _board_lengths(outline)
    ends, in_notch = _end_cuts(outline, lengths)
    sides = []
    for edge, inner, cuts in zip(outline.edges, lengths, ends, strict=True):
        if inner is None:
            sides.append(_bent_side(edge, strip_m))
            continue
        extra = cuts[0][0] + cuts[1][0]
        notes = [words for words in (_end_words(outline, cuts),) if words]
        if inner < board_m and edge.name in in_notch:  # no room for two boards in the notch
            extra, notes = 0.0, ["too short for a board: a block the size of the notch"]
        length = inner + extra * board_m
        if outline.shape == "rectangle" and "r" in dict(outline.sizes):
            notes.append("corners of the form filled to the radius")
        inputs = (("E", inner, "m"), ("k", extra, "-"), ("b", board_m, "m"))
        words = f"cut length of the {edge.name} side: k board thicknesses more than its edge"
        name = f"{edge.name.replace(' ', '_')}_side_length_m"
        step = Step(name, "L_s", "E + k * b", inputs, length, "m", *_PRACTICE, words)
        sides.append(Side(edge.name, length, False, "; ".join(notes), step))
    return tuple(sides)
