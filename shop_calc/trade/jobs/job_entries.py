"""One entry of a job file, from what was typed to a number in SI."""

from datetime import date, datetime, time
from pathlib import PurePosixPath, PureWindowsPath

from shop_calc import defaults, units

LONGEST_NAME = 300  # characters
LARGEST_COUNT = 1_000_000  # of anything that is counted in a shop, and of minutes
YEARS = (1900, 2200)  # days before and after a pour can still be reckoned
_PER_SI = {"minutes": 60.0, "humidity": 100.0}  # what a person writes for one of ours


def shown(value):
    """Repeat what was typed, short enough for a message.

    Parameters
    ----------
    value : object
        What stood in the file [-].

    Returns
    -------
    str
        At most 60 characters [-].

    Examples
    --------
    >>> shown("5 lb"), shown(2), shown(True)
    ("'5 lb'", '2', 'true')

    References
    ----------
    Common practice, no source.
    """
    if isinstance(value, bool):
        text = str(value).lower()
    elif isinstance(value, (date, time)):
        text = value.isoformat()
    elif isinstance(value, dict):
        text = f"a table of {', '.join(map(str, value)) or 'nothing'}"
    elif isinstance(value, list) and value and all(isinstance(row, dict) for row in value):
        text = "a list of tables"
    else:
        text = repr(value) if not isinstance(value, str) else f"'{value}'"
    text = "".join(sign if sign.isprintable() else "?" for sign in text)
    return text if len(text) <= 60 else text[:57] + "..."


def entry_value(field, given, entry):
    """Read one entry.

    Parameters
    ----------
    field : Field
        What the entry is, see job_fields.FIELDS [-].
    given : object
        What stood in the file [as typed].
    entry : str
        Its name for messages, "piece.length" and the like [-].

    Returns
    -------
    object
        A number in SI, or the words, names, times or pairs of the entry [SI].

    Raises
    ------
    ValueError
        In shop words, when it cannot be read or is out of range.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job_fields import FIELDS
    >>> thickness = next(field for field in FIELDS["piece"] if field.name == "thickness")
    >>> entry_value(thickness, "1 1/2 in", "piece.thickness")
    0.0381

    References
    ----------
    Form of the file: data/README.md.
    """
    readers = {
        "choice": _choice, "name": _name, "count": _count, "clock": _clock, "humidity": _humidity,
        "edges": _edges, "names": _names, "place": _place, "points": _points, "seen": _seen, "recipe": _recipe,
        "minutes": _minutes, "stone": _stone, "below": _below,
    }  # fmt: skip
    value = readers[field.kind](field, given, entry) if field.kind in readers else units.parse(given, field.kind, entry)
    if field.row and not isinstance(value, (str, datetime)):
        _range(field, value, given, entry)
    return value


def _range(field, value, given, entry):
    row = defaults.get(field.row)
    low, high = (
        None if end is None else float(units.convert(end, row.unit, defaults.si_unit(field.row)))
        for end in (row.minimum, row.maximum)
    )
    if (low is not None and value < low - 1e-9) or (high is not None and value > high + 1e-9):
        kind = field.kind if field.kind in units.KINDS else None
        show = (lambda v: units.show(v, kind)) if kind else (lambda v: f"{v * _PER_SI.get(field.kind, 1):g}")
        words = " and ".join(
            text for text in (
                f"at least {show(low)}" if low is not None else "", f"at most {show(high)}" if high is not None else "",
            ) if text
        )  # fmt: skip
        raise ValueError(f"{entry}: {shown(given)} given; it must be {words}")


def _choice(field, given, entry):
    words = {choice.lower(): choice for choice in field.choices}
    if not isinstance(given, str) or given.strip().lower() not in words:
        raise ValueError(f"{entry}: {shown(given)} given; it must be one of {', '.join(field.choices)}")
    return words[given.strip().lower()]


def _name(field, given, entry):
    if not isinstance(given, str) or not given.strip() or len(given) > LONGEST_NAME:
        raise ValueError(f"{entry}: {shown(given)} given; it must be a name in words")
    return "".join(sign for sign in given.strip() if sign.isprintable()).strip() or "unnamed"


