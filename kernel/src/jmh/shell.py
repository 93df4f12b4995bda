"""Times the shell as a user meets it: a whole process in a pseudo terminal.

    shell.py [--rounds 7] [--silent] [--pause 0] [--command 'kernel/bin/headrace shell']

Runs in the project's folder; JAVA_HOME chooses the JDK. A first start, not timed, builds what is not built yet. In each round the
shell is started anew, and once its prompt is shown gets `1 + 1` and Enter; --pause waits so many seconds in between, as a
person does. Timed from the start of the process: the prompt, the echo of the last letter typed, the result; and the result from
Enter. The terminal answers what it is asked about itself, as most do; with --silent it keeps silent. Needs Python 3 alone, and a
system with pseudo terminals.
"""

import argparse
import fcntl
import os
import pty
import re
import select
import shlex
import signal
import statistics
import struct
import subprocess
import tempfile
import termios
import time

PATIENCE = 60  # seconds for a round; after that it has failed
LINES, COLUMNS = 40, 100
COMMANDS = re.compile(rb"\x1b(\[[0-9;?<>=$]*[A-Za-z]|[=>])")

# What a terminal may be asked about itself, and what one without pictures answers.
ANSWERS = {
    b"\x1b[c": b"\x1b[?62;1;6;22c",
    b"\x1b[>c": b"\x1b[>1;4000;0c",
    b"\x1b[6n": b"\x1b[1;1R",
    b"\x1b[?2026$p": b"\x1b[?2026;0$y",
    b"\x1b[?2027$p": b"\x1b[?2027;0$y",
    b"\x1b[?2048$p": b"\x1b[?2048;0$y",
}


class Terminal:
    """A program in a terminal of its own, and all that it wrote there."""

    def __init__(self, command, home, silent):
        self.silent = silent
        self.raw = b""
        self.answered = {}
        self.begun = time.perf_counter()
        self.pid, self.keys = pty.fork()
        if self.pid == 0:
            os.environ.update(TERM="xterm-256color", HEADRACE_HISTORY=home)
            os.execvp(command[0], command)
        fcntl.ioctl(self.keys, termios.TIOCSWINSZ, struct.pack("HHHH", LINES, COLUMNS, 0, 0))

    def since(self):
        return time.perf_counter() - self.begun

    def until(self, pattern):
        """Reads until the text, without its commands, holds a pattern; returns the seconds since the start."""
        while not re.search(pattern, COMMANDS.sub(b"", self.raw)):
            if self.since() > PATIENCE:
                raise TimeoutError(f"no {pattern} within {PATIENCE} s; the terminal shows {self.raw!r}")
            if select.select([self.keys], [], [], 1)[0]:
                self.raw += os.read(self.keys, 65536)
                self.answer()
        return self.since()

    def answer(self):
        for question, answer in ANSWERS.items():
            for _ in range(self.raw.count(question) - self.answered.get(question, 0)):
                if not self.silent:
                    self.type(answer)
            self.answered[question] = self.raw.count(question)

    def type(self, keys):
        os.write(self.keys, keys)

    def end(self):
        os.kill(self.pid, signal.SIGKILL)
        os.waitpid(self.pid, 0)
        os.close(self.keys)


def visit(command, silent, pause):
    with tempfile.TemporaryDirectory() as home:
        terminal = Terminal(command, home, silent)
        try:
            prompt = terminal.until(rb"1> $")
            time.sleep(pause)
            terminal.type(b"1 + 1")
            echo = terminal.until(rb"1> 1 \+ 1$")
            entered = terminal.since()
            terminal.type(b"\r")
            result = terminal.until(rb"\n2\r?\n")
            return {"prompt": prompt, "echo": echo, "first result": result, "result after Enter": result - entered}
        finally:
            terminal.end()


def main():
    parser = argparse.ArgumentParser(description="Times the shell.")
    parser.add_argument("--rounds", type=int, default=7)
    parser.add_argument("--silent", action="store_true")
    parser.add_argument("--pause", type=float, default=0)
    parser.add_argument("--command", default="kernel/bin/headrace shell")
    given = parser.parse_args()
    command = shlex.split(given.command)
    subprocess.run(["kernel/bin/headrace", "--version"], check=True, timeout=900)
    print(f"load of the machine {os.getloadavg()[0]:.1f} on {os.cpu_count()} processors")
    rounds = [visit(command, given.silent, given.pause) for _ in range(given.rounds)]
    for name in rounds[0]:
        times = [each[name] for each in rounds]
        print(f"{name}: median {statistics.median(times):.2f} s, least {min(times):.2f} s, most {max(times):.2f} s")


if __name__ == "__main__":
    main()
