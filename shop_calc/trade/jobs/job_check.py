"""A job, checked entry by entry; every problem named at once."""

import difflib
import itertools
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType

from shop_calc import defaults
from shop_calc.trade.jobs.file_kind import RECIPE_KINDS, file_kind
from shop_calc.trade.jobs.job_entries import LONGEST_NAME, entry_value, shown
from shop_calc.trade.jobs.job_fields import (
    ALL_SIZES,
    FIELDS,
    OPTIONAL_SIZES,
    OWN_READERS,
    REQUIRED_SECTIONS,
    SECTIONS,
    SIZES,
)
from shop_calc.trade.jobs.price_entries import read_costs
from shop_calc.trade.problems import Collector

MOST_ROWS = {"piece.cutout": 30, "piece.drop": 30, "room": 1000}  # judgement: more are a slip, and strips take long


@dataclass(frozen=True)
class Job:
    """A checked job; numbers in SI, hours as given.

    Parameters
    ----------
    name : str
        What the piece is called [-].
    piece, layers, mix, materials, mixer, day, place, finish, log : mapping of str to value
        The sections with defaults filled in, see job_fields.FIELDS [SI].
    cost : mapping of str to value
        Currency and prices, see price_entries.Price [currency].
    drops : tuple of mapping
        The drop edges, each with the names of its edges [SI].
    cutouts : tuple of mapping
        The openings [SI].
    rooms : tuple of mapping
        Rows of the room, rising in time [SI].
    entries : mapping
        The file as it was written, for saving it again [as typed].
    assumed : frozenset of str
        Entries that were left out and got their default [-].
    folder : pathlib.Path or None
        Folder of the file; None when the job was not read from one [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> read_job(demo_job("garden_bench_top")).piece["thickness"]
    0.0381

    References
    ----------
    Common practice, no source.
    """

    name: str
    piece: MappingProxyType
    layers: MappingProxyType
    mix: MappingProxyType
    materials: MappingProxyType
    mixer: MappingProxyType
    day: MappingProxyType
    place: MappingProxyType
    finish: MappingProxyType
    log: MappingProxyType
    cost: MappingProxyType
    drops: tuple
    cutouts: tuple
    rooms: tuple
    entries: MappingProxyType
    assumed: frozenset
    folder: Path | None = None


def check_job(entries):
    """Check the entries of a job, as a form or a file gives them.

    Parameters
    ----------
    entries : mapping
        Sections and entries as typed [as typed].

    Returns
    -------
    Job
        The checked job [SI].

    Raises
    ------
    Problems
        With one line for each problem.

    Examples
    --------
    >>> try:
    ...     check_job({"format": 2})
    ... except ValueError as error:
    ...     print(str(error).splitlines()[0])
    format: 2 given; it must be 1, the only format there is

    References
    ----------
    Form of the file: data/README.md.
    """
    found, assumed = Collector(), set()
    kind, name = file_kind(entries), entries.get("name", "")
    if kind in RECIPE_KINDS:
        called = f" ({shown(name)})" if isinstance(name, str) and name.strip() else ""
        found.say(
            f"this is a {kind}{called}, not a job: a job has [piece], [mix], [day] and [[room]]; its [mix] gives the name of a "
            f"{kind} as recipe, or [mix.recipe] has the entries that stand here"
        )
        found.raise_if_any()
    if entries.get("format") != 1 or isinstance(entries.get("format"), bool):
        found.add(
            "format", shown(entries["format"]) if "format" in entries else "nothing", "1, the only format there is"
        )
    if not isinstance(name, str) or not name.strip() or len(name) > LONGEST_NAME:
        found.add("name", shown(name) if name else "nothing", f"some words of at most {LONGEST_NAME} characters")
    _unknown(found, "", entries, ("format", "name", *SECTIONS))
    sections = {}
    for section in SECTIONS:
        if section in OWN_READERS:
            continue
        table = entries.get(section, {})
        if section not in entries and section in REQUIRED_SECTIONS:
            found.say(f"[{section}]: nothing given; the file must have this part")
            continue
        sections[section] = _section(found, assumed, section, section, table, skip=("drop", "cutout"))
    piece = entries.get("piece", {})
    piece = piece if isinstance(piece, dict) else {}
    drops = piece.get("drop", [])
    if isinstance(drops, list):
        drops = _rows(found, assumed, "piece.drop", drops)
    else:  # one drop needs no double brackets
        drops = [_section(found, assumed, "piece.drop", "piece.drop", drops)]
    cutouts = _rows(found, assumed, "piece.cutout", piece.get("cutout", []))
    rooms = _rows(found, assumed, "room", entries.get("room", []))
    sections["cost"] = read_costs(found, entries.get("cost", {}))
    if not rooms and entries.get("room", []) == []:
        found.say("[[room]]: nothing given; the file must have at least one row for the air")
    _sizes(found, "piece", piece, sections.get("piece", {}).get("outline"))
    for number, (row, values) in enumerate(zip(_tables(piece.get("cutout", [])), cutouts, strict=False), 1):
        _sizes(found, f"piece.cutout {number}", row, values.get("shape"))
    _drum_only(found, entries.get("mixer", {}), sections.get("mixer", {}).get("vessel"))
    _room_order(found, rooms, sections.get("day", {}).get("water_in"))
    found.raise_if_any()
    for entry in (
        "sand_temp",
        "stone_temp",
        "liquids_temp",
    ):  # they lie beside the powder unless somebody measured them
        if f"materials.{entry}" in assumed:
            sections["materials"][entry] = sections["materials"]["powder_temp"]
    return Job(
        name.strip(),
        **{section: MappingProxyType(values) for section, values in sections.items()},
        drops=tuple(MappingProxyType(row) for row in drops),
        cutouts=tuple(MappingProxyType(row) for row in cutouts),
        rooms=tuple(MappingProxyType(row) for row in rooms),
        entries=MappingProxyType(dict(entries)),
        assumed=frozenset(assumed),
    )


