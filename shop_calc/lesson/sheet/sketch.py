"""The piece from above with its sizes, for paper."""

from math import cos, radians, sin

from shop_calc.lesson.sheet.drawing import (
    INK,
    PAPER,
    along,
    box,
    number,
    pair,
    svg,
    text,
    type_width,
    way_of,
)
from shop_calc.trade.shape.drop_words import drop_words
from shop_calc.units import show

WIDE, MOST_TALL = 336.0, 156.0
BARE, SIDE, TOP = 8.0, 36.0, 29.0  # left free: on a side without sizes, beside and above one
US, SI, NAME = 13.0, 11.5, 10.5
NAME_IN = 11.0  # the name of an edge stands that far inside it
CORNER = 13.0  # sizes keep that much away from an inside corner, where two of them would meet
WALL_STEP, WALL_LONG = 7.0, 5.0
MOST_SIZED = 8  # more edges than that and the sizes over all must do


def sketch(piece):
    """Draw a piece to scale from above: thick where it is faced, hatched outside where it stands to a wall.

    Parameters
    ----------
    piece : Piece
        A checked piece [m].

    Returns
    -------
    str
        SVG [-].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.piece import build_piece
    >>> "1524 mm" in sketch(build_piece(rectangle(1.524, 0.381), 0.0381, True))
    True

    References
    ----------
    Common practice, no source.
    """
    paper = _Paper(piece)
    rings = [piece.plan.exterior, *piece.plan.interiors]
    parts = [f'<path d="{paper.path(rings)}" fill="{PAPER}" fill-rule="evenodd"/>']
    for region in (region for _, region in piece.drop_regions if not region.is_empty):
        for part in getattr(region, "geoms", (region,)):
            parts.append(f'<path d="{paper.path([part.exterior])}" fill="none" stroke="{INK}" stroke-dasharray="5 3"/>')
    for edge in piece.outline.edges:
        parts.append(_edge(paper, edge, edge.name in piece.exposed))
    for count, cutout in enumerate(piece.cutouts, 1):
        parts += [_edge(paper, edge, edge.name in cutout.exposed, hole=True) for edge in cutout.outline.edges]
        x, y = paper.spot(cutout.outline.polygon.centroid.coords[0])
        small = paper.small(cutout.outline.polygon)
        aside = max(9.0, cutout.outline.box_m[0] * paper.scale / 2 + 5) if small else 0.0
        parts.append(text(x + aside, y + 5, str(count), 14, True, "start" if small else "middle"))
    parts += _sizes(paper, piece)
    return svg(WIDE, paper.tall, "".join(parts), sketch_words(piece), "sketch")


def sketch_words(piece):
    """Say the sketch in words.

    Parameters
    ----------
    piece : Piece
        A checked piece [m].

    Returns
    -------
    str
        One sentence [-].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import circle
    >>> from shop_calc.trade.shape.piece import build_piece
    >>> sketch_words(build_piece(circle(0.9), 0.038, True))
    'The piece from above, circle, 2\\'-11 7/16" (900 mm) by 2\\'-11 7/16" (900 mm); faced: rim.'

    References
    ----------
    Common practice, no source.
    """
    length, width = (show(size, "length") for size in piece.outline.box_m)
    faced = ", ".join(name for name in piece.outline.edge_names if name in piece.exposed) or "none"
    walls = ", ".join(name for name in piece.outline.edge_names if name not in piece.exposed)
    return (
        f"The piece from above, {piece.outline.shape}, {length} by {width}; faced: {faced}"
        + (f"; to a wall: {walls}" if walls else "")
        + (f"; dropped (dashed): {'; '.join(drop_words(piece.drop))}" if piece.drop else "") + "."
    )  # fmt: skip


