"""A short form for a job: the plan answers in words, every problem is a line, and the job is kept as a job file."""

import re
from dataclasses import replace

import ipywidgets as w

from shop_calc.lesson.blocks.look import ARROW
from shop_calc.lesson.job_file import own_jobs, save_job
from shop_calc.lesson.moves.job_short import PLACES, ROOM, SIZE_TEXTS, entries_of, texts_of
from shop_calc.lesson.moves.whole_job import plan_words
from shop_calc.lesson.page import lines_html
from shop_calc.lesson.said import Said
from shop_calc.lesson.sheet import show_sheet
from shop_calc.trade.jobs.job import check_job, demo_jobs, read_job
from shop_calc.trade.jobs.job_fields import OUTLINES, SIZES
from shop_calc.trade.jobs.job_text import job_text
from shop_calc.trade.mortar.recipe import recipes
from shop_calc.trade.plan import make_plan

_CSS = f"""<style>
.shop-job{{max-width:920px;padding:10px 12px 12px;box-sizing:border-box;overflow:visible;
 border:1px solid var(--jp-border-color2,#d5d9de);border-radius:8px}}
.shop-job .widget-html-content{{line-height:1.4;overflow-wrap:anywhere}}
.shop-job .widget-label{{white-space:normal;text-align:left;font-size:14px}}
.shop-job input,.shop-job select,.shop-job textarea{{font-size:14px}}
.shop-job select{{{ARROW}}}
.shop-job .shop-fields{{flex-flow:row wrap;overflow:visible}}
.shop-job .shop-fields>*{{margin-right:10px}}
.shop-job button:focus-visible{{outline:3px solid #3D8BC4;outline-offset:2px}}
</style>"""
_LARGE, _PLAIN = "font-size:17px;font-weight:600;line-height:1.4", "font-size:15px;line-height:1.4;margin-top:2px"
_BAR = "border-left:5px solid #D55E00;padding-left:10px;"
_LABELS = {
    "name": ("Name", "what the piece is called"),
    "outline": ("Outline", ""),
    "length": ("Length", "5 ft"),
    "width": ("Width", "15 in"),
    "diameter": ("Diameter", "30 in"),
    "notch_length": ("Notch, long", "30 in"),
    "notch_width": ("Notch, wide", "20 in"),
    "notch_at": ("Notch from left", "10 in"),
    "thickness": ("Thickness", "1 1/2 in"),
    "face": ("Face", "1/4 in"),
    "exposed": ("Edges that show", "front, left, right; all; none"),
    "recipe": ("Recipe", ""),
    "stone": ("Base stone", "1.2 kg per kg binder; or 0"),
    "water_in": ("First water", "2026-05-04 08:00"),
    "wanted_mix_temp": ("Mix wanted at", "60 F"),
    "hands": ("Hands", "2"),
}
_ROOM_HINT = "clock, air, humidity, wind, as in\n08:00, 70 F, 50 %, 0 mph"
_ENTRIES = {".".join(filter(None, place)): _LABELS[field][0] for field, place in PLACES.items()}
_ENTRY = re.compile(r"^(?:(name|[a-z]+\.[a-z_]+)|room (\d+)\.[a-z]+|\[\[room\]\]|piece: exposed edges)(?=:)", re.MULTILINE)
_LINES = 5  # kept free for the words, so that nothing jumps


def _by_label(problems):
    """Problems as the form names its fields, not as the file names its entries."""

    def label(found):
        entry, row = found.groups()
        if entry:
            return _ENTRIES.get(entry, entry)
        if row:
            return f"Room, line {row}, {found.group().rsplit('.', 1)[1]}"
        return "Room" if "room" in found.group() else _LABELS["exposed"][0]

    return _ENTRY.sub(label, str(problems))


