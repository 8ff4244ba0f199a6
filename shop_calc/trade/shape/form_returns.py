"""What carries the thin part of a piece with dropped edges: filler boards, and the faces that close the returns."""

import math
from dataclasses import dataclass

import numpy as np
import shapely
from shapely.geometry import LineString, Point
from shapely.geometry.polygon import orient

from shop_calc.trade.shape.drop_words import listed
from shop_calc.trade.shape.drops import drop_regions, thin_part
from shop_calc.trade.shape.form_parts import CutRow
from shop_calc.trade.shape.plan_parts import TOUCH_M
from shop_calc.units import show

_CRUMB_M2 = 1e-8  # smaller parts of a plan are rounding, not board
_STRAIGHT_RAD = 1e-6  # less is rounding
_PLAIN_SHARE = 1.0 - 1e-6  # a board that fills its box is a rectangle


@dataclass(frozen=True)
class ReturnFace:
    """A strip on the edge of a filler board, against which the inside of a return is cast.

    Parameters
    ----------
    edge : str
        The edge behind which it stands, or that edge and "end" where a return ends under the piece [-].
    height_m : float
        Its height, the thickness of its filler board [m].
    along_mix_m : float
        Its length on the side of the mix [m].
    length_m : float
        Cut length, over the longer face [m].
    note : str
        How its ends are cut [-].

    Examples
    --------
    >>> ReturnFace("front", 0.0381, 1.524, 1.524, "").edge
    'front'

    References
    ----------
    Common practice, no source.
    """

    edge: str
    height_m: float
    along_mix_m: float
    length_m: float
    note: str


def _levels(piece, strip_m):
    """Filler boards, lowest first: the drops beside it, its thickness, its plan with and without its faces."""
    deep = [drops[0].depth_m for drops, _ in piece.drop_regions] + [piece.thickness_m]
    beside, less = [], drop_regions(piece.outline, piece.drop, strip_m)
    for i, (drops, _) in enumerate(piece.drop_regions):
        beside += drops
        if deep[i] > deep[i + 1]:
            whole, sawn = (thin_part(piece.outline, regions[: i + 1]) for regions in (piece.drop_regions, less))
            yield tuple(beside), deep[i] - deep[i + 1], _parts(whole), _parts(sawn)


def _parts(shape):
    return [part for part in shapely.get_parts(shape) if part.geom_type == "Polygon" and part.area > _CRUMB_M2]


def return_faces(piece, strip_m):
    """Cut lengths of the strips that close the returns of a piece with dropped edges.

    Not their number of nails: they are glued and pinned to the edge of the filler board.

    Parameters
    ----------
    piece : Piece
        A checked piece [m].
    strip_m : float
        Thickness of the strips [m].

    Returns
    -------
    tuple of ReturnFace
        Lowest filler board first; none without a dropped edge [m].

    Notes
    -----
    Where two returns meet, their faces are mitred at half the angle, so that no end grain meets the mix. Round an
    outer corner of the piece the side of the mix is the longer one; in an inside corner of the piece the side of the
    board is. Where a face meets a side of the form it is cut to butt against it.

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.piece import DropEdge, build_piece
    >>> ends = [DropEdge(name, 0.08, 0.05) for name in ("front", "left")]
    >>> top = build_piece(rectangle(1.50000, 0.60000), 0.04, True, drop=ends)
    >>> [(face.edge, round(face.length_m, 6)) for face in return_faces(top, 0.003)]
    [('left', 0.55), ('front', 1.45)]

    References
    ----------
    Derived: geometry; common practice, no source, for the mitre.
    """
    found = []
    for drops, height, wholes, _ in _levels(piece, strip_m):
        for part in wholes:
            found += _faces_of(part, drops, piece.outline, height, strip_m)
    return tuple(found)


def _faces_of(part, drops, outline, height_m, strip_m):
    ring, names = _named_ring(part, drops, outline)
    for i, name in enumerate(names):
        if name is None:
            continue
        length = math.dist(ring[i], ring[(i + 1) % len(ring)])
        extra, cuts = 0.0, []
        for corner, other in ((i, i - 1), ((i + 1) % len(ring), (i + 1) % len(ring))):
            if names[other] is None:
                continue
            turn = _turn(ring, corner)
            extra += max(-math.tan(turn / 2), 0.0) * strip_m
            cuts.append((f"{90.0 - abs(math.degrees(turn)) / 2:.1f} degrees", names[other]))
        yield ReturnFace(name, height_m, length, length + extra, _end_words(cuts))


