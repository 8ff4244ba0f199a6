"""The first night: every way to cover the piece side by side, water lost as a bar, the rest in words."""

from matplotlib.patches import Rectangle

from shop_calc.lesson.pictures.base import INK, PAPER, QUIET, ROLES, Picture
from shop_calc.lesson.pictures.lettering import NAME, TITLE, listing, place, sentence, wrap
from shop_calc.lesson.pictures.scales import LANE
from shop_calc.units import plain_number, show

WIDTH_IN, EDGE_IN = 9.0, 0.14
NAME_IN, BAR_IN, BAR_END_IN, HEAD_IN, WORDS_IN = 0.28, 2.06, 4.56, 4.84, 5.50
TOP_IN, BELOW_IN, LINE_IN, PART_IN, GAP_IN = 0.80, 0.12, 0.185, 0.03, 0.18
LOST_IN = 0.2  # height of a bar


class CoverChoices(Picture):
    """The choices as a table with bars; built for a number of choices, then moved in place.

    Parameters
    ----------
    result : object
        choices (each with key, title, water_lost_kg_m2, bound_kg_m2, lost_share, surface, work, sealing,
        morning_age_h) and pick, the keys or the key of what fits this night [kg/m2, -, h].
    most_kg_m2 : float, optional
        End of the scale of water lost [kg/m2].
    title : str
        One line over the picture [-].
    """

    kind = "tall"

    def __init__(self, result, most_kg_m2=None, title="How to cover it tonight"):
        self.title, self._first = title, result
        self.most = most_kg_m2 or max([choice.bound_kg_m2 for choice in result.choices] + [0.05])
        super().__init__()
        self.update(result)

    def build(self, axes):
        """A row a choice, as tall as its words."""
        figure, choices = self.figure, self._first.choices
        words = [_words(choice) for choice in choices]
        tall = [max(_lines(row) * LINE_IN + 2 * PART_IN, LOST_IN + 0.6) + GAP_IN for row in words]
        body = sum(tall)
        height = TOP_IN + body + BELOW_IN
        figure.set_size_inches(WIDTH_IN, height)
        wide = BAR_END_IN - BAR_IN
        axes.set_position([BAR_IN / WIDTH_IN, BELOW_IN / height, wide / WIDTH_IN, body / height])
        axes.set(xlim=(0, self.most), ylim=(0, body), yticks=[])
        axes.grid(False)
        axes.set_facecolor("none")
        axes.spines[["left", "bottom"]].set_visible(False)
        axes.set_xticks([])  # each bar says its number
        place(figure, EDGE_IN, height - 0.24, self.title, size=TITLE, weight="bold")
        place(figure, BAR_IN, height - TOP_IN + 0.16, "water lost by morning; hatched: at most", color=QUIET)
        self.rows, top = [], body
        for number, high in enumerate(tall):
            self.rows.append(self._row(axes, top, high, number))
            top -= high

    def _row(self, axes, top, high, number):
        figure, height = self.figure, self.figure.get_size_inches()[1]
        lift = BELOW_IN + top - 0.5 * GAP_IN  # upper edge of the words, on the picture
        ground = Rectangle((0, (BELOW_IN + top - high) / height), 1, high / height, fc=LANE, ec="none", zorder=-2)
        figure.add_artist(ground.set_transform(figure.transFigure) or ground)
        ribbon = Rectangle(
            (0, (BELOW_IN + top - high) / height), 0.12 / WIDTH_IN, high / height, fc=INK, ec="none", zorder=-1
        )
        figure.add_artist(ribbon.set_transform(figure.transFigure) or ribbon)
        if number:
            line = Rectangle(
                (EDGE_IN / WIDTH_IN, (BELOW_IN + top) / height), 1, 0.01 / height, fc="#D5D9DE", ec="none"
            )
            figure.add_artist(line.set_transform(figure.transFigure) or line)
        low = top - 0.5 * GAP_IN - LOST_IN
        lane = axes.add_artist(Rectangle((0, low), self.most, LOST_IN, fc=LANE, ec="none", zorder=1))
        look = {"ec": INK, "lw": 1.0, "zorder": 3}
        bound = axes.add_artist(Rectangle((0, low), 0, LOST_IN, fc=PAPER, hatch="////", **look))
        bar = axes.add_artist(Rectangle((0, low), 0, LOST_IN, fc=ROLES["water"], **look))
        write = lambda x, down, **look: place(figure, x, lift - down, va="top", **look)  # noqa: E731
        return {
            "ground": ground,
            "ribbon": ribbon,
            "lane": lane,
            "bound": bound,
            "bar": bar,
            "name": write(NAME_IN, 0.0, size=NAME, weight="bold"),
            "lost": write(BAR_IN, LOST_IN + 0.05),
            "heads": [write(HEAD_IN, 0.0, text=head, color=QUIET) for head in ("surface", "work", "sealer")],
            "words": [write(WORDS_IN, 0.0) for _ in range(3)],
            "lift": lift,
        }

    def update(self, result, system="both"):
        """Move bars and words.

        Parameters
        ----------
        result : object
            With as many choices as the picture was built for [as its fields].
        system : str
            "us", "si" or "both" [-].

        Raises
        ------
        ValueError
            When the number of choices is not the one the picture was built for.
        """
        if len(result.choices) != len(self.rows):
            raise ValueError(f"choices: {len(result.choices)} given; this picture was built for {len(self.rows)}")
        height = self.figure.get_size_inches()[1]
        for row, choice in zip(self.rows, result.choices, strict=True):
            picked = choice.key in _picked(result)
            for artist in ("ground", "ribbon"):
                row[artist].set_visible(picked)
            row["lane"].set_facecolor(PAPER if picked else LANE)
            row["bar"].set_width(min(choice.water_lost_kg_m2, self.most))
            row["bound"].set_width(min(choice.bound_kg_m2, self.most))
            name = wrap(choice.title, BAR_IN - NAME_IN - 0.1, 3, NAME, "bold")
            row["name"].set_text(name + ("\n→ fits this night" if picked else ""))
            row["lost"].set_text(_lost(choice, system).replace("; ", "\n"))
            y = row["lift"]
            for head, words, text in zip(row["heads"], row["words"], _words(choice), strict=True):
                for artist in (head, words):
                    artist.set_y(y / height)
                words.set_text(text)
                y -= _lines([text]) * LINE_IN + PART_IN
        self.alt = cover_choices_alt(result, system)


