"""The heat balance of a mix as areas: what the warm parts give is what the cold parts take.

Each ingredient is a block. Its width is its share of the heat the mix holds (heat capacity), its height
the distance from its own temperature to the temperature of the mix. Above and below the mix line the
areas are equal: that is what a mix temperature is. Water is narrow on the scale and wide here.
"""

from dataclasses import dataclass

from matplotlib.lines import Line2D
from matplotlib.patches import Rectangle

from shop_calc.lesson.pictures.areas import plot_area
from shop_calc.lesson.pictures.base import INK, PAPER, QUIET, ROLES, Picture
from shop_calc.lesson.pictures.lettering import NAME, PLAIN, TITLE, place, sentence, shorten, width_in
from shop_calc.lesson.pictures.scales import LANE, second_scale, stamp_ticks
from shop_calc.units import plain_number, show

WIDTH_IN, HEIGHT_IN = 9.0, 5.0
LIST_IN, LEFT_IN, RIGHT_IN, TOP_IN, BELOW_IN = 0.14, 3.95, 8.42, 0.98, 0.62
FILLS = {"solid": "#C9B18A", "water": ROLES["water"], "ice": PAPER}
HATCH = {"solid": "", "water": "//", "ice": "xx"}


@dataclass(frozen=True)
class HeatPart:
    """One ingredient of the balance.

    Parameters
    ----------
    name : str
        Ingredient [-].
    mass_kg : float
        Its mass [kg].
    temp_c : float
        Its temperature before mixing; for ice, with the heat of melting counted in [degC].
    heat_share : float
        Its share of the heat capacity of the whole mix; all shares sum to one [-].
    kind : str
        "solid", "water" or "ice": fill and hatch [-].

    Examples
    --------
    >>> HeatPart("water", 10.0, 5.0, 0.45, "water").heat_share
    0.45
    """

    name: str
    mass_kg: float
    temp_c: float
    heat_share: float
    kind: str = "solid"


@dataclass(frozen=True)
class HeatBalance:
    """What the picture shows.

    Parameters
    ----------
    parts : tuple of HeatPart
        In the order they are drawn from left to right [as its fields].
    mix_temp_c : float
        Temperature of the mix [degC].
    wanted_temp_c : float
        Wanted temperature of the mix [degC].

    Examples
    --------
    >>> HeatBalance((), 16.0, 15.0).mix_temp_c
    16.0
    """

    parts: tuple
    mix_temp_c: float
    wanted_temp_c: float


