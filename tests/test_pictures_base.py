"""What every picture stands on: sizes that never move, colours told apart in grey, words for who cannot see."""

import struct

import numpy as np
import pytest

from shop_calc.lesson.pictures import base
from shop_calc.lesson.pictures.base import KINDS, LIVE_DPI, PALETTE, ROLES, Picture, new_figure, png_bytes
from shop_calc.lesson.pictures.lettering import place


def luminance(colour):
    """Relative luminance of WCAG 2.1."""
    parts = [int(colour[k : k + 2], 16) / 255 for k in (1, 3, 5)]
    red, green, blue = [c / 12.92 if c <= 0.03928 else ((c + 0.055) / 1.055) ** 2.4 for c in parts]
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(first, second):
    high, low = sorted((luminance(first), luminance(second)), reverse=True)
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_has_its_fixed_size_in_pixels(kind):
    width, height, _ = KINDS[kind]
    figure, _ = new_figure(kind)
    figure.text(0.5, 1.2, "a piece of type far outside")  # must not change the size
    assert struct.unpack(">II", png_bytes(figure)[16:24]) == (width * LIVE_DPI, round(height * LIVE_DPI))
    assert figure.get_layout_engine() is None


def test_no_picture_kind_but_the_known_ones():
    with pytest.raises(ValueError, match="ribbon"):
        new_figure("poster")


def test_type_and_second_labels_read_on_paper():
    assert contrast(base.INK, base.PAPER) > 12 and contrast(base.QUIET, base.PAPER) > 4.5


def test_face_and_base_differ_in_a_one_colour_print():
    assert contrast(ROLES["face"], ROLES["base"]) > 2
    assert base.HATCHES["face"] != base.HATCHES["base"]
    assert len({base.HATCHES[name] for name in ("good", "watch", "stop")}) == 3


def test_a_line_drawn_without_colour_takes_the_palette():
    _, axes = new_figure()
    colours = [axes.plot([0, 1])[0].get_color() for _ in PALETTE]
    assert colours == list(PALETTE)


def test_the_house_style_stays_in_the_house():
    import matplotlib

    before = dict(matplotlib.rcParams)
    new_figure()
    assert dict(matplotlib.rcParams) == before


def test_alt_text_and_caption_are_escaped_and_stand_in_the_plain_text():
    still = base.show_still(new_figure("ribbon")[0], 'A "line" <b>up</b>.', "See <i>it</i> rise.")
    bundle = still._repr_mimebundle_()
    page = bundle["text/html"]
    assert 'alt="A &quot;line&quot; &lt;b&gt;up&lt;/b&gt;."' in page and "<b>" not in page and "<i>" not in page
    assert page.startswith("<figure") and "<figcaption" in page and 'src="data:image/png;base64,' in page
    assert bundle["text/plain"] == 'Picture: A "line" <b>up</b>.\nSee <i>it</i> rise.'


@pytest.mark.parametrize(("alt", "caption"), [("", "x"), ("x", " ")])
def test_a_still_without_words_is_refused(alt, caption):
    with pytest.raises(ValueError, match="alt text and a caption"):
        base.show_still(new_figure()[0], alt, caption)


def test_a_picture_keeps_its_artists_when_updated():
    class Line(Picture):
        def build(self, axes):
            axes.set(xlim=(0, 1), ylim=(0, 10))
            (self.line,) = axes.plot([0, 1], [0, 0])

        def update(self, result, system="both"):
            self.line.set_ydata([0, result])
            self.alt = f"Up to {result}."

    picture = Line()
    picture.update(3)
    first, artists = picture.png(), list(picture.axes.get_children())
    picture.update(7)
    assert picture.png() != first and list(picture.axes.get_children()) == artists
    assert picture.axes.get_ylim() == (0, 10) and picture.still("Rises.").alt == "Up to 7."


def foot(words, va):
    """The lowest inked row of a text that stands alone on a picture."""
    figure, axes = new_figure("ribbon")
    axes.set_axis_off()
    place(figure, 4.0, 1.6, words, va=va)
    figure.canvas.draw()
    return int(np.flatnonzero((np.asarray(figure.canvas.buffer_rgba())[:, :, 0] < 128).any(axis=1))[-1])


@pytest.mark.parametrize("va", ["center", "top", "bottom"])
def test_words_side_by_side_share_a_baseline_whatever_letters_they_have(va):
    assert len({foot(words, va) for words in ("nox", "thick", "11 h")}) == 1
    assert len({foot(words, va) for words in ("11:00\n11 am", "12:00\nnoon", "typ\nnoon")}) == 1