def _named_ring(part, drops, outline):
    """Corners of a filler board, and behind which drop each of its edges stands; None at a side of the form."""
    part = shapely.remove_repeated_points(orient(part), TOUCH_M)  # shorter is rounding
    ring, rim = shapely.get_coordinates(part.exterior)[:-1], outline.polygon.exterior
    pairs = zip(ring, np.roll(ring, -1, axis=0), strict=True)
    names = [None if rim.distance(Point((a + b) / 2)) < TOUCH_M else _name_of(a, b, drops, outline) for a, b in pairs]
    # a corner in the middle of a straight face is none of it
    kept = [i for i in range(len(ring)) if names[i] != names[i - 1] or abs(_turn(ring, i)) > _STRAIGHT_RAD]
    return ring[kept], [names[i] for i in kept]


def _turn(ring, i):
    """Turn of the ring at its corner i, left positive."""
    (ax, ay), (bx, by) = ring[i] - ring[i - 1], ring[(i + 1) % len(ring)] - ring[i]
    return math.atan2(ax * by - ay * bx, ax * bx + ay * by)


def _end_words(cuts):
    if not cuts:
        return "cut square, between the sides"
    if len(cuts) == 2 and cuts[0][0] == cuts[1][0]:
        return f"both ends are mitred to {cuts[0][0]}: {cuts[0][1]} and {cuts[1][1]}"
    words = zip(("one", "the other"), cuts, strict=False)
    return ", ".join(f"{end} end is mitred to {angle} at {name}" for end, (angle, name) in words)


def _name_of(start, end, drops, outline):
    """The edge behind which a face stands."""
    middle, along = (start + end) / 2, (end - start) / math.dist(start, end)
    behind = []
    for drop in drops:
        edge = outline.edge(drop.edge)
        (ax, ay), (bx, by) = edge.coords
        off = ((bx - ax) * (middle[1] - ay) - (by - ay) * (middle[0] - ax)) / math.dist((ax, ay), (bx, by))
        askew = abs((bx - ax) * along[1] - (by - ay) * along[0]) / math.dist((ax, ay), (bx, by))
        far = LineString(edge.coords).distance(Point(middle))
        behind.append((askew > 1e-6 or abs(off - drop.width_m) > TOUCH_M, far, drop.edge))
    is_end, _, name = min(behind)
    return f"{name} end" if is_end else name


def filler_rows(piece, strip_m):
    """Cut list of what lies under the thin part of a piece with dropped edges.

    Not for other pieces: without a dropped edge the base board carries all of it, and the list is empty.

    Parameters
    ----------
    piece : Piece
        A checked piece [m].
    strip_m : float
        Thickness of the strips that close the returns [m].

    Returns
    -------
    tuple of CutRow
        Filler boards, lowest first, and the faces of the returns; sizes are those to saw [m].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.piece import DropEdge, build_piece
    >>> top = build_piece(rectangle(1.50000, 0.60000), 0.04, True, drop=DropEdge("front", 0.08, 0.05))
    >>> [(row.name, round(row.width_m, 6)) for row in filler_rows(top, 0.003)]
    [('filler board', 0.547), ('return face: front', 0.04)]

    References
    ----------
    Common practice, no source.
    """
    boards, faces = {}, {}
    for drops, thick, _, sawn in _levels(piece, strip_m):
        for part in sawn:
            left, front, right, back = part.bounds
            size = (round(right - left, 7), round(back - front, 7), round(thick, 9))
            plain = part.area > _PLAIN_SHARE * (right - left) * (back - front)
            row = (*size, _board_words(drops, thick, plain))
            boards[row] = boards.get(row, 0) + 1
    for face in return_faces(piece, strip_m):
        faces.setdefault((round(face.length_m, 7), round(face.height_m, 9), face.note), []).append(face.edge)
    return (
        *(CutRow("filler board", count, *size, note) for (*size, note), count in boards.items()),
        *(
            CutRow(f"return face: {', '.join(dict.fromkeys(names))}", len(names), length, height, strip_m,
                   f"on the edge of the filler board; {note}")
            for (length, height, note), names in faces.items()
        ),
    )  # fmt: skip


def _board_words(drops, thick_m, plain):
    widths = dict.fromkeys(drop.width_m for drop in drops)
    clear = []
    for width in widths:
        names = [drop.edge for drop in drops if drop.width_m == width]
        clear.append(f"{show(width, 'length')} clear of the {listed(names)} side{'s' if len(names) > 1 else ''}")
    shape = "" if plain else "the size round it, cut to shape; "
    return (
        f"{show(thick_m, 'length')} thick; {shape}{', '.join(clear)}, its faces included; elsewhere to the sides; coated on "
        "top, fixed to the board below"
    )
