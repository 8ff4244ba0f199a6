"""Ways of carrying a piece: each drawn to scale where it is held, beside the bending strength that it asks for."""

from dataclasses import dataclass

import numpy as np
from matplotlib.lines import Line2D
from matplotlib.patches import Polygon, Rectangle

from shop_calc.lesson.pictures.base import INK, PAPER, QUIET, ROLES, Picture
from shop_calc.lesson.pictures.lettering import NAME, TITLE, place, sentence, shorten, wrap
from shop_calc.lesson.pictures.scales import LANE, stamp_ticks
from shop_calc.units import convert, plain_number, show

WIDTH_IN = 9.0
EDGE_IN, DRAWN_IN, BAR_IN, RIGHT_IN = 0.16, 3.52, 3.78, 8.60
HEAD_IN, LANE_IN, FOOT_IN = 1.02, 1.30, 0.64
BAR_TALL_IN, HOLD_IN, PULL = 0.22, 0.15, ROLES["stop"]
MOST_PA = convert(700.0, "psi", "Pa")
TICKS_PSI = (0, 100, 200, 300, 400, 500, 600, 700)


@dataclass(frozen=True)
class CarryLane:
    """One way of carrying.

    Parameters
    ----------
    title : str
        Its name; where it goes on edge, with what to say about falling [-].
    hold_ratio : float or None
        How far each hold is in from its end, as a share of the length; None on a board under all of it [-].
    on_edge : bool
        True when its width stands upright [-].
    stress_pa : float
        Tension of its own weight [Pa].
    needed_pa : float
        Bending strength that it asks for, jolt and scatter included [Pa].
    free : bool
        True when it may be carried so by the morning [-].
    when : str
        From when: "from Tue 08:00" [-].
    tension : str
        Which face is pulled [-].

    Examples
    --------
    >>> CarryLane("Flat, held by the ends", 0.0, False, 1e6, 3e6, False, "not in 28 days", "the underside").free
    False
    """

    title: str
    hold_ratio: float | None
    on_edge: bool
    stress_pa: float
    needed_pa: float
    free: bool
    when: str
    tension: str


@dataclass(frozen=True)
class CarryView:
    """What the picture shows.

    Parameters
    ----------
    length_m, width_m, thickness_m : float
        The piece [m].
    lanes : tuple of CarryLane
        From the kindest way to the hardest [as their fields].
    morning_pa, final_pa : float
        Bending strength counted in the morning and at 28 days [Pa].

    Examples
    --------
    >>> CarryView(1.5, 0.4, 0.04, (), 1e6, 3e6).lanes
    ()
    """

    length_m: float
    width_m: float
    thickness_m: float
    lanes: tuple
    morning_pa: float
    final_pa: float


