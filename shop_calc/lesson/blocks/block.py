"""The slider block: sliders, what they do in words, and the picture of it."""

import html

import ipywidgets as w

from shop_calc.lesson.blocks.look import ARROW, pages
from shop_calc.lesson.blocks.rows import SliderRow
from shop_calc.lesson.blocks.switch import UnitSwitch
from shop_calc.lesson.page import img_tag, lines_html

_CSS = """<style>
.shop-block{max-width:920px;padding:10px 12px 12px;box-sizing:border-box;overflow:visible;
 border:1px solid var(--jp-border-color2,#d5d9de);border-radius:8px}
.shop-block .widget-html-content{line-height:1.4}
.shop-head{justify-content:space-between;align-items:center;flex-flow:row wrap;overflow:visible}
.shop-head .shop-tools{align-items:center;overflow:visible}
.shop-switch{display:flex;flex-flow:row nowrap;align-items:center;width:auto}
.shop-switch .widget-label{width:auto;margin-right:6px;font-size:12px;color:var(--jp-ui-font-color2,#5f6670)}
.shop-switch .widget-toggle-button,.shop-reset.widget-button{height:24px;line-height:22px;
 font-size:12px;padding:0 9px;box-shadow:none}
.shop-switch .widget-toggle-button.mod-active{font-weight:700;text-decoration:underline;
 text-underline-offset:3px}
.shop-reset.widget-button{margin-left:14px}
.shop-block .noUi-handle:focus-visible,.shop-block button:focus-visible{
 outline:3px solid #3D8BC4;outline-offset:2px}
.shop-rows{overflow:visible;margin:4px 0 2px}
.shop-row{align-items:center;flex-flow:row wrap;overflow:visible;min-height:34px}
.shop-row .widget-label{white-space:normal;line-height:1.15;text-align:left;align-self:center;
 height:auto;font-size:14px}
.shop-row input,.shop-row select{font-size:14px}
.shop-row .shop-beside{width:78px;color:var(--jp-ui-font-color2,#5f6670);font-size:13px;white-space:nowrap}
.shop-row .shop-travel{flex:1 1 210px;align-items:center;overflow:visible}
.shop-row .shop-low,.shop-row .shop-high{width:44px;color:var(--jp-ui-font-color2,#5f6670);font-size:12px}
.shop-row .shop-low{text-align:right}
.shop-row .shop-low .widget-html-content{text-align:right}
"""
_CSS += f".shop-row select{{{ARROW}}}\n</style>"
_LARGE = "font-size:19px;font-weight:600;line-height:1.35"
_PLAIN = "font-size:15px;line-height:1.4;margin-top:2px"


