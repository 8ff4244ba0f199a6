"""Strength over the first days: the temperature of the piece above, what it makes of it below, on one clock."""

from dataclasses import dataclass

import numpy as np
from matplotlib.ticker import NullLocator

from shop_calc.lesson.pictures.base import BLUE, INK, PAPER, QUIET, ROLES, Picture
from shop_calc.lesson.pictures.lettering import NAME, TITLE, place, shorten
from shop_calc.lesson.pictures.scales import LANE, clock, clock_axis, day_name, moment, second_scale, stamp_ticks
from shop_calc.units import convert, plain_number, show

WIDTH_IN, HEIGHT_IN = 9.0, 6.2
LEFT_IN, RIGHT_IN, NAME_IN = 0.70, 6.66, 7.24
BELOW_IN, STRONG_IN, GAP_IN, WARM_IN = 1.12, 2.80, 0.49, 1.00  # heights: foot, lower panel, between, upper panel
ENDS_PA = (convert(20.0, "psi", "Pa"), convert(6000.0, "psi", "Pa"))
TICKS_PSI = (20, 50, 100, 200, 500, 1000, 2000, 5000)
TICKS_MPA = (0.2, 0.5, 1, 2, 5, 10, 20, 40)


@dataclass(frozen=True)
class FirstDays:
    """What the picture shows.

    Parameters
    ----------
    time_h : ndarray of shape (n,)
        Hours after the first water, rising [h].
    piece_c, air_c : ndarray of shape (n,)
        Temperature of the piece and of the air [degC].
    aci_pa, en_pa : ndarray of shape (n,)
        Strength by ACI 209 and by EN 1992 from the strength counted at 28 days; nan before final set [Pa].
    needs : tuple of (str, float)
        What asks for a strength, and which [-, Pa].
    morning_h : float
        The morning after [h].

    Examples
    --------
    >>> import numpy as np
    >>> FirstDays(*(np.zeros(2) for _ in range(5)), (), 24.0).needs
    ()
    """

    time_h: np.ndarray
    piece_c: np.ndarray
    air_c: np.ndarray
    aci_pa: np.ndarray
    en_pa: np.ndarray
    needs: tuple
    morning_h: float

    @property
    def lower_pa(self):
        """The lower of the two curves."""
        return np.fmin(self.aci_pa, self.en_pa)

    def morning_strength_pa(self):
        """The lower curve in the morning."""
        return float(np.interp(self.morning_h, self.time_h, self.lower_pa))