class _Paper:
    """Where metres lie on the paper: the front edge is at the bottom."""

    def __init__(self, piece):
        left, front, right, back = piece.plan.bounds
        spare = BARE if piece.outline.shape in ("rectangle", "circle") and not _bent(piece.outline) else SIDE
        top = BARE + 2 if spare == BARE else TOP
        self.scale = min((WIDE - spare - SIDE) / (right - left), (MOST_TALL - top - TOP) / (back - front))
        across, deep = self.scale * (right - left), self.scale * (back - front)
        self.tall = deep + top + TOP
        self.left = spare + (WIDE - spare - SIDE - across) / 2 - self.scale * left
        self.low = top + deep + self.scale * front
        self.outer = (*self.spot((left, back)), *self.spot((right, front)))
        self.taken = [self._box(cutout.outline.polygon) for cutout in piece.cutouts]

    def _box(self, polygon):
        left, low, right, high = polygon.bounds
        (x1, y1), (x2, y2) = self.spot((left, high)), self.spot((right, low))
        return x1 - 3, y1 - 3, x2 + (20 if self.small(polygon) else 3), y2 + 3

    def small(self, polygon):
        """Whether an opening is too small for its number, which then stands to its right."""
        left, low, right, high = polygon.bounds
        return min(right - left, high - low) * self.scale < 18

    def free(self, x, y, wide, tall):
        """Whether type centred there stays off every opening and other type."""
        return not any(
            x - wide / 2 < right and x + wide / 2 > left and y - tall / 2 < low and y + tall / 2 > high
            for left, high, right, low in self.taken
        )

    def beyond(self, x, y, out_x, out_y):
        """How far it is from a place, straight out of a notch, until the whole piece is left behind."""
        left, high, right, low = self.outer
        ways = ((x - left, -out_x), (right - x, out_x), (y - high, -out_y), (low - y, out_y))
        return next(far for far, out in ways if out > 0.7)

    def take(self, x, y, wide, tall):
        """Keep that place for what is drawn there."""
        self.taken.append((x - wide / 2 - 2, y - tall / 2 - 2, x + wide / 2 + 2, y + tall / 2 + 2))

    def spot(self, point):
        return self.left + self.scale * point[0], self.low - self.scale * point[1]

    def path(self, rings):
        return " ".join(f"{way_of(map(self.spot, ring.coords[:-1]))}Z" for ring in rings)


def _edge(paper, edge, faced, hole=False):
    points = [paper.spot(point) for point in edge.coords]
    way = way_of(points)
    thick = 4.5 if faced else 1.2
    cap = ' stroke-linecap="square"' if faced else ""
    parts = [f'<path d="{way}" fill="none" stroke="{INK}" stroke-width="{thick}"{cap}/>']
    if not faced and not hole and edge.straight:
        x1, y1, x2, y2 = *points[0], *points[1]
        out_x, out_y, size = along(points)[2:5]
        ahead_x, ahead_y = (x2 - x1) / size, (y2 - y1) / size
        count = max(int(size / WALL_STEP), 1)
        ways = []
        for place in range(count):
            at = (place + 0.5) / count * size
            x, y = x1 + ahead_x * at, y1 + ahead_y * at
            end_x, end_y = x + WALL_LONG * (out_x + 0.7 * ahead_x), y + WALL_LONG * (out_y + 0.7 * ahead_y)
            ways.append(f"M{number(x)} {number(y)}L{number(end_x)} {number(end_y)}")
        parts.append(f'<path d="{"".join(ways)}" fill="none" stroke="{INK}" stroke-width="0.9"/>')
    return "".join(parts)


def _bent(outline):
    return any(not edge.straight for edge in outline.edges) and outline.shape != "circle"


def _sizes(paper, piece):
    outline = piece.outline
    if any(not edge.straight for edge in outline.edges) or len(outline.edges) > MOST_SIZED:
        return _over_all(paper, piece)
    parts, done = [], set()
    alike = outline.shape != "polygon"  # a size that stands opposite is not said twice
    edges = outline.edges
    for before, edge, after in zip(edges[-1:] + edges[:-1], edges, edges[1:] + edges[:1], strict=True):
        line = along([paper.spot(point) for point in edge.coords])
        key = (round(edge.length_m, 4), round(line[5]))
        if not alike or key not in done:
            done.add(key)
            inside = (_turns_in(before, edge), _turns_in(edge, after))
            parts.append(_beside(paper, edge, line, inside))
        parts += _name(paper, edge.name, line, max([0.0, *(drop.width_m for drop in piece.drop if drop.edge == edge.name)]))
    return parts


def _turns_in(first, then):
    """Whether the corner between two edges is an inside corner of the piece."""
    (x1, y1), (x2, y2) = first.coords
    (_, _), (x3, y3) = then.coords
    return (x2 - x1) * (y3 - y2) - (y2 - y1) * (x3 - x2) < 0


