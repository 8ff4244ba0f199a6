"""The columns of the shop log: what a cell may hold, and how text stays text in a spreadsheet."""

import re
import unicodedata
from dataclasses import dataclass, field
from datetime import datetime, timedelta

from shop_calc.trade.timeline.look import CUES

EVENTS = ("water_in", "placed", "room", "check", "action")
LAYERS = ("face", "base")
COLUMNS = (
    "pour_id", "time_iso", "event", "layer", "recipe", "mix_temp_c", "air_temp_c", "rh_fraction", "wind_m_s",
    "surface_temp_c", "cue", "pr_kpa", "print_mm", "thickness_mm", "note",
)  # fmt: skip
REQUIRED = ("pour_id", "time_iso", "event")
TEXT = ("pour_id", "event", "layer", "recipe", "cue", "note")
LONGEST_TEXT = 2000
_TURNS = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")  # they turn the words after them round

# Number columns: field of Event, lowest, highest, factor from the file to the field, unit and hint for messages.
NUMBERS = {
    "mix_temp_c": ("mix_temp_c", 0.0, 40.0, 1.0, "°C"),
    "air_temp_c": ("air_temp_c", -5.0, 50.0, 1.0, "°C"),
    "rh_fraction": ("rh_fraction", 0.0, 1.0, 1.0, "(50 % is 0.5)"),
    "wind_m_s": ("wind_m_s", 0.0, 17.0, 1.0, "m/s"),
    "surface_temp_c": ("surface_temp_c", -5.0, 60.0, 1.0, "°C"),
    "pr_kpa": ("resistance_pa", 0.0, 60_000.0, 1000.0, "kPa"),
    "print_mm": ("depth_m", 0.0, 100.0, 0.001, "mm"),
    "thickness_mm": ("thickness_m", 5.0, 500.0, 0.001, "mm"),
}
_NUMBER = re.compile(r"[-+\u2212]?[0-9]+(?:[.,][0-9]*)?(?:[eE][-+]?[0-9]{1,3})?")
# Where a spreadsheet begins a cell, and what would make it run that cell as a formula.
_RUNS = re.compile(r"(^|[;\t])(\s*)('*)(?=[=+\-@\uff1d\uff0b\uff0d\uff20])")
_KEPT = re.compile(r"(^|[;\t])(\s*)'('*)(?=[=+\-@\uff1d\uff0b\uff0d\uff20])")


@dataclass(frozen=True)
class Event:
    """One row of the log.

    Parameters
    ----------
    pour_id : str
        Which pour; the same words on all its rows [-].
    time : datetime
        The clock on the wall; with its offset from UTC where the clocks change in the night [-].
    event : str
        water_in, placed, room, check or action [-].
    layer : str
        face, base, or empty when it concerns both [-].
    recipe : str
        Name of the recipe; at least on the first row of a pour [-].
    mix_temp_c : float or None
        Temperature of the mix when it leaves the mixer [°C].
    air_temp_c, rh_fraction, wind_m_s : float or None
        The room [°C, -, m/s].
    surface_temp_c : float or None
        Temperature of the surface [°C].
    cue : str
        A stage and whether its cue was there: "strip seen", "first_steel not yet" [-].
    resistance_pa : float or None
        Rod reading; kPa in the file [Pa].
    depth_m : float or None
        Depth of the thumb print; mm in the file [m].
    thickness_m : float or None
        Thickness of the piece, and of its side cup; mm in the file [m].
    note : str
        Anything in words, on one line [-].
    line : int
        Line of the file it was read from; 0 for a row not yet written [-].

    Examples
    --------
    >>> Event("bench 1", datetime(2026, 5, 4, 8), "water_in", recipe="demo mortar", mix_temp_c=16.0).layer
    ''

    References
    ----------
    Common practice, no source.
    """

    pour_id: str
    time: datetime
    event: str
    layer: str = ""
    recipe: str = ""
    mix_temp_c: float | None = None
    air_temp_c: float | None = None
    rh_fraction: float | None = None
    wind_m_s: float | None = None
    surface_temp_c: float | None = None
    cue: str = ""
    resistance_pa: float | None = None
    depth_m: float | None = None
    thickness_m: float | None = None
    note: str = ""
    line: int = field(default=0, compare=False)


@dataclass(frozen=True)
class LogProblem:
    """What is wrong with one cell, or with one row.

    Parameters
    ----------
    line : int
        Line of the file, counted from 1 [-].
    column : str
        Name of the column, "row" when the whole row is meant [-].
    reason : str
        What was given and what it must be [-].

    Examples
    --------
    >>> str(LogProblem(7, "pr_kpa", "'soft' given; it must be a number"))
    "line 7, pr_kpa: 'soft' given; it must be a number"

    References
    ----------
    Common practice, no source.
    """

    line: int
    column: str
    reason: str

    def __str__(self):
        return f"line {self.line}, {self.column}: {self.reason}"


