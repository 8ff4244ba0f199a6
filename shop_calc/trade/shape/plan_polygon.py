"""Outlines from a list of points."""

import math

import numpy as np
import shapely
from shapely.geometry import Polygon, box

from shop_calc.trade.shape.clear_width import clear_width_m
from shop_calc.trade.shape.plan_parts import TOUCH_M, Edge, Outline
from shop_calc.units import show


def _checked_points(points_m):
    try:
        points = np.asarray(points_m, dtype=float)
    except (TypeError, ValueError):
        points = np.empty(0)
    if points.ndim != 2 or points.shape[1] != 2 or not np.isfinite(points).all():
        raise ValueError("points: each must be a pair of sizes, x to the right and y to the back")
    if len(points) > 1 and math.dist(points[0], points[-1]) < TOUCH_M:
        points = points[:-1]  # a list that comes back to its first point is closed already
    if len(points) < 3:
        raise ValueError(f"points: {len(points)} given; an outline needs at least 3")
    for i, (a, b) in enumerate(zip(points, np.roll(points, -1, axis=0), strict=True)):
        if math.dist(a, b) < TOUCH_M:
            raise ValueError(f"points: {i + 1} and {(i + 1) % len(points) + 1} are the same place; leave one out")
    return points


def polygon(points_m):
    """Build an outline from its corners, in order, either way round.

    Not for round shapes: use circle, racetrack, or a corner radius.

    Parameters
    ----------
    points_m : sequence of (x, y)
        Corners in order [m].

    Returns
    -------
    Outline
        Edges "edge 1" from point 1 to point 2, "edge 2" from point 2 to point 3 and so on [m].

    Raises
    ------
    ValueError
        When there are fewer than three points, two following points are the same, or the outline crosses
        itself.

    Notes
    -----
    The narrowest strip is that of `clear_width_m`, or the diameter of the largest circle that fits, whichever
    is smaller.

    Examples
    --------
    >>> polygon([(0, 0), (3.0000, 0), (0, 4.0000)]).area_m2
    6.0

    References
    ----------
    Derived: geometry.
    """
    points = _checked_points(points_m)
    shape = Polygon(points)
    if not shape.is_valid:
        where = shapely.is_valid_reason(shape).partition("[")[2].rstrip("]").split()
        spot = "".join(f" {n} {show(float(v), 'length')}" for n, v in zip(("x", "y"), where, strict=False))
        raise ValueError(
            f"points: the outline crosses or touches itself near{spot}; it must run once round the piece"
            if len(where) == 2
            else "points: the outline crosses or touches itself; it must run once round the piece"
        )
    corners = list(map(tuple, points.tolist()))
    pairs = zip(corners, corners[1:] + corners[:1], strict=True)
    edges = [Edge(f"edge {i + 1}", (a, b), math.dist(a, b)) for i, (a, b) in enumerate(pairs)]
    if not shape.exterior.is_ccw:
        edges = [Edge(edge.name, edge.coords[::-1], edge.length_m) for edge in reversed(edges)]
        shape = Polygon([edge.coords[0] for edge in edges])
    ring = np.array([edge.coords[0] for edge in edges])
    largest = 2.0 * shapely.maximum_inscribed_circle(shape, 1e-4 * min(np.ptp(ring, axis=0))).length
    strip = clear_width_m(ring, shape)
    narrow = strip if strip < 1.001 * largest else largest  # the circle is found to a ten-thousandth only
    left, front, right, back = shape.bounds
    around = box(left - 1.0, front - 1.0, right + 1.0, back + 1.0).difference(shape)
    tongue = clear_width_m(ring[::-1], around)
    return Outline(shape, tuple(edges), "polygon", (), "by adding up the cross products of its points", narrow, tongue)
