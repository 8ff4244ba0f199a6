"""One cell of the shop log: how text stays text in a spreadsheet, how numbers, times and cues are read."""

import re
import unicodedata
from datetime import datetime, timedelta

from shop_calc.trade.logbook.log_fields import NUMBERS
from shop_calc.trade.timeline.look import CUES

LONGEST_TEXT = 2000
_TURNS = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")  # they turn the words after them round
_NUMBER = re.compile(r"[-+\u2212]?[0-9]+(?:[.,][0-9]*)?(?:[eE][-+]?[0-9]{1,3})?")
# Where a spreadsheet begins a cell, and what would make it run that cell as a formula.
_RUNS = re.compile(r"(^|[;\t])(\s*)('*)(?=[=+\-@\uff1d\uff0b\uff0d\uff20])")
_KEPT = re.compile(r"(^|[;\t])(\s*)'('*)(?=[=+\-@\uff1d\uff0b\uff0d\uff20])")


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