class HeatAreas(Picture):
    """The balance as areas; built for a number of parts, then moved in place.

    Parameters
    ----------
    result : HeatBalance
        What to show first [as its fields].
    between_c : (float, float)
        Ends of the temperature axis, fixed; a block that goes further is cut off and says so [degC].
    """

    kind = "tall"

    def __init__(self, result, between_c=(0.0, 40.0)):
        self.low_c, self.high_c = between_c
        self._count = len(result.parts)
        super().__init__()
        self.update(result)

    def build(self, axes):
        """Axes, lines and a block with its words for every part."""
        figure = self.figure
        plot_area(axes, WIDTH_IN, HEIGHT_IN, LEFT_IN, RIGHT_IN, BELOW_IN, TOP_IN)
        axes.set(xlim=(0, 1), ylim=(self.low_c, self.high_c), facecolor=LANE)
        axes.set_xticks([0, 0.25, 0.5, 0.75, 1.0], ["0", "25 %", "50 %", "75 %", "100 %"])
        axes.grid(color=PAPER, lw=1.6)
        axes.spines[["left", "bottom"]].set_visible(False)
        axes.tick_params(length=0, labelsize=PLAIN)
        other = second_scale(axes, "y", "C", "F", "")
        other.tick_params(length=0)
        for axis in (axes.xaxis, axes.yaxis, other.yaxis):
            stamp_ticks(axis)
        x_mid = (LEFT_IN + RIGHT_IN) / 2
        place(figure, x_mid, 0.16, "share of the heat the mix holds: width of a block", ha="center")
        place(figure, LIST_IN, HEIGHT_IN - 0.24, "What sets the temperature of the mix", size=TITLE, weight="bold")
        said = "heat given above the line equals heat taken below it"
        place(figure, LIST_IN, HEIGHT_IN - 0.53, said, color=QUIET)
        place(figure, LEFT_IN - 0.1, HEIGHT_IN - TOP_IN + 0.16, "°C", ha="right")
        place(figure, RIGHT_IN + 0.1, HEIGHT_IN - TOP_IN + 0.16, "°F")
        self._parts = [self._part(axes, number) for number in range(self._count)]
        self.mix_line = axes.axhline(0, color=INK, lw=2.6, zorder=5)
        self.wanted_line = axes.axhline(0, color=INK, lw=1.8, ls=(0, (5, 3)), zorder=5)
        self._mix_words = self._line_key(0.48, lw=2.6)
        self._wanted_words = self._line_key(0.22, lw=1.8, ls=(0, (4, 2.4)))

    def _line_key(self, y_in, **look):
        ends = [LIST_IN / WIDTH_IN, (LIST_IN + 0.42) / WIDTH_IN]
        line = Line2D(ends, [y_in / HEIGHT_IN] * 2, color=INK, transform=self.figure.transFigure, **look)
        self.figure.add_artist(line)
        return place(self.figure, LIST_IN + 0.54, y_in, size=NAME)

    def _part(self, axes, number):
        pitch = min(0.56, (HEIGHT_IN - TOP_IN - 0.75) / max(self._count, 1))
        y = HEIGHT_IN - TOP_IN - 0.12 - number * pitch
        block = axes.add_artist(Rectangle((0, 0), 0, 0, ec=INK, lw=1.0, zorder=3))
        figure = self.figure
        swatch = Rectangle(
            ((LIST_IN + 0.18) / WIDTH_IN, (y - 0.1) / HEIGHT_IN), 0.26 / WIDTH_IN, 0.2 / HEIGHT_IN, ec=INK, lw=1.0
        )
        swatch.set_transform(figure.transFigure)
        figure.add_artist(swatch)
        return {
            "block": block,
            "swatch": swatch,
            "number": place(figure, 0, 0, str(number + 1), size=NAME, weight="bold", ha="center", zorder=6),
            "key": place(figure, LIST_IN, y, str(number + 1), size=NAME, weight="bold"),
            "name": place(figure, LIST_IN + 0.56, y, size=NAME, weight="bold"),
            "share": place(figure, LEFT_IN - 0.45, y, ha="right", size=NAME),
            "words": place(figure, LIST_IN + 0.56, y - 0.2, color=QUIET),
        }

    def _y_in(self, temp_c):
        tall = HEIGHT_IN - TOP_IN - BELOW_IN
        return BELOW_IN + tall * (temp_c - self.low_c) / (self.high_c - self.low_c)

    def update(self, result, system="both"):
        """Move blocks and lines.

        Parameters
        ----------
        result : HeatBalance
            As many parts as the picture was built for [as its fields].
        system : str
            "us", "si" or "both" [-].

        Raises
        ------
        ValueError
            When the number of parts is not the one the picture was built for.
        """
        if len(result.parts) != self._count:
            raise ValueError(f"parts: {len(result.parts)} given; this picture was built for {self._count}")
        at, mix = 0.0, result.mix_temp_c
        for number, (shapes, part) in enumerate(zip(self._parts, result.parts, strict=True)):
            end = min(max(part.temp_c, self.low_c), self.high_c)
            look = {"facecolor": FILLS[part.kind], "hatch": HATCH[part.kind]}
            shapes["block"].set(x=at, width=part.heat_share, y=min(mix, end), height=abs(end - mix), **look)
            shapes["swatch"].set(**look)
            wide_in = part.heat_share * (RIGHT_IN - LEFT_IN)
            x_in = LEFT_IN + (at + part.heat_share / 2) * (RIGHT_IN - LEFT_IN)
            up, cut = end >= mix, end != part.temp_c
            sign = f"{number + 1}{('↑' if up else '↓') if cut else ''}"
            shapes["number"].set(
                x=min(x_in, RIGHT_IN - width_in(sign, NAME, "bold") / 2) / WIDTH_IN,  # clear of the other scale
                y=self._number_y_in(mix, end, cut, result.wanted_temp_c) / HEIGHT_IN,
                text=sign,
                visible=wide_in > width_in(sign[0], NAME),
            )
            share = f"{plain_number(100 * part.heat_share, 2)} %"
            room_in = LEFT_IN - LIST_IN - 1.11 - width_in(share, NAME)
            shapes["name"].set_text(shorten(part.name, room_in, NAME, "bold"))
            shapes["share"].set_text(share)
            shapes["words"].set_text(_weight_and_temp(part, system))
            at += part.heat_share
        self._lines(mix, result.wanted_temp_c, system)
        self.alt = heat_areas_alt(result, system)

    def _number_y_in(self, mix_c, end_c, cut, wanted_c):
        """Beyond the end of its block; on the other side of the mix line, with an arrow, when it leaves the picture."""
        mix, end = (self._y_in(min(max(temp_c, self.low_c), self.high_c)) for temp_c in (mix_c, end_c))
        away = 0.14 if (end_c >= mix_c) != cut else -0.14
        low, high = BELOW_IN + 0.1, HEIGHT_IN - TOP_IN + 0.1
        y_in = (mix if cut else end) + away
        if not low <= y_in <= high:  # no room beyond it: inside a tall block, or across the line
            y_in = end - away if abs(end - mix) > 0.3 else mix - away
        wanted = self._y_in(wanted_c)
        if abs(y_in - wanted) < 0.11:  # never struck out by the line of what is wanted
            y_in = wanted + away
        return min(max(y_in, low), high)

    def _lines(self, mix_c, wanted_c, system):
        self.mix_line.set_ydata([mix_c, mix_c])
        self.wanted_line.set_ydata([wanted_c, wanted_c])
        self._mix_words.set_text(f"the mix, {show(mix_c, 'temperature', system)}")
        self._wanted_words.set_text(f"wanted, {show(wanted_c, 'temperature', system)}")


def _weight_and_temp(part, system):
    return f"{show(part.mass_kg, 'mass', system)}, {show(part.temp_c, 'temperature', system)}"


def heat_areas_alt(result, system="both"):
    """The balance in words.

    Parameters
    ----------
    result : HeatBalance
        What is shown [as its fields].
    system : str
        "us", "si" or "both" [-].

    Returns
    -------
    str
        Alt text [-].

    Examples
    --------
    >>> heat_areas_alt(HeatBalance((HeatPart("water", 10.0, 5.0, 1.0, "water"),), 5.0, 16.0))[:58]
    'Heat balance of the mix as areas. Water: 22 lb (10 kg), 41'
    """
    said = ["Heat balance of the mix as areas."]
    for part in result.parts:
        gives = "gives heat" if part.temp_c > result.mix_temp_c else "takes heat"
        share = f"{plain_number(100 * part.heat_share, 2)} % of the heat the mix holds"
        said.append(sentence(f"{part.name}: {_weight_and_temp(part, system)}, {share}, {gives}"))
    said.append(
        f"The mix comes to {show(result.mix_temp_c, 'temperature', system)}; "
        f"wanted {show(result.wanted_temp_c, 'temperature', system)}."
    )
    return " ".join(said)