def _unknown(found, entry, table, known):
    for key in table:
        if key in known:
            continue
        near = difflib.get_close_matches(str(key), known, n=1, cutoff=0.6)
        hint = f"did you mean {near[0]!r}? " if near else ""
        place = f"[{entry}]" if entry else "the file"
        found.say(
            f"{entry + '.' if entry else ''}{str(key)[:60]}: no such entry; {hint}{place} may have: {', '.join(known)}"
        )


def _section(found, assumed, section, entry, table, skip=()):
    """Check one table; returns its values in SI, defaults filled in."""
    if isinstance(table, list) and table and all(isinstance(row, dict) for row in table):
        found.say(f"[[{entry}]]: double brackets given; write [{entry}] in single ones, there can be one")
        return {}
    if not isinstance(table, dict):
        found.add(f"[{entry}]", shown(table), "a part of the file with entries below it")
        return {}
    fields = FIELDS[section]
    _unknown(found, entry, table, (*(field.name for field in fields), *(skip if section == "piece" else ())))
    values = {}
    for field in fields:
        path = f"{entry}.{field.name}"
        if field.name in table:
            with found.catch(path):
                values[field.name] = entry_value(field, table[field.name], path)
        elif field.required:
            found.say(f"{path}: nothing given; it must be there: {field.words}")
        elif field.name in ALL_SIZES:
            values[field.name] = None  # whether the outline needs it is asked in _sizes
        else:
            assumed.add(path)
            values[field.name] = defaults.si(field.row) if field.row and field.default is None else field.default
    return values


def _rows(found, assumed, section, rows):
    if not isinstance(rows, list):
        found.say(f"[[{section}]]: one table given; write it between double brackets, one for each row")
        return []
    most = MOST_ROWS[section]
    if len(rows) > most:
        found.say(f"[[{section}]]: {len(rows):,} rows given; it must be at most {most:,}")
    return [
        _section(found, assumed, section, f"{section} {number}", row)
        for number, row in enumerate(rows[:most], 1)
    ]


def _tables(rows):
    return [row if isinstance(row, dict) else {} for row in rows] if isinstance(rows, list) else []


def _sizes(found, entry, table, outline):
    """An outline has exactly the sizes it needs."""
    if outline not in SIZES:
        return
    for size in SIZES[outline]:
        if size not in table:
            found.say(f"{entry}.{size}: nothing given; {outline!r} needs {', '.join(SIZES[outline])}")
    for size in ALL_SIZES:
        if size in table and size not in (*SIZES[outline], *OPTIONAL_SIZES.get(outline, ())):
            found.say(
                f"{entry}.{size}: {shown(table[size])} given; a {outline} has no such size, "
                f"it needs {', '.join(SIZES[outline])}"
            )


def _drum_only(found, table, vessel):
    """A rating is no size of a bucket; left alone it would be passed over without a word."""
    for entry in ("rated", "drum_share"):
        if vessel not in (None, "drum") and isinstance(table, dict) and entry in table:
            found.say(
                f"mixer.{entry}: {shown(table[entry])} given; only a drum has that, for {vessel} give usable, "
                "what it mixes without spilling"
            )


def _room_order(found, rooms, water_in):
    times = [row["from"] for row in rooms if "from" in row]
    for earlier, later in itertools.pairwise(times):
        if later <= earlier:
            found.say(
                f"room.from: {later:%Y-%m-%d %H:%M} stands after {earlier:%Y-%m-%d %H:%M}; rows must rise in time"
            )
    if water_in is not None and times and times[0] > water_in:
        found.say(
            f"room 1.from: {times[0]:%Y-%m-%d %H:%M} given; the first row must start at or before the first water, "
            f"{water_in:%Y-%m-%d %H:%M}"
        )
