"""The piece on the bench as the learner has just seen it: a section, and the thumb's print at its true depth."""

import math
from dataclasses import dataclass

from matplotlib.patches import Polygon, Rectangle

from shop_calc.lesson.pictures.areas import whole_page
from shop_calc.lesson.pictures.base import HATCHES, INK, PAPER, QUIET, ROLES, Picture
from shop_calc.lesson.pictures.lettering import NAME, PLAIN, place, shorten
from shop_calc.units import show

WIDTH_IN, HEIGHT_IN = 9.0, 2.22
LEFT_IN, SLAB_IN, FLOOR_IN = 0.75, 3.9, 0.62  # where the slab starts, how wide it is, top of the board
BASE_IN, FACE_IN, SIDE_IN, LEAN_IN = 0.80, 0.20, 0.20, 0.16
HOLE_IN, HOLE_WIDE_IN, TOP_IN = 6.60, 0.62, 1.72  # middle of the close-up, half its opening, its surface
SCALE = 1.9  # a print is drawn almost twice as large as it is
MARKS_M = (0.003175, 0.00635, 0.009525, 0.0127)  # eighths of an inch, by definition
_ROUND = [(-math.cos(math.pi * k / 24), math.sin(math.pi * k / 24) ** 0.8) for k in range(25)]  # a thumb, about
_WOOD, _SOFT = "#D9C3A0", "#F6DDAA"
# Bright strokes along the surface: how many, and how much of their share each takes.
_SHINE = {"wet": (1, 1.0), "fading": (5, 0.45), "hard": (2, 0.30), "polished": (1, 1.0)}
_COVERS = {"fabric": "damp fabric, plastic over it", "plastic": "bare plastic", "tent": "plastic held off",
           "mist": "misted", "membrane": "curing compound"}  # fmt: skip


@dataclass(frozen=True)
class BenchView:
    """What is known of the piece at this moment: by own acts, and by looks made just now.

    Parameters
    ----------
    face_on : bool
        True when the face is on the base [-].
    sides_on : int
        Sides of the form that are still on [-].
    sides : int
        Sides in all [-].
    cover : str
        Key of the cover, "open" for none [-].
    sheen : str
        What was seen along the light; empty when nobody looked [-].
    leans : bool or None
        Whether the edge, or the base, gave way when nudged; None when nobody looked [-].
    print_m : float or None
        Depth of the thumb's print; None when nobody pressed [m].
    deep : bool
        True when the thumb went deeper than a print says anything [-].
    skin : bool
        True when a dry skin carried the thumb at first [-].

    Examples
    --------
    >>> BenchView(False, 4, 4, "open").print_m is None
    True
    """

    face_on: bool
    sides_on: int
    sides: int
    cover: str
    sheen: str = ""
    leans: bool | None = None
    print_m: float | None = None
    deep: bool = False
    skin: bool = False


