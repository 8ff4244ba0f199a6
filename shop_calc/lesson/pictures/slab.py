"""How the mortar follows the room: its temperature over the day, with and without the pull of evaporation."""

from dataclasses import dataclass

import numpy as np
from matplotlib.lines import Line2D

from shop_calc.lesson.pictures.areas import plot_area
from shop_calc.lesson.pictures.base import BLUE, INK, PAPER, QUIET, VERMILION, Picture
from shop_calc.lesson.pictures.lettering import NAME, TITLE, place, shorten
from shop_calc.lesson.pictures.scales import LANE, clock, clock_axis, second_scale, stamp_ticks
from shop_calc.units import show

WIDTH_IN, HEIGHT_IN = 9.0, 4.8
LEFT_IN, RIGHT_IN, TOP_IN, BELOW_IN, WORDS_IN = 0.62, 6.30, 0.86, 0.62, 7.36
APART_IN = 0.5  # between the names of two lines


@dataclass(frozen=True)
class SlabDay:
    """What the picture shows.

    Parameters
    ----------
    time_h : ndarray of shape (n,)
        Hours after the first water [h].
    slab_c : ndarray of shape (n,)
        Mortar with evaporation counted in [degC].
    slab_covered_c : ndarray of shape (n,)
        Mortar without evaporation: the early edge of every plan [degC].
    room_c : ndarray of shape (n,)
        Air [degC].
    wet_bulb_c : ndarray of shape (n,), optional
        Wet bulb of the air [degC].

    Examples
    --------
    >>> import numpy as np
    >>> SlabDay(np.zeros(2), np.zeros(2), np.zeros(2), np.zeros(2)).wet_bulb_c is None
    True
    """

    time_h: np.ndarray
    slab_c: np.ndarray
    slab_covered_c: np.ndarray
    room_c: np.ndarray
    wet_bulb_c: np.ndarray | None = None


# name: words at the end of the line, look
LINES = {
    "room_c": ("room", {"color": QUIET, "lw": 2.0, "ls": (0, (6, 3))}),
    "slab_covered_c": ("mortar, covered", {"color": VERMILION, "lw": 3.0, "ls": "-"}),
    "slab_c": ("mortar, open", {"color": BLUE, "lw": 3.0, "ls": "-"}),
    "wet_bulb_c": ("wet bulb", {"color": INK, "lw": 1.8, "ls": (0, (1, 2))}),
}
MARKS = {"slab_covered_c": "s", "slab_c": "o"}  # a few marks on the line, for a one-colour print


