"""How dry the air is for a face: humidity across, moving air upwards, the day's point on it.

The whole sheet is for one temperature of the air and of the surface; move those and the borders move.
"""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from contourpy import contour_generator
from matplotlib.collections import LineCollection
from matplotlib.patches import PathPatch, Rectangle
from matplotlib.path import Path

from shop_calc.lesson.pictures.areas import plot_area
from shop_calc.lesson.pictures.base import INK, PAPER, QUIET, Picture
from shop_calc.lesson.pictures.lettering import NAME, TITLE, place
from shop_calc.lesson.pictures.scales import second_scale, stamp_ticks
from shop_calc.units import show

WIDTH_IN, HEIGHT_IN = 9.0, 5.2
LEFT_IN, RIGHT_IN, TOP_IN, BELOW_IN, WORDS_IN = 0.82, 5.95, 0.86, 0.66, 6.68
# Light to dark, so that a grey print keeps the order; hatched so that touching fields differ without colour.
FIELDS = (("good", "#D0ECE2", ""), ("watch", "#F2B84B", "//"), ("stop", "#C65A1A", "xx"))


@dataclass(frozen=True)
class EvaporationMap:
    """What the picture shows; rates come from the model.

    Parameters
    ----------
    rh_fraction : ndarray of shape (n,)
        Humidity across, rising [-].
    wind_m_s : ndarray of shape (m,)
        Moving air upwards, rising [m/s].
    rate_kg_m2_h : ndarray of shape (m, n)
        Evaporation at each pair [kg/m2/h].
    watch_kg_m2_h, stop_kg_m2_h : float
        Where care begins, and the limit of a face that bleeds little [kg/m2/h].
    here_rh_fraction, here_wind_m_s, here_rate_kg_m2_h : float
        The point of the day [-, m/s, kg/m2/h].
    air_temp_c, surface_temp_c : float
        Temperatures the sheet is drawn for [degC].
    band_kg_m2_h : (float, float), optional
        What the estimate at the point may be off to [kg/m2/h].

    Examples
    --------
    >>> import numpy as np
    >>> EvaporationMap(np.ones(2), np.ones(2), np.ones((2, 2)), 0.25, 0.5, 0.5, 0, 0.1, 21, 18).stop_kg_m2_h
    0.5
    """

    rh_fraction: np.ndarray
    wind_m_s: np.ndarray
    rate_kg_m2_h: np.ndarray
    watch_kg_m2_h: float
    stop_kg_m2_h: float
    here_rh_fraction: float
    here_wind_m_s: float
    here_rate_kg_m2_h: float
    air_temp_c: float
    surface_temp_c: float
    band_kg_m2_h: tuple | None = None

    @property
    def field(self):
        """Which of the three fields the point lies in, 0 to 2."""
        return int(self.here_rate_kg_m2_h >= self.watch_kg_m2_h) + int(self.here_rate_kg_m2_h >= self.stop_kg_m2_h)


WORDS = ("easy on a face", "take care", "too dry for a face")


