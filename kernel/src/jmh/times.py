"""Times notebook kernels as a front end meets them: whole processes, over real sockets, in turn.

    times.py --rounds 5 --reference python3 --kernel 17=PREFIX --kernel 25=PREFIX [--pump FILE] [--json FILE]

The reference is a kernel that the Jupyter client finds by its name; every other one is called by a label and stands in
share/jupyter/kernels/headrace below its prefix. In each round every kernel is started once, one after the other, so that
all see the same machine. The table gives medians over the rounds (or the best of them), and each as a
ratio to the reference's.

Needs Python 3 with jupyter_client and psutil; the reference also matplotlib for its picture.
"""

import argparse
import json
import os
import platform
import statistics
import time

import psutil
import zmq
from jupyter_client.kernelspec import KernelSpecManager
from jupyter_client.manager import KernelManager

CURVE = "curve = fit(readPumpTest('{pump}'))\ncurve"
OURS = {
    "chart": CURVE,
    "lines": "for (int i = 0; i < {lines}; i++) println i",
    "complete": "'abc'.toUp",
    "loop": "while (true) {}",
}
REFERENCE = {
    "chart": "%matplotlib inline\nimport matplotlib.pyplot as plt\nplt.plot([1, 2, 3])\nplt.show()",
    "lines": "for i in range({lines}): print(i)",
    "complete": "import os\nos.pa",
    "loop": "while True: pass",
}
PICTURES = ("image/svg+xml", "image/png", "text/html")

# What is measured: its key, its name, its unit, and the most it may be of the reference's; the least if it is negative.
MEASURES = [
    ("info", "start to the answer to kernel_info", "s", 0.6),
    ("first", "start to the first result, 1+1", "s", 1.0),
    ("chart", "start to the first chart", "s", 1.0),
    ("chart_alone", "the cell of the first chart alone", "ms", None),
    ("reply_median", "round trip of 1+1, median", "ms", 1.0),
    ("reply_p95", "round trip of 1+1, 95th percentile", "ms", 1.0),
    ("queued", "cells a second, all queued at once", "1/s", -1.5),
    ("lines", "100,000 lines printed", "s", None),
    ("lines_messages", "messages that carried them", "", None),
    ("lines_lost", "lines lost", "", None),
    ("complete_median", "completion, median", "ms", 0.4),
    ("interrupt", "interruption of an endless loop, to the reply", "ms", None),
    ("rss_first", "resident memory after the first result", "MB", None),
    ("rss_chart", "resident memory after the first chart", "MB", 1.2),
    ("rss_end", "resident memory at the end", "MB", None),
    ("cpu_first", "processor time until the first result", "s", None),
]


class Visit:
    """One start of a kernel, its use and its end."""

    def __init__(self, name, folders):
        self.begun = time.perf_counter()
        manager = KernelManager(kernel_name=name)
        if folders:
            manager.kernel_spec_manager = KernelSpecManager(kernel_dirs=folders)
        manager.start_kernel(stdout=open(os.devnull, "w"), stderr=open(os.devnull, "w"))
        self.manager = manager
        self.client = manager.client()
        self.client.context.setsockopt(zmq.RECONNECT_IVL, 10)  # else starts are rounded up to steps of 100 ms
        self.client.start_channels()

    def since(self):
        return time.perf_counter() - self.begun

    def process(self):
        provisioner = getattr(self.manager, "provisioner", None)
        return psutil.Process(provisioner.pid if provisioner else self.manager.kernel.pid)

    def reply(self, request, patience=120):
        while True:
            message = self.client.get_shell_msg(timeout=patience)
            if message["parent_header"].get("msg_id") == request:
                return message

    def idle(self, request, hear=lambda message: None, patience=120):
        while True:
            message = self.client.get_iopub_msg(timeout=patience)
            if message["parent_header"].get("msg_id") == request:
                hear(message)
                if message["msg_type"] == "status" and message["content"]["execution_state"] == "idle":
                    return

    def run(self, code, hear=lambda message: None):
        """Runs a cell and returns the seconds until its reply."""
        begun = time.perf_counter()
        request = self.client.execute(code)
        reply = self.reply(request)
        took = time.perf_counter() - begun
        assert reply["content"]["status"] == "ok", reply["content"]
        self.idle(request, hear)
        return took

    def memory(self):
        return self.process().memory_info().rss / 2**20

    def end(self):
        self.manager.shutdown_kernel(now=False)
        self.client.stop_channels()


def start(visit, seen):
    visit.reply(visit.client.kernel_info())
    seen["info"] = visit.since()
    request = visit.client.execute("1+1")
    assert visit.reply(request)["content"]["status"] == "ok"
    seen["first"] = visit.since()
    times = visit.process().cpu_times()
    seen["cpu_first"] = times.user + times.system
    visit.idle(request)
    seen["rss_first"] = visit.memory()


