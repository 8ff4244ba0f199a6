"""How stiff the mortar gets over the day: the band of the model, the windows of the tools, rod readings on top."""

from dataclasses import dataclass

import numpy as np
from matplotlib.patches import Rectangle
from matplotlib.ticker import NullLocator

from shop_calc.lesson.pictures.areas import plot_area
from shop_calc.lesson.pictures.base import INK, PAPER, QUIET, ROLES, Picture
from shop_calc.lesson.pictures.lettering import NAME, TITLE, place, shorten
from shop_calc.lesson.pictures.scales import LANE, clock, clock_axis, stamp_ticks
from shop_calc.units import convert, plain_number, show

WIDTH_IN, HEIGHT_IN = 9.0, 5.0
LEFT_IN, RIGHT_IN, NAME_IN, TOP_IN, BELOW_IN = 0.62, 6.60, 7.34, 0.92, 0.92
WINDOW = "#F6DDAA"  # the face, pale, as on the ribbon of the day
TICKS_PSI = (10, 20, 50, 100, 200, 500, 1000)
TICKS_KPA = (100, 200, 500, 1000, 2000, 5000, 10000)
ENDS_PA = (55_158.0, 11_031_600.0)  # 8 to 1600 psi: the power law is not to be shown in the soft stage


@dataclass(frozen=True)
class SetCurve:
    """What the picture shows.

    Parameters
    ----------
    time_h : ndarray of shape (n,)
        Hours after the first water, rising [h].
    low_pa, likely_pa, high_pa : ndarray of shape (n,)
        Penetration resistance: 5, 50 and 95 % of the days [Pa].
    windows : tuple of (str, float, float)
        Name of what is done, and the resistances at which it opens and closes [-, Pa, Pa].
    readings : tuple of (float, float, bool)
        Hours after the first water, resistance, and whether the thick rod was used [h, Pa, -].

    Examples
    --------
    >>> import numpy as np
    >>> SetCurve(np.zeros(2), np.zeros(2), np.zeros(2), np.zeros(2), ()).readings
    ()
    """

    time_h: np.ndarray
    low_pa: np.ndarray
    likely_pa: np.ndarray
    high_pa: np.ndarray
    windows: tuple
    readings: tuple = ()