def _picked(result):
    return (result.pick,) if isinstance(result.pick, str) else tuple(result.pick)


def _words(choice):
    room = WIDTH_IN - WORDS_IN - EDGE_IN
    return [wrap(text, room, lines) for text, lines in ((choice.surface, 4), (choice.work, 2), (choice.sealing, 2))]


def _lines(texts):
    return sum(text.count("\n") + 1 for text in texts)


def _lost(choice, system):
    lost, bound = (show(mass, "areal_mass", system, digits=2) for mass in (choice.water_lost_kg_m2, choice.bound_kg_m2))
    share = f"{plain_number(100 * choice.lost_share, 2)} % of its water"
    return f"{lost}; at most {bound}; {share}, aged {plain_number(choice.morning_age_h, 2)} h"


def cover_choices_alt(result, system="both"):
    """The choices in words.

    Parameters
    ----------
    result : object
        As for `CoverChoices` [as its fields].
    system : str
        "us", "si" or "both" [-].

    Returns
    -------
    str
        Alt text [-].
    """
    titles = {choice.key: choice.title for choice in result.choices}
    said = [
        f"Ways to cover the piece for the first night. What fits: {listing(titles[key] for key in _picked(result))}."
    ]
    for choice in result.choices:
        lost = _lost(choice, system).replace("; ", ", ")
        said.append(sentence(f"{choice.title}: loses {lost}"))
        said.append(f"Surface: {choice.surface}. Work: {choice.work}. Sealer: {choice.sealing}.")
    return " ".join(said)
