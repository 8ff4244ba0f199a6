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
    """The file of a type, how far a line of it reaches above and below its baseline, and the gap between lines [px]."""
    path = findfont(FontProperties(family=list(family), weight=weight, style=style))
    font = get_font(path)
    em_px = size * dpi / 72.0 / font.units_per_EM
    measures = font.get_sfnt_table("OS/2")
    return path, *(em_px * measures[f"sTypo{part}"] for part in ("Ascender", "Descender", "LineGap"))


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
            self.get_rotation() or self.get_path_effects() or self.get_bbox_patch()
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
    """The text alone on clear ground; where its first baseline starts from the anchor; its lower left corner from there [px].

    A line is set as one picture, five times as fast as letter by letter on the picture itself.
    """
    path, above, below, gap = _type(family, size, weight, style, dpi)
    lines = text.split("\n")
    pitch = above - below + (gap if len(lines) > 1 else 0.0)
    set_lines = [_set_line(line, path, size, dpi, hinting) for line in lines]
    whole = max(width for *_, width in set_lines)
    spare = {"left": 0.0, "center": 0.5, "right": 1.0}[ha]
    boxes = [  # of each line: ink, and its left and lower side from the start of the first baseline
        (ink, left + round(spare * (whole - width)), low - round(number * pitch))
        for number, (ink, left, low, width) in enumerate(set_lines)
        if ink.size
    ]
    if not boxes:
        return None, (0, 0), (0, 0)
    left, low = min(box[1] for box in boxes), min(box[2] for box in boxes)
    right, top = (max(box[1 + side] + box[0].shape[1 - side] for box in boxes) for side in (0, 1))
    ground = np.zeros((top - low, right - left))
    for ink, at_x, at_y in boxes:
        part = ground[at_y - low : at_y - low + len(ink), at_x - left : at_x - left + ink.shape[1]]
        np.maximum(part, ink[::-1], out=part)
    image = np.empty((*ground.shape, 4), dtype=np.uint8)
    image[..., :3] = np.round(np.multiply(color[:3], 255))
    image[..., 3] = np.round(ground * color[3])
    first, last = above + (pitch - above + below) / 2, (len(lines) - 1) * pitch  # down to the first baseline; to the last
    up = {"top": -first, "bottom": len(lines) * pitch - first, "baseline": last}.get(va, len(lines) * pitch / 2 - first)
    return image, (-spare * whole, up), (left, low)


def _set_line(text, path, size, dpi, hinting):
    """The ink of one line, its left and lower side from the start of its baseline, and its width [px]."""
    font = get_font(path)
    font.set_size(size, dpi)
    font.set_text(text, 0.0, flags=hinting)
    font.draw_glyphs_to_bitmap(antialiased=True)
    ink = np.asarray(font.get_image())
    width, height = font.get_width_height()  # FreeType counts in 64ths of a pixel
    highest = (height - font.get_descent()) // 64
    return ink, font.get_bitmap_offset()[0] // 64, highest + _RIM - len(ink), width / 64.0
