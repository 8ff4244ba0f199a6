"""What is worth saying about dropped edges: room for the filler board, what holds it fast, filling, drying, bow."""

import itertools

import numpy as np
import shapely
from shapely.geometry.polygon import orient

from shop_calc.trade.advice import Advice
from shop_calc.trade.shape.clear_width import clear_width_m
from shop_calc.trade.shape.drop_words import listed
from shop_calc.trade.shape.drops import faces, thin_part
from shop_calc.units import show

LEAST_BOARD_M = 0.0508  # judgement: 2 in; a narrower filler board breaks at the saw and holds fast between its returns
DRIES_LATER_RATIO = 1.25  # judgement: less is not worth a word


def drop_advice(piece):
    """Say what is worth saying about the dropped edges of a piece.

    Parameters
    ----------
    piece : Piece
        A checked piece [m].

    Returns
    -------
    tuple of Advice
        Nothing without a dropped edge [-].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.piece import DropEdge, build_piece
    >>> ends = [DropEdge(name, 0.0762, 0.0508) for name in ("left", "right")]
    >>> [line.level for line in drop_advice(build_piece(rectangle(1.524, 0.381), 0.0381, True, drop=ends))]
    ['act', 'note', 'note', 'note']

    References
    ----------
    Marks and sources stand in each Advice.
    """
    if not piece.drop:
        return ()
    return (*_narrow_board(piece), *_held_fast(piece), *_filling(piece), *_drying(piece), _bow())


def _narrow_board(piece):
    narrow = filler_width_m(piece)
    if narrow < LEAST_BOARD_M * (1 - 1e-9):
        yield Advice(
            "act", "form", "Make the returns narrower, or that part of the piece as thick as they are deep: there is hardly a "
            "filler board between them.",
            f"At its narrowest it is {show(narrow, 'length')} wide, faces and all; less than "
            f"{show(LEAST_BOARD_M, 'length')} breaks at the saw and holds fast.", "judgement", "ours",
        )  # fmt: skip


def filler_width_m(piece):
    """Width of the thin part of a piece with dropped edges where it is narrowest.

    Parameters
    ----------
    piece : Piece
        A checked piece [m].

    Returns
    -------
    float
        Width, faces of the returns included; of a racetrack between its straight edges [m].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.piece import DropEdge, build_piece
    >>> top = build_piece(rectangle(1.5, 0.6), 0.04, True, drop=[DropEdge("front", 0.1, 0.2), DropEdge("back", 0.1, 0.3)])
    >>> round(filler_width_m(top), 6)
    0.1

    References
    ----------
    Derived: geometry; what counts as a strip is judgement, see `clear_width_m`.
    """
    outline = piece.outline
    if not all(edge.straight for edge in outline.edges):
        return outline.narrowest_m - sum(drop.width_m for drop in piece.drop)
    thin = thin_part(outline, piece.drop_regions)
    widths = []
    for part in shapely.get_parts(thin):
        ring = shapely.get_coordinates(orient(part.simplify(1e-9)).exterior)[:-1]
        widths.append(clear_width_m(np.array(ring), part) if len(ring) > 3 else 0.0)
    return min(widths)


def _held_fast(piece):
    edges = [piece.outline.edge(drop.edge) for drop in piece.drop]
    pairs = [(one.name, two.name) for one, two in itertools.combinations(edges, 2) if faces(one, two)]
    # of an L or a U, what faces through air holds no board
    held = [pair for pair in pairs if _board_between(piece, *pair)]
    if held:
        words = "; ".join(listed(pair) for pair in held)
        yield Advice(
            "act", "form", "Put soft foam of 1/8 in behind the faces of the returns that look at each other, and take the "
            "filler board out as soon as the piece may be lifted.",
            f"Between {words} the board is shut in: the piece shrinks on to it, and cracks at the inner corner of a return, or "
            "holds it fast.", "practice", "common practice, no source",
        )  # fmt: skip


def _board_between(piece, one, two):
    """Whether the two inner sides look at each other through the thin part."""
    middles = [np.mean(piece.outline.edge(name).coords, axis=0) for name in (one, two)]
    return bool(piece.outline.polygon.covers(shapely.linestrings(middles)))


def _filling(piece):
    hangs = show(piece.depth_m - piece.thickness_m, "length")
    yield Advice(
        "note", "base", "Fill the dropped edges first, up to the filler board, and work the base down with a blade; then the "
        "rest. The face follows down their outside to the bottom.",
        f"They hang {hangs} deeper than the rest; air stays under what is thrown in over them.", "practice",
        "common practice, no source",
    )  # fmt: skip


def _drying(piece):
    drop = max(piece.drop, key=lambda drop: min(drop.depth_m, drop.width_m))
    through = min(drop.depth_m, drop.width_m)
    ratio = (through / piece.thickness_m) ** 2
    if ratio > DRIES_LATER_RATIO:
        yield Advice(
            "note", "seal", "Judge whether it is dry at the dropped edge: tape the sheet over it, and seal when it has dried.",
            f"Drying time grows with the square of the way out: {show(through, 'length')} there against "
            f"{show(piece.thickness_m, 'length')} makes about {ratio:.1f} times as long. Day and first night are reckoned for "
            "the thickness of the rest.", "derived", "diffusion; both dry from their two faces",
        )  # fmt: skip


def _bow():
    return Advice(
        "note", "bow", "Take the bow as rough where an edge drops: it is reckoned for a plate without one.",
        "Along itself a dropped edge is stiffer than the plate, and it dries later; across it the plate is free to bow.",
        "judgement", "ours",
    )  # fmt: skip
