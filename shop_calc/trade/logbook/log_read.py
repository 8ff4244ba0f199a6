"""Reading the shop log: every bad row is named by line, column and reason, every good row is kept."""

from dataclasses import dataclass
from pathlib import Path

from shop_calc.trade.logbook import log_cells as cells
from shop_calc.trade.logbook.log_fields import COLUMNS, EVENTS, LAYERS, NUMBERS, Event, LogProblem
from shop_calc.trade.logbook.log_lines import header_of, lines_of, row_at
from shop_calc.trade.problems import plain

LONGEST_POUR_H = 96.0
LARGEST_FILE = 50_000_000  # bytes; a life of pours has less


@dataclass(frozen=True)
class LogRows:
    """Rows of a log file.

    Parameters
    ----------
    events : tuple of Event
        The good rows, as they stand in the file [as its fields].
    problems : tuple of LogProblem
        Rows that are not used, and why [-].
    remarks : tuple of LogProblem
        What is worth a look, though the row is used [-].

    Examples
    --------
    >>> parse_log(b"pour_id,time_iso,event\\nbench,2026-05-04T08:00,water_in\\n").events[0].event
    'water_in'

    References
    ----------
    Common practice, no source.
    """

    events: tuple
    problems: tuple
    remarks: tuple


def read_rows(path):
    """Read the rows of a log file.

    Parameters
    ----------
    path : str or path-like
        The CSV file [-].

    Returns
    -------
    LogRows
        Good rows, problems, remarks [as its fields].

    Raises
    ------
    ValueError
        When there is no such file or it cannot be read at all.

    Examples
    --------
    >>> read_rows(".")
    Traceback (most recent call last):
    ValueError: shop log: . given; that is a folder, it must be a .csv file

    References
    ----------
    Form of the file: data/README.md. CSV after RFC 4180.
    """
    path = Path(path)
    try:
        if path.exists() and not (path.is_file() or path.is_dir()):
            raise ValueError("a device or a pipe")
        if path.stat().st_size > LARGEST_FILE:
            raise ValueError(f"more than {LARGEST_FILE:,} bytes")
        data = path.read_bytes()
    except FileNotFoundError:
        raise ValueError(f"shop log: {plain(path)} given; there is no such file") from None
    except IsADirectoryError:
        raise ValueError(f"shop log: {plain(path)} given; that is a folder, it must be a .csv file") from None
    except (OSError, ValueError) as error:  # no right to read, or a name with a zero in it
        reason = getattr(error, "strerror", None) or error
        raise ValueError(f"shop log: {plain(path)} given; it cannot be read ({reason})") from None
    return parse_log(data)


def parse_log(data):
    """Read rows from the bytes of a log file.

    Parameters
    ----------
    data : bytes
        The file [-].

    Returns
    -------
    LogRows
        Good rows, problems, remarks; never an exception, whatever the bytes [as its fields].

    Examples
    --------
    >>> rows = parse_log(b"pour_id;time_iso;event;mix_temp_c\\r\\nbench;2026-05-04 08:00;water_in;16,5\\r\\n")
    >>> rows.events[0].mix_temp_c
    16.5
    >>> [str(problem) for problem in parse_log(b"pour_id,time_iso,event\\nbench,8 am,water_in\\n").problems]
    ["line 2, time_iso: '8 am' given; it must be year-month-day and time, as in 2026-05-04T08:00"]

    Notes
    -----
    Takes commas, semicolons or tabs between cells, decimal points or commas, any line ends, a byte order mark. A
    line that stops in the middle of a row is a torn row; the lines after it are read as usual.

    References
    ----------
    CSV after RFC 4180.
    """
    problems, remarks = [], []
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        reason = "the file is UTF-16 text; save it as CSV UTF-8"
        return LogRows((), (LogProblem(1, "row", reason),), ())
    lines = lines_of(data.removeprefix(b"\xef\xbb\xbf"), remarks)
    place, delimiter, names = header_of(lines, problems, remarks)
    if names is None:
        return LogRows((), tuple(problems), tuple(remarks))
    events, pours = [], {}
    while place < len(lines):
        line, (row, used) = place + 1, row_at(lines, place, delimiter, len(names))
        place += used
        if row is None or not any(cell.strip() for cell in row):
            if row is None:
                problems.append(LogProblem(line, "row", "a quote is not closed, or a cell is far too long; a torn row"))
            continue
        event = _event(dict(zip(names, row, strict=False)), line, len(row), len(names), problems)
        if event is not None and _belongs(event, pours, problems, remarks):
            events.append(event)
    return LogRows(tuple(events), tuple(problems), tuple(remarks))


