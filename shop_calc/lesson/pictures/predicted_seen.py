"""Predicted against seen: for each line the band of the plan, the band of the log, and the gap between two looks."""

from dataclasses import dataclass

from matplotlib.lines import Line2D
from matplotlib.patches import Rectangle

from shop_calc.lesson.pictures.base import INK, PAPER, QUIET, ROLES, Picture
from shop_calc.lesson.pictures.lettering import NAME, PLAIN, TITLE, place, sentence, shorten, width_in
from shop_calc.lesson.pictures.scales import LANE, clock, clock_axis, stamp_ticks

WIDTH_IN, LANE_IN, APART_IN = 9.0, 0.46, 0.12
CHART_IN, EDGE_IN, TOP_IN, BELOW_IN = 2.45, 0.2, 0.5, 0.86
BAR_IN = 0.15
TINT, HATCH = "#F6DDAA", "////"  # the plan; the log is a plain blue


@dataclass(frozen=True)
class SeenRow:
    """One line: what was foreseen and what was seen.

    Parameters
    ----------
    name : str
        What is looked for [-].
    before_h : (float, float, float)
        Low, likely and high of the plan without a log [h].
    after_h : (float, float, float) or None
        The same with the log; None where there is none [h].
    not_yet_h : float or None
        Last look at which it was not there [h].
    there_h : float or None
        First look at which it was there [h].

    Examples
    --------
    >>> SeenRow("first steel", (2.6, 3.0, 3.6), None, 2.67, 3.0).there_h
    3.0
    """

    name: str
    before_h: tuple
    after_h: tuple | None = None
    not_yet_h: float | None = None
    there_h: float | None = None


