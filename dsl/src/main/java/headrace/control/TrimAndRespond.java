package headrace.control;

import headrace.circuit.Closing;
import headrace.circuit.solve.ClosingLaw;
import headrace.curve.Duty;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.units.Head;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.Set;

/**
 * Trim and respond: at every step the wanted head is trimmed, and raised again by what the valves request.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Steps as shares of the span from the minimum head to the design head.
 *   <dt>Limits
 *   <dd>A valve requests while it stands further open than a stroke, or its branch gets less than it asks for. Steady,
 *       it stands for what it comes to when it has time: the least head at which no more than the ignored number of
 *       valves request.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_LAW}.
 *   <dt>Source
 *   <dd>The rule is that of ASHRAE Guideline 36; its usual numbers (5 min, two ignored, trim 2 %, respond 3 %, 7 % at
 *       most) are those of an open implementation of it, read second hand.
 * </dl>
 *
 * @param forDuty the duty it is made for; its head is the highest that is wanted
 * @param minimumHead the lowest head that is wanted
 * @param steps by how much the wanted head moves
 * @param requests when a valve requests, and how many are ignored
 * @param every the time between two steps
 */
public record TrimAndRespond(Duty forDuty, Head minimumHead, Steps steps, Requests requests, Time every)
        implements CircuitLaw {
    private static final double SECONDS_OF_AN_HOUR = 3600;
    private static final double ROUNDING = 1e-9;

    /**
     * By how much the wanted head moves, in shares of its span.
     *
     * @param trim how far it falls at each step
     * @param respond how far it rises for each request beyond the ignored ones
     * @param most how far it rises at most in one step
     */
    public record Steps(Ratio trim, Ratio respond, Ratio most) {
        /** The usual steps. */
        public static final Steps USUAL = new Steps(Ratio.percent(2), Ratio.percent(3), Ratio.percent(7));

        @Override
        public String toString() {
            return "trim " + trim + ", respond " + respond + ", " + most + " at most";
        }
    }

    /**
     * What counts as a request.
     *
     * @param opening the stroke beyond which a valve requests
     * @param ignored how many requests are ignored
     */
    public record Requests(Ratio opening, int ignored) {
        /** The usual ones. */
        public static final Requests USUAL = new Requests(Ratio.percent(95), 2);

        @Override
        public String toString() {
            return "requests beyond " + opening + ", " + ignored + " ignored";
        }
    }

    /** Refuses what cannot be. */
    public TrimAndRespond {
        double share = minimumHead.over(forDuty.head()).value();
        double perHour = SECONDS_OF_AN_HOUR / every.seconds();
        boolean whole = every.seconds() > 0 && perHour >= 1 && Math.abs(perHour - Math.rint(perHour)) < ROUNDING;
        boolean moves =
                steps.trim.value() > 0 && steps.respond.value() > 0 && steps.most.value() >= steps.respond.value();
        boolean asks = requests.opening.value() > 0 && requests.opening.value() <= 1 && requests.ignored >= 0;
        if (share < 0 || share > 1 || !whole || !moves || !asks) {
            throw new Refusal(
                    ControlProblem.IMPOSSIBLE_LAW,
                    "Asked for trim and respond from " + minimumHead + " to " + forDuty.head() + ", " + steps + ", "
                            + requests + ", every " + every,
                    "The minimum head lies between 0 and the design head, steps are above 0 with the most not below one"
                            + " response, an opening is up to 100 %, and an hour is a whole number of steps",
                    "Change the one that does not fit; 5 min, 2 %, 3 %, 7 % and 95 % are usual");
        }
    }

    /** Returns the law with the usual numbers. */
    public static TrimAndRespond usual(Duty design, Ratio minimumHead) {
        return new TrimAndRespond(
                design, design.head().times(minimumHead), Steps.USUAL, Requests.USUAL, Time.minutes(5));
    }

    /** Returns how many steps an hour has. */
    public int stepsAnHour() {
        return (int) Math.rint(SECONDS_OF_AN_HOUR / every.seconds());
    }

    /** Returns its course in time, from the design head on. */
    public Course begin() {
        return new Course();
    }

    /** How the wanted head moves. */
    public final class Course {
        private double share = 1;

        private Course() {}

        /** Returns the wanted head in m. */
        public double metres() {
            double low = minimumHead.metres();
            return low + share * (forDuty.head().metres() - low);
        }

        /** Takes a step with so many requests. */
        public void step(int asked) {
            double rise = Math.min(steps.most.value(), steps.respond.value() * Math.max(0, asked - requests.ignored));
            share = Math.max(0, Math.min(1, share - steps.trim.value() + rise));
        }
    }

    @Override
    public String name() {
        return "trim and respond above " + minimumHead;
    }

    @Override
    public String statement() {
        return "every " + every + " the wanted head between " + minimumHead + " and " + forDuty.head() + " falls by "
                + steps.trim + " of that span and rises by " + steps.respond + " for each valve beyond "
                + requests.ignored + " that stands further open than " + requests.opening + ", by " + steps.most
                + " at most";
    }

    @Override
    public Set<Observed> observes() {
        return Set.of(Observed.PUMP_HEAD, Observed.VALVE_OPENING);
    }

    @Override
    public Closing closing(PumpSet set) {
        double low = minimumHead.metres();
        double high = forDuty.head().metres();
        Closing open = Closing.needierThan(requests.opening, requests.ignored);
        return place -> {
            ClosingLaw law = open.on(place);
            return loop -> Math.min(high, Math.max(low, law.headMetres(loop)));
        };
    }

    @Override
    public String toString() {
        return name();
    }
}
