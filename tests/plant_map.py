"""Which tests touch which line of science/ and trade/, and how long each takes. Used by `plant_errors.py`.

Every test file is run once under coverage, and the lines that each test touches are kept in `.planted/` (hidden, ignored by
git) by the text of the line, so that a map outlives changes elsewhere in the file and lines that move to another module. A
test file that changed since is mapped again. What is cached between tests is emptied at the start of every file.
"""

import ast
import functools
import gc
import hashlib
import json
import os
import re
from collections import defaultdict
from functools import _lru_cache_wrapper
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
MAPS = ROOT / ".planted"
EARLY = MAPS / "early.json"
LEFT_OUT = ("test_docstrings", "test_notebooks_stored", "test_plant_errors", "test_pictures", "test_rooms")
WORDS = ["-q", "-s", "--disable-warnings", "--no-header", "--tb=no", "-p", "no:cacheprovider", "-p", "no:xdist",
         "-p", "no:nbval", "-o", "addopts=", "-o", "doctest_optionflags=ELLIPSIS", "--doctest-modules"]  # fmt: skip
SLOW_S = 1.0


def places():
    """Every file with tests that may notice: test files, and modules of both rooms for their doctests."""
    tests = [path for path in (ROOT / "tests").glob("test_*.py") if not path.name.startswith(LEFT_OUT)]
    modules = [path for room in ("science", "trade") for path in (ROOT / "shop_calc" / room).rglob("*.py")]
    return sorted(path.relative_to(ROOT).as_posix() for path in [*tests, *modules])


def stamp(place):
    """Changes when the tests of this file change; the check rows belong to their runner, only its examples to a module."""
    data = (ROOT / place).read_bytes()
    if place.startswith("shop_calc"):
        data = b"".join(line for line in data.splitlines() if line.lstrip().startswith((b">>>", b"...")))
    rows = sorted((ROOT / "data" / "published").glob("*.csv")) if place.endswith("test_published.py") else []
    return hashlib.sha256(data + b"".join(path.read_bytes() for path in rows)).hexdigest()


def map_of(place):
    return MAPS / (place.replace("/", "+") + ".json")


def file_of(test):
    return test.partition("::")[0]


def caches():
    """What the two rooms and the tests keep between calls, emptied by `cache_clear`."""
    owners = ("shop_calc.science", "shop_calc.trade", "test_", "practice_pieces")
    found = [thing for thing in gc.get_objects() if isinstance(thing, _lru_cache_wrapper)]
    return [thing for thing in found if (thing.__module__ or "").startswith(owners)]


class Mapper:
    """A plugin that notes what each passing test costs and touches."""

    def __init__(self, coverage):
        self.coverage, self.seconds, self.failed, self.file = coverage, defaultdict(float), set(), None

    def pytest_runtest_protocol(self, item):
        if self.file != file_of(item.nodeid):
            self.file = file_of(item.nodeid)
            for cache in caches():
                cache.cache_clear()
        self.coverage.switch_context(item.nodeid)

    def pytest_runtest_logreport(self, report):
        self.seconds[report.nodeid] += report.duration
        if not report.passed:
            self.failed.add(report.nodeid)

    def early(self):
        """Lines that ran, by module, as texts: values that test files make while they are read hold no error later."""
        data = self.coverage.get_data()
        texts = {path: Path(path).read_text(encoding="utf-8").splitlines() for path in data.measured_files()}
        return {Path(path).relative_to(ROOT).as_posix(): sorted({lines[line - 1].strip() for line in data.lines(path)})
                for path, lines in texts.items()}  # fmt: skip

    def keep(self, stale):
        """Write one map a file."""
        data, lines = self.coverage.get_data(), defaultdict(lambda: defaultdict(lambda: defaultdict(set)))
        for path in data.measured_files():
            module = Path(path).relative_to(ROOT).as_posix()
            texts = Path(path).read_text(encoding="utf-8").splitlines()
            for line, contexts in data.contexts_by_lineno(path).items():
                for test in set(contexts) - self.failed - {""}:
                    lines[file_of(test)][module][texts[line - 1].strip()].add(test)
        for place in stale:
            tests = {test: round(cost, 4) for test, cost in self.seconds.items() if file_of(test) == place}
            number = {test: count for count, test in enumerate(tests)}
            touched = {module: {text: sorted(number[test] for test in found) for text, found in each.items()}
                       for module, each in lines[place].items()}  # fmt: skip
            map_of(place).write_text(json.dumps({"stamp": stamp(place), "tests": tests, "lines": touched}))


