"""Times the live controls of a what-if as a person sees them: from a key pressed on a slider in a browser to the picture on
the screen, over a notebook server and a whole kernel.

    kernel/bin/headrace install --prefix PREFIX
    kernel/src/test/widget-front-end/build
    browser.py PREFIX [--moves 100] [--bursts 10]

Runs in the project's folder, on the what-ifs of moves.py. A time begins with the key's event in the page and ends after the
frame in which the browser drew the new picture. A burst is 30 keys, 8 ms apart; its time begins with the last of them. Needs
Debian's jupyter-notebook, chromium and chromium-driver, and Python 3 with jupyter_client and psutil.
"""

import argparse
import itertools
import json
import os
import socket
import statistics
import subprocess
import tempfile
import time
import urllib.request

from moves import BURST, DRAWN, LOOP

FRONT_END = os.path.abspath("kernel/src/test/widget-front-end/made/served")
ARGUMENTS = ["--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--window-size=1200,1100"]
RIGHT, LEFT = "\ue014", "\ue012"

WATCH = """
window.times = [];
window.drawings = 0;
window.pressed = undefined;
document.addEventListener('keydown', () => { window.pressed = performance.now(); }, true);
new MutationObserver(changes => {
  if (!changes.some(change => [...change.addedNodes].some(node => node.querySelector?.('svg') || node.tagName === 'svg'))) return;
  const begun = window.pressed;
  window.drawings++;
  requestAnimationFrame(() => { const port = new MessageChannel();
    port.port1.onmessage = () => window.times.push(performance.now() - begun); port.port2.postMessage(0); });
}).observe(document.body, { childList: true, subtree: true });
"""

PRESS_MANY = """
const handle = document.querySelectorAll('.noUi-handle')[0];
const done = arguments[arguments.length - 1];
window.drawings = 0; window.times = [];
let left = arguments[0];
const next = () => {
  handle.dispatchEvent(new KeyboardEvent('keydown', { key: arguments[1], bubbles: true, cancelable: true }));
  if (--left) setTimeout(next, 8); else settle(performance.now());
};
const settle = last => { let seen = -1; const wait = () => {
  if (window.times.length === window.drawings && window.times.length === seen) done([window.times.at(-1), window.drawings]);
  else { seen = window.times.length; setTimeout(wait, 400); } }; setTimeout(wait, 400); };
next();
"""


def free_port():
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        return taken.getsockname()[1]


def answers(address):
    try:
        return urllib.request.urlopen(address, timeout=5).status == 200
    except OSError:
        return False


def until(condition):
    end = time.time() + 60
    while not condition():
        assert time.time() < end, "nothing answers"
        time.sleep(0.05)


class Browser:
    """A page in a browser, driven over WebDriver."""

    def __init__(self, folder):
        port = free_port()
        log = open(os.path.join(folder, "driver.log"), "w")
        self.driver = subprocess.Popen(["/usr/bin/chromedriver", f"--port={port}"], stdout=log, stderr=log)
        self.address = f"http://127.0.0.1:{port}"
        until(lambda: answers(self.address + "/status"))
        options = {"binary": "/usr/bin/chromium", "args": ARGUMENTS}
        made = self.post("/session", {"capabilities": {"alwaysMatch": {"goog:chromeOptions": options}}})
        self.session = "/session/" + made["sessionId"]
        self.post(self.session + "/timeouts", {"script": 120_000})

    def post(self, path, body):
        data = json.dumps(body).encode()
        request = urllib.request.Request(self.address + path, data, {"Content-Type": "application/json"})
        return json.load(urllib.request.urlopen(request, timeout=180))["value"]

    def open(self, address):
        self.post(self.session + "/url", {"url": address})

    def script(self, text, *given):
        return self.post(self.session + "/execute/sync", {"script": text, "args": list(given)})

    def later(self, text, *given):
        return self.post(self.session + "/execute/async", {"script": text, "args": list(given)})

    def press(self, key):
        presses = [{"type": "keyDown", "value": key}, {"type": "keyUp", "value": key}]
        self.post(self.session + "/actions", {"actions": [{"type": "key", "id": "keys", "actions": presses}]})

    def end(self):
        request = urllib.request.Request(self.address + self.session, method="DELETE")
        urllib.request.urlopen(request, timeout=30)
        self.driver.terminate()


def server(prefix, folder):
    port = free_port()
    share = os.path.join(os.path.abspath(prefix), "share", "jupyter")
    own = {"JUPYTER_PATH": share, "HOME": folder, "JUPYTER_RUNTIME_DIR": folder, "JUPYTER_CONFIG_DIR": folder}
    options = {"ip": "127.0.0.1", "port": port, "token": "", "password": "", "notebook_dir": os.getcwd()}
    options |= {"extra_static_paths": [FRONT_END], "disable_check_xsrf": True, "open_browser": False, "allow_root": True}
    command = ["/usr/bin/jupyter-notebook"] + [f"--NotebookApp.{name}={value}" for name, value in options.items()]
    log = open(os.path.join(folder, "server.log"), "w")
    process = subprocess.Popen(command, stdout=log, stderr=log, env={**os.environ, **own})
    until(lambda: answers(f"http://127.0.0.1:{port}/api"))
    return process, f"http://127.0.0.1:{port}/static/front-end.html"


def run(page, code):
    problem = page.later("const done = arguments[1]; frontEnd.run(arguments[0]).then(() => done(''), e => done(String(e)));", code)
    assert not problem, problem


def walk(page, keys, moves):
    """Presses keys one at a time, each after the picture of the last."""
    times = []
    for key in itertools.islice(keys, moves):
        page.script("window.times = []; document.querySelectorAll('.noUi-handle')[0].focus();")
        page.press(key)
        until(lambda: page.script("return window.times.length"))
        times.append(page.script("return window.times.at(-1)"))
    return times


def main():
    parser = argparse.ArgumentParser(description="Times the live controls of a what-if in a browser.")
    parser.add_argument("prefix")
    parser.add_argument("--moves", type=int, default=100)
    parser.add_argument("--bursts", type=int, default=10)
    given = parser.parse_args()
    print(f"load of the machine {os.getloadavg()[0]:.1f} on {os.cpu_count()} processors")
    with tempfile.TemporaryDirectory() as folder:
        notebook, address = server(given.prefix, folder)
        page = Browser(folder)
        try:
            for name, code in DRAWN.items():
                page.open(address)
                page.later("const done = arguments[0]; frontEnd.start('headrace').then(done);")
                run(page, LOOP)
                run(page, code)
                page.script(WATCH)
                keys = itertools.cycle([LEFT] * 15 + [RIGHT] * 15)
                walk(page, keys, given.moves // 4)  # warms up
                times = sorted(walk(page, keys, given.moves))
                ways = ["ArrowLeft", "ArrowRight"]
                bursts = [page.later(PRESS_MANY, BURST, ways[each % 2]) for each in range(given.bursts)]
                print(
                    f"{name}: key to picture median {statistics.median(times):.0f} ms, 95th percentile"
                    f" {times[int(len(times) * 0.95)]:.0f} ms; last of {BURST} drawn after median"
                    f" {statistics.median(b[0] for b in bursts):.0f} ms, most {max(b[0] for b in bursts):.0f} ms, with"
                    f" {statistics.mean(b[1] for b in bursts):.1f} drawn"
                )
                page.later("const done = arguments[0]; frontEnd.end().then(done);")
        finally:
            page.end()
            notebook.terminate()
            notebook.wait()


if __name__ == "__main__":
    main()