class Block(w.VBox):
    """Sliders that move a model, with its answer in words first and as a picture second.

    For one small model on a page. Not for a form with many fields, and not for a model that takes
    longer than a blink.

    Parameters
    ----------
    model : callable
        `model(**values)` with the SI values of the rows; returns a result [-].
    words : callable
        `words(result, system)`: what came out, the first line by itself; system is "us", "si" or "both" [-].
    rows : sequence
        At most four sliders, from `slider(...)`; and lists, from `choice(...)` [-].
    picture : Picture, optional
        Built once; its `update(result, system)` moves the artists and sets `alt` [-].
    title : str
        One line over the block [-].
    units : UnitSwitch, optional
        The switch that the page shares [-].
    lines : int
        Lines kept free for the words, so that nothing jumps [-].

    Examples
    --------
    >>> from shop_calc.lesson.blocks import slider
    >>> block = Block(lambda length_m: length_m**2, lambda result, system: f"{result:.3g} m²",
    ...     [slider("length_m", label="Side", value=1.0, low=0.5, high=2.0, unit="m")])
    >>> block.set(length_m=2.0)
    >>> block.text
    '4 m²'
    """

    def __init__(self, model, words, rows, picture=None, *, title="", units=None, lines=2):
        if sum(isinstance(row, SliderRow) for row in rows) > 4:
            raise ValueError("rows: more than four sliders given; a block takes at most four")
        self._model, self._words_of, self.picture = model, words, picture
        self.rows = {row.key: row for row in rows}
        self.units = units or UnitSwitch()
        self.title, self.text, self.alt, self.result = title, "", "", None
        self._held, self._room = False, f"min-height:{26 + 23 * (lines - 1)}px;padding:6px 0 10px"
        self._title, self._words, self._shown = pages(3)
        self.reset_button = w.Button(description="Reset", tooltip="back to the values it started with")
        self.reset_button.add_class("shop-reset")
        self.reset_button.layout.width = "auto"
        self.reset_button.on_click(lambda _: self.reset())
        super().__init__([self._head(), self._list(), self._words, self._shown])
        self.add_class("shop-block")
        for row in rows:
            row.show(self.units.system)
            row.changed = self._draw
        self.units.observe(self._follow, "system")
        self._draw()

    def _head(self):
        self._title.value = f'{_CSS}<div style="font-size:15px;font-weight:600">{html.escape(self.title)}</div>'
        tools = w.HBox([self.units.control, self.reset_button])
        tools.add_class("shop-tools")
        head = w.HBox([self._title, tools], layout=tools.layout)
        head.add_class("shop-head")
        return head

    def _list(self):
        rows = w.VBox(list(self.rows.values()))
        rows.add_class("shop-rows")
        return rows

    @property
    def values(self):
        """What the rows say, in SI."""
        return {key: row.value for key, row in self.rows.items()}

    def set(self, **values):
        """Put rows to SI values, as a hand would, with one drawing at the end."""
        self._held = True
        try:
            for key, value in values.items():
                if key not in self.rows:
                    raise ValueError(f"{key!r} given; the block has {', '.join(self.rows)}")
                self.rows[key].value = value
        finally:
            self._held = False
        self._draw()

    def reset(self):
        """Back to the values it started with."""
        self.set(**{key: row.default for key, row in self.rows.items()})

    def _follow(self, change):
        for row in self.rows.values():
            row.show(change["new"])
        self._draw()

    def _draw(self):
        if self._held:
            return
        system, shown = self.units.system, None
        try:
            result = self._model(**self.values)
            text = str(self._words_of(result, system)).strip()
            if self.picture is not None:
                self.picture.update(result, system)
                shown = self._page_of(self.picture)
        except ValueError as error:
            # an impossible setting is part of learning: say it, and keep the last good picture
            self._alert(f"Not possible: {error}")
            return
        except Exception as error:
            self._alert(f"The lesson itself has a fault: {type(error).__name__}: {error}")
            raise
        self.result, self.text = result, text
        said = lines_html(text, _LARGE, _PLAIN)
        self._words.value = f'<div role="status" aria-live="polite" style="{self._room}">{said}</div>'
        if shown is not None:
            self.alt, self._shown.value = self.picture.alt, shown

    @staticmethod
    def _page_of(picture):
        size = tuple(round(side * 100) for side in picture.figure.get_size_inches())
        return img_tag(picture.png(), picture.alt, size)

    def _alert(self, text):
        self.text = text
        bar = "border-left:5px solid #D55E00;padding-left:10px;" + _LARGE
        self._words.value = f'<div role="alert" style="{self._room}">{lines_html(text, bar, _PLAIN)}</div>'

    def plain(self):
        """The block as text: what it is set to, what came out, what the picture shows."""
        parts = [self.title, "Set to: " + "; ".join(row.plain() for row in self.rows.values()), self.text]
        if self.picture is not None and self.alt:
            parts.append(f"Picture: {self.alt}")
        return "\n".join(part for part in parts if part)

    def _repr_mimebundle_(self, **kwargs):
        # the library cuts a widget's own text to 110 characters, and wrong words would pass unseen
        return {**super()._repr_mimebundle_(**kwargs), "text/plain": self.plain()}
