"""Every library that is imported is declared in pyproject.toml, and every one declared there is used."""

import ast
import re
import sys
import tomllib
from functools import cache
from importlib.metadata import packages_distributions
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
EXTRAS = PROJECT["optional-dependencies"]
# Started as commands, plugins that pytest finds by itself, and pandas for tables of a learner's own in a lesson.
NOT_IMPORTED = {"jupyterlab", "pandas", "nbval", "pytest-benchmark", "pytest-xdist", "ruff"}


def normal(name):
    return re.sub(r"[-_.]+", "-", name).lower()


def names(requirements):
    return {normal(re.match(r"[\w.-]+", line)[0]) for line in requirements}


PLAIN, VIEW, TEST = names(PROJECT["dependencies"]), names(EXTRAS["view"]), names(EXTRAS["test"])


@cache
def imported(folder):
    """Third-party packages that the files below a folder import, by the name under which they are installed."""
    own = {"shop_calc"} | {path.stem for path in (ROOT / "tests").rglob("*.py")}
    installed, found = packages_distributions(), {}
    for path in sorted((ROOT / folder).rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Import):
                modules = [alias.name for alias in node.names]
            elif isinstance(node, ast.ImportFrom) and not node.level:
                modules = [node.module]
            elif isinstance(node, ast.Call) and getattr(node.func, "attr", "") == "importorskip":
                modules = [node.args[0].value]
            else:
                continue
            for top in {module.partition(".")[0] for module in modules} - set(sys.stdlib_module_names) - own:
                found.setdefault(normal(installed.get(top, [top])[0]), path.name)
    return found


@pytest.mark.parametrize(("folder", "declared"), [("shop_calc", PLAIN | VIEW), ("tests", PLAIN | TEST)])
def test_every_library_that_is_imported_is_declared(folder, declared):
    missing = {name: where for name, where in imported(folder).items() if name not in declared}
    assert missing == {}


def test_every_library_that_is_declared_is_used():
    assert imported("shop_calc").keys() | NOT_IMPORTED >= PLAIN | VIEW
    assert imported("tests").keys() | imported("shop_calc").keys() | NOT_IMPORTED >= TEST


def test_every_library_stands_in_the_table_for_contributors_with_its_licence():
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8").partition("## What we lean on")[2].partition("\n## ")[0]
    rows = dict(re.findall(r"^\| `([\w-]+)` \| [^|]+ \| ([^|]+) \|$", text, re.M))
    assert {normal(name) for name in rows} == PLAIN | VIEW | TEST
    assert all(licence.strip() for licence in rows.values())
