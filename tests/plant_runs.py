"""A run of the chosen tests for every planted error, without a copy of the project. Used by `plant_errors.py`.

For an error inside a function: one process collects all tests once and forks for every error; the child puts the changed code
into the function that is already there, runs the chosen tests until one fails, and says which. For an error outside functions
(a constant, a default) it puts the changed value wherever the old one is bound; where that is not enough, a child that has
loaded only the packages of others imports everything afresh; so it is for a line that runs while test files are read, where
no test noticed. A test that notices is run once without any error too: if it fails then as well, its word does not count.
"""

import ast
import functools
import gc
import importlib
import importlib.machinery
import importlib.util
import json
import os
import resource
import signal
import sys
import tempfile
import types
from collections import defaultdict
from pathlib import Path

import pytest
from _pytest.runner import runtestprotocol
from plant_map import ROOT, WORDS, Chooser, caches, file_of, places, refresh

LONGEST_CPU_S = 60  # of the processor, not of the clock: other work may go on beside
MOST_MEMORY = 6 * 2**30
AFRESH, NEAREST = "afresh", 6  # files that are asked then
LOADED = ("numpy", "scipy.optimize", "scipy.stats", "scipy.integrate", "scipy.interpolate", "shapely", "pandas", "pint",
          "hypothesis", "matplotlib.figure", "jinja2", "ipywidgets", "nbformat", "psychrolib", "iapws")  # fmt: skip


class Quick:
    """A plugin: examples that fail are not made small first, and the first test that fails is kept."""

    def __init__(self):
        self.first = ""

    def pytest_configure(self):
        from hypothesis import Phase, settings

        settings.register_profile("plant", parent=settings.get_profile("ci"), phases=(Phase.explicit, Phase.generate))
        settings.load_profile("plant")

    def pytest_runtest_logreport(self, report):
        if report.failed:
            self.first = self.first or report.nodeid


def in_child(work):
    """Do the work in a forked process: the test that it names as failing, "?" when it fails or never comes back, or ""."""
    reads, writes = os.pipe()
    child = os.fork()
    if child:
        os.close(writes)
        status = os.waitpid(child, 0)[1]
        with os.fdopen(reads, encoding="utf-8") as said:
            first = said.read()
        return first or ("?" if status else "")
    try:
        nothing = os.open(os.devnull, os.O_RDWR)
        os.dup2(nothing, 1)
        os.dup2(nothing, 2)
        signal.signal(signal.SIGPROF, signal.SIG_DFL)
        signal.setitimer(signal.ITIMER_PROF, LONGEST_CPU_S)
        resource.setrlimit(resource.RLIMIT_AS, (MOST_MEMORY, MOST_MEMORY))
        os.write(writes, work().encode())
        os._exit(0)
    finally:
        os._exit(1)


class Changed(importlib.machinery.SourceFileLoader):
    """Finds and loads one module from a changed source."""

    def __init__(self, module, source):
        super().__init__(module.removesuffix(".py").replace("/", "."), str(ROOT / module))
        self.source = source

    def find_spec(self, name, path=None, target=None):
        return importlib.util.spec_from_file_location(name, self.path, loader=self) if name == self.name else None

    def get_code(self, fullname):
        return compile(self.source, self.path, "exec")


def run_afresh(module, source, tests):
    """Import everything with the changed source; the first test that fails."""
    changed, quick = Changed(module, source), Quick()
    sys.meta_path.insert(0, changed)
    importlib.import_module(changed.name)  # before pytest, which looks for modules with examples in its own way
    for place in list(dict.fromkeys(file_of(test) for test in tests))[:NEAREST]:  # a file at a time: the first often notices
        if pytest.main([*WORDS, "-x", *(test for test in tests if file_of(test) == place)], plugins=[quick]):
            return quick.first or "?"
    return ""


def function_at(source, line):
    """Qualified name of the outermost function whose body holds the line, or None."""

    def search(body, before):
        for node in body:
            if isinstance(node, ast.FunctionDef) and node.body[0].lineno <= line <= node.end_lineno:
                return before + node.name
            if isinstance(node, ast.ClassDef) and (found := search(node.body, f"{before}{node.name}.")):
                return found
        return None

    return search(ast.parse(source).body, "")


def codes_of(code, wanted):
    """Code objects of that qualified name below a module's code, in order."""
    for inner in code.co_consts:
        if isinstance(inner, types.CodeType):
            yield from [inner] if inner.co_qualname == wanted else codes_of(inner, wanted)


def changed_values(module, source):
    """Values that a module sets outside functions, where the changed source gives others: {name: (old, new)}; and the defaults
    of its functions: {qualified name: function with the new ones}.
    """
    old, new = vars(module), {"__name__": module.__name__, "__file__": module.__file__}
    exec(compile(source, module.__file__, "exec"), new)  # our own source
    plain = {name: (old[name], value) for name, value in new.items()
             if name in old and not callable(value) and not isinstance(value, types.ModuleType) and not name.startswith("__")
             and " at 0x" not in repr(value) and repr(value) != repr(old[name])}  # fmt: skip
    defaults = {value.__qualname__: value for value in new.values() if isinstance(value, types.FunctionType)
                and value.__module__ == module.__name__}  # fmt: skip
    return plain, defaults


