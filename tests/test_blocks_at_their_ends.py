"""Every slider block of the lessons with each slider at its ends: nothing cut off, no words over words, no odd words."""

import ast
import re
from functools import cache
from pathlib import Path

import nbformat
import pytest
from picture_checks import unreadable

from shop_calc.lesson import blocks
from shop_calc.lesson.blocks import Block

FOLDER = Path(__file__).parents[1] / "workbooks"
LESSONS = sorted(path.stem for path in FOLDER.glob("[01]*.ipynb") if "Block(" in path.read_text(encoding="utf-8"))
ODD = re.compile(r"\bnan\b|\binf\b|None|\.\.|  | ,|\(\)|\b(\w+) \1\b")


def needed(cells, wanted):
    """The statements that a cell hangs on, found backwards by the names they set: pictures before it are left out."""
    tree = [node for cell in cells for node in ast.parse(cell).body]
    names, kept = {node.id for node in ast.walk(ast.parse(wanted)) if isinstance(node, ast.Name)}, []
    for node in reversed(tree):
        sets = {each.id for each in ast.walk(node) if isinstance(each, ast.Name) and isinstance(each.ctx, ast.Store)}
        sets |= {alias.asname or alias.name.split(".")[0] for alias in getattr(node, "names", ())}
        sets |= {getattr(node, "name", "")}
        acts = isinstance(node, ast.Expr) and isinstance(node.value, ast.Call) and ".do(" in ast.unparse(node)
        if sets & names or acts:
            kept.append(node)
            names |= {each.id for each in ast.walk(node) if isinstance(each, ast.Name)}
    return ast.Module(kept[::-1], [])


@cache
def blocks_of(lesson):
    cells = [c.source for c in nbformat.read(FOLDER / f"{lesson}.ipynb", 4).cells if c.cell_type == "code"]
    made, plain = [], Block.__init__

    def noted(self, *given, **named):
        plain(self, *given, **named)
        made.append(self)

    for number, cell in enumerate(cells):
        if "Block(" not in cell or cell.startswith(("from ", "import ")):
            continue
        space = {}
        exec(compile(needed(cells[:number], cell), lesson, "exec"), space)
        blocks.block.Block.__init__ = noted
        try:
            exec(compile(cell, lesson, "exec"), space)
        finally:
            blocks.block.Block.__init__ = plain
    return made


@pytest.mark.parametrize("lesson", LESSONS)
def test_at_every_end_a_block_can_be_read(lesson):
    assert blocks_of(lesson)
    for block in blocks_of(lesson):
        start = {key: row.default for key, row in block.rows.items()}
        for key, row in block.rows.items():
            for end in row.ends:
                block.set(**{**start, key: end})
                if block.picture is not None:
                    assert unreadable(block.picture.figure) == [], (block.title, key, end)
                assert not ODD.search(block.text), (block.title, key, end, block.text)
