"""Where the words of a plan go: beside their edge, outside the piece, never on one another.

All in inches on the picture.
"""

from dataclasses import dataclass

from shapely.geometry import LineString, Point, box

from shop_calc.lesson.pictures.lettering import PLAIN, width_in

LINE_IN = 0.19  # height of a line of type
AIR_IN, STEP_IN, MOST_STEPS = 0.11, 0.1, 9  # clear of a wall's strokes; then further out until it is free


@dataclass(frozen=True)
class Label:
    """A placed label.

    Parameters
    ----------
    x_in, y_in : float
        Anchor [in].
    ha : str
        "left", "center" or "right" [-].
    text : str
        Empty when there was no room [-].

    Examples
    --------
    >>> Label(1.0, 2.0, "left", "front").text
    'front'
    """

    x_in: float
    y_in: float
    ha: str
    text: str


def extent(x_in, y_in, ha, text, size=PLAIN):
    """The rectangle a text covers, with a little air.

    >>> extent(1.0, 1.0, "left", "front").bounds[0]
    0.97
    """
    wide, tall = width_in(text, size), LINE_IN * (text.count("\n") + 1)
    left = x_in - {"left": 0.0, "center": wide / 2, "right": wide}[ha]
    return box(left - 0.03, y_in - tall / 2, left + wide + 0.03, y_in + tall / 2)


def outward(coords, outline):
    """Middle of an edge and the unit vector that points out of the piece there.

    Parameters
    ----------
    coords : sequence of (float, float)
        The edge, two points or more [any length unit].
    outline : Polygon
        The piece in the same unit [any length unit].

    Returns
    -------
    tuple
        x, y of the middle and the two parts of the unit vector [same unit, -].

    Examples
    --------
    >>> from shapely.geometry import Polygon
    >>> outward([(0, 0), (2, 0)], Polygon([(0, 0), (2, 0), (2, 1), (0, 1)]))
    (1.0, 0.0, 0.0, -1.0)
    """
    line = LineString(coords)
    middle, reach = line.interpolate(0.5, normalized=True), line.length * 1e-3
    before = line.interpolate(max(line.length / 2 - reach, 0.0))
    after = line.interpolate(min(line.length / 2 + reach, line.length))
    along_x, along_y = after.x - before.x, after.y - before.y
    size = (along_x**2 + along_y**2) ** 0.5 or 1.0
    out_x, out_y = along_y / size, -along_x / size
    if outline.contains(Point(middle.x + out_x * reach, middle.y + out_y * reach)):
        out_x, out_y = -out_x, -out_y
    return middle.x, middle.y, out_x + 0.0, out_y + 0.0


def _candidates(x, y, out_x, out_y, text):
    tall, wide = LINE_IN * (text.count("\n") + 1) / 2, width_in(text)
    upright = abs(out_x) > 0.7
    across = (0.0, 2 * tall, -2 * tall) if upright else (0.0, wide / 2 + 0.25, -wide / 2 - 0.25)
    straight_out = [(step, 0.0) for step in range(4)]  # a little further out looks better than aside
    for step, aside in straight_out + [(step, a) for step in range(MOST_STEPS) for a in across]:
        away = AIR_IN + 0.05 + step * STEP_IN
        if upright:
            yield x + out_x * away, y + out_y * away + aside, "left" if out_x > 0 else "right"
        else:
            yield x + out_x * away + aside, y + out_y * (away + tall), "center"


def place_labels(edges, outline_in, sheet, keep_out=()):
    """Place one label an edge.

    Parameters
    ----------
    edges : sequence of (coords, list of str)
        The edge on the picture and its wordings, longest first [in, -].
    outline_in : Polygon
        The piece on the picture [in].
    sheet : (float, float, float, float)
        The part of the picture labels may use: left, low, right, top [in].
    keep_out : sequence of Polygon
        What else labels must not touch [in].

    Returns
    -------
    list of Label
        One an edge, its text empty where nothing fitted [in].

    Examples
    --------
    >>> from shapely.geometry import Polygon
    >>> square = Polygon([(2, 2), (4, 2), (4, 3), (2, 3)])
    >>> [label.ha for label in place_labels([([(2, 2), (4, 2)], ["front"])], square, (0, 0, 6, 6))]
    ['center']
    """
    piece = outline_in.buffer(AIR_IN, join_style="mitre")
    page, taken, labels = box(*sheet), list(keep_out), []
    for coords, wordings in edges:
        spot = outward(coords, outline_in)
        found = None
        for text in wordings:
            for x, y, ha in _candidates(*spot, text):
                covers = extent(x, y, ha, text)
                free = page.contains(covers) and not piece.intersects(covers)
                if free and not any(covers.intersects(other) for other in taken):
                    found = Label(x, y, ha, text)
                    taken.append(covers)
                    break
            if found:
                break
        labels.append(found or Label(spot[0], spot[1], "center", ""))
    return labels
