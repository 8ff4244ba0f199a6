"""Adding rows to the shop log without ever touching the rows before them."""

import csv
import errno
import io
import os
import time
from contextlib import contextmanager, suppress
from datetime import datetime
from pathlib import Path

from shop_calc.trade.logbook import log_cells as cells
from shop_calc.trade.logbook.log_fields import COLUMNS, EVENTS, LAYERS, NUMBERS, REQUIRED, Event
from shop_calc.trade.logbook.log_lines import cells_between, column_names

try:
    import fcntl
except ImportError:  # Windows
    fcntl = None
    import msvcrt

TRIES, WAIT_S = 500, 0.02  # ten seconds for another writer to finish
_HEAD = 16_384  # bytes that surely hold the names of the columns
_LOCK_PLACE = 1 << 30  # a byte far behind the end, so that readers are never in the way


def append_events(path, events):
    """Add rows to a log; make the file when there is none.

    Not for changing a row: a wrong row stays, and a new one says what was wrong.

    Parameters
    ----------
    path : str or path-like
        The CSV file [-].
    events : Event or sequence of Event
        Rows in the order in which they happened [as its fields].

    Raises
    ------
    ValueError
        When a row cannot be, or the file is no shop log.
    OSError
        When the file cannot be written; then nothing was added and every earlier row is as it was.

    Examples
    --------
    >>> import tempfile
    >>> from shop_calc.trade.logbook.log_read import read_rows
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     file = Path(folder) / "log.csv"
    ...     append_events(file, Event("bench", datetime(2026, 5, 4, 8), "water_in", note="=1+1"))
    ...     (b"'=1+1" in file.read_bytes(), read_rows(file).events[0].note)
    (True, '=1+1')

    Notes
    -----
    One write at the end of the file under a lock, so that two writers never mix. A file whose last line was torn
    by a crash gets its line end first. A write that does not fit on the disk is taken back. Cells are separated
    as the file already does it.

    References
    ----------
    POSIX open with O_APPEND; CSV after RFC 4180.
    """
    events = (events,) if isinstance(events, Event) else tuple(events)
    for event in events:
        _check(event)
    if not events:
        return
    path = Path(path)
    try:
        handle = os.open(path, os.O_RDWR | os.O_CREAT | os.O_APPEND | getattr(os, "O_BINARY", 0), 0o666)
    except OSError as error:
        raise _not_written(path, error) from error
    try:
        with _locked(handle, path) as alone:
            size = os.fstat(handle).st_size
            _add(handle, path, size, _block(handle, path, size, events), alone)
    finally:
        os.close(handle)


def _check(event):
    """Refuse a row that the reader would refuse."""
    for column in ("pour_id", "recipe", "note"):
        cells.clean_text(column, getattr(event, column))
    if not event.pour_id.strip():
        raise ValueError("pour_id: nothing given; every row says which pour it belongs to")
    if not isinstance(event.time, datetime):
        raise ValueError(f"time: {event.time!r} given; it must be a date and time")
    if event.event not in EVENTS:
        raise ValueError(f"event: {event.event!r} given; it must be one of {', '.join(EVENTS)}")
    if event.layer not in ("", *LAYERS):
        raise ValueError(f"layer: {event.layer!r} given; it must be one of {', '.join(LAYERS)}")
    for column, value in (("cue", event.cue), *((name, _number(name, event)) for name in NUMBERS)):
        try:
            cells.read_cue(value) if column == "cue" else cells.read_number(column, value)
        except ValueError as error:
            raise ValueError(f"{column}: {error}") from None


def _number(column, event):
    name, _, _, factor, _ = NUMBERS[column]
    value = getattr(event, name)
    return "" if value is None else f"{float(value) / factor:.12g}"


