"""The block in a real browser: keyboard, typing, unit switch; no error, no request off the machine."""

import re
from pathlib import Path

import nbformat
import pytest
from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook

from shop_calc.lesson.stored_form import tidy

WORKBOOKS = Path(__file__).parents[2] / "workbooks"
LESSONS = [path for path in sorted(WORKBOOKS.glob("*.ipynb")) if "Block(" in path.read_text(encoding="utf-8")]

IMPORTS = """from shop_calc.lesson.blocks import Block, slider
from shop_calc.lesson.pictures.base import Picture"""
PICTURE = """class Weight(Picture):
    def build(self, axes):
        axes.set(xlim=(0, 1), ylim=(0, 200), ylabel="kg")
        (self.line,) = axes.plot([0, 1], [0, 0])
    def update(self, result, system="both"):
        self.line.set_ydata([0, result])
        self.alt = f"A line up to {result:.1f} kg.\""""
BLOCK = """Block(
    lambda length_m, thickness_m: length_m * thickness_m * 800,
    lambda result, system: f"{result:.1f} kg in {system}",
    [slider("length_m", label="Length", value=60, low=12, high=96, unit="in"),
     slider("thickness_m", label="Thickness", value=1.5, low=1, high=3, unit="in")],
    picture=Weight())"""


@pytest.fixture
def small(lab):
    _, root = lab
    cells = [new_markdown_cell("# How heavy?"), *map(new_code_cell, (IMPORTS, PICTURE, BLOCK))]
    notebook = new_notebook(cells=cells)
    tidy(notebook)
    nbformat.write(notebook, root / "small.ipynb")
    return "small.ipynb"


@pytest.fixture
def expect():
    expect = pytest.importorskip("playwright.sync_api").expect
    expect.set_options(timeout=20_000)  # the first draw waits for imports
    return expect


def nothing_wrong(page):
    wrong = ".jp-OutputArea-output[data-mime-type='application/vnd.jupyter.stderr'], .jp-mod-error"
    assert page.locator(wrong).count() == 0
    assert page.away == []


def test_keyboard_typing_and_switch_change_words_and_picture(run_all, page, small, expect):
    run_all(small)
    block = page.locator(".shop-block").first
    words, picture = block.get_by_role("status"), block.get_by_role("img")
    length = page.get_by_label("Length (in)")
    expect(words).to_have_text("46.5 kg in both")
    expect(picture).to_have_attribute("alt", "A line up to 46.5 kg.")
    before = picture.get_attribute("src")
    knob = block.get_by_role("slider").first
    knob.focus()
    for key, inches in (
        ("ArrowRight", "61"),
        ("PageUp", "66"),
        ("End", "96"),
        ("Home", "12"),
        ("PageDown", "12"),
    ):
        page.keyboard.press(key)
        expect(length).to_have_value(inches)
    expect(words).to_have_text("9.3 kg in both")
    expect(picture).to_have_attribute("alt", "A line up to 9.3 kg.")
    assert picture.get_attribute("src") != before

    length.fill("72.4375")  # between two steps of the knob: kept as typed
    length.press("Enter")
    expect(words).to_have_text("56.1 kg in both")
    expect(length).to_have_value("72.4375")
    height = block.bounding_box()["height"]
    page.get_by_role("button", name="SI", exact=True).click()
    expect(page.get_by_label("Length (mm)")).to_have_value(re.compile(r"^1839\.9"))
    expect(page.get_by_label("Thickness (mm)")).to_have_value("38.1")
    expect(words).to_have_text("56.1 kg in si")
    page.get_by_role("button", name="Reset", exact=True).click()
    expect(words).to_have_text("46.5 kg in si")
    assert abs(block.bounding_box()["height"] - height) < 1
    nothing_wrong(page)


@pytest.mark.skipif(not LESSONS, reason="no lesson with a block yet")
def test_a_lesson_runs_and_its_block_answers(run_all, page, expect):
    run_all(LESSONS[0].name)
    block = page.locator(".shop-block").first
    block.wait_for()
    words, picture = block.locator('[role="status"], [role="alert"]'), block.get_by_role("img")
    knob = block.get_by_role("slider").first
    knob.focus()
    page.keyboard.press("Home")
    page.wait_for_timeout(800)
    said, alt = words.inner_text(), picture.get_attribute("alt")
    page.keyboard.press("End")
    expect(words).not_to_have_text(said)
    expect(picture).not_to_have_attribute("alt", alt)
    nothing_wrong(page)
