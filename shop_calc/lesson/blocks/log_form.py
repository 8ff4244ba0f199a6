"""A small form for one look: it adds rows to the shop log among the student's own data, and to nothing else."""

from datetime import datetime

import ipywidgets as w

from shop_calc import units
from shop_calc.lesson.blocks.look import ARROW
from shop_calc.lesson.page import lines_html
from shop_calc.lesson.progress import work_folder
from shop_calc.lesson.said import Said
from shop_calc.trade.logbook.log_fields import NUMBERS, Event
from shop_calc.trade.logbook.shop_log import append_events, read_log

FILE = "shop_log.csv"
_CSS = f"""<style>
.shop-form{{max-width:720px;padding:10px 12px 12px;box-sizing:border-box;overflow:visible;
 border:1px solid var(--jp-border-color2,#d5d9de);border-radius:8px}}
.shop-form .widget-html-content{{line-height:1.4}}
.shop-form .widget-label{{white-space:normal;text-align:left;font-size:14px}}
.shop-form input,.shop-form select{{font-size:14px}}
.shop-form select{{{ARROW}}}
.shop-form button:focus-visible{{outline:3px solid #3D8BC4;outline-offset:2px}}
</style>"""
_SIGNS = (
    ("sides off", "strip"), ("first steel", "first_steel"), ("last steel", "last_steel"), ("stop", "stop"),
)  # fmt: skip
HAPPENED = (
    "water in",
    "the room",
    *(f"{name}: {there}" for name, _ in _SIGNS for there in ("not yet", "there")),
    "rod reading",
    "thumb print",
    "something done",
)
# What the number means, by what happened: field of the row, kind of quantity, name in messages.
_NUMBERS = {
    "water in": ("mix_temp_c", "temperature", "mix temperature"),
    "the room": ("air_temp_c", "temperature", "air temperature"),
    "rod reading": ("resistance_pa", "pressure", "rod reading"),
    "thumb print": ("depth_m", "length", "depth of the print"),
}
_EVENTS = {"water in": "water_in", "the room": "room", "something done": "action"}
_PLAIN = "font-size:15px;line-height:1.4;margin-top:2px"
_FIELDS = (
    ("pour", "Pour", "one name for all its rows, like bench 2"),
    ("recipe", "Recipe", "on the first row, like demo mortar"),
    ("thick", "Thickness", "of the piece, on the first row: 1 1/2 in"),
    ("date", "Date", "year-month-day, like 2026-11-21"),
    ("time", "Clock time", "like 10:45"),
    ("number", "Reading", "with its unit: 60 F, 16 psi, 1/4 in"),
    ("note", "Note", "one line, or nothing"),
)


def log_file():
    """Give the file that the form adds to; it need not exist.

    Returns
    -------
    pathlib.Path
        In the folder of `shop_calc.lesson.progress.work_folder` [-].

    Examples
    --------
    >>> log_file().name
    'shop_log.csv'

    References
    ----------
    Common practice, no source.
    """
    return work_folder() / FILE


def event_of(happened, pour="", recipe="", date="", time="", number="", note="", thick=""):
    """Read the fields of the form as one row of the log.

    Parameters
    ----------
    happened : str
        One of HAPPENED [-].
    pour, recipe, date, time, number, note, thick : str
        As typed [-].

    Returns
    -------
    Event
        The row [as its fields].

    Raises
    ------
    ValueError
        When a field is missing or cannot be read; the message names it.

    Examples
    --------
    >>> event_of("first steel: there", "bench 2", date="2026-11-21", time="11:40").cue
    'first_steel seen'

    References
    ----------
    Form of the log: data/README.md.
    """
    if happened not in HAPPENED:
        raise ValueError(f"what: {happened!r} given; it must be one of {', '.join(HAPPENED)}")
    if not pour.strip():
        raise ValueError("pour: nothing given; it must be the name of the pour, the same on all its rows")
    try:
        when = datetime.strptime(f"{date.strip()} {time.strip()}", "%Y-%m-%d %H:%M")
    except ValueError:
        raise ValueError(
            f"date and clock time: {date!r} and {time!r} given; they must be like 2026-11-21 and 10:45"
        ) from None
    name, _, there = happened.partition(": ")
    values = {"cue": f"{dict(_SIGNS)[name]} {'seen' if there == 'there' else there}"} if there else {}
    if happened in _NUMBERS:
        column, kind, entry = _NUMBERS[happened]
        try:
            values[column] = float(units.parse(number, kind, entry=entry))
        except ValueError as error:
            if kind != "pressure" or "a unit of mass" not in str(error):
                raise
            words = f"{error}: what the scale shows, over the area of the rod's end (lesson 04)"
            raise ValueError(words) from error
    elif number.strip():
        raise ValueError(f"reading: {number!r} given; with {happened!r} there is nothing to read, put it into the note")
    if thick.strip():
        values["thickness_m"] = _thickness_m(thick)
    layer = "" if happened in ("water in", "the room", "something done") else "face"
    event = _EVENTS.get(happened, "check")
    return Event(pour.strip(), when, event, layer, recipe.strip(), note=note.strip(), **values)


