"""The days that today could still be: when a stage opens on each, before and after a look.

Fifty dots stand for all of them, so that chances can be counted: a dot is one day in fifty.
"""

from dataclasses import dataclass

import numpy as np
from matplotlib.lines import Line2D
from matplotlib.patches import Rectangle

from shop_calc.lesson.pictures.base import INK, PAPER, QUIET, ROLES, Picture
from shop_calc.lesson.pictures.lettering import NAME, TITLE, place, shorten, width_in, wrap
from shop_calc.lesson.pictures.scales import LANE, clock, clock_axis

WIDTH_IN, LEFT_IN, EDGE_IN = 9.0, 1.5, 0.2
TOP_IN, BELOW_IN, STRIP_IN, GAP_IN = 0.74, 0.62, 1.62, 0.3
DOTS, COLUMNS = 50, 46
MARKS = (0.05, 0.50, 0.95)


@dataclass(frozen=True)
class OpeningTimes:
    """One strip of the picture.

    Parameters
    ----------
    name : str
        "before the look", "after it" [-].
    open_h : ndarray of shape (days,)
        When the stage opens on each day, hours after the first water [h].
    weight : ndarray of shape (days,)
        How likely each day is; they sum to one [-].
    marks_h : (float, float, float)
        The 5 %, 50 % and 95 % times, as the model gives them [h].

    Examples
    --------
    >>> import numpy as np
    >>> OpeningTimes("before", np.array([2.0, 3.0]), np.array([0.5, 0.5]), (2.0, 2.5, 3.0)).marks_h[1]
    2.5
    """

    name: str
    open_h: np.ndarray
    weight: np.ndarray
    marks_h: tuple


def dot_times_h(open_h, weight, count=DOTS):
    """Times that split the days into equal parts, one dot a part.

    Parameters
    ----------
    open_h, weight : ndarray of shape (days,)
        Opening times and how likely each is [h, -].
    count : int
        Number of dots [-].

    Returns
    -------
    ndarray of shape (count,)
        Rising times [h].

    Examples
    --------
    >>> import numpy as np
    >>> dot_times_h(np.array([3.0, 1.0, 2.0]), np.array([0.25, 0.25, 0.50]), 4).tolist()
    [1.0, 2.0, 2.0, 3.0]
    """
    known = np.isfinite(open_h)
    times, weight = np.asarray(open_h)[known], np.asarray(weight)[known]
    if not len(times) or weight.sum() <= 0:
        return np.empty(0)
    order = np.argsort(times, kind="stable")
    reached = np.cumsum(weight[order]) / weight.sum()
    at = np.searchsorted(reached, (np.arange(count) + 0.5) / count)
    return times[order][np.minimum(at, len(times) - 1)]


