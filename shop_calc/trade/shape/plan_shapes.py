"""Outlines from a shape word and a few sizes: rectangle, L, U, circle, racetrack.

Seen from above, the person standing at the front; x runs to the right, y to the back::

    rectangle            L                          U
    +---- back ---+      +-back-+                   +-back-+        +-back-+
    |             |      |      | inner             | left |        | right|
    left      right      left   | right             |      | inner  |      |
    |             |      |      +-inner back-+      left   | right  | inner|right
    +--- front ---+      |                   right  |      |        | left |
                         |                   |      |      +-inner--+      |
                         +------ front ------+      |         back         |
                                                    +-------- front -------+

Edges are named after the side they look to, inner edges too: "inner right" looks to the right, as "right"
does, and so it is the right side of the left leg. The two back edges of a U are "back left" and "back right".
A circle has one edge, "rim"; a racetrack has front, right end, back and left end.
"""

import math

from shop_calc.science.checks import require
from shop_calc.trade.shape.plan_parts import Edge, arc, close_outline, refuse
from shop_calc.units import show


def _size(name, value_m):
    return float(require(name, value_m, 0, unit="m", low_open=True))


def _below(name, value_m, limit_name, limit_m):
    if value_m >= limit_m:
        raise refuse(name, value_m, f"less than the {limit_name}, {show(limit_m, 'length')}")


def _straight_edges(points, names):
    pairs = zip(points, points[1:] + points[:1], names, strict=True)
    return [Edge(name, (a, b), math.dist(a, b)) for a, b, name in pairs]


def rectangle(length_m, width_m, corner_radius_m=0.0):
    """Build a rectangle, with round corners if wanted.

    Parameters
    ----------
    length_m : float
        Left to right [m].
    width_m : float
        Front to back [m].
    corner_radius_m : float
        Radius of the four corners; each edge takes half of the arc at its ends [m].

    Returns
    -------
    Outline
        Edges front, right, back, left [m].

    Raises
    ------
    ValueError
        When a size is not positive, or the radius leaves no straight part.

    Examples
    --------
    >>> rectangle(1.5240, 0.38100).area_m2
    0.580644

    References
    ----------
    Derived: geometry.
    """
    length, width = _size("length", length_m), _size("width", width_m)
    radius = float(require("corner radius", corner_radius_m, 0, unit="m"))
    sizes, names, narrow = (
        (("L", length), ("W", width)),
        ("front", "right", "back", "left"),
        min(length, width),
    )
    if radius == 0.0:
        corners = [(0.0, 0.0), (length, 0.0), (length, width), (0.0, width)]
        return close_outline(_straight_edges(corners, names), "rectangle", sizes, "L * W", narrow)
    _below("corner radius", radius, "half of the shorter side", narrow / 2)
    centres = ((radius, radius), (length - radius, radius), (length - radius, width - radius),
               (radius, width - radius))  # fmt: skip
    arcs = [arc(centre, radius, math.pi * (1.0 + i / 2), math.pi / 2).tolist() for i, centre in enumerate(centres)]
    half = len(arcs[0]) // 2
    edges = []
    for i, name in enumerate(names):
        points = arcs[i][half:] + arcs[(i + 1) % 4][: half + 1]
        straight = (length, width)[i % 2] - 2.0 * radius
        edges.append(Edge(name, tuple(map(tuple, points)), straight + math.pi * radius / 2))
    return close_outline(edges, "rectangle", (*sizes, ("r", radius)), "L * W - (4 - pi) * r ** 2", narrow)


def l_shape(length_m, width_m, notch_length_m, notch_width_m):
    """Build an L: a rectangle whose back right corner is missing.

    Parameters
    ----------
    length_m, width_m : float
        Left to right and front to back, over all [m].
    notch_length_m, notch_width_m : float
        Left to right and front to back of the missing corner [m].

    Returns
    -------
    Outline
        Edges front, right, inner back, inner right, back, left [m].

    Raises
    ------
    ValueError
        When a size is not positive, or the notch as large as the piece.

    Examples
    --------
    >>> l_shape(10.000, 10.000, 4.0000, 4.0000).area_m2
    84.0

    References
    ----------
    Derived: geometry.
    """
    length, width = _size("length", length_m), _size("width", width_m)
    across, deep = _size("notch length", notch_length_m), _size("notch width", notch_width_m)
    _below("notch length", across, "length", length)
    _below("notch width", deep, "width", width)
    points = [(0.0, 0.0), (length, 0.0), (length, width - deep), (length - across, width - deep),
              (length - across, width), (0.0, width)]  # fmt: skip
    edges = _straight_edges(points, ("front", "right", "inner back", "inner right", "back", "left"))
    sizes = (("L", length), ("W", width), ("a", across), ("b", deep))
    return close_outline(edges, "L", sizes, "L * W - a * b", min(length - across, width - deep))


