"""Every notebook in a real browser: it runs, nothing goes wrong, nothing leaves the machine, its block answers."""

from pathlib import Path

import pytest
from test_block_in_lab import nothing_wrong

WORKBOOKS = Path(__file__).parents[2] / "workbooks"
NOTEBOOKS = sorted(WORKBOOKS.glob("*.ipynb"))


@pytest.fixture
def expect():
    expect = pytest.importorskip("playwright.sync_api").expect
    expect.set_options(timeout=20_000)
    return expect


def _names(page, root):
    """Role and name of everything below `root` that a screen reader would stop at."""
    return root.evaluate(
        """root => [...root.querySelectorAll('input, select, button, [role=slider], img')].map(e => [
            e.tagName.toLowerCase(),
            e.getAttribute('aria-label') || e.getAttribute('alt') || e.getAttribute('title') || e.textContent.trim()
              || (e.labels && e.labels.length ? e.labels[0].textContent.trim() : '')
              || (e.id && document.querySelector(`label[for="${e.id}"]`) || {textContent: ''}).textContent.trim()])"""
    )


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_it_runs_and_its_block_answers_to_keys_and_typing(run_all, page, expect, path):
    run_all(path.name)
    nothing_wrong(page)
    for image in page.locator(".jp-OutputArea-output img").all():
        assert (image.get_attribute("alt") or "").strip(), f"{path.name}: a picture without words"
    blocks = page.locator(".shop-block")
    for number in range(blocks.count()):
        _drive(page, blocks.nth(number), expect)
    nothing_wrong(page)


def _drive(page, block, expect):
    words, picture = block.locator('[role="status"], [role="alert"]').first, block.get_by_role("img")
    for tag, name in _names(page, block):
        assert name or tag == "div", f"{tag} without a name"
    if block.get_by_role("slider").count() == 0:  # a form or a bench of buttons has a test of its own
        return
    start = words.text_content()
    reset = block.get_by_role("button", name="Reset", exact=True)
    knobs = block.get_by_role("slider")
    box = block.locator("input[type=number], input[type=text]").first
    assert knobs.count() <= 4
    typed = ""
    for place in range(knobs.count()):
        knobs.nth(place).focus()
        said = []
        for key in ("Home", "End"):
            page.keyboard.press(key)
            page.wait_for_timeout(700)
            said.append((words.text_content(), picture.get_attribute("alt") if picture.count() else ""))
            if place == 0 and words.text_content() != start:
                typed = box.input_value()
        assert said[0] != said[1], f"slider {place + 1} moves nothing"
        reset.click()
        expect(words).to_have_text(start)
    box.fill(typed)
    box.press("Enter")
    expect(words).not_to_have_text(start)
    reset.click()
    expect(words).to_have_text(start)
