"""Try the classroom server with a small class of its own, on this machine only, and stop by itself.

    python .hub/try_class.py --proxy PATH/configurable-http-proxy [--students 2 5] [--system-users] [--tcp]

Needs jupyterhub, jupyterhub-idle-culler, psutil and this package in the Python that runs it, configurable-http-proxy from
npm, and nothing else. With --system-users (root, Linux) it makes users shoptrial1.. of this machine and removes them again;
only then is anybody kept apart from anybody. It is no test of the suite: nothing there calls it.
"""

import argparse
import json
import os
import secrets
import signal
import statistics
import sys
import time
from concurrent.futures import ThreadPoolExecutor

import requests
from try_hub import PORT, Trial, check, failed
from try_student import Student, wait

LESSON, OTHER = "04_stiffening_timeline.ipynb", "05_curing_choices.ipynb"


def one_student(student):
    """Do what a student does: sign in, open, run all, move a slider."""
    times = {"signed in": student.sign_in(), "page ready": student.start()}
    times["all cells"] = student.run_all(LESSON)
    moves = student.move_block(10)
    times["block moved"], times["slowest move"] = statistics.median(moves), max(moves)
    return times


def hold_class(trial, count):
    """Let so many students work at the same moment, and say what that took."""
    students = [Student(PORT, name, trial.password) for name in trial.names[:count]]
    idle_hub = sum(p.memory_full_info().pss for p in trial.ours()) / 2**20
    began = time.perf_counter()
    with ThreadPoolExecutor(count) as pool:
        times = list(pool.map(one_student, students))
    whole_s = time.perf_counter() - began
    print(f"\n{count} students at once, {os.cpu_count()} cores; {whole_s:.1f} s in all; hub, proxy, culler {idle_hub:.0f} MB")
    print("student       sign in  page ready  all cells  block moved  slowest   server   kernel")
    for student, each in zip(students, times, strict=True):
        server, kernel = trial.memory_mb(student.name)
        print(f"{student.name}  {each['signed in']:6.2f} s  {each['page ready']:8.2f} s  {each['all cells']:7.2f} s"
              f"  {1000 * each['block moved']:8.0f} ms {1000 * each['slowest move']:5.0f} ms"
              f"  {server:4.0f} MB  {kernel:4.0f} MB", flush=True)  # fmt: skip
    errors = sum(student.errors for student in students)
    check(errors == 0, f"no cell of {LESSON} failed for any of the {count}")
    return students


def the_door(trial):
    """Try names and passwords that must not come in."""
    first = trial.names[0]
    check(not Student(PORT, first, "wrong").comes_in(), "a wrong password is refused")
    check(not Student(PORT, "stranger", trial.password).comes_in(), "a name that is not on the class list is refused")
    page = requests.get(f"http://127.0.0.1:{PORT}/", timeout=10).text
    check("Two layers, one day" in page and "The sign on the bench" in page, "the landing page says what this is")


PRY = """
import http.client, json, os, pathlib, urllib.request, urllib.error
def tried(act):
    try:
        return "done: " + str(act())[:60]
    except (OSError, http.client.HTTPException) as error:
        return type(error).__name__ + " " + str(getattr(error, "code", ""))
def listening(uid):
    rows = [line.split() for line in open("/proc/net/tcp").read().splitlines()[1:]]
    return [int(row[1].split(":")[1], 16) for row in rows if row[3] == "0A" and int(row[7]) == uid]
def get(port, token=None):
    head = {"Authorization": "token " + token} if token else {}
    url = f"http://127.0.0.1:{port}/user/%(name)s/api/contents/%(lesson)s"
    return urllib.request.urlopen(urllib.request.Request(url, headers=head), timeout=2).read()
def answers(token=None):  # one port is the server; the other is the kernel's, for what its child processes print
    said = [tried(lambda: get(port, token)) for port in ports]
    return "done" if any(each.startswith("done") for each in said) else ", ".join(said)
home, ports = pathlib.Path("%(home)s"), listening(%(uid)d)
out = {
    "read their lesson": tried(lambda: (home / "lessons/%(lesson)s").read_text()),
    "list their home": tried(lambda: list(home.iterdir())),
    "write into their folder": tried(lambda: (home / "lessons/x.txt").write_text("x")),
    "end their server": tried(lambda: os.kill(%(pid)d, 9)),
    "read their server's environment": tried(lambda: open("/proc/%(pid)d/environ").read()),
    "change the course's data": tried(lambda: open("%(course)s/data/defaults.csv", "a").write("x")),
    "read what the hub remembers": tried(lambda: list(pathlib.Path("%(state)s").iterdir())),
    "read their lesson from their server, past the hub": answers(),
    "do that with one's own token": answers(os.environ["JUPYTERHUB_API_TOKEN"]),
}
print(json.dumps([len(ports), out]))
"""
LISTEN = """
import time, zmq
rows = [line.split() for line in open("/proc/net/tcp").read().splitlines()[1:]]
ports = [int(r[1].split(":")[1], 16) for r in rows if r[3] == "0A" and int(r[7]) == %(uid)d]
context, sockets = zmq.Context(), []
for port in ports:
    ear = context.socket(zmq.SUB)
    ear.subscribe(b"")
    ear.connect(f"tcp://127.0.0.1:{port}")
    sockets.append(ear)
end, heard = time.time() + 6, b""
while time.time() < end:
    for ear in sockets:
        while ear.poll(10):
            heard += b"".join(ear.recv_multipart())
context.destroy(linger=0)
print("heard" if b"my own secret" in heard else "nothing")
"""


