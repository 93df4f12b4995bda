#!/bin/sh
# Times the kernel against a reference kernel on this machine: kernel/src/jmh/compare.sh ROUNDS JDK...
#
# Installs the kernel once with each JDK, below a folder that is removed again, and starts it and the reference in turn.
# PYTHON names the Python that has jupyter_client, psutil and the reference (ipykernel, with matplotlib); REFERENCE the
# reference's name, python3 if not given.
set -e
rounds=$1
shift
project=$(CDPATH='' cd -- "$(dirname -- "$0")/../../.." && pwd -P)
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
kernels=
for jdk in "$@"; do
    label=$(sed -n 's/^JAVA_VERSION="\([0-9]*\).*/\1/p' "$jdk/release")
    JAVA_HOME=$jdk "$project/kernel/bin/headrace" install --prefix "$scratch/$label" >&2
    kernels="$kernels --kernel $label=$scratch/$label"
done
cd "$project"
# shellcheck disable=SC2086 # the folder's name has no spaces
"${PYTHON:-python3}" kernel/src/jmh/times.py --rounds "$rounds" --reference "${REFERENCE:-python3}" $kernels
