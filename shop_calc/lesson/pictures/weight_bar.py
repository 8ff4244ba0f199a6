"""The weight of a piece as a bar, with the line that one person should not lift beyond."""

from matplotlib.patches import Rectangle

from shop_calc.lesson.pictures.base import INK, PAPER, QUIET, ROLES, Picture
from shop_calc.lesson.pictures.lettering import NAME, TITLE, place, width_in
from shop_calc.lesson.pictures.scales import LANE, nice_step, two_units
from shop_calc.units import show

WIDTH_IN, HEIGHT_IN = 9.0, 2.3
LEFT_IN, RIGHT_IN, LOW_IN, HIGH_IN = 0.4, 8.5, 0.66, 1.26


class WeightBar(Picture):
    """A bar on a scale in pounds and kilograms; the scale is fixed for the life of the picture.

    Parameters
    ----------
    most_kg : float
        End of the scale [kg].
    limit_kg : float
        What one person should lift at most [kg].
    title : str
        One line over the picture [-].
    """

    kind = "wide"

    def __init__(self, most_kg, limit_kg, title):
        self.most_kg, self.limit_kg, self.title = most_kg, limit_kg, title
        super().__init__()

    def build(self, axes):
        """Scale, bar, line."""
        figure = self.figure
        figure.set_size_inches(WIDTH_IN, HEIGHT_IN)
        axes.set_position([
            LEFT_IN / WIDTH_IN, LOW_IN / HEIGHT_IN, (RIGHT_IN - LEFT_IN) / WIDTH_IN, (HIGH_IN - LOW_IN) / HEIGHT_IN,
        ])  # fmt: skip
        axes.set(xlim=(0, self.most_kg), ylim=(0, 1), yticks=[])
        axes.grid(False)
        axes.spines[["left", "bottom"]].set_visible(False)
        step = nice_step(self.most_kg, 10)
        marks = [k * step for k in range(int(self.most_kg / step + 1e-9) + 1)]
        two_units(axes, "x", marks, "kg", "lb")
        axes.add_artist(Rectangle((0, 0), self.most_kg, 1, fc=LANE, ec="none", zorder=1))
        self.bar = axes.add_artist(Rectangle((0, 0.14), 0, 0.72, fc=ROLES["base"], ec=INK, lw=1.0, zorder=3))
        for colour, wide in ((PAPER, 6.0), (INK, 2.2)):  # a light border, so that the line shows on the bar too
            axes.plot([self.limit_kg] * 2, [-0.06, 1.12], color=colour, lw=wide, zorder=5, clip_on=False)
        place(figure, 0.14, HEIGHT_IN - 0.24, self.title, size=TITLE, weight="bold")
        at_in = LEFT_IN + self.limit_kg / self.most_kg * (RIGHT_IN - LEFT_IN)
        self._limit = place(figure, at_in + 0.08, HIGH_IN + 0.16, "", color=QUIET)
        self._says = place(figure, 0, (LOW_IN + HIGH_IN) / 2, "", size=NAME, weight="bold")

    def update(self, result, system="both"):
        """Move the bar to `result.mass_kg`; its number stands behind the end, or before it at the edge."""
        mass_kg = result.mass_kg
        self.bar.set_width(min(mass_kg, self.most_kg))
        limit = f"one person, in the best of lifts: {show(self.limit_kg, 'mass', system)}"
        self._limit.set_text(limit)
        says = show(mass_kg, "mass", system)
        end_in = LEFT_IN + min(mass_kg / self.most_kg, 1.0) * (RIGHT_IN - LEFT_IN)
        wide, line_in = width_in(says, NAME, "bold"), LEFT_IN + self.limit_kg / self.most_kg * (RIGHT_IN - LEFT_IN)
        behind = end_in + 0.12 + wide < RIGHT_IN
        start_in = end_in + 0.1
        if start_in - 0.06 < line_in < start_in + wide + 0.06:  # the line must not strike the number out
            start_in = line_in + 0.1
        self._says.set(
            x=(start_in if behind else end_in - 0.12) / WIDTH_IN, text=says, ha="left" if behind else "right",
            color=INK if behind else "#FFFFFF",
        )  # fmt: skip
        more = "more" if mass_kg > self.limit_kg else "less"
        self.alt = (
            f"A bar of {says} on a scale of weight; it is {more} than what one person may lift in the best of lifts, "
            f"{show(self.limit_kg, 'mass', system)}."
        )