class JobForm(w.VBox):
    """The fields of a job, and what the plan says of them.

    Not for every entry that a job may have: openings, prices and the like stay as the chosen file has them.

    Parameters
    ----------
    start : str
        Name of the demo job that stands there first [-].
    title : str
        One line over the form [-].

    Examples
    --------
    >>> form = JobForm("garden_bench_top")
    >>> form.fields["length"].value = "2 bananas"
    >>> form.text.splitlines()[0]
    'The plan waits. Mend this first:'
    """

    def __init__(self, start="garden_bench_top", title="A job"):
        self.title, self.text, self.plan, self.job = title, "", None, None
        self._held, self._base, self._first, self._folder = False, {}, None, None
        self.file = w.Dropdown(description="Start from", **self._look("99%"))
        self._list(start)
        self.fields = {key: self._field(key) for key in _LABELS}
        self.fields[ROOM] = w.Textarea(
            description="Room", placeholder=_ROOM_HINT, rows=3, continuous_update=False, **self._look("460px")
        )
        self.replace = w.Checkbox(description="write over a file of that name", indent=False)
        self.button = w.Button(description="Keep this job", tooltip="writes a job file into your own folder")
        self.button.on_click(lambda _: self.keep())
        self._words, self._status = w.HTML(), w.HTML()
        for field in self.fields.values():
            field.observe(self._plan, "value")
        self.file.observe(lambda _: self.load(), "value")
        fields = w.HBox(list(self.fields.values()))
        fields.add_class("shop-fields")
        head = w.HTML(f"{_CSS}{lines_html(title, 'font-size:15px;font-weight:600', _PLAIN)}")
        keep = w.HBox([self.button, self.replace])
        super().__init__([head, self._words, self.file, fields, keep, self._status])
        self.add_class("shop-job")
        self.load()

    @staticmethod
    def _look(width):
        return {"style": {"description_width": "118px"}, "layout": {"width": width, "max_width": "100%"}}

    def _field(self, key):
        label, hint = _LABELS[key]
        look = self._look("50%" if key in ("name", "exposed", "stone") else "280px")
        look["layout"]["min_width"] = "270px"
        if key in ("outline", "recipe"):
            names = OUTLINES if key == "outline" else list(recipes())
            return w.Dropdown(options=names, description=label, **look)
        return w.Text(description=label, placeholder=hint, continuous_update=False, **look)

    def _list(self, chosen):
        options = {f"{name.replace('_', ' ')} (demo)": path for name, path in demo_jobs().items()}
        options |= {f"{name} (yours)": path for name, path in own_jobs().items()}
        held, self._held = self._held, True
        self.file.options = list(options.items())
        self.file.value = next((path for path in options.values() if path.stem == chosen or path == chosen), None)
        self._held = held

    def load(self):
        """Put the chosen file into the fields."""
        if self._held or self.file.value is None:
            return
        try:
            job = read_job(self.file.value)
            first = make_plan(job)
        except ValueError as error:
            self._say(f"This file cannot be read:\n{error}", bad=True)
            return
        self._base, self._first, self._folder = job.entries, first, job.folder
        self._held = True
        for key, text in texts_of(job.entries).items():
            field = self.fields[key]
            if isinstance(field, w.Dropdown) and text not in field.options:
                field.options = (*field.options, text)  # a recipe written out in the file itself
            field.value = text
        self._held = False
        self._plan()

    def _plan(self, _=None):
        if self._held:
            return
        texts = {key: str(field.value) for key, field in self.fields.items()}
        needed = SIZES.get(texts["outline"], ())
        for size in SIZE_TEXTS:
            self.fields[size].layout.display = None if size in needed else "none"
        try:
            job = replace(check_job(entries_of(texts, self._base)), folder=self._folder)
            plan = make_plan(job)
        except ValueError as error:
            self.job = self.plan = None
            self._say(f"The plan waits. Mend this first:\n{_by_label(error)}", bad=True)
            return
        self.job, self.plan = job, plan
        same = dict(job.entries) == dict(self._base)
        self._say(plan_words(plan, None if same else self._first))

    def _say(self, text, bad=False):
        self.text = text
        role = 'role="alert"' if bad else 'role="status" aria-live="polite"'
        lines = lines_html(text, (_BAR if bad else "") + _LARGE, (_BAR if bad else "") + _PLAIN)
        self._words.value = f'<div {role} style="min-height:{24 * _LINES}px;padding:4px 0 8px">{lines}</div>'

    def keep(self):
        """Write the job into the student's folder; say where, or why not.

        Returns
        -------
        Said
            The line under the button [-].
        """
        if self.job is None:
            return self._note("Not kept: the form has a line to mend first.", bad=True)
        try:
            path = save_job(self.job.entries, replace=self.replace.value)
        except ValueError as error:
            more = "; tick the box to write over it, or give another name" if "is there already" in str(error) else ""
            return self._note(f"Not kept: {error}{more}.", bad=True)
        again = read_job(path)
        self.replace.value = False
        self._list(self.file.value)
        same = "it reads back the same" if again.entries == self.job.entries else "but it reads back otherwise"
        return self._note(f"Kept in {path}; {same}.")

    def sheet(self):
        """Give the shop sheet of what stands in the form.

        Returns
        -------
        Sheet or Said
            Shown by the notebook; a line instead while something is to be mended [-].
        """
        return Said("No sheet yet: the form has a line to mend first.") if self.plan is None else show_sheet(self.plan)

    def file_text(self, lines=14):
        """Give the beginning of the job file of what stands in the form; nothing is written.

        Parameters
        ----------
        lines : int
            How many lines; the others are counted [-].

        Returns
        -------
        Said
            TOML [-].
        """
        if self.job is None:
            return Said("No file yet: the form has a line to mend first.")
        try:
            text = job_text(self.job.entries).splitlines()
        except ValueError as error:
            return Said(f"No file yet: {error}")
        more = len(text) - lines
        return Said("\n".join([*text[:lines], *([f"... and {more} lines more"] if more > 0 else [])]))

    def _note(self, text, bad=False):
        role = 'role="alert"' if bad else 'role="status" aria-live="polite"'
        self._status.value = f'<div {role}>{lines_html(text, (_BAR if bad else "") + _PLAIN)}</div>'
        return Said(text)

    def plain(self):
        """The form as text: what stands in its fields, and what the plan says."""
        shown = [
            f"{field.description}: {field.value}".replace("\n", " / ")
            for field in self.fields.values()
            if field.layout.display != "none"
        ]
        return "\n".join([self.title, *shown, self.text])

    def _repr_mimebundle_(self, **kwargs):
        # the library cuts a widget's own text to 110 characters, and wrong words would pass unseen
        return {**super()._repr_mimebundle_(**kwargs), "text/plain": self.plain()}
