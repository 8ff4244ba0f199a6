"""Type that is stamped stands where matplotlib's own text stands, looks like it, and is kept."""

import itertools
from functools import cache

import matplotlib
import numpy as np
import pytest
from matplotlib.backends.backend_agg import RendererAgg
from matplotlib.figure import Figure
from matplotlib.text import Text

from shop_calc.lesson.pictures import stamps
from shop_calc.lesson.pictures.base import LIVE_DPI, STILL_DPI, new_figure, png_bytes, show_still
from shop_calc.lesson.pictures.stamps import LINE, Stamp

LOOK = {"family": "DejaVu Sans", "size": 12, "ha": "left", "va": "baseline"}
WORDS = ["plq", "15½ in, Qgj steel", "Steel trowel,\nblade g", "a\n\nlonger line"]


@cache
def sheet_of(dpi, hinting):
    """A sheet of its own for each way of hinting: matplotlib keeps the widths of words by sheet."""
    return Figure(dpi=dpi), RendererAgg(640, 160, dpi)


def drawn(artist, dpi=LIVE_DPI):
    """One artist alone on a clear sheet: red, green, blue and ink, 0 to 255."""
    figure, sheet = sheet_of(dpi, matplotlib.rcParams["text.hinting"])
    artist.set_figure(figure)
    sheet.clear()
    artist.draw(sheet)
    return np.asarray(sheet.buffer_rgba()).astype(int)


def both(words, at=(310.0, 80.0), dpi=LIVE_DPI, **look):
    look = LOOK | look
    plain = Text(*at, words, linespacing=LINE, parse_math=False, **look)
    return drawn(plain, dpi), drawn(Stamp(*at, words, **look), dpi)


def ink_of(words, **more):
    return [sheet[:, :, 3] for sheet in both(words, **more)]


def middle(ink):
    """Where the middle of the ink lies, across and down [px]."""
    whole = ink.sum()
    return np.array([np.arange(size) @ ink.sum(axis=axis) for axis, size in ((0, ink.shape[1]), (1, ink.shape[0]))]) / whole


@pytest.mark.parametrize("hinting", ["default", "no_hinting"])
@pytest.mark.parametrize("va", ["top", "center", "baseline", "bottom"])
@pytest.mark.parametrize("ha", ["left", "center", "right"])
def test_a_stamp_stands_where_text_stands_to_a_pixel(ha, va, hinting):
    with matplotlib.rc_context({"text.hinting": hinting}):
        for words, (dpi, weight) in itertools.product(WORDS, ((LIVE_DPI, "normal"), (STILL_DPI, "bold"))):
            text, stamp = ink_of(words, dpi=dpi, ha=ha, va=va, weight=weight)
            assert stamp.sum() == pytest.approx(text.sum(), rel=0.03), (words, dpi, weight)
            across, down = np.abs(middle(text) - middle(stamp))
            assert across < 1.5 and down < 1.0, (words, dpi, weight)  # letters lie on whole pixels in a stamp


def test_words_of_one_height_share_a_baseline():
    """The lowest row with ink of words without a tail, whatever their letters."""
    for va, hinting in itertools.product(("top", "center", "baseline", "bottom"), ("default", "no_hinting")):
        with matplotlib.rc_context({"text.hinting": hinting}):
            solid = [drawn(Stamp(310.0, 80.0, words, **LOOK | {"va": va}))[:, :, 3] > 127 for words in ("HI", "x", "Hxl")]
        assert len({np.flatnonzero(ink.any(axis=1))[-1] for ink in solid}) == 1, (va, hinting)


def test_colour_and_paleness_are_those_asked_for():
    for color, alpha in (("#0072B2", None), ("#D55E00", 0.5), ((0.2, 0.4, 0.6, 0.25), None)):
        text, stamp = both("steel", color=color, alpha=alpha)
        darkest = [sheet[np.unravel_index(np.argmax(sheet[:, :, 3]), sheet.shape[:2])] for sheet in (text, stamp)]
        assert darkest[0] == pytest.approx(darkest[1], abs=2)


def test_a_dollar_stays_a_dollar_and_a_blank_leaves_nothing():
    text, stamp = ink_of("5 $ or 6 $")
    assert np.abs(text - stamp).sum() < 0.2 * text.sum()
    for words in ("", " ", "\n", " \n "):
        assert not ink_of(words)[1].any()


def test_turned_type_goes_the_ordinary_way():
    text, stamp = ink_of("turned", rotation=30)
    assert text.any() and (text == stamp).all()


def test_the_second_drawing_puts_the_kept_image_down(monkeypatch):
    stamps._KEPT.clear()
    first = drawn(Stamp(310.0, 80.0, "kept once", **LOOK))
    monkeypatch.setattr(stamps, "_set", None)  # whoever sets it anew fails
    assert (drawn(Stamp(310.0, 80.0, "kept once", **LOOK)) == first).all()
    with pytest.raises(TypeError):
        drawn(Stamp(310.0, 80.0, "kept once", **LOOK | {"size": 13}))


def test_no_more_are_kept_than_there_is_room_for(monkeypatch):
    stamps._KEPT.clear()
    monkeypatch.setattr(stamps, "_MOST", 3)
    for number in range(6):
        drawn(Stamp(310.0, 80.0, f"number {number}", **LOOK))
    assert [key[0] for key in stamps._KEPT] == ["number 3", "number 4", "number 5"]


def test_a_learners_own_setting_of_hinting_comes_back():
    before = matplotlib.rcParams["text.hinting"]
    figure, _ = new_figure()
    show_still(figure, "Nothing.", "Nothing yet.")
    assert matplotlib.rcParams["text.hinting"] == before
    assert png_bytes(figure)[1:4] == b"PNG"