def kept_apart(trial, one, two):
    """Let one student try everything on another; only with users of the machine is there a wall."""
    import pwd

    user = pwd.getpwnam(two.name)
    facts = {"name": two.name, "lesson": LESSON, "home": user.pw_dir, "uid": user.pw_uid, "course": trial.course,
             "pid": trial.server(two.name).pid, "state": trial.base / "state"}  # fmt: skip
    ports, tried = json.loads(one.execute(PRY % facts))
    for what, came in tried.items():
        check(not came.startswith("done"), f"one student cannot {what}: {came.strip()}")
    with ThreadPoolExecutor(1) as pool:
        ear = pool.submit(one.execute, LISTEN % facts)
        for _ in range(8):
            time.sleep(0.7)
            two.execute("print('my ' + 'own secret')")
        heard = ear.result()
    if trial.options.tcp:
        print(f"shown  over TCP ({ports} ports) another student's kernel was overheard: {heard.strip()}")
    else:
        check("nothing" in heard, "one student cannot listen to another's kernel")


def by_the_hub(trial, one, two):
    """Ask through the front door for what belongs to somebody else."""
    theirs = f"/user/{two.name}/api/contents/{LESSON}"
    check(one.get(theirs).status_code in (403, 404), "by the hub, one student's token does not open another's files")
    change = one.ask("PUT", theirs, json={"type": "file", "format": "text", "content": "x"})
    check(change.status_code in (403, 404), "nor changes them")
    stop = one.ask("DELETE", f"/hub/api/users/{two.name}/server")
    check(stop.status_code in (403, 404), "nor stops their server")
    rows = one.get("/hub/api/users")
    check(rows.status_code == 403 or len(rows.json()) <= 1, "nor lists the class")
    teacher = Student(PORT, "shopteacher", trial.password)
    teacher.sign_in()
    rows = teacher.get("/hub/api/users").json()
    check({row["name"] for row in rows} >= {one.name, two.name}, "the instructor sees who is in the class")
    check(teacher.get(theirs).status_code in (403, 404), "the instructor does not open a student's files")
    teacher.ask("DELETE", f"/hub/api/users/{two.name}/server")
    wait(lambda: trial.server(two.name) is None, 20, "the stop")
    check(True, "the instructor can stop a student's server")