def u_shape(length_m, width_m, notch_length_m, notch_width_m, notch_at_m):
    """Build a U: a rectangle with a notch open at the back.

    Parameters
    ----------
    length_m, width_m : float
        Left to right and front to back, over all [m].
    notch_length_m, notch_width_m : float
        Left to right and front to back of the notch [m].
    notch_at_m : float
        From the left end to the notch [m].

    Returns
    -------
    Outline
        Edges front, right, back right, inner left, inner back, inner right, back left, left [m].

    Raises
    ------
    ValueError
        When a size is not positive, or the notch leaves no leg or no front strip.

    Examples
    --------
    >>> u_shape(10.000, 6.0000, 4.0000, 3.0000, 2.0000).area_m2
    48.0

    References
    ----------
    Derived: geometry.
    """
    length, width = _size("length", length_m), _size("width", width_m)
    across, deep = _size("notch length", notch_length_m), _size("notch width", notch_width_m)
    start = _size("distance to the notch", notch_at_m)
    _below("notch width", deep, "width", width)
    _below("distance to the notch and notch length together", start + across, "length", length)
    end, floor = start + across, width - deep
    points = [(0.0, 0.0), (length, 0.0), (length, width), (end, width), (end, floor), (start, floor),
              (start, width), (0.0, width)]  # fmt: skip
    names = ("front", "right", "back right", "inner left", "inner back", "inner right", "back left", "left")
    sizes = (("L", length), ("W", width), ("a", across), ("b", deep))
    narrow = min(start, length - end, floor)
    return close_outline(_straight_edges(points, names), "U", sizes, "L * W - a * b", narrow, tongue_m=across)


def circle(diameter_m):
    """Build a circle that touches y = 0.

    Parameters
    ----------
    diameter_m : float
        Diameter, not radius [m].

    Returns
    -------
    Outline
        One edge, "rim" [m].

    Raises
    ------
    ValueError
        When the diameter is not positive.

    Examples
    --------
    >>> float(round(circle(0.60000).area_m2, 7))
    0.2827433

    References
    ----------
    Derived: geometry.
    """
    across = _size("diameter", diameter_m)
    points = arc((across / 2, across / 2), across / 2, -math.pi / 2, 2.0 * math.pi).tolist()
    points[-1] = points[0]
    rim = Edge("rim", tuple(map(tuple, points)), math.pi * across)
    return close_outline([rim], "circle", (("d", across),), "pi * d ** 2 / 4", across)


def racetrack(length_m, width_m):
    """Build a racetrack: straight front and back, two half-round ends.

    Parameters
    ----------
    length_m : float
        Over all, ends included [m].
    width_m : float
        Front to back, the diameter of the ends [m].

    Returns
    -------
    Outline
        Edges front, right end, back, left end [m].

    Raises
    ------
    ValueError
        When a size is not positive, or the length is not more than the width.

    Examples
    --------
    >>> float(round(racetrack(96.000, 32.000).area_m2, 3))
    2852.248

    References
    ----------
    Derived: geometry.
    """
    length, width = _size("length", length_m), _size("width", width_m)
    if length <= width:
        raise refuse("length", length, f"more than the width, {show(width, 'length')} (as long as wide is a circle)")
    radius = width / 2
    straight = length - width
    right = arc((length - radius, radius), radius, -math.pi / 2, math.pi).tolist()
    left = arc((radius, radius), radius, math.pi / 2, math.pi).tolist()
    right[0], right[-1] = [length - radius, 0.0], [length - radius, width]
    left[0], left[-1] = [radius, width], [radius, 0.0]
    corner = tuple(map(tuple, right)), tuple(map(tuple, left))
    edges = [
        Edge("front", (corner[1][-1], corner[0][0]), straight),
        Edge("right end", corner[0], math.pi * radius),
        Edge("back", (corner[0][-1], corner[1][0]), straight),
        Edge("left end", corner[1], math.pi * radius),
    ]
    sizes = (("L", length), ("W", width))
    return close_outline(edges, "racetrack", sizes, "(L - W) * W + pi * W ** 2 / 4", width)
