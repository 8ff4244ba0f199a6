"""Weigh bars: what goes on the scale, base and face share apart, drawn to one scale."""

from dataclasses import dataclass

from matplotlib.patches import Rectangle

from shop_calc.lesson.pictures.base import HATCHES, INK, PAPER, QUIET, ROLES, Picture
from shop_calc.lesson.pictures.lettering import NAME, PLAIN, TITLE, place, sentence, shorten, width_in, wrap
from shop_calc.lesson.pictures.scales import LANE, nice_step, two_units
from shop_calc.units import show

WIDTH_IN, PITCH_IN, LANE_IN = 9.0, 0.42, 0.34
NAME_IN, BASE_IN, EDGE_IN, GAP_IN = 0.14, 2.15, 0.14, 0.16
TOP_IN, HEAD_IN, BELOW_IN = 0.46, 0.32, 0.56
NUMBER_IN = 1.62  # room for the two readings after a bar
LEAST_BARS_IN = 0.55


@dataclass(frozen=True)
class WeighRow:
    """One line of the weigh bars.

    Parameters
    ----------
    name : str
        Ingredient [-].
    base_kg, face_kg : float
        What goes into the base, and into the face share [kg].
    total : bool
        A sum: numbers only, no bar [-].

    Examples
    --------
    >>> WeighRow("cement", 20.5, 8.2).face_kg
    8.2
    """

    name: str
    base_kg: float
    face_kg: float = 0.0
    total: bool = False


