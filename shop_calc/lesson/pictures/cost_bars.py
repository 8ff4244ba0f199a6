"""What the packs of a piece cost, and how much of each stays on the shelf."""

from dataclasses import dataclass

from matplotlib.patches import Rectangle

from shop_calc.lesson.pictures.base import INK, PAPER, QUIET, ROLES, Picture
from shop_calc.lesson.pictures.lettering import NAME, PLAIN, TITLE, place, sentence, shorten
from shop_calc.lesson.pictures.scales import LANE, nice_step, stamp_ticks
from shop_calc.units import plain_number, show

WIDTH_IN, PITCH_IN, LANE_IN = 9.0, 0.33, 0.27
NAME_IN, BARS_IN, BARS_END_IN, LEFT_IN = 0.14, 2.92, 6.95, 8.86
HEAD_IN, BELOW_IN = 1.06, 0.34
_USED, _SHELF = {"fc": ROLES["base"]}, {"fc": PAPER}  # filled and empty: the same in one colour
NUMBER_IN = 0.70  # room for the price behind the longest bar


@dataclass(frozen=True)
class CostRow:
    """One material.

    Parameters
    ----------
    name : str
        What is bought [-].
    cash, used : float
        Price of the whole packs, and of the share of them that is used [currency].
    left_over : float
        What remains of the packs [kg, m3 or -].
    kind : str
        mass, liquid or number [-].

    Examples
    --------
    >>> CostRow("stone", 7.5, 4.05, 10.4, "mass").used
    4.05
    """

    name: str
    cash: float
    used: float
    left_over: float
    kind: str

    def left_words(self, system="both"):
        """What remains, in words."""
        if self.left_over <= 1e-9:
            return "nothing"
        if self.kind == "number":
            return plain_number(self.left_over)
        return show(self.left_over, self.kind, system)


class CostBars(Picture):
    """A bar for each material, as long as its packs cost; filled as far as they are used.

    Built for a number of rows and a scale, then moved in place.

    Parameters
    ----------
    rows : sequence of CostRow
        In the order in which they are shown [currency].
    money : callable
        `money(amount)`: an amount as the shop writes it [-].
    most : float, optional
        End of the scale; a little more than the dearest row if not given [currency].
    title : str
        One line over the picture [-].
    """

    kind = "tall"

    def __init__(self, rows, money, most=None, title="What the packs cost"):
        self._count, self._money, self.title = len(rows), money, title
        self.most = most or max([row.cash for row in rows] + [1.0])
        self.per_in = self.most / (BARS_END_IN - BARS_IN - NUMBER_IN)
        super().__init__()
        self.update(rows)

    def build(self, axes):
        """Lanes, bars, the key and the head of the last column."""
        figure, body = self.figure, self._count * PITCH_IN
        height = HEAD_IN + body + BELOW_IN
        figure.set_size_inches(WIDTH_IN, height)
        across = (BARS_END_IN - BARS_IN) / WIDTH_IN
        axes.set_position([BARS_IN / WIDTH_IN, BELOW_IN / height, across, body / height])
        axes.set(xlim=(0, self.per_in * (BARS_END_IN - BARS_IN)), ylim=(0, body), yticks=[])
        axes.grid(False)
        axes.spines[["left", "bottom"]].set_visible(False)
        axes.tick_params(axis="x", length=0, pad=4, labelsize=PLAIN)
        step = nice_step(self.most, 5)
        marks = [n * step for n in range(int(self.most / step + 1e-9) + 1)]
        axes.set_xticks(marks, [self._money(mark).removesuffix(".00") for mark in marks])
        stamp_ticks(axes.xaxis)
        for mark in marks[1:]:
            axes.axvline(mark, color=PAPER, lw=1.6, zorder=1.5)
        place(figure, NAME_IN, height - 0.24, shorten(self.title, 8.7, TITLE, "bold"), size=TITLE, weight="bold")
        self._sums = place(figure, NAME_IN, height - 0.54, size=NAME)
        self._key(height - HEAD_IN + 0.16)
        self.bars = [self._lane(axes, body - (number + 0.5) * PITCH_IN) for number in range(self._count)]

    def _key(self, y_in):
        height = self.figure.get_size_inches()[1]
        for at_in, words, look in ((BARS_IN, "used", _USED), (BARS_IN + 0.95, "stays on the shelf", _SHELF)):
            box = Rectangle((at_in / WIDTH_IN, (y_in - 0.08) / height), 0.26 / WIDTH_IN, 0.16 / height,
                            transform=self.figure.transFigure, ec=INK, lw=1.0, **look)  # fmt: skip
            self.figure.add_artist(box)
            place(self.figure, at_in + 0.34, y_in, words)
        place(self.figure, LEFT_IN, y_in, "left over", color=QUIET, ha="right")

    def _lane(self, axes, middle):
        low, tall, wide = middle - LANE_IN * 0.36, LANE_IN * 0.72, self.per_in * (BARS_END_IN - BARS_IN)
        axes.add_artist(Rectangle((0, middle - LANE_IN / 2), wide, LANE_IN, fc=LANE, ec="none", zorder=1))
        shelf = axes.add_artist(Rectangle((0, low), 0, tall, ec=INK, lw=1.0, zorder=3, **_SHELF))
        used = axes.add_artist(Rectangle((0, low), 0, tall, ec=INK, lw=1.0, zorder=4, **_USED))
        y_in = BELOW_IN + middle
        words = (
            place(self.figure, NAME_IN, y_in, size=NAME),
            place(self.figure, BARS_IN, y_in),
            place(self.figure, LEFT_IN, y_in, ha="right"),
        )
        return shelf, used, words

    def update(self, rows, system="both"):
        """Move the bars to `rows`, as many as at the start; a bar beyond the scale ends with it."""
        for (shelf, used, (name, cash, left)), row in zip(self.bars, rows, strict=True):
            shelf.set_width(min(row.cash, self.most))
            used.set_width(min(row.used, self.most))
            name.set_text(shorten(row.name, BARS_IN - NAME_IN - 0.1, NAME))
            cash.set_text(self._money(row.cash))
            cash.set_x((BARS_IN + min(row.cash, self.most) / self.per_in + 0.08) / WIDTH_IN)
            left.set_text(shorten(row.left_words(system), LEFT_IN - BARS_END_IN - 0.06))
        cash, used = (sum(getattr(row, name) for row in rows) for name in ("cash", "used"))
        sums = f"packs {self._money(cash)}, used {self._money(used)}, on the shelf {self._money(cash - used)}"
        self._sums.set_text(shorten(sums, 8.7, NAME))
        each = "; ".join(
            f"{row.name}: {self._money(row.cash)}, used {self._money(row.used)}, left over {row.left_words(system)}"
            for row in rows
        )
        self.alt = f"{sentence(self.title)} Together: {sums}. {each}."
