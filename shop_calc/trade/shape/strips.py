"""Strips of material: the narrowest of the piece, and those left beside cut-outs."""

import math
from dataclasses import dataclass

import numpy as np
import shapely

from shop_calc.science.checks import require


@dataclass(frozen=True)
class Strip:
    """Material left between a cut-out and an edge, or between two cut-outs.

    Parameters
    ----------
    cutout : str
        Name of the cut-out [-].
    beside : str
        The outer edge or the other cut-out [-].
    width_m : float
        Its least width [m].
    length_m : float
        How far it runs along the cut-out [m].

    Examples
    --------
    >>> Strip("sink", "front edge", 0.10795, 0.7493).where
    'between sink and front edge'

    References
    ----------
    Derived: geometry.
    """

    cutout: str
    beside: str
    width_m: float
    length_m: float

    @property
    def where(self):
        """Where the strip is, in words."""
        return f"between {self.cutout} and {self.beside}"


def _run_along(edge, hole):
    """Length of a cut-out as seen from an edge."""
    if not edge.straight:
        return max(hole.bounds[2] - hole.bounds[0], hole.bounds[3] - hole.bounds[1])
    (ax, ay), (bx, by) = edge.coords
    size = math.hypot(bx - ax, by - ay)
    shares = shapely.get_coordinates(hole) @ np.array([(bx - ax) / size, (by - ay) / size])
    return float(np.ptp(shares))


def strips_beside_cutouts(piece):
    """List the strips between each cut-out and the outer edges, and between cut-outs.

    Not the strips of the outline itself.

    Parameters
    ----------
    piece : Piece
        A checked piece [-].

    Returns
    -------
    tuple of Strip
        One for each edge that a straight line through material alone reaches from the cut-out; narrowest
        first [m].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import place, rectangle
    >>> from shop_calc.trade.shape.piece import Cutout, build_piece
    >>> sink = Cutout(place(rectangle(0.7493, 0.4445), (1.0668, 0.3302)), name="sink")
    >>> piece = build_piece(rectangle(2.1336, 0.6604), 0.0635, cutouts=[sink])
    >>> [(strip.beside, round(strip.width_m, 5)) for strip in strips_beside_cutouts(piece)[:2]]
    [('front edge', 0.10795), ('back edge', 0.10795)]

    References
    ----------
    Derived: geometry.
    """
    found = []
    plan = piece.plan
    for i, cutout in enumerate(piece.cutouts):
        hole = cutout.outline.polygon
        targets = [(f"{edge.name} edge" if edge.name != "rim" else "rim", shapely.linestrings(edge.coords),
                    _run_along(edge, hole)) for edge in piece.outline.edges]  # fmt: skip
        for other in piece.cutouts[i + 1 :]:
            box = other.outline.box_m
            run = min(max(cutout.outline.box_m), max(box))
            targets.append((other.name, other.outline.polygon.exterior, run))
        for beside, line, run in targets:
            start, end = shapely.get_coordinates(shapely.shortest_line(hole.exterior, line))
            # Drawn in by a millionth, so that ends rounded to just outside the material do not matter.
            if plan.covers(shapely.linestrings([start + 1e-6 * (end - start), end + 1e-6 * (start - end)])):
                found.append(Strip(cutout.name, beside, math.dist(start, end), run))
    return tuple(sorted(found, key=lambda strip: strip.width_m))


def narrowest_strip(piece):
    """Width of the narrowest strip of the piece, and where it is.

    Parameters
    ----------
    piece : Piece
        A checked piece [-].

    Returns
    -------
    tuple
        (width, words for where) [m].

    Notes
    -----
    The least of: the width of the outline itself (known for the named shapes, see `clear_width_m` for
    polygons), the strips beside cut-outs, and tongues that a U-shaped or freely drawn cut-out leaves in
    itself.

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.piece import build_piece
    >>> narrowest_strip(build_piece(rectangle(2.13360, 0.66040), 0.0635))
    (0.6604, 'across the piece')

    References
    ----------
    Derived: geometry.
    """
    options = [(piece.outline.narrowest_m, "across the piece")]
    options += [(cutout.outline.tongue_m, f"inside {cutout.name}") for cutout in piece.cutouts]
    options += [(strip.width_m, strip.where) for strip in strips_beside_cutouts(piece)[:1]]
    return min(options, key=lambda option: option[0])


def section_left_m(across_m, cutout_m):
    """Material left on a straight cut across a piece and its cut-out.

    Parameters
    ----------
    across_m : float or array
        Size of the piece there [m].
    cutout_m : float or array
        Size of the cut-out in the same direction [m].

    Returns
    -------
    float or array
        What is left on both sides together [m].

    Raises
    ------
    ValueError
        When a size is not positive or the cut-out as large as the piece.

    Examples
    --------
    >>> round(section_left_m(0.66040, 0.44450), 5)
    0.2159

    References
    ----------
    Derived: geometry.
    """
    across = require("size across the piece", across_m, 0, unit="m", low_open=True)
    left = across - require("size of the cut-out", cutout_m, 0, unit="m")
    if np.any(np.asarray(left) <= 0):
        raise ValueError("size of the cut-out: it must be less than the size across the piece")
    return left
