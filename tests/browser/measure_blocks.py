"""Key press to new words and picture, for every block, beside `interactive_output` drawing the same picture.

On request, with JupyterLab and Chromium on this machine and nothing else running:

    python -m pytest tests/browser/measure_blocks.py -s

It prints a table and asserts nothing about time: a machine may be busy.
"""

import json
import statistics
from pathlib import Path

import nbformat
import pytest
from nbformat.v4 import new_code_cell, new_notebook

from shop_calc.lesson.stored_form import tidy

WORKBOOKS = Path(__file__).parents[2] / "workbooks"
LESSONS = [path for path in sorted(WORKBOOKS.glob("*.ipynb")) if "Block(" in path.read_text(encoding="utf-8")]
ROUNDS, PRESSES = 6, 6  # taken in turns, so that both meet the same machine

PLAIN = """import ipywidgets
from IPython.display import HTML, display
from shop_calc.lesson.page import img_tag
row = next(r for r in block.rows.values() if hasattr(r, "grid"))
def draw(place):
    result = block._model(**{**block.values, row.key: row.ends[0] + place * (row.ends[1] - row.ends[0])})
    block.picture.update(result, "both")
    display(HTML(block._words_of(result, "both")), HTML(img_tag(block.picture.png(), "x")))
knob = ipywidgets.FloatSlider(value=0.75, min=0.5, max=1, step=0.25)
ipywidgets.VBox([knob, ipywidgets.interactive_output(draw, {"place": knob})])"""

WAIT = """root => { window.shopSeen = null; const image = root.querySelector('img'); const before = image && image.src;
    const start = performance.now();
    const watch = new MutationObserver(() => { const now = root.querySelector('img');
        if (now && now.src !== before) { window.shopSeen = performance.now() - start; watch.disconnect(); } });
    watch.observe(root, {subtree: true, childList: true, attributes: true}); }"""


def _presses(page, root):
    """Times of one round; the first press starts from an end, so that every press moves the knob."""
    knob, times = root.get_by_role("slider").first, []
    knob.focus()
    page.keyboard.press("Home")
    page.wait_for_timeout(600)
    for number in range(PRESSES):
        knob.focus()
        root.evaluate(WAIT)
        page.keyboard.press("ArrowLeft" if number % 2 else "ArrowRight")
        page.wait_for_function("window.shopSeen !== null", timeout=10_000)
        times.append(page.evaluate("window.shopSeen"))
        page.wait_for_timeout(250)
    return times


def _said(times):
    return f"{statistics.median(times):5.0f} ms median {sorted(times)[int(0.95 * len(times))]:5.0f} ms 95th"


@pytest.mark.parametrize("path", LESSONS, ids=lambda path: path.stem)
def test_measure(lab, run_all, page, path):
    _, root = lab
    cells = []
    for cell in json.loads(path.read_text(encoding="utf-8"))["cells"]:
        if cell["cell_type"] == "code":
            source = "".join(cell["source"])
            if "Block(" in source and "import" not in source:
                cells += [new_code_cell(source.replace("Block(", "block = Block(", 1) + "\nblock"), new_code_cell(PLAIN)]
                break
            cells.append(new_code_cell(source))
    notebook = new_notebook(cells=[*cells, new_code_cell("0")])
    tidy(notebook)
    nbformat.write(notebook, root / "measured.ipynb")
    run_all("measured.ipynb")
    ways = page.locator(".shop-block").first, page.locator(".jp-OutputArea-output .widget-vbox").last
    times = [], []
    for way in ways:
        way.locator("img").wait_for()
    for _ in range(ROUNDS):
        for kept, way in zip(times, ways, strict=True):
            kept += _presses(page, way)
    print(f"\n{path.stem:26} block {_said(times[0])}   interactive_output {_said(times[1])}")
    assert page.away == []
