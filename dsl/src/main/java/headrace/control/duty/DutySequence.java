package headrace.control.duty;

import headrace.control.duty.DutyEvent.Kind;
import headrace.control.duty.DutyPlan.Counted;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.List;

/**
 * Goes through a plan from event to event, in whole seconds. What falls on the same second comes in this order: faults
 * and repairs, wishes for flow, starts that were pending, ends of an overlap, alternations.
 */
final class DutySequence {
    private static final long NEVER = Long.MAX_VALUE;
    private static final int POLLED = 4096;

    final long[] run;
    final long[] starts;
    final List<DutyEvent> events = new ArrayList<>();
    long wanted;
    long gap;
    long nobody;
    long both;
    long alternations;
    long leftOut;

    private final DutyPlan plan;
    private final List<Edge> edges;
    private final boolean[] running;
    private final int[] faults;
    private final long end;
    private final int keep;
    private boolean flowWanted;
    private int duty;
    private int pending = -1;
    private long pendingAt = NEVER;
    private int leaving = -1;
    private long overlapEnd = NEVER;
    private long due;
    private long dutyRun;
    private long now;

    /**
     * A change that comes from outside.
     *
     * @param second when
     * @param pump which pump, or −1 for a wish for flow
     * @param begins whether the fault or the wish begins
     */
    record Edge(long second, int pump, boolean begins) {}

    DutySequence(DutyPlan plan, List<Edge> edges, long end, int keep) {
        this.plan = plan;
        this.edges = edges;
        this.end = end;
        this.keep = keep;
        run = new long[plan.pumps()];
        starts = new long[plan.pumps()];
        running = new boolean[plan.pumps()];
        faults = new int[plan.pumps()];
        due = plan.counted() == Counted.CLOCK ? plan.intervalSeconds() : NEVER;
    }

    DutySequence through() {
        int edge = 0;
        long steps = 0;
        while (true) {
            long outside = edge < edges.size() ? edges.get(edge).second() : NEVER;
            long next = Math.min(Math.min(outside, pendingAt), Math.min(overlapEnd, nextDue()));
            if (next >= end) {
                advance(end);
                Work.progress("following duty and standby", end, end);
                return this;
            }
            advance(next);
            while (edge < edges.size() && edges.get(edge).second() == now) {
                take(edges.get(edge++));
            }
            settle();
            if (++steps % POLLED == 0) {
                Work.progress("following duty and standby", now, end);
            }
        }
    }

    /** Counts the time until a second. */
    private void advance(long to) {
        long seconds = to - now;
        int turning = 0;
        for (int pump = 0; pump < run.length; pump++) {
            if (running[pump]) {
                run[pump] += seconds;
                turning++;
            }
        }
        dutyRun += running[duty] ? seconds : 0;
        both += turning > 1 ? seconds : 0;
        if (flowWanted) {
            wanted += seconds;
            gap += turning == 0 && pending >= 0 ? seconds : 0;
            nobody += turning == 0 && pending < 0 ? seconds : 0;
        }
        now = to;
    }

    private long nextDue() {
        if (plan.counted() == Counted.CLOCK) {
            return due;
        }
        return running[duty] ? now + Math.max(0, plan.intervalSeconds() - dutyRun) : NEVER;
    }

    private void take(Edge edge) {
        if (edge.pump() < 0) {
            flowWanted = edge.begins();
            log(flowWanted ? Kind.WANTED : Kind.NOT_WANTED, -1);
            if (flowWanted) {
                begin();
            } else {
                rest();
            }
            return;
        }
        int pump = edge.pump();
        faults[pump] += edge.begins() ? 1 : -1;
        if (edge.begins() && faults[pump] == 1) {
            log(Kind.FAULT, pump);
            fail(pump);
        } else if (!edge.begins() && faults[pump] == 0) {
            log(Kind.REPAIRED, pump);
            if (flowWanted && noneRuns() && pending < 0) {
                passTo(pump);
                start(pump);
            }
        }
    }

    private void begin() {
        int first = faults[duty] == 0 ? duty : nextFit();
        if (first < 0) {
            log(Kind.NO_PUMP, -1);
        } else {
            passTo(first);
            start(first);
        }
    }

    private void rest() {
        for (int pump = 0; pump < run.length; pump++) {
            stop(pump);
        }
        pending = -1;
        pendingAt = NEVER;
        leaving = -1;
        overlapEnd = NEVER;
    }

    private void fail(int pump) {
        boolean ran = running[pump];
        stop(pump);
        boolean inTheOverlap = leaving >= 0;
        if (inTheOverlap && pump == leaving) {
            leaving = -1;
            overlapEnd = NEVER;
        } else if (ran && inTheOverlap) {
            passOnAfterFault(leaving);
            leaving = -1;
            overlapEnd = NEVER;
        } else if (ran || pump == pending) {
            pending = -1;
            pendingAt = NEVER;
            int next = nextFit();
            if (next < 0) {
                log(Kind.NO_PUMP, -1);
            } else {
                passOnAfterFault(next);
                pending = next;
                pendingAt = now + plan.delaySeconds();
            }
        }
    }

    private void passOnAfterFault(int pump) {
        passTo(pump);
        if (plan.changeover().restartsClock() && plan.counted() == Counted.CLOCK) {
            due = now + plan.delaySeconds() + plan.intervalSeconds();
        }
    }

    /** Does what is due at this second. */
    private void settle() {
        if (pendingAt == now) {
            int next = pending;
            pending = -1;
            pendingAt = NEVER;
            start(next);
        }
        if (overlapEnd == now) {
            stop(leaving);
            leaving = -1;
            overlapEnd = NEVER;
        }
        if (nextDue() == now) {
            alternate();
        }
    }

    private void alternate() {
        if (plan.counted() == Counted.CLOCK) {
            due += plan.intervalSeconds();
        }
        int next = nextFit();
        if (next < 0 || pending >= 0) {
            leftOut++;
            dutyRun = 0;
            log(Kind.LEFT_OUT, duty);
            return;
        }
        alternations++;
        int before = duty;
        boolean runs = running[before];
        if (leaving >= 0) {
            stop(leaving);
            leaving = -1;
            overlapEnd = NEVER;
        }
        passTo(next);
        if (!runs) {
            return;
        }
        start(next);
        if (plan.overlapSeconds() == 0) {
            stop(before);
        } else {
            leaving = before;
            overlapEnd = now + plan.overlapSeconds();
        }
    }

    private void passTo(int pump) {
        if (pump != duty) {
            duty = pump;
            dutyRun = 0;
        }
    }

    /** Returns the next pump in turn that is fit, or −1. */
    private int nextFit() {
        for (int step = 1; step < run.length; step++) {
            int pump = (duty + step) % run.length;
            if (faults[pump] == 0) {
                return pump;
            }
        }
        return -1;
    }

    private boolean noneRuns() {
        for (boolean each : running) {
            if (each) {
                return false;
            }
        }
        return true;
    }

    private void start(int pump) {
        if (!running[pump]) {
            running[pump] = true;
            starts[pump]++;
            log(Kind.START, pump);
        }
    }

    private void stop(int pump) {
        if (running[pump]) {
            running[pump] = false;
            log(Kind.STOP, pump);
        }
    }

    private void log(Kind kind, int pump) {
        if (events.size() < keep) {
            events.add(new DutyEvent(now, kind, pump));
        }
    }
}
