"""Drawings for paper, as SVG inside the page: black lines that any printer holds, no data of their own.

Lengths on the paper are pixels of 1/96 in. Text goes through `escape`, so that a name from a job stays a name.
"""

import math
from html import escape

INK, LANE, PAPER = "#000", "#e4e4e4", "#fff"
HATCH_ID = "shop-sheet-hatch"
# Drawn once a page: hatching says "base" where the lessons use a colour.
DEFS = (
    '<svg class="defs" width="0" height="0" aria-hidden="true"><defs>'
    f'<pattern id="{HATCH_ID}" width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">'
    f'<rect width="4" height="4" fill="{PAPER}"/><line x1="0" y1="0" x2="0" y2="4" stroke="{INK}" stroke-width="2.2"/>'
    "</pattern></defs></svg>"
)
BASE_FILL = f"url(#{HATCH_ID})"


def number(value):
    """Write a coordinate shortly.

    Parameters
    ----------
    value : float
        Any length on the paper [px].

    Returns
    -------
    str
        With at most two decimals [-].

    Examples
    --------
    >>> number(12.5), number(3.0)
    ('12.5', '3')

    References
    ----------
    Common practice, no source.
    """
    return f"{value:.2f}".rstrip("0").rstrip(".")


def svg(width, height, body, words="", name=""):
    """Wrap shapes into a picture with its words for who cannot see it.

    Parameters
    ----------
    width, height : float
        Size on the paper [px].
    body : str
        The shapes, already escaped [-].
    words : str
        What it shows; a picture without words is hidden from screen readers [-].
    name : str
        Class, for the style sheet [-].

    Returns
    -------
    str
        SVG [-].

    Examples
    --------
    >>> svg(10, 5, "", "a lane").startswith('<svg viewBox="0 0 10 5"')
    True

    References
    ----------
    Common practice, no source.
    """
    said = f'role="img" aria-label="{escape(words)}"' if words else 'aria-hidden="true"'
    box = f'viewBox="0 0 {number(width)} {number(height)}" width="{number(width)}" height="{number(height)}"'
    return f'<svg {box} class="{name}" {said}>{body}</svg>'


def box(x, y, wide, tall, fill, stroke="none", thick=1.0, extra=""):
    """Draw a rectangle.

    Parameters
    ----------
    x, y, wide, tall : float
        Upper left corner and size [px].
    fill, stroke : str
        Colours [-].
    thick : float
        Of the stroke [px].
    extra : str
        Further attributes [-].

    Returns
    -------
    str
        SVG [-].

    Examples
    --------
    >>> box(0, 0, 4, 2, "#fff")
    '<rect x="0" y="0" width="4" height="2" fill="#fff"/>'

    References
    ----------
    Common practice, no source.
    """
    line = "" if stroke == "none" else f' stroke="{stroke}" stroke-width="{number(thick)}"'
    size = f'x="{number(x)}" y="{number(y)}" width="{number(max(wide, 0.0))}" height="{number(max(tall, 0.0))}"'
    return f'<rect {size} fill="{fill}"{line}{extra}/>'


def text(x, y, words, size, bold=False, anchor="start", turn=0.0):
    """Set a line of type.

    Parameters
    ----------
    x, y : float
        Where it stands on its base line [px].
    words : str
        What it says; escaped here [-].
    size : float
        Height of the type [px].
    bold : bool
        Bold or not [-].
    anchor : str
        start, middle or end [-].
    turn : float
        Turned clockwise about its place [deg].

    Returns
    -------
    str
        SVG [-].

    Examples
    --------
    >>> text(1, 2, "a<b", 10)
    '<text x="1" y="2" font-size="10">a&lt;b</text> '

    References
    ----------
    Common practice, no source.
    """
    look = ' font-weight="700"' if bold else ""
    look += f' text-anchor="{anchor}"' if anchor != "start" else ""
    look += f' transform="rotate({number(turn)} {number(x)} {number(y)})"' if turn else ""
    return f'<text x="{number(x)}" y="{number(y)}" font-size="{number(size)}"{look}>{escape(words)}</text> '


def pair(us, si, us_size, si_size):
    """Set a size in both systems, the first larger, as the inside of a text.

    Parameters
    ----------
    us, si : str
        The size; escaped here [-].
    us_size, si_size : float
        Height of the type [px].

    Returns
    -------
    str
        SVG [-].

    Examples
    --------
    >>> pair('1"', "25.4 mm", 13, 11).count("tspan")
    4

    References
    ----------
    Common practice, no source.
    """
    first = f'<tspan font-size="{number(us_size)}" font-weight="700">{escape(us)}</tspan>'
    return f'{first} <tspan font-size="{number(si_size)}" dx="2">{escape(si)}</tspan>'


def way_of(points):
    """Write a line through points as the way of a path.

    Parameters
    ----------
    points : iterable of (float, float)
        On the paper [px].

    Returns
    -------
    str
        The way, not closed [-].

    Examples
    --------
    >>> way_of([(0, 0), (2.5, 1)])
    'M0 0L2.5 1'

    References
    ----------
    Common practice, no source.
    """
    return "M" + "L".join(f"{number(x)} {number(y)}" for x, y in points)


def type_width(words, size, bold=False):
    """Estimate how wide a line of type is, on the safe side.

    Parameters
    ----------
    words : str
        One line [-].
    size : float
        Height of the type [px].
    bold : bool
        Bold or not [-].

    Returns
    -------
    float
        Width [px].

    Examples
    --------
    >>> type_width("1524 mm", 10.0) > type_width("15 mm", 10.0)
    True

    References
    ----------
    Judgement: mean advance of a plain sans-serif.
    """
    narrow = sum(1 for sign in words if sign in " .,'-il1|()/\"")
    return size * (0.33 * narrow + 0.60 * (len(words) - narrow)) * (1.06 if bold else 1.0)


def along(coords):
    """Middle, outward direction and reading angle of a straight edge on the paper.

    Parameters
    ----------
    coords : pair of (float, float)
        Its ends on the paper, the piece on its right hand because y runs down [px].

    Returns
    -------
    tuple of float
        x, y, outward x, outward y, length, angle to turn type by [px, -, deg].

    Examples
    --------
    >>> along(((0.0, 10.0), (100.0, 10.0)))
    (50.0, 10.0, 0.0, 1.0, 100.0, 0.0)

    References
    ----------
    Derived: geometry.
    """
    (x1, y1), (x2, y2) = coords
    dx, dy = x2 - x1, y2 - y1
    size = math.hypot(dx, dy) or 1.0
    turn = math.degrees(math.atan2(dy, dx))
    if turn > 90.0 - 1e-6 or turn < -90.0 - 1e-6:  # read from below or from the right, never upside down
        turn += 180.0 if turn < 0 else -180.0
    return (x1 + x2) / 2, (y1 + y2) / 2, -dy / size + 0.0, dx / size + 0.0, size, turn + 0.0
