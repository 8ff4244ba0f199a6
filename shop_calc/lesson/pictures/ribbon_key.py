"""What the shapes of the ribbon mean, on one line under its clock."""

from matplotlib.lines import Line2D
from matplotlib.patches import Rectangle

from shop_calc.lesson.pictures.base import HATCHES, INK, PAPER, QUIET, ROLES
from shop_calc.lesson.pictures.lettering import place, width_in

DARK_LANE = "#C3C9D1"
TINTS = {"face": "#F6DDAA", "base": "#A9CDE6"}  # of the bands from the first look to the end
BAR_SHARE, BAND_SHARE = 0.70, 0.26  # of the lane's height
KEY_IN = 0.17  # height of the line on the picture


def _box(figure, x_in, wide_in, tall_in, **look):
    width, height = figure.get_size_inches()
    shape = Rectangle((x_in / width, (KEY_IN - tall_in / 2) / height), wide_in / width, tall_in / height, **look)
    shape.set_transform(figure.transFigure)
    return figure.add_artist(shape)


def _samples(lane_in, dark):
    bar, rim = lane_in * BAR_SHARE * 0.75, {"fc": "none", "ec": INK, "lw": 1.0}
    for layer, words in (("face", ""), ("base", "look from … over by")):  # a band of each, end to end
        yield 0.2, words, [(lane_in * BAND_SHARE, {"fc": TINTS[layer], "ec": QUIET, "lw": 0.8})]
    yield 0.22, "likely: face", [(bar, {"fc": ROLES["face"], "ec": INK, "lw": 1.0})]
    base = {"fc": ROLES["base"], "ec": PAPER, "lw": 0, "hatch": HATCHES["base"]}
    yield 0.22, "likely: base", [(bar, base), (bar, rim)]
    if dark:
        yield 0.22, "dark", [(bar, {"fc": DARK_LANE, "ec": "none"})]


def draw_key(figure, x_in, lane_in, dark):
    """The key of every ribbon.

    Parameters
    ----------
    figure : Figure
        The picture [-].
    x_in : float
        Where the line starts [in].
    lane_in : float
        Height of a lane [in].
    dark : bool
        Whether dark hours are on the clock [-].
    """
    for wide, words, shapes in _samples(lane_in, dark):
        for tall, look in shapes:
            _box(figure, x_in, wide, tall, **look)
        x_in += wide
        if words:
            place(figure, x_in + 0.06, KEY_IN, words, color=QUIET)
            x_in += 0.06 + width_in(words) + 0.2


def draw_second_key(figure, x_in):
    """Signs of a re-planned day; the ribbon shows them only when there is one.

    Parameters
    ----------
    figure : Figure
        The picture [-].
    x_in : float
        Where the line starts [in].

    Returns
    -------
    tuple of two lists
        Artists of the first plan, artists of the looks [-].
    """
    width, height = figure.get_size_inches()
    plan = [
        _box(figure, x_in, 0.2, 0.05, fc=PAPER, ec=INK, lw=0.8),
        place(figure, x_in + 0.26, KEY_IN, "first plan", color=QUIET),
    ]
    looks = []
    for at, words, fill, rim in ((1.22, "not yet", PAPER, INK), (2.05, "cue there", INK, PAPER)):
        look = {"marker": "o", "ms": 8, "mfc": fill, "mec": rim, "mew": 1.5, "ls": "none"}
        dot = Line2D([(at + 0.06) / width], [KEY_IN / height], transform=figure.transFigure, **look)
        looks += [figure.add_artist(dot), place(figure, at + 0.18, KEY_IN, words, color=QUIET)]
    return plan, looks