class WeighBars(Picture):
    """Bars for one load or for the whole batch; built for a number of rows, then moved in place.

    Parameters
    ----------
    rows : sequence of WeighRow
        In the order they are weighed [kg].
    heading : str
        What is weighed: "One load of three", "The whole batch" [-].
    most_base_kg, most_face_kg : float, optional
        Ends of the scales; by default the greatest mass given [kg].
    """

    kind = "tall"

    def __init__(self, rows, heading="The whole batch", most_base_kg=None, most_face_kg=None):
        self.rows, self.heading = list(rows), heading
        bars = [row for row in self.rows if not row.total]
        self.most = (
            most_base_kg or max([row.base_kg for row in bars] + [0.1]),
            most_face_kg or max([row.face_kg for row in bars] + [0.1]),
        )
        super().__init__()
        self.update(rows)

    def build(self, axes):
        """Two panels on one scale, a lane a row."""
        figure, count = self.figure, len(self.rows)
        body = count * PITCH_IN
        height = TOP_IN + HEAD_IN + body + BELOW_IN
        figure.set_size_inches(WIDTH_IN, height)
        free = WIDTH_IN - BASE_IN - EDGE_IN - GAP_IN - 2 * NUMBER_IN
        wide = max(LEAST_BARS_IN, min(free - LEAST_BARS_IN, free * self.most[0] / sum(self.most)))
        self.kg_per_in = max(self.most[0] / wide, self.most[1] / (free - wide))
        panels = ((BASE_IN, wide + NUMBER_IN), (BASE_IN + wide + NUMBER_IN + GAP_IN, free - wide + NUMBER_IN))
        place(figure, NAME_IN, height - 0.24, shorten(self.heading, 8.6, TITLE, "bold"), size=TITLE, weight="bold")
        self.panels = []
        for (left, across), which, words in zip(panels, ("base", "face"), ("into the base", "face share"), strict=True):
            axes = axes if which == "base" else figure.add_axes([0, 0, 1, 1])
            axes.set_position([left / WIDTH_IN, BELOW_IN / height, across / WIDTH_IN, body / height])
            place(figure, left, height - TOP_IN - 0.14, words, size=NAME, weight="bold")
            self.panels.append(self._panel(axes, which, across, count))
        names = [place(figure, NAME_IN, BELOW_IN + self._middle(n, count), size=NAME) for n in range(count)]
        self._names = names

    @staticmethod
    def _middle(number, count):
        return (count - number - 0.5) * PITCH_IN

    def _panel(self, axes, which, across, count):
        axes.set(xlim=(0, across * self.kg_per_in), ylim=(0, count * PITCH_IN), yticks=[])
        axes.grid(False)
        axes.spines[["left", "bottom"]].set_visible(False)
        axes.tick_params(axis="x", length=0, pad=4)
        most = self.most[0 if which == "base" else 1]
        step = max(nice_step(self.kg_per_in * 3.4, 5), nice_step(most, 4))
        most = max(most, (across - 0.4) * self.kg_per_in)  # to where the last label still has room
        marks = [n * step for n in range(int(most / step + 1e-9) + 1)]
        for mark in marks[1:]:
            axes.axvline(mark, color=PAPER, lw=1.6, zorder=1.5)
        two_units(axes, "x", marks, "kg", "lb")
        artists = []
        for number in range(count):
            middle = self._middle(number, count)
            axes.add_artist(
                Rectangle((0, middle - LANE_IN / 2), across * self.kg_per_in, LANE_IN, fc=LANE, ec="none", zorder=1)
            )
            look = {"fc": ROLES[which], "ec": PAPER, "lw": 0, "hatch": HATCHES[which], "zorder": 3}
            bar = axes.add_artist(Rectangle((0, middle - LANE_IN * 0.35), 0, LANE_IN * 0.7, **look))
            edge = axes.add_artist(
                Rectangle((0, middle - LANE_IN * 0.35), 0, LANE_IN * 0.7, fc="none", ec=INK, lw=1.0, zorder=4)
            )
            left = axes.get_position().x0 * WIDTH_IN
            words = place(self.figure, left, BELOW_IN + middle, size=PLAIN)
            artists.append((bar, edge, words, left))
        return artists

    def update(self, rows, system="both"):
        """Move the bars to other masses.

        Parameters
        ----------
        rows : sequence of WeighRow
            As many as the picture was built for [kg].
        system : str
            "us", "si" or "both" [-].

        Raises
        ------
        ValueError
            When the number of rows is not the one the picture was built for.
        """
        rows = list(rows)
        if len(rows) != len(self._names):
            raise ValueError(f"rows: {len(rows)} given; these bars were built for {len(self._names)}")
        for name, row in zip(self._names, rows, strict=True):
            weight = "bold" if row.total else "normal"
            room = BASE_IN - NAME_IN - 0.1
            one = width_in(row.name, NAME, weight) <= room  # a long name takes two smaller lines
            size, text = (NAME, row.name) if one else (PLAIN, wrap(row.name, room, 2, PLAIN, weight))
            name.set(text=text, weight=weight, size=size)
        for panel, which in zip(self.panels, ("base_kg", "face_kg"), strict=True):
            for (bar, edge, words, left), row in zip(panel, rows, strict=True):
                mass = getattr(row, which)
                long = 0.0 if row.total else mass
                bar.set_width(long)
                edge.set(width=long, visible=long > 0)
                weight = "bold" if row.total else "normal"
                says = show(mass, "mass", system) if mass > 0 else "–"
                words.set(text=says, weight=weight, color=INK if mass > 0 else QUIET)
                words.set_x((left + long / self.kg_per_in + 0.08) / WIDTH_IN)
        self.rows = rows
        self.alt = weigh_bars_alt(rows, self.heading, system)


def weigh_bars_alt(rows, heading="The whole batch", system="both"):
    """The weigh bars in words.

    Parameters
    ----------
    rows, heading, system : as there
        As for `WeighBars` [-].

    Returns
    -------
    str
        Alt text [-].

    Examples
    --------
    >>> weigh_bars_alt([WeighRow("cement", 20.0)], "One load")
    'One load, as bars. Cement: 44.1 lb (20 kg) into the base, none into the face share.'
    """
    said = [sentence(f"{heading}, as bars")]
    for row in rows:
        base = show(row.base_kg, "mass", system) if row.base_kg > 0 else "none"
        face = show(row.face_kg, "mass", system) if row.face_kg > 0 else "none"
        said.append(sentence(f"{row.name}: {base} into the base, {face} into the face share"))
    return " ".join(said)
