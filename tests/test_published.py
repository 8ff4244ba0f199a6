"""Every row of data/published is one number that a function of the package must give.

A row names the function, its inputs as people write them, and the expected number in the unit of its source.
"""

import csv
import importlib
import inspect
import operator
import pkgutil
import re
from pathlib import Path

import numpy as np
import pytest

import shop_calc.science
from shop_calc.units import convert, parse_quantity, suffix_unit

ROOT = Path(__file__).parents[1]
FOLDER = ROOT / "data" / "published"
COLUMNS = [
    "id",
    "function",
    "inputs",
    "expected",
    "unit",
    "tolerance",
    "tolerance_reason",
    "mark",
    "source",
    "locator",
    "note",
]
LIMIT_COLUMNS = ["id", "rule", "value", "unit", "mark", "source", "locator", "note"]
MARKS = {"read", "unnamed", "memory", "derived", "practice", "judgement", "invented"}
PRINTED = {"read"}  # the only mark that may be called published


def read(path):
    with open(path, encoding="utf-8", newline="") as file:
        lines = csv.DictReader(file)
        return lines.fieldnames, list(lines)


FILES = sorted(path for path in FOLDER.glob("*.csv") if path.name != "limits.csv")
ROWS = [row for path in FILES for row in read(path)[1]]
EACH_ROW = pytest.mark.parametrize("row", ROWS, ids=[row["id"] for row in ROWS])


def one_value(name, text):
    """A number in the SI unit that the argument's name asks for, or the text where it is no number."""
    wanted = suffix_unit(name)
    if text.lower() in {"true", "false"}:
        return text.lower() == "true"
    try:
        number, unit = parse_quantity(text)
    except ValueError:
        if wanted is not None:
            raise
        return text
    if unit == "-" and wanted in {None, "-"}:
        return int(number) if re.fullmatch(r"[+-]?[0-9]+", text) else number
    if wanted is None or unit == "-":
        raise ValueError(
            f"{name}={text}: the name asks for {wanted or 'a pure number'}, the row gives {unit}"
        )
    return convert(number, unit, wanted)


def arguments(text):
    """Read `name=value unit; name=[value unit, value unit]` into keyword arguments."""
    given = {}
    for part in filter(None, (piece.strip() for piece in text.split(";"))):
        name, _, value = (piece.strip() for piece in part.partition("="))
        if value.startswith("[") and value.endswith("]"):
            values = [one_value(name, item.strip()) for item in value[1:-1].split(",")]
            given[name] = values if any(isinstance(v, str) for v in values) else np.array(values, dtype=float)
        else:
            given[name] = one_value(name, value)
    return given


def function_of(path):
    module, _, name = path.partition("#")[0].rpartition(".")
    return getattr(importlib.import_module(f"shop_calc.{module}"), name)


def result_of(row):
    """The number that the package gives, in the unit of the row."""
    path, _, attribute = row["function"].partition("#")
    result = function_of(path)(**arguments(row["inputs"]))
    if attribute:
        result = operator.attrgetter(attribute)(result)
        result = result() if callable(result) else result  # "#sum" adds up an answer for each ingredient
    unit = suffix_unit(attribute.rpartition(".")[2]) if attribute else None
    unit = unit or suffix_unit(path.rpartition(".")[2]) or "-"
    return float(result) if unit == row["unit"] else convert(float(result), unit, row["unit"])


@EACH_ROW
def test_the_package_gives_the_number_of_the_row(row):
    expected, tolerance = float(row["expected"]), float(row["tolerance"])
    got = result_of(row)
    # the second term is binary rounding, so that a tolerance of 0 can be kept
    assert abs(got - expected) <= tolerance + 1e-12 * abs(expected), f"{got} for {expected} ± {tolerance}"


def faults_of(row):
    """What is wrong with the way a row stands on its source."""
    for column in ("id", "function", "unit", "tolerance_reason", "source", "mark"):
        if not (row[column] or "").strip():
            yield f"{column} is empty"
    if row["mark"] not in MARKS:
        yield f"mark {row['mark']}"
    if None in row:
        yield "more cells than columns: quote the commas"
    if float(row["tolerance"]) > 0.01 * abs(float(row["expected"])):
        more = re.sub(r"half (of )?the last (printed )?digit( printed| recalled)?", "", row["tolerance_reason"])
        if len(re.findall(r"\w+", more)) < 3:
            yield "say why the tolerance is so wide"
    if row["mark"] not in PRINTED:
        text = " ".join(row[column] or "" for column in ("source", "locator", "note", "tolerance_reason"))
        if "publish" in text.lower():
            yield "only what was read in its source is called published"


