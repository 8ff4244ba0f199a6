"""One mix in three vessels: what is made, what is set aside for the face, what goes on to the base; volumes to scale."""

from dataclasses import dataclass

from matplotlib.patches import Rectangle

from shop_calc.lesson.pictures.areas import whole_page
from shop_calc.lesson.pictures.base import HATCHES, INK, PAPER, QUIET, ROLES, Picture
from shop_calc.lesson.pictures.lettering import NAME, TITLE, place, sentence, shorten, wrap
from shop_calc.units import convert

WIDTH_IN, HEIGHT_IN = 9.0, 4.9
FLOOR_IN, TALL_IN, VESSEL_IN, BESIDE_IN = 0.62, 3.25, 0.95, 0.1
LEFT_IN = (0.25, 3.2, 6.15)  # where each vessel stands
ROOM_IN = 1.72  # for the words beside it
LINE_IN = 0.19  # a line of words


@dataclass(frozen=True)
class OneMix:
    """Volumes of a batch on their way from the mixer into the form.

    Parameters
    ----------
    mortar_m3 : float
        Mortar of the whole batch [m3].
    face_share_m3, face_m3 : float
        What is set aside, and what of it the form holds [m3].
    base_m3, core_m3 : float
        Base that is made with stone and coarse sand, and what of it the form holds [m3].

    Examples
    --------
    >>> round(OneMix(0.01718, 0.00556, 0.00445, 0.01856, 0.01767).mortar_of_base_m3, 5)
    0.01162
    """

    mortar_m3: float
    face_share_m3: float
    face_m3: float
    base_m3: float
    core_m3: float

    @property
    def mortar_of_base_m3(self):
        """Mortar that stays in the mixer and becomes base."""
        return self.mortar_m3 - self.face_share_m3


_PAPER = {"ec": PAPER, "lw": 0}
FILLS = {
    "face": {"fc": ROLES["face"], **_PAPER},
    "mortar": {"fc": ROLES["base"], "hatch": HATCHES["base"], **_PAPER},
    "stone": {"fc": "#C3C9D1", "hatch": HATCHES["stone"], "ec": INK, "lw": 0},
}


