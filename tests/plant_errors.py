"""Plant small errors in science/ and trade/, one at a time, and see whether the tests notice. On request only:

    python tests/plant_errors.py shop_calc/science                  # a folder, or one file
    python tests/plant_errors.py shop_calc/trade/shape --most 40    # at most 40 a module, spread over it
    python tests/plant_errors.py shop_calc/trade --report FILE.csv  # survivors as lines: module, line, what, text

Planted are: a number 2 % larger; plus for minus and minus for plus; a sign left out; a comparison turned round; and the
slips of the practice questions that can happen in a line of code: multiplied where one divides and the other way round
(a ratio upside down), and the second part of a sum forgotten (water in the sand, the waste). Nothing is planted in messages,
subscripts and rounding. `planted_survivors.csv` lists, with a reason, those that nobody can or need notice.

How it works is told in `plant_runs.py`. An error counts as noticed when a test fails or never comes back.
"""

import argparse
import ast
import csv
import sys
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).parents[1]
EXCUSED = Path(__file__).with_name("planted_survivors.csv")
TURNED = {ast.Lt: ("<", ">"), ast.Gt: (">", "<"), ast.LtE: ("<=", ">="), ast.GtE: (">=", "<=")}
SWAPPED = {ast.Add: ("+", "-"), ast.Sub: ("-", "+"), ast.Mult: ("*", "/"), ast.Div: ("/", "*")}
SAYS = ("round", "roll", "Advice", "ValueError")  # calls whose later numbers only say something, or count places
COUNTS = ("axis", "n", "cutoff", "maxsize")  # the same, by name


def _texts(node):
    return isinstance(node, ast.JoinedStr) or isinstance(getattr(node, "value", None), str)


def _inside(nodes):
    """Nodes that only say something, or count places: messages, one word or another, subscripts, rounding, ranks."""
    found = set()
    for node in nodes:
        if isinstance(node, ast.IfExp) and _texts(node.body) and _texts(node.orelse):
            found.update(id(each) for each in ast.walk(node))
        if isinstance(node, ast.Dict) and all(type(getattr(each, "value", None)) is int for each in node.values):
            found.update(id(each) for each in node.values)
        if isinstance(node, ast.keyword) and node.arg in COUNTS:
            found.update(id(each) for each in ast.walk(node.value))
        said = isinstance(node, ast.Call) and getattr(node.func, "id", getattr(node.func, "attr", "")) in SAYS
        inner = [node.slice] if isinstance(node, ast.Subscript) else node.args[1:] if said else [node]
        if said or isinstance(node, (ast.JoinedStr, ast.Raise, ast.Subscript)):
            found.update(id(each) for part in inner for each in ast.walk(part))
    return found


def _counted(nodes):
    """Whole numbers that count things (compared with a length, or the length of a range): one more, not 2 %."""
    found = set()
    for node in nodes:
        sides = [node.left, *node.comparators] if isinstance(node, ast.Compare) else []
        if any(isinstance(side, ast.Call) and getattr(side.func, "id", "") == "len" for side in sides):
            found.update(id(side) for side in sides)
        if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "range":
            found.update(id(each) for each in node.args)
    return found


