"""What the plan and the cut of a piece are drawn from."""

from dataclasses import dataclass

from shapely.geometry import LineString


@dataclass(frozen=True)
class PiecePlan:
    """What is drawn: shapes in metres, front edge along y = 0.

    Parameters
    ----------
    outline : shapely Polygon
        The piece from above, cut-outs as holes [m].
    core : shapely Polygon
        The base from above, inside the face of exposed edges [m].
    thickness_m, face_m : float
        Thickness of the piece and of the face [m].
    edges : sequence
        Outer edges, each (name, coords) or an object with name and coords [m].
    exposed : set of str
        Names of the edges that are faced; the others stand against a wall [-].
    holes : sequence of (str, bool)
        Name of each cut-out, in the order of the holes, and whether its edge is faced [-].
    cut_x_m : float, optional
        Where the cut is taken, by default through the middle of the length [m].
    drops : sequence of (sequence of str, float, float, shapely geometry)
        Of each depth the edges that drop, the depth, the width of the return, and its place from above [m].

    Examples
    --------
    >>> from shapely.geometry import box
    >>> PiecePlan(box(0, 0, 1.5, 0.4), box(0, 0, 1.5, 0.4), 0.038, 0.006, (), frozenset()).thickness_m
    0.038
    """

    outline: object
    core: object
    thickness_m: float
    face_m: float
    edges: tuple
    exposed: frozenset
    holes: tuple = ()
    cut_x_m: float | None = None
    drops: tuple = ()

    @property
    def cut_m(self):
        """Where the cut is taken [m]."""
        low, _, high, _ = self.outline.bounds
        return (low + high) / 2 if self.cut_x_m is None else self.cut_x_m

    @property
    def deepest_m(self):
        """Depth of the deepest dropped edge, or the thickness [m]."""
        return max([self.thickness_m, *(depth_m for _, depth_m, _, _ in self.drops)])

    @property
    def named_edges(self):
        """Edges as (name, coords, length); an edge that knows its own length keeps it."""
        taken = []
        for edge in self.edges:
            name, coords = edge if isinstance(edge, tuple) else (edge.name, edge.coords)
            taken.append((name, coords, getattr(edge, "length_m", None) or LineString(coords).length))
        return taken