class StrengthOfFirstDays(Picture):
    """Two panels over one clock; clock, scales and number of needs are fixed when it is built.

    Parameters
    ----------
    result : FirstDays
        What to show first; its hours fix the clock [as its fields].
    water_in : datetime
        When the first water meets the powder [-].
    between_c : (float, float), optional
        Ends of the temperature scale, by default round numbers about the first result [degC].
    title : str
        One line over the picture [-].
    """

    kind = "tall"

    def __init__(self, result, water_in, between_c=None, title="Strength over the first days"):
        self._first, self.water_in, self.title = result, water_in, title
        both = np.concatenate((result.piece_c, result.air_c))
        self.between_c = between_c or (5 * np.floor(both.min() / 5 - 0.2), 5 * np.ceil(both.max() / 5 + 0.2))
        super().__init__()
        self.update(result)

    def build(self, axes):
        """Clock, scales, lines, and a line for each need."""
        figure, first = self.figure, self._first
        figure.set_size_inches(WIDTH_IN, HEIGHT_IN)
        wide = (RIGHT_IN - LEFT_IN) / WIDTH_IN
        hours = (float(first.time_h[0]), float(first.time_h[-1]))
        axes.set_position([LEFT_IN / WIDTH_IN, BELOW_IN / HEIGHT_IN, wide, STRONG_IN / HEIGHT_IN])
        warm = self.warm = figure.add_axes(
            [LEFT_IN / WIDTH_IN, (BELOW_IN + STRONG_IN + GAP_IN) / HEIGHT_IN, wide, WARM_IN / HEIGHT_IN]
        )
        for panel in (axes, warm):
            panel.set_facecolor(LANE)
            panel.spines[["left", "bottom"]].set_visible(False)
            clock_axis(panel, self.water_in, *hours, most=8)
            panel.grid(color=PAPER, lw=1.6)
            panel.tick_params(length=0)
        warm.tick_params(labelbottom=False)
        self._scales(axes, warm)
        place(figure, 0.14, HEIGHT_IN - 0.24, shorten(self.title, 8.7, TITLE, "bold"), size=TITLE, weight="bold")
        (self.air,) = warm.plot([], [], color=QUIET, lw=2.0, ls=(0, (6, 3)), zorder=3)
        (self.piece,) = warm.plot([], [], color=BLUE, lw=3.0, zorder=4)
        self._names = [place(figure, NAME_IN, 0, size=NAME) for _ in range(2)]
        (self.band,) = axes.fill([], [], fc=ROLES["band"], ec="none", alpha=0.75, zorder=2)
        (self.en,) = axes.plot([], [], color=INK, lw=2.0, ls=(0, (6, 3)), zorder=4)
        (self.aci,) = axes.plot([], [], color=INK, lw=2.6, zorder=5)
        self.mornings = [panel.axvline(0, color=INK, lw=1.4, ls=(0, (1, 2)), zorder=3) for panel in (axes, warm)]
        look = {"ls": "none", "marker": "o", "ms": 11, "mfc": PAPER, "mec": INK, "mew": 2.6, "zorder": 7}
        (self.dot,) = axes.plot([], [], **look)
        self.needs = [
            (axes.axhline(1.0, color=ROLES["stop"], lw=2.2, ls=(0, (2, 1)), zorder=3),
             place(figure, NAME_IN, 0, size=NAME, weight="bold"))
            for _ in first.needs
        ]  # fmt: skip
        self._morning = place(figure, 0, BELOW_IN + STRONG_IN + 0.16, weight="bold", ha="center")
        keys = ("solid line: ACI 209; dashed: EN 1992; ○ the morning, by the lower of the two",
                "short dashes: what a way of carrying asks for; each line across is about a doubling")
        for row, words in enumerate(keys):
            place(figure, 0.14, 0.40 - 0.22 * row, words, color=QUIET)

    def _scales(self, axes, warm):
        axes.set_yscale("log")
        axes.set_ylim(*ENDS_PA)
        other = axes.twinx()
        other.set_yscale("log")
        other.set_ylim(*ENDS_PA)
        other.grid(False)
        other.patch.set_visible(False)
        for spine in other.spines.values():
            spine.set_visible(False)
        for side, unit, ticks in ((axes, "psi", TICKS_PSI), (other, "MPa", TICKS_MPA)):
            kept = [value for value in ticks if ENDS_PA[0] <= convert(value, unit, "Pa") <= ENDS_PA[1]]
            side.set_yticks([convert(value, unit, "Pa") for value in kept], [plain_number(value) for value in kept])
            side.yaxis.set_minor_locator(NullLocator())
            side.tick_params(length=0, labelsize=11)
            stamp_ticks(side.yaxis)
        warm.set_ylim(*self.between_c)
        warm.set_yticks(np.arange(self.between_c[0], self.between_c[1] + 1, 5))
        second = second_scale(warm, "y", "C", "F", "", most=3)
        second.yaxis.tick_left()  # US to the left, as in the panel below
        warm.yaxis.tick_right()
        for panel in (warm, second):
            panel.tick_params(length=0, labelsize=11)
            stamp_ticks(panel.yaxis)
        for y, left, right in ((BELOW_IN + STRONG_IN + 0.16, "psi", "MPa"),
                               (BELOW_IN + STRONG_IN + GAP_IN + WARM_IN + 0.16, "°F", "°C")):  # fmt: skip
            place(self.figure, LEFT_IN - 0.08, y, left, size=NAME, ha="right")
            place(self.figure, RIGHT_IN + 0.08, y, right, size=NAME)

    def update(self, result, system="both"):
        """Move lines, band and names.

        Parameters
        ----------
        result : FirstDays
            Over the same hours and with as many needs as the first [as its fields].
        system : str
            "us", "si" or "both", for the words [-].

        Raises
        ------
        ValueError
            When the number of needs is not the one the picture was built for.
        """
        if len(result.needs) != len(self.needs):
            raise ValueError(f"needs: {len(result.needs)} given; this picture was built for {len(self.needs)}")
        hours, lower = result.time_h, result.lower_pa
        for line, curve in ((self.air, result.air_c), (self.piece, result.piece_c), (self.aci, result.aci_pa),
                            (self.en, result.en_pa)):  # fmt: skip
            line.set_data(hours, curve)
        hard = np.isfinite(lower)
        upper = np.fmax(result.aci_pa, result.en_pa)[hard]
        outline = np.append(hours[hard], hours[hard][::-1]), np.append(lower[hard], upper[::-1])
        self.band.set_xy(np.column_stack(outline))
        for line in self.mornings:
            line.set_xdata([result.morning_h] * 2)
        self.dot.set_data([result.morning_h], [result.morning_strength_pa()])
        across = (result.morning_h - hours[0]) / (hours[-1] - hours[0])
        self._morning.set(x=(LEFT_IN + across * (RIGHT_IN - LEFT_IN)) / WIDTH_IN, text=self._when(result))
        scale = WARM_IN / (self.between_c[1] - self.between_c[0])
        ends = [BELOW_IN + STRONG_IN + GAP_IN + (float(t[-1]) - self.between_c[0]) * scale
                for t in (result.air_c, result.piece_c)]  # fmt: skip
        if abs(ends[0] - ends[1]) < 0.22:
            middle = sum(ends) / 2.0
            ends = [middle - 0.12, middle + 0.12]
        for name, words, y in zip(self._names, ("- - room", "— piece"), ends, strict=True):
            name.set(text=words, y=y / HEIGHT_IN)
        self._place_needs(result)
        self.alt = first_days_alt(result, self.water_in, system, self.title)

    def _when(self, result):
        when = moment(self.water_in, result.morning_h)
        return f"{day_name(when)[:3]} {when:%H:%M}"

    def _place_needs(self, result):
        low, high = np.log(ENDS_PA)
        for (line, name), (words, strength_pa) in zip(self.needs, result.needs, strict=True):
            seen = ENDS_PA[0] <= strength_pa <= ENDS_PA[1]
            line.set_ydata([strength_pa] * 2)
            line.set_visible(seen)
            y = BELOW_IN + (np.log(max(strength_pa, ENDS_PA[0])) - low) / (high - low) * STRONG_IN
            name.set(y=y / HEIGHT_IN, text=shorten(words, WIDTH_IN - NAME_IN - 0.08, NAME, "bold"), visible=seen)


