"""The trial's hub: a folder of its own, users of its own, and the way to end both."""

import os
import secrets
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import psutil
import requests
from try_student import wait

HERE = Path(__file__).resolve().parent
PORT = 18600
failed = []


def check(true, words):
    """Print what was tried and whether it held."""
    print(f"{'held  ' if true else 'FAILED'} {words}", flush=True)
    if not true:
        failed.append(words)


class Trial:
    """A folder with everything the trial writes, a hub in it, and the way to end both."""

    def __init__(self, options):
        self.options, self.base = options, Path(tempfile.mkdtemp(prefix="sh"))
        self.base.chmod(0o755)
        self.course, self.log = self.base / "course", self.base / "hub.log"
        for part in ("shop_calc", "data", "workbooks"):
            skip = shutil.ignore_patterns("__pycache__", ".ipynb_checkpoints")
            shutil.copytree(HERE.parent / part, self.course / part, ignore=skip)
        shutil.copy(HERE.parent / "pyproject.toml", self.course)
        # as an installation would; students may not write there, and each would compile it again
        subprocess.run([sys.executable, "-m", "compileall", "-q", str(self.course)], check=True)
        self.names = [f"shoptrial{i + 1}" for i in range(max(options.students))]
        self.password, self.made, self.hub = secrets.token_hex(8), [], None
        (self.base / "class.txt").write_text("\n".join([*self.names, "shopteacher instructor"]))

    def make_users(self):
        for name in self.names:
            subprocess.run(["useradd", "-m", "-K", "HOME_MODE=0700", "-s", "/bin/bash", name], check=True)
            self.made.append(name)

    def start(self, idle_s=7200):
        words = {"USERS": "system" if self.options.system_users else "simple", "PORT": PORT, "PASSWORD": self.password,
                 "PROXY": self.options.proxy, "HOMES": self.base / "h", "COURSE": self.course,
                 "TCP": int(self.options.tcp), "IDLE_S": idle_s}  # fmt: skip
        env = os.environ | {f"SHOP_TRIAL_{key}": str(value) for key, value in words.items()}
        env |= {"SHOP_HUB_STATE": str(self.base / "state"), "SHOP_HUB_CLASS": str(self.base / "class.txt")}
        began = time.perf_counter()
        with self.log.open("a") as log:
            self.hub = subprocess.Popen(
                [sys.executable, "-m", "jupyterhub", "--config", str(HERE / "trial_config.py")],
                cwd=self.base, env=env, stdout=log, stderr=log, start_new_session=True,
            )  # fmt: skip
        health = f"http://127.0.0.1:{PORT}/hub/health"
        wait(lambda: self.hub.poll() is not None or requests.get(health, timeout=2).ok, 60, "the hub")
        if self.hub.poll() is not None:
            raise RuntimeError(f"the hub ended: {self.log.read_text()[-2000:]}")
        return time.perf_counter() - began

    def ours(self):
        """Find the processes of this trial and no others: the folder's name is in their environment."""
        found = []
        for process in psutil.process_iter():
            try:
                if any(str(self.course) in value for value in process.environ().values()):
                    found.append(process)
            except psutil.Error:
                continue
        return found

    def server(self, name):
        for process in self.ours():
            try:
                if process.environ().get("JUPYTERHUB_USER") == name and "jupyterhub.singleuser" in process.cmdline():
                    return process
            except psutil.Error:  # it ended while we looked
                continue
        return None

    def memory_mb(self, name):
        """Return server, kernels: proportional share, which counts what processes share once."""
        server = self.server(name)
        share = [each.memory_full_info().pss / 2**20 for each in (server, *server.children(recursive=True))]
        return share[0], sum(share[1:])

    def end(self):
        for process in self.ours():
            try:
                process.kill()
            except psutil.Error:
                continue
        time.sleep(0.5)
        for name in self.made:
            subprocess.run(["userdel", "-r", name], stderr=subprocess.DEVNULL, check=False)
        if self.options.keep_log:
            shutil.copy(self.log, self.options.keep_log)
        shutil.rmtree(self.base, ignore_errors=True)
