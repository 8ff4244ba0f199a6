"""One classroom server: every student signs in from a browser and works in a folder of their own.

    jupyterhub --config .hub/jupyterhub_config.py

Run it as root on a Linux machine with systemd: students are users of that machine, and each gets only what is theirs.
What it is made of, how it was tried, and what was not: README.md beside this file.
"""

import asyncio
import os
import pwd
import sys
from pathlib import Path

c = get_config()  # noqa: F821  the hub provides it
HERE = Path(__file__).resolve().parent
STATE = Path(os.environ.get("SHOP_HUB_STATE", "/var/lib/shop-hub"))  # what the hub must remember; only root reads it
# A line a person: a user name, or a user name and the word instructor.
CLASS_LIST = Path(os.environ.get("SHOP_HUB_CLASS", STATE / "class.txt"))
STATE.mkdir(mode=0o700, parents=True, exist_ok=True)

# ---- who may come in: the class list, by the passwords of this machine (PAM, which is the hub's own choice)
people = [line.split() for line in CLASS_LIST.read_text(encoding="utf-8").splitlines() if line.strip()]
students = {words[0] for words in people if words[1:] != ["instructor"]}
instructors = {words[0] for words in people} - students
c.Authenticator.allowed_users = students | instructors
c.Authenticator.allow_existing_users = False  # who was struck off the list stays out
# Groups are taken from the list anew at each sign-in. (Named in load_groups, a former instructor would stay one.)
c.Authenticator.manage_groups = True


def groups_of_the_list(authenticator, handler, signed_in):
    signed_in["groups"] = ["instructors" if signed_in["name"] in instructors else "students"]
    return signed_in


c.Authenticator.post_auth_hook = groups_of_the_list
c.JupyterHub.load_roles = [
    {  # sees who is there, starts and stops a stuck server; does not open anybody's files
        "name": "instructor",
        "groups": ["instructors"],
        "scopes": ["admin-ui", "list:users!group=students", "read:users:activity!group=students", "servers!group=students"],
        # to sit down at a student's page as well: "access:servers!group=students"; tell the class before you do
    },
    {  # ends what nobody uses
        "name": "idle",
        "services": ["idle"],
        "scopes": ["list:users", "read:users:activity", "read:servers", "delete:servers"],
    },
]

# ---- where: this machine only. A web server with a certificate stands in front of it and passes port 443 on.
c.JupyterHub.bind_url = "http://127.0.0.1:8000"
c.JupyterHub.template_paths = [str(HERE / "templates")]  # the landing page

# ---- a hub that stops or falls over takes nobody's page with it
c.JupyterHub.db_url = f"sqlite:///{STATE}/hub.sqlite"
c.JupyterHub.cookie_secret_file = str(STATE / "cookie_secret")
c.ConfigurableHTTPProxy.pid_file = str(STATE / "proxy.pid")
c.JupyterHub.cleanup_servers = False
c.JupyterHub.cleanup_proxy = False

# ---- each student's server
# Package jupyterhub-systemdspawner: the machine itself keeps the limits below. The hub's own local spawner would not.
c.JupyterHub.spawner_class = "systemdspawner.SystemdSpawner"
c.SystemdSpawner.isolate_tmp = True
c.Spawner.mem_guarantee = "384M"  # one page with a kernel, and some air; the README has the measurement
c.Spawner.mem_limit = "1G"  # three or four pages; who takes more loses a kernel, and nobody else notices
c.Spawner.cpu_limit = 1.0
c.Spawner.start_timeout = 120
c.Spawner.notebook_dir = "~/lessons"
c.Spawner.default_url = "/lab/tree/00_start_here.ipynb"
c.Spawner.args = [
    "--KernelManager.transport=ipc",  # over TCP, others on this machine could listen to what a kernel prints
    "--MappingKernelManager.cull_idle_timeout=3600",  # a page left open for an hour loses its kernel, never its text
    "--MappingKernelManager.cull_interval=300",
    "--MappingKernelManager.cull_connected=True",
]
c.Spawner.environment = {"MPLBACKEND": "agg"}

# ---- idle servers end after two hours; files stay
c.JupyterHub.services = [
    {"name": "idle", "command": [sys.executable, "-m", "jupyterhub_idle_culler", "--timeout=7200", "--cull-every=300"]}
]


# ---- before a server starts: the lessons of today, in the student's own folder. What they edited is never touched.
async def deliver_lessons(spawner):
    """Run as the student, never as root: whoever owns a folder could turn a link in it anywhere."""
    if hasattr(spawner, "home_dir"):  # the simple spawner of a trial: everybody is the user who started the hub
        home, who = spawner.home_dir, {}
    else:
        user = pwd.getpwnam(spawner.user.name)
        home = user.pw_dir
        who = {"user": user.pw_uid, "group": user.pw_gid, "extra_groups": []}
    try:
        process = await asyncio.create_subprocess_exec(
            sys.executable, "-m", "shop_calc", "lessons", f"{home}/lessons",
            cwd="/", env={"PATH": os.environ["PATH"], "HOME": home} | spawner.environment, umask=0o077,
            stdout=asyncio.subprocess.PIPE, stderr=asyncio.subprocess.STDOUT, **who,
        )  # fmt: skip
        said, _ = await asyncio.wait_for(process.communicate(), 60)
        spawner.log.info("lessons for %s: %s", spawner.user.name, said.decode(errors="replace").strip())
    except (OSError, TimeoutError) as error:  # yesterday's lessons are better than a closed door
        spawner.log.error("lessons for %s were not delivered: %s", spawner.user.name, error)


c.Spawner.pre_spawn_hook = deliver_lessons
