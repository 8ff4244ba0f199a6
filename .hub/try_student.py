"""One student of the trial: signs in by the form, and works through the interfaces that the page itself uses."""

import json
import time
import uuid

import requests
import websocket


def wait(true, limit_s, what):
    """Ask until it is so; TimeoutError after `limit_s` seconds."""
    end = time.monotonic() + limit_s
    while time.monotonic() < end:
        try:
            if true():
                return
        except (requests.RequestException, OSError, websocket.WebSocketException):
            pass
        time.sleep(0.1)
    raise TimeoutError(f"{what}: not within {limit_s} s")


class Student:
    """A browser's worth of one student."""

    def __init__(self, port, name, password):
        self.root, self.name, self.password = f"http://127.0.0.1:{port}", name, password
        self.web, self.token, self.socket, self.kernel_id, self.errors = requests.Session(), None, None, None, 0
        self.widgets, self.session = {}, uuid.uuid4().hex

    # ---- the hub
    def comes_in(self):
        """Fill in the form; say whether the door opened."""
        self.web.get(f"{self.root}/hub/login", timeout=20)
        form = {"username": self.name, "password": self.password, "_xsrf": self.web.cookies.get("_xsrf", path="/hub/")}
        answer = self.web.post(f"{self.root}/hub/login", data=form, allow_redirects=False, timeout=60)
        return answer.status_code == 302

    def sign_in(self):
        began = time.perf_counter()
        if not self.comes_in():
            raise PermissionError(f"{self.name} did not come in")
        xsrf = self.web.cookies.get("_xsrf", path="/hub/")
        self.web.get(f"{self.root}/hub/home", timeout=20)
        xsrf = self.web.cookies.get("_xsrf", path="/hub/")
        answer = self.web.post(
            f"{self.root}/hub/api/users/{self.name}/tokens", json={"expires_in": 3600},
            headers={"X-XSRFToken": xsrf, "Referer": f"{self.root}/hub/home"}, timeout=20,
        )  # fmt: skip
        answer.raise_for_status()
        self.token = answer.json()["token"]
        return time.perf_counter() - began

    def ask(self, method, path, **more):
        return requests.request(method, self.root + path, headers={"Authorization": f"token {self.token}"}, timeout=60, **more)

    def get(self, path):
        return self.ask("GET", path)

    def is_up(self):
        return self.get(f"/hub/api/users/{self.name}").json().get("servers", {}).get("", {}).get("ready", False)

    def is_down(self):
        return "" not in self.get(f"/hub/api/users/{self.name}").json()["servers"]

    def start(self):
        began = time.perf_counter()
        self.ask("POST", f"/hub/api/users/{self.name}/server").raise_for_status()
        wait(lambda: self.is_up() and self.get(f"/user/{self.name}/lab").ok, 120, f"the server of {self.name}")
        return time.perf_counter() - began

    def stop(self):
        self.close()
        self.ask("DELETE", f"/hub/api/users/{self.name}/server")
        wait(self.is_down, 60, "the stop")

    # ---- files, as the page saves and reads them
    def _contents(self, name):
        return f"/user/{self.name}/api/contents/{name}"

    def text_of(self, name):
        answer = self.get(self._contents(name))
        answer.raise_for_status()
        return json.dumps(answer.json()["content"], sort_keys=True)

    def write_into(self, name, words):
        page = self.get(self._contents(name)).json()["content"]
        page["cells"].insert(0, {"cell_type": "markdown", "id": uuid.uuid4().hex[:8], "metadata": {}, "source": words})
        self.ask("PUT", self._contents(name), json={"type": "notebook", "content": page}).raise_for_status()

    # ---- the kernel
    def open(self, name):
        words = {"path": name, "name": name, "type": "notebook", "kernel": {"name": "python3"}}
        answer = self.ask("POST", f"/user/{self.name}/api/sessions", json=words)
        answer.raise_for_status()
        self.kernel_id = answer.json()["kernel"]["id"]
        self.connect()

    def connect(self):
        self.close()
        address = f"ws{self.root[4:]}/user/{self.name}/api/kernels/{self.kernel_id}/channels?session_id={self.session}"
        self.socket = websocket.create_connection(address, header=[f"Authorization: token {self.token}"], timeout=90)

    def close(self):
        if self.socket:
            self.socket.close()
            self.socket = None

    def send(self, kind, content):
        header = {"msg_id": uuid.uuid4().hex, "msg_type": kind, "session": self.session, "username": self.name,
                  "version": "5.4", "date": time.strftime("%Y-%m-%dT%H:%M:%SZ", time.gmtime())}  # fmt: skip
        message = {"header": header, "parent_header": {}, "metadata": {}, "content": content, "channel": "shell", "buffers": []}
        self.socket.send(json.dumps(message))
        return header["msg_id"]

    def answers(self, asked):
        """Pass on every message that a request brought about, until the kernel rests again."""
        while True:
            raw = self.socket.recv()
            if not isinstance(raw, str):
                size = int.from_bytes(raw[:4], "big")  # count of parts; the first part is the message
                starts = [int.from_bytes(raw[4 * i + 4 : 4 * i + 8], "big") for i in range(size)] + [len(raw)]
                raw = raw[starts[0] : starts[1]]
            message = json.loads(raw)
            kind, content = message["msg_type"], message["content"]
            if message["parent_header"].get("msg_id") != asked:
                continue
            if kind == "status" and content["execution_state"] == "idle":
                return
            yield kind, content

    def execute(self, code):
        """Run one cell; what it printed comes back."""
        printed = []
        request = {"code": code, "silent": False, "store_history": True, "allow_stdin": False, "stop_on_error": True}
        for kind, content in self.answers(self.send("execute_request", request)):
            if kind == "stream":
                printed.append(content["text"])
            elif kind == "error":
                self.errors += 1
                print(f"{self.name}: {content['ename']}: {content['evalue']}")
            elif kind == "comm_open":
                self.widgets[content["comm_id"]] = content["data"].get("state", {})
        return "".join(printed)

    def kernel_answers(self):
        self.connect()
        self.socket.settimeout(5)
        here = self.execute("print('here')").strip() == "here"
        self.socket.settimeout(90)
        return here

    def run_all(self, name):
        began = time.perf_counter()
        cells = self.get(self._contents(name)).json()["content"]["cells"]
        self.open(name)
        for cell in cells:
            if cell["cell_type"] == "code":
                self.execute(cell["source"])
        return time.perf_counter() - began

    def move_block(self, times):
        """Move the first slider to and fro, as a key press does; seconds until the new picture has arrived, each."""
        slider, state = next((i, s) for i, s in self.widgets.items() if s.get("_model_name", "").endswith("SliderModel"))
        pages = {i for i, s in self.widgets.items() if s.get("_model_name") == "HTMLModel"}
        key = "index" if "index" in state else "value"
        step, taken = state.get("step") or 1, []
        for turn in range(times):
            value = state[key] + step * (1 + turn % 5)
            began, new = time.perf_counter(), False
            request = {"comm_id": slider, "data": {"method": "update", "state": {key: value}, "buffer_paths": []}}
            for kind, content in self.answers(self.send("comm_msg", request)):
                picture = kind == "comm_msg" and content["comm_id"] in pages and "value" in content["data"].get("state", {})
                new = new or picture
            if not new:
                raise AssertionError(f"{self.name}: the slider moved and nothing changed")
            taken.append(time.perf_counter() - began)
        return taken
