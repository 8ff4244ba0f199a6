"""Lesson 04 against the book: published waits and a measured record beside the set clock."""

import csv

import numpy as np

from shop_calc import defaults, units
from shop_calc.lesson.table import table
from shop_calc.science.setting import rate_factor
from shop_calc.units import show

THIRD_LONGER = 4.0 / 3.0  # Concrete Construction: one third longer for every 10 °F colder
SEVENTY_F_C = (70.0 - 32.0) / 1.8
TEN_F_K = 10.0 / 1.8


def third_longer_h(wait_h, temp_c):
    """Give a wait at another temperature by the rule of a third for every 10 °F.

    Parameters
    ----------
    wait_h : float
        The wait at 70 °F [h].
    temp_c : float
        The other temperature [°C].

    Returns
    -------
    float
        The wait there [h].

    Examples
    --------
    >>> f"{third_longer_h(3.0, 10.0):.5g}"
    '5.3333'

    References
    ----------
    Concrete Construction, note on accelerating admixtures: one third longer for each 10 °F colder.
    """
    return wait_h * THIRD_LONGER ** ((SEVENTY_F_C - temp_c) / TEN_F_K)


def _columns(name, *heads):
    with open(defaults.data_folder() / "open" / name, newline="", encoding="utf-8") as file:
        rows = list(csv.DictReader(file))
    return [np.array([float(row[head]) for row in rows]) for head in heads]


def waits_table():
    """Lay our clock beside a survey of waits and a course table, each from its own hours at 70 °F.

    Returns
    -------
    Table
        Temperature; theirs and ours for the survey; theirs and ours for the course table [h].

    Examples
    --------
    >>> waits_table().rows[2]
    ('70 °F (21.1 °C)', '2 h 45 min', '2 h 45 min', '6 h', '6 h')

    References
    ----------
    ASCC position statement 15, Concrete Construction, June 2000; Penn State CE 584 course library, admixture and
    setting time, Table 1.
    """
    survey = dict(zip(*_columns("footprint_waits.csv", "temp_f", "wait_h"), strict=True))
    course = dict(zip(*_columns("set_time_temperature.csv", "temp_f", "set_time_h"), strict=True))
    energy_j_mol = defaults.si("activation_energy")
    rows = []
    for temp_f in (50.0, 60.0, 70.0, 80.0, 90.0):
        temp_c = units.convert(temp_f, "F", "C")
        slower = 1.0 / float(rate_factor(temp_c, energy_j_mol, SEVENTY_F_C))
        cells = [show(temp_c, "temperature")]
        for source in (survey, course):
            theirs, ours = source.get(temp_f), source[70.0] * slower
            cells += [
                "–" if theirs is None else show(theirs, "duration"),
                show(ours, "duration") + ("" if theirs in (None, source[70.0]) else _off(ours / theirs - 1)),
            ]
        rows.append(cells)
    caption = (
        "Published: a survey of contractors, waits to a quarter-inch footprint (ASCC position statement 15, Concrete "
        "Construction, June 2000).\nPublished: set times, mix not given (Penn State CE 584 course library, admixture "
        "and setting time, Table 1).\n"
        "Ours: the set clock with 36 kJ/mol, started from each source's own hours at 70 °F."
    )
    return table(("slab", "survey", "ours", "course table", "ours"), rows, caption)


def _off(share):
    percent = round(100 * share)
    return f" ({percent:+d} %)" if percent else " (0 %)"


def penetration_record():
    """Read a measured record of penetration resistance.

    Returns
    -------
    tuple of ndarray
        Hours after the water, and resistance [h, Pa].

    Examples
    --------
    >>> hours, resistance_pa = penetration_record()
    >>> len(hours)
    12

    References
    ----------
    Laboratory report after ASTM C403-08 at 17 °C, Higher Institute of Technological Studies, Sfax; data/open.
    """
    minutes, psi = _columns("penetration_record.csv", "time_min", "penetration_resistance_psi")
    return minutes / 60.0, units.convert(psi, "psi", "Pa")