class StiffeningCurve(Picture):
    """The curve on the clock; axes and windows are fixed when it is built, then band and readings move.

    Parameters
    ----------
    result : SetCurve
        What to show first; its hours fix the clock [as its fields].
    water_in : datetime
        When the first water meets the powder [-].
    between_pa : (float, float)
        Ends of the scale [Pa].
    title : str
        One line over the picture [-].
    """

    kind = "tall"

    def __init__(self, result, water_in, between_pa=ENDS_PA, title="How stiff the face gets"):
        self._first, self.water_in, self.between_pa, self.title = result, water_in, between_pa, title
        super().__init__()
        self.update(result)

    def build(self, axes):
        """Clock, two scales of pressure, windows, band, line and marks."""
        figure, first = self.figure, self._first
        plot_area(axes, WIDTH_IN, HEIGHT_IN, LEFT_IN, RIGHT_IN, BELOW_IN, TOP_IN)
        axes.set_facecolor(LANE)
        axes.set_yscale("log")
        axes.set_ylim(*self.between_pa)
        axes.spines[["left", "bottom"]].set_visible(False)
        clock_axis(axes, self.water_in, float(first.time_h[0]), float(first.time_h[-1]), most=9)
        axes.grid(color=PAPER, lw=1.6)
        self._scales(axes)
        place(figure, 0.14, HEIGHT_IN - 0.24, shorten(self.title, 8.7, TITLE, "bold"), size=TITLE, weight="bold")
        self._windows(axes)
        (self.band,) = axes.fill([], [], fc=ROLES["band"], ec="none", alpha=0.75, zorder=3)
        self.edges = [axes.plot([], [], color=INK, lw=0.9, zorder=3.5)[0] for _ in range(2)]
        (self.line,) = axes.plot([], [], color=INK, lw=2.4, zorder=4)
        look = {"ls": "none", "ms": 11, "mfc": PAPER, "mec": INK, "mew": 2.4, "zorder": 6}
        (self.thick,) = axes.plot([], [], marker="o", **look)
        (self.thin,) = axes.plot([], [], marker="s", **look)
        self._key = place(figure, 0.14, 0.17, color=QUIET)

    def _scales(self, axes):
        """Both units, each with round numbers of its own."""
        low, high = self.between_pa
        other = axes.twinx()
        other.set_yscale("log")
        other.set_ylim(low, high)
        other.grid(False)
        other.patch.set_visible(False)
        for spine in other.spines.values():
            spine.set_visible(False)
        for side, unit, ticks in ((axes, "psi", TICKS_PSI), (other, "kPa", TICKS_KPA)):
            kept = [value for value in ticks if low < convert(value, unit, "Pa") < high]
            side.set_yticks([convert(value, unit, "Pa") for value in kept], [plain_number(value) for value in kept])
            side.yaxis.set_minor_locator(NullLocator())
            side.tick_params(length=0, labelsize=11)
            stamp_ticks(side.yaxis)
        y = HEIGHT_IN - TOP_IN + 0.17
        place(self.figure, LEFT_IN - 0.08, y, "psi", size=NAME, ha="right")
        place(self.figure, RIGHT_IN + 0.08, y, "kPa", size=NAME)

    def _windows(self, axes):
        """A stripe for each window, its name outside."""
        low, high = self.between_pa
        tall = HEIGHT_IN - TOP_IN - BELOW_IN
        for name, opens, closes in self._first.windows:
            left, right = self._first.time_h[0], self._first.time_h[-1]
            if closes > opens:
                axes.add_artist(Rectangle((left, opens), right - left, closes - opens, fc=WINDOW, ec="none", zorder=2))
            else:
                axes.plot([left, right], [opens, opens], color=ROLES["stop"], lw=3.0, zorder=2)
            middle = np.sqrt(opens * closes)
            y = BELOW_IN + np.log(middle / low) / np.log(high / low) * tall
            words = shorten(name, WIDTH_IN - NAME_IN - 0.1, NAME, "bold")
            place(self.figure, NAME_IN, y, words, size=NAME, weight="bold")

    def update(self, result, system="both"):
        """Move band, line and readings.

        Parameters
        ----------
        result : SetCurve
            Over the same hours and windows as the first [as its fields].
        system : str
            "us", "si" or "both", for the words [-].
        """
        hours, least = result.time_h, self.between_pa[0] / 10
        low, likely, high = (np.maximum(curve, least) for curve in (result.low_pa, result.likely_pa, result.high_pa))
        self.band.set_xy(np.column_stack([np.append(hours, hours[::-1]), np.append(low, high[::-1])]))
        for line, curve in zip((*self.edges, self.line), (low, high, likely), strict=True):
            line.set_data(hours, curve)
        for marks, wanted in ((self.thick, True), (self.thin, False)):
            shown = [(at, pa) for at, pa, thick in result.readings if thick is wanted]
            marks.set_data([at for at, _ in shown], [pa for _, pa in shown])
        kinds = ["line: the middle of the days; band: nine days of ten"]
        kinds += ["○ your 1/4 in rod"] * any(thick for *_, thick in result.readings)
        kinds += ["□ your 1/8 in rod"] * any(not thick for *_, thick in result.readings)
        self._key.set_text(" · ".join(kinds))
        self.alt = stiffening_curve_alt(result, self.water_in, system, self.title)


def stiffening_curve_alt(result, water_in, system="both", title="How stiff the face gets"):
    """The curve in words.

    Parameters
    ----------
    result : SetCurve
        What to show [as its fields].
    water_in : datetime
        When the first water meets the powder [-].
    system : str
        "us", "si" or "both" [-].
    title : str
        One line over the picture [-].

    Returns
    -------
    str
        Alt text [-].
    """
    said = [f"{title}, {clock(water_in, result.time_h[0])} to {clock(water_in, result.time_h[-1])}."]
    for name, opens, closes in result.windows:
        at = [_reached(result.time_h, curve, opens, water_in) for curve in (result.high_pa, result.likely_pa, result.low_pa)]
        span = show(opens, "pressure", system)
        span += f" to {show(closes, 'pressure', system)}" if closes > opens else ""
        said.append(f"{name.capitalize()}, {span}: reached about {at[1]}, on nine days of ten {at[0]} to {at[2]}.")
    for at_h, pa, thick in result.readings:
        rod = "1/4" if thick else "1/8"
        said.append(f"Your {rod} in rod at {clock(water_in, at_h)}: {show(pa, 'pressure', system)}.")
    return " ".join(said)


def _reached(time_h, curve_pa, wanted_pa, water_in):
    """Clock time at which a rising curve passes a resistance, straight between its points on the scale as drawn."""
    if not curve_pa[-1] >= wanted_pa:
        return "later"
    logs = np.log(np.maximum(curve_pa, 1e-3))
    return clock(water_in, float(np.interp(np.log(wanted_pa), logs, time_h)))
