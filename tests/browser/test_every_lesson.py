"""Every notebook in a real browser: it runs, nothing goes wrong, nothing leaves the machine, its block answers."""

import re
from pathlib import Path

import pytest
from test_block_in_lab import nothing_wrong

WORKBOOKS = Path(__file__).parents[2] / "workbooks"
NOTEBOOKS = [path for path in sorted(WORKBOOKS.glob("*.ipynb")) if '"cell_type": "code"' in path.read_text("utf-8")]


@pytest.fixture
def expect():
    expect = pytest.importorskip("playwright.sync_api").expect
    expect.set_options(timeout=20_000)
    return expect


def _read_aloud(block):
    """What the browser tells a screen reader of a block, in reading order: (role, name)."""
    lines = (line.strip().removeprefix("- ") for line in block.aria_snapshot().splitlines())
    return [(role, name) for role, name in re.findall(r'^(\w+)(?: "([^"]*)")?', "\n".join(lines), re.MULTILINE)]


def _check_reading(block):
    told = _read_aloud(block)
    roles = [role for role, _ in told]
    for image in block.get_by_role("img").all():  # the tree leaves very long names out, the page does not
        assert (image.get_attribute("alt") or "").strip()
    for role in ("spinbutton", "textbox", "combobox", "button"):
        assert all(name.strip() for each, name in told if each == role), f"a {role} without a name: {told}"
    assert "status" in roles or "alert" in roles
    if "img" in roles:  # entries first, then the words, then the picture
        words = roles.index("status") if "status" in roles else roles.index("alert")
        assert words < roles.index("img")
        if "spinbutton" in roles:
            assert roles.index("spinbutton") < words


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
    _check_reading(block)
    if block.get_by_role("slider").count() == 0:  # a form or a bench of buttons has a test of its own
        return
    start = words.text_content()
    reset = block.get_by_role("button", name="Reset", exact=True)
    knobs = block.get_by_role("slider")
    box = block.locator("input[type=number], input[type=text]").first
    assert knobs.count() <= 4
    typed = ""

    def said_after(key, before, wait_ms):
        """Words and picture once they differ from `before`, or when the time is up: one end may say what was there."""
        page.keyboard.press(key)
        said = before
        for _ in range(wait_ms // 50):
            page.wait_for_timeout(50)
            said = words.text_content(), picture.get_attribute("alt") if picture.count() else ""
            if said != before:
                break
        return said

    at_start = words.text_content(), picture.get_attribute("alt") if picture.count() else ""
    for place in range(knobs.count()):
        knobs.nth(place).focus()
        low = said_after("Home", at_start, 700)
        typed = box.input_value() if place == 0 and low[0] != start else typed
        high = said_after("End", low, 5000)
        assert low != high, f"slider {place + 1} moves nothing"
        if place == 0 and not typed:  # the picture may come a moment before its words
            expect(words).not_to_have_text(start)
            typed = box.input_value()
        reset.click()
        expect(words).to_have_text(start)
        if picture.count():
            expect(picture).to_have_attribute("alt", at_start[1])
    box.fill(typed)
    box.press("Enter")
    expect(words).not_to_have_text(start)
    reset.click()
    expect(words).to_have_text(start)
