"""Measuring the set with kitchen means: a side cup, a rod, a scale, a thumb."""

import csv
from dataclasses import dataclass
from functools import cache
from math import pi

import numpy as np

from shop_calc import defaults
from shop_calc.science import checks, set_records
from shop_calc.science.loads import GRAVITY_M_S2

_QUARTER_INCH_M = 0.00635  # by definition of the inch
_PRESSURES = (  # rows of the defaults table at which the day changes, in rising order
    "strip_pr_low", "strip_pr_high", "first_steel_pr_low", "first_steel_pr_high", "last_steel_pr_low",
    "last_steel_pr_high", "stop_pr",
)  # fmt: skip


@dataclass(frozen=True)
class RodRow:
    """What the scale shows at one resistance.

    Parameters
    ----------
    name : str
        Row of the defaults table that the resistance comes from [-].
    resistance_pa : float
        Penetration resistance [Pa].
    diameter_m : float
        Diameter of the rod to use [m].
    mass_kg : float
        Reading of the scale, the cup taken off [kg].
    within_scale : bool
        False when a kitchen scale does not reach so far [-].

    Examples
    --------
    >>> rod_table()[0].name
    'strip_pr_low'

    References
    ----------
    Derived.
    """

    name: str
    resistance_pa: float
    diameter_m: float
    mass_kg: float
    within_scale: bool


@dataclass(frozen=True)
class RodStep:
    """One step of the measurement.

    Parameters
    ----------
    number : int
        Its place [-].
    do : str
        What to do [-].
    why : str
        Reason [-].
    write_down : str
        Column of the shop log that gets it; empty where nothing is written [-].
    mark, source : str
        Origin of the rule [-].

    Examples
    --------
    >>> rod_steps()[0].number
    1

    References
    ----------
    data/rod_steps.csv.
    """

    number: int
    do: str
    why: str
    write_down: str
    mark: str
    source: str


def rod_for_m(resistance_pa):
    """Choose the rod for a resistance.

    Parameters
    ----------
    resistance_pa : float or array
        Penetration resistance that is expected [Pa].

    Returns
    -------
    float or array
        Diameter: the thick rod up to 150 psi, then the thin one [m].

    Raises
    ------
    ValueError
        When the resistance is below 0.

    Examples
    --------
    >>> float(rod_for_m(3447378.6))
    0.003175

    References
    ----------
    Common practice, no source; diameters in data/defaults.csv.
    """
    resistance = checks.require("penetration resistance", resistance_pa, 0, unit="Pa")
    thick, thin = defaults.si("rod_thick"), defaults.si("rod_thin")
    return np.where(resistance <= defaults.si("rod_change") * (1 + 1e-9), thick, thin)[()]


def rod_mass_kg(resistance_pa, diameter_m=None):
    """Say what the scale shows when a rod meets a resistance.

    Parameters
    ----------
    resistance_pa : float or array
        Penetration resistance [Pa].
    diameter_m : float or array, optional
        Diameter of the flat end; that of `rod_for_m` if left out [m].

    Returns
    -------
    float or array
        Reading of the scale, the cup taken off [kg].

    Raises
    ------
    ValueError
        When the resistance is below 0 or the diameter not above 0.

    Examples
    --------
    >>> f"{rod_mass_kg(3447378.6):.5g}"
    '2.7832'

    References
    ----------
    Force over area, the quantity of ASTM C403/C403M.
    """
    resistance = checks.require("penetration resistance", resistance_pa, 0, unit="Pa")
    diameter_m = rod_for_m(resistance) if diameter_m is None else diameter_m
    diameter = checks.require("rod diameter", diameter_m, 0, 0.1, unit="m", low_open=True)
    return resistance * (pi * diameter**2 / 4) / GRAVITY_M_S2


def rod_resistance_pa(mass_kg, diameter_m):
    """Turn a reading of the scale into penetration resistance.

    Parameters
    ----------
    mass_kg : float or array
        Reading of the scale, the cup taken off [kg].
    diameter_m : float or array
        Diameter of the flat end of the rod [m].

    Returns
    -------
    float or array
        Penetration resistance [Pa].

    Raises
    ------
    ValueError
        When the reading is below 0 or the diameter not above 0.

    Examples
    --------
    >>> f"{rod_resistance_pa(2.7832, 0.003175):.6g}"
    '3.44737e+06'

    References
    ----------
    As shop_calc.science.set_records.needle_resistance_pa.
    """
    diameter = checks.require("rod diameter", diameter_m, 0, 0.1, unit="m", low_open=True)
    return set_records.needle_resistance_pa(mass_kg, pi * diameter**2 / 4)


def print_resistance_pa(depth_m):
    """Resistance that a thumb print stands for.

    Not a measurement: thumbs and people differ by a factor of two, see print_scatter in data/defaults.csv.

    Parameters
    ----------
    depth_m : float or array
        Depth of the print [m].

    Returns
    -------
    float or array
        Penetration resistance [Pa].

    Raises
    ------
    ValueError
        When the depth is not above 0.

    Examples
    --------
    >>> f"{print_resistance_pa(0.00635):.6g}"
    '137895'

    Notes
    -----
    `PR = 20 psi * (1/4 in)/depth`: one thumb pressed with one force; the contact of a ball sunk by its depth
    grows in proportion to the depth. Judgement, fixed at the middle of the 10 to 40 psi of a 1/4 in print. It puts
    those 10 and 40 psi at 1/2 and 1/8 in, and the 60 to 150 psi of "barely marks" at 2.1 to 0.8 mm. A thumb that
    is pressed until it hurts gives other numbers; use the same thumb, the same way.

    References
    ----------
    Derived from the cues of data/defaults.csv; judgement.
    """
    depth = checks.require("thumb print", depth_m, 0, 0.2, unit="m", low_open=True)
    return defaults.si("thumb_print_pr") * _QUARTER_INCH_M / depth


def rod_table():
    """List what the scale shows at every resistance at which the day changes.

    Returns
    -------
    tuple of RodRow
        In rising order of resistance [as its fields].

    Examples
    --------
    >>> [round(float(row.mass_kg), 2) for row in rod_table()]
    [0.22, 0.89, 1.34, 3.34, 1.39, 2.78, 5.57]

    References
    ----------
    Derived; resistances in data/defaults.csv.
    """
    rows = []
    for name in _PRESSURES:
        resistance_pa = defaults.si(name)
        mass_kg = float(rod_mass_kg(resistance_pa))
        within = mass_kg <= defaults.si("kitchen_scale")
        rows.append(RodRow(name, resistance_pa, float(rod_for_m(resistance_pa)), mass_kg, within))
    return tuple(rows)


@cache
def rod_steps():
    """List the steps of the measurement, with what to write down.

    Returns
    -------
    tuple of RodStep
        In order [-].

    Examples
    --------
    >>> any("hole twice" in step.do for step in rod_steps())
    True

    References
    ----------
    data/rod_steps.csv, each with its mark.
    """
    with open(defaults.data_folder() / "rod_steps.csv", newline="", encoding="utf-8") as file:
        return tuple(RodStep(**{**row, "number": int(row["number"])}) for row in csv.DictReader(file))
