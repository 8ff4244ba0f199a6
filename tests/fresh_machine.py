"""From nothing to a lesson, as README says it: `python tests/fresh_machine.py [--python PATH] [--tests]`, on request.

A clean clone in a temporary folder, with a home of its own; README's commands, read from README and run as they stand
there; then a wheel, installed into an empty environment, at work in an empty folder away from the clone. Takes some minutes
and the package index; the whole suite only with --tests. Not for Windows, whose commands tests/test_readme.py compares
word by word with these.
"""

import argparse
import json
import os
import re
import shlex
import socket
import subprocess
import sys
import tempfile
import time
import urllib.request
from pathlib import Path

ROOT = Path(__file__).parents[1]
README = "README.md"
LESSON = "01_two_layer_sizing.ipynb"
TOKEN = "fresh-machine"
_START_S = 900  # the first command installs before it opens

# Put into the environment of the wheel: every file that Python opens for writing, and every folder made, is noted down.
WATCH = """
import os, sys
_note = os.environ.get("WRITES")
def _seen(event, words):
    if event == "open":
        path, mode, flags = words
        wanted = isinstance(mode, str) and set(mode) & set("wax+") or (flags or 0) & (os.O_WRONLY | os.O_RDWR | os.O_CREAT)
        if not wanted or not isinstance(path, (str, bytes)):
            return
    elif event in ("os.mkdir", "os.rename", "os.remove", "os.symlink", "os.link"):
        path = words[1] if event in ("os.rename", "os.symlink", "os.link") else words[0]
    else:
        return
    path = os.path.abspath(os.fsdecode(path))
    if path != _note:
        handle = os.open(_note, os.O_WRONLY | os.O_CREAT | os.O_APPEND)
        os.write(handle, (path + "\\n").encode())
        os.close(handle)
if _note:
    sys.addaudithook(_seen)
"""


def commands(text, heading):
    """The lines of every `sh` block under a heading of README."""
    section = re.search(rf"^## {re.escape(heading)}$(.*?)(?=^## |\Z)", text, re.M | re.S)
    blocks = re.findall(r"^```sh\n(.*?)^```$", section[1], re.M | re.S)
    return [line for block in blocks for line in block.splitlines() if line.strip()]


def say(words):
    print(f"{time.monotonic() - STARTED:6.0f} s  {words}", flush=True)


def run(command, folder, env):
    """Run it as it stands; what it printed is shown only when it fails."""
    say(command if isinstance(command, str) else shlex.join(map(str, command)))
    done = subprocess.run(command, cwd=folder, env=env, shell=isinstance(command, str), text=True, stdout=subprocess.PIPE,
                          stderr=subprocess.STDOUT)  # fmt: skip
    if done.returncode:
        sys.exit(f"{done.stdout[-6000:]}\nended with {done.returncode}: {command}")
    return done.stdout


def surroundings(base, python):
    """A home, a place for temporary files and a `python3`, all new; only the way to the package index is kept."""
    kept = {name: value for name, value in os.environ.items()
            if not name.startswith(("JUPYTER", "IPYTHON", "PY", "SHOP_CALC", "VIRTUAL_ENV", "XDG", "MPL"))}  # fmt: skip
    for name in ("home", "home-of-the-wheel", "tmp", "bin", "settings"):
        (base / name).mkdir()
    (base / "bin" / "python3").write_text(f'#!/bin/sh\nexec {shlex.quote(python)} "$@"\n')
    (base / "bin" / "python3").chmod(0o755)
    settings = [path for path in (Path.home() / ".config/pip/pip.conf", Path.home() / ".pip/pip.conf") if path.is_file()]
    own = {"HOME": str(base / "home"), "TMPDIR": str(base / "tmp"), "PATH": f"{base / 'bin'}:{kept['PATH']}",
           "PIP_CACHE_DIR": str(base / "pip"), "JUPYTER_CONFIG_DIR": str(base / "settings")}  # fmt: skip
    return kept | own | ({"PIP_CONFIG_FILE": str(settings[0])} if settings else {})


def fetch(url):
    request = urllib.request.Request(url, headers={"Authorization": f"token {TOKEN}"})
    with urllib.request.urlopen(request, timeout=20) as answer:
        return json.load(answer)


