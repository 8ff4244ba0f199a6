"""What is worth saying about a piece before its form is built."""

import math

from shapely.geometry import LineString

from shop_calc.science.checks import require
from shop_calc.trade.advice import Advice
from shop_calc.trade.shape.bands import inside_out
from shop_calc.trade.shape.drop_advice import drop_advice
from shop_calc.trade.shape.strips import strips_beside_cutouts
from shop_calc.units import convert, show

STONE_PER_DEPTH = 1 / 3  # read: ACI 318-19 26.4.2.1
STONE_PER_WIDTH = 1 / 5  # read: ACI 318-19 26.4.2.1
RAIL_WIDTH_M = 0.1016  # judgement: 4 in
RAIL_THICKNESSES = 3.0  # judgement: a strip less than three thicknesses wide breaks easily
FACE_RANGE_M = (0.003175, 0.0127)  # practice: 1/8 to 1/2 in
SHARP_TURN_DEG = 30.0  # judgement: flatter inner corners do not start cracks
TIP_DEG = 60.0  # judgement: sharper outer corners chip
_ACI = "ACI 318-19 26.4.2.1"
_OURS = "our judgement"
_NONE = "common practice, no source"


def _long(value_m):
    return show(value_m, "length")


def _most(value_m):
    """A limit: rounded down on the tape and in millimetres, so that what is printed may be used."""
    us, si = (math.floor(convert(value_m, "m", unit) / step + 1e-6) * convert(step, unit, "m")
              for unit, step in (("in", 1 / 16), ("mm", 0.1)))  # fmt: skip
    return f"{show(us, 'length', 'us')} ({show(si, 'length', 'si')})"


def _stone_advice(layers, stone_m):
    rules = (
        (layers.base_depth_m, STONE_PER_DEPTH, "a third of the depth of the base",
         "Use smaller stone, or make the piece thicker."),
        (layers.form_width_m, STONE_PER_WIDTH, "a fifth of the narrowest width between form sides",
         "Use smaller stone: it jams in the narrowest strip."),
    )  # fmt: skip
    for size, share, what, text in rules:
        if stone_m > size * share * (1 + 1e-9):
            reason = (
                f"The largest stone, {_long(stone_m)}, is more than {what}, {_long(size)}: at most "
                f"{_most(size * share)}."
            )
            yield Advice("act", "mix", text, reason, "read", _ACI)


def _turns(edges):
    """Turn at each corner between two edges, in degrees, left positive."""
    for first, second in zip(edges, (*edges[1:], edges[0]), strict=True):
        (ax, ay), (bx, by) = first.coords[-2:]
        (cx, cy), (dx, dy) = second.coords[:2]
        cross = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
        yield math.degrees(math.atan2(cross, (bx - ax) * (dx - cx) + (by - ay) * (dy - cy))), first, second


def _corner_advice(piece):
    places, tips = [], []
    for turn, first, second in _turns(piece.outline.edges):
        if turn < -SHARP_TURN_DEG:
            places.append(f"between {first.name} and {second.name}")
        elif turn > 180.0 - TIP_DEG:
            tips.append(f"between {first.name} and {second.name} ({180.0 - turn:.0f} degrees)")
    for cutout in piece.cutouts:
        count = sum(turn < -SHARP_TURN_DEG for turn, _, _ in _turns(inside_out(cutout.outline.edges)))
        if count:
            places.append(f"at {cutout.name} ({count})")
    if places:
        text = "Round the inside corners: 1/2 in radius or more, as large as the fitting allows."
        reason = (
            f"Sharp inside corners {', '.join(places)}: cracks start there, most of all when the piece is carried flat."
        )
        yield Advice("act", "form", text, reason, "practice", f"{_NONE}; the radius is our judgement")
    if tips:
        reason = f"Corner {', '.join(tips)}: it is all face there and chips when the sides come off."
        yield Advice("note", "form", "Blunt the sharp outer corners.", reason, "judgement", _OURS)