def _beside(paper, edge, line, inside):
    """The size of an edge outside it, away from inside corners and from other sizes."""
    x, y, out_x, out_y, room, turn = line
    ahead_x, ahead_y = out_y, -out_x  # the way the edge runs on the paper
    room += 4 - CORNER * (inside[0] + inside[1])
    us, si = show(edge.length_m, "length", "us"), show(edge.length_m, "length", "si")
    wide = type_width(us, US, True) + type_width(si, SI) + 6
    tall = 14.0
    if wide > room:
        wide, tall = max(type_width(us, US, True), type_width(si, SI)), 25.0
    away = 6.0 + tall / 2
    size_x, size_y = (tall, wide) if abs(turn) > 45 else (wide, tall)
    way = CORNER * (inside[0] - inside[1])
    slides = [step * way for step in (0.5, 1.0, 1.5, 2.0, 2.5)] if way else [0.0, 8.0, -8.0, 16.0, -16.0]
    spots = [(away, slide) for slide in slides]
    spots += [(paper.beyond(x, y, out_x, out_y) + away, 0.0)] * (inside == (True, True))  # before the mouth of a notch
    spots.append((-away, 0.0))  # at last inside the piece
    for out, slide in spots:
        at_x, at_y = x + out_x * out + ahead_x * slide, y + out_y * out + ahead_y * slide
        if paper.free(at_x, at_y, size_x, size_y):
            break
    paper.take(at_x, at_y, size_x, size_y)
    return _size(at_x, at_y, turn, us, si, tall > 20)


def _name(paper, name, line, return_m):
    """The name of an edge inside it and its return, where it covers no opening; nothing where there is no room."""
    x, y, out_x, out_y, size, turn = line
    away = max(NAME_IN, return_m * paper.scale + NAME / 2 + 2)
    wide = type_width(name, NAME)
    upright = abs(turn) > 45
    down_x, down_y = -3.5 * sin(radians(turn)), 3.5 * cos(radians(turn))  # from the middle of the type to its foot
    size_x, size_y = (12.0, wide) if upright else (wide, 12.0)
    for share in (0.0, -0.28, 0.28) if wide < size - 12 else ():
        at_x, at_y = x - out_x * away - out_y * share * size, y - out_y * away + out_x * share * size
        if paper.free(at_x, at_y, size_x, size_y):
            paper.take(at_x, at_y, size_x, size_y)
            return [text(at_x + down_x, at_y + down_y, name, NAME, False, "middle", turn)]
    return []


def _size(x, y, turn, us, si, two_lines):
    """A size in both systems, centred at its place."""
    lines = ((0.0, -1.5, us, US, True), (0.0, 11.0, si, SI, False))
    if two_lines:
        inside = "".join(text(*line, "middle") for line in lines)
    else:
        inside = f'<text text-anchor="middle" y="4.5">{pair(us, si, US, SI)}</text> '
    return f'<g transform="translate({number(x)} {number(y)}) rotate({number(turn)})">{inside}</g>'


def _over_all(paper, piece):
    left, front, right, back = piece.plan.bounds
    length, width = piece.outline.box_m
    x1, y1 = paper.spot((left, front))
    x2, y2 = paper.spot((right, back))
    parts = _dimension(((x1, y1 + 12), (x2, y1 + 12)))
    parts.append(_over((x1 + x2) / 2, y1 + 24, 0.0, max(x2 - x1, 130.0), length))
    if piece.outline.shape != "circle":
        parts += _dimension(((x1 - 10, y1), (x1 - 10, y2)))
        parts.append(_over(x1 - 24, (y1 + y2) / 2, -90.0, y1 - y2, width))
    return parts


def _over(x, y, turn, room, size_m):
    us, si = show(size_m, "length", "us"), show(size_m, "length", "si")
    return _size(x, y, turn, us, si, type_width(us, US, True) + type_width(si, SI) + 6 > room)


def _dimension(ends):
    (x1, y1), (x2, y2) = ends
    level = abs(y1 - y2) < 1e-6
    ticks = [box(x - 0.5, y - 4, 1, 8, INK) if level else box(x - 4, y - 0.5, 8, 1, INK) for x, y in ends]
    return [*ticks, box(min(x1, x2) - 0.4, min(y1, y2) - 0.4, max(abs(x2 - x1), 0.8), max(abs(y2 - y1), 0.8), INK)]
