"""Measured strengths of many mixes beside the curves: against water and against age, with what is left over below."""

from dataclasses import dataclass

import numpy as np
from matplotlib.ticker import NullLocator

from shop_calc.lesson.pictures.base import BLUE, INK, PAPER, QUIET, ROLES, VERMILION, Picture
from shop_calc.lesson.pictures.lettering import NAME, TITLE, place, shorten
from shop_calc.lesson.pictures.scales import LANE, stamp_ticks
from shop_calc.units import convert, plain_number, show

WIDTH_IN, HEIGHT_IN = 9.0, 6.5
LEFTS_IN, WIDE_IN = (0.66, 5.34), 3.42
LEFT_OVER_IN, UPPER_IN, BELOW_IN, GAP_IN = 1.15, 2.85, 1.14, 0.24
MOST_PSI, TICKS_PSI = 12_000, (0, 2000, 4000, 6000, 8000, 10_000, 12_000)
TICKS_MPA = (0, 20, 40, 60, 80)
WATER, AGES_D = (0.22, 0.94), (0.85, 110.0)
AGE_TICKS = (1, 3, 7, 14, 28, 90)
OFF = (-68.0, 68.0)  # per cent; the mix that is furthest off stands whole on it


@dataclass(frozen=True)
class OpenMixes:
    """What the picture shows.

    Parameters
    ----------
    other_water, other_pa : ndarray of shape (m,)
        Water over binder, and strength at 28 days, of mixes with slag, ash or both [-, Pa].
    water, strength_pa : ndarray of shape (n,)
        The same of mixes of portland cement alone [-, Pa].
    line_water, line_pa : ndarray of shape (k,)
        The line of water and strength [-, Pa].
    age_d, ratio : ndarray of shape (p,)
        Age, and strength over that at 28 days, of single portland mixes [d, -].
    curve_d, aci_ratio, en_ratio : ndarray of shape (q,)
        The two curves of age [d, -].
    water_off, aci_off, en_off : ndarray
        Measured over the line less 1, of each portland mix; measured over each curve less 1, of each ratio [-].

    Examples
    --------
    >>> OpenMixes(*(np.zeros(2) for _ in range(14))).mix_count
    4
    """

    other_water: np.ndarray
    other_pa: np.ndarray
    water: np.ndarray
    strength_pa: np.ndarray
    line_water: np.ndarray
    line_pa: np.ndarray
    age_d: np.ndarray
    ratio: np.ndarray
    curve_d: np.ndarray
    aci_ratio: np.ndarray
    en_ratio: np.ndarray
    water_off: np.ndarray
    aci_off: np.ndarray
    en_off: np.ndarray

    @property
    def mix_count(self):
        """Mixes in the left panel."""
        return len(self.other_pa) + len(self.strength_pa)


