"""From the address of a lesson to its last cell, for every lesson: page, kernel and Run All apart.

On request, with JupyterLab and Chromium on this machine and nothing else running:

    python -m pytest tests/browser/measure_opening.py -s -n 0

It prints a table and asserts nothing about time: a machine may be busy. The first lesson is opened once before anything is
timed, so that Python and the browser have read their files; every lesson then has a browser without memory of its own.
"""

import itertools
import re
import time
from pathlib import Path

import pytest

WORKBOOKS = Path(__file__).parents[2] / "workbooks"
LONGEST_S = 60.0
LESSONS = [path for path in sorted(WORKBOOKS.glob("*.ipynb")) if '"cell_type": "code"' in path.read_text("utf-8")]


def _seconds(browser, base, name):
    """Seconds until the page stands, until its kernel is ready, and until the last cell has run."""
    context = browser.new_context(viewport={"width": 1280, "height": 1000})
    page, marks = context.new_page(), [time.perf_counter()]
    page.set_default_timeout(60_000)
    page.goto(f"{base}/lab/workspaces/auto-{time.time_ns()}/tree/{name}?reset")
    page.locator(".jp-Notebook .jp-Cell").first.wait_for()
    marks.append(time.perf_counter())
    page.locator('.jp-Notebook-ExecutionIndicator[data-status="idle"]').wait_for()
    page.get_by_role("button", name="| Idle").wait_for()
    marks.append(time.perf_counter())
    page.get_by_role("menuitem", name="Run", exact=True).click()
    page.get_by_role("menuitem", name="Run All Cells", exact=True).click()
    last = page.locator(".jp-CodeCell .jp-InputPrompt").last
    while not re.fullmatch(r"\[\d+\]:", last.inner_text().strip()):
        page.wait_for_timeout(50)
        assert time.perf_counter() - marks[-1] < LONGEST_S, f"{name}: Run All was lost, measure again"
    marks.append(time.perf_counter())
    context.close()
    return [after - before for before, after in itertools.pairwise(marks)]


@pytest.fixture(scope="module", autouse=True)
def _warm(browser, lab):
    (lab[1] / "warm.ipynb").write_bytes(LESSONS[0].read_bytes())
    _seconds(browser, lab[0], "warm.ipynb")


@pytest.mark.parametrize("path", LESSONS, ids=lambda path: path.stem)
def test_measure(browser, lab, path):
    opened, ready, run = _seconds(browser, lab[0], path.name)
    whole = opened + ready + run
    print(f"\n{path.stem:26} page {opened:4.1f}, kernel {ready:4.1f}, Run All {run:4.1f}, together {whole:4.1f} s", end="")