class CarryWays(Picture):
    """A lane a way; the scale of the drawings and of the bars is fixed when it is built.

    Parameters
    ----------
    result : CarryView
        What to show first [as its fields].
    longest_m : float
        Length that fills the room of the drawings [m].
    title : str
        One line over the picture [-].
    """

    kind = "tall"

    def __init__(self, result, longest_m=2.4384, title="Four ways to carry it"):
        self._first, self.longest_m, self.title = result, longest_m, title
        super().__init__()
        self.update(result)

    def build(self, axes):
        """Lanes with a drawing to the left and a bar to the right."""
        figure, count = self.figure, len(self._first.lanes)
        height = HEAD_IN + count * LANE_IN + FOOT_IN
        figure.set_size_inches(WIDTH_IN, height)
        axes.set_position([BAR_IN / WIDTH_IN, FOOT_IN / height, (RIGHT_IN - BAR_IN) / WIDTH_IN,
                           count * LANE_IN / height])  # fmt: skip
        axes.set(xlim=(0, MOST_PA), ylim=(0, count * LANE_IN), yticks=[])
        axes.set_facecolor("none")
        axes.grid(False)
        axes.spines[["left", "bottom"]].set_visible(False)
        self._ticks(axes)
        drawn = self.drawn = figure.add_axes(
            [EDGE_IN / WIDTH_IN, FOOT_IN / height, (DRAWN_IN - EDGE_IN) / WIDTH_IN, count * LANE_IN / height]
        )
        drawn.set_axis_off()
        drawn.set(xlim=(0, DRAWN_IN - EDGE_IN), ylim=(0, count * LANE_IN))
        place(figure, 0.14, height - 0.24, shorten(self.title, 8.7, TITLE, "bold"), size=TITLE, weight="bold")
        self._key(height)
        self.lanes = [self._lane(axes, drawn, count - 1 - number, height) for number in range(count)]

    def _ticks(self, axes):
        places = [convert(mark, "psi", "Pa") for mark in TICKS_PSI]
        labels = [f"{mark}\n{plain_number(convert(mark, 'psi', 'MPa'), 2)}" for mark in TICKS_PSI]
        axes.set_xticks(places, labels)
        axes.tick_params(axis="x", length=0, pad=4, labelsize=11)
        stamp_ticks(axes.xaxis)
        for row, unit in enumerate(("in bending, psi", "MPa")):
            place(self.figure, BAR_IN - 0.16, FOOT_IN - 0.15 - 0.19 * row, unit, color=QUIET, ha="right")

    def _key(self, height):
        """What bars and lines mean, with a sample of each."""
        figure = self.figure
        tall, y = 0.13, (height - 0.56, height - 0.82)

        def box(x_in, y_in, **look):
            figure.add_artist(Rectangle((x_in / WIDTH_IN, (y_in - tall / 2) / height), 0.26 / WIDTH_IN, tall / height,
                                        transform=figure.transFigure, lw=1.0, ec=INK, **look))  # fmt: skip

        box(BAR_IN, y[0], fc=ROLES["base"])
        place(figure, BAR_IN + 0.34, y[0], "pulled by its own weight")
        box(BAR_IN + 2.80, y[0], fc=PAPER, hatch="////")
        place(figure, BAR_IN + 3.14, y[0], "jolt and scatter on top")
        for x_in, style, words in ((BAR_IN, "-", "there in the morning"),
                                   (BAR_IN + 2.80, (0, (2, 1)), "at 28 days")):  # fmt: skip
            across = [x_in / WIDTH_IN, (x_in + 0.26) / WIDTH_IN]
            figure.add_artist(Line2D(across, [y[1] / height] * 2, color=INK, lw=2.6, ls=style,
                                     transform=figure.transFigure))  # fmt: skip
            place(figure, x_in + 0.34, y[1], words)
        place(figure, EDGE_IN, y[0], "to scale, seen from the side; ▲ held")
        figure.add_artist(Line2D([EDGE_IN / WIDTH_IN, (EDGE_IN + 0.26) / WIDTH_IN], [y[1] / height] * 2, color=PULL,
                                 lw=4, solid_capstyle="butt", transform=figure.transFigure))  # fmt: skip
        place(figure, EDGE_IN + 0.34, y[1], "pulled there")

    def _lane(self, axes, drawn, row, height):
        figure, low = self.figure, row * LANE_IN
        if row < len(self._first.lanes) - 1:
            y = (FOOT_IN + low + LANE_IN) / height
            figure.add_artist(Rectangle((EDGE_IN / WIDTH_IN, y), 1 - 2 * EDGE_IN / WIDTH_IN, 0.01 / height,
                                        transform=figure.transFigure, fc="#D5D9DE", ec="none"))  # fmt: skip
        bar = low + 0.49
        axes.add_artist(Rectangle((0, bar), MOST_PA, BAR_TALL_IN, fc=LANE, ec="none", zorder=1))
        look = {"ec": INK, "lw": 1.0, "zorder": 3}
        piece = {"fc": ROLES["stone"], "ec": INK, "lw": 1.0, "zorder": 3}
        pulls = [drawn.plot([], [], color=PULL, lw=4, solid_capstyle="butt", zorder=4)[0] for _ in range(3)]
        marks = {}
        for name, style in (("morning", "-"), ("final", (0, (2, 1)))):
            (halo,) = axes.plot([], [], color=PAPER, lw=5.0, zorder=4)
            (line,) = axes.plot([], [], color=INK, lw=2.6, ls=style, zorder=5)
            marks[name] = (halo, line, (bar - 0.04, bar + BAR_TALL_IN + 0.05))
        return {
            "needed": axes.add_artist(Rectangle((0, bar), 0, BAR_TALL_IN, fc=PAPER, hatch="////", **look)),
            "own": axes.add_artist(Rectangle((0, bar), 0, BAR_TALL_IN, fc=ROLES["base"], **look)),
            "marks": marks,
            "piece": drawn.add_artist(Rectangle((0, 0), 0, 0, **piece)),
            "board": drawn.add_artist(Rectangle((0, 0), 0, 0, fc="#F6DDAA", ec=INK, lw=1.0, hatch="..", zorder=3)),
            "holds": [drawn.add_artist(Polygon(np.zeros((3, 2)), fc=INK, ec="none", zorder=2)) for _ in range(2)],
            "pulls": pulls,
            "title": place(figure, BAR_IN, FOOT_IN + low + 0.82, va="bottom", size=NAME, weight="bold"),
            "says": place(figure, BAR_IN, FOOT_IN + low + 0.31),
            "when": place(figure, BAR_IN, FOOT_IN + low + 0.115, weight="bold"),
            "low": low,
        }

    def update(self, result, system="both"):
        """Move drawings, bars and words.

        Parameters
        ----------
        result : CarryView
            With as many ways as the picture was built for [as its fields].
        system : str
            "us", "si" or "both", for the words [-].

        Raises
        ------
        ValueError
            When the number of ways is not the one the picture was built for.
        """
        if len(result.lanes) != len(self.lanes):
            raise ValueError(f"ways: {len(result.lanes)} given; this picture was built for {len(self.lanes)}")
        for parts, lane in zip(self.lanes, result.lanes, strict=True):
            self._draw(parts, lane, result)
            for bar, value in ((parts["own"], lane.stress_pa), (parts["needed"], lane.needed_pa)):
                bar.set(width=min(value, MOST_PA), visible=value > 0)
            for name, value in (("morning", result.morning_pa), ("final", result.final_pa)):
                halo, line, ends = parts["marks"][name]
                for artist in (halo, line):
                    artist.set_data([min(value, MOST_PA)] * 2, ends)
            parts["title"].set_text(wrap(lane.title, WIDTH_IN - BAR_IN - 0.15, 2, NAME, "bold"))
            parts["says"].set_text(_stress_words(lane, system))
            parts["when"].set_text(f"{'✓' if lane.free else '✗'} {lane.when}")
        self.alt = carry_ways_alt(result, system, self.title)

    def _draw(self, parts, lane, result):
        room = DRAWN_IN - EDGE_IN
        scale = room / max(self.longest_m, result.length_m)
        long, deep = result.length_m * scale, (result.width_m if lane.on_edge else result.thickness_m) * scale
        left, under = (room - long) / 2.0, parts["low"] + (LANE_IN - deep) / 2.0 - 0.02
        parts["piece"].set(x=left, y=under, width=long, height=deep)
        on_board = lane.hold_ratio is None
        parts["board"].set(x=left - 0.05, y=under - 0.11, width=long + 0.1, height=0.1, visible=on_board)
        for hold, end in zip(parts["holds"], (1, -1), strict=True):
            hold.set_visible(not on_board)
            if not on_board:
                at = left + long * (lane.hold_ratio if end == 1 else 1.0 - lane.hold_ratio)
                at += 0.5 * HOLD_IN * end * (lane.hold_ratio < 0.02)
                hold.set_xy([(at, under), (at - HOLD_IN / 2, under - HOLD_IN), (at + HOLD_IN / 2, under - HOLD_IN)])
        spans = _pulled(lane.hold_ratio)
        for line, span in zip(parts["pulls"], [*spans, *[None] * (3 - len(spans))], strict=True):
            if span is None:
                line.set_data([], [])
                continue
            start, end, below = span
            y = under - 0.03 if below else under + deep + 0.03
            line.set_data([left + start * long, left + end * long], [y, y])


