"""A number of the check tables and ours, side by side, with what kind of number it is said plainly."""

import csv
import re
from functools import cache

from shop_calc.defaults import data_folder
from shop_calc.lesson.page import sign
from shop_calc.lesson.table import table

# What a mark allows us to call a number. Only what was read in its named source is published.
CALLED = {
    "read": "published",
    "unnamed": "in print, publisher not recorded",
    "memory": "recalled, not read again",
    "derived": "worked out",
    "practice": "common practice",
    "judgement": "our judgement",
    "invented": "invented",
}


@cache
def book_rows():
    """Read the check tables once.

    Returns
    -------
    dict of str to dict
        Rows of data/published by their id [-].

    Examples
    --------
    >>> book_rows()["AV-1a"]["expected"]
    '3.1'

    References
    ----------
    Common practice, no source.
    """
    found = {}
    for path in sorted((data_folder() / "published").glob("*.csv")):
        with open(path, newline="", encoding="utf-8") as file:
            found.update({row["id"]: row for row in csv.DictReader(file) if "expected" in row})
    return found


def _decimals(text):
    """Decimals of a printed number; ours is shown one finer and no more."""
    return len(text.partition(".")[2])


def _reason(row):
    """Why the two may differ, where that is more than rounding in print."""
    words = row["tolerance_reason"]
    plain = words.startswith(("half the last digit", "exact arithmetic")) and ";" not in words
    return "" if plain else re.sub(r"\b(in|ft|yd|m)([23])\b", lambda unit: sign(unit.group()), words)


def _printed(sum_as_typed):
    """A sum of the check tables as a page prints it."""
    text = sum_as_typed.replace(" x ", " × ").replace("kappa ", "κ ")
    return re.sub(r"\^([234])", lambda power: "²³⁴"[int(power.group(1)) - 2], text)


def _origin(row):
    """Where a number comes from, and what there is to say about it."""
    at = _printed(row["locator"]) if row["locator"] != "not recorded" else ""
    if row["mark"] == "derived":
        return "Worked out", [at]
    where = f"{row['source']}, {at}" if at else row["source"]
    return (f"From memory of {where}" if row["mark"] == "memory" else where), [_reason(row)]


def book(*lines):
    """Lay our numbers beside those of the check tables.

    Parameters
    ----------
    *lines : tuple of (str, str, float)
        What it is, the id of its row, and our number in the unit of the row [unit of the row].

    Returns
    -------
    Table
        What it is, their number, ours, the difference; under it the sources by name [-].

    Raises
    ------
    ValueError
        When there is no such row.

    Examples
    --------
    >>> book(("cement", "AV-1a", 3.1034)).rows
    (('cement', '3.1 ft³', '3.10 ft³', '0', 'published'),)

    References
    ----------
    The tables of data/published say it for each row.
    """
    rows, sources = [], {}
    for words, id, ours in lines:
        if id not in book_rows():
            raise ValueError(f"row: {id!r} given; data/published has no such id")
        row = book_rows()[id]
        places, unit = _decimals(row["expected"]) + 1, sign(row["unit"])
        off = round(float(ours) - float(row["expected"]), places) + 0.0  # the sum turns -0 into 0
        theirs, mine = f"{row['expected']} {unit}".strip(), f"{float(ours):.{places}f} {unit}".strip()
        rows.append((words, theirs, mine, f"{off:+.{places}f}" if off else "0", CALLED[row["mark"]]))
        where, why = _origin(row)
        sources.setdefault(where, {}).update(dict.fromkeys(filter(None, why)))
    caption = "\n".join(
        f"{where[:1].upper()}{where[1:]}{': ' + '; '.join(why) if why else ''}."
        for where, why in sources.items()
        if why or where != "Worked out"  # which the last column says already
    )
    return table(("what", "theirs", "ours", "difference", "their number is"), rows, caption)