def test_every_row_says_where_it_comes_from_and_why_its_tolerance_is_so_wide():
    assert [(row["id"], fault) for row in ROWS for fault in faults_of(row)] == []


def test_faults_of_a_row_are_seen():
    good = next(row for row in ROWS if row["mark"] == "read")
    wide = {"tolerance": str(0.02 * abs(float(good["expected"])) + 1e-9), "tolerance_reason": "half the last digit"}
    for changed in ({"source": " "}, {"mark": "heard"}, {None: ["x"]}, {"mark": "memory", "note": "published"}, wide):
        assert len(list(faults_of(good | changed))) == 1, changed


@pytest.mark.parametrize("path", FILES, ids=[path.name for path in FILES])
def test_a_file_has_exactly_the_agreed_columns(path):
    columns, rows = read(path)
    assert columns == COLUMNS
    assert rows


def test_no_two_rows_share_an_id():
    ids = [row["id"] for row in ROWS]
    if (FOLDER / "limits.csv").exists():
        ids += [row["id"] for row in read(FOLDER / "limits.csv")[1]]
    assert sorted({i for i in ids if ids.count(i) > 1}) == []


def test_limits_are_complete():
    columns, rows = read(FOLDER / "limits.csv")
    assert columns == LIMIT_COLUMNS
    for row in rows:
        assert None not in row, f"{row['id']}: more cells than columns"
        assert row["rule"].strip() and row["source"].strip() and row["mark"] in MARKS, row["id"]


def public_functions():
    """Dotted names below shop_calc of the functions that science offers."""
    found = set()
    for info in pkgutil.walk_packages(shop_calc.science.__path__, "shop_calc.science."):
        module = importlib.import_module(info.name)
        for name, value in vars(module).items():
            plain = inspect.unwrap(value) if callable(value) else value
            if inspect.isfunction(plain) and plain.__module__ == info.name and not name.startswith("_"):
                found.add(f"{info.name.removeprefix('shop_calc.')}.{name}")
    return found


def excused():
    return read(Path(__file__).with_name("unpublished_functions.csv"))[1]


def test_every_science_function_has_a_row_or_stands_on_the_short_list():
    covered = {row["function"].partition("#")[0] for row in ROWS}
    missing = public_functions() - covered - {row["function"] for row in excused()}
    assert sorted(missing) == [], "add a row to data/published/, or a reason to tests/unpublished_functions.csv"


def test_the_short_list_is_true():
    covered = {row["function"].partition("#")[0] for row in ROWS}
    names = [row["function"] for row in excused()]
    assert sorted(set(names) - public_functions()) == [], "no such function any more"
    assert sorted(set(names) & covered) == [], "these have a row now"
    assert len(names) == len(set(names))
    assert all(len(row["reason"].split()) >= 3 for row in excused()), "each needs a reason"


def test_the_rows_notice_a_two_percent_slip_in_any_science_function():
    sharpest = {}
    for row in ROWS:
        expected = abs(float(row["expected"]))
        share = float(row["tolerance"]) / expected if expected else 1.0
        name = row["function"].partition("#")[0]
        sharpest[name] = min(share, sharpest.get(name, 1.0))
    blunt = {name: share for name, share in sharpest.items() if name.startswith("science.") and share >= 0.02}
    assert blunt == {}


def test_a_row_without_its_unit_is_refused():
    with pytest.raises(ValueError, match="mass_kg"):
        arguments("mass_kg=94")
    with pytest.raises(ValueError, match="different things"):
        arguments("count=94 lb")


def test_lists_units_and_percent_are_read():
    given = arguments("mass_kg=[1 lb, 2 lb]; air_fraction=5 %; mix_temp_c=50 F; kind=moist; count=3")
    assert given["mass_kg"] == pytest.approx([0.45359237, 0.90718474])
    assert (given["air_fraction"], given["mix_temp_c"]) == pytest.approx((0.05, 10.0))
    assert (given["kind"], given["count"]) == ("moist", 3)
