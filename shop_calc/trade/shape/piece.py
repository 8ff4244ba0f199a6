"""The piece: outline, thickness, exposed edges, cut-outs, dropped edges, all checked."""

from dataclasses import dataclass
from functools import cached_property

import shapely
from shapely.geometry import Polygon

from shop_calc.science.checks import require
from shop_calc.trade.shape.drops import DropEdge, checked_drops, drop_regions
from shop_calc.trade.shape.plan_parts import TOUCH_M, Outline
from shop_calc.units import show

__all__ = ["USES", "Cutout", "DropEdge", "Piece", "build_piece"]

USES = ("top", "table", "seat", "wall-hung")


@dataclass(frozen=True)
class Cutout:
    """An opening through the piece.

    Parameters
    ----------
    outline : Outline
        Its outline, at its place in the piece [m].
    exposed : bool or set of str
        Whether its edges are faced: all, none, or the named ones [-].
    name : str
        What the shop calls it, such as "sink" [-].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import circle, place
    >>> Cutout(place(circle(0.034925), (0.762, 0.1016)), True, "tap").name
    'tap'

    References
    ----------
    Common practice, no source.
    """

    outline: Outline
    exposed: bool | frozenset = False
    name: str = "cut-out"


@dataclass(frozen=True)
class Piece:
    """A checked piece, as `build_piece` makes it.

    Parameters
    ----------
    outline : Outline
        Outer outline [m].
    thickness_m : float
        Thickness away from dropped edges [m].
    exposed : frozenset of str
        Outer edges that are faced [-].
    cutouts : tuple of Cutout
        Openings; `exposed` is a frozenset of edge names [-].
    drop : tuple of DropEdge
        Dropped edges, deepest first [-].
    use : str
        One of USES [-].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> round(build_piece(rectangle(0.30480, 0.30480), 0.0381).volume_m3, 9)
    0.003539606

    References
    ----------
    Derived: geometry.
    """

    outline: Outline
    thickness_m: float
    exposed: frozenset
    cutouts: tuple
    drop: tuple
    use: str

    @cached_property
    def plan(self):
        """The piece seen from above, cut-outs taken away."""
        plan = Polygon(self.outline.polygon.exterior, [cutout.outline.polygon.exterior for cutout in self.cutouts])
        shapely.prepare(plan)
        return plan

    @property
    def area_m2(self):
        """Area seen from above."""
        return self.plan.area

    @property
    def depth_m(self):
        """Greatest depth: of the deepest dropped edge, or the thickness."""
        return max((drop.depth_m for drop in self.drop), default=self.thickness_m)

    @cached_property
    def drop_regions(self):
        """(DropEdges of one depth and width, plan of their thick part), deepest first, each spot once."""
        return drop_regions(self.outline, self.drop)

    @property
    def volume_m3(self):
        """Volume of the finished piece."""
        extra = (region.area * (drops[0].depth_m - self.thickness_m) for drops, region in self.drop_regions)
        return self.area_m2 * self.thickness_m + sum(extra)

    @property
    def exposed_length_m(self):
        """Length of all exposed edges, cut-outs included."""
        outer = sum(edge.length_m for edge in self.outline.edges if edge.name in self.exposed)
        return outer + sum(
            edge.length_m for cutout in self.cutouts for edge in cutout.outline.edges if edge.name in cutout.exposed
        )


def _edge_set(names, outline, where):
    if names is True:
        return frozenset(outline.edge_names)
    if names is None or names is False:
        return frozenset()
    chosen = {name.strip().lower() for name in ([names] if isinstance(names, str) else names)}
    for name in sorted(chosen - set(outline.edge_names)):
        raise ValueError(f"{where}: {name!r} given; the edges are {', '.join(outline.edge_names)}")
    return frozenset(chosen)


def _extent(polygon):
    left, front, right, back = (show(value, "length", "us") for value in polygon.bounds)
    return f"from the left {left} to {right}, from the front {front} to {back}"


def _checked_cutouts(cutouts, outline):
    checked, rim = [], outline.polygon.exterior
    shapely.prepare(outline.polygon)
    for cutout in cutouts:
        hole, name = cutout.outline.polygon, f"cut-out {cutout.name!r}"
        if not outline.polygon.contains(hole):
            raise ValueError(f"{name}: {_extent(hole)}; it must lie inside the piece, {_extent(outline.polygon)}")
        if rim.distance(hole.exterior) < TOUCH_M:
            raise ValueError(f"{name}: {_extent(hole)}; it touches the edge: leave a strip, or draw a notch")
        for other in checked:
            if hole.distance(other.outline.polygon) < TOUCH_M:
                raise ValueError(
                    f"{name}: {_extent(hole)}; it touches cut-out {other.name!r}: leave a strip between them"
                )
        exposed = _edge_set(cutout.exposed, cutout.outline, f"exposed edges of {name}")
        checked.append(Cutout(cutout.outline, exposed, cutout.name))
    return tuple(checked)


def build_piece(outline, thickness_m, exposed=(), cutouts=(), drop=(), use="top"):
    """Check a piece and put it together.

    Parameters
    ----------
    outline : Outline
        Outer outline [m].
    thickness_m : float
        Thickness [m].
    exposed : True or collection of str
        Outer edges that will be seen and get the face; True for all [-].
    cutouts : sequence of Cutout
        Openings, at their places [-].
    drop : DropEdge or sequence of DropEdge
        Edges made deeper than the thickness [-].
    use : str
        top, table, seat or wall-hung [-].

    Returns
    -------
    Piece
        The checked piece [-].

    Raises
    ------
    ValueError
        When an edge has no such name, a cut-out leaves the piece, touches its edge or another one, or an edge
        that drops is round, not exposed, not deeper than the piece or returns as far as the piece is wide, or the
        returns of two meet.

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> round(build_piece(rectangle(2.43840, 0.64770), 0.0381, {"front", "left", "right"}).exposed_length_m, 9)
    3.7338

    References
    ----------
    Derived: geometry.
    """
    thickness = float(require("thickness", thickness_m, 0, unit="m", low_open=True))
    use = str(use).strip().lower()
    if use not in USES:
        raise ValueError(f"use: {use!r} given; it must be one of {', '.join(USES)}")
    chosen = _edge_set(exposed, outline, "exposed edges")
    openings = _checked_cutouts(cutouts, outline)
    drops = checked_drops(drop, outline, chosen, thickness)
    piece = Piece(outline, thickness, chosen, openings, drops, use)
    for group, region in piece.drop_regions:
        for cutout in openings:
            if region.distance(cutout.outline.polygon) < TOUCH_M:
                edge = " and ".join(repr(each.edge) for each in group)
                raise ValueError(f"cut-out {cutout.name!r}: it reaches into the dropped edge {edge}; move or shrink it")
    return piece