def opens_the_lessons(command, clone, base, env):
    """Start the command of README unchanged; a settings file stands in for a person with a browser."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    quiet = {"open_browser": False}
    (base / "settings" / "jupyter_server_config.json").write_text(json.dumps({
        "ServerApp": {"port": port, "port_retries": 0, "allow_root": True, **quiet}, "ExtensionApp": quiet, "LabApp": quiet,
        "IdentityProvider": {"token": TOKEN}}))  # fmt: skip
    say(command)
    with open(base / "lab.log", "w") as log:
        lab = subprocess.Popen(command, cwd=clone, env=env, shell=True, stdout=log, stderr=log, start_new_session=True)
    try:
        end = time.monotonic() + _START_S
        while True:
            try:
                version = fetch(f"http://127.0.0.1:{port}/api")["version"]
                break
            except OSError:
                if lab.poll() is not None or time.monotonic() > end:
                    sys.exit((base / "lab.log").read_text()[-6000:] + "\nthe lab did not open")
                time.sleep(0.5)
        asked = re.search(r"workbooks/(\S+\.ipynb)", command)[1]
        for name in (asked, LESSON):  # the server's root is the folder of the notebook that it was asked for
            lesson = fetch(f"http://127.0.0.1:{port}/api/contents/{name}")
            assert lesson["type"] == "notebook" and len(lesson["content"]["cells"]) > 10, name
        say(f"the lab answers (server {version}) and gives {asked} and {LESSON}")
    finally:
        if lab.poll() is None:
            os.killpg(lab.pid, 15)
            lab.wait(30)


def outside(base, allowed):
    """Files written below `base` or elsewhere that are not below one of the allowed folders."""
    lines = (base / "writes").read_text(encoding="utf-8").splitlines() if (base / "writes").exists() else []
    free = [*(str(path) + os.sep for path in allowed), *map(str, allowed), "/dev/"]
    return sorted({line for line in lines if not any(line == each or line.startswith(each) for each in free)})


def works_from_a_wheel(clone, base, env):
    wheels, room, away = base / "wheels", base / "wheel-env", base / "away"
    run([clone / ".venv/bin/python", "-m", "pip", "wheel", "-q", "--no-deps", "-w", wheels, "."], clone, env)
    (wheel,) = wheels.glob("*.whl")
    run(["python3", "-m", "venv", room], base, env)
    run([room / "bin/python", "-m", "pip", "install", "-q", wheel], base, env)
    site = Path(run([room / "bin/python", "-c", "import sysconfig; print(sysconfig.get_path('purelib'))"], base, env).strip())
    (site / "sitecustomize.py").write_text(WATCH)
    away.mkdir()
    clone.rename(base / "clone-out-of-reach")
    home = base / "home-of-the-wheel"
    env = env | {"HOME": str(home), "WRITES": str(base / "writes"), "PYTHONDONTWRITEBYTECODE": "1"}
    shop, python = str(room / "bin/shop-calc"), str(room / "bin/python")

    data = run([python, "-c", "from shop_calc import defaults; print(defaults.data_folder())"], away, env).strip()
    assert Path(data).is_relative_to(site) and (Path(data) / "defaults.csv").is_file(), data
    job = Path(data) / "jobs" / "garden_bench_top.toml"
    plan = run([shop, "plan", str(job)], away, env)
    assert "garden bench" in plan.lower() and len(plan.splitlines()) > 60
    assert "set_aside_kg" in run([shop, "plan", str(job), "--why", "set_aside_kg"], away, env)
    assert list(away.iterdir()) == [], "a plan writes nothing"
    run([shop, "sheet", str(job), "bench.html"], away, env)
    assert [path.name for path in away.iterdir()] == ["bench.html"] and (away / "bench.html").stat().st_size > 20_000
    run([shop, "lessons", "mine"], away, env)
    lessons = sorted(path.name for path in (away / "mine").glob("*.ipynb"))
    assert len(lessons) > 12 and LESSON in lessons and (away / "mine/data/defaults.csv").is_file(), lessons
    assert sorted(path.name for path in away.iterdir()) == ["bench.html", "mine"]
    assert list(home.iterdir()) == [], "nothing of the three commands goes into the home"
    assert not (found := outside(base, [away])), found

    made = ["-m", "jupyter", "nbconvert", "--log-level=ERROR", "--to", "notebook", "--execute", "--output", away / "ran.ipynb"]
    run([python, *made, f"mine/{LESSON}"], away, env | {"SHOP_CALC_WORK": str(away / "kept")})
    cells = json.loads((away / "ran.ipynb").read_text(encoding="utf-8"))["cells"]
    ran = [cell for cell in cells if cell["cell_type"] == "code"]
    assert ran and all(cell["execution_count"] for cell in ran)
    assert not [out for cell in ran for out in cell["outputs"] if out["output_type"] == "error"]
    # a kernel keeps papers of its own in the home, among the settings and the temporary files; nothing else is touched
    assert not (found := outside(base, [away, home, base / "settings", base / "tmp"])), found
    say(f"the wheel plans, writes the sheet, hands out {len(lessons)} notebooks and runs {LESSON}; nothing outside")


def main():
    global STARTED
    STARTED = time.monotonic()
    asked = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    asked.add_argument("--python", default=sys.executable, metavar="PATH", help="the Python of the fresh machine")
    asked.add_argument("--tests", action="store_true", help="run the whole suite, too; else it is only collected")
    asked = asked.parse_args()
    with tempfile.TemporaryDirectory(prefix="fresh machine ") as folder:  # with a space, as people have them
        base = Path(folder).resolve()
        env = surroundings(base, asked.python)
        say(run(["python3", "--version"], base, env).strip())
        clone = base / "clone"
        text = ""
        for heading in ("Run the tests", "Open the lessons"):
            if clone.exists():
                clone.rename(base / "clone-of-the-tests")
            run(["git", "clone", "-q", str(ROOT), str(clone)], base, env)
            text = (clone / README).read_text(encoding="utf-8")
            (command,) = commands(text, heading)
            if heading == "Open the lessons":
                opens_the_lessons(command, clone, base, env)
            else:
                said = run(command, clone, env if asked.tests else env | {"PYTEST_ADDOPTS": "--collect-only -q -n0"})
                say(said.strip().splitlines()[-1])
        for command in commands(text, "Plan a job"):
            assert run(command, clone, env).strip()
        works_from_a_wheel(clone, base, env)
    say("all as README says")


if __name__ == "__main__":
    main()
