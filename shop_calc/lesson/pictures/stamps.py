"""Type that is drawn once and then stamped.

Most of the time of a redraw goes into letters, and most letters are the same as in the drawing before.
A `Stamp` keeps each rendered text as a small image and puts that down instead of setting it anew.
"""

from collections import OrderedDict
from functools import lru_cache

import numpy as np
from matplotlib.backends.backend_agg import RendererAgg
from matplotlib.text import Text

_KEPT, _MOST = OrderedDict(), 3000
LINE = "normal"  # every line as tall as the type itself: words side by side share a baseline, whatever letters they have
_PAD = 4  # px, for letters that lean out over the anchor


@lru_cache(maxsize=4)
def _ground(dpi):
    """A clear sheet as wide as the widest picture, on which texts are set one at a time."""
    return RendererAgg(int(12 * dpi), int(2 * dpi), dpi)


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
            self.get_text(), self.get_fontsize(), self.get_fontweight(), self.get_fontstyle(), self.get_color(),
            self.get_ha(), self.get_va(), self.get_alpha(),
            renderer.dpi,
        )  # fmt: skip
        x, y = self.get_transform().transform(self.get_unitless_position())
        if key in _KEPT:
            _KEPT.move_to_end(key)
        else:
            _KEPT[key] = self._render(renderer)
            if len(_KEPT) > _MOST:
                _KEPT.popitem(last=False)
        image, left, low = _KEPT[key]
        if image is None:
            return
        gc = renderer.new_gc()
        if self.get_clip_on():
            self._set_gc_clip(gc)
        renderer.draw_image(gc, round(x + left), round(y + low), image)
        gc.restore()
        self.stale = False

    def _render(self, renderer):
        """The text alone on clear ground, and where its corner lies from the anchor."""
        ground = _ground(renderer.dpi)
        ground.clear()
        wide, tall = ground.width, ground.height
        at_x = {"left": _PAD, "center": wide // 2, "right": wide - _PAD}[self.get_ha()]
        down = {"top": _PAD, "baseline": tall // 5, "bottom": tall - _PAD}.get(self.get_va(), tall // 2)
        at_y = tall - down
        self._alone(at_x, at_y).draw(ground)
        pixels = np.asarray(ground.buffer_rgba())
        inked = pixels[:, :, 3] > 0
        columns, rows = np.flatnonzero(inked.any(axis=0)), np.flatnonzero(inked.any(axis=1))
        if not len(columns):
            return None, 0, 0
        left, right, top, low = columns[0], columns[-1] + 1, rows[0], rows[-1] + 1
        return pixels[top:low, left:right][::-1].copy(), left - at_x, (tall - low) - at_y

    def _alone(self, x, y):
        copy = Text(
            x, y, self.get_text(), color=self.get_color(), ha=self.get_ha(), va=self.get_va(),
            fontproperties=self.get_fontproperties(), linespacing=LINE, parse_math=False, alpha=self.get_alpha(),
        )  # fmt: skip
        copy.set_figure(self.get_figure(root=True))
        return copy
