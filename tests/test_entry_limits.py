"""What each entry of a function may be: the end of its range is taken, half a percent beyond it is refused.

Each row of entry_limits.csv says why an entry has its limits. The other inputs are those of a check row of the function, or
stand in the row.
"""

import csv
from pathlib import Path

import numpy as np
import pytest
from test_published import FOLDER, ROWS, arguments, function_of

from shop_calc import defaults
from shop_calc.science import (
    build_up,
    evaporation,
    heat_balance,
    loads,
    maturity,
    moist_air,
    setting,
    shrinkage,
    shrinkage_aci,
    strength,
)
from shop_calc.trade.batching.batch_advice import FACE_PARTICLES
from shop_calc.units import convert

INPUTS = {row["function"].partition("#")[0]: row["inputs"] for row in reversed(ROWS)}
with open(Path(__file__).with_name("entry_limits.csv"), encoding="utf-8", newline="") as file:
    LIMITS = list(csv.DictReader(file))


def refusal(row, value):
    """What is said to this value of the entry, or nothing."""
    given = arguments(INPUTS.get(row["function"], "")) | arguments(row["others"])
    old = given.get(row["entry"])
    if isinstance(old, np.ndarray):  # the first of a list
        value = np.array([value, *old[1:]])
    try:
        function_of(row["function"])(**(given | {row["entry"]: value}))
    except ValueError as error:
        return str(error)
    return None


@pytest.mark.parametrize("room", sorted({row["function"].rpartition(".")[0] for row in LIMITS}))
def test_an_entry_is_taken_up_to_its_limit_and_refused_just_beyond(room):
    for row in (row for row in LIMITS if row["function"].rpartition(".")[0] == room):
        for end, outwards in (("low", -1), ("high", 1)):
            if not row[end]:
                continue
            limit, words = float(row[end]), f"{row['function']}: {row['entry']} {end} {row[end]}"
            if end in row["open"].split():
                assert "must be" in (refusal(row, limit) or ""), words
                assert not limit or refusal(row, limit - outwards * 0.005 * abs(limit)) is None, words
            else:
                assert refusal(row, limit) is None, words
                assert "must be" in (refusal(row, limit + outwards * (0.005 * abs(limit) or 1e-6)) or ""), words


def test_ranges_are_those_of_their_sources():
    """Each in the units in which its source gives it."""
    wind = convert(25.0, "mph", "m/s")  # the chart of evaporation ends at 25 mph = 11.176 m/s
    chart = [convert(value, "degF", "degC") for value in (30.0, 100.0)]  # and goes from about 30 to 100 °F
    assert (0.0, pytest.approx(wind, abs=0.05)) == evaporation.VALID_WIND_M_S
    assert pytest.approx(chart, abs=0.25) == evaporation.VALID_TEMP_C
    assert maturity.EN_VALID_TEMP_C == (0.0, 80.0)  # EN 1992-1-1 B.1(3)
    assert heat_balance.WATER_TEMP_C == (0.0, 100.0)  # water freezes and boils
    assert shrinkage.EN_VALID_NOTIONAL_SIZE_M == (0.1, 1.0)  # EN 1992-1-1 table 3.3 starts at 100 mm
    assert shrinkage.EN_VALID_RH_FRACTION == shrinkage_aci.ACI_VALID_RH_FRACTION == (0.4, 1.0)  # EN 1992-1-1 B.1; ACI 209
    years = 100 * 365 * 24.0  # the design life of EN 1992, hours
    assert (72.0, years) == strength.EN_VALID_AGE_H  # 3.1.2(5): from 3 days on
    assert (24.0, years) == strength.ACI_VALID_AGE_H  # ACI 209: from 1 day on
    assert build_up.VALID_REST_S == (0.0, 60 * 60.0)  # an hour, judgement
    assert convert(14.0, "degF", "degC") == pytest.approx(maturity.DATUM_NURSE_SAUL_C)  # Saul 1951, from memory
    density = [convert(value, "lb/ft3", "kg/m3") for value in (110.0, 155.0)]  # rows WT-2c and WT-2d
    assert pytest.approx(density, abs=0.5) == loads.CEMENT_MIX_DENSITY_KG_M3
    assert shrinkage.PICKETT_EXPONENT == (1.2, 1.7)  # Pickett 1956, from memory
    assert maturity.SAUL_VALID_TEMP_C == (0.0, 40.0)  # from memory
    assert moist_air.VALID_TEMP_C == (-5.0, 50.0)  # where iapws agrees within 0.3 %: test_moist_air.py
    assert (convert(41.0, "degF", "degC"), convert(86.0, "degF", "degC")) == setting.VALID_TEMP_C


def test_limits_of_the_table_are_those_of_the_rules():
    """One number in two rooms: the science names it, the table of defaults uses it."""
    with open(FOLDER / "limits.csv", encoding="utf-8", newline="") as rows:
        rules = {row["id"]: row for row in csv.DictReader(rows)}
    assert heat_balance.ICE_SHARE_WARN == defaults.si("ice_warn") == 0.20
    assert heat_balance.ICE_SHARE_UNRELIABLE == defaults.si("ice_unreliable") == 0.50
    assert heat_balance.ICE_SHARE_MAX == defaults.si("ice_limit") == 0.75
    assert heat_balance.RULE_OF_THUMB_RATIO == {"cement": 8, "water": 4, "aggregate": 2}  # "the rule of 8-4-2"
    assert float(rules["AG-1b"]["value"]) == pytest.approx(1 / FACE_PARTICLES, abs=5e-5)


def test_a_surface_beyond_its_limits_is_called_by_its_own_name():
    row = next(row for row in LIMITS if row["function"].endswith("menzel_rate_kg_m2_h"))
    assert all(refusal(row, value).startswith("concrete temperature") for value in (100.5, -50.25))


def test_a_mix_that_is_all_air_is_refused_for_its_air():
    row = next(row for row in LIMITS if row["function"].endswith("mass_by_difference_kg"))
    assert refusal(row, 1.0).startswith("air") and not refusal(row, 0.999).startswith("air")
