"""Dropped edges: which may drop, how their returns meet, and where a piece is deeper than the rest."""

import itertools
import math
from dataclasses import dataclass, replace

import numpy as np
import shapely
from shapely.geometry import LineString, MultiPolygon, Polygon

from shop_calc.science.checks import require
from shop_calc.trade.shape.bands import band, inner_corner
from shop_calc.trade.shape.clear_width import FACING_DEG
from shop_calc.trade.shape.plan_parts import TOUCH_M, refuse
from shop_calc.units import show

_INSIDE_M = 1e-9  # a line drawn this far inside an edge, to see which return lies behind it
SNAP_M = 1e-12  # corners are snapped to that, or plans that share an edge to the last digit can be joined wrongly


@dataclass(frozen=True)
class DropEdge:
    """An edge made deeper than the piece is thick.

    Parameters
    ----------
    edge : str
        The outer edge that drops [-].
    depth_m : float
        Depth of the edge, top to bottom [m].
    width_m : float
        How far the thick part returns under the piece [m].

    Examples
    --------
    >>> DropEdge("front", 0.0762, 0.0508).depth_m
    0.0762

    References
    ----------
    Common practice, no source.
    """

    edge: str
    depth_m: float
    width_m: float


def checked_drops(drops, outline, exposed, thickness_m):
    """Check the dropped edges of a piece.

    Parameters
    ----------
    drops : DropEdge or sequence of DropEdge
        As given [m].
    outline : Outline
        Outer outline of the piece [m].
    exposed : set of str
        Edges that are faced [-].
    thickness_m : float
        Thickness of the piece [m].

    Returns
    -------
    tuple of DropEdge
        Deepest first, then the narrower return, then as they lie round the piece [m].

    Raises
    ------
    ValueError
        When an edge is unknown, named twice, round, not exposed or not deeper than the piece, when a return is as
        wide as the piece, when two returns meet from opposite sides, or when they leave nothing thin between them.

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> front = DropEdge("front", 0.0762, 0.0508)
    >>> checked_drops(front, rectangle(1.524, 0.381), {"front"}, 0.0381)[0].width_m
    0.0508

    References
    ----------
    Derived: geometry; common practice, no source, for what may drop.
    """
    drops = (drops,) if isinstance(drops, DropEdge) else tuple(drops or ())
    drops = [replace(drop, edge=str(drop.edge).strip().lower()) for drop in drops]
    seen = set()
    for drop in drops:
        _check_one(drop, outline, exposed, thickness_m, seen)
        seen.add(drop.edge)
    order = outline.edge_names
    drops = tuple(sorted(drops, key=lambda drop: (-drop.depth_m, drop.width_m, order.index(drop.edge))))
    if len(drops) > 1:
        _check_room(drops, outline)
    return drops


def _check_one(drop, outline, exposed, thickness_m, seen):
    where = f"dropped edge {drop.edge!r}"
    if drop.edge not in outline.edge_names:
        raise ValueError(f"dropped edge: {drop.edge!r} given; the edges are {', '.join(outline.edge_names)}")
    if drop.edge in seen:
        raise ValueError(f"{where}: given twice; each edge drops once")
    if not outline.edge(drop.edge).straight:
        raise ValueError(f"{where}: it is round; only a straight edge can drop")
    if drop.edge not in exposed:
        allowed = ", ".join(name for name in outline.edge_names if name in exposed) or "none yet"
        raise ValueError(f"{where}: it is not exposed; only an exposed edge can drop (exposed: {allowed})")
    require(f"depth of {where}", drop.depth_m, unit="m")
    if drop.depth_m <= thickness_m:
        raise refuse(f"depth of {where}", drop.depth_m, f"more than the thickness, {show(thickness_m, 'length')}")
    width = require(f"return width of {where}", drop.width_m, 0, unit="m", low_open=True)
    if width >= outline.narrowest_m:
        rule = f"less than the narrowest strip of the piece, {show(outline.narrowest_m, 'length')}"
        raise refuse(f"return width of {where}", width, rule)


def _check_room(drops, outline):
    strips = [(drop, outline.edge(drop.edge), band(outline.edges, {drop.edge}, drop.width_m)) for drop in drops]
    for (first, edge, strip), (second, other, behind) in itertools.combinations(strips, 2):
        if faces(edge, other) and strip.distance(behind) < TOUCH_M:
            between = LineString(edge.coords).distance(LineString(other.coords))
            raise ValueError(
                f"returns of the dropped edges {first.edge!r} and {second.edge!r}: {show(first.width_m, 'length')} and "
                f"{show(second.width_m, 'length')} given, with {show(between, 'length')} between the two edges; they must "
                "leave room for a filler board: make them narrower, or the whole piece as thick as they are deep"
            )
    thin = thin_part(outline, drop_regions(outline, drops))
    if thin.buffer(-TOUCH_M).is_empty:
        raise ValueError(
            f"returns of the dropped edges {', '.join(repr(drop.edge) for drop in drops)}: they fill the whole piece; "
            "make them narrower, or the piece as thick as they are deep"
        )


