#!/bin/bash
# Times the workloads against a reference implementation in Python, in turn, and compares the results.
#
#   dsl/src/jmh/compare.sh REFERENCE [ROUNDS [WORKLOAD ...]]
#
# REFERENCE is a folder with a run.py that takes the names of workloads and --threads, --reps, --no-check and --json FILE,
# and writes {"results": {name: {"median": seconds, "outputs": {name: number}}}}. It runs under /usr/bin/python3 with
# Debian's python3-numpy and python3-scipy. Both sides run on one processor: the calculation, the compiler and the
# collector of the Java side share it.
set -euo pipefail

[ $# -ge 1 ] || { sed -n '2,8s/^# \{0,1\}//p' "$0" >&2; exit 2; }
reference=$(cd "$1" && pwd)
rounds=${2:-3}
shift $(($# > 1 ? 2 : 1))
workloads=${*:-W1 W2 W3 W4 W5 W6 W7 W8 W9 W10}

cd "$(dirname "$0")/../../.."
mvn -q -B -pl dsl -Pbenchmarks -Dspotless.check.skip=true test-compile dependency:build-classpath \
    -Dmdep.outputFile=target/benchmarks.classpath -Dmdep.includeScope=test

exec /usr/bin/python3 dsl/src/jmh/compare.py "$reference" "$rounds" $workloads
