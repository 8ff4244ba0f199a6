"""What a plan outline is made of: named edges and arcs, in metres, front edge along y = 0."""

import math
from dataclasses import dataclass

import numpy as np
from shapely.geometry import Polygon

from shop_calc.units import show

SEGMENTS_PER_CIRCLE = 180  # judgement: a chord each 2 degrees; see `arc` for why areas are exact all the same
TOUCH_M = 1e-6  # judgement: closer than a thousandth of a millimetre is touching


@dataclass(frozen=True)
class Edge:
    """One named edge of an outline.

    Parameters
    ----------
    name : str
        What the shop calls it, such as "front" or "inner back" [-].
    coords : tuple of (x, y)
        Its points in order, the inside of the outline on the left hand [m].
    length_m : float
        Its true length, along the arc where it is round [m].

    Examples
    --------
    >>> Edge("front", ((0.0, 0.0), (1.5, 0.0)), 1.5).straight
    True

    References
    ----------
    Derived: geometry.
    """

    name: str
    coords: tuple
    length_m: float

    @property
    def straight(self):
        """Whether the edge is one straight line."""
        return len(self.coords) == 2


@dataclass(frozen=True)
class Outline:
    """A closed outline seen from above, of a piece or of a cut-out.

    Parameters
    ----------
    polygon : shapely Polygon
        The outline, anticlockwise [m].
    edges : tuple of Edge
        Its edges in order round the polygon [m].
    shape : str
        The shape word it was built from [-].
    sizes : tuple of (symbol, metres)
        The sizes it was built from, with the symbols of `area_formula` [m].
    area_formula : str
        Arithmetic for the area in those symbols, or a procedure that starts with "by " [-].
    narrowest_m : float
        Width of its narrowest strip, as a piece [m].
    tongue_m : float
        Width of the narrowest tongue of material that it leaves in itself, as a cut-out; infinite if none
        [m].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> rectangle(1.5240, 0.3810).edge_names
    ('front', 'right', 'back', 'left')

    References
    ----------
    Derived: geometry.
    """

    polygon: Polygon
    edges: tuple
    shape: str
    sizes: tuple
    area_formula: str
    narrowest_m: float
    tongue_m: float = math.inf

    @property
    def edge_names(self):
        """Names of the edges in order."""
        return tuple(edge.name for edge in self.edges)

    @property
    def area_m2(self):
        """Area inside the outline."""
        return self.polygon.area

    @property
    def perimeter_m(self):
        """Length once round the outline."""
        return math.fsum(edge.length_m for edge in self.edges)

    @property
    def box_m(self):
        """Length and width of the box round the outline."""
        sizes = dict(self.sizes)
        if "d" in sizes:
            return sizes["d"], sizes["d"]
        if "L" in sizes:
            return sizes["L"], sizes["W"]
        left, front, right, back = self.polygon.bounds
        return right - left, back - front

    def edge(self, name):
        """Return the edge called `name`, or say which edges there are."""
        for edge in self.edges:
            if edge.name == name:
                return edge
        raise ValueError(f"edge: {name!r} given; this {self.shape} has {', '.join(self.edge_names)}")


def refuse(entry, given_m, rule):
    """Build the message for a size that cannot be, in shop words.

    Parameters
    ----------
    entry : str
        What was given [-].
    given_m : float
        Its value [m].
    rule : str
        What it must be [-].

    Returns
    -------
    ValueError
        Ready to be raised [-].

    Examples
    --------
    >>> str(refuse("notch width", 0.508, "less than the width"))
    'notch width: 1\\'-8" (508 mm) given; it must be less than the width'

    References
    ----------
    Common practice, no source.
    """
    return ValueError(f"{entry}: {show(given_m, 'length')} given; it must be {rule}")


def close_outline(edges, shape, sizes, area_formula, narrowest_m, tongue_m=math.inf):
    """Join edges that follow each other anticlockwise into an outline.

    Parameters
    ----------
    edges : sequence of Edge
        In order, each beginning where the one before ends [m].
    shape, area_formula : str
        As in Outline [-].
    sizes : tuple of (symbol, metres)
        As in Outline [m].
    narrowest_m, tongue_m : float
        As in Outline [m].

    Returns
    -------
    Outline
        The closed outline [m].

    Examples
    --------
    >>> a, b, c = (0.0, 0.0), (3.0, 0.0), (0.0, 4.0)
    >>> sides = [Edge("1", (a, b), 3.0), Edge("2", (b, c), 5.0), Edge("3", (c, a), 4.0)]
    >>> close_outline(sides, "polygon", (), "by hand", 2.0).area_m2
    6.0

    References
    ----------
    Derived: geometry.
    """
    ring = [point for edge in edges for point in edge.coords[:-1]]
    return Outline(Polygon(np.array(ring)), tuple(edges), shape, tuple(sizes), area_formula, narrowest_m, tongue_m)


def arc(centre, radius_m, start, sweep):
    """Return points along a round edge, placed so that the area under its chords is that of the true arc.

    The ends lie on the arc. The points between lie outside it by about 1e-4 of the radius, which makes up for
    what the chords cut off.

    Parameters
    ----------
    centre : (x, y)
        Centre of the arc [m].
    radius_m : float
        Radius [m].
    start, sweep : float
        Direction of the first point and angle to the last, anticlockwise [rad].

    Returns
    -------
    ndarray, shape (n, 2)
        Points in order [m].

    Notes
    -----
    With k chords of angle x between end points at r and inner points at q, the area seen from the centre is
    sin(x)/2 (2 r q + (k - 2) q^2); it is set equal to r^2 sweep/2 and solved for q. A full circle has all
    points at q.

    Examples
    --------
    >>> float(round(arc((0.0, 0.0), 1.0, 0.0, 3.141592653589793)[45, 1], 6))
    1.000103

    References
    ----------
    Derived: geometry.
    """
    count = max(4, 2 * round(SEGMENTS_PER_CIRCLE * sweep / (4.0 * math.pi)))
    step = sweep / count
    angles = start + step * np.arange(count + 1)
    stretch = step / math.sin(step)
    if sweep > 2.0 * math.pi - 1e-9:
        radii = np.full(count + 1, radius_m * math.sqrt(stretch))
    else:
        radii = np.full(count + 1, radius_m * (math.sqrt(1.0 + (count - 2) * count * stretch) - 1.0) / (count - 2))
        radii[[0, -1]] = radius_m
    return np.asarray(centre) + radii[:, None] * np.column_stack((np.cos(angles), np.sin(angles)))
