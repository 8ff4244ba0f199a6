"""A job as the text of a job file, so that what was typed in a form can be kept and read again."""

import math
import re
from collections.abc import Mapping
from datetime import datetime

from shop_calc.trade.jobs.job import check_job
from shop_calc.trade.jobs.job_entries import shown
from shop_calc.trade.jobs.job_fields import SECTIONS

_BARE = re.compile(r"[A-Za-z0-9_-]+")
_ESCAPED = str.maketrans({"\\": "\\\\", '"': '\\"'})


def job_text(entries):
    """Write the entries of a job as TOML.

    Not for any other data: entries that no job file may have are refused, and comments of a file are lost.

    Parameters
    ----------
    entries : mapping
        Sections and entries as typed, like `Job.entries` [as typed].

    Returns
    -------
    str
        The text of a job file; `parse_job` reads the same job from it [-].

    Raises
    ------
    Problems
        With one line for each entry that is no job's.
    ValueError
        When a text has a character that cannot be seen, like a line break, or a value is none that a file can hold.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, parse_job, read_job
    >>> job = read_job(demo_job("garden_bench_top"))
    >>> print(*job_text(job.entries).splitlines()[:4], sep="\\n")
    format = 1
    name = "Garden bench top"
    <BLANKLINE>
    [piece]
    >>> parse_job(job_text(job.entries)).entries == job.entries
    True

    References
    ----------
    TOML 1.0: basic strings, tables, arrays of tables, inline tables.
    """
    check_job(entries)
    lines = [f"format = {_value(entries['format'], 'format')}", f"name = {_value(entries['name'], 'name')}"]
    for section in SECTIONS:
        if section in entries:
            lines += _table((section,), entries[section])
    return "\n".join(lines) + "\n"


def _key(name, entry):
    return name if _BARE.fullmatch(str(name)) else _text(name, entry)


def _table(way, table):
    """A part of the file: its plain entries first, then the tables below it."""
    header = ".".join(_key(name, "name of an entry") for name in way)
    if _is_rows(table):
        return [line for row in table for line in ("", f"[[{header}]]", *_entries(way, row))]
    below = [key for key, value in table.items() if len(way) == 1 and (isinstance(value, Mapping) or _is_rows(value))]
    lines = ["", f"[{header}]", *_entries(way, {key: value for key, value in table.items() if key not in below})]
    for key in below:
        lines += _table((*way, key), table[key])
    return lines


def _is_rows(value):
    return isinstance(value, list) and bool(value) and all(isinstance(row, Mapping) for row in value)


def _entries(way, table):
    place = ".".join(map(str, way))
    return [f"{_key(key, place)} = {_value(value, f'{place}.{key}')}" for key, value in table.items()]


def _value(value, entry):
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return _text(value, entry)
    if isinstance(value, int):
        return str(value)
    if isinstance(value, float) and math.isfinite(value):
        return repr(value)
    if isinstance(value, datetime):
        return value.isoformat()
    if isinstance(value, list):
        return f"[{', '.join(_value(each, entry) for each in value)}]"
    if isinstance(value, Mapping):
        inside = ", ".join(f"{_key(key, entry)} = {_value(each, f'{entry}.{key}')}" for key, each in value.items())
        return f"{{ {inside} }}" if inside else "{}"
    raise ValueError(f"{entry}: {shown(value)} given; it must be a text, a number, a date with its time, or a list of them")


def _text(text, entry):
    """A text between quotes; what a person cannot see is refused, not hidden behind an escape."""
    if not isinstance(text, str):
        raise ValueError(f"{entry}: {shown(text)} given; it must be a text")
    if any(ord(sign) < 32 or 127 <= ord(sign) < 160 or 0xD800 <= ord(sign) < 0xE000 for sign in text):
        raise ValueError(f"{entry}: {shown(text)} given; it must be one line of signs that can be seen")
    return f'"{text.translate(_ESCAPED)}"'