def errors_of(source):
    """Every error to plant: (line, what, start, end, new text), places as offsets in the source."""
    starts, place = [0], 0
    for line in source.splitlines(keepends=True):
        place += len(line.encode())
        starts.append(place)

    def at(node, end=False):
        return starts[(node.end_lineno if end else node.lineno) - 1] + (node.end_col_offset if end else node.col_offset)

    nodes = list(ast.walk(ast.parse(source)))
    skip, counted, data = _inside(nodes), _counted(nodes), source.encode()
    for node in nodes:
        if id(node) in skip:
            continue
        if isinstance(node, ast.Constant) and type(node.value) in (int, float):
            if id(node) in counted:
                yield node.lineno, f"{node.value} is one more", at(node), at(node, True), repr(node.value + 1)
            elif abs(node.value) > 1e-6:
                yield node.lineno, f"{node.value} is 2 % larger", at(node), at(node, True), repr(node.value * 1.02)
        elif isinstance(node, ast.BinOp) and type(node.op) in SWAPPED:
            if any(_texts(side) or isinstance(side, (ast.Tuple, ast.List)) for side in (node.left, node.right)):
                continue  # texts and lists are joined, not added
            start, end = at(node.left, True), at(node.right)
            sign, other = SWAPPED[type(node.op)]
            between = data[start:end].decode()
            yield node.lineno, f"{sign} turned round", start, end, between.replace(sign, other, 1)
            if sign == "+":
                before, _, behind = between.partition(sign)
                if not behind.strip():  # no bracket is torn
                    yield node.lineno, "part forgotten", start + len(before), at(node.right, True), ""
        elif isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub):
            yield node.lineno, "- left out", at(node), at(node) + 1, ""
        elif isinstance(node, ast.Compare) and len(node.ops) == 1 and type(node.ops[0]) in TURNED:
            start, end = at(node.left, True), at(node.comparators[0])
            sign, other = TURNED[type(node.ops[0])]
            yield node.lineno, f"{sign} turned round", start, end, data[start:end].decode().replace(sign, other, 1)


def excused():
    """(module, text of the line, what) of the survivors that are explained; `what` may be * for every error."""
    with open(EXCUSED, encoding="utf-8", newline="") as file:
        return {(row["module"], row["text"], row["what"]): row["reason"] for row in csv.DictReader(file)}


def planted_in(module, most=None):
    """(module, line, what, text of the line, mutated source) of every error that counts."""
    source = (ROOT / module).read_text(encoding="utf-8")
    lines, known, data, made = source.splitlines(), excused(), source.encode(), []
    for line, what, start, end, text in sorted(errors_of(source)):
        shown = lines[line - 1].strip()
        if not {(module, shown, what), (module, shown, "*")} & known.keys():
            made.append((module, line, what, shown, (data[:start] + text.encode() + data[end:]).decode()))
    if most and len(made) > most:
        made = [made[round(number * (len(made) - 1) / (most - 1))] for number in range(most)]
    return made


def main():
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("places", nargs="+", help="files or folders below shop_calc/science or shop_calc/trade")
    parser.add_argument("--most", type=int, help="plant at most so many a module, spread over it")
    parser.add_argument("--seconds", type=float, default=8.0, help="tests a planted error is worth, by their usual time")
    parser.add_argument("--refresh", nargs="*", default=None, help="test files to map again; none named: all")
    parser.add_argument("--only", help="plant only the errors of this report again")
    parser.add_argument("--report", help="write the survivors as CSV")
    options = parser.parse_args()
    from plant_runs import run_all  # heavy: it loads what the tests need

    paths = [Path(place).resolve() for place in options.places]
    files = sorted({file for path in paths for file in ([path] if path.is_file() else path.rglob("*.py"))})
    modules = [file.relative_to(ROOT).as_posix() for file in files]
    planted = [error for module in modules for error in planted_in(module, options.most)]
    if options.only:
        with open(options.only, encoding="utf-8", newline="") as file:
            wanted = {(row["module"], row["what"], row["text"]) for row in csv.DictReader(file)}
        planted = [error for error in planted if (error[0], error[2], error[3]) in wanted]
    count, survivors = Counter(error[0] for error in planted), []

    def tell(error, noticed):
        if not noticed:
            survivors.append(error[:4])
            print("{}:{}: not noticed: {}: {}".format(*error), flush=True)

    run_all(planted, options.seconds, options.refresh, tell)
    left = Counter(each[0] for each in survivors)
    for module in modules:
        print(f"{module}: {count[module]} planted, {count[module] - left[module]} noticed, {left[module]} not")
    share = 1 - len(survivors) / max(1, len(planted))
    print(f"{len(planted)} planted, {len(survivors)} not noticed: {share:.1%} noticed; excused lines: {len(excused())}")
    if options.report:
        with open(options.report, "w", encoding="utf-8", newline="") as file:
            csv.writer(file).writerows([("module", "line", "what", "text"), *survivors])


if __name__ == "__main__":
    sys.exit(main())
