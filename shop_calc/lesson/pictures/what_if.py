"""A map of one answer over two things you can choose: lines of equal answer, and where you are."""

from dataclasses import dataclass

import numpy as np
from contourpy import contour_generator
from matplotlib.collections import LineCollection
from matplotlib.patches import PathPatch, Rectangle
from matplotlib.path import Path

from shop_calc.lesson.pictures.areas import plot_area
from shop_calc.lesson.pictures.base import INK, PAPER, QUIET, Picture
from shop_calc.lesson.pictures.evaporation import field_path
from shop_calc.lesson.pictures.lettering import NAME, PLAIN, TITLE, place, shorten, width_in
from shop_calc.lesson.pictures.scales import second_scale, stamp_ticks
from shop_calc.units import convert, plain_number

WIDTH_IN, HEIGHT_IN = 9.0, 5.4
LEFT_IN, RIGHT_IN, TOP_IN, BELOW_IN = 0.92, 8.18, 1.02, 0.74
PALE, DARK = np.array([0.955, 0.965, 0.975]), np.array([0.36, 0.60, 0.76])  # one hue: light is small


@dataclass(frozen=True)
class Side:
    """One axis of the map.

    Parameters
    ----------
    values : ndarray of shape (n,)
        Rising, in `unit` [unit].
    name : str
        What it is: "room" [-].
    unit : str
        Unit of the values, as `units.convert` knows it [-].
    other_unit : str
        Unit of the far side; empty for none [-].
    words, other_words : str
        How the two units are written: "°C", "°F" [-].

    Examples
    --------
    >>> import numpy as np
    >>> Side(np.array([5.0, 35.0]), "room", "C", "F", "°C", "°F").other_unit
    'F'
    """

    values: np.ndarray
    name: str
    unit: str
    other_unit: str = ""
    words: str = ""
    other_words: str = ""


@dataclass(frozen=True)
class WhatIf:
    """What the map shows.

    Parameters
    ----------
    across, up : Side
        The two axes [their units].
    answer : ndarray of shape (n_up, n_across)
        The answer; NaN where there is none [unit of the levels].
    levels : sequence of float
        Lines to draw, rising [unit of the answer].
    say : callable
        Turns a level into words: "3 h", "11:30" [-].
    here : (float, float, float), optional
        Where you are and the answer there [units of across, up, answer].

    Examples
    --------
    >>> WhatIf(None, None, None, (2.0, 3.0), str).levels
    (2.0, 3.0)
    """

    across: Side
    up: Side
    answer: np.ndarray
    levels: tuple
    say: object
    here: tuple | None = None