def keep_as_text(text):
    """Mark text that a spreadsheet would run as a formula.

    Parameters
    ----------
    text : str
        Any text on one line [-].

    Returns
    -------
    str
        The same, with an apostrophe before every = + - @ that begins a cell, also after a semicolon or tab [-].

    Examples
    --------
    >>> keep_as_text("=1+1")
    "'=1+1"

    References
    ----------
    Common practice, no source.
    """
    return _RUNS.sub(r"\1\2'\3", text)


def read_as_text(cell):
    """Take off what `keep_as_text` put on.

    Parameters
    ----------
    cell : str
        A cell of the file [-].

    Returns
    -------
    str
        The text as it was [-].

    Examples
    --------
    >>> read_as_text(keep_as_text("'=1; =2"))
    "'=1; =2"

    References
    ----------
    Common practice, no source.
    """
    return _KEPT.sub(r"\1\2\3", cell)


def clean_text(column, text):
    """Check a text before it is written.

    Parameters
    ----------
    column : str
        Name of the column, for the message [-].
    text : str
        The text [-].

    Returns
    -------
    str
        Without blanks around it [-].

    Raises
    ------
    ValueError
        When it is no text, too long, or has a line break or another control character in it.

    Examples
    --------
    >>> clean_text("note", " felt quick ")
    'felt quick'

    References
    ----------
    Common practice, no source.
    """
    if not isinstance(text, str):
        raise ValueError(f"{column}: {text!r} given; it must be text")
    text = text.strip()
    if len(text) > LONGEST_TEXT:
        raise ValueError(f"{column}: {len(text):,} characters given; it must be at most {LONGEST_TEXT:,}")
    if any(unicodedata.category(letter) in ("Cc", "Cs", "Zl", "Zp") or letter in _TURNS for letter in text):
        raise ValueError(f"{column}: a line break or control character given; it must be one line of plain text")
    return text


def read_number(column, cell):
    """Read a number as people and spreadsheets write it.

    Parameters
    ----------
    column : str
        Name of the column [-].
    cell : str
        "16.5", "16,5", "-3" [unit of the column].

    Returns
    -------
    float or None
        The value in the unit of the field of Event; None for an empty cell [SI].

    Raises
    ------
    ValueError
        When it is no number or out of range; the message has no column name.

    Examples
    --------
    >>> read_number("mix_temp_c", "16,5")
    16.5

    References
    ----------
    Common practice, no source.
    """
    text = cell.strip()
    if not text:
        return None
    _, low, high, factor, unit = NUMBERS[column]
    if not _NUMBER.fullmatch(text):
        raise ValueError(f"{_short(text)} given; it must be a plain number, as in 16.5 or 16,5")
    value = float(text.replace(",", ".").replace("\u2212", "-"))
    if not low <= value <= high:
        raise ValueError(f"{_short(text)} given; it must be from {low:g} to {high:g} {unit}")
    return value * factor if factor >= 1.0 else value / (1.0 / factor)  # 6.5 mm is 0.0065 m to the last digit


def read_time(cell):
    """Read a time as ISO 8601 writes it.

    Parameters
    ----------
    cell : str
        "2026-05-04T08:00", a blank for the T, "24:00" for midnight, an offset where the clocks change [-].

    Returns
    -------
    datetime
        With its offset when it has one [-].

    Raises
    ------
    ValueError
        When it is no such time; the message has no column name.

    Examples
    --------
    >>> read_time("2026-05-04T24:00").isoformat()
    '2026-05-05T00:00:00'

    References
    ----------
    ISO 8601.
    """
    text = cell.strip()
    try:
        if len(text) < 16 or text[10] not in "T ":
            raise ValueError
        midnight = re.fullmatch(r"(.{10}[T ])24:00(:00)?(.*)", text)
        if midnight:
            return datetime.fromisoformat(f"{midnight[1]}00:00{midnight[3]}") + timedelta(days=1)
        return datetime.fromisoformat(text)
    except (ValueError, OverflowError):
        raise ValueError(f"{_short(text)} given; it must be year-month-day and time, as in 2026-05-04T08:00") from None


def read_cue(cell):
    """Read a cue: a stage, and whether its sign was there.

    Parameters
    ----------
    cell : str
        "strip seen", "first steel not yet" [-].

    Returns
    -------
    str
        "strip seen", "first_steel not yet"; empty for an empty cell [-].

    Raises
    ------
    ValueError
        When it is no such cue; the message has no column name.

    Examples
    --------
    >>> read_cue("First steel: not yet")
    'first_steel not yet'

    References
    ----------
    Common practice, no source.
    """
    words = re.sub(r"[\s_:,]+", " ", cell).strip().lower()
    if not words:
        return ""
    found = re.fullmatch(r"(.+?) (seen|not yet)", words)
    stage = found[1].replace(" ", "_") if found else ""
    if stage not in CUES:
        raise ValueError(
            f"{_short(cell.strip())} given; it must be one of {', '.join(CUES)}, then seen or not yet, "
            "as in strip not yet"
        )
    return f"{stage} {found[2]}"


def _short(text):
    return repr(text if len(text) <= 40 else text[:37] + "...")
