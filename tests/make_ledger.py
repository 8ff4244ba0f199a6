"""Write data/ledger.csv: where every number of the package comes from, and what holds it to it.

    python tests/make_ledger.py

One row for each public function of science and trade, each constant in their modules, each default, each line of the
working of the demo jobs. Nothing in it is typed by hand: functions from their docstrings and check rows, constants from the
words beside them, defaults from their table, lines from the plans.
"""

import ast
import csv
import importlib
import inspect
import io
import pkgutil
import re
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))  # the package beside this file, whichever copy is installed

import test_docstrings
import test_published

import shop_calc.science
import shop_calc.trade
from shop_calc import defaults
from shop_calc.trade.jobs.job import demo_jobs, read_job
from shop_calc.trade.plan import make_plan
from shop_calc.trade.working import MARKS
from shop_calc.units import suffix_unit

TESTS = Path(__file__).parent
FILE = TESTS.parent / "data" / "ledger.csv"
COLUMNS = ("kind", "name", "value", "unit", "mark", "source", "row_count", "rows", "worst_miss_fraction", "without_row")
MARK = re.compile(rf"\b({'|'.join(MARKS)})\b", re.I)
WORDS = {"common practice": "practice", "from memory": "memory", "recalled": "memory", "arithmetic": "derived",
         "geometry": "derived", "ours": "judgement", "definition": "derived", "exact": "derived"}  # fmt: skip


# Constants whose words do not name their mark: the end of the name, then mark and source.
_UNIT = ("derived", "definition of the unit")
_STEP = ("judgement", "a step or a limit of the reckoning, ours")
OWN = {
    ".DAY_H": _UNIT, ".KM_H_PER_M_S": _UNIT, "._IN": _UNIT, ".KELVIN": _UNIT, "._PA_PER_PSI": _UNIT, "._UNIT_J_MOL": _UNIT,
    ".GRAVITY_M_S2": ("derived", "standard gravity, exact by definition, CGPM 1901"),
    ".RELATIVE_DENSITY_HIGHEST": _STEP, ".RELATIVE_DENSITY_LOWEST": _STEP,
    ".SOLID_TEMP_C": _STEP, "heat_balance.WATER_TEMP_C": ("derived", "liquid water"),
    ".WHOLE_COUNT_SLACK": _STEP, "._FIRST_PARTS_S": _STEP, ".LONGEST_PART_S": _STEP,
    ".ICE_SPECIFIC_HEAT": ("memory", "textbooks of heat balance; IAPWS 2.10 kJ/(kg K) at the melting point, 1.96 at -18 °C"),
    ".WATER_SPECIFIC_HEAT_J_KG_K": ("derived", "definition of the thermochemical kilocalorie"),
    ".LOAD_CONSTANT_KG": ("read", "NIOSH 94-110"), ".LARGEST_TWIST_DEG": ("read", "NIOSH 94-110"),
    ".LONGEST_DAY_H": ("read", "NIOSH 94-110"),
    ".EN_VALID_TEMP_C": ("read", "EN 1992-1-1:2004 B.1(3)"),
    ".EN_VALID_NOTIONAL_SIZE_M": ("read", "EN 1992-1-1:2004 Table 3.3"),
    ".EN_VALID_RH_FRACTION": ("read", "EN 1992-1-1:2004 Table 3.2 and B.1"),
    ".INITIAL_SET_PA": ("memory", "ASTM C403/C403M, 500 psi"), ".FINAL_SET_PA": ("memory", "ASTM C403/C403M, 4000 psi"),
    "evaporation.VALID_WIND_M_S": ("memory", "range of the charts of Menzel and Uno"),
    "evaporation.VALID_TEMP_C": ("memory", "range of the charts of Menzel and Uno"),
    ".UNO_SHIFT_C": ("derived", "32 °F in °C steps: Uno's US form in metric units"),
    ".UNO_WIND_SHIFT_KM_H": ("derived", "2.5 mph: Uno's US form in metric units"),
    "moist_air.VALID_TEMP_C": ("derived", "within 0.2 % of IAPWS-IF97 over 0 to 40 °C"),
    "moist_air.BASE_PA": ("memory", "Magnus form with the constants printed with Menzel's formula"),
    "moist_air.SLOPE": ("memory", "as BASE_PA"), "moist_air.OFFSET_C": ("memory", "as BASE_PA"),
    ".ABRAMS_VALID_RATIO": ("derived", "range of the 79 mixes of data/open/concrete_1030.csv that were fitted"),
    ".ABRAMS_SCATTER": ("derived", "standard deviation of ln(strength) about the line, same 79 mixes"),
    "setting.VALID_TEMP_C": ("judgement", "ours; above 30 °C sources disagree"),
    ".MEAN_ABOVE_FCK_PA": ("read", "EN 1992-1-1:2004 Table 3.1"), ".LOWEST_FCK_PA": ("read", "EN 1992-1-1:2004, 3.1.4(6)"),
    ".MEMBRANE_HOURS": ("read", "ASTM C309 limit, 0.55 kg/m2 in 72 h"),
    ".BAND_END": ("derived", "95 % point of the normal distribution"),
    "._BAND_END": ("derived", "95 % point, normal distribution"),
    "._SIGMA_TO_BAND": ("derived", "95 % point of the normal distribution"),
}  # fmt: skip


def marks_in(text):
    """The marks that a text names, the gravest words first; empty when it names none."""
    found = {word.lower() for word in MARK.findall(text)}
    found |= {mark for words, mark in WORDS.items() if words in text.lower()}
    return " ".join(mark for mark in MARKS if mark in found)


def modules():
    """Name and module of everything in science and trade."""
    for room in (shop_calc.science, shop_calc.trade):
        for info in pkgutil.walk_packages(room.__path__, room.__name__ + "."):
            yield info.name.removeprefix("shop_calc."), importlib.import_module(info.name)


