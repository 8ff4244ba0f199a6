"""One top, whole and cut up: the same area on top, more and more edge, so more face for the volume."""

from dataclasses import dataclass

from matplotlib.patches import Rectangle

from shop_calc.lesson.pictures.areas import whole_page
from shop_calc.lesson.pictures.base import INK, PAPER, QUIET, ROLES, Picture
from shop_calc.lesson.pictures.lettering import NAME, TITLE, place, sentence
from shop_calc.lesson.pictures.ribbon_key import TINTS
from shop_calc.lesson.pictures.scales import LANE, nice_step
from shop_calc.units import show

WIDTH_IN, ROW_IN, TOP_IN, BELOW_IN = 9.0, 1.44, 0.5, 0.94
PIECES_IN, CHART_IN, CHART_WIDE_IN = (0.2, 3.75), 4.35, 3.6  # where the pieces lie from left to right; the bars
GAP_IN, BAR_IN = 0.12, 0.4


@dataclass(frozen=True)
class FaceShare:
    """A top cut into equal pieces, and the share of their volume that is face.

    Parameters
    ----------
    along, across : int
        How many pieces lie along the length and across the width [-].
    length_m, width_m : float
        One piece [m].
    edge_m : float
        Edges of all pieces together [m].
    top_share, edge_share : float
        Face on the tops, and face on the edges below it, over the whole volume [fraction].

    Examples
    --------
    >>> FaceShare(2, 1, 0.762, 0.381, 4.572, 0.1667, 0.0426).count
    2
    """

    along: int
    across: int
    length_m: float
    width_m: float
    edge_m: float
    top_share: float
    edge_share: float

    @property
    def count(self):
        """How many pieces."""
        return self.along * self.across