class PredictedSeen(Picture):
    """Lanes with two bands and the looks between them; built once for so many lines, then moved in place.

    Parameters
    ----------
    rows : sequence of SeenRow
        What to show first [h].
    between_h : (float, float)
        Ends of the scale, hours after the water [h].
    title : str
        One line over the picture [-].
    water_in : datetime, optional
        Start of the day, for a scale of clock times; plain hours after the water if left out [-].
    """

    def __init__(self, rows, between_h, title="", water_in=None):
        self.between_h, self.title, self.water_in, self.count = between_h, title, water_in, len(rows)
        super().__init__()
        self.update(rows)

    def build(self, axes):
        """Lanes, scale, key; every bar and mark out of the way."""
        figure, tall = self.figure, (LANE_IN + APART_IN) * self.count
        height = TOP_IN + tall + BELOW_IN
        figure.set_size_inches(WIDTH_IN, height)
        wide = WIDTH_IN - CHART_IN - EDGE_IN
        axes.set_position([CHART_IN / WIDTH_IN, BELOW_IN / height, wide / WIDTH_IN, tall / height])
        axes.set(xlim=self.between_h, ylim=(0, tall), yticks=[])
        axes.grid(False)
        axes.spines[["left", "bottom"]].set_visible(False)
        places = self._ticks(axes)
        title = shorten(self.title or "Predicted and seen", 8.7, TITLE, "bold")
        place(figure, 0.14, height - 0.24, title, size=TITLE, weight="bold")
        self._rows = []
        for number in range(self.count):
            middle = tall - (LANE_IN + APART_IN) * (number + 0.5)
            axes.add_artist(
                Rectangle(
                    (self.between_h[0], middle - LANE_IN / 2), self.between_h[1] - self.between_h[0], LANE_IN, fc=LANE,
                    ec="none", zorder=0,
                )
            )  # fmt: skip
            self._rows.append(self._row(axes, middle))
        for at in places:
            axes.axvline(at, color=PAPER, lw=1.6, zorder=0.5)
        self._key()

    def _ticks(self, axes):
        low, high = self.between_h
        if self.water_in is not None:
            return clock_axis(axes, self.water_in, low, high, most=9)
        places = [float(hour) for hour in range(int(low) + 1, int(high) + 1) if low < hour < high]
        axes.set_xticks(places, [f"{hour:.0f} h" for hour in places])
        axes.tick_params(axis="x", length=0, pad=5, labelsize=PLAIN)
        stamp_ticks(axes.xaxis)
        return places

    def _row(self, axes, middle):
        row = {"name": place(self.figure, 0.14, middle + BELOW_IN, size=NAME, weight="bold")}
        for key, up, look in (
            ("before", 0.11, {"fc": TINT, "ec": QUIET, "hatch": HATCH}),
            ("after", -0.11, {"fc": ROLES["band"], "ec": INK}),
        ):
            y = middle + up
            row[key] = axes.add_artist(Rectangle((0, y - BAR_IN / 2), 0, BAR_IN, lw=0.9, zorder=2, **look))
            (row[f"{key}_likely"],) = axes.plot([], [], color=INK, lw=2.4, zorder=3, solid_capstyle="butt")
            row[f"{key}_y"] = (y - BAR_IN / 2, y + BAR_IN / 2)
        row["middle"] = middle
        (row["gap"],) = axes.plot([], [], color=INK, lw=3.2, zorder=4, solid_capstyle="butt")
        for key, fill in (("not_yet", PAPER), ("there", INK)):
            look = {"ls": "none", "marker": "o", "ms": 9, "mfc": fill, "mec": INK, "mew": 2, "zorder": 5}
            (row[key],) = axes.plot([], [], clip_on=False, **look)
        return row

    def _key(self):
        """What bands and marks mean, under the scale."""
        figure, y = self.figure, 0.20
        height = figure.get_size_inches()[1]
        x = 0.14
        for words, look in (
            ("plan without a log", {"fc": TINT, "ec": QUIET, "hatch": HATCH}),
            ("with the log", {"fc": ROLES["band"], "ec": INK}),
        ):
            box = Rectangle(
                (x / WIDTH_IN, (y - BAR_IN / 2) / height), 0.34 / WIDTH_IN, BAR_IN / height, lw=0.9,
                transform=figure.transFigure, **look,
            )  # fmt: skip
            figure.add_artist(box)
            place(figure, x + 0.42, y, words, color=INK)
            x += 0.42 + width_in(words) + 0.28
        for words, fill in (("not yet", PAPER), ("there", INK)):
            dot = {"marker": "o", "ms": 8, "mfc": fill, "mec": INK, "mew": 2, "ls": "none"}
            figure.add_artist(Line2D([(x + 0.07) / WIDTH_IN], [y / height], transform=figure.transFigure, **dot))
            place(figure, x + 0.2, y, words, color=INK)
            x += 0.2 + width_in(words) + 0.28
        place(figure, x, y, "line in a band: likely", color=INK)

    def update(self, rows, system="both"):
        """Move bands and marks.

        Parameters
        ----------
        rows : sequence of SeenRow
            As many as the picture was built for [h].
        system : str
            Hours are the same in every system [-].

        Raises
        ------
        ValueError
            When the number of lines is not the one the picture was built for.
        """
        rows = list(rows)
        if len(rows) != self.count:
            raise ValueError(f"rows: {len(rows)} given; this picture was built for {self.count}")
        self.rows = tuple(rows)
        low, high = self.between_h
        inside = lambda hour: min(max(hour, low), high)  # noqa: E731
        for drawn, row in zip(self._rows, rows, strict=True):
            drawn["name"].set_text(shorten(row.name, CHART_IN - 0.26, NAME, "bold"))
            for key, band in (("before", row.before_h), ("after", row.after_h)):
                drawn[key].set_visible(band is not None)
                drawn[f"{key}_likely"].set_visible(band is not None)
                if band is not None:
                    start, likely, end = map(inside, band)
                    drawn[key].set(x=start, width=end - start)
                    drawn[f"{key}_likely"].set_data([likely, likely], drawn[f"{key}_y"])
            for key, at in (("not_yet", row.not_yet_h), ("there", row.there_h)):
                drawn[key].set_data(*(([inside(at)], [drawn["middle"]]) if at is not None else ([], [])))
            both = row.not_yet_h is not None and row.there_h is not None
            drawn["gap"].set_data(
                *(([inside(row.not_yet_h), inside(row.there_h)], [drawn["middle"]] * 2) if both else ([], []))
            )
        lines = " ".join(self._said(row) for row in rows)
        self.alt = f"{sentence(self.title or 'Predicted and seen')} {lines}"

    def _at(self, hour):
        if self.water_in is not None:
            return clock(self.water_in, hour)
        minutes = round(60 * hour)
        return f"{minutes // 60} h {minutes % 60:02d}"

    def _said(self, row):
        low, likely, high = map(self._at, row.before_h)
        parts = [f"plan {likely}, between {low} and {high}"]
        if row.after_h is not None:
            low, likely, high = map(self._at, row.after_h)
            parts.append(f"with the log {likely}, between {low} and {high}")
        marks = (("not yet", row.not_yet_h), ("there", row.there_h))
        looks = [f"{words} {self._at(at)}" for words, at in marks if at is not None]
        parts.append(", ".join(looks) if looks else "nobody looked")
        return f"{sentence(row.name)[:-1]}: {'; '.join(parts)}."
