package headrace.control.duty;

import headrace.numeric.RandomStreams;
import headrace.problem.Refusal;
import headrace.units.Time;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A time in which a pump cannot run.
 *
 * @param pump the pump, from 0
 * @param span from when to when
 */
public record Fault(int pump, Span span) {
    /**
     * Returns faults at random from a seed: the time to the next fault and the time of repair follow exponential
     * distributions, rounded up to whole seconds.
     *
     * @param seed the seed
     * @param pumps how many pumps there are
     * @param length for how long
     * @param between the mean time from a repair to the next fault
     * @param repair the mean time of a repair
     */
    public static List<Fault> drawn(long seed, int pumps, Time length, Time between, Time repair) {
        if (between.seconds() < 1 || repair.seconds() < 1) {
            throw new Refusal(
                    DutyProblem.IMPOSSIBLE_SPANS,
                    "Asked for faults every " + between + " with repairs of " + repair,
                    "Both times are 1 s or more",
                    "State the mean times of the pumps you know");
        }
        RandomStreams streams = RandomStreams.of(seed);
        long end = Math.round(length.seconds());
        List<Fault> faults = new ArrayList<>();
        for (int pump = 0; pump < pumps; pump++) {
            long now = 0;
            for (long draw = 0; ; draw++) {
                now += exponential(streams.uniform(pump, 2 * draw), between);
                if (now >= end) {
                    break;
                }
                long repaired = Math.min(end, now + exponential(streams.uniform(pump, 2 * draw + 1), repair));
                faults.add(new Fault(pump, new Span(now, repaired)));
                now = repaired;
            }
        }
        faults.sort(Comparator.comparingLong(fault -> fault.span().from()));
        return faults;
    }

    private static long exponential(double uniform, Time mean) {
        return Math.max(1, (long) Math.ceil(-Math.log(1 - uniform) * mean.seconds()));
    }
}
