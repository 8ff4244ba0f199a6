"""The shop sheet as a browser prints it: two pages on both papers."""

import shutil
import subprocess

import pytest

from shop_calc.lesson.sheet import save_sheet
from shop_calc.lesson.sheet.printing import find_browser
from shop_calc.trade.jobs.job import demo_jobs, read_job
from shop_calc.trade.plan import make_plan


@pytest.fixture(scope="session")
def printer():
    browser = find_browser()
    if browser is None or shutil.which("pdfinfo") is None:
        pytest.skip("no Chromium or no pdfinfo on this machine: `apt-get install chromium poppler-utils`")
    return browser


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize("name", sorted(demo_jobs()))
def test_it_is_two_pages_on_both_papers(printer, tmp_path, name, paper):
    file = save_sheet(make_plan(read_job(demo_jobs()[name])), tmp_path / f"{name}.pdf", paper=paper)
    said = subprocess.run(["pdfinfo", file], capture_output=True, text=True, check=True).stdout
    told = dict(line.split(":", 1) for line in said.splitlines())
    assert int(told["Pages"]) == 2
    assert {"letter": "612 x 792", "a4": "595"}[paper].split(" ")[0] in told["Page size"].replace("594.96", "595")
    assert [path.name for path in tmp_path.iterdir()] == [f"{name}.pdf"]
