"""The band along chosen edges of a ring: where the face layer runs down an exposed edge."""

import math

import numpy as np
import shapely
from shapely.geometry import Polygon

MITRE_LIMIT = 5.0  # judgement: the point of a very sharp inner corner is cut off at five band widths
STRAIGHT_ON_DEG = 6.0  # judgement: a wall that leaves an exposed edge by less continues it; the band ends square


def _unit(start, end):
    dx, dy = end[0] - start[0], end[1] - start[1]
    size = math.hypot(dx, dy)
    return dx / size, dy / size


def _shifted(points, width_m, closed):
    """Points of an edge moved inward, corners between its chords mitred."""
    ring = np.asarray(points)
    along = np.diff(ring, axis=0)
    along /= np.linalg.norm(along, axis=1)[:, None]
    inward = np.column_stack((-along[:, 1], along[:, 0]))
    before, after = np.vstack((inward[:1], inward)), np.vstack((inward, inward[-1:]))
    if closed:
        before[0], after[-1] = inward[-1], inward[0]
    return ring + width_m * (before + after) / (1.0 + np.einsum("ij,ij->i", before, after))[:, None]


def _strip(edge, width_m):
    """Strip of the band along one edge, square at its ends."""
    if edge.straight:
        (ax, ay), (bx, by) = edge.coords
        ux, uy = _unit(*edge.coords)
        nx, ny = -uy * width_m, ux * width_m
        return Polygon(((ax, ay), (bx, by), (bx + nx, by + ny), (ax + nx, ay + ny)))
    closed = edge.coords[0] == edge.coords[-1]
    inner = _shifted(edge.coords, width_m, closed)
    if closed:
        small, large = sorted((Polygon(np.array(edge.coords)), Polygon(inner)), key=lambda ring: ring.area)
        return Polygon(large.exterior, [small.exterior])
    return Polygon(np.concatenate((edge.coords, inner[::-1])))


def inner_corner(first, second, first_width_m, second_width_m):
    """What lies between the square ends of two strips at an inner corner, up to where their inner lines meet.

    Parameters
    ----------
    first, second : Edge
        Two edges in order, the material on the left hand [m].
    first_width_m, second_width_m : float
        Width of the strip along each, into the material [m].

    Returns
    -------
    shapely Polygon or None
        None where the corner is no inner one: there the strips overlap [m].

    Notes
    -----
    The point of a very sharp corner is cut off at MITRE_LIMIT widths. Where the corner is blunt and one strip so much
    wider that the lines meet only beside it, the narrower one ends at the wider one.

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import l_shape
    >>> shape = l_shape(10.0, 10.0, 4.0, 4.0)
    >>> inner_corner(shape.edge("inner back"), shape.edge("inner right"), 1.0, 2.0).area
    2.0

    References
    ----------
    Derived: geometry.
    """
    px, py = second.coords[0]
    (ax, ay), (bx, by) = _unit(first.coords[-2], first.coords[-1]), _unit(second.coords[0], second.coords[1])
    cross, dot = ax * by - ay * bx, ax * bx + ay * by
    if math.atan2(cross, dot) >= -1e-12:
        return None
    w1, w2 = first_width_m, second_width_m

    def before(width, forward):
        return px - ay * width + ax * forward, py + ax * width + ay * forward

    def behind(width, back):
        return px - by * width - bx * back, py + bx * width - by * back

    on, back = (w1 * dot - w2) / cross, (w2 * dot - w1) / cross  # from the square ends to where the lines meet
    if back < 0.0:
        return Polygon(((px, py), before(w1, 0.0), behind(w1 / dot, 0.0)))
    if on < 0.0:
        return Polygon(((px, py), before(w2 / dot, 0.0), behind(w2, 0.0)))
    reach, most = math.hypot(w1, on), MITRE_LIMIT * max(w1, w2)
    if reach <= most:
        return Polygon(((px, py), before(w1, 0.0), before(w1, on), behind(w2, 0.0)))
    # square to the line from the corner to the point
    cut, cut_back = ((most * reach - width**2) / along for width, along in ((w1, on), (w2, back)))
    return Polygon(((px, py), before(w1, 0.0), before(w1, cut), behind(w2, cut_back), behind(w2, 0.0)))


def _at_corner(first, second, width_m, first_in, second_in):
    """What the band needs at the corner between two edges beyond its two square ends; None for nothing."""
    if first_in and second_in:
        return inner_corner(first, second, width_m, width_m)
    corner = second.coords[0]
    d1, d2 = _unit(first.coords[-2], first.coords[-1]), _unit(second.coords[0], second.coords[1])
    turn = math.atan2(d1[0] * d2[1] - d1[1] * d2[0], d1[0] * d2[0] + d1[1] * d2[1])

    def point(direction, forward):
        (dx, dy), (x, y) = direction, corner
        return x - dy * width_m + dx * forward, y + dx * width_m + dy * forward

    if first_in != second_in and math.radians(STRAIGHT_ON_DEG) <= turn < math.pi / 2 - 1e-12:
        reach = width_m / math.tan(turn)  # a blunt corner: the band runs on until it meets the wall
        direction, sign = (d1, 1.0) if first_in else (d2, -1.0)
        return Polygon((corner, point(direction, 0.0), point(direction, sign * reach)))
    return None


def band(edges, names, width_m):
    """Band of a given width along the chosen edges of a ring.

    The band is not clipped to the piece: cut it with the plan, or take it away from the plan.

    Parameters
    ----------
    edges : sequence of Edge
        The whole ring in order, the material on the left hand [m].
    names : set of str
        The edges that the band runs along [-].
    width_m : float
        Width of the band, into the material [m].

    Returns
    -------
    shapely geometry
        The band; empty when no edge is chosen [m].

    Notes
    -----
    Where two chosen edges meet, the band is mitred: at an outer corner their strips overlap once, at an inner
    corner the square (in general the kite) between them belongs to the band. Where a chosen edge meets one
    that is not chosen, the band ends on the line of that edge; where that edge turns away from the material
    (an inner corner) or goes straight on, it ends square.

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import l_shape
    >>> shape = l_shape(10.0, 10.0, 4.0, 4.0)
    >>> band(shape.edges, set(shape.edge_names), 1.0).area
    36.0

    References
    ----------
    Derived: geometry. The ending at walls is common practice, no source.
    """
    parts = [_strip(edge, width_m) for edge in edges if edge.name in names]
    if len(edges) > 1:
        for first, second in zip(edges, (*edges[1:], edges[0]), strict=True):
            part = _at_corner(first, second, width_m, first.name in names, second.name in names)
            if part is not None:
                parts.append(part)
    return parts[0] if len(parts) == 1 else shapely.union_all(parts)


def inside_out(edges):
    """Edges of a cut-out as the material round it sees them: reversed, so that it lies on the left hand.

    Parameters
    ----------
    edges : sequence of Edge
        Anticlockwise, as an outline has them [m].

    Returns
    -------
    tuple of Edge
        Clockwise, under the same names [m].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> [edge.name for edge in inside_out(rectangle(2.0, 1.0).edges)]
    ['left', 'back', 'right', 'front']

    References
    ----------
    Derived: geometry.
    """
    return tuple(type(edge)(edge.name, edge.coords[::-1], edge.length_m) for edge in reversed(edges))
