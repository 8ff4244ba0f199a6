"""Lesson 09: a job as a short form of texts, and the texts as entries of a job again; nothing typed is evaluated."""

import copy
from collections.abc import Mapping
from datetime import datetime, timedelta

from shop_calc.trade.jobs.job_fields import OPTIONAL_SIZES, SIZES

SIZE_TEXTS = ("length", "width", "diameter", "notch_length", "notch_width", "notch_at")
# Texts of the form, and where each stands in the file.
PLACES = {
    "name": ("", "name"),
    "outline": ("piece", "outline"),
    **{size: ("piece", size) for size in SIZE_TEXTS},
    "thickness": ("piece", "thickness"),
    "exposed": ("piece", "exposed"),
    "face": ("layers", "face"),
    "recipe": ("mix", "recipe"),
    "stone": ("mix", "stone"),
    "water_in": ("day", "water_in"),
    "wanted_mix_temp": ("day", "wanted_mix_temp"),
    "hands": ("day", "hands"),
}
ROOM = "room"
_ROW = ("from", "air", "humidity", "wind")
_DATE_TIMES = ("%Y-%m-%d %H:%M", "%Y-%m-%dT%H:%M", "%Y-%m-%dT%H:%M:%S")
_LONGEST_COUNT = 6


def texts_of(entries):
    """Write what the short form shows of a job.

    Parameters
    ----------
    entries : mapping
        Sections and entries as typed, like `Job.entries` [as typed].

    Returns
    -------
    dict of str to str
        A text a field; empty where the job says nothing [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> texts = texts_of(read_job(demo_job("garden_bench_top")).entries)
    >>> texts["exposed"], texts["room"].splitlines()[1]
    ('front, back, left, right', '20:00, 62 F, 60 %, 0 mph')

    References
    ----------
    Form of the file: data/README.md.
    """
    texts = {}
    for field, (section, entry) in PLACES.items():
        texts[field] = _text(_at(entries, section).get(entry, ""))
    texts[ROOM] = _room_text(entries.get("room", []), _at(entries, "day").get("water_in"))
    return texts


def _at(entries, section):
    table = entries.get(section, {}) if section else entries
    return table if isinstance(table, Mapping) else {}


def _text(value):
    if isinstance(value, datetime):
        return f"{value:%Y-%m-%d %H:%M}"
    if isinstance(value, Mapping):
        return "as in the file"
    return ", ".join(map(str, value)) if isinstance(value, list) else str(value)


def _room_text(rows, water_in):
    lines, last = [], None
    for row in rows if isinstance(rows, list) else []:
        start, humidity = row.get("from", ""), row.get("humidity", "")
        near = isinstance(start, datetime) and _next_at(last or _first(water_in), start.strftime("%H:%M"), last) == start
        when = f"{start:%H:%M}" if near else _text(start)
        percent = f"{humidity} %" if isinstance(humidity, (int, float)) else str(humidity)
        lines.append(", ".join((when, _text(row.get("air", "")), percent, _text(row.get("wind", "")))))
        last = start if isinstance(start, datetime) else last
    return "\n".join(lines)


def _first(water_in):
    return water_in if isinstance(water_in, datetime) else None


def entries_of(texts, base):
    """Put the texts of the short form over a job, as entries to be checked.

    What the form does not show (openings, prices, temperatures of the materials and the like) stays as it is.

    Parameters
    ----------
    texts : dict of str to str
        Like those of `texts_of` [-].
    base : mapping
        The job to start from [as typed].

    Returns
    -------
    dict
        Entries for `check_job`, which says everything that is wrong with them [as typed].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import check_job, demo_job, read_job
    >>> base = read_job(demo_job("garden_bench_top")).entries
    >>> entries_of(texts_of(base), base) == dict(base)
    True
    >>> check_job(entries_of({**texts_of(base), "length": "2 m"}, base)).piece["length"]
    2.0

    References
    ----------
    Form of the file: data/README.md.
    """
    entries = copy.deepcopy(dict(base))
    before = texts_of(base)
    for field, (section, entry) in PLACES.items():
        text = texts[field].strip()
        if text == before[field].strip():
            continue  # not touched: as the file wrote it
        table = entries.setdefault(section, {}) if section else entries
        if text:
            table[entry] = _READ.get(field, str)(text)
        else:
            table.pop(entry, None)
    _only_sizes(entries.get("piece", {}))
    water_in = _first(_at(entries, "day").get("water_in"))
    moved = texts["water_in"].strip() != before["water_in"].strip() and water_in is not None
    if moved or texts[ROOM].strip() != before[ROOM].strip():  # the clock times of the room go with the day
        entries["room"] = _rows(texts[ROOM], water_in)
        if not entries["room"]:
            del entries["room"]
    return entries


def _only_sizes(piece):
    """Drop the sizes of the outline that stood there before; the form hides them."""
    wanted = SIZES.get(str(piece.get("outline", "")))
    if wanted is not None:
        for size in {*SIZE_TEXTS, "points", "corner_radius"} - {*wanted, *OPTIONAL_SIZES.get(piece["outline"], ())}:
            piece.pop(size, None)


def _edges(text):
    return text if text.lower() in ("all", "none") else [name.strip() for name in text.split(",") if name.strip()]


def _date_time(text):
    for form in _DATE_TIMES:
        try:
            return datetime.strptime(text, form)
        except ValueError:
            continue
    return text


def _count(text):
    return int(text) if text.isascii() and text.isdigit() and len(text) < _LONGEST_COUNT else text


def _stone(text):
    return 0 if text == "0" else text


_READ = {"exposed": _edges, "water_in": _date_time, "hands": _count, "stone": _stone}


def _rows(text, water_in):
    rows, last = [], None
    for line in text.splitlines():
        if not line.strip():
            continue
        parts = [part.strip() for part in line.split(",", len(_ROW) - 1)]
        row = {name: part for name, part in zip(_ROW, parts, strict=False) if part}
        if "from" in row:
            row["from"] = _next_at(last or water_in, row["from"], last)
            last = row["from"] if isinstance(row["from"], datetime) else last
        if "humidity" in row:
            row["humidity"] = _percent(row["humidity"])
        rows.append(row)
    return rows


def _next_at(earlier, text, last):
    """A clock time alone is of the day of the first water, or of the next one when it has passed since the row before."""
    try:
        clock = datetime.strptime(text, "%H:%M")
    except ValueError:
        return _date_time(text)
    if earlier is None:
        return text
    found = earlier.replace(hour=clock.hour, minute=clock.minute, second=0, microsecond=0)
    if last is None:
        return earlier if found == earlier.replace(second=0, microsecond=0) else found
    return found if found > last else found + timedelta(days=1)


def _percent(text):
    number = text.removesuffix("%").strip()
    try:
        value = float(number)
    except ValueError:
        return text
    return int(value) if value.is_integer() and abs(value) < 1e6 else value if number == text else text
