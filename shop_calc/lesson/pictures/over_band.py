"""One number measured at the bench, laid over the band that the model gave for it."""

from dataclasses import dataclass

import numpy as np
from matplotlib.patches import Rectangle

from shop_calc.lesson.pictures.base import INK, PAPER, QUIET, ROLES, Picture
from shop_calc.lesson.pictures.lettering import NAME, TITLE, place, sentence, shorten, width_in
from shop_calc.lesson.pictures.scales import LANE, nice_step, stamp_ticks
from shop_calc.units import KINDS, convert, plain_number, show
from shop_calc.units.showing import printed

WIDTH_IN, HEIGHT_IN = 9.0, 2.5
LEFT_IN, RIGHT_IN, LOW_IN, HIGH_IN = 0.5, 8.5, 0.72, 1.42


@dataclass(frozen=True)
class OverBand:
    """A forecast and what was measured.

    Parameters
    ----------
    low, likely, high : float
        The band of the model [SI unit of the kind].
    measured : float or None
        What was read at the bench; None while nobody has measured [SI unit of the kind].

    Examples
    --------
    >>> OverBand(12.0, 13.8, 15.5).measured is None
    True
    """

    low: float
    likely: float
    high: float
    measured: float | None = None

    @property
    def inside(self):
        """True when the measured number lies in the band."""
        return self.measured is not None and self.low <= self.measured <= self.high


class BenchNumber(Picture):
    """A scale in both units with the band on it, and a dot for what was measured.

    Parameters
    ----------
    result : OverBand
        What to show first [as its fields].
    kind : str
        A kind of `shop_calc.units`: "temperature", "duration" [-].
    between : (float, float)
        Ends of the scale; a number beyond them stands at the end [SI unit of the kind].
    title : str
        One line over the picture [-].
    """

    kind = "wide"

    def __init__(self, result, kind, between, title):
        self.quantity, self.between, self.title = kind, between, title
        super().__init__()
        self.update(result)

    def build(self, axes):
        """Scale, band, likely line, dot."""
        figure, (low, high) = self.figure, self.between
        figure.set_size_inches(WIDTH_IN, HEIGHT_IN)
        names = [printed(unit) for unit in dict.fromkeys(self._units())]
        left = max(LEFT_IN, 0.14 + max(width_in(name) for name in names) + 0.16)  # names end before the first number
        axes.set_position([
            left / WIDTH_IN, LOW_IN / HEIGHT_IN, (RIGHT_IN - left) / WIDTH_IN, (HIGH_IN - LOW_IN) / HEIGHT_IN,
        ])  # fmt: skip
        axes.set(xlim=self.between, ylim=(0, 1), yticks=[])
        axes.grid(False)
        axes.spines[["left", "bottom"]].set_visible(False)
        axes.add_artist(Rectangle((low, 0), high - low, 1, fc=LANE, ec="none", zorder=1))
        self._ticks(axes, names)
        self.band = axes.add_artist(Rectangle((low, 0.14), 0, 0.72, fc=ROLES["band"], ec=INK, lw=1.0, zorder=3))
        (self.line,) = axes.plot([], [], color=INK, lw=2.4, zorder=4)
        look = {"ls": "none", "marker": "o", "ms": 13, "mfc": PAPER, "mec": INK, "mew": 3}
        (self.dot,) = axes.plot([], [], zorder=6, clip_on=False, **look)
        place(figure, 0.14, HEIGHT_IN - 0.22, shorten(self.title, 8.7, TITLE, "bold"), size=TITLE, weight="bold")
        self.words = place(figure, 0.14, HEIGHT_IN - 0.54, size=NAME)
        self.yours = place(figure, 0.14, HEIGHT_IN - 0.80, size=NAME, weight="bold")

    def _units(self):
        """Give the units of the two scales, chosen as the words have them."""
        kind = KINDS[self.quantity]
        if self.quantity == "duration" and self.between[1] <= 1.5:
            return "min", "min"
        return tuple(_unit_for(sum(self.between) / 2, ladder) for ladder in (kind.us, kind.si))

    def _ticks(self, axes, names):
        kind, (us, si) = KINDS[self.quantity], self._units()
        low, high = (convert(end, kind.si_unit, us) for end in self.between)
        step = nice_step(high - low, 9)
        marks = np.arange(np.ceil(low / step - 1e-9), np.floor(high / step + 1e-9) + 1) * step
        two = us != si

        def label(mark):
            below = f"\n{plain_number(convert(mark, us, si), 3, 1)}" if two else ""
            return plain_number(mark) + below

        axes.set_xticks([convert(mark, us, kind.si_unit) for mark in marks], [label(mark) for mark in marks])
        axes.tick_params(axis="x", length=0, pad=5, labelsize=11)
        stamp_ticks(axes.xaxis)
        for at in axes.get_xticks():
            axes.axvline(at, color=PAPER, lw=1.6, zorder=1.5)
        for number, name in enumerate(names):
            place(self.figure, 0.14, LOW_IN - 0.15 - 0.19 * number, name, color=QUIET)

    def update(self, result, system="both"):
        """Move band and dot.

        Parameters
        ----------
        result : OverBand
            What to show [as its fields].
        system : str
            "us", "si" or "both" [-].
        """
        low, high = self.between
        inside = lambda value: min(max(value, low), high)  # noqa: E731
        self.band.set(x=inside(result.low), width=inside(result.high) - inside(result.low))
        self.line.set_data([inside(result.likely)] * 2, [0.0, 1.0])
        there = result.measured is not None
        self.dot.set_data([inside(result.measured)] if there else [], [0.5] if there else [])
        model, yours = bench_number_words(result, self.quantity, system)
        self.words.set_text(shorten(model, 8.7, NAME))
        self.yours.set_text(shorten(yours, 8.7, NAME, "bold"))
        self.alt = f"{sentence(self.title)} {model} {yours}"


def _unit_for(value, ladder):
    """The display unit that a value of this size is shown in."""
    return next(unit for least, unit in ladder if abs(value) >= least or least == 0.0)


def bench_number_words(result, kind, system="both"):
    """The forecast and the measured number in words.

    Parameters
    ----------
    result : OverBand
        What is shown [as its fields].
    kind : str
        A kind of `shop_calc.units` [-].
    system : str
        "us", "si" or "both" [-].

    Returns
    -------
    tuple of str
        A sentence on the model, a sentence on what was measured [-].
    """
    low, likely, high = (show(value, kind, system) for value in (result.low, result.likely, result.high))
    said = f"Model: {likely}, between {low} and {high}."
    if result.measured is None:
        return said, "Nothing measured yet."
    where = "inside" if result.inside else "above" if result.measured > result.high else "below"
    return said, f"Yours: {show(result.measured, kind, system)}, {where} the band."
