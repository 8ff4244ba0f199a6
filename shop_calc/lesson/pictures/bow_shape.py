"""How a top bows as it dries: both states drawn larger than life, and the same piece to scale."""

from dataclasses import dataclass

import numpy as np

from shop_calc.lesson.pictures.areas import whole_page
from shop_calc.lesson.pictures.base import INK, PAPER, QUIET, ROLES, Picture
from shop_calc.lesson.pictures.lettering import NAME, PLAIN, TITLE, place, shorten
from shop_calc.units import plain_number, show

WIDTH_IN, HEIGHT_IN = 9.0, 5.6
LEFT_IN, RIGHT_IN = 0.35, 6.55
LANES_IN = (3.35, 1.55, 0.62)  # lower edge of each lane
TALL_IN = (1.45, 1.45, 0.42)
TIMES = 10.0  # how many times larger than life heights are in the first two lanes


@dataclass(frozen=True)
class BowState:
    """One way of drying, and how far the ends come up.

    Parameters
    ----------
    name : str
        How it dried [-].
    low_m, likely_m, high_m : float
        Bow over the length, ends up [m].

    Examples
    --------
    >>> BowState("only the top dries", 0.002, 0.007, 0.015).likely_m
    0.007
    """

    name: str
    low_m: float
    likely_m: float
    high_m: float


@dataclass(frozen=True)
class BowShape:
    """What the picture shows.

    Parameters
    ----------
    length_m : float
        Length or diagonal along which it bows [m].
    thickness_m, face_m : float
        Thickness of the piece and of its face [m].
    states : tuple of two BowState
        The two ways of drying [-].

    Examples
    --------
    >>> BowShape(1.57, 0.0381, 0.00635, ()).length_m
    1.57
    """

    length_m: float
    thickness_m: float
    face_m: float
    states: tuple


class BowedTop(Picture):
    """A top seen from the side, twice larger than life in height and once to scale.

    Parameters
    ----------
    result : BowShape
        What to show first [m].
    longest_m : float
        Longest piece that the sheet must hold [m].
    most_m : float
        Largest bow that is drawn in full [m].
    title : str
        One line over the picture [-].
    """

    kind = "tall"

    def __init__(self, result, longest_m=None, most_m=0.03, title="How far the ends come up"):
        self._first, self.title = result, title
        self.longest_m = longest_m or 1.05 * result.length_m
        self.most_m = most_m
        super().__init__()
        self.update(result)

    def build(self, axes):
        """Two lanes ten times larger than life, one to scale, all with the same length scale."""
        whole_page(axes, WIDTH_IN, HEIGHT_IN)
        self._per_m = (RIGHT_IN - LEFT_IN) / self.longest_m
        # heights: ten times the scale of lengths, or less where the tallest bow would leave its lane
        self._times = min(TIMES, (TALL_IN[0] - 0.35) / (self._per_m * (self.most_m + 0.0381)))
        place(self.figure, 0.14, HEIGHT_IN - 0.24, shorten(self.title, 8.7, TITLE, "bold"), size=TITLE, weight="bold")
        self._note = place(self.figure, 0.14, HEIGHT_IN - 0.56, color=QUIET)
        self.faces, self.bases, self.bars, self._names, self._values = [], [], [], [], []
        for low_in in LANES_IN:
            axes.plot([LEFT_IN - 0.2, RIGHT_IN + 0.1], [low_in, low_in], color=QUIET, lw=1.2, zorder=1)
            dotted = axes.fill([], [], fc=ROLES["base"], ec=PAPER, lw=0.0, hatch="..", zorder=2)[0]
            outline = axes.fill([], [], fc="none", ec=INK, lw=1.0, zorder=2.5)[0]
            self.bases.append((dotted, outline))
            self.faces.append(axes.fill([], [], fc=ROLES["face"], ec=INK, lw=1.0, zorder=3)[0])
            self.bars.append(axes.plot([], [], color=INK, lw=1.6, marker="_", ms=12, zorder=4)[0])
            self._names.append(
                place(self.figure, RIGHT_IN + 0.28, low_in + 0.62, size=NAME, weight="bold", va="bottom")
            )
            self._values.append(place(self.figure, RIGHT_IN + 0.28, low_in + 0.52, size=PLAIN, va="top"))
        self.bars[2].set_visible(False)

    def _strip(self, result, bow_m, low_in, times):
        """Outlines of face and base as (x, y) in inches, the ends up by the bow."""
        along = np.linspace(-0.5, 0.5, 41)
        x = LEFT_IN + (RIGHT_IN - LEFT_IN) / 2 + along * result.length_m * self._per_m
        scale = self._per_m * times
        rise = low_in + 4.0 * along**2 * bow_m * scale
        seam = rise + (result.thickness_m - result.face_m) * scale
        top = rise + result.thickness_m * scale
        ring = lambda lower, upper: np.column_stack([np.r_[x, x[::-1]], np.r_[lower, upper[::-1]]])  # noqa: E731
        return ring(rise, seam), ring(seam, top), x[-1], scale

    def update(self, result, system="both"):
        """Move the strips to `result`; `system` is "us", "si" or "both"."""
        largest = max(result.states, key=lambda state: state.likely_m)
        for lane, (state, times) in enumerate(((result.states[0], self._times), (result.states[1], self._times),
                                               (largest, 1.0))):  # fmt: skip
            shown_m = min(state.likely_m, self.most_m)
            base, face, end_in, scale = self._strip(result, shown_m, LANES_IN[lane], times)
            for part in self.bases[lane]:
                part.set_xy(base)
            self.faces[lane].set_xy(face)
            if lane < 2:
                low_in, high_in = (
                    LANES_IN[lane] + min(bow, self.most_m) * scale for bow in (state.low_m, state.high_m)
                )
                self.bars[lane].set_data([end_in + 0.12] * 2, [low_in, high_in])
                self._names[lane].set_text(shorten(state.name, 2.1, NAME, "bold"))
                ends = f"{show(state.low_m, 'length', system)}\nto {show(state.high_m, 'length', system)}"
                self._values[lane].set_text(f"{show(state.likely_m, 'length', system)}\nfrom {ends}")
        self._names[2].set_text("to scale")
        self._names[2].set_y((LANES_IN[2] + 0.10) / HEIGHT_IN)
        self._values[2].set_text("")
        times = plain_number(self._times, 2)
        self._note.set_text(f"heights drawn {times} times larger than life; the bar at the end: 5 % to 95 %")
        length = show(result.length_m, "length", system)
        self.alt = (
            f"A top {length} long and {show(result.thickness_m, 'length', system)} thick from the side, its ends up. "
            + " ".join(
                f"{state.name[0].upper()}{state.name[1:]}: {show(state.likely_m, 'length', system)}, between "
                f"{show(state.low_m, 'length', system)} and {show(state.high_m, 'length', system)}."
                for state in result.states
            )
            + " To scale the bow can hardly be seen."
        )
