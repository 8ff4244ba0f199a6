"""The shop sheet as a browser prints it: two pages on both papers."""

import shutil
import subprocess
import tomllib

import pytest

from shop_calc.lesson.sheet import save_sheet
from shop_calc.lesson.sheet.printing import find_browser
from shop_calc.trade.jobs.job import check_job, demo_jobs, read_job
from shop_calc.trade.plan import make_plan


def _told(file):
    said = subprocess.run(["pdfinfo", file], capture_output=True, text=True, check=True).stdout
    return dict(line.split(":", 1) for line in said.splitlines())


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
    told = _told(file)
    assert int(told["Pages"]) == 2
    assert {"letter": "612 x 792", "a4": "595"}[paper].split(" ")[0] in told["Page size"].replace("594.96", "595")
    assert [path.name for path in tmp_path.iterdir()] == [f"{name}.pdf"]


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_an_l_with_all_edges_dropped_to_four_depths_is_two_pages(printer, tmp_path, paper):
    # 26 rows in its cut list, and a name of a hundred letters
    entries = tomllib.loads(demo_jobs()["garden_bench_top"].read_text(encoding="utf-8"))
    depths = {"3 in": ["front", "left"], "5 in": ["inner back", "inner right"], "2 1/2 in": "right", "2 3/4 in": "back"}
    entries["piece"] = {
        "outline": "L", "length": "12 ft", "width": "9 ft", "notch_length": "118 in", "notch_width": "82 in",
        "thickness": "1 3/4 in", "exposed": "all",
        "drop": [{"edge": edge, "depth": depth, "width": "2 in"} for depth, edge in depths.items()],
    }  # fmt: skip
    entries |= {"name": "A long name " * 8, "mixer": {"vessel": "drum", "usable": "200 L"}}
    file = save_sheet(make_plan(check_job(entries)), tmp_path / "l.pdf", paper=paper)
    assert int(_told(file)["Pages"]) == 2
