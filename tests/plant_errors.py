"""Plant small errors in one module, one at a time, in a copy, and see whether its tests notice. On request only:

    python tests/plant_errors.py shop_calc/science/evaporation.py [--tests tests/test_evaporation.py ...] [--most 40]

Planted are: a number 2 % larger, plus for minus and minus for plus, a sign left out, a comparison turned round. The tests
that must notice are the module's own, its doctests and the check rows. Who survives is printed: either a check is missing, or
the change changes nothing (a tolerance, a message, a number whose neighbour would serve as well).
"""

import argparse
import ast
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).parents[1]
TURNED = {ast.Lt: "<", ast.Gt: ">", ast.LtE: "<=", ast.GtE: ">="}
OTHER = {"<": ">", ">": "<", "<=": ">=", ">=": "<="}
LONGEST_S = 120.0


def _inside(nodes):
    """Nodes that only say something, or count places: messages and subscripts."""
    found = set()
    for node in nodes:
        if isinstance(node, (ast.JoinedStr, ast.Raise, ast.Subscript)):
            inner = node.slice if isinstance(node, ast.Subscript) else node
            found.update(id(each) for each in ast.walk(inner))
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
    skip, data = _inside(nodes), source.encode()
    for node in nodes:
        if id(node) in skip:
            continue
        if isinstance(node, ast.Constant) and isinstance(node.value, (int, float)) and not isinstance(node.value, bool):
            if node.value and abs(node.value) > 1e-6:
                yield node.lineno, f"{node.value} is 2 % larger", at(node), at(node, True), repr(node.value * 1.02)
        elif isinstance(node, ast.BinOp) and isinstance(node.op, (ast.Add, ast.Sub)):
            start, end = at(node.left, True), at(node.right)
            sign = "+" if isinstance(node.op, ast.Add) else "-"
            between = data[start:end].decode()
            yield node.lineno, f"{sign} turned round", start, end, between.replace(sign, "-" if sign == "+" else "+", 1)
        elif isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub):
            yield node.lineno, "- left out", at(node), at(node.operand), ""
        elif isinstance(node, ast.Compare) and len(node.ops) == 1 and type(node.ops[0]) in TURNED:
            start, end = at(node.left, True), at(node.comparators[0])
            sign = TURNED[type(node.ops[0])]
            between = data[start:end].decode()
            yield node.lineno, f"{sign} turned round", start, end, between.replace(sign, OTHER[sign], 1)


def survivors(module, tests, most=None):
    """Plant every error in a copy of the project; yield (line, what, text of the line, noticed)."""
    source = (ROOT / module).read_text(encoding="utf-8")
    planted = sorted(errors_of(source))
    if most and len(planted) > most:  # spread over the module
        planted = [planted[round(number * (len(planted) - 1) / (most - 1))] for number in range(most)]
    with tempfile.TemporaryDirectory() as folder:
        for name in ("shop_calc", "data", "tests", "workbooks", "pyproject.toml"):
            copy = shutil.copytree if (ROOT / name).is_dir() else shutil.copy
            copy(ROOT / name, Path(folder) / name)
        words = [sys.executable, "-m", "pytest", "-x", "-q", "-p", "no:cacheprovider", "-p", "no:randomly", "-o", "addopts=",
                 "--doctest-modules", module, *tests]  # fmt: skip
        surroundings = {**os.environ, "PYTHONPATH": folder, "PYTHONDONTWRITEBYTECODE": "1"}

        def fails():
            try:
                run = subprocess.run(words, cwd=folder, env=surroundings, capture_output=True, timeout=LONGEST_S, check=False)
            except subprocess.TimeoutExpired:
                return True  # it never comes back: that is noticed
            return run.returncode != 0

        if fails():
            raise SystemExit(f"{module}: its tests fail before anything is planted: {' '.join(words[2:])}")
        for line, what, start, end, text in planted:
            data = source.encode()
            (Path(folder) / module).write_bytes(data[:start] + text.encode() + data[end:])
            yield line, what, source.splitlines()[line - 1].strip(), fails()


def main():
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("module", help="a file below shop_calc/science or shop_calc/trade")
    parser.add_argument("--tests", nargs="+", help="files that must notice; else the module's own and the check rows")
    parser.add_argument("--most", type=int, help="plant at most so many, spread over the module")
    options = parser.parse_args()
    module = (ROOT / options.module).resolve().relative_to(ROOT).as_posix()
    own = f"tests/test_{Path(module).stem}.py"
    tests = options.tests or [*([own] if (ROOT / own).exists() else []), "tests/test_published.py"]
    count = left = 0
    for line, what, text, noticed in survivors(module, tests, options.most):
        count += 1
        if not noticed:
            left += 1
            print(f"{module}:{line}: not noticed: {what}: {text}", flush=True)
    print(f"{module}: {count} planted, {count - left} noticed, {left} not")


if __name__ == "__main__":
    main()
