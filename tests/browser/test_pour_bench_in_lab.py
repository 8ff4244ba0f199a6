"""The practice pour in a real browser: every button by name and keyboard, no error, no request off the machine."""

import nbformat
import pytest
from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook

from shop_calc.lesson.stored_form import tidy
from shop_calc.trade.rehearsal.words import ACTS

IMPORT = "from shop_calc.lesson.blocks.pour_bench import PourBench"
BENCH = 'PourBench("mild 7", "mild", title="A mild day")'


@pytest.fixture
def pour(lab):
    _, root = lab
    notebook = new_notebook(cells=[new_markdown_cell("# Ready?"), *map(new_code_cell, (IMPORT, BENCH))])
    tidy(notebook)
    nbformat.write(notebook, root / "pour.ipynb")
    return "pour.ipynb"


def test_the_bench_is_worked_by_keyboard_and_tells_the_morning(run_all, page, pour):
    expect = pytest.importorskip("playwright.sync_api").expect
    expect.set_options(timeout=20_000)  # the first draw waits for imports
    run_all(pour)
    bench = page.locator(".shop-pour").first
    words, picture = bench.get_by_role("status").first, bench.get_by_role("img").first
    expect(words).to_contain_text("08:20")
    for act in ACTS.values():
        expect(bench.get_by_role("button", name=act.title, exact=True)).to_have_count(1)

    def press(word):
        button = bench.get_by_role("button", name=ACTS[word].title, exact=True)
        button.focus()
        page.keyboard.press("Enter")

    press("look bucket")
    expect(words).to_contain_text("stands stiff in its bucket")
    press("stir")
    expect(words).to_contain_text("08:22")
    press("wait 15")
    expect(words).to_contain_text("08:37")
    press("look edge")
    expect(words).to_contain_text("the base stays where it is")
    expect(picture).to_have_attribute("alt", "Section through the piece: the base, no face yet with 4 of 4 sides on. "
                                      "Seen: nudged: it keeps its shape. No thumb is on it now.")  # fmt: skip
    press("spread")
    expect(words).to_contain_text("Face on at 08:43")
    press("leave")
    expect(bench.get_by_role("status").last).to_contain_text("In the morning this shows")
    assert bench.get_by_role("img").count() == 2  # the piece, and the ribbon of the day
    bench.get_by_role("button", name="Begin again", exact=True).click()
    expect(words).to_contain_text("08:20")
    wrong = ".jp-OutputArea-output[data-mime-type='application/vnd.jupyter.stderr'], .jp-mod-error"
    assert page.locator(wrong).count() == 0 and page.away == []
