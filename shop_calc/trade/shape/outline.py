"""Plan outlines from shape words; metres, front edge along y = 0, x to the right."""

import inspect

from shapely.affinity import translate

from shop_calc.science.checks import require
from shop_calc.trade.shape.plan_parts import SEGMENTS_PER_CIRCLE, Edge, Outline
from shop_calc.trade.shape.plan_polygon import polygon
from shop_calc.trade.shape.plan_shapes import circle, l_shape, racetrack, rectangle, u_shape

__all__ = [
    "SEGMENTS_PER_CIRCLE",
    "SHAPES",
    "Edge",
    "Outline",
    "build_outline",
    "circle",
    "l_shape",
    "place",
    "polygon",
    "racetrack",
    "rectangle",
    "u_shape",
]

SHAPES = {
    "rectangle": rectangle,
    "L": l_shape,
    "U": u_shape,
    "circle": circle,
    "racetrack": racetrack,
    "polygon": polygon,
}


def build_outline(shape, **sizes):
    """Build an outline from its shape word.

    Parameters
    ----------
    shape : str
        rectangle, L, U, circle, racetrack or polygon [-].
    **sizes : float
        The sizes that the shape's own function takes, such as length_m [m].

    Returns
    -------
    Outline
        The outline [m].

    Raises
    ------
    ValueError
        When the word is not known, a size is missing or does not belong to the shape, or a size cannot be.

    Examples
    --------
    >>> build_outline("rectangle", length_m=1.5240, width_m=0.38100).area_m2
    0.580644

    References
    ----------
    Common practice, no source.
    """
    words = {word.lower(): word for word in SHAPES}
    word = words.get(str(shape).strip().lower())
    if word is None:
        raise ValueError(f"outline: {shape!r} given; it must be one of {', '.join(SHAPES)}")
    wanted = inspect.signature(SHAPES[word]).parameters
    plain = {name: name.removesuffix("_m").replace("_", " ") for name in (*wanted, *sizes)}
    for name in sizes:
        if name not in wanted:
            takes = ", ".join(plain[each] for each in wanted)
            raise ValueError(f"{plain[name]}: not a size of this outline; outline {word} takes {takes}")
    for name, parameter in wanted.items():
        if name not in sizes and parameter.default is parameter.empty:
            raise ValueError(f"{plain[name]}: missing; outline {word} needs it")
    return SHAPES[word](**sizes)


def place(outline, centre_m):
    """Move an outline so that the middle of the box round it is at a given place.

    Parameters
    ----------
    outline : Outline
        Such as a cut-out [m].
    centre_m : (x, y)
        From the left end and from the front of the piece [m].

    Returns
    -------
    Outline
        The same outline at its place [m].

    Raises
    ------
    ValueError
        When the place is not a pair of numbers.

    Examples
    --------
    >>> sink = place(rectangle(0.40000, 0.20000), (1.0125, 0.30000))
    >>> [float(round(size, 6)) for size in sink.polygon.bounds]
    [0.8125, 0.2, 1.2125, 0.4]

    References
    ----------
    Common practice, no source.
    """
    try:
        across, deep = centre_m
    except (TypeError, ValueError):
        raise ValueError(f"place: {centre_m!r} given; it must be two sizes, from the left and from the front") from None
    left, front, right, back = outline.polygon.bounds
    dx = float(require("place from the left", across, unit="m")) - (left + right) / 2
    dy = float(require("place from the front", deep, unit="m")) - (front + back) / 2
    edges = tuple(
        Edge(edge.name, tuple([(x + dx, y + dy) for x, y in edge.coords]), edge.length_m) for edge in outline.edges
    )
    moved = translate(outline.polygon, dx, dy)
    return Outline(moved, edges, outline.shape, outline.sizes, outline.area_formula, outline.narrowest_m,
                   outline.tongue_m)  # fmt: skip
