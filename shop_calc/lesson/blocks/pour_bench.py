"""The practice pour on the page: what is seen in words, the piece as a picture, a button for every act."""

import html

import ipywidgets as w

from shop_calc.lesson.blocks.look import pages
from shop_calc.lesson.moves.practice_pour import account_of, bench_view, half_hours, hidden_day, pour_ribbon
from shop_calc.lesson.page import img_tag, lines_html
from shop_calc.lesson.pictures.at_the_bench import AtTheBench
from shop_calc.lesson.pictures.base import STILL_DPI, Still, png_bytes
from shop_calc.lesson.said import Said
from shop_calc.trade.rehearsal.account import briefing, diary_lines, now_words
from shop_calc.trade.rehearsal.acts import act
from shop_calc.trade.rehearsal.bench import begin
from shop_calc.trade.rehearsal.replay import diary_text, play
from shop_calc.trade.rehearsal.state import State
from shop_calc.trade.rehearsal.words import ACTS

_CSS = """<style>
.shop-pour{max-width:920px;padding:10px 12px 12px;box-sizing:border-box;overflow:visible;
 border:1px solid var(--jp-border-color2,#d5d9de);border-radius:8px}
.shop-pour .widget-html-content{line-height:1.4}
.shop-acts{align-items:baseline;overflow:visible}
.shop-buttons{flex:1 1 auto;flex-flow:row wrap;align-items:center;overflow:visible}
.shop-acts .widget-button{width:auto;height:30px;line-height:28px;margin:2px 4px 2px 0;padding:0 10px;font-size:13px}
.shop-acts .widget-html{flex:0 0 56px;font-size:13px}
.shop-pour button:focus-visible{outline:3px solid #3D8BC4;outline-offset:2px}
</style>"""
_GROUPS = {"Wait": "time", "Look": "look", "Work": "work", "Cover": "cover"}
_LARGE = "font-size:17px;font-weight:600;line-height:1.35"
_PLAIN = "font-size:15px;line-height:1.4;margin-top:2px"
_ROOM = "min-height:94px;padding:6px 0 8px"