def misses():
    """For each function: ids of its rows, their marks, and the largest miss as a share of the tolerance of its row."""
    found = {}
    for row in test_published.ROWS:
        expected, tolerance = float(row["expected"]), float(row["tolerance"])
        miss = abs(test_published.result_of(row) - expected)
        share = 0.0 if miss <= 1e-12 * abs(expected) else miss / (tolerance or 1e-12 * abs(expected))
        ids, marks, worst = found.get(row["function"].partition("#")[0], ([], set(), 0.0))
        found[row["function"].partition("#")[0]] = ([*ids, row["id"]], marks | {row["mark"]}, max(worst, share))
    return found


def named_in_tests():
    """Which test files name a word."""
    found = {}
    for path in sorted(TESTS.glob("test_*.py")):
        for word in set(re.findall(r"[a-z_][a-z0-9_]{2,}", path.read_text(encoding="utf-8"))):
            found.setdefault(word, []).append(path.name)
    return found


def function_rows():
    rows, tested, excused = misses(), named_in_tests(), {row["function"]: row["reason"] for row in test_published.excused()}
    for name, module in modules():
        for item, value in sorted(vars(module).items()):
            plain = inspect.unwrap(value) if callable(value) else value
            if item.startswith("_") or not inspect.isfunction(plain) or plain.__module__ != module.__name__:
                continue
            path = f"{name}.{item}"
            references = " ".join(" ".join(test_docstrings.sections(plain.__doc__).get("References", [])).split())
            ids, marks, worst = rows.get(path, ((), set(), 0.0))
            why = ""
            if not ids:
                files = [file for file in tested.get(item, ()) if file != "test_ledger.py"]
                where = f"tested in {', '.join(files[:3])}" if files else "tested through what calls it"
                why = excused.get(path) or f"composes functions that have rows, or gives words; {where}"
            yield {"kind": "function", "name": path, "unit": suffix_unit(item) or "",
                   "mark": " ".join(mark for mark in MARKS if mark in marks) or marks_in(references) or "as its parts",
                   "source": references, "row_count": len(ids), "rows": " ".join(ids),
                   "worst_miss_fraction": f"{worst:.2f}" if ids else "", "without_row": why}  # fmt: skip


def _numbers(node):
    """Numbers in the value of a constant, or None when it has none."""
    try:
        value = ast.literal_eval(node)
    except ValueError:
        return ast.unparse(node) if re.fullmatch(r"[\w\s.*/+()\-]+", ast.unparse(node)) and re.search(
            r"\d", ast.unparse(node)) else None  # fmt: skip
    flat = value if isinstance(value, (tuple, list)) else (value,)
    if flat and all(isinstance(each, (int, float)) and not isinstance(each, bool) for each in flat):
        return " ".join(f"{each:g}" for each in flat)
    return None


def constant_rows():
    for name, module in modules():
        lines, block = Path(module.__file__).read_text(encoding="utf-8").splitlines(), ("", 0)
        for node in ast.parse("\n".join(lines)).body:
            if not isinstance(node, ast.Assign) or not isinstance(node.targets[0], ast.Name):
                continue
            item, value = node.targets[0].id, _numbers(node.value)
            if not re.fullmatch(r"_?[A-Z][A-Z0-9_]+", item) or value is None:
                continue
            said = lines[node.lineno - 1 : node.end_lineno]
            above = node.lineno - 2
            while above >= 0 and lines[above].startswith("#"):
                said.insert(0, lines[above])
                above -= 1
            words = " ".join(line.partition("#")[2].strip() for line in said if "#" in line).replace("fmt: skip", "")
            words = words.replace(": ", " ", 1).strip() if words.startswith(":") else words.strip()
            if node.lineno - 1 == block[1] and not marks_in(words):  # no blank line between: one comment for the block
                words = f"{words}; {block[0]}".strip("; ")
            block = (words, node.end_lineno)
            mark, words = _mark_of(f"{name}.{item}", words)
            yield {"kind": "constant", "name": f"{name}.{item}", "value": value, "unit": suffix_unit(item.lower()) or "",
                   "mark": mark, "source": words}  # fmt: skip


def _mark_of(name, words):
    """Mark and words of a constant; limits and steps of the planning itself are ours unless something else is said."""
    if marks_in(words):
        return marks_in(words), words
    for end, (mark, source) in OWN.items():
        if name.endswith(end):
            return mark, source if source not in words else words
    return ("judgement", words or "a limit or a step of the reckoning, ours") if name.startswith("trade.") else ("", words)


def default_rows():
    for name in defaults.table():
        row = defaults.get(name)
        yield {"kind": "default", "name": name, "value": f"{row.value:g}", "unit": row.unit, "mark": row.mark,
               "source": row.source}  # fmt: skip


def working_rows():
    seen = {}
    for path in demo_jobs().values():
        for step in make_plan(read_job(path)).working:
            seen.setdefault((step.name, step.mark, step.source), step)
    for (name, mark, source), step in sorted(seen.items()):
        yield {"kind": "working", "name": name, "unit": step.unit, "mark": mark, "source": source}


def ledger():
    """All rows, in order."""
    return [{column: str(row.get(column, "")) for column in COLUMNS}
            for row in (*function_rows(), *constant_rows(), *default_rows(), *working_rows())]  # fmt: skip


def text():
    """The whole file."""
    out = io.StringIO()
    writer = csv.DictWriter(out, COLUMNS, lineterminator="\n")
    writer.writeheader()
    writer.writerows(ledger())
    return out.getvalue()


if __name__ == "__main__":
    FILE.write_text(text(), encoding="utf-8")
    print(FILE)