class Runner:
    """A plugin that runs no test itself: it forks for every error and lets the child run the chosen ones."""

    def __init__(self, errors, chooser, tell):
        self.errors, self.chooser, self.tell = errors, chooser, tell
        self.sound, self.items, self.stores, self.functions = {}, {}, [], defaultdict(list)

    def pytest_runtestloop(self, session):
        self.items, self.stores = {item.nodeid: item for item in session.items}, caches()
        for thing in gc.get_objects():
            if isinstance(thing, types.FunctionType) and thing.__code__.co_filename.startswith(str(ROOT / "shop_calc")):
                self.functions[thing.__code__.co_filename, thing.__code__.co_qualname].append(thing)
        gc.collect()
        gc.freeze()
        for number, (module, line, _, text, source) in enumerate(self.errors):
            tests = [test for test in self.chooser.tests_for(module, line) if self.sound.get(test, True)]
            change = functools.partial(self.change, module, source, function_at(source, line))
            while (first := in_child(lambda: self.run(tests, change))) not in ("", "?", AFRESH) and not self.is_sound(first):  # noqa: B023
                tests = [test for test in tests if test != first]
            if not first and text in self.chooser.early.get(module, ()):
                first = AFRESH  # tests may hold values made with this line before it was changed
            if not function_at(source, line) and first not in ("", "?", AFRESH):
                name = text.partition("=")[0].partition(",")[0].strip()
                if name and name in self.chooser.texts[file_of(first)]:  # the test may hold a copy: asked again afresh
                    first = f"{AFRESH} {first}"
            self.tell(number, first, tests)
        return True

    def change(self, module, source, name):
        """Put the changed code, or the changed value, where the old one is; False when that is not enough."""
        path = str(ROOT / module)
        if name:
            old = sorted(self.functions[path, name], key=lambda each: each.__code__.co_firstlineno)
            for function, code in zip(old, codes_of(compile(source, path, "exec"), name), strict=False):
                function.__code__ = code
            return bool(old)
        plain, defaults = changed_values(sys.modules[module.removesuffix(".py").replace("/", ".")], source)
        done = False
        for name, (old, new) in plain.items():
            for other in list(sys.modules.values()):
                if getattr(other, "__dict__", {}).get(name) is old:
                    setattr(other, name, new)
                    done = True
        for name, function in defaults.items():
            for old in self.functions[path, name]:
                if repr((old.__defaults__, old.__kwdefaults__)) != repr((function.__defaults__, function.__kwdefaults__)):
                    old.__defaults__, old.__kwdefaults__, done = function.__defaults__, function.__kwdefaults__, True
        return done

    def is_sound(self, test):
        if test not in self.sound:
            self.sound[test] = not in_child(lambda: self.run([test], lambda: True))
        return self.sound[test]

    def run(self, tests, change):
        """The first test that fails after the change."""
        if not change():
            return AFRESH
        for store in self.stores:
            store.cache_clear()
        items = [self.items[test] for test in tests if test in self.items]
        for item, after in zip(items, [*items[1:], None], strict=True):
            if any(report.failed for report in runtestprotocol(item, log=False, nextitem=after)):
                return item.nodeid
        return ""


def run_all(errors, limit_s, again, tell):
    """Run every error; `tell(error, noticed)` hears the outcome."""
    os.environ["OPENBLAS_NUM_THREADS"] = "1"
    sys.dont_write_bytecode = True
    os.chdir(ROOT)
    sys.path.insert(0, str(ROOT))  # another copy may be the installed one
    for name in LOADED:
        importlib.import_module(name)
    refresh(places() if again == [] else [Path(place).as_posix() for place in again or ()])
    with tempfile.TemporaryDirectory() as folder:
        tempfile.tempdir = os.environ["TMPDIR"] = folder  # whatever a killed test leaves behind goes with it
        reads, writes = os.pipe()
        if not os.fork():

            def say(number, first, tests):
                os.write(writes, (json.dumps([number, first, tests if first.startswith(AFRESH) else []]) + "\n").encode())

            try:
                pytest.main([*WORDS, *places()], plugins=[Quick(), Runner(errors, Chooser(limit_s), say)])
            finally:
                os._exit(0)
        os.close(writes)
        later = []
        with os.fdopen(reads, encoding="utf-8") as said:
            for number, first, tests in map(json.loads, said):
                if first.startswith(AFRESH):
                    later.append((errors[number], [*filter(None, [first.partition(" ")[2]]), *tests]))
                else:
                    tell(errors[number], bool(first))
        for error, tests in later:
            tell(error, bool(in_child(lambda: run_afresh(error[0], error[4], tests))))  # noqa: B023
    tempfile.tempdir = None
