"""The lessons without their code: each opens, shows no code, asks nobody, and its block answers."""

import re
import socket
import subprocess
import time
import urllib.request
from pathlib import Path

import pytest

from shop_calc.lesson import view

WORKBOOKS = Path(__file__).parents[2] / "workbooks"
LESSONS = sorted(WORKBOOKS.glob("[01]*.ipynb"))


@pytest.fixture(scope="module")
def shown(chromium, tmp_path_factory):
    pytest.importorskip("voila", reason="pip install -e '.[view]' brings the view without code")
    tmp = tmp_path_factory.mktemp("view")
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    words, environment = view.command(port, open_browser=False)
    own = {name: str(tmp / name) for name in ("HOME", "JUPYTER_CONFIG_DIR", "JUPYTER_DATA_DIR", "JUPYTER_RUNTIME_DIR",
                                              "IPYTHONDIR", "SHOP_CALC_WORK")}  # fmt: skip
    with open(tmp / "server.log", "w") as log:
        server = subprocess.Popen(words, env={**environment, **own}, stdout=log, stderr=subprocess.STDOUT)
    base, end = f"http://127.0.0.1:{port}", time.monotonic() + 60
    while True:
        try:
            urllib.request.urlopen(base, timeout=2).read()
            break
        except OSError:
            if server.poll() is not None or time.monotonic() > end:
                server.kill()
                pytest.fail((tmp / "server.log").read_text()[-3000:])
            time.sleep(0.1)
    yield base
    server.terminate()
    server.wait(20)


def test_the_list_names_every_lesson(shown, page):
    page.goto(shown)
    assert page.get_by_role("navigation", name="Lessons").get_by_role("link").count() >= len(LESSONS)
    assert page.away == []


ANSWERS_WANTED = """least => [...document.querySelectorAll("#rendered_cells .jp-OutputArea-output")]
    .filter(each => each.innerText.includes("Answer ")).length >= least"""


@pytest.mark.parametrize("path", LESSONS, ids=lambda path: path.stem)
def test_a_lesson_opens_without_code_and_its_block_answers(shown, page, path):
    page.goto(f"{shown}/voila/render/{path.name}", timeout=60_000)
    page.get_by_role("heading", level=1).first.wait_for(timeout=60_000)
    page.locator("#rendered_cells").wait_for(state="visible", timeout=60_000)
    assert page.locator(".jp-InputArea-editor").count() == 0
    asked = path.read_text(encoding="utf-8").count("practice.ask(")
    page.wait_for_function(ANSWERS_WANTED, arg=max(asked, 1), timeout=60_000)  # outputs are laid in one after the other
    said = "\n".join(page.locator("#rendered_cells .jp-OutputArea-output").all_inner_texts())
    assert "Answer " in said and not re.search("as a number|in quotes|guess was written", said)
    assert page.locator("[data-mime-type='application/vnd.jupyter.stderr'], .jp-mod-error").count() == 0
    if "Block(" in path.read_text(encoding="utf-8"):
        block = page.locator(".shop-block").first
        block.wait_for(timeout=60_000)
        words = block.locator('[role="status"], [role="alert"]').first
        start = words.text_content()
        block.get_by_role("slider").first.focus()
        page.keyboard.press("End")
        for _ in range(100):
            page.wait_for_timeout(100)
            if words.text_content() != start:
                break
        assert words.text_content() != start
    assert page.away == []


def test_a_lesson_leads_back_to_the_list(shown, page):
    page.goto(f"{shown}/voila/render/{LESSONS[0].name}", timeout=60_000)
    page.get_by_role("navigation", name="Course").get_by_role("link", name="All lessons").click(timeout=60_000)
    page.get_by_role("navigation", name="Lessons").wait_for()
    assert page.away == []


def test_impossible_ports_are_named():
    for port in (80, 70_000, "8866"):
        with pytest.raises(ValueError, match="port"):
            view.command(port)