def faces(edge, other):
    """Whether two straight edges run back beside each other.

    Parameters
    ----------
    edge, other : Edge
        Two straight edges of an outline [m].

    Returns
    -------
    bool
        True within FACING_DEG of antiparallel [-].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> top = rectangle(2.0, 1.0)
    >>> faces(top.edge("front"), top.edge("back")), faces(top.edge("front"), top.edge("left"))
    (True, False)

    References
    ----------
    Derived: geometry; the angle is judgement.
    """
    (ax, ay), (bx, by), (cx, cy), (dx, dy) = *edge.coords, *other.coords
    along = ((bx - ax) * (dx - cx) + (by - ay) * (dy - cy)) / (edge.length_m * other.length_m)
    return along < -math.cos(math.radians(FACING_DEG))


def drop_regions(outline, drops, more_m=0.0):
    """Where a piece is deeper than the rest, seen from above, each spot once.

    Parameters
    ----------
    outline : Outline
        Outer outline [m].
    drops : sequence of DropEdge
        Checked, deepest first [m].
    more_m : float
        Added to the width of every return, as for a facing on the filler board [m].

    Returns
    -------
    tuple of (tuple of DropEdge, shapely geometry)
        The drops of one depth and width, and their part of the plan; deepest first [m].

    Notes
    -----
    Where two returns meet, the deeper one has the corner. At an inside corner of the piece both run on until they
    meet, so that the corner between them is as deep as the deeper one.

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> drops = (DropEdge("front", 0.1, 0.05), DropEdge("left", 0.08, 0.05))
    >>> [round(region.area, 6) for _, region in drop_regions(rectangle(2.00000, 0.60000), drops)]
    [0.1, 0.0275]

    References
    ----------
    Derived: geometry. That returns run on into an inside corner is common practice, no source.
    """
    by_edge, edges = {drop.edge: drop for drop in drops}, outline.edges
    regions, taken = [], Polygon()
    for size in dict.fromkeys((drop.depth_m, drop.width_m) for drop in drops):
        group = tuple(drop for drop in drops if (drop.depth_m, drop.width_m) == size)
        names = {drop.edge for drop in group}
        parts = [band(edges, names, size[1] + more_m)]
        for first, second in zip(edges, (*edges[1:], edges[0]), strict=True):
            # between two of one size the band has its corner already
            if (first.name in names) != (second.name in names) and first.name in by_edge and second.name in by_edge:
                widths = (by_edge[edge.name].width_m + more_m for edge in (first, second))
                corner = inner_corner(first, second, *widths)
                parts += [] if corner is None else [corner]
        strip = _areas(shapely.intersection(shapely.union_all(parts, grid_size=SNAP_M), outline.polygon, grid_size=SNAP_M))
        region = _areas(shapely.difference(strip, taken, grid_size=SNAP_M))
        regions.append((group, region))
        taken = _areas(shapely.union(taken, region, grid_size=SNAP_M))
    return tuple(regions)


def thin_part(outline, regions):
    """What is left of a piece beside its returns, seen from above.

    Parameters
    ----------
    outline : Outline
        Outer outline [m].
    regions : sequence of (tuple of DropEdge, shapely geometry)
        As `drop_regions` gives them, or the first of them [m].

    Returns
    -------
    shapely geometry
        Polygon, or several [m].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> top = rectangle(2.00000, 0.60000)
    >>> round(thin_part(top, drop_regions(top, [DropEdge("front", 0.1, 0.05)])).area, 6)
    1.1

    References
    ----------
    Derived: geometry.
    """
    thin = outline.polygon
    for _, region in regions:
        thin = _areas(shapely.difference(thin, region, grid_size=SNAP_M))
    return thin


def _areas(shape):
    """A plan without the lines and points in which shapes only touch."""
    if shape.geom_type in ("Polygon", "MultiPolygon"):
        return shape
    return MultiPolygon([part for part in shapely.get_parts(shape) if part.geom_type == "Polygon"])


def edge_below_m2(piece):
    """Area of the exposed edges that hangs below the thickness of the piece.

    Parameters
    ----------
    piece : Piece
        A checked piece [m].

    Returns
    -------
    float
        Outside of every return, its ends beside other exposed edges included; 0 without a dropped edge [m2].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.piece import build_piece
    >>> top = build_piece(rectangle(2.0, 0.6), 0.04, {"front", "left"}, drop=DropEdge("front", 0.08, 0.05))
    >>> f"{edge_below_m2(top):.6f}"
    '0.082000'

    Notes
    -----
    By hand for the example: 2.0 x 0.04 along the front and 0.05 x 0.04 at its left end; the right end is a wall.

    References
    ----------
    Derived: geometry.
    """
    below = 0.0
    for edge in piece.outline.edges:
        if edge.name not in piece.exposed or not edge.straight:
            continue  # behind a round edge there is no return
        start, end = np.array(edge.coords)
        along = (end - start) / np.linalg.norm(end - start)
        line = LineString(np.array(edge.coords) + _INSIDE_M * np.array((-along[1], along[0])))
        for drops, region in piece.drop_regions:
            below += line.intersection(region).length * (drops[0].depth_m - piece.thickness_m)
    return below