class OneMixInVessels(Picture):
    """Three vessels of one width: heights, and so areas, are volumes. A dashed line is what the form holds.

    Parameters
    ----------
    mix : OneMix
        The volumes; the fullest vessel fixes the scale [m3].
    title : str
        One line over the picture [-].
    """

    kind = "tall"

    def __init__(self, mix, title):
        self.mix, self.title = mix, title
        self.in_per_m3 = (TALL_IN - 0.15) / max(mix.mortar_m3, mix.base_m3)
        super().__init__()
        self.update(mix)

    def build(self, axes):
        """A sheet in inches; vessels, what is in them, words beside them."""
        whole_page(axes, WIDTH_IN, HEIGHT_IN)
        figure = self.figure
        place(figure, 0.14, HEIGHT_IN - 0.24, shorten(self.title, 6.4, TITLE, "bold"), size=TITLE, weight="bold")
        place(figure, WIDTH_IN - 0.14, HEIGHT_IN - 0.24, "volumes to one scale", ha="right", color=QUIET)
        heads = ("1  one mix of mortar", "2  set aside for the face", "3  goes on to the base")
        self._fills, self._lines, self._words, self._sums = [], [], [], []
        for left, head, layers in zip(LEFT_IN, heads, (("mortar", "face"), ("face",), ("mortar", "stone")), strict=True):
            place(figure, left, HEIGHT_IN - 0.66, head, size=NAME, weight="bold")
            self._fills.append([
                (axes.add_artist(Rectangle((left, FLOOR_IN), VESSEL_IN, 0, zorder=2, **FILLS[layer])),
                 axes.add_artist(Rectangle((left, FLOOR_IN), VESSEL_IN, 0, fc="none", ec=INK, lw=1.0, zorder=3)))
                for layer in layers
            ])  # fmt: skip
            right, top = left + VESSEL_IN, FLOOR_IN + TALL_IN
            axes.plot([left, left, right, right], [top, FLOOR_IN, FLOOR_IN, top], color=INK, lw=2.4, zorder=4,
                      solid_joinstyle="miter")  # fmt: skip
            for colour, wide in ((PAPER, 4.0), (INK, 1.6)):  # a light border, so that it shows on every fill
                (line,) = axes.plot([], [], color=colour, lw=wide, ls=(0, (4, 2)) if colour == INK else "-", zorder=5)
                self._lines.append(line)
            self._words.append([place(figure, left + VESSEL_IN + BESIDE_IN, 0) for _ in range(3)])
            self._sums.append(place(figure, left, FLOOR_IN - 0.2, weight="bold"))
        place(figure, 0.14, 0.14, "dashed: what the form holds; above it, what is needed besides", color=QUIET)

    def update(self, mix, system="both"):
        """Fill the vessels.

        Parameters
        ----------
        mix : OneMix
            The volumes [m3].
        system : str
            "us", "si" or "both" [-].
        """
        volume = lambda m3: _volume(m3, system)  # noqa: E731
        aside, left_m3 = mix.face_share_m3, mix.mortar_of_base_m3
        contents = ((left_m3, aside), (aside,), (left_m3, mix.base_m3 - left_m3))
        for fills, amounts in zip(self._fills, contents, strict=True):
            low = FLOOR_IN
            for shapes, amount in zip(fills, amounts, strict=True):
                for shape in shapes:
                    shape.set(y=low, height=amount * self.in_per_m3)
                low += amount * self.in_per_m3
        for number, level_m3 in ((1, mix.face_m3), (2, mix.core_m3)):
            y, left = FLOOR_IN + level_m3 * self.in_per_m3, LEFT_IN[number]
            for line in self._lines[2 * number : 2 * number + 2]:
                line.set_data([left, left + VESSEL_IN + BESIDE_IN - 0.04], [y, y])
        for words, m3 in zip(self._sums, (mix.mortar_m3, aside, mix.base_m3), strict=True):
            words.set_text(volume(m3))
        more, spare = aside - mix.face_m3, mix.base_m3 - mix.core_m3
        self._beside(0, (left_m3 / 2, "the rest", left_m3), (left_m3 + aside / 2, "set aside", aside), system=system)
        self._beside(1, (mix.face_m3 / 2, "into the form", mix.face_m3),
                     (mix.face_m3 + 0.33 / self.in_per_m3, "screeding, edges, the patch cup", more), system=system)  # fmt: skip
        self._beside(2, (left_m3 / 2, "mortar", left_m3),
                     ((left_m3 + mix.base_m3) / 2, "stone, coarse sand", mix.base_m3 - left_m3),
                     (mix.core_m3 + 0.21 / self.in_per_m3, "stays in the bucket", spare), system=system)  # fmt: skip
        self.mix, self.alt = mix, one_mix_alt(mix, self.title, system)

    def _beside(self, number, *named, system):
        """Words beside the middle of what they name, pushed up where they would touch the ones below."""
        free = FLOOR_IN
        for words, (level_m3, name, m3) in zip(self._words[number], named, strict=False):
            text = f"{wrap(name, ROOM_IN)}\n{_volume(m3, system)}"
            half = LINE_IN * (text.count("\n") + 1) / 2
            middle = max(FLOOR_IN + level_m3 * self.in_per_m3, free + half)
            words.set(y=middle / HEIGHT_IN, text=text)
            free = middle + half + 0.06


def _volume(m3, system):
    """In cubic feet however small, so that the parts can be compared."""
    us, si = (f"{convert(m3, 'm3', unit):.3g} {sign}" for unit, sign in (("ft3", "ft³"), ("L", "L")))
    return {"us": us, "si": si}.get(system, f"{us} ({si})")


def one_mix_alt(mix, title, system="both"):
    """The three vessels in words.

    Parameters
    ----------
    mix, title, system : as there
        As for `OneMixInVessels` [-].

    Returns
    -------
    str
        Alt text [-].

    Examples
    --------
    >>> one_mix_alt(OneMix(0.01718, 0.00556, 0.00445, 0.01856, 0.01767), "One mix", "si").split(". ")[1]
    'Made: 17.2 L of mortar'
    """
    volume = lambda m3: _volume(m3, system)  # noqa: E731
    left = mix.mortar_of_base_m3
    return " ".join((
        sentence(title),
        f"Made: {volume(mix.mortar_m3)} of mortar.",
        f"Set aside for the face: {volume(mix.face_share_m3)}; the form holds {volume(mix.face_m3)} of it, and "
        f"{volume(mix.face_share_m3 - mix.face_m3)} are for screeding, edges and the patch cup.",
        f"Goes on to the base: {volume(left)} of mortar; with {volume(mix.base_m3 - left)} of stone and coarse sand it becomes "
        f"{volume(mix.base_m3)}; the form holds {volume(mix.core_m3)} of it, and {volume(mix.base_m3 - mix.core_m3)} stay in "
        "the bucket.",
    ))  # fmt: skip
