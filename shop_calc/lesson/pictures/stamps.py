"""Type that is drawn once and then stamped.

Most of the time of a redraw goes into letters, and most letters are the same as in the drawing before.
A `Stamp` keeps each rendered text as a small image and puts that down instead of setting it anew.
"""

from collections import OrderedDict
from functools import lru_cache

import numpy as np
from matplotlib.backends.backend_agg import RendererAgg, get_hinting_flag
from matplotlib.colors import to_rgba
from matplotlib.font_manager import FontProperties, findfont, get_font
from matplotlib.text import Text

_KEPT, _MOST = OrderedDict(), 3000
_RIM = 1  # px that a drawn line has free above its highest letter
LINE = "normal"  # every line as tall as the type itself: words side by side share a baseline, whatever letters they have


@lru_cache(maxsize=256)
def _type(family, size, weight, style, dpi):
    """The file of a type, and how far a line of it reaches above and below its baseline [px]."""
    path = findfont(FontProperties(family=list(family), weight=weight, style=style))
    font = get_font(path)
    measures, em_px = font.get_sfnt_table("OS/2"), size * dpi / 72.0 / font.units_per_EM
    return path, measures["sTypoAscender"] * em_px, -measures["sTypoDescender"] * em_px


class Stamp(Text):
    """A Text for level type without a frame; looks the same, redraws some twenty times as fast.

    Not for formulas, turned type or outlines: those fall back to the ordinary way.

    >>> from shop_calc.lesson.pictures.base import new_figure
    >>> figure, axes = new_figure()
    >>> artist = figure.add_artist(Stamp(0.5, 0.5, "steel", size=11, transform=figure.transFigure))
    >>> figure.canvas.draw()
    >>> artist.get_text()
    'steel'
    """

    def __init__(self, x=0, y=0, text="", **look):
        super().__init__(x, y, text, **{"linespacing": LINE, "parse_math": False, **look})

    def draw(self, renderer):
        """Put the kept image down, or make it first."""
        if not self.get_visible() or not self.get_text():
            return
        plain = isinstance(renderer, RendererAgg) and not (
            "\n" in self.get_text() or self.get_rotation() or self.get_path_effects() or self.get_bbox_patch()
        )
        if not plain:
            super().draw(renderer)
            return
        key = (
            self.get_text(), tuple(self.get_fontfamily()), self.get_fontsize(), self.get_fontweight(), self.get_fontstyle(),
            to_rgba(self.get_color(), self.get_alpha()), self.get_ha(), self.get_va(), renderer.dpi,
            get_hinting_flag(),
        )  # fmt: skip
        x, y = self.get_transform().transform(self.get_unitless_position())
        if key in _KEPT:
            _KEPT.move_to_end(key)
        else:
            _KEPT[key] = _set(*key)
            if len(_KEPT) > _MOST:
                _KEPT.popitem(last=False)
        image, (to_start, to_baseline), (left, low) = _KEPT[key]
        if image is None:
            return
        gc = renderer.new_gc()
        if self.get_clip_on():
            self._set_gc_clip(gc)
        renderer.draw_image(gc, round(x + to_start) + left, round(y + to_baseline) + low, image)
        gc.restore()
        self.stale = False


def _set(text, family, size, weight, style, color, ha, va, dpi, hinting):
    """The text alone on clear ground; where its baseline starts from the anchor; its lower left corner from there [px].

    Set as one picture of the whole line, five times as fast as letter by letter on the picture itself.
    """
    path, above, below = _type(family, size, weight, style, dpi)
    font = get_font(path)
    font.set_size(size, dpi)
    font.set_text(text, 0.0, flags=hinting)
    font.draw_glyphs_to_bitmap(antialiased=True)
    ink = np.asarray(font.get_image())
    if not ink.any():
        return None, (0, 0), (0, 0)
    image = np.empty((*ink.shape, 4), dtype=np.uint8)
    image[..., :3] = np.round(np.multiply(color[:3], 255))
    image[..., 3] = np.round(ink * color[3])
    (width, height), tall = font.get_width_height(), above + below
    wide, highest = width / 64.0, (height - font.get_descent()) // 64  # FreeType counts in 64ths of a pixel
    left, low = font.get_bitmap_offset()[0] // 64, highest + _RIM - len(image)
    from_left = {"left": 0.0, "center": wide / 2, "right": wide}[ha]
    up = {"top": -above, "bottom": below, "baseline": 0.0}.get(va, below - tall / 2)  # the baseline from the anchor
    return image[::-1], (-from_left, up), (left, low)