class PourBench(w.VBox):
    """A practice pour with a button for every act; the same acts can be called by their words.

    Not a test of anybody: it gives no marks, only what the piece shows.

    Parameters
    ----------
    code : str or State
        Any text; or a pour already begun [-].
    weather : str, optional
        "mild", "hot and windy" or "cold shop"; drawn from the code if left out [-].
    plan : Plan, optional
        An own job to rehearse; the bench top of the lessons if left out [as its fields].
    title : str
        One line over the bench [-].

    Examples
    --------
    >>> bench = PourBench("oak", "mild")
    >>> bench.do("look edge")
    08:20 Nudge the form: The form is nudged: the base moves with it and settles by itself.
    >>> bench.state.hour_h == bench.start.hour_h
    True
    """

    def __init__(self, code, weather=None, plan=None, *, title="At the bench"):
        self.start = code if isinstance(code, State) else begin(code, weather, plan)
        self.state, self.title = self.start, title
        self.picture, self._drawn = AtTheBench(), (None, None)
        head, told, self._words, self._shown, self._after, *self._names = pages(5 + len(_GROUPS))
        self._look = {"layout": w.Layout(), "style": w.ButtonStyle()}  # one of each for all buttons: the page is there sooner
        self.buttons = {word: self._button(word, each.title) for word, each in ACTS.items()}
        head.value = f'{_CSS}<div style="font-size:15px;font-weight:600">{html.escape(title)}</div>'
        told.value = lines_html(briefing(self.start.pour), _PLAIN, _PLAIN)
        self.again_button = w.Button(description="Begin again", tooltip="the same hidden day from the start")
        self.again_button.on_click(lambda _: self.again())
        row_look = w.Layout()
        rows = [self._row(head, *group, row_look) for head, group in zip(self._names, _GROUPS.items(), strict=True)]
        last = rows[-1].children[-1]
        last.children = (*last.children, self.again_button)
        super().__init__([head, told, self._words, self._shown, *rows, self._after])
        self.add_class("shop-pour")
        self._draw()

    def _button(self, word, title):
        button = w.Button(description=title, tooltip=word, **self._look)
        button.on_click(lambda _: self.do(word))
        return button

    def _row(self, head, name, kind, layout):
        head.value = f"<b>{html.escape(name)}</b>"
        buttons = w.HBox([self.buttons[word] for word, each in ACTS.items() if each.kind == kind], layout=layout)
        buttons.add_class("shop-buttons")
        row = w.HBox([head, buttons], layout=layout)
        row.add_class("shop-acts")
        return row

    def do(self, *words):
        """Do acts in order, by their words or as a diary line; gives what was done, seen and felt.

        Parameters
        ----------
        *words : str
            Keys of ACTS, or lines with semicolons [-].

        Returns
        -------
        Said
            Shown by the notebook [-].

        Raises
        ------
        ValueError
            When there is no such act; the pour stays as it was.
        """
        state, before = self.state, len(self.state.diary)
        for word in words:
            state = play(state, word) if ";" in word else act(state, word)
        self.state = state
        self._draw()
        return Said(diary_lines(state, before))

    def again(self):
        """The same hidden day from its beginning."""
        self.state = self.start
        self._draw()

    def account(self):
        """What shows in the morning, with reasons and sources."""
        return account_of(self.state)

    def ribbon(self, caption="The true windows, the plan thin above them, what was seen and done."):
        """The truth laid over what was seen and done, as a picture for the page."""
        picture, png = self._ribbon()
        return Still(png, picture.alt, caption)

    def half_hours(self):
        """Every decision beside what half an hour earlier and later would have done."""
        return half_hours(self.state)

    def hidden(self):
        """The hidden day beside what the plan counted with."""
        return hidden_day(self.state)

    @property
    def diary(self):
        """All acts on one line, to be kept or handed in."""
        return diary_text(self.state)

    def _draw(self):
        said = lines_html(now_words(self.state), _LARGE, _PLAIN)
        self._words.value = f'<div role="status" aria-live="polite" style="{_ROOM}">{said}</div>'
        self.picture.update(bench_view(self.state))
        size = tuple(round(side * 100) for side in self.picture.figure.get_size_inches())
        self._shown.value = img_tag(self.picture.png(), self.picture.alt, size)
        if not self.state.over:
            self._after.value = ""
        elif not self._after.value:  # the morning does not change
            self._after.value = self._morning()
        for word, button in self.buttons.items():
            button.disabled = self.state.over and ACTS[word].kind != "look"

    def _ribbon(self):
        """The ribbon of the pour as it stands, and its PNG; drawn once, for the morning and for the page."""
        if self._drawn[0] is not self.state:
            ribbon = pour_ribbon(self.state, self.title)
            self._drawn = self.state, (ribbon, png_bytes(ribbon.figure, STILL_DPI))
        return self._drawn[1]

    def _morning(self):
        ribbon, png = self._ribbon()
        size = tuple(round(side * 100) for side in ribbon.figure.get_size_inches())
        page = half_hours(self.state)._repr_mimebundle_()["text/html"]
        return (
            f'<div role="status">{lines_html(account_of(self.state).text, _LARGE, _PLAIN)}</div>'
            f"{img_tag(png, ribbon.alt, size)}{page}"
        )

    def plain(self):
        """The bench as text: what is known, where it stands, what the picture shows, what can be done."""
        words = ", ".join(word for word in ACTS)
        parts = [self.title, briefing(self.start.pour), now_words(self.state), f"Picture: {self.picture.alt}"]
        return "\n".join([*parts, f"Acts: {words}"])

    def _repr_mimebundle_(self, **kwargs):
        # the library cuts a widget's own text to 110 characters, and wrong words would pass unseen
        return {**super()._repr_mimebundle_(**kwargs), "text/plain": self.plain()}