def _row(event):
    row = {
        "pour_id": event.pour_id, "time_iso": event.time.isoformat(timespec="seconds"), "event": event.event,
        "layer": event.layer, "recipe": event.recipe, "cue": cells.read_cue(event.cue), "note": event.note,
    }  # fmt: skip
    for column in ("pour_id", "recipe", "cue", "note"):
        row[column] = cells.keep_as_text(row[column].strip())
    return row | {column: _number(column, event) for column in NUMBERS}


def _block(handle, path, size, events):
    """The bytes to add: line end of a torn line, names of the columns for a new file, the rows."""
    names, delimiter, line_end, torn = COLUMNS, ",", "\n", False
    if size:
        os.lseek(handle, 0, os.SEEK_SET)
        head = os.read(handle, _HEAD)
        os.lseek(handle, -1, os.SEEK_END)
        torn = os.read(handle, 1) not in (b"\n", b"\r")
        names, delimiter, line_end = _form(head, path)
    text = io.StringIO()
    writer = csv.writer(text, delimiter=delimiter, lineterminator=line_end)
    if not size:
        writer.writerow(names)
    for event in events:
        row = _row(event)
        lost = [column for column, cell in row.items() if cell and column not in names]
        if lost:
            raise ValueError(f"{lost[0]}: {row[lost[0]]!r} given; the log {path.name} has no such column, leave it out")
        if delimiter == ";":  # such a file is read where numbers have a comma
            row |= {column: row[column].replace(".", ",") for column in NUMBERS}
        writer.writerow([row.get(name, "") for name in names])
    return ((line_end if torn else "") + text.getvalue()).encode("utf-8")


def _form(head, path):
    """Columns, delimiter and line end of a file that exists."""
    text = head.removeprefix(b"\xef\xbb\xbf").decode("utf-8", errors="replace")
    lines = [line for line in text.splitlines() if line.strip()]
    if lines and lines[0].lower().startswith("sep="):
        lines = lines[1:]
    delimiter = cells_between(lines[0]) if lines else ","
    names = column_names(lines[0], delimiter) if lines else []
    if any(name not in names for name in REQUIRED):
        raise ValueError(f"shop log: {path} given; it is no shop log, it must have the columns {', '.join(REQUIRED)}")
    return names, delimiter, "\r\n" if b"\r\n" in head else "\n"


def _add(handle, path, size, block, alone):
    """One write; what did not fit is taken back."""
    try:
        os.lseek(handle, 0, os.SEEK_END)
        written = os.write(handle, block)
        if written != len(block):
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        with suppress(OSError):  # not every device can be told to write through
            os.fsync(handle)
    except OSError as error:
        if alone:  # nobody else has written since: the file may be cut back to what it was
            with suppress(OSError):
                if os.fstat(handle).st_size > size:
                    os.ftruncate(handle, size)
        raise _not_written(path, error) from error


def _not_written(path, error):
    reason = error.strerror or str(error)
    hint = "; close it in the spreadsheet" if isinstance(error, PermissionError) else ""
    return OSError(
        error.errno,
        f"shop log: nothing was added to {path} ({reason}{hint}); every earlier row is as it was",
    )


@contextmanager
def _locked(handle, path):
    """Hold the file alone; False where the file system knows no locks, and one write must do."""
    for _ in range(TRIES):
        try:
            _lock(handle)
        except (BlockingIOError, PermissionError):
            time.sleep(WAIT_S)
            continue
        except OSError:
            yield False
            return
        try:
            yield True
        finally:
            with suppress(OSError):
                _unlock(handle)
        return
    raise OSError(errno.EAGAIN, f"shop log: nothing was added to {path} (another program holds it); try again")


def _lock(handle):
    if fcntl is not None:
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    else:
        os.lseek(handle, _LOCK_PLACE, os.SEEK_SET)
        msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)


def _unlock(handle):
    if fcntl is not None:
        fcntl.flock(handle, fcntl.LOCK_UN)
    else:
        os.lseek(handle, _LOCK_PLACE, os.SEEK_SET)
        msvcrt.locking(handle, msvcrt.LK_UNLCK, 1)
