"""How much harder a dropped edge makes a span, an overhang or a strip be pulled: it weighs, and its tip hangs low."""

import numpy as np
from shapely.geometry import box

from shop_calc.trade.after.beam_section import ring_edges, section_moduli_m3
from shop_calc.trade.after.piece_beam import piece_beam


def span_pull(piece, span_m, carried_along=False):
    """Factors for a span in the middle of a piece.

    Not for a plate whose edges lie on rails: there only the weight counts, see `carried_along`.

    Parameters
    ----------
    piece : Piece
        A checked piece [m].
    span_m : float
        Distance between the supports [m].
    carried_along : bool
        True where both edges along the span lie on a rail, so that no return sags [-].

    Returns
    -------
    tuple of float
        On the stress of its own weight, and on that of people; 1 without a dropped edge [-].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.piece import DropEdge, build_piece
    >>> top = build_piece(rectangle(1.524, 0.508), 0.0381, True, drop=DropEdge("front", 0.0762, 0.0508))
    >>> ["{:.4f}".format(factor) for factor in span_pull(top, 1.2)]
    ['1.3957', '1.2688']

    References
    ----------
    Derived: elementary beam theory.
    """
    if not piece.drop:
        return 1.0, 1.0
    beam = piece_beam(piece, 1.0)
    off = np.abs(beam.x_m - beam.length_m / 2)
    arm = np.maximum(span_m / 2 - off, 0.0)
    heavier = _moment_ratio(beam, arm)
    pulled = 1.0 if carried_along else _harder(beam, beam.sag_modulus_m3, off <= span_m / 2 + 1e-9)
    return heavier * pulled, pulled


def overhang_pull(piece, overhang_m, at_side=False):
    """Factors for an overhang at either end of a piece, or along its longer sides.

    Parameters
    ----------
    piece : Piece
        A checked piece [m].
    overhang_m : float
        Length beyond the support [m].
    at_side : bool
        True where the longer edge hangs over [-].

    Returns
    -------
    tuple of float
        On the stress of its own weight, and on that of people; 1 without a dropped edge [-].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.piece import DropEdge, build_piece
    >>> top = build_piece(rectangle(2.0, 0.6), 0.04, True, drop=DropEdge("left", 0.08, 0.05))
    >>> ["{:.3f}".format(factor) for factor in overhang_pull(top, 0.25)]
    ['1.360', '1.000']

    Notes
    -----
    By hand for the example: the end weighs 0.05 x 0.04 more at 0.225 m, the rest 0.25 x 0.04 at 0.125 m.

    References
    ----------
    Derived: elementary beam theory.
    """
    if not piece.drop:
        return 1.0, 1.0
    beam = piece_beam(piece, 1.0, across=at_side)
    arms = [np.maximum(overhang_m - far, 0.0) for far in (beam.x_m, beam.length_m - beam.x_m)]
    heavier = max(_moment_ratio(beam, arm) for arm in arms)
    pulled = max(_harder(beam, beam.hog_modulus_m3, arm > 0.0) for arm in arms)
    return heavier * pulled, pulled


def strip_pull(piece, strip):
    """Factors for a strip between an opening and an edge.

    Parameters
    ----------
    piece : Piece
        A checked piece [m].
    strip : Strip
        One of its strips beside openings [m].

    Returns
    -------
    tuple of float
        On the stress of its own weight, and on that of a person; 1 where its edge does not drop [-].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import place, rectangle
    >>> from shop_calc.trade.shape.piece import Cutout, DropEdge, build_piece
    >>> from shop_calc.trade.shape.strips import strips_beside_cutouts
    >>> sink = Cutout(place(rectangle(0.7, 0.4), (1.0, 0.32)), name="sink")
    >>> top = build_piece(rectangle(2.0, 0.6), 0.04, True, [sink], DropEdge("front", 0.06, 0.06))
    >>> front = next(strip for strip in strips_beside_cutouts(top) if strip.beside == "front edge")
    >>> ["{:.3f}".format(factor) for factor in strip_pull(top, front)]
    ['1.250', '1.000']

    References
    ----------
    Derived: elementary beam theory.
    """
    drop = next((drop for drop in piece.drop if strip.beside == f"{drop.edge} edge"), None)
    if drop is None:
        return 1.0, 1.0
    thick, wide = piece.thickness_m, strip.width_m
    rib = (ring_edges(box(0, 0, 1, min(drop.width_m, wide))), drop.depth_m)
    sag, _ = section_moduli_m3(ring_edges(box(0, 0, 1, wide)), [rib], thick, np.array([0.5]))
    pulled = float(wide * thick**2 / 6.0 / sag[0])
    heavier = 1.0 + drop.width_m * (drop.depth_m - thick) / (wide * thick)
    return heavier * pulled, pulled


def _moment_ratio(beam, arm):
    """Moment of its weight over that of the plate without its dropped edges, each weighed with an arm."""
    plain = np.trapezoid(beam.width_m * beam.thickness_m * arm, beam.x_m)
    return float(np.trapezoid(beam.line_kg_m * arm, beam.x_m) / plain)


def _harder(beam, modulus_m3, there):
    there = there & (beam.width_m > 1e-4)
    return float(np.max(beam.width_m[there] * beam.thickness_m**2 / 6.0 / modulus_m3[there], initial=1.0))