def _event(row, line, given, width, problems):
    """One row as an Event, or None and its problems."""
    if given < width:
        reason = f"the row has {given} of {width} cells; it is torn, or a spreadsheet left empty cells off its end"
        problems.append(LogProblem(line, "row", reason))
        return None
    if given > width:
        reason = (
            f"the row has {given} cells, the file has {width} columns; a text or number with a comma in it stands "
            "between double quotes"
        )
        problems.append(LogProblem(line, "row", reason))
        return None
    found, values = [], {}
    for column in COLUMNS:
        cell = row.get(column, "")
        try:
            if column in NUMBERS:
                values[NUMBERS[column][0]] = cells.read_number(column, cell)
            elif column == "time_iso":
                values["time"] = cells.read_time(cell)
            elif column == "cue":
                values["cue"] = cells.read_cue(cells.read_as_text(cell.strip()))
            else:
                values[column] = cells.clean_text("", " ".join(cells.read_as_text(cell.strip()).splitlines()))
        except ValueError as error:
            found.append(LogProblem(line, column, str(error).removeprefix(": ")))
    values["event"] = values.get("event", "").lower().replace(" ", "_")
    values["layer"] = values.get("layer", "").lower()
    if not values.get("pour_id") and "pour_id" in values:
        found.append(LogProblem(line, "pour_id", "nothing given; it must say which pour the row belongs to"))
    for column, choices in (("event", EVENTS), ("layer", ("", *LAYERS))):
        if column in values and values[column] not in choices and not any(p.column == column for p in found):
            wanted = ", ".join(choice for choice in choices if choice)
            found.append(LogProblem(line, column, f"{values[column][:40]!r} given; it must be one of {wanted}"))
    problems.extend(found)
    return None if found else Event(**values, line=line)


def _belongs(event, pours, problems, remarks):
    """Whether a row fits the pour it names; the first row of a pour is water_in."""
    pour = pours.get(event.pour_id)
    if pour is None:
        if event.event != "water_in":
            reason = f"{event.event} given; the first row of pour {event.pour_id[:40]!r} must be water_in"
            problems.append(LogProblem(event.line, "event", reason))
            return False
        pours[event.pour_id] = [event.time, event.time]
        return True
    start, last = pour
    if (start.tzinfo is None) != (event.time.tzinfo is None):
        reason = "some times of this pour have an offset from UTC and some have none; write all alike"
        problems.append(LogProblem(event.line, "time_iso", reason))
        return False
    hours = (event.time - start).total_seconds() / 3600.0
    if not 0.0 <= hours <= LONGEST_POUR_H:
        reason = (
            f"{event.time:%Y-%m-%d %H:%M} given; it must be from the first water at {start:%Y-%m-%d %H:%M} to "
            f"{LONGEST_POUR_H:.0f} h after it; a new pour needs a pour_id of its own"
        )
        problems.append(LogProblem(event.line, "time_iso", reason))
        return False
    back_h = (last - event.time).total_seconds() / 3600.0
    if event.time.tzinfo is None and 0.0 < back_h <= 1.0 and event.time.hour < 4:
        reason = (
            "goes back in the night; if the clocks changed, write the offset with every time of this pour, as in "
            "2026-10-25T02:30+01:00"
        )
        remarks.append(LogProblem(event.line, "time_iso", reason))
    pour[1] = event.time
    return True
