"""The one table of defaults, bands, ranges and messages: data/defaults.csv."""

import csv
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from shop_calc import units

_PACKAGE = Path(__file__).parent

# Units of the table that are not SI already, with the unit the calculations use. Hours and °C stay as they are.
_SI_UNITS = {
    "kJ/mol": "J/mol",
    "psi": "Pa",
    "km/h": "m/s",
    "mm": "m",
    "L": "m3",
    "lb": "kg",
    "min": "h",
    "K": "delta_K",
}


@dataclass(frozen=True)
class Default:
    """One row of the table, in the unit of the table.

    Parameters
    ----------
    name : str
        Short name [-].
    label : str
        What it is, in words [-].
    value : float
        Default [unit].
    low, high : float or None
        5 % and 95 % ends of its band over many days, or the usual working range [unit].
    minimum, maximum : float or None
        What an entry may be at all [unit].
    unit : str
        Unit of the numbers, as units.convert reads it [-].
    mark, source : str
        Origin of the default [-].
    used_by : str
        The part of the job that uses it [-].
    message : str
        A few words for a person [-].

    Examples
    --------
    >>> get("face_thickness").value
    6.35

    References
    ----------
    Common practice, no source.
    """

    name: str
    label: str
    value: float
    low: float | None
    high: float | None
    minimum: float | None
    maximum: float | None
    unit: str
    mark: str
    source: str
    used_by: str
    message: str


def data_folder():
    """Find the data: the checkout's own folder, or the copy inside an installed wheel.

    Returns
    -------
    pathlib.Path
        Folder with defaults.csv [-].

    Examples
    --------
    >>> (data_folder() / "defaults.csv").name
    'defaults.csv'

    References
    ----------
    Common practice, no source.
    """
    checkout = _PACKAGE.parent / "data"
    if (checkout / "defaults.csv").is_file() and (_PACKAGE.parent / "pyproject.toml").is_file():
        return checkout  # an editable install may hold a stale copy of the packaged data
    return _PACKAGE / "_data"


@cache
def table():
    """Read the whole table once.

    Returns
    -------
    dict of str to Default
        All rows by name [-].

    Examples
    --------
    >>> table()["strip_pr_low"].unit
    'psi'

    References
    ----------
    Common practice, no source.
    """
    rows = {}
    with open(data_folder() / "defaults.csv", newline="", encoding="utf-8") as file:
        for row in csv.DictReader(file):
            numbers = {
                key: float(row[key]) if row[key] else None for key in ("value", "low", "high", "minimum", "maximum")
            }
            rows[row["name"]] = Default(**{**row, **numbers})
    return rows


def get(name):
    """Look up one default.

    Parameters
    ----------
    name : str
        Name in the table [-].

    Returns
    -------
    Default
        The row [-].

    Raises
    ------
    ValueError
        When the table has no such name.

    Examples
    --------
    >>> get("set_exponent").value
    7.0

    References
    ----------
    Common practice, no source.
    """
    try:
        return table()[name]
    except KeyError:
        raise ValueError(f"default: {name!r} given; the table data/defaults.csv has no such name") from None


@cache
def si(name):
    """Give the default in SI.

    Parameters
    ----------
    name : str
        Name in the table [-].

    Returns
    -------
    float
        Value in the SI unit of its kind; hours stay hours, °C stays °C [SI unit].

    Examples
    --------
    >>> round(si("first_steel_pr_low"))
    413685

    References
    ----------
    Common practice, no source.
    """
    row = get(name)
    return _in_si(row.value, row.unit)


@cache
def si_band(name):
    """Give the low end, the default and the high end in SI.

    Parameters
    ----------
    name : str
        Name in the table [-].

    Returns
    -------
    tuple of float
        Low, default, high; all three the default where the table gives no band [SI unit].

    Examples
    --------
    >>> si_band("activation_energy")
    (28000.0, 36000.0, 47000.0)

    References
    ----------
    Common practice, no source.
    """
    row = get(name)
    ends = (row.value if end is None else end for end in (row.low, row.value, row.high))
    return tuple(_in_si(end, row.unit) for end in ends)


def si_unit(name):
    """Say in which unit `si` gives a default.

    Parameters
    ----------
    name : str
        Name in the table [-].

    Returns
    -------
    str
        The unit, as units.convert reads it [-].

    Examples
    --------
    >>> si_unit("first_steel_pr_low")
    'Pa'

    References
    ----------
    Common practice, no source.
    """
    unit = get(name).unit
    return _SI_UNITS.get(unit, unit)


def _in_si(value, unit):
    return float(units.convert(value, unit, _SI_UNITS[unit])) if _SI_UNITS.get(unit, unit) != unit else float(value)