class WhatIfMap(Picture):
    """The map; axes and number of lines are fixed when it is built, then lines and point move.

    Parameters
    ----------
    result : WhatIf
        What to show first [as its fields].
    title, question : str
        What the lines are, in one line, and a second one in small [-].
    """

    kind = "tall"

    def __init__(self, result, title, question=""):
        self._first, self.title, self.question = result, title, question
        super().__init__()
        self.update(result)

    def build(self, axes):
        """Axes in both systems, a field between lines, lines and their words."""
        figure, across, up = self.figure, self._first.across, self._first.up
        plot_area(axes, WIDTH_IN, HEIGHT_IN, LEFT_IN, RIGHT_IN, BELOW_IN, TOP_IN)
        axes.set(xlim=(across.values[0], across.values[-1]), ylim=(up.values[0], up.values[-1]))
        axes.grid(False)
        axes.spines[["left", "bottom"]].set_visible(False)
        axes.set_facecolor(PAPER)
        axes.tick_params(length=0, pad=6, labelsize=PLAIN)
        stamped = [axes.xaxis, axes.yaxis]
        y_top, x_mid = HEIGHT_IN - TOP_IN, (LEFT_IN + RIGHT_IN) / 2
        if up.other_unit:
            other = second_scale(axes, "y", up.unit, up.other_unit, "", most=6)
            other.tick_params(length=0)
            stamped.append(other.yaxis)
            place(figure, WIDTH_IN - 0.14, y_top + 0.17, up.other_words, size=NAME, ha="right")
        second = ""
        if across.other_unit:
            self._second_row(across)
            second = f" · {across.other_words} below"
        for axis in stamped:
            stamp_ticks(axis)
        place(figure, 0.14, y_top + 0.17, f"{up.name}, {up.words}", size=NAME)
        place(figure, x_mid, 0.17, f"{across.name}, {across.words}{second}", size=NAME, ha="center")
        place(figure, 0.14, HEIGHT_IN - 0.24, shorten(self.title, 8.7, TITLE, "bold"), size=TITLE, weight="bold")
        place(figure, 0.14, HEIGHT_IN - 0.52, shorten(self.question, 8.7), color=QUIET)
        axes.add_artist(
            Rectangle((0, 0), 1, 1, transform=axes.transAxes, fc=PAPER, ec="#B5BBC3", lw=0, hatch="xx", zorder=0.5)
        )
        levels = len(self._first.levels)
        shades = [PALE + (DARK - PALE) * n / max(levels, 1) for n in range(levels + 1)]
        self.fields = [
            axes.add_artist(PathPatch(Path([(0, 0)]), fc=shade, ec=shade, lw=0.6, zorder=1)) for shade in shades
        ]
        self.lines = axes.add_collection(LineCollection([], colors=INK, linewidths=1.4, zorder=3))
        self._plates = [axes.add_artist(Rectangle((0, 0), 0, 0, fc=PAPER, ec="none", zorder=4)) for _ in range(levels)]
        self._words = [place(figure, 0, 0, ha="center", size=PLAIN, zorder=5) for _ in range(levels)]
        (self.cross,) = axes.plot([], [], color=INK, lw=1.0, ls=(0, (2, 2)), zorder=4.5)
        (self.point,) = axes.plot([], [], marker="o", ms=13, mfc=PAPER, mec=INK, mew=3, ls="none", zorder=6, clip_on=False)
        self._here = place(figure, WIDTH_IN - 0.14, HEIGHT_IN - 0.52, size=NAME, weight="bold", ha="right")

    def _second_row(self, across):
        """The other unit of the axis across, under its own ticks."""
        axes = self.axes
        low, high = across.values[0], across.values[-1]
        ticks = [at for at in axes.get_xticks() if low <= at <= high]
        labels = [f"{plain_number(at)}\n{plain_number(convert(at, across.unit, across.other_unit), 2)}" for at in ticks]
        axes.set_xticks(ticks, labels)

    def update(self, result, system="both"):
        """Move fields, lines, words and point.

        Parameters
        ----------
        result : WhatIf
            On the same axes and with as many levels as the first [as its fields].
        system : str
            Taken for the sake of blocks; the axes show both [-].

        Raises
        ------
        ValueError
            When the number of levels is not the one the picture was built for.
        """
        if len(result.levels) != len(self._words):
            raise ValueError(f"levels: {len(result.levels)} given; this map was built for {len(self._words)}")
        answer = np.ma.masked_invalid(result.answer)
        tracer = contour_generator(result.across.values, result.up.values, answer)
        limits = (-np.inf, *result.levels, np.inf)
        for patch, low, high in zip(self.fields, limits, limits[1:], strict=False):
            patch.set_path(field_path(tracer, low, high))
        found = [tracer.lines(level) for level in result.levels]
        self.lines.set_segments([line for lines in found for line in lines])
        taken = self._point(result)
        for words, plate, lines, level in zip(self._words, self._plates, found, result.levels, strict=True):
            self._label(words, plate, lines, result.say(level), taken)
        self.alt = what_if_alt(result, self.title)

    def _point(self, result):
        there = result.here is not None
        self.point.set_data([result.here[0]] if there else [], [result.here[1]] if there else [])
        left, low = self.axes.get_xlim()[0], self.axes.get_ylim()[0]
        x, y = result.here[:2] if there else (left, low)
        self.cross.set_data([left, x, x] if there else [], [y, y, low] if there else [])
        self._here.set_text(f"here: {result.say(result.here[2])}" if there else "")
        return [(*self._at(x, y), 0.3, 0.2)] if there else []

    def _at(self, x, y):
        """Where a point of the map lies on the picture [in]."""
        (left, right), (low, high) = self.axes.get_xlim(), self.axes.get_ylim()
        return (
            LEFT_IN + (x - left) / (right - left) * (RIGHT_IN - LEFT_IN),
            BELOW_IN + (y - low) / (high - low) * (HEIGHT_IN - TOP_IN - BELOW_IN),
        )

    def _label(self, words, plate, lines, text, taken):
        """Put the words of a level on its longest line, where nothing else stands."""
        words.set_text("")
        plate.set(width=0, height=0)
        wide, tall = width_in(text) / 2 + 0.06, 0.11
        for line in sorted(lines, key=len, reverse=True):
            for share in (0.5, 0.38, 0.62, 0.26, 0.74, 0.16, 0.84):
                x, y = line[int(share * (len(line) - 1))]
                x_in, y_in = self._at(x, y)
                inside = LEFT_IN + wide < x_in < RIGHT_IN - wide and BELOW_IN + tall < y_in < HEIGHT_IN - TOP_IN - tall
                free = all(abs(x_in - a) > wide + w or abs(y_in - b) > tall + h for a, b, w, h in taken)
                if inside and free:
                    taken.append((x_in, y_in, wide, tall))
                    words.set(x=x_in / WIDTH_IN, y=y_in / HEIGHT_IN, text=text)
                    (left, right), (low, high) = self.axes.get_xlim(), self.axes.get_ylim()
                    per_x, per_y = (right - left) / (RIGHT_IN - LEFT_IN), (high - low) / (HEIGHT_IN - TOP_IN - BELOW_IN)
                    plate.set(x=x - wide * per_x, y=y - tall * per_y, width=2 * wide * per_x, height=2 * tall * per_y)
                    return


def what_if_alt(result, title):
    """The map in words.

    Parameters
    ----------
    result : WhatIf
        What is shown [as its fields].
    title : str
        What the lines are [-].

    Returns
    -------
    str
        Alt text [-].
    """

    def both(side, value):
        text = f"{plain_number(value)} {side.words}".strip()
        if side.other_unit:
            text += f" ({plain_number(convert(value, side.unit, side.other_unit))} {side.other_words})"
        return text

    across, up, answer = result.across, result.up, result.answer
    said = [
        f"{title}. Map: {across.name} across from {both(across, across.values[0])} to "
        f"{both(across, across.values[-1])}, "
        f"{up.name} upwards from {both(up, up.values[0])} to {both(up, up.values[-1])}.",
        f"The answer runs from {result.say(np.nanmin(answer))} to {result.say(np.nanmax(answer))}.",
    ]
    if np.isnan(answer).any():
        said.append("The hatched part cannot be reached.")
    if result.here is not None:
        x, y, value = result.here
        said.append(f"Here, {across.name} {both(across, x)} and {up.name} {both(up, y)}: {result.say(value)}.")
    return " ".join(said)
