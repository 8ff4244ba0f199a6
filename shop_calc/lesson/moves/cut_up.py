"""Lesson 01: one top, whole and cut up, and the share of it that is face."""

from shop_calc.lesson.pictures.face_shares import FaceShare, FaceShares
from shop_calc.trade.shape.layers import rectangle_layers

CUTS = ((1, 1), (4, 1), (8, 2))  # pieces along and across: on a bench of 60 by 15 in the small ones are square


def cut_up(length_m, width_m, thickness_m, face_thickness_m, cuts=CUTS):
    """Share of face of a top, whole and cut into equal pieces; every edge of every piece shows.

    Not for a piece with a wall or a hole: `shop_calc.trade.shape.layers` takes those.

    Parameters
    ----------
    length_m, width_m, thickness_m, face_thickness_m : float
        Sizes of the whole top, and thickness of its face [m].
    cuts : sequence of (int, int)
        Pieces along the length and across the width [-].

    Returns
    -------
    tuple of FaceShare
        One a cut [m, fraction].

    Examples
    --------
    >>> [round(row.top_share + row.edge_share, 5) for row in cut_up(1.524, 0.381, 0.0381, 0.00635)]
    [0.20116, 0.2213, 0.27407]

    References
    ----------
    Derived: geometry.
    """
    rows = []
    for along, across in cuts:
        long, wide = length_m / along, width_m / across
        share = float(rectangle_layers(long, wide, thickness_m, face_thickness_m).face_share)
        top = face_thickness_m / thickness_m
        edge_m = along * across * 2 * (long + wide)
        rows.append(FaceShare(along, across, long, wide, edge_m, top, share - top))
    return tuple(rows)


def cut_up_picture(*sizes, title="One top, cut up"):
    """Draw a top whole and cut up.

    Parameters
    ----------
    *sizes : float
        As for `cut_up` [m].
    title : str
        One line over the picture [-].

    Returns
    -------
    FaceShares
        A picture [-].

    Examples
    --------
    >>> "together 20.1 %" in cut_up_picture(1.524, 0.381, 0.0381, 0.00635).alt
    True

    References
    ----------
    Common practice, no source.
    """
    return FaceShares(cut_up(*sizes), title)