def _below(field, given, entry):
    """A path that stays below the folder of the job file, on every system."""
    _name(field, given, entry)
    text = given.strip()
    forms = (PurePosixPath(text), PureWindowsPath(text))
    leaves = any(form.anchor or ".." in form.parts or text.startswith("~") for form in forms)
    if leaves or not text.isprintable():
        raise ValueError(f"{entry}: {shown(given)} given; it must be a file below the job's folder, as in log.csv")
    return text


def _count(field, given, entry):
    if isinstance(given, bool) or not isinstance(given, int) or abs(given) > LARGEST_COUNT:
        example = f"{field.name} = {field.default or 2:.0f}"
        raise ValueError(f"{entry}: {shown(given)} given; it must be a whole number, as in {example}")
    return float(given)


def _minutes(field, given, entry):
    if isinstance(given, (int, float)) and not isinstance(given, bool) and abs(given) <= LARGEST_COUNT:
        return float(given) / 60.0  # the name of the entry says minutes
    return units.parse(given, "duration", entry)


def _clock(field, given, entry):
    if not isinstance(given, datetime):
        raise ValueError(f"{entry}: {shown(given)} given; it must be date and time, as in 2026-05-04T08:00:00")
    if given.tzinfo is not None:
        raise ValueError(f"{entry}: {given.isoformat()} given; it must be the clock on the wall, without a time zone")
    if not YEARS[0] <= given.year <= YEARS[1]:
        raise ValueError(f"{entry}: {given.isoformat()} given; it must be a year from {YEARS[0]} to {YEARS[1]}")
    return given


def _humidity(field, given, entry):
    if isinstance(given, str):
        return units.parse(given, "fraction", entry)
    if isinstance(given, bool) or not isinstance(given, (int, float)) or not 1 <= given <= 100:
        raise ValueError(f"{entry}: {shown(given)} given; it must be percent, from 1 to 100, as in humidity = 50")
    return given / 100.0


def _edges(field, given, entry):
    if isinstance(given, str) and given.strip().lower() in ("all", "none"):
        return given.strip().lower()
    if not isinstance(given, list) or not all(isinstance(name, str) for name in given):
        raise ValueError(f'{entry}: {shown(given)} given; it must be a list of edge names, "all" or "none"')
    return tuple(name.strip() for name in given)


def _names(field, given, entry):
    """One name of an edge, or several of which the same is said."""
    names = [given] if isinstance(given, str) else given
    if not isinstance(names, list) or not names or not all(isinstance(name, str) and name.strip() for name in names):
        raise ValueError(f'{entry}: {shown(given)} given; it must be an edge, or a list of edges, as in ["front", "left"]')
    return tuple(_name(field, name, entry) for name in names)


def _seen(field, given, entry):
    if isinstance(given, bool):
        return given
    if isinstance(given, list) and given and all(isinstance(name, str) for name in given):
        return frozenset(name.strip().lower() for name in given)
    raise ValueError(f"{entry}: {shown(given)} given; it must be true, false or a list of edge names")


def _pair(given, entry):
    if not isinstance(given, list) or len(given) != 2:
        raise ValueError(f'{entry}: {shown(given)} given; it must be two sizes, as in ["30 in", "4 in"]')
    return tuple(units.parse(size, "length", entry) for size in given)


def _place(field, given, entry):
    return _pair(given, entry)


def _points(field, given, entry):
    if not isinstance(given, list) or not 3 <= len(given) <= 200:
        raise ValueError(f"{entry}: {shown(given)} given; it must be 3 to 200 corners, each a pair of sizes")
    return tuple(_pair(point, f"{entry} {number}") for number, point in enumerate(given, 1))


def _stone(field, given, entry):
    """The text itself: what it is reckoned on is known only with the recipe."""
    if (given == 0 and not isinstance(given, bool)) or (isinstance(given, str) and given.strip() == "0"):
        return "0"
    if not isinstance(given, str) or not any(sign.isalpha() or sign == "%" for sign in given):
        raise ValueError(f'{entry}: {shown(given)} given; it must say of what, as in "1.2 kg per kg binder"')
    units.parse(given, "mass_ratio", entry)
    return given.strip()


def _recipe(field, given, entry):
    if isinstance(given, str) and given.strip():
        return given.strip()
    if isinstance(given, dict) and given:
        return given
    raise ValueError(f"{entry}: {shown(given)} given; it must be the name of a recipe or a table of parts")
