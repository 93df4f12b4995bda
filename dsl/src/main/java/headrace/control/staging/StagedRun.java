package headrace.control.staging;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Energy;
import headrace.units.Flow;
import headrace.units.Time;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A plant that follows a record of total flows in time, its pumps switched with hysteresis, a hold and a least run.
 *
 * <p>A pump starts half the hysteresis above a switch and stops half of it below, after the hold; one that has just
 * started runs its least time. Where the running pumps cannot serve the flow another one starts at once.
 *
 * @param staging the switches
 * @param times what keeps pumps from being switched too often
 * @param step the time from one flow to the next
 * @param running how many pumps run in each step
 * @param energy what the wire gives
 * @param least what it would give with the best number of pumps in every step
 * @param byRule what it would give with the number of the fixed rule in every step
 * @param starts how often a pump starts after the first
 * @param unserved the time in which no number of pumps serves the flow; its energy is not counted
 */
public record StagedRun(
        Staging staging,
        StagingTimes times,
        Time step,
        List<Integer> running,
        Energy energy,
        Energy least,
        Energy byRule,
        int starts,
        Time unserved)
        implements Traced {
    /** Keeps the numbers from changing. */
    public StagedRun {
        running = List.copyOf(running);
    }

    /**
     * Follows a record of flows.
     *
     * @param flows the total flows in m³/s; at no flow all pumps stand still
     * @param step the time from one to the next, above 0
     */
    public static StagedRun of(Staging staging, StagingTimes times, double[] flows, Time step) {
        boolean sound = Arrays.stream(flows).allMatch(flow -> flow >= 0 && flow < Double.POSITIVE_INFINITY);
        if (!sound || flows.length == 0 || step.seconds() <= 0) {
            throw new Refusal(
                    StagingProblem.IMPOSSIBLE_STAGING_RULE,
                    "Asked to follow " + flows.length + " flows, one every " + step,
                    "There must be at least one flow, each of them 0 or more, and a time above 0 from one to the next",
                    "Fill gaps of the record first");
        }
        return new Following(staging, times, step.seconds()).over(flows);
    }

    /** Returns the time for which so many pumps run. */
    public Time with(int pumps) {
        return step.times(running.stream().filter(each -> each == pumps).count());
    }

    @Override
    public Notes notes() {
        return staging.notes();
    }

    @Override
    public Basis basis() {
        return staging.basis().with("switched in time: " + times + ", steps of " + step);
    }

    @Override
    public String toString() {
        return energy + " with " + starts + " starts; " + least + " with the best number in every step, " + byRule
                + " by the fixed rule";
    }

    /** Goes through the flows. */
    private static final class Following {
        private final Staging staging;
        private final PumpPlant plant;
        private final StagingTimes times;
        private final double seconds;
        private final double half;
        private final List<Integer> running = new ArrayList<>();
        private double joules;
        private double least;
        private double rule;
        private double unserved;
        private double beyond;
        private double sinceStart = Double.POSITIVE_INFINITY;
        private int starts;
        private int now;

        Following(Staging staging, StagingTimes times, double seconds) {
            this.staging = staging;
            this.plant = staging.plant();
            this.times = times;
            this.seconds = seconds;
            this.half = 0.5 * times.hysteresis().value() * plant.design().flow().si();
        }

        StagedRun over(double[] flows) {
            try (Steps steps = Work.steps("steps of the pumps", flows.length)) {
                for (double flow : flows) {
                    steps.next();
                    step(flow);
                }
            }
            return new StagedRun(
                    staging,
                    times,
                    Time.seconds(seconds),
                    running,
                    Energy.joules(joules),
                    Energy.joules(least),
                    Energy.joules(rule),
                    starts,
                    Time.seconds(unserved));
        }

        private void step(double flow) {
            int best = plant.best(flow);
            double standby =
                    plant.installed() * plant.set().driveTrain().standby().watts();
            if (flow == 0) {
                now = 0;
                beyond = 0;
                add(standby, standby, standby);
            } else if (best == 0) {
                unserved += seconds;
            } else {
                decide(flow, best);
                double ruled = staging.byRule(Flow.cubicMetresPerSecond(flow))
                        .map(count -> plant.watts(count, flow))
                        .orElseThrow();
                add(plant.watts(now, flow), plant.watts(best, flow), ruled);
            }
            sinceStart += seconds;
            running.add(best == 0 && flow > 0 ? 0 : now);
        }

        private void decide(double flow, int best) {
            if (now == 0 || Double.isInfinite(plant.watts(now, flow))) {
                change(best);
                return;
            }
            boolean clear = best > now ? plant.best(Math.max(0, flow - half)) > now : best < now && lower(flow);
            boolean rested = best > now || sinceStart >= times.minimumRun().seconds();
            if (clear && beyond >= times.hold().seconds() && rested) {
                change(best);
            } else {
                beyond = clear ? beyond + seconds : 0;
            }
        }

        private boolean lower(double flow) {
            int there = plant.best(flow + half);
            return there > 0 && there < now;
        }

        private void change(int to) {
            if (to > now) {
                starts += now == 0 ? to - 1 : to - now;
                sinceStart = 0;
            }
            now = to;
            beyond = 0;
        }

        private void add(double watts, double best, double ruled) {
            joules += watts * seconds;
            least += best * seconds;
            rule += ruled * seconds;
        }
    }
}
