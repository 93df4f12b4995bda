"""Times the live controls of a what-if as a front end meets them: a whole kernel, over real sockets.

    kernel/bin/headrace install --prefix PREFIX
    moves.py PREFIX [--moves 200] [--bursts 20]

Runs in the project's folder. A circuit of five branches is moved by two sliders: once drawn as a circuit, once as the
pump's map with the operating point upon it. For each: from a slider's message to the message with the new picture, a
move at a time; and from the last of a burst of 30 positions to its picture, with how many of the 30 were drawn. Needs
Python 3 with jupyter_client and psutil.
"""

import argparse
import os
import random
import statistics
import time

from times import Visit

LOOP = """
curve  = fit(readPumpTest('demo-data/pumps/heron-65.csv'))
set    = pumpSet(curve, motor(5.5.kW, ie: 3, poles: 4), drive(5.5.kW), minimumSpeed: 30.percent)
loop   = directReturn(water(12.degC), resistance(52.m3ph, 45.kPa), [
    branch('foyer', coil(10.m3ph, 25.kPa), controlValve(25.kv)),
    branch('hall', coil(10.m3ph, 25.kPa), controlValve(25.kv), main: pipe(24.m, steel: 100)),
    branch('study', coil(10.m3ph, 25.kPa), controlValve(25.kv), main: pipe(20.m, steel: 100)),
    branch('kitchen', coil(11.m3ph, 25.kPa), controlValve(25.kv), main: pipe(20.m, steel: 100)),
    branch('attic', coil(11.m3ph, 30.kPa), controlValve(25.kv), main: pipe(40.m, steel: 80))])
design = duty(52.m3ph, 16.m)
moved  = [minimumHead: slider(20.percent, 60.percent, positions: 41), load: slider(20.percent, 100.percent, positions: 41)]
"""
DRAWN = {
    "circuit": "whatIf(moved) { m, l -> settle(set, quadratic(design, minimumHead: m), loop, load: l).circuit() }",
    "map": "whatIf(moved) { m, l -> law = quadratic(design, minimumHead: m);"
    " map(set, design, law, settle(set, law, loop, load: l).pump().get()) }",
}
POSITIONS = 41
BURST = 30


class Controls:
    """The sliders that a cell opened, and where its picture is drawn."""

    def __init__(self, visit, code):
        self.visit = visit
        self.sliders = []
        self.picture = None
        self.seconds = visit.run(code, self.hear)

    def hear(self, message):
        if message["msg_type"] == "comm_open":
            state = message["content"]["data"]["state"]
            if state["_model_name"] == "SelectionSliderModel":
                self.sliders.append(message["content"]["comm_id"])
            elif "<svg" in str(state.get("value")):
                self.picture = message["content"]["comm_id"]

    def move(self, slider, index):
        client = self.visit.client
        data = {"method": "update", "state": {"index": index}, "buffer_paths": []}
        message = client.session.msg("comm_msg", {"comm_id": self.sliders[slider], "data": data})
        client.shell_channel.send(message)
        return message["header"]["msg_id"]

    def drawn(self, request):
        """Returns when the picture came that a message caused, or None if it caused none."""
        seen = []

        def hear(message):
            if message["msg_type"] == "comm_msg" and message["content"]["comm_id"] == self.picture:
                seen.append(time.perf_counter())

        self.visit.idle(request, hear)
        return seen[-1] if seen else None


def walk(controls, moves, chance):
    times = []
    at = [POSITIONS // 2, POSITIONS // 2]
    while len(times) < moves:
        slider = chance.randrange(2)
        to = chance.randrange(POSITIONS)
        if to == at[slider]:
            continue
        at[slider] = to
        begun = time.perf_counter()
        shown = controls.drawn(controls.move(slider, to))
        if shown:
            times.append((shown - begun) * 1e3)
    return times


def burst(controls, chance):
    first = chance.randrange(POSITIONS)
    sent = [controls.move(0, (first + step) % POSITIONS) for step in range(BURST)]
    last = time.perf_counter()
    shown = [controls.drawn(request) for request in sent]
    assert shown[-1], "the last position was not drawn"
    return (shown[-1] - last) * 1e3, sum(1 for each in shown if each)


def main():
    parser = argparse.ArgumentParser(description="Times the live controls of a what-if.")
    parser.add_argument("prefix")
    parser.add_argument("--moves", type=int, default=200)
    parser.add_argument("--bursts", type=int, default=20)
    given = parser.parse_args()
    chance = random.Random(7)
    print(f"load of the machine {os.getloadavg()[0]:.1f} on {os.cpu_count()} processors")
    visit = Visit("headrace", [os.path.join(given.prefix, "share", "jupyter", "kernels")])
    try:
        visit.run(LOOP)
        for name, code in DRAWN.items():
            controls = Controls(visit, code)
            walk(controls, given.moves // 4, chance)  # warms up
            before = visit.process().cpu_times()
            times = sorted(walk(controls, given.moves, chance))
            after = visit.process().cpu_times()
            busy = (after.user + after.system - before.user - before.system) / len(times) * 1e3
            bursts = [burst(controls, chance) for _ in range(given.bursts)]
            print(
                f"{name}: shown after {controls.seconds:.1f} s; move to picture median {statistics.median(times):.0f} ms,"
                f" 95th percentile {times[int(len(times) * 0.95)]:.0f} ms, processor time {busy:.0f} ms;"
                f" last of {BURST} drawn after median {statistics.median(b[0] for b in bursts):.0f} ms,"
                f" most {max(b[0] for b in bursts):.0f} ms, with {statistics.mean(b[1] for b in bursts):.1f} drawn"
            )
    finally:
        visit.end()


if __name__ == "__main__":
    main()
