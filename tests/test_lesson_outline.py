"""Every lesson is built alike: title, headings in order, length, habits; the checks themselves can fail."""

import copy
import json
from pathlib import Path

import pytest

from shop_calc.lesson import outline

WORKBOOKS = Path(__file__).parents[1] / "workbooks"
LESSONS = sorted(WORKBOOKS.glob("[01]*.ipynb"))


@pytest.mark.parametrize("path", LESSONS, ids=lambda path: path.stem)
def test_a_lesson_follows_the_outline(path):
    assert outline.faults(path) == [], f"`python -m shop_calc.lesson.outline workbooks/{path.name}` lists them all"


def prose(text):
    return {"cell_type": "markdown", "metadata": {}, "source": text}


def code(text, page=""):
    outputs = [{"output_type": "execute_result", "data": {"text/html": page}}] if page else []
    return {"cell_type": "code", "metadata": {}, "source": text, "outputs": outputs}


def good():
    cells = [
        prose("# When may the steel touch it?\nIt is ten past ten. " + "Look at it again. " * 260),
        prose("**You will be able to** say when.\n\n**Before you start** lesson 03.\n\n**Time** 45 minutes."),
        code("from shop_calc import units"),
        prose("## Guess first"),
        code("guess_h = 3.0"),
        *[prose(f"## {name}") for name in outline.HEADINGS[1:3]],
        *[prose("A line.") for _ in range(10)],
        code("show(picture)", '<figure><img alt="A line." src="data:"></figure>'),
        prose("## Move it"),
        code("Block(model, words, rows)"),
        *[prose(f"## {name}") for name in outline.HEADINGS[4:7]],
        code("print(guess_h)"),
        prose("## Practice"),
        *[code(f"answer = ...\npractice.check('q{k}', answer)") for k in range(4)],
        prose("## In short\n- One.\n\n**For the shop log** a line.\n\n**Next** 05.\n\n**Sources** a book."),
        prose("## More practice\n" + "word " * 900),
    ]
    return {"cells": cells}


def faults(tmp_path, notebook, name="04_x.ipynb"):
    path = tmp_path / name
    path.write_text(json.dumps(notebook), encoding="utf-8")
    return outline.faults(path)


def test_a_lesson_in_order_has_no_faults_and_more_practice_does_not_count(tmp_path):
    assert faults(tmp_path, good()) == []


def find(notebook, text):
    return next(k for k, cell in enumerate(notebook["cells"]) if text in cell["source"])


@pytest.mark.parametrize(
    ("at", "new", "part"),
    [
        ("# When may", "# The steel\n" + "Look at it again. " * 260, "must be a question"),
        ("**You will", "**You will be able to** say when. **Time** 45 minutes.", "Before you start"),
        ("## Against the book", "## Compared", "'## Against the book' is missing"),
        ("## Against the book", "## Where this stops being true", "'## Against the book' is missing"),
        ("## In short", "## In short\n**For the shop log**, **Next**", "**Sources** is missing"),
        ("# When may", "# When may the steel touch it?", "words before the closing practice"),
        ("guess_h = 3.0", "guess_h = 3.0\n" + "x = 1\n" * 12, "13 lines of code"),
        ("guess_h = 3.0", "guess_h = 3.0\nx = 1;", "trailing semicolon"),
        ("guess_h = 3.0", "import math\nguess_h = 3.0", "imports: in 2 cells"),
        ("from shop_calc", "from shop_calc import *", "star import"),
        ("from shop_calc", "import sys\nsys.path.append('.')", "sys.path"),
        ("guess_h = 3.0", "!pip install x", "a shell line or a magic"),
        ("guess_h = 3.0", "%matplotlib inline", "a shell line or a magic"),
        ("guess_h = 3.0", "g = 3.0", "no cell writes a guess down"),
        ("print(guess_h)", "print(1)", "guess_h never comes back"),
        ("'q2'", "answer = ...", "3 questions"),
        ("Block(", "print(2)", "no slider block"),
        ("A line.", "![](x.png)", "without alt text"),
        ("A line.", '<img src="x.png">', "without alt text"),
    ],
)
def test_each_fault_is_found(tmp_path, at, new, part):
    notebook = copy.deepcopy(good())
    notebook["cells"][find(notebook, at)]["source"] = new
    assert any(part in fault for fault in faults(tmp_path, notebook))


def test_a_picture_output_without_alt_text_is_found(tmp_path):
    notebook = good()
    place = find(notebook, "show(picture)")
    notebook["cells"][place] = code("show(picture)", '<img src="data:">')
    assert any("without alt text" in fault for fault in faults(tmp_path, notebook))


def test_headings_out_of_order_are_found(tmp_path):
    notebook = good()
    first, second = find(notebook, "## By hand"), find(notebook, "## See it")
    cells = notebook["cells"]
    cells[first], cells[second] = cells[second], cells[first]
    assert any("the order is" in fault for fault in faults(tmp_path, notebook))


def test_too_few_cells_are_found(tmp_path):
    notebook = good()
    notebook["cells"] = [cell for cell in notebook["cells"] if cell["source"] != "A line."]
    assert any("cells before the closing practice" in fault for fault in faults(tmp_path, notebook))


def test_the_first_page_has_a_lighter_outline(tmp_path):
    cells = [
        prose("# Where do I begin?\n" + "Look at it again. " * 80),
        prose("**You will be able to** start.\n\n**Time** 10 minutes."),
        code("from shop_calc import units"),
        *[prose(f"## {name}") for name in outline.LIGHT_HEADINGS[:2]],
        code("1 + 1"),
        prose("A line."),
        prose("## In short\n**Next** lesson 01."),
    ]
    assert faults(tmp_path, {"cells": cells}, "00_start_here.ipynb") == []
    assert faults(tmp_path, {"cells": cells}, "04_x.ipynb")