def first_days_alt(result, water_in, system="both", title="Strength over the first days"):
    """The first days in words.

    Parameters
    ----------
    result, water_in, system, title : as there
        As for `StrengthOfFirstDays` [-].

    Returns
    -------
    str
        Alt text [-].
    """
    early = np.interp(result.morning_h, result.time_h, result.piece_c)
    first, warmest, morning = (
        show(value, "temperature", system) for value in (result.piece_c[0], np.max(result.piece_c), early)
    )
    start = clock(water_in, result.time_h[0])
    said = [f"{title}. The piece: {first} at {start}, at most {warmest}, in the morning {morning}."]
    when = moment(water_in, result.morning_h)
    at = [float(np.interp(result.morning_h, result.time_h, curve)) for curve in (result.aci_pa, result.en_pa)]
    aci, en, end = (show(value, "pressure", system) for value in (*at, result.lower_pa[-1]))
    said.append(f"On {day_name(when)} at {when:%H:%M} by ACI 209 {aci}, by EN 1992 {en}; the lower one ends at {end}.")
    for words, strength_pa in result.needs:
        there = np.flatnonzero(np.nan_to_num(result.lower_pa) >= strength_pa)
        hour = None if there.size == 0 else moment(water_in, result.time_h[there[0]])
        how = "not in these days" if hour is None else f"there from {day_name(hour)[:3]} {hour:%H:%M}"
        said.append(f"Needed {words}: {show(strength_pa, 'pressure', system)}, {how}.")
    return " ".join(said)
