"""Runs both sides in turn, each in a fresh process a round; see compare.sh, which calls this.

Prints for each workload the ratio of our time to that of the fastest reference variant, as the median over the rounds of
the ratios inside a round, and how many results differ by more than the tolerance.
"""
import json
import os
import re
import statistics
import subprocess
import sys
import tempfile

WARM_UP_SECONDS = "3"
REPETITIONS = "5"
TOLERANCE = {"W1": 1e-10, "W2": 1e-10, "W3": 1e-10, "W4": 1e-8, "W5": 1e-8, "W6": 1e-7, "W7": 1e-9, "W9": 1e-9,
             "W8": 1e-9, "W10": 1e-9}
OWN_NUMBERS = {"W7r": 0.02, "W8r": 0.02}  # from random numbers of one's own
COUNTS_MAY_DIFFER = {"W7": 2, "W8": 2}  # a draw within rounding of a limit

# variants of one piece of work: ours is compared with the fastest of them
PIECES = [
    ("W1", r"W1$"), ("W2", r"W2$"), ("W3a", "W3a"), ("W3b", "W3b"), ("W3c", "W3c"),
    ("W4a", "W4a"), ("W4b", "W4b"),
    ("W5a", "W5a"), ("W5b", "W5b"), ("W5c", "W5c"), ("W5y", "W5y"), ("W6a", "W6 506"), ("W6b", "W6 5042"),
    ("W7a", "W7a MC point A"), ("W7b", "W7b"), ("W7c", "W7a MC point B"), ("W7r", "W7r"),
    ("W8", r"W8 "), ("W8r", "W8r"), ("W9", "W9[ab].*whole job"), ("W10", "W10[ab]"),
]


def main():
    reference, rounds, workloads = sys.argv[1], int(sys.argv[2]), sys.argv[3:]
    processor = max(os.sched_getaffinity(0))
    warm, first, values = {}, {}, []
    for _ in range(rounds):
        for workload in workloads:
            theirs = run_reference(reference, workload, processor)
            ours = run_ours(workload, processor)
            values += compared(ours, theirs)
            for piece, pattern in PIECES:
                if re.match(r"W\d+", piece).group() != workload:
                    continue
                best = min(v["median"] for k, v in theirs.items() if re.match(pattern, k))
                mine = next(v for k, v in ours.items() if re.match(pattern, k))
                warm.setdefault(piece, []).append(mine["median"] / best)
                first.setdefault(piece, []).append(mine["first"] / best)
    report(warm, first, values)
    return 1 if any(values) else 0


def run_reference(folder, workload, processor):
    with tempfile.TemporaryDirectory() as scratch:
        path = os.path.join(scratch, "results.json")
        command = ["taskset", "-c", str(processor), "/usr/bin/python3", os.path.join(folder, "run.py"), workload,
                   "--threads", "1", "--reps", REPETITIONS, "--no-check", "--json", path]
        subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
        with open(path) as file:
            return json.load(file)["results"]


def run_ours(workload, processor):
    with open("dsl/target/benchmarks.classpath") as file:
        classpath = "dsl/target/test-classes:dsl/target/classes:" + file.read().strip()
    command = ["taskset", "-c", str(processor), "java", "-Xms2g", "-Xmx2g", "-XX:+UseSerialGC",
               "-XX:+UseTransparentHugePages", "-cp", classpath,
               "headrace.benchmark.Timing", WARM_UP_SECONDS, REPETITIONS, workload]
    return json.loads(subprocess.run(command, check=True, stdout=subprocess.PIPE).stdout)["results"]


def compared(ours, theirs):
    """True for each result that differs by more than the tolerance, False for each that agrees."""
    differs = []
    for name, result in ours.items():
        workload, piece = re.match(r"(W\d+)\w?", name).group(1, 0)
        tolerance = OWN_NUMBERS.get(piece, TOLERANCE[workload])
        apart = COUNTS_MAY_DIFFER.get(workload, 0)
        for key, mine in result["outputs"].items():
            given = theirs[name]["outputs"][key]
            pairs = zip(mine, given) if isinstance(mine, list) else [(mine, given)]
            for a, b in pairs:
                wrong = abs(a - b) > apart if isinstance(b, int) else not abs(a - b) <= tolerance * max(1.0, abs(b))
                if wrong:
                    print(f"{name}: {key}: {a!r}, reference {b!r}")
                differs.append(wrong)
    return differs


def report(warm, first, values):
    print(f"{'workload':9s} {'warm':>7s} {'least':>7s} {'most':>7s} {'first call':>11s}   (our time / reference)")
    for piece, ratios in warm.items():
        print(f"{piece:9s} {statistics.median(ratios):7.2f} {min(ratios):7.2f} {max(ratios):7.2f}"
              f" {statistics.median(first[piece]):11.2f}")
    print(f"{len(values)} results compared, {sum(values)} outside the tolerance")


sys.exit(main())