def _thickness_m(text):
    """Read the thickness as typed, and say in the same words what is too thin or too thick for the log."""
    value = float(units.parse(text, "length", entry="thickness"))
    _, low, high, factor, _ = NUMBERS["thickness_mm"]
    if not low * factor <= value <= high * factor:
        least, most = (units.show(end * factor, "length") for end in (low, high))
        raise ValueError(f"thickness: {text!r} given; it must be from {least} to {most}")
    return value


class LogForm(w.VBox):
    """Fields for one row, a button that keeps it, and a line that says what was kept.

    Never needed: the file is plain text, and a card with a pencil serves as well.

    Parameters
    ----------
    title : str
        One line over the form [-].

    Examples
    --------
    >>> LogForm().keep()
    Not kept: pour: nothing given; it must be the name of the pour, the same on all its rows
    """

    def __init__(self, title="Keep a look"):
        self.title, self.text = title, "Nothing kept from here yet."
        look = {"style": {"description_width": "130px"}, "layout": {"width": "480px", "max_width": "100%"}}
        self.what = w.Dropdown(options=HAPPENED, value="first steel: not yet", description="What happened", **look)
        self.fields = {key: w.Text(description=label, placeholder=hint, **look) for key, label, hint in _FIELDS}
        self.button = w.Button(description="Keep it", tooltip="adds one row to your own shop log")
        self.button.on_click(lambda _: self.keep())
        self._status = w.HTML()
        head = w.HTML(f"{_CSS}{lines_html(title, 'font-size:15px;font-weight:600', _PLAIN)}")
        order = [self.fields[key] for key in ("pour", "recipe", "thick", "date", "time")]
        super().__init__(
            [head, *order, self.what, self.fields["number"], self.fields["note"], self.button, self._status]
        )
        self.add_class("shop-form")
        self._say(self.text)

    def keep(self):
        """Add the row to the log of the student's own; say so, or say what is missing.

        Returns
        -------
        Said
            The line under the button [-].
        """
        try:
            event = event_of(self.what.value, **{key: field.value for key, field in self.fields.items()})
            self._allowed(event)
            path = log_file()
            path.parent.mkdir(parents=True, exist_ok=True)
            append_events(path, event)
            count = sum(each.pour_id == event.pour_id for each in read_log(path).events)
        except (ValueError, OSError, RuntimeError) as error:
            return self._say(f"Not kept: {error}", bad=True)
        for key in ("number", "note", "thick"):
            self.fields[key].value = ""
        rows = "row" if count == 1 else "rows"
        what = f"{event.pour_id}, {event.time:%H:%M}, {self.what.value}"
        return self._say(f"Kept: {what}. {count} {rows} of this pour in {path}")

    @staticmethod
    def _allowed(event):
        """Refuse what the reader would leave out: a first row that is no water, or a time before it."""
        path = log_file()
        old = [each for each in (read_log(path).events if path.is_file() else ()) if each.pour_id == event.pour_id]
        if not old and event.event != "water_in":
            raise ValueError(f"what: the first row of {event.pour_id!r} must be 'water in'")
        if not old and not event.recipe:
            raise ValueError("recipe: nothing given; the first row of a pour must name it")
        if old and event.time < old[0].time:
            given, first = (f"{each.time:%Y-%m-%d %H:%M}" for each in (event, old[0]))
            raise ValueError(f"clock time: {given} given; the water went in at {first}")

    def _say(self, text, bad=False):
        self.text = text
        bar = "border-left:5px solid #D55E00;padding-left:10px;" if bad else ""
        role = 'role="alert"' if bad else 'role="status" aria-live="polite"'
        self._status.value = f'<div {role} style="min-height:46px">{lines_html(text, bar + _PLAIN, _PLAIN)}</div>'
        return Said(text)

    def plain(self):
        """The form as text: its fields and what it said last."""
        labels = [label for _, label, _ in _FIELDS]
        names = ", ".join([*labels[:5], "What happened", *labels[5:]])
        return f"{self.title}\nFields: {names}\n{self.text}"

    def _repr_mimebundle_(self, **kwargs):
        # the library cuts a widget's own text to 110 characters, and wrong words would pass unseen
        return {**super()._repr_mimebundle_(**kwargs), "text/plain": self.plain()}