def chart(visit, seen, code):
    shown = []

    def hear(message):
        if message["msg_type"] in ("display_data", "execute_result"):
            if any(kind in message["content"]["data"] for kind in PICTURES):
                shown.append(time.perf_counter())

    begun = time.perf_counter()
    visit.run(code, hear)
    seen["chart"] = shown[0] - visit.begun
    seen["chart_alone"] = (shown[0] - begun) * 1e3
    seen["rss_chart"] = visit.memory()


def round_trips(visit, seen, times):
    for _ in range(20):
        visit.run("1+1")
    took = sorted(visit.run("1+1") * 1e3 for _ in range(times))
    seen["reply_median"] = statistics.median(took)
    seen["reply_p95"] = took[int(0.95 * (times - 1) + 0.5)]
    begun = time.perf_counter()
    requests = [visit.client.execute("1+1") for _ in range(times)]
    visit.reply(requests[-1])
    seen["queued"] = times / (time.perf_counter() - begun)
    visit.idle(requests[-1])


def lines(visit, seen, code, count):
    texts = []

    def hear(message):
        if message["msg_type"] == "stream" and message["content"]["name"] == "stdout":
            texts.append(message["content"]["text"])

    begun = time.perf_counter()
    visit.run(code.replace("{lines}", str(count)), hear)
    seen["lines"] = time.perf_counter() - begun
    seen["lines_messages"] = len(texts)
    seen["lines_lost"] = count - "".join(texts).count("\n")


def completion(visit, seen, code):
    took = []
    for _ in range(51):
        begun = time.perf_counter()
        request = visit.client.complete(code, len(code))
        assert visit.reply(request)["content"]["matches"]
        took.append((time.perf_counter() - begun) * 1e3)
        visit.idle(request)
    seen["complete_median"] = statistics.median(took[1:])


def interruption(visit, seen, code):
    request = visit.client.execute(code)
    time.sleep(1)
    begun = time.perf_counter()
    visit.manager.interrupt_kernel()
    assert visit.reply(request)["content"]["status"] == "error"
    seen["interrupt"] = (time.perf_counter() - begun) * 1e3
    visit.idle(request)
    visit.run("1+1")


def visited(name, folders, code, short):
    seen = {}
    visit = Visit(name, folders)
    try:
        start(visit, seen)
        chart(visit, seen, code["chart"])
        if not short:
            round_trips(visit, seen, 500)
            lines(visit, seen, code["lines"], 100_000)
            completion(visit, seen, code["complete"])
            interruption(visit, seen, code["loop"])
            seen["rss_end"] = visit.memory()
    finally:
        visit.end()
    return seen


def best(key, values):
    return max(values) if key == "queued" else min(values)


def table(runs, least):
    """Returns the medians, or the best of all rounds, as a table in Markdown, each with its ratio to the first kernel's."""
    labels = list(runs)
    lines = ["| | " + " | ".join(labels) + " |", "|---|" + "---|" * len(labels)]
    for key, name, unit, most in MEASURES:
        if key not in runs[labels[0]][0]:
            continue
        values = [[run[key] for run in runs[label]] for label in labels]
        medians = [best(key, each) if least else statistics.median(each) for each in values]
        cells = [f"{medians[0]:.3g}"]
        for value in medians[1:]:
            ratio = f" ({value / medians[0]:.2f})" if medians[0] else ""
            cells.append(f"{value:.3g}{ratio}")
        aim = "" if most is None else f"; {'at least' if most < 0 else 'at most'} {abs(most)}"
        lines.append(f"| {name}{', ' + unit if unit else ''}{aim} | " + " | ".join(cells) + " |")
    return "\n".join(lines)


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--rounds", type=int, default=5)
    parser.add_argument("--reference", default="python3")
    parser.add_argument("--kernel", action="append", default=[], metavar="LABEL=PREFIX")
    parser.add_argument("--pump", default="demo-data/pumps/heron-65.csv")
    parser.add_argument("--short", action="store_true", help="the start and the first chart only")
    parser.add_argument("--best", action="store_true", help="the best of the rounds, for a machine that others use too")
    parser.add_argument("--json", metavar="FILE")
    chosen = parser.parse_args()

    ours = {key: code.replace("{pump}", os.path.abspath(chosen.pump)) for key, code in OURS.items()}
    kernels = {chosen.reference: (chosen.reference, [], REFERENCE)} if chosen.reference else {}
    for each in chosen.kernel:
        label, prefix = each.split("=", 1)
        kernels[label] = ("headrace", [os.path.join(prefix, "share", "jupyter", "kernels")], ours)
    runs = {label: [] for label in kernels}
    for _ in range(chosen.rounds):
        for label, (name, folders, code) in kernels.items():
            runs[label].append(visited(name, folders, code, chosen.short))
    if chosen.json:
        with open(chosen.json, "w") as out:
            json.dump({"machine": platform.platform(), "cores": os.cpu_count(), "runs": runs}, out, indent=1)
    print(f"{platform.platform()}, {os.cpu_count()} cores, load {os.getloadavg()[0]:.1f}, {chosen.rounds} rounds\n")
    print(table(runs, chosen.best))


if __name__ == "__main__":
    main()
