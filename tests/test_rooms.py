"""The rooms of the house: imports run one way, drawing and widgets stay in their rooms, nothing reads the clock."""

import ast
import re
import subprocess
import sys
from functools import cache
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1] / "shop_calc"
FILES = sorted(ROOT.rglob("*.py"))
# The folders of trade/ in the order in which a job runs through them; each may use those before it.
FOLDERS = ("jobs", "shape", "mortar", "batching", "timeline", "curing", "after", "logbook", "rehearsal")
BEFORE_ALL = ("advice", "problems", "working")  # modules of trade/ that know no folder and no job
RANK = {"units": 0, "defaults": 0, "science": 0, "trade": 1, "lesson": 2, "__main__": 3, "__init__": 0}


@cache
def _nodes(path):
    return tuple(ast.walk(ast.parse(path.read_text(encoding="utf-8"))))


def _imports(path):
    for node in _nodes(path):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            yield node.module
            yield from (f"{node.module}.{alias.name}" for alias in node.names)


def _room(path):
    return path.relative_to(ROOT).parts[0].removesuffix(".py")


def test_imports_point_one_way():
    back = []
    for path in FILES:
        own = _room(path)
        for name in _imports(path):
            parts = name.split(".")
            if parts[0] != "shop_calc" or len(parts) < 2 or parts[1].startswith("__version"):
                continue
            if RANK[parts[1]] > RANK[own]:
                back.append(f"{path.relative_to(ROOT)} in {own} imports {name}")
    assert back == []


def _trade_rank(part):
    """Place of a folder or module of trade/: what every folder uses, the folders in order, what joins them."""
    if part in BEFORE_ALL:
        return -1
    return FOLDERS.index(part) if part in FOLDERS else len(FOLDERS) - 1.5  # the practice pour plans whole jobs


def test_the_folders_of_trade_use_only_those_before_them():
    back = {}
    for path in sorted((ROOT / "trade").rglob("*.py")):
        part = path.relative_to(ROOT / "trade").parts[0].removesuffix(".py")
        used = {name.split(".")[2] for name in _imports(path) if name.startswith("shop_calc.trade.")}
        later = {name for name in used - {part} if _trade_rank(name) > _trade_rank(part)}
        back |= {str(path.relative_to(ROOT)): later} if later else {}
    assert back == {}, "a module uses what comes after it; where does that belong?"


def test_every_folder_of_trade_has_its_place_and_the_rooms_are_told_in_that_order():
    folders = {path.name for path in (ROOT / "trade").iterdir() if path.is_dir() and (path / "__init__.py").exists()}
    assert folders == set(FOLDERS)
    told = (ROOT.parent / "DEVELOPERS.md").read_text(encoding="utf-8").partition("    trade/ ")[2].partition("    lesson/ ")[0]
    assert [name for name in re.findall(r"(\w+)/", told) if name in FOLDERS] == list(FOLDERS)


def test_science_reads_no_files_and_knows_no_other_room():
    for path in (ROOT / "science").rglob("*.py"):
        used = set(_imports(path))
        others = {name for name in used if name.startswith("shop_calc") and not name.startswith("shop_calc.science")}
        assert others <= {"shop_calc", "shop_calc.science"}, f"{path.name}: {others}"
        assert not used & {"csv", "pathlib", "json", "tomllib", "os"}, path.name
        calls = {node.func.id for node in _nodes(path) if isinstance(node, ast.Call)
                 and isinstance(node.func, ast.Name)}  # fmt: skip
        assert "open" not in calls and "print" not in calls, path.name


@pytest.mark.parametrize(("library", "room"), [("matplotlib", "lesson/pictures"), ("ipywidgets", "lesson/blocks")])
def test_drawing_and_widgets_stay_in_their_rooms(library, room):
    for path in FILES:
        if any(name.split(".")[0] == library for name in _imports(path)):
            assert path.relative_to(ROOT).as_posix().startswith(room), path


def test_nothing_evaluates_text_and_nothing_reads_the_clock():
    for path in FILES:
        for node in _nodes(path):
            if isinstance(node, ast.Call):
                name = node.func.id if isinstance(node.func, ast.Name) else getattr(node.func, "attr", "")
                assert name not in {"eval", "exec", "compile"} or isinstance(node.func, ast.Attribute), path
                assert name not in {"now", "today", "utcnow"}, f"{path.name} asks for {name}()"
        assert not {"pickle", "marshal", "shelve"} & {name.split(".")[0] for name in _imports(path)}, path


def test_trade_opens_without_drawing_widgets_or_heavy_libraries():
    code = (
        "import sys, shop_calc.trade.plan, shop_calc.trade.report; "
        "print([m for m in ('matplotlib', 'ipywidgets', 'pandas', 'scipy', 'IPython') if m in sys.modules])"
    )
    out = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout
    assert out.strip() == "[]"


def test_modules_stay_short():
    long = {str(path.relative_to(ROOT)): len(path.read_text().splitlines()) for path in FILES}
    long = {name: count for name, count in long.items() if count > 350}
    assert long == {}, "lines; which part of it has a name that somebody would look for?"