class StrengthOfMixes(Picture):
    """Two panels and what is left over below each; all limits are fixed.

    Parameters
    ----------
    result : OpenMixes
        What to show first [as its fields].
    title : str
        One line over the picture [-].
    """

    kind = "tall"

    def __init__(self, result, title="Measured strength beside the curves"):
        self.title = title
        super().__init__()
        self.update(result)

    def build(self, axes):
        """Four panels."""
        figure = self.figure
        figure.set_size_inches(WIDTH_IN, HEIGHT_IN)
        place(figure, 0.14, HEIGHT_IN - 0.24, shorten(self.title, 8.7, TITLE, "bold"), size=TITLE, weight="bold")
        wide, low = WIDE_IN / WIDTH_IN, (BELOW_IN + LEFT_OVER_IN + GAP_IN) / HEIGHT_IN
        axes.set_position([LEFTS_IN[0] / WIDTH_IN, low, wide, UPPER_IN / HEIGHT_IN])
        upper = [axes, figure.add_axes([LEFTS_IN[1] / WIDTH_IN, low, wide, UPPER_IN / HEIGHT_IN])]
        under = [figure.add_axes([left / WIDTH_IN, BELOW_IN / HEIGHT_IN, wide, LEFT_OVER_IN / HEIGHT_IN])
                 for left in LEFTS_IN]  # fmt: skip
        self.panels = (*upper, *under)
        for panel in self.panels:
            panel.set_facecolor(LANE)
            panel.grid(color=PAPER, lw=1.4)
            panel.spines[["left", "bottom"]].set_visible(False)
        self._limits(upper, under)
        dots = {"ls": "none", "marker": "o"}
        fine = {"ms": 4, "mfc": "none", "mec": ROLES["stone"], "mew": 0.9, "zorder": 2}
        full = {"ms": 4.5, "mfc": INK, "mec": PAPER, "mew": 0.5, "zorder": 3}
        (self.others,) = upper[0].plot([], [], **dots, **fine)
        (self.mixes,) = upper[0].plot([], [], **dots, **full)
        (self.line,) = upper[0].plot([], [], color=BLUE, lw=2.6, zorder=4)
        (self.ratios,) = upper[1].plot([], [], **dots, **full)
        (self.aci,) = upper[1].plot([], [], color=BLUE, lw=2.6, zorder=4)
        (self.en,) = upper[1].plot([], [], color=VERMILION, lw=2.6, ls=(0, (4, 2)), zorder=4)
        (self.water_off,) = under[0].plot([], [], **dots, **full)
        (self.aci_off,) = under[1].plot([], [], **dots, **full)
        (self.en_off,) = under[1].plot([], [], ls="none", marker="^", ms=5, mfc=PAPER, mec=VERMILION, mew=1.2, zorder=3)
        for panel in under:
            panel.axhline(0.0, color=BLUE, lw=2.2, zorder=2.5)
        self._words()

    def _limits(self, upper, under):
        percent = [f"{mark:+d} %" if mark else "0" for mark in (-50, -25, 0, 25, 50)]
        for number, (above, below) in enumerate(zip(upper, under, strict=True)):
            for panel in (above, below):
                if number:
                    panel.set_xscale("log")
                panel.set_xlim(*(AGES_D if number else WATER))
            ticks = AGE_TICKS if number else (0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9)
            above.set_xticks(ticks, [""] * len(ticks))
            below.set_xticks(ticks, [plain_number(tick) for tick in ticks])
            below.set_ylim(*OFF)
            below.set_yticks((-50, -25, 0, 25, 50), percent)
        upper[0].set_ylim(0, convert(MOST_PSI, "psi", "Pa"))
        upper[0].set_yticks([convert(tick, "psi", "Pa") for tick in TICKS_PSI], [f"{tick:,}" for tick in TICKS_PSI])
        upper[1].set_ylim(0, 1.45)
        upper[1].set_yticks((0, 0.25, 0.5, 0.75, 1.0, 1.25), ["0", "25 %", "50 %", "75 %", "100 %", "125 %"])
        second = upper[0].twinx()
        second.set_ylim(0, convert(MOST_PSI, "psi", "MPa"))
        second.set_yticks(TICKS_MPA)
        second.grid(False)
        second.patch.set_visible(False)
        for spine in second.spines.values():
            spine.set_visible(False)
        for panel in (*upper, *under, second):
            panel.tick_params(length=0, labelsize=11)
            for axis in (panel.xaxis, panel.yaxis):
                axis.set_minor_locator(NullLocator())
                stamp_ticks(axis)

    def _words(self):
        figure, top = self.figure, BELOW_IN + LEFT_OVER_IN + GAP_IN + UPPER_IN
        heads = ("Strength at 28 days", "Strength over that at 28 days")
        for left, head in zip(LEFTS_IN, heads, strict=True):
            place(figure, left, top + 0.44, head, size=NAME, weight="bold")
        place(figure, LEFTS_IN[0] - 0.08, top + 0.16, "psi", ha="right")
        place(figure, LEFTS_IN[0] + WIDE_IN + 0.08, top + 0.16, "MPa")
        for left, words in zip(LEFTS_IN, ("water over binder", "age in days"), strict=True):
            place(figure, left + WIDE_IN / 2, BELOW_IN - 0.42, words, ha="center")
        keys = (("● portland alone  ○ with slag or ash", "line through the portland; below: measured over it"),
                ("● a mix  — ACI 209  - - EN 1992", "below: measured over ACI ●, over EN △"))  # fmt: skip
        for left, lines in zip(LEFTS_IN, keys, strict=True):
            for row, line in enumerate(lines):
                place(figure, left - 0.5 * (left < 1), 0.40 - 0.22 * row, line, color=QUIET)

    def update(self, result, system="both"):
        """Move dots and lines.

        Parameters
        ----------
        result : OpenMixes
            Measured values and curves [as its fields].
        system : str
            "us", "si" or "both", for the words [-].
        """
        for artist, x, y in (
            (self.others, result.other_water, result.other_pa),
            (self.mixes, result.water, result.strength_pa),
            (self.line, result.line_water, result.line_pa),
            (self.ratios, result.age_d, result.ratio),
            (self.aci, result.curve_d, result.aci_ratio),
            (self.en, result.curve_d, result.en_ratio),
            (self.water_off, result.water, 100 * result.water_off),
            (self.aci_off, 0.96 * result.age_d, 100 * result.aci_off),
            (self.en_off, 1.06 * result.age_d, 100 * result.en_off),
        ):
            artist.set_data(x, np.clip(y, -59.0, 59.0) if artist in (self.water_off, self.aci_off, self.en_off) else y)
        self.alt = open_mixes_alt(result, system, self.title)


def open_mixes_alt(result, system="both", title="Measured strength beside the curves"):
    """Measured strengths in words.

    Parameters
    ----------
    result, system, title : as there
        As for `StrengthOfMixes` [-].

    Returns
    -------
    str
        Alt text [-].
    """
    first, last = (show(value, "pressure", system) for value in (result.line_pa[0], result.line_pa[-1]))
    ends = [plain_number(value, 2) for value in (result.line_water[0], result.line_water[-1])]
    said = [
        f"{title}. Strength at 28 days of {result.mix_count} mixes against water over binder, "
        f"{len(result.strength_pa)} of them of portland alone: their line falls from {first} at {ends[0]} to {last} at "
        f"{ends[1]}, and half of them lie within {_half(result.water_off)} of it."
    ]
    for age_d in sorted(set(result.age_d.tolist())):
        there = result.age_d == age_d
        aci, en = (f"{100 * np.mean(off[there]):+.0f} %" for off in (result.aci_off, result.en_off))
        said.append(
            f"At {age_d:g} d: {int(there.sum())} mixes, on average {100 * np.mean(result.ratio[there]):.0f} % of 28 "
            f"days; {aci} from ACI 209, {en} from EN 1992."
        )
    return " ".join(said)


def _half(off):
    return f"{100 * np.median(np.abs(off)):.0f} %"