def _pulled(hold_ratio):
    """Where the faces are pulled most: from and to along the length, and whether it is the lower one."""
    if hold_ratio is None:
        return []
    if hold_ratio < 0.02:
        return [(0.30, 0.70, True)]
    over = [(hold_ratio - 0.07, hold_ratio + 0.07, False), (0.93 - hold_ratio, 1.07 - hold_ratio, False)]
    return [(0.40, 0.60, True), *over]


def _stress_words(lane, system):
    if lane.stress_pa == 0:
        return "nothing pulls while the board does not bend"
    own, needed = (show(value, "pressure", system) for value in (lane.stress_pa, lane.needed_pa))
    return f"{own}; needs {needed}" + (" →" if lane.needed_pa > MOST_PA else "")


def carry_ways_alt(result, system="both", title="Four ways to carry it"):
    """The ways in words.

    Parameters
    ----------
    result, system, title : as there
        As for `CarryWays` [-].

    Returns
    -------
    str
        Alt text [-].
    """
    sizes = " by ".join(show(size, "length", system) for size in (result.length_m, result.width_m, result.thickness_m))
    morning, final = (show(value, "pressure", system) for value in (result.morning_pa, result.final_pa))
    said = [f"{title}: a piece of {sizes}, with a bending strength of {morning} in the morning and {final} at 28 days."]
    for lane in result.lanes:
        pull = "nothing is pulled" if lane.stress_pa == 0 else (
            f"its own weight pulls {lane.tension} with {show(lane.stress_pa, 'pressure', system)}; with jolt and "
            f"scatter it needs {show(lane.needed_pa, 'pressure', system)}"
        )  # fmt: skip
        said.append(sentence(f"{lane.title}: {pull}; {lane.when}"))
    return " ".join(said)