def _under_coverage(words, keep):
    """Run pytest under coverage in a process of its own, and let `keep(mapper)` write what was seen."""
    child = os.fork()
    if child:
        os.waitpid(child, 0)
        return
    from coverage import Coverage

    rooms = [str(ROOT / "shop_calc" / room) for room in ("science", "trade")]
    mapper = Mapper(Coverage(data_file=None, source=rooms, config_file=False))
    mapper.coverage.start()
    pytest.main([*WORDS, *words], plugins=[mapper])
    mapper.coverage.stop()
    keep(mapper)
    os._exit(0)


def refresh(again=()):
    """Map the files that changed, and those asked for; and what runs before any test does."""
    MAPS.mkdir(exist_ok=True)
    stale = [place for place in places() if place in again or not map_of(place).exists()
             or json.loads(map_of(place).read_text())["stamp"] != stamp(place)]  # fmt: skip
    if stale:
        _under_coverage(stale, lambda mapper: mapper.keep(stale))
    if stale or not EARLY.exists():
        _under_coverage(["--collect-only", *places()], lambda mapper: EARLY.write_text(json.dumps(mapper.early())))


def _lines_of_statement(source, line):
    """First and last line of the statement that holds a line, without the block below it; outside functions what it sets."""
    statements = [node for node in ast.walk(ast.parse(source)) if isinstance(node, ast.stmt)]
    found = [node for node in statements if node.lineno <= line <= node.end_lineno]
    inner = max(found, key=lambda node: (node.lineno, -node.end_lineno))
    last = inner.body[0].lineno - 1 if getattr(inner, "body", None) else inner.end_lineno
    if any(isinstance(node, ast.FunctionDef) and node.body[0].lineno <= line for node in found):
        return inner.lineno, max(last, line), None
    names = [node.id for target in getattr(inner, "targets", []) for node in ast.walk(target) if isinstance(node, ast.Name)]
    return inner.lineno, max(last, line), names


def _source(module):
    return (ROOT / module).read_text(encoding="utf-8") if (ROOT / module).exists() else ""


class Chooser:
    """Which tests an error is worth: those that touch its line, nearest and quickest first, up to a limit of seconds."""

    def __init__(self, limit_s):
        self.limit_s, self.cost, self.texts = limit_s, {}, {}
        self.early = json.loads(EARLY.read_text())  # module -> texts of lines that run before any test
        self.touch = defaultdict(lambda: defaultdict(set))  # module -> text of a line -> tests
        self.moved = defaultdict(set)  # text of a line that has left its module since it was mapped -> tests
        there = functools.cache(lambda module: {line.strip() for line in _source(module).splitlines()})
        for place in places():
            kept = json.loads(map_of(place).read_text())
            self.cost.update(kept["tests"])
            self.texts[place] = (ROOT / place).read_text(encoding="utf-8")
            names = list(kept["tests"])
            for module, lines in kept["lines"].items():
                for text, numbers in lines.items():
                    kept_in = self.touch[module] if text in there(module) else self.moved
                    kept_in[text].update(names[number] for number in numbers)

    def _far(self, test, module):
        """0 for the module's own examples, 1 for check rows and files that name it, 2 for others."""
        place, dotted = file_of(test), module.removesuffix(".py").replace("/", ".")
        if place == module:
            return 0
        package, _, stem = dotted.rpartition(".")
        named = (dotted, f"from {package} import {stem}")
        rows = place.endswith(("test_published.py", "test_entry_limits.py"))
        return 1 if rows or any(name in self.texts[place] for name in named) else 2

    def tests_for(self, module, line):
        """Ids of the tests, in the order in which to run them."""
        source, touch = (ROOT / module).read_text(encoding="utf-8"), self.touch[module]
        first, last, names = _lines_of_statement(source, line)
        texts = [text.strip() for text in source.splitlines()]
        found = set()
        if names is None:
            found = {test for text in texts[first - 1 : last] for each in (touch, self.moved) for test in each.get(text, ())}
        elif names:  # constants: whoever uses them, in any module, and files that name them
            use = re.compile(rf"\b({'|'.join(names)})\b")
            found = {test for lines in self.touch.values() for text, each in lines.items() if use.search(text) for test in each}
            naming = {place for place, text in self.texts.items() if place.startswith("tests/") and use.search(text)}
            found |= {test for test in self.cost if file_of(test) in naming}
        found = found or {test for each in touch.values() for test in each}
        chosen, spent = [], 0.0
        for test in sorted(found, key=lambda test: (self.cost[test] > SLOW_S, self._far(test, module), self.cost[test])):
            if not chosen or spent + self.cost[test] <= self.limit_s:
                chosen.append(test)
                spent += self.cost[test]
        return chosen