class MortarTemperature(Picture):
    """The day in temperatures; axes are fixed when it is built, then the lines move.

    Parameters
    ----------
    result : SlabDay
        What to show first; its hours fix the clock [as its fields].
    water_in : datetime
        When the first water meets the powder [-].
    between_c : (float, float), optional
        Ends of the temperature axis, by default round numbers about the first result [degC].
    title : str
        One line over the picture [-].
    """

    kind = "tall"

    def __init__(self, result, water_in, between_c=None, title="The mortar follows the room"):
        self.water_in, self.title = water_in, title
        self._hours = (float(result.time_h[0]), float(result.time_h[-1]))
        every = np.concatenate([getattr(result, name) for name in LINES if getattr(result, name) is not None])
        self.between_c = between_c or (5 * np.floor(every.min() / 5 - 0.2), 5 * np.ceil(every.max() / 5 + 0.2))
        super().__init__()
        self.update(result)

    def build(self, axes):
        """Clock, two scales, four lines and their names."""
        figure = self.figure
        plot_area(axes, WIDTH_IN, HEIGHT_IN, LEFT_IN, RIGHT_IN, BELOW_IN, TOP_IN)
        axes.set_facecolor(LANE)
        axes.grid(color=PAPER, lw=1.6)
        axes.spines[["left", "bottom"]].set_visible(False)
        axes.set_ylim(*self.between_c)
        clock_axis(axes, self.water_in, *self._hours, most=8)
        axes.tick_params(length=0)
        other = second_scale(axes, "y", "C", "F", "")
        other.tick_params(length=0)
        for axis in (axes.yaxis, other.yaxis):
            stamp_ticks(axis)
        y = HEIGHT_IN - TOP_IN + 0.17
        place(figure, LEFT_IN - 0.1, y, "°C", size=NAME, ha="right")
        place(figure, RIGHT_IN + 0.1, y, "°F", size=NAME)
        place(figure, 0.14, HEIGHT_IN - 0.24, shorten(self.title, 8.6, TITLE, "bold"), size=TITLE, weight="bold")
        self.lines, self._names, self._samples = {}, {}, {}
        for number, (name, (_, look)) in enumerate(LINES.items()):
            mark = (
                {"marker": MARKS[name], "ms": 8, "mfc": PAPER, "mec": look["color"], "mew": 2} if name in MARKS else {}
            )
            (self.lines[name],) = axes.plot([], [], zorder=3 + number, solid_capstyle="round", **look, **mark)
            self._names[name] = place(figure, WORDS_IN, 0, color=INK, size=NAME)
            sample = Line2D([(WORDS_IN - 0.5) / WIDTH_IN, (WORDS_IN - 0.12) / WIDTH_IN], [0, 0], **{**look, **mark})
            sample.set(transform=figure.transFigure, markevery=[1])
            self._samples[name] = figure.add_artist(sample)

    def update(self, result, system="both"):
        """Move the lines.

        Parameters
        ----------
        result : SlabDay
            Over the same hours as the first [as its fields].
        system : str
            "us", "si" or "both" [-].
        """
        low, high = self.between_c
        scale = (HEIGHT_IN - TOP_IN - BELOW_IN) / (high - low)
        shown = {name: getattr(result, name) for name in LINES if getattr(result, name) is not None}
        ends_in = {name: BELOW_IN + (min(max(float(at[-1]), low), high) - low) * scale for name, at in shown.items()}
        places_in = _apart(ends_in, BELOW_IN + 0.1, HEIGHT_IN - TOP_IN - 0.1)
        for name, (words, _) in LINES.items():
            there = name in shown
            for artist in (self.lines[name], self._names[name], self._samples[name]):
                artist.set_visible(there)
            if not there:
                continue
            self.lines[name].set_data(result.time_h, shown[name])
            every = max(len(result.time_h) // 6, 1)
            self.lines[name].set_markevery((every // 2, every))
            text = f"{words}\n{show(shown[name][-1], 'temperature', system)}"
            self._names[name].set(y=places_in[name] / HEIGHT_IN, text=text)
            self._samples[name].set_ydata([places_in[name] / HEIGHT_IN] * 2)
        self.alt = mortar_temperature_alt(result, self.water_in, system, self.title)


def _apart(ends_in, low_in, high_in):
    """Heights of names in the order of their lines, never closer than a name is tall."""
    order = sorted(ends_in, key=ends_in.get)
    heights = [ends_in[name] for name in order]
    for _ in range(60):
        for a in range(len(heights) - 1):
            short = APART_IN - (heights[a + 1] - heights[a])
            if short > 0:
                heights[a] -= short / 2
                heights[a + 1] += short / 2
        heights = [min(max(y, low_in), high_in) for y in heights]
    return dict(zip(order, heights, strict=True))


def mortar_temperature_alt(result, water_in, system="both", title="The mortar follows the room"):
    """The day in temperatures in words.

    Parameters
    ----------
    result, water_in, system, title : as there
        As for `MortarTemperature` [-].

    Returns
    -------
    str
        Alt text [-].
    """
    said = [f"{title}, from {clock(water_in, result.time_h[0])} to {clock(water_in, result.time_h[-1])}."]
    for name, (words, _) in LINES.items():
        values = getattr(result, name)
        if values is not None:
            first, last = (show(value, "temperature", system) for value in (values[0], values[-1]))
            lowest = show(np.min(values), "temperature", system)
            said.append(f"{words.capitalize()}: from {first} to {last}, coldest {lowest}.")
    return " ".join(said)
