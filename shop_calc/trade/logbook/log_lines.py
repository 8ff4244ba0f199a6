"""A log file cut into its header and its rows: ends of lines, what stands between cells, cells with line breaks, torn rows."""

import csv
import re

from shop_calc.trade.logbook.log_fields import COLUMNS, REQUIRED, LogProblem

JOINED_LINES = 20  # a cell with line breaks, as spreadsheets write them, is looked for over so many lines
_LINE_END = re.compile(rb"\r\n|\n|\r")


def lines_of(data, remarks):
    """Give the lines as text; a line that is not UTF-8 is read as Windows text, and said.

    Parameters
    ----------
    data : bytes
        The file, without a byte order mark [-].
    remarks : list of LogProblem
        Grows by what is worth a look [-].

    Returns
    -------
    list of str
        The lines without their ends [-].

    Examples
    --------
    >>> lines_of(b"pour_id\\r\\nbench", [])
    ['pour_id', 'bench']

    References
    ----------
    Common practice, no source.
    """
    lines = []
    for number, raw in enumerate(_LINE_END.split(data), 1):
        try:
            lines.append(raw.decode("utf-8"))
        except UnicodeDecodeError:
            lines.append(raw.decode("cp1252", errors="replace"))
            remarks.append(LogProblem(number, "row", "not UTF-8; read as Windows text"))
    return lines


def cells_between(header):
    """Find what stands between the cells of a header line.

    Parameters
    ----------
    header : str
        The line with the names of the columns [-].

    Returns
    -------
    str
        Comma, semicolon or tab [-].

    Examples
    --------
    >>> cells_between("pour_id;time_iso;event")
    ';'

    References
    ----------
    Common practice, no source.
    """
    return max(",;\t", key=header.count)


def column_names(header, delimiter):
    """Read the names of the columns.

    Parameters
    ----------
    header : str
        The line with the names [-].
    delimiter : str
        What stands between them [-].

    Returns
    -------
    list of str
        Names without blanks, in lower case [-].

    Examples
    --------
    >>> column_names("Pour_ID, time_iso", ",")
    ['pour_id', 'time_iso']

    References
    ----------
    Common practice, no source.
    """
    try:
        row = next(csv.reader([header], delimiter=delimiter), [])
    except csv.Error:
        return []
    return [name.strip().lower() for name in row]


def header_of(lines, problems, remarks):
    """Find where the rows begin, what stands between cells, and the names of the columns.

    Parameters
    ----------
    lines : list of str
        As `lines_of` gives them [-].
    problems, remarks : list of LogProblem
        Grow by what is wrong, by what is worth a look [-].

    Returns
    -------
    (int, str, list of str or None)
        Place of the first row, delimiter, names; names are None when the file is no log [-].

    Examples
    --------
    >>> header_of(["pour_id;time_iso;event"], [], [])
    (1, ';', ['pour_id', 'time_iso', 'event'])

    References
    ----------
    CSV after RFC 4180.
    """
    place = next((number for number, line in enumerate(lines) if line.strip()), None)
    if place is None:
        problems.append(LogProblem(1, "row", "the file is empty; it must begin with the names of the columns"))
        return 0, ",", None
    marker = re.fullmatch(r"sep=([,;\t])\s*", lines[place])  # a first line that some spreadsheets want
    if marker and place + 1 < len(lines):
        place += 1
    delimiter = marker[1] if marker else cells_between(lines[place])
    names = column_names(lines[place], delimiter)
    missing = [name for name in REQUIRED if name not in names]
    double = sorted({name for name in names if name and names.count(name) > 1})
    if missing:
        problems.append(LogProblem(place + 1, missing[0], f"no such column; the file must have {', '.join(REQUIRED)}"))
    if double:
        problems.append(LogProblem(place + 1, double[0], "the column stands twice"))
    if missing or double:
        return 0, delimiter, None
    for name in names:
        if name and name not in COLUMNS:
            remarks.append(LogProblem(place + 1, name[:40], "a column that the log does not know; not used"))
    return place + 1, delimiter, names


def row_at(lines, place, delimiter, width):
    """Cut the row at a line into its cells.

    Parameters
    ----------
    lines : list of str
        As `lines_of` gives them [-].
    place : int
        Where the row begins [-].
    delimiter : str
        What stands between the cells [-].
    width : int
        How many columns the file has [-].

    Returns
    -------
    (list of str or None, int)
        Its cells, None for a quote that never closes; how many lines it took [-].

    Examples
    --------
    >>> row_at(['bench,"a note', 'on two lines"'], 0, ",", 2)
    (['bench', 'a note\\non two lines'], 2)

    References
    ----------
    CSV after RFC 4180.
    """
    text = lines[place]
    for used in range(1, JOINED_LINES + 1):
        if used > 1:
            if place + used > len(lines) or _stands_alone(lines[place + used - 1], delimiter, width):
                break
            text = f"{text}\n{lines[place + used - 1]}"
        if text.count('"') % 2 == 0:
            return _cells(text, delimiter), used
    return None, 1


def _stands_alone(text, delimiter, width):
    """Whether a line is a whole row by itself, so that the one before it must be torn."""
    return text.count('"') % 2 == 0 and len(_cells(text, delimiter) or ()) == width


def _cells(text, delimiter):
    try:
        return next(csv.reader(text.splitlines(keepends=True) if "\n" in text else [text], delimiter=delimiter), [])
    except csv.Error:
        return None