class AtTheBench(Picture):
    """Section at the left, thumb at the right; both show only what was done, or looked at just now."""

    kind = "tall"

    def build(self, axes):
        """Every artist once; the axes are counted in inches."""
        figure = self.figure
        whole_page(axes, WIDTH_IN, HEIGHT_IN)
        right = LEFT_IN + SLAB_IN
        board = (LEFT_IN - 0.45, FLOOR_IN - 0.14)
        axes.add_artist(Rectangle(board, SLAB_IN + 0.9, 0.14, fc=_WOOD, ec=INK, lw=1.0))
        self.base = axes.add_artist(Polygon([(0, 0)] * 4, fc=ROLES["base"], hatch=HATCHES["base"], ec=PAPER, lw=0.5))
        self.face = axes.add_artist(Polygon([(0, 0)] * 4, fc=ROLES["face"], ec="none"))
        self.rim = axes.add_artist(Polygon([(0, 0)] * 4, fc="none", ec=INK, lw=1.2))
        tall = BASE_IN + FACE_IN + 0.02
        self.form = [
            axes.add_artist(Rectangle((x, FLOOR_IN), SIDE_IN, tall, fc=_WOOD, ec=INK, lw=1.0))
            for x in (LEFT_IN - SIDE_IN, right)
        ]
        (self.shine,) = axes.plot([], [], color=PAPER, lw=3.2, solid_capstyle="butt", zorder=5)
        (self.lid,) = axes.plot([], [], color=ROLES["line"], lw=3.0, zorder=6)
        (self.drops,) = axes.plot([], [], ls="none", marker="|", ms=7, mec=ROLES["line"], mew=1.6, zorder=6)
        self.left_words = [place(figure, LEFT_IN - 0.45, y, size=PLAIN, color=QUIET) for y in (0.30, 0.10)]
        self._thumb(axes)

    def _thumb(self, axes):
        figure = self.figure
        left, right = HOLE_IN - 1.25, HOLE_IN + 1.25
        self.ground = axes.add_artist(Rectangle((left, 0.5), right - left, TOP_IN - 0.5, fc=_SOFT, ec="none"))
        self.hole = axes.add_artist(Polygon([(0, 0)] * 3, fc=PAPER, ec=INK, lw=1.4, zorder=3))
        (self.surface,) = axes.plot([left, right], [TOP_IN, TOP_IN], color=INK, lw=1.6, zorder=2.5)
        (self.crust,) = axes.plot([], [], color=ROLES["stop"], lw=4.0, zorder=3.5)
        self.ruler = []
        for number, mark in enumerate((0.0, *MARKS_M)):
            y = TOP_IN - self._deep_in(mark)
            self.ruler += axes.plot([right - 0.14, right], [y, y], color=INK, lw=1.2, zorder=3)
            if number % 2 == 0:
                words = "0" if not mark else f"{show(mark, 'length', 'us')}  {1000 * mark:.0f} mm"
                self.ruler.append(place(figure, right + 0.08, y, words, size=PLAIN))
        self.right_words = place(figure, left, 0.30, size=NAME)
        self.right_more = place(figure, left, 0.10, size=PLAIN, color=QUIET)

    @staticmethod
    def _deep_in(depth_m):
        return depth_m / 0.0254 * SCALE

    def update(self, view, system="both"):
        """Move the artists.

        Parameters
        ----------
        view : BenchView
            What is known now [as its fields].
        system : str
            "us", "si" or "both" [-].
        """
        self._section(view)
        self._print(view, system)
        self.alt = self._words(view, system)

    def _section(self, view):
        lean = LEAN_IN if view.leans else 0.0
        bare = view.sides_on < view.sides
        left, right, top = LEFT_IN, LEFT_IN + SLAB_IN, FLOOR_IN + BASE_IN
        height = top + (FACE_IN if view.face_on else 0.0)
        side = 0.0 if not view.face_on else 0.14
        out = lean if bare else 0.0
        self.base.set_xy([
            (left + side, FLOOR_IN), (right - side + out, FLOOR_IN), (right - side, top), (left + side, top - lean / 2),
        ])  # fmt: skip
        shape = [(left, FLOOR_IN), (right + out, FLOOR_IN), (right, height), (left, height)]
        self.face.set_xy(shape)
        self.face.set_visible(view.face_on)
        self.face.set_zorder(0.8)
        self.rim.set_xy(shape)
        self.form[0].set_visible(view.sides_on > 0)
        self.form[1].set_visible(view.sides_on == view.sides)
        count, share = _SHINE.get(view.sheen, (0, 0.0)) if view.face_on else (0, 0.0)
        xs = []
        for number in range(count):
            middle, half = left + (number + 0.5) * SLAB_IN / count, 0.5 * share * (SLAB_IN - 0.1) / count
            xs += [middle - half, middle + half, float("nan")]
        self.shine.set_data(xs, [height - 0.06] * len(xs))
        self.shine.set_linewidth(1.6 if view.sheen in ("hard", "polished") else 3.6)
        self._lid(view, left, right, height)
        how = f"{view.sides_on} of {view.sides} sides on" if view.sides_on else "all sides off"
        cover = _COVERS.get(view.cover, "")
        self.left_words[0].set_text(shorten(f"{how}; {cover or 'nothing lies on it'}", 5.2))
        nudge = {None: "", True: "nudged: it gives way", False: "nudged: it keeps its shape"}[view.leans]
        light = {
            "wet": "it shines", "fading": "the shine goes", "dull": "dull", "hard": "a hard sheen follows the blade",
            "polished": "a hard, even sheen",
        }.get(view.sheen, "")  # fmt: skip
        self.left_words[1].set_text(shorten("; ".join(filter(None, (light, nudge))), 5.2))

    def _lid(self, view, left, right, height):
        up = {"tent": 0.38, "fabric": 0.05, "plastic": 0.05, "membrane": 0.03}.get(view.cover)
        if up is None:
            self.lid.set_data([], [])
        elif view.cover == "tent":
            xs, low = [left - 0.35, left - 0.25, right + 0.25, right + 0.35], FLOOR_IN
            self.lid.set_data(xs, [low, height + up, height + up, low])
        else:
            self.lid.set_data([left - 0.1, right + 0.1], [height + up] * 2)
        self.lid.set_linestyle("--" if view.cover == "membrane" else "-")
        wet = view.cover in ("fabric", "mist")
        xs = [left + (k + 0.5) * SLAB_IN / 14 for k in range(14)] if wet else []
        self.drops.set_data(xs, [height + (0.14 if view.cover == "fabric" else 0.10)] * len(xs))

    def _print(self, view, system):
        pressed = view.print_m is not None
        depth = self._deep_in(view.print_m or 0.0)
        half = HOLE_WIDE_IN * (0.55 + 0.45 * min(depth / self._deep_in(MARKS_M[-1]), 1.0))
        self.hole.set_xy([(HOLE_IN + half * x, TOP_IN - depth * y) for x, y in _ROUND])
        self.hole.set_visible(pressed and depth > 0)
        self.ground.set_facecolor(ROLES["face"] if view.face_on else ROLES["base"])
        self.ground.set_alpha(0.55 if pressed else 0.18)
        broken = [HOLE_IN - 1.2, HOLE_IN - half, float("nan"), HOLE_IN + half, HOLE_IN + 1.2]
        self.crust.set_data(broken if view.skin else [], [TOP_IN + 0.02] * 5 if view.skin else [])
        for artist in self.ruler:
            artist.set_visible(pressed)
        words, more = self._print_words(view, system)
        self.right_words.set_text(words)
        self.right_more.set_text(more)

    @staticmethod
    def _print_words(view, system):
        if view.print_m is None:
            return "No thumb is on it now.", ""
        more = "a dry skin broke under it" if view.skin else "" if view.face_on else "on the base"
        if view.deep:
            return f"Thumb: deeper than {show(view.print_m, 'length', system)}", more
        if view.print_m == 0.0:
            return "Thumb: no print", more
        return f"Thumb: {show(view.print_m, 'length', system)}", more

    def _words(self, view, system):
        parts = ["Section through the piece:", "base and face" if view.face_on else "the base, no face yet"]
        parts.append(f"with {view.sides_on} of {view.sides} sides on." if view.sides_on else "with all sides off.")
        if view.cover in _COVERS:
            parts.append(f"On it: {_COVERS[view.cover]}.")
        seen = [text.get_text() for text in self.left_words[1:] if text.get_text()]
        parts += [f"Seen: {text}." for text in seen]
        words, more = self._print_words(view, system)
        parts.append(f"{words.rstrip('.')}{f', {more}' if more else ''}.")
        return " ".join(parts)
