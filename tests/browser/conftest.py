"""JupyterLab on the loopback and a browser that is already on the machine; nothing is downloaded."""

import json
import os
import re
import shutil
import socket
import subprocess
import sys
import time
import urllib.request
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
NAMES = ("chromium", "chromium-browser", "google-chrome")
SWITCHES = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
_START_S, _RUN_S, _TRIES = 60, 60, 4


@pytest.fixture(scope="session")
def chromium():
    found = next((path for path in map(shutil.which, NAMES) if path), None)
    if found is None:
        pytest.skip("no Chromium on this machine; install it: `sudo apt install chromium`, `brew install chromium`")
    return found


@pytest.fixture(scope="session")
def browser(chromium):
    sync_api = pytest.importorskip("playwright.sync_api", reason="pip install -e '.[test]' brings Playwright")
    with sync_api.sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium, headless=True, args=SWITCHES)
        yield browser
        browser.close()


@pytest.fixture(scope="session")
def lab(chromium, tmp_path_factory):
    """A running JupyterLab over a copy of the workbooks, with folders of its own for everything it keeps."""
    tmp = tmp_path_factory.mktemp("lab")
    shutil.copytree(ROOT / "workbooks", tmp / "root", ignore=shutil.ignore_patterns(".ipynb_checkpoints"))
    (tmp / "cfg" / "labconfig").mkdir(parents=True)
    news = {"@jupyterlab/apputils-extension:announcements": True}  # no pop-up over the page
    (tmp / "cfg" / "labconfig" / "page_config.json").write_text(json.dumps({"disabledExtensions": news}))
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    keeps = ("JUPYTER_CONFIG_DIR", "cfg"), ("JUPYTER_DATA_DIR", "data"), ("JUPYTER_RUNTIME_DIR", "run")
    keeps += ("JUPYTERLAB_SETTINGS_DIR", "set"), ("JUPYTERLAB_WORKSPACES_DIR", "ws"), ("IPYTHONDIR", "ipy")
    own = {name: str(tmp / folder) for name, folder in (*keeps, ("SHOP_CALC_WORK", "kept"))}
    command = [sys.executable, "-m", "jupyterlab", "--no-browser", "--allow-root", "--ip=127.0.0.1"]
    command += [f"--port={port}", "--ServerApp.port_retries=0", "--IdentityProvider.token="]
    command += [f"--ServerApp.root_dir={tmp / 'root'}"]
    with open(tmp / "server.log", "w") as log:
        server = subprocess.Popen(
            command, stdout=log, stderr=subprocess.STDOUT, env={**os.environ, "HOME": str(tmp), **own}
        )
    base, end = f"http://127.0.0.1:{port}", time.monotonic() + _START_S
    while True:
        try:
            urllib.request.urlopen(f"{base}/api", timeout=2).read()
            break
        except OSError:
            if server.poll() is not None or time.monotonic() > end:
                server.kill()
                pytest.fail((tmp / "server.log").read_text()[-3000:])
            time.sleep(0.1)
    yield base, tmp / "root"
    server.terminate()
    server.wait(20)


@pytest.fixture
def page(browser):
    """A page that remembers every address off this machine in `away`."""
    context = browser.new_context(viewport={"width": 1280, "height": 1000})
    page = context.new_page()
    page.set_default_timeout(30_000)
    page.away = []

    def note(request):
        if request.url.startswith("http") and "//127.0.0.1" not in request.url:
            page.away.append(request.url)

    page.on("request", note)
    yield page
    context.close()


@pytest.fixture
def run_all(lab, page):
    """Open a notebook of the copied workbooks and run it from the menu."""

    def run(name):
        base, _ = lab
        page.goto(f"{base}/lab/workspaces/auto-{time.time_ns()}/tree/{name}?reset")
        page.locator(".jp-Notebook .jp-Cell").first.wait_for()
        page.locator('.jp-Notebook-ExecutionIndicator[data-status="idle"]').wait_for()
        page.get_by_role("button", name="| Idle").wait_for()
        for _ in range(_TRIES):
            page.get_by_role("menuitem", name="Run", exact=True).click()
            page.get_by_role("menuitem", name="Run All Cells", exact=True).click()
            if _ends(page):
                return page
        pytest.fail("Run All did not run the last cell")

    return run


def _ends(page):
    """Wait for the last cell; while the kernel is still coming up, Run All can be lost without a word."""
    last = page.locator(".jp-CodeCell .jp-InputPrompt").last
    waiting = page.locator(".jp-InputPrompt", has_text="[*]")
    for _ in range(_RUN_S * 4):
        page.wait_for_timeout(250)
        if re.fullmatch(r"\[\d+\]:", last.inner_text().strip()):
            return True
        if waiting.count() == 0 and last.inner_text().strip() == "[ ]:":
            return False
    return False
