"""Shapes of a plan as paths that a picture can draw."""

from matplotlib.path import Path
from shapely import line_merge, union_all
from shapely.geometry import box
from shapely.geometry.polygon import orient

from shop_calc.lesson.pictures.plan_labels import outward

WALL_IN = 0.09  # strokes behind an edge that stands against a wall
APART_IN = 0.13


def path_of(shape):
    """A shape with its holes as one path; an empty shape as a point."""
    parts = [shape] if shape.geom_type == "Polygon" else list(getattr(shape, "geoms", ()))
    parts = [orient(part) for part in parts if not part.is_empty]  # holes turn the other way, or they are filled
    rings = [ring for part in parts for ring in (part.exterior, *part.interiors)]
    paths = [Path(list(ring.coords), closed=True) for ring in rings]
    return Path.make_compound_path(*paths) if paths else Path([(0, 0)])


def spans_of(line):
    """Lowest and highest y of each part of an upright line."""
    lines = [line] if line.geom_type == "LineString" else list(getattr(line, "geoms", ()))
    return [sorted(y for _, y in (part.coords[0], part.coords[-1])) for part in lines if part.length > 1e-6]


def blocks(parts, top, place):
    """Each part of a cut down to its own depth, as one shape.

    >>> from shapely.geometry import LineString
    >>> blocks([(LineString([(0, 0), (0, 2)]), 1.0), (LineString([(0, 0), (0, 1)]), 0.5)], 3.0, lambda y: y).area
    4.5
    """
    return union_all([box(place(a), low, place(b), top) for part, low in parts for a, b in spans_of(part)])


def inner_borders(plan, onto):
    """Where the returns of dropped edges end under a piece, as lines on the sheet."""
    lines = [region.boundary.difference(plan.outline.exterior.buffer(1e-7)) for *_, region in plan.drops]
    once = line_merge(union_all(lines))  # where two returns meet they share a line
    return [list(onto(part).coords) for part in getattr(once, "geoms", (once,)) if not part.is_empty]


def wall_strokes(line, outline):
    """The edge itself and short strokes outside it, as a wall is drawn on paper."""
    strokes = [list(line.coords)]
    count = max(int(line.length / APART_IN), 1)
    for number in range(count):
        spot = line.interpolate((number + 0.5) / count, normalized=True)
        near = line.interpolate(min(line.project(spot) + 0.01, line.length))
        back = line.interpolate(max(line.project(spot) - 0.01, 0.0))
        _, _, out_x, out_y = outward([(back.x, back.y), (near.x, near.y)], outline)
        along_x, along_y = -out_y, out_x
        end = (spot.x + WALL_IN * (out_x + along_x * 0.7), spot.y + WALL_IN * (out_y + along_y * 0.7))
        strokes.append([(spot.x, spot.y), end])
    return strokes