def section_left(piece, cutout):
    """Material left on the weaker straight cut through the middle of a cut-out.

    Parameters
    ----------
    piece : Piece
        A checked piece [-].
    cutout : Cutout
        One of its cut-outs [-].

    Returns
    -------
    tuple
        (material left, size of the piece there) [m].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import place, rectangle
    >>> from shop_calc.trade.shape.piece import Cutout, build_piece
    >>> sink = Cutout(place(rectangle(0.7493, 0.4445), (1.0668, 0.3302)), name="sink")
    >>> piece = build_piece(rectangle(2.1336, 0.6604), 0.0635, cutouts=[sink])
    >>> [round(size, 5) for size in section_left(piece, piece.cutouts[0])]
    [0.2159, 0.6604]

    References
    ----------
    Derived: geometry.
    """
    left, front, right, back = cutout.outline.polygon.bounds
    x, y = (left + right) / 2, (front + back) / 2
    west, south, east, north = piece.outline.polygon.bounds
    cuts = LineString([(x, south - 1.0), (x, north + 1.0)]), LineString([(west - 1.0, y), (east + 1.0, y)])
    sizes = [(cut.intersection(piece.plan).length, cut.intersection(piece.outline.polygon).length) for cut in cuts]
    return min(sizes)


def _rail_advice(piece):
    limit = max(RAIL_WIDTH_M, RAIL_THICKNESSES * piece.thickness_m)
    strips = strips_beside_cutouts(piece)
    for cutout in piece.cutouts:
        # A strip shorter than it is wide is a bridge beside a small hole, not a rail.
        rails = [s for s in strips if s.cutout == cutout.name and s.width_m < limit and s.length_m >= s.width_m]
        if not rails:
            continue
        left, across = section_left(piece, cutout)
        widths = ", ".join(f"{_long(rail.width_m)} to the {rail.beside}" for rail in rails)
        text = (
            f"The strips beside {cutout.name} are narrow: tie splints along them before the piece is moved, "
            "never hang it by the strips. On edge: two people or more, in a frame, never left leaning, for a slab on "
            "edge falls."
        )
        reason = (
            f"Left beside {cutout.name}: {widths}. A cut through its middle leaves {_long(left)} of "
            f"{_long(across)}. Care from less than {_long(limit)}: 4 in or three thicknesses, the larger."
        )
        yield Advice("act", "piece", text, reason, "judgement", _OURS)


def piece_advice(piece, layers, largest_stone_m=None):
    """Say what is worth saying about a piece and its layers.

    Not a check of strength: that is in handling.

    Parameters
    ----------
    piece : Piece
        A checked piece [-].
    layers : Layers
        Its layers [-].
    largest_stone_m : float or None
        Largest particle of the base; None while it is not known [m].

    Returns
    -------
    tuple of Advice
        In the order of the job [-].

    Raises
    ------
    ValueError
        When the stone size is not positive.

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.layers import split_layers
    >>> from shop_calc.trade.shape.piece import build_piece
    >>> top = build_piece(rectangle(1.524, 0.381), 0.0381, True)
    >>> [advice.where for advice in piece_advice(top, split_layers(top, 0.00635), 0.019050)]
    ['mix']

    References
    ----------
    ACI 318-19 26.4.2.1 for the stone; the rest common practice or our judgement, as marked.
    """
    found = []
    low, high = FACE_RANGE_M
    if not low * (1 - 1e-9) <= layers.face_thickness_m <= high * (1 + 1e-9):
        if layers.face_thickness_m < low:
            reason = "A thinner face is hard to keep whole under the trowel, and the base shows through."
        else:
            reason = "A thicker face is all fine mortar: it shrinks and curls more, and costs more."
        text = f"Keep the face between {_long(low)} and {_long(high)}; it is {_long(layers.face_thickness_m)}."
        found.append(Advice("act", "piece", text, reason))
    found += _rail_advice(piece)
    found += _corner_advice(piece)
    found += drop_advice(piece)
    if largest_stone_m is not None:
        stone = float(require("largest stone", largest_stone_m, 0, unit="m", low_open=True))
        found += _stone_advice(layers, stone)
    return tuple(found)