class FiftyDays(Picture):
    """Strips of dots over one clock; built for a number of strips, then moved in place.

    Parameters
    ----------
    strips : sequence of OpeningTimes
        One or two [h].
    water_in : datetime
        When the first water meets the powder [-].
    between_h : (float, float), optional
        Ends of the clock, fixed [h].
    title : str
        One line over the picture [-].
    """

    kind = "tall"

    def __init__(self, strips, water_in, between_h=None, title="When it opens, on fifty days like today"):
        self.water_in, self.title, self._count = water_in, title, len(strips)
        dots = [dot_times_h(strip.open_h, strip.weight) for strip in strips]
        times = np.concatenate([*dots, *(strip.marks_h for strip in strips)])  # one day in a hundred may lie beyond
        times = times[np.isfinite(times)]
        if between_h is None and not len(times):
            raise ValueError("open_h: no day opens; give between_h for an empty picture")
        self.between_h = between_h or (np.floor(4 * times.min()) / 4 - 0.25, np.ceil(4 * times.max()) / 4 + 0.25)
        super().__init__()
        self.update(strips)

    def build(self, axes):
        """Lanes, clock, dots and marks."""
        figure, count = self.figure, self._count
        body = count * STRIP_IN + (count - 1) * GAP_IN
        height = TOP_IN + body + BELOW_IN
        figure.set_size_inches(WIDTH_IN, height)
        wide = WIDTH_IN - LEFT_IN - EDGE_IN
        axes.set_position([LEFT_IN / WIDTH_IN, BELOW_IN / height, wide / WIDTH_IN, body / height])
        axes.set(ylim=(0, body), yticks=[])
        clock_axis(axes, self.water_in, *self.between_h, most=9)
        axes.tick_params(axis="x", length=0, pad=5)
        axes.grid(False)
        axes.spines[["left", "bottom"]].set_visible(False)
        self.per_h = wide / (self.between_h[1] - self.between_h[0])
        for at in axes.get_xticks():
            axes.axvline(at, color=PAPER, lw=1.6, zorder=1.5)
        place(figure, 0.14, height - 0.24, shorten(self.title, 8.7, TITLE, "bold"), size=TITLE, weight="bold")
        self.strips, self.gone, self._look_words = [], [], []
        for number in range(count):
            foot = body - (number + 1) * STRIP_IN - number * GAP_IN
            self.strips.append(self._strip(axes, foot, number))
            look = {"fc": "#C3C9D1", "ec": "none", "zorder": 1.2, "visible": False}
            self.gone.append([axes.add_artist(Rectangle((0, foot), 0, STRIP_IN, **look)) for _ in range(2)])
        self.looks = []
        for words, fill, rim, y in (("not yet", PAPER, INK, 0.38), ("cue there", INK, PAPER, 0.16)):
            look = {"ls": "none", "marker": "o", "ms": 9, "mfc": fill, "mec": rim, "mew": 2}
            self.looks.append(axes.plot([], [], zorder=8, clip_on=False, **look)[0])
            key = Line2D([0.24 / WIDTH_IN], [y / height], transform=figure.transFigure, **look)
            self._look_words.append((figure.add_artist(key), place(figure, 0.4, y, words, color=QUIET)))

    def _strip(self, axes, foot, number):
        low, high = self.between_h
        axes.add_artist(Rectangle((low, foot), high - low, STRIP_IN, fc=LANE, ec="none", zorder=1))
        look = {"mfc": PAPER if number == 0 else ROLES["band"], "mec": INK, "mew": 1.0}
        (dots,) = axes.plot([], [], ls="none", marker="o", ms=8, zorder=4, **look)
        marks = [axes.plot([], [], color=INK, lw=2.4 if share == 0.5 else 1.4, zorder=3)[0] for share in MARKS]
        y_in = BELOW_IN + foot
        return {
            "foot": foot,
            "dots": dots,
            "marks": marks,
            "times": [
                place(self.figure, 0, y_in + STRIP_IN - 0.14, ha="center", weight="bold" if s == 0.5 else "normal")
                for s in MARKS
            ],
            "name": place(self.figure, 0.14, y_in + STRIP_IN - 0.14, size=NAME, weight="bold", va="top"),
            "note": place(self.figure, 0.14, y_in + 0.32, color=QUIET),
        }

    def update(self, strips, system="both", *, not_yet_h=None, there_h=None):
        """Move dots and marks.

        Parameters
        ----------
        strips : sequence of OpeningTimes
            As many as the picture was built for [h].
        system : str
            Taken for the sake of blocks; times are the same in both [-].
        not_yet_h, there_h : float, optional
            Last look at which the cue was missing, first at which it was there [h].

        Raises
        ------
        ValueError
            When the number of strips is not the one the picture was built for.
        """
        if len(strips) != self._count:
            raise ValueError(f"strips: {len(strips)} given; this picture was built for {self._count}")
        for shapes, strip in zip(self.strips, strips, strict=True):
            self._move(shapes, strip)
        low, high = self.between_h
        for line, key, at in zip(self.looks, self._look_words, (not_yet_h, there_h), strict=True):
            line.set_data([] if at is None else [at], [] if at is None else [0.0])
            for artist in key:
                artist.set_visible(at is not None)
        ends = ((low, not_yet_h), (there_h, high))
        for pair in self.gone:
            for patch, (start, end) in zip(pair, ends, strict=True):
                patch.set_visible(start is not None and end is not None)
                if patch.get_visible():
                    patch.set(x=max(start, low), width=max(min(end, high) - max(start, low), 0.0))
        self.alt = fifty_days_alt(strips, self.water_in, self.title, not_yet_h=not_yet_h, there_h=there_h)

    def _move(self, shapes, strip):
        low, high = self.between_h
        times = dot_times_h(strip.open_h, strip.weight)
        column = np.clip(((times - low) / (high - low) * COLUMNS).astype(int), 0, COLUMNS - 1)
        level = np.array([np.sum(column[:n] == c) for n, c in enumerate(column)], dtype=float)
        room = STRIP_IN - 0.44
        step = min(0.125, room / max(level.max() + 1, 1)) if len(level) else 0.125
        x = low + (column + 0.5) * (high - low) / COLUMNS
        shapes["dots"].set_data(x, shapes["foot"] + 0.09 + level * step)
        taken = []
        for line, words, at in zip(shapes["marks"], shapes["times"], strip.marks_h, strict=True):
            line.set_data([at, at], [shapes["foot"], shapes["foot"] + STRIP_IN - 0.26])
            words.set_text(clock(self.water_in, at))
            taken.append(LEFT_IN + (at - low) * self.per_h)
        for words, x_in in zip(shapes["times"], _spread(taken, width_in("00:00", weight="bold") + 0.08), strict=True):
            words.set_x(x_in / WIDTH_IN)
        shapes["name"].set_text(wrap(strip.name, LEFT_IN - 0.2, 3, NAME, "bold"))
        shapes["note"].set_text("5, 50, 95 %\nof days open")


def _spread(places_in, least_in):
    """Three places pushed apart from the middle one until they are far enough."""
    first, middle, last = places_in
    return min(first, middle - least_in), middle, max(last, middle + least_in)


def fifty_days_alt(strips, water_in, title="When it opens, on fifty days like today", *, not_yet_h=None, there_h=None):
    """The days in words.

    Parameters
    ----------
    strips, water_in, title, not_yet_h, there_h : as there
        As for `FiftyDays` [h].

    Returns
    -------
    str
        Alt text [-].
    """
    said = [f"{title}."]
    for strip in strips:
        five, half, most = (clock(water_in, at) for at in strip.marks_h)
        said.append(f"{strip.name.capitalize()}: 5 % of days open by {five}, half by {half}, 95 % by {most}.")
    if not_yet_h is not None:
        said.append(f"Not there yet at {clock(water_in, not_yet_h)}.")
    if there_h is not None:
        said.append(f"There at {clock(water_in, there_h)}.")
    return " ".join(said)
