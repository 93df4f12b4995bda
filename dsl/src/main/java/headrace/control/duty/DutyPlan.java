package headrace.control.duty;

import headrace.problem.Refusal;
import headrace.units.Time;

/**
 * How pumps take turns: one has the duty, the others stand by.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Whole seconds.
 *   <dt>Limits
 *   <dd>2 to 8 pumps; an interval of 1 min to 7 days; an overlap shorter than the interval.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_DUTY_PLAN}.
 *   <dt>Source
 *   <dd>Common practice, no source.
 * </dl>
 *
 * @param pumps how many pumps there are
 * @param interval after what time the duty passes on
 * @param counted what the interval counts
 * @param changeover how one pump takes over from another
 */
public record DutyPlan(int pumps, Time interval, Counted counted, Changeover changeover) {
    private static final int MOST_PUMPS = 8;
    private static final int MINUTE = 60;
    private static final int WEEK = 7 * 24 * 3600;

    /** What the interval of alternation counts. */
    public enum Counted {
        /** The time on the clock, whether a pump runs or not. */
        CLOCK("by the clock"),
        /** The hours that the duty pump has run since it took over. */
        RUN_HOURS("by run hours");

        private final String words;

        Counted(String words) {
            this.words = words;
        }

        /** Returns this in words. */
        public String words() {
            return words;
        }
    }

    /**
     * How one pump takes over from another.
     *
     * @param overlap for how long both run at an alternation, so that the flow is not interrupted
     * @param faultDelay what passes between a fault and the start of the next pump: detection and run-up
     * @param restartsClock whether an interval by the clock begins anew when a fault has passed the duty on; by run
     *     hours it always does
     */
    public record Changeover(Time overlap, Time faultDelay, boolean restartsClock) {}

    /** Refuses what cannot be. */
    public DutyPlan {
        long seconds = whole(interval);
        long overlap = whole(changeover.overlap());
        long delay = whole(changeover.faultDelay());
        boolean sound = pumps >= 2 && pumps <= MOST_PUMPS && seconds >= MINUTE && seconds <= WEEK;
        if (!sound || overlap < 0 || overlap >= seconds || delay < 0 || delay > WEEK) {
            throw new Refusal(
                    DutyProblem.IMPOSSIBLE_DUTY_PLAN,
                    "Asked for " + pumps + " pumps that take turns every " + interval + " with an overlap of "
                            + changeover.overlap() + " and a delay of " + changeover.faultDelay(),
                    "There are 2 to " + MOST_PUMPS
                            + " pumps, an interval of 1 min to 7 days, an overlap shorter than the"
                            + " interval and a delay of 0 s to 7 days, all of them in whole seconds",
                    "Common are 24 h or 168 h, an overlap of 10 to 30 s and a delay of 5 to 30 s");
        }
    }

    /** Returns two pumps that take turns by the clock, without overlap and without delay. */
    public static DutyPlan pair(Time interval) {
        return new DutyPlan(2, interval, Counted.CLOCK, new Changeover(Time.ZERO, Time.ZERO, false));
    }

    /** Returns this plan counted in run hours. */
    public DutyPlan byRunHours() {
        return new DutyPlan(pumps, interval, Counted.RUN_HOURS, changeover);
    }

    /** Returns this plan with other changeovers. */
    public DutyPlan with(Changeover other) {
        return new DutyPlan(pumps, interval, counted, other);
    }

    long intervalSeconds() {
        return whole(interval);
    }

    long overlapSeconds() {
        return whole(changeover.overlap());
    }

    long delaySeconds() {
        return whole(changeover.faultDelay());
    }

    /** Returns whole seconds, or −1 for what is none. */
    private static long whole(Time time) {
        long seconds = Math.round(time.seconds());
        return Math.abs(time.seconds() - seconds) <= 1e-6 ? seconds : -1;
    }

    @Override
    public String toString() {
        return pumps + " pumps, alternation every " + interval + " " + counted.words() + ", overlap "
                + changeover.overlap() + ", start on fault after " + changeover.faultDelay()
                + (counted == Counted.RUN_HOURS || changeover.restartsClock()
                        ? ", the interval begins anew after a fault"
                        : ", the clock goes on through a fault");
    }
}