def nothing_lost(trial, one):
    """Break kernel, server and hub in turn, and look for the words that were saved."""
    words = "my own words " + secrets.token_hex(4)
    one.write_into(LESSON, words)
    kernel = one.kernel_id
    one.send("execute_request", {"code": "import os; os.kill(os.getpid(), 9)", "silent": False})
    time.sleep(1.0)
    check(words in one.text_of(LESSON), "a killed kernel: what was saved is there")
    wait(lambda: one.kernel_answers(), 30, "the kernel")
    check(one.kernel_id == kernel, "and the page has a fresh kernel by itself")
    trial.server(one.name).kill()
    began = time.perf_counter()
    wait(lambda: trial.server(one.name) is None, 10, "the end")
    wait(lambda: not one.is_up(), 60, "the hub to notice")
    print(f"       the hub noticed the killed server after {time.perf_counter() - began:.0f} s")
    one.start()
    check(words in one.text_of(LESSON), "a killed server: what was saved is there after signing in again")
    one.open(LESSON)
    one.execute("before = 41")
    pid = trial.server(one.name).pid
    trial.hub.kill()
    trial.hub.wait()
    check(one.execute("print(before)").strip() == "41", "hub killed: an open page still reaches its kernel")
    again_s = trial.start()
    same = trial.server(one.name).pid == pid and one.is_up()
    check(same, f"hub started again ({again_s:.1f} s): same server, still signed in")
    one.connect()
    check(one.execute("print(before + 1)").strip() == "42", "and the kernel still knows what it knew")
    check(words in one.text_of(LESSON), "and what was saved is there")


def lessons_renewed(trial, one):
    """Bring out a new edition of two lessons, one of which the student has edited."""
    words = one.text_of(LESSON)
    one.stop()
    for name in (LESSON, OTHER):
        path = trial.course / "workbooks" / name
        path.write_text(path.read_text(encoding="utf-8").replace('"cells": [', '"cells":  [', 1), encoding="utf-8")
        page = json.loads(path.read_text(encoding="utf-8"))
        page["cells"][0]["source"] = ["# A new edition\n"]
        path.write_text(json.dumps(page), encoding="utf-8")
    one.start()
    check(one.text_of(LESSON) == words, "new edition: the lesson that the student edited is as they left it")
    check("A new edition" in one.text_of(OTHER), "new edition: the lesson nobody edited is the new one")


def idle_ends(trial, one):
    """Leave, and see that the server goes and the files stay."""
    words = one.text_of(LESSON)
    one.close()
    trial.hub.kill()
    trial.hub.wait()
    trial.start(idle_s=15)
    began = time.perf_counter()
    wait(lambda: trial.server(one.name) is None and one.is_down(), 90, "the idle server to end")
    print(f"       the idle server ended after {time.perf_counter() - began:.0f} s (set to 15 s for the trial)")
    one.start()
    check(one.text_of(LESSON) == words, "idle server ended: the files are there when the student is back")


def list_changed(trial):
    """Strike one name off the class list, make the instructor a student, and start the hub again."""
    trial.hub.kill()
    trial.hub.wait()
    (trial.base / "class.txt").write_text("\n".join([*trial.names[:-1], "shopteacher"]))
    trial.start()
    check(not Student(PORT, trial.names[-1], trial.password).comes_in(), "a name struck off the class list is refused")
    teacher = Student(PORT, "shopteacher", trial.password)
    teacher.sign_in()
    rows = teacher.get("/hub/api/users")
    check(rows.status_code == 403 or len(rows.json()) <= 1, "who is no instructor any more does not see the class")


def main():
    """Run it all; end with 1 when something did not hold."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--proxy", default="configurable-http-proxy", help="the program from npm")
    parser.add_argument("--students", type=int, nargs="+", default=(2, 5), help="sizes of class, one after the other")
    parser.add_argument("--system-users", action="store_true", help="make users of this machine (root), and remove them")
    parser.add_argument("--tcp", action="store_true", help="kernels over TCP, to show what that lets through")
    parser.add_argument("--keep-log", help="copy the hub's log there at the end")
    options = parser.parse_args()
    signal.signal(signal.SIGALRM, lambda *_: sys.exit("stopped: ten minutes are over"))
    signal.alarm(600)
    trial = Trial(options)
    try:
        if options.system_users:
            trial.make_users()
        print(f"hub up after {trial.start():.1f} s")
        the_door(trial)
        for count in options.students:
            students = hold_class(trial, count)
            if count != options.students[-1]:
                for student in students:
                    student.stop()
        one, two = students[:2]
        print()
        if options.system_users:
            kept_apart(trial, one, two)
            if options.tcp:
                return bool(failed)
        by_the_hub(trial, one, two)
        nothing_lost(trial, one)
        lessons_renewed(trial, one)
        idle_ends(trial, one)
        list_changed(trial)
    finally:
        trial.end()
    print(f"\n{len(failed)} failed" if failed else "\nall held")
    return bool(failed)


if __name__ == "__main__":
    sys.exit(main())