class FaceShares(Picture):
    """A row for each way of cutting: the pieces from above, to scale, and a bar of top and edges.

    Parameters
    ----------
    rows : sequence of FaceShare
        The same top, whole first [as its fields].
    title : str
        One line over the picture [-].
    """

    kind = "tall"

    def __init__(self, rows, title):
        self.rows, self.title = tuple(rows), title
        whole = self.rows[0]
        wide = PIECES_IN[1] - PIECES_IN[0] - GAP_IN * (max(row.along for row in self.rows) - 1)
        tall = ROW_IN - 0.52 - GAP_IN * (max(row.across for row in self.rows) - 1)
        self.in_per_m = min(wide / (whole.along * whole.length_m), tall / (whole.across * whole.width_m))
        self.most = 1.28 * max(row.top_share + row.edge_share for row in self.rows)
        super().__init__()
        self.update(self.rows)

    def build(self, axes):
        """A sheet in inches; a row a cut."""
        height = TOP_IN + ROW_IN * len(self.rows) + BELOW_IN
        whole_page(axes, WIDTH_IN, height)
        figure = self.figure
        place(figure, 0.14, height - 0.24, self.title, size=TITLE, weight="bold")
        self._scale(axes, BELOW_IN + ROW_IN * len(self.rows))
        self._pieces, self._bars, self._words = [], [], []
        for number, row in enumerate(self.rows):
            middle = BELOW_IN + ROW_IN * (len(self.rows) - number - 0.5)
            look = {"fc": TINTS["face"], "ec": ROLES["face"], "lw": 3.0, "joinstyle": "miter", "zorder": 2}
            rim = {"fc": "none", "ec": INK, "lw": 5.0, "joinstyle": "miter"}
            rims, tops = (
                [axes.add_artist(Rectangle((0, 0), 0, 0, **each)) for _ in range(row.count)] for each in (rim, look)
            )
            self._pieces.append((middle + 0.14, rims, tops))
            bar = {"ec": INK, "lw": 1.0, "zorder": 3}
            self._bars.append((
                axes.add_artist(Rectangle((CHART_IN, middle - BAR_IN / 2 + 0.14), 0, BAR_IN, fc=TINTS["face"], **bar)),
                axes.add_artist(Rectangle((0, middle - BAR_IN / 2 + 0.14), 0, BAR_IN, fc=ROLES["face"], hatch="//", **bar)),
            ))  # fmt: skip
            self._words.append((
                place(figure, PIECES_IN[0], middle - ROW_IN / 2 + 0.13, size=NAME),
                place(figure, 0, middle + 0.14, size=NAME, weight="bold"),
                place(figure, CHART_IN + 0.1, middle - ROW_IN / 2 + 0.13, color=QUIET),
            ))  # fmt: skip
        self._key(axes)

    def _scale(self, axes, top_in):
        step = nice_step(self.most, 5)
        wide = CHART_WIDE_IN
        axes.add_artist(Rectangle((CHART_IN, BELOW_IN), wide, top_in - BELOW_IN, fc=LANE, ec="none", zorder=0))
        for number in range(int(self.most / step + 1e-9) + 1):
            at = CHART_IN + wide * number * step / self.most
            axes.plot([at, at], [BELOW_IN, top_in], color=PAPER, lw=1.6, zorder=1)
            place(self.figure, at, BELOW_IN - 0.16, f"{100 * number * step:g} %", ha="center")
        place(self.figure, CHART_IN, BELOW_IN - 0.4, "face, as a share of the volume", color=QUIET)

    def _key(self, axes):
        for x_in, look, words in (
            (0.2, {"fc": TINTS["face"]}, "face on the top"),
            (2.0, {"fc": ROLES["face"], "hatch": "//"}, "face on the edges, below the top"),
        ):
            axes.add_artist(Rectangle((x_in, 0.1), 0.24, 0.2, ec=INK, lw=1.0, **look))
            place(self.figure, x_in + 0.32, 0.2, words, color=QUIET)
        place(self.figure, 0.2, BELOW_IN - 0.16, "seen from above, to scale;", color=QUIET)
        place(self.figure, 0.2, BELOW_IN - 0.4, "a thick line is an edge that shows", color=QUIET)

    def update(self, rows, system="both"):
        """Move pieces and bars.

        Parameters
        ----------
        rows : sequence of FaceShare
            As many rows and pieces as the picture was built for [as its fields].
        system : str
            "us", "si" or "both" [-].

        Raises
        ------
        ValueError
            When there are other pieces than the picture was built for.
        """
        rows = tuple(rows)
        if [row.count for row in rows] != [row.count for row in self.rows]:
            raise ValueError(f"pieces: {[row.count for row in rows]} given; built for {[row.count for row in self.rows]}")
        for row, (middle, rims, tops), bars, words in zip(rows, self._pieces, self._bars, self._words, strict=True):
            long, wide = row.length_m * self.in_per_m, row.width_m * self.in_per_m
            low = middle - (row.across * wide + (row.across - 1) * GAP_IN) / 2
            for number in range(row.count):
                place_in = (
                    PIECES_IN[0] + (number % row.along) * (long + GAP_IN), low + (number // row.along) * (wide + GAP_IN),
                )  # fmt: skip
                for shape in (rims[number], tops[number]):
                    shape.set(xy=place_in, width=long, height=wide)
            top, edge = (CHART_WIDE_IN * share / self.most for share in (row.top_share, row.edge_share))
            bars[0].set_width(top)
            bars[1].set(x=CHART_IN + top, width=edge)
            words[0].set_text(_pieces_words(row, system))
            words[1].set(x=(CHART_IN + top + edge + 0.1) / WIDTH_IN, text=_percent(row.top_share + row.edge_share))
            words[2].set_text(_edge_words(row, system))
        self.rows = rows
        self.alt = face_shares_alt(rows, self.title, system)


def _pieces_words(row, system):
    size = f"{show(row.length_m, 'length', system)} by {show(row.width_m, 'length', system)}"
    return f"{row.count} of {size}" if row.count > 1 else f"whole: {size}"


def _percent(share):
    return f"{100 * share:.1f} %"


def _edge_words(row, system):
    return f"{show(row.edge_m, 'length', system)} of edge in all"


def face_shares_alt(rows, title, system="both"):
    """The picture in words.

    Parameters
    ----------
    rows, title, system : as there
        As for `FaceShares` [-].

    Returns
    -------
    str
        Alt text [-].

    Examples
    --------
    >>> face_shares_alt([FaceShare(1, 1, 1.524, 0.381, 3.81, 1 / 6, 0.0345)], "Cut up", "si")[8:59]
    'Whole: 1524 mm by 381 mm, 3810 mm of edge in all: f'
    """
    said = [sentence(title)]
    for row in rows:
        top, edge, both = map(_percent, (row.top_share, row.edge_share, row.top_share + row.edge_share))
        said.append(sentence(
            f"{_pieces_words(row, system)}, {_edge_words(row, system)}: face on the top {top} of the volume, on the edges "
            f"{edge}, together {both}"
        ))  # fmt: skip
    return " ".join(said)