class DryingSheet(Picture):
    """The sheet; axes are fixed when it is built, then fields, borders and the point move.

    Parameters
    ----------
    result : EvaporationMap
        What to show first; its humidity and wind fix the axes [as its fields].
    """

    kind = "tall"

    def __init__(self, result):
        self._axes_of = (result.rh_fraction, result.wind_m_s)
        super().__init__()
        self.update(result)

    def build(self, axes):
        """Axes in both systems, three fields, the point and the words beside."""
        figure = self.figure
        plot_area(axes, WIDTH_IN, HEIGHT_IN, LEFT_IN, RIGHT_IN, BELOW_IN, TOP_IN)
        humid, wind = self._axes_of
        # drawn in percent and km/h, the units people read off a gauge
        axes.set(xlim=(100 * humid[0], 100 * humid[-1]), ylim=(3.6 * wind[0], 3.6 * wind[-1]))
        axes.grid(False)
        axes.tick_params(length=0, pad=6)
        axes.spines[["left", "bottom"]].set_visible(False)
        other = second_scale(axes, "y", "km/h", "mi/h", "", most=6)
        other.tick_params(length=0)
        for axis in (axes.xaxis, axes.yaxis, other.yaxis):
            stamp_ticks(axis)
        place(figure, (LEFT_IN + RIGHT_IN) / 2, 0.18, "humidity of the air, %", size=NAME, ha="center")
        y = HEIGHT_IN - TOP_IN + 0.17
        place(figure, LEFT_IN, y, "moving air, km/h", size=NAME)
        place(figure, RIGHT_IN + 0.08, y, "mph", size=NAME)
        place(figure, 0.14, HEIGHT_IN - 0.24, "How hard the air pulls water out of the face", size=TITLE, weight="bold")
        self.fields = [
            axes.add_artist(
                PathPatch(
                    Path([(0, 0)]), fc=fill, ec="#7A3A10" if hatch == "xx" else "#8A5A00", lw=0, hatch=hatch, zorder=1
                )
            )
            for _, fill, hatch in FIELDS
        ]
        self.borders = axes.add_collection(LineCollection([], colors=INK, linewidths=1.8, zorder=3))
        (self.cross,) = axes.plot([], [], color=INK, lw=1.0, ls=(0, (2, 2)), zorder=4)
        look = {"marker": "o", "ms": 13, "mfc": PAPER, "mec": INK, "mew": 3, "ls": "none"}
        (self.point,) = axes.plot([], [], zorder=6, clip_on=False, **look)  # whole at the edge of the sheet, too
        self._legend()

    def _legend(self):
        figure, x = self.figure, WORDS_IN
        self._rows = []
        for number, ((_, fill, hatch), words) in enumerate(zip(reversed(FIELDS), reversed(WORDS), strict=True)):
            y = HEIGHT_IN - TOP_IN - 0.2 - number * 0.82
            look = {"fc": fill, "ec": INK, "lw": 1.0, "hatch": hatch, "transform": figure.transFigure}
            figure.add_artist(
                Rectangle((x / WIDTH_IN, (y - 0.12) / HEIGHT_IN), 0.3 / WIDTH_IN, 0.24 / HEIGHT_IN, **look)
            )
            place(figure, x + 0.4, y + 0.03, words, size=NAME, weight="bold")
            self._rows.append(place(figure, x + 0.4, y - 0.27, color=QUIET))
        self._here = place(figure, x, 1.66, size=NAME, weight="bold", va="top")
        self._band = place(figure, x, 0.98, color=INK, va="top")
        self._temps = place(figure, WIDTH_IN - 0.14, HEIGHT_IN - 0.24, ha="right")

    def update(self, result, system="both"):
        """Move fields, borders, point and words.

        Parameters
        ----------
        result : EvaporationMap
            On the same humidity and wind as the first [as its fields].
        system : str
            "us", "si" or "both" [-].
        """
        lines = contour_generator(100 * result.rh_fraction, 3.6 * result.wind_m_s, result.rate_kg_m2_h)
        limits = (-np.inf, result.watch_kg_m2_h, result.stop_kg_m2_h, np.inf)
        for patch, low, high in zip(self.fields, limits, limits[1:], strict=False):
            patch.set_path(field_path(lines, low, high))
        self.borders.set_segments([line for limit in limits[1:3] for line in lines.lines(limit)])
        x, y = 100 * result.here_rh_fraction, 3.6 * result.here_wind_m_s
        self.point.set_data([x], [y])
        self.cross.set_data([self.axes.get_xlim()[0], x, x], [y, y, self.axes.get_ylim()[0]])
        rate = lambda value: show(value, "rate", system).replace(" (", "\n(")  # noqa: E731
        watch, stop = (rate(value) for value in limits[1:3])
        for words, text in zip(self._rows, (f"from {stop}", f"from {watch}", f"below {watch}"), strict=True):
            words.set_text(text)
        self._here.set_text(f"here: {WORDS[result.field]}\n{rate(result.here_rate_kg_m2_h)}")
        band = result.band_kg_m2_h
        self._band.set_text("" if band is None or not band[1] else "the estimate may be\n" + _between(band, system))
        temps = (show(value, "temperature", system) for value in (result.air_temp_c, result.surface_temp_c))
        self._temps.set_text("air {}, face {}".format(*temps))
        self.alt = drying_sheet_alt(result, system)


def _between(band, system):
    """Both ends of the band on one line a system, as the number above it is set."""
    us, si = ([show(value, "rate", each) for value in band] for each in ("us", "si"))
    us, si = (f"{low.split()[0]} to {high}" for low, high in (us, si))
    return {"us": us, "si": si}.get(system, f"{us}\n({si})")


def field_path(lines, low, high):
    """The part of a map between two levels, as one path."""
    points, offsets = lines.filled(low, high)
    paths = [
        Path(ring[a:b], closed=True) for ring, cuts in zip(points, offsets, strict=True) for a, b in pairwise(cuts)
    ]
    return Path.make_compound_path(*paths) if paths else Path([(0, 0)])


def drying_sheet_alt(result, system="both"):
    """The sheet in words.

    Parameters
    ----------
    result : EvaporationMap
        What is shown [as its fields].
    system : str
        "us", "si" or "both" [-].

    Returns
    -------
    str
        Alt text [-].
    """
    temp = lambda value: show(value, "temperature", system)  # noqa: E731
    rate = lambda value: show(value, "rate", system)  # noqa: E731
    said = (
        f"Map of evaporation for air at {temp(result.air_temp_c)} and a surface at {temp(result.surface_temp_c)}: "
        f"humidity across, moving air upwards. Below {rate(result.watch_kg_m2_h)} it is {WORDS[0]}, from there "
        f"{WORDS[1]}, from {rate(result.stop_kg_m2_h)} {WORDS[2]}. The point of the day, "
        f"{show(result.here_rh_fraction, 'fraction')} humidity, air at {show(result.here_wind_m_s, 'speed', system)}, "
        f"loses {rate(result.here_rate_kg_m2_h)}: {WORDS[result.field]}."
    )
    if result.band_kg_m2_h is not None and result.band_kg_m2_h[1]:
        low, high = result.band_kg_m2_h
        said += f" The estimate may be {rate(low)} to {rate(high)}."
    return said
