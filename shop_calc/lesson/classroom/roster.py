"""The list of a class: a code for each student, a name where one is wanted."""

import csv
import io
from dataclasses import dataclass
from pathlib import Path

from shop_calc.lesson.draw import clean_code
from shop_calc.trade.problems import Problems

LONGEST = 200  # judgement: a code or a name longer than this is a slip of the hand
MOST = 2000  # judgement: more rows than this are no class
LARGEST = 2_000_000  # bytes; so many rows of the longest codes and names are no larger


@dataclass(frozen=True)
class Student:
    """One student.

    Parameters
    ----------
    code : str
        The code that draws the numbers, as typed [-].
    name : str
        Only for the print; may be empty [-].

    Examples
    --------
    >>> Student("bench 1").label, Student("bench 1", "Left bench").label
    ('bench 1', 'bench 1 · Left bench')

    References
    ----------
    Common practice, no source.
    """

    code: str
    name: str = ""

    @property
    def label(self):
        """Code and name, as they stand over a sheet."""
        return f"{self.code} · {self.name}" if self.name else self.code


def roster(rows):
    """Check a list of codes and names.

    Parameters
    ----------
    rows : sequence of (str, str)
        Code and name of each student [-].

    Returns
    -------
    tuple of Student
        In the order of the list [-].

    Raises
    ------
    ValueError
        When a code is missing, too long, or the same as another one; all of them are said at once.

    Examples
    --------
    >>> roster([("bench 1", ""), ("bench 2", "Left bench")])[1].name
    'Left bench'

    References
    ----------
    Common practice, no source.
    """
    return _checked([(place, code, name) for place, (code, name) in enumerate(rows, 1)])


def _checked(rows):
    lines, seen, students = [], {}, []
    for place, code, name in rows:
        code, name = " ".join(str(code).split()), " ".join(str(name or "").split())
        own = clean_code(code)
        if not own:
            lines.append(f"row {place}: no code given; each student needs one, any text")
        elif len(code) > LONGEST or len(name) > LONGEST:
            lines.append(f"row {place}: {max(len(code), len(name))} letters given; at most {LONGEST}")
        elif own in seen:
            lines.append(f"row {place}: code {code!r} given; it draws the same numbers as the code of row {seen[own]}")
        else:
            seen[own] = place
            students.append(Student(code, name))
    if not rows:
        lines.append("roster: no student in it")
    if len(rows) > MOST:
        lines.append(f"roster: {len(rows)} rows given; at most {MOST}")
    if lines:
        raise Problems(lines)
    return tuple(students)


def _text(raw):
    """The file as text, however a spreadsheet saved it."""
    if raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        return raw.decode("utf-16", errors="replace")
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        return raw.decode("cp1252", errors="replace")


def read_roster(path):
    """Read the list of a class from a CSV file.

    Parameters
    ----------
    path : str or Path
        A file with a column `code`, and if wanted a column `name`; other columns are left alone [-].

    Returns
    -------
    tuple of Student
        In the order of the file [-].

    Raises
    ------
    ValueError
        When the file cannot be read, has no column `code`, or a row is wrong; all wrong rows are said at once.

    Examples
    --------
    >>> import tempfile
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     path = Path(folder) / "class.csv"
    ...     _ = path.write_text("name;code\\nLeft bench;A-1\\n;A-2\\n")
    ...     [student.label for student in read_roster(path)]
    ['A-1 · Left bench', 'A-2']

    References
    ----------
    Common practice, no source: comma, semicolon or tab, as spreadsheets save it.
    """
    path = Path(path)
    try:
        if path.exists() and not (path.is_file() or path.is_dir()):
            raise ValueError(f"roster: {path} given; that is a device or a pipe, it must be a .csv file")
        with open(path, "rb") as file:
            raw = file.read(LARGEST + 1)
        if len(raw) > LARGEST:
            raise ValueError(f"roster: {path} given; it has more than {LARGEST:,} bytes, that is no list of a class")
        text = _text(raw)
    except OSError as error:
        raise ValueError(f"roster: {path} given; it cannot be read ({error.strerror})") from None
    first = text.splitlines()[0] if text.strip() else ""
    between = max(",;\t", key=first.count)
    try:
        rows = list(csv.reader(io.StringIO(text, newline=""), delimiter=between))
    except csv.Error as error:
        raise ValueError(f"roster: {path} given; it is no CSV file ({error})") from None
    header = [cell.strip().casefold() for cell in rows[0]] if rows else []
    if "code" not in header:
        raise ValueError(f"roster: {path} given; its first row must name a column 'code', and may name a column 'name'")
    at_code, at_name = header.index("code"), header.index("name") if "name" in header else None
    filled = [(place, row) for place, row in enumerate(rows[1:], 2) if any(cell.strip() for cell in row)]
    return _checked([(place, _cell(row, at_code), _cell(row, at_name)) for place, row in filled])


def _cell(row, at):
    return row[at] if at is not None and at < len(row) else ""
