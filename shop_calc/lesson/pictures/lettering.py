"""Words in a picture: how wide they are, how they are shortened or broken so that they never overlap.

Sizes are in points on a picture nine inches wide, lengths in inches on that picture.
"""

from functools import lru_cache

from matplotlib.backends.backend_agg import RendererAgg
from matplotlib.font_manager import FontProperties

from shop_calc.lesson.pictures.base import INK, LIVE_DPI
from shop_calc.lesson.pictures.stamps import Stamp

TITLE, NAME, PLAIN = 15, 12, 11  # the least size stays readable printed 190 mm wide (9 pt)
LEAST = 11

_RULER = RendererAgg(8, 8, LIVE_DPI)


@lru_cache(maxsize=64)
def _font(size, weight):
    return FontProperties(family="DejaVu Sans", size=size, weight=weight)


@lru_cache(maxsize=8192)
def width_in(text, size=PLAIN, weight="normal"):
    """How wide a line of type is.

    Parameters
    ----------
    text : str
        One line, or several: then the widest counts [-].
    size : float
        Type size [pt].
    weight : str
        "normal" or "bold" [-].

    Returns
    -------
    float
        Width on the picture [in].

    Examples
    --------
    >>> width_in("steel trowel") < width_in("steel trowel, blade flat")
    True
    """
    font = _font(size, weight)
    lines = text.split("\n")
    return max(_RULER.get_text_width_height_descent(line, font, False)[0] for line in lines) / LIVE_DPI


@lru_cache(maxsize=4096)
def shorten(text, room_in, size=PLAIN, weight="normal"):
    """The text, or as much of it as fits with an ellipsis; the alt text keeps the whole.

    Parameters
    ----------
    text : str
        One line [-].
    room_in : float
        Room for it [in].
    size : float
        Type size [pt].
    weight : str
        "normal" or "bold" [-].

    Returns
    -------
    str
        What fits; empty when not even three letters do [-].

    Examples
    --------
    >>> shorten("steel trowel, blade a little raised", 1.6)
    'steel trowel, blade…'
    """
    if width_in(text, size, weight) <= room_in:
        return text
    low, high = 0, len(text)
    while low < high:
        middle = (low + high + 1) // 2
        if width_in(text[:middle].rstrip() + "…", size, weight) <= room_in:
            low = middle
        else:
            high = middle - 1
    return text[:low].rstrip(" ,;·") + "…" if low >= 3 else ""


@lru_cache(maxsize=4096)
def wrap(text, room_in, lines=2, size=PLAIN, weight="normal"):
    """The text broken at spaces into at most so many lines; the last one is shortened if it must be.

    Parameters
    ----------
    text : str
        What to say [-].
    room_in : float
        Room across [in].
    lines : int
        Most lines [-].
    size : float
        Type size [pt].
    weight : str
        "normal" or "bold" [-].

    Returns
    -------
    str
        Lines separated by line breaks [-].

    Examples
    --------
    >>> wrap("Look every half hour, float again", 2.0)
    'Look every half hour, float\\nagain'
    """
    words, rows, row = text.split(), [], ""
    while words:
        longer = f"{row} {words[0]}".strip()
        if not row or width_in(longer, size, weight) <= room_in:
            row = longer
            words.pop(0)
        elif len(rows) == lines - 1:
            break
        else:
            rows.append(row)
            row = ""
    rows.append(" ".join([row, *words]))
    return "\n".join(shorten(line, room_in, size, weight) for line in rows)


def place(figure, x_in, y_in, text="", *, size=PLAIN, weight="normal", color=INK, ha="left", va="center", **more):
    """One piece of type at a place counted in inches from the lower left corner of the picture.

    Parameters
    ----------
    figure : Figure
        The picture [-].
    x_in, y_in : float
        Where [in].
    text : str
        What it says; never read as a formula, so a "$" stays a "$" [-].
    size : float
        Type size [pt].
    weight, color, ha, va : str
        As in matplotlib [-].
    more : dict
        Further looks, as in matplotlib [-].

    Returns
    -------
    Text
        The artist [-].

    Examples
    --------
    >>> from shop_calc.lesson.pictures.base import new_figure
    >>> x, y = place(new_figure()[0], 4.5, 2.25, "5 $").get_position()
    >>> float(x), float(y)
    (0.5, 0.5)
    """
    width, height = figure.get_size_inches()
    look = {"size": size, "weight": weight, "color": color, "ha": ha, "va": va, "transform": figure.transFigure}
    return figure.add_artist(Stamp(x_in / width, y_in / height, text, **{**look, **more}))


def listing(parts):
    """Words in a row with "and" before the last.

    >>> listing(["08:00", "08:20", "08:40"])
    '08:00, 08:20 and 08:40'
    """
    parts = [str(part) for part in parts]
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} and {parts[-1]}" if parts else "none"


def sentence(text):
    """The text with a capital and a full stop.

    >>> sentence("look from 10:05")
    'Look from 10:05.'
    """
    text = text.strip()
    return text[:1].upper() + text[1:] + ("" if text.endswith((".", "!", "?")) else ".")
