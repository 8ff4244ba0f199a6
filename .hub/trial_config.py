"""For try_class.py only: the real configuration, with a door that opens to any password. Never put it on a network."""

import os
import sys
from pathlib import Path

c = get_config()  # noqa: F821
# Without its path a missing file is passed over in silence.
load_subconfig("jupyterhub_config.py", path=str(Path(__file__).parent))  # noqa: F821
port = int(os.environ["SHOP_TRIAL_PORT"])

c.JupyterHub.authenticator_class = "dummy"
c.DummyAuthenticator.password = os.environ["SHOP_TRIAL_PASSWORD"]
c.JupyterHub.bind_url = f"http://127.0.0.1:{port}"
c.JupyterHub.hub_bind_url = f"http://127.0.0.1:{port + 1}"
c.ConfigurableHTTPProxy.api_url = f"http://127.0.0.1:{port + 2}"
c.ConfigurableHTTPProxy.command = [os.environ["SHOP_TRIAL_PROXY"]]
# Local processes: each a user of this machine, or, "simple", all one user, who can read everything.
system = os.environ["SHOP_TRIAL_USERS"] == "system"
c.JupyterHub.spawner_class = "jupyterhub.spawner.LocalProcessSpawner" if system else "simple"
c.SimpleLocalProcessSpawner.home_dir_template = os.environ["SHOP_TRIAL_HOMES"] + "/{username}"
c.Spawner.cmd = [sys.executable, "-m", "jupyterhub.singleuser"]
c.Spawner.environment["PYTHONPATH"] = os.environ["SHOP_TRIAL_COURSE"]  # a copy of the course that the trial may change
if os.environ["SHOP_TRIAL_TCP"] == "1":  # to show what the setting is for
    c.Spawner.args = [word for word in c.Spawner.args if "transport" not in word]
if not system and os.getuid() == 0:
    c.Spawner.args.append("--allow-root")
idle_s = os.environ.get("SHOP_TRIAL_IDLE_S", "7200")
c.JupyterHub.services = [
    {
        "name": "idle",
        "command": [sys.executable, "-m", "jupyterhub_idle_culler", f"--timeout={idle_s}", "--cull-every=3"],
    }
]
c.JupyterHub.last_activity_interval = 5
