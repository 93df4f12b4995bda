package headrace.estimate;

import headrace.problem.Refusal;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What may be wrong with readings and map, cause by cause.
 *
 * <dl>
 *   <dt>Units
 *   <dd>A share of the value, and for readings also a fixed part in SI. Of readings one standard deviation; of what is
 *       systematic half the width of the range in which it lies.
 *   <dt>Limits
 *   <dd>Causes are independent of each other. Random ones are normal, systematic ones rectangular.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_ERROR} for shares outside 0 to 50 % or negative fixed parts.
 *   <dt>Source
 *   <dd>JCGM 100:2008, 4.3.7 for the deviation of a rectangular distribution; tolerances of acceptance grades from ISO
 *       9906:2012, from memory, unconfirmed. The usual errors are assumptions of our own for a drive's own power
 *       display and a pump of acceptance grade 2B (τP 8 %, τH 5 %, ISO 9906:2012, from memory, unconfirmed).
 * </dl>
 */
public final class ErrorBudget {
    /** What is assumed where nobody states errors. */
    public static final ErrorBudget ASSUMED = new ErrorBudget(List.of(), true)
            .with(Cause.POWER_READING, 0.01, 0)
            .with(Cause.TORQUE_READING, 0.02, 0)
            .with(Cause.HEAD_READING, 0.01, 0)
            .with(Cause.SPEED_READING, 0.002, 0)
            .with(Cause.POWER_MAP, 0.08, 0)
            .with(Cause.HEAD_MAP, 0.05, 0)
            .with(Cause.LOSSES, 0.10, 0);

    /** No errors at all. */
    public static final ErrorBudget NONE = new ErrorBudget(List.of(), false);

    private static final double MOST = 0.5;

    /** Tolerances of power and head; that of power is allowed upward only and taken to either side. */
    private static final SortedMap<String, double[]> GRADES = new TreeMap<>(Map.of(
            "1B", new double[] {0.04, 0.03},
            "1E", new double[] {0.04, 0.03},
            "2B", new double[] {0.08, 0.05},
            "3B", new double[] {0.09, 0.07}));

    private final List<Part> parts;
    private final boolean assumed;

    private ErrorBudget(List<Part> parts, boolean assumed) {
        this.parts = List.copyOf(parts);
        this.assumed = assumed;
    }

    /**
     * The error of one cause.
     *
     * @param cause where it comes from
     * @param relative its share of the value: one standard deviation, or half the width of a rectangle
     * @param fixed its fixed part in SI, in the same sense
     */
    public record Part(Cause cause, double relative, double fixed) {
        /** Returns the standard uncertainty in SI at a value. */
        public double standard(double value) {
            double width = Math.hypot(relative * value, fixed);
            return cause.rectangular() ? width / Math.sqrt(3) : width;
        }

        /** Returns it in words, the unit of a fixed part left to the reader of the cause. */
        @Override
        public String toString() {
            String share = relative == 0 && fixed != 0 ? "" : Ratio.of(relative).toString();
            String rest = fixed == 0 ? "" : (share.isEmpty() ? "" : " and ") + Reading.printed(cause, fixed);
            return cause + (cause.rectangular() ? " within ±" : " ") + share + rest;
        }
    }

    /**
     * Returns this budget with the error of a cause, instead of what it had for it.
     *
     * @param relative its share of the value
     * @param fixed its fixed part in SI, 0 for causes that have none
     */
    public ErrorBudget with(Cause cause, double relative, double fixed) {
        if (!(relative >= 0 && relative <= MOST && fixed >= 0 && Double.isFinite(fixed))) {
            throw new Refusal(
                    EstimateProblem.IMPOSSIBLE_ERROR,
                    "Given an error of " + Ratio.of(relative) + " for the " + cause,
                    "A share lies from 0 to 50 %, and a fixed part is 0 or more",
                    "State one standard deviation of a reading, or half the width of a tolerance");
        }
        List<Part> others = new ArrayList<>(parts);
        others.removeIf(part -> part.cause == cause);
        if (relative > 0 || fixed > 0) {
            others.add(new Part(cause, relative, fixed));
        }
        return new ErrorBudget(others, assumed);
    }

    /**
     * Returns this budget with the tolerance of a map that was accepted by a grade of ISO 9906:2012.
     *
     * @param grade 1B, 1E, 2B or 3B, those whose tolerances of head are the same to either side
     */
    public ErrorBudget withGrade(String grade) {
        double[] tolerances = GRADES.get(grade);
        if (tolerances == null) {
            throw new Refusal(
                    EstimateProblem.IMPOSSIBLE_ERROR,
                    "Given the acceptance grade '" + grade + "'",
                    "The grades with the same tolerance of head to either side are "
                            + String.join(", ", GRADES.keySet()),
                    "Name one of these, or state the tolerances of power and head by themselves");
        }
        return with(Cause.POWER_MAP, tolerances[0], 0).with(Cause.HEAD_MAP, tolerances[1], 0);
    }

    /** Returns this budget as one that its user stated. */
    public ErrorBudget stated() {
        return new ErrorBudget(parts, false);
    }

    /** Returns this budget with its random parts divided by the root of a number of independent readings. */
    public ErrorBudget averagedOver(double readings) {
        double less = 1 / Math.sqrt(readings);
        return new ErrorBudget(
                parts.stream()
                        .map(part -> part.cause.systematic()
                                ? part
                                : new Part(part.cause, part.relative * less, part.fixed * less))
                        .toList(),
                assumed);
    }

    /** Returns only what is systematic, or only what is random. */
    public ErrorBudget only(boolean systematic) {
        return new ErrorBudget(
                parts.stream()
                        .filter(part -> part.cause.systematic() == systematic)
                        .toList(),
                assumed);
    }

    /** Returns the parts, in the order in which they were given. */
    public List<Part> parts() {
        return parts;
    }

    /** Returns the part of a cause, of no size where there is none. */
    public Part of(Cause cause) {
        return parts.stream().filter(part -> part.cause == cause).findFirst().orElse(new Part(cause, 0, 0));
    }

    /** Returns whether it was assumed, as nobody stated it. */
    public boolean assumed() {
        return assumed;
    }

    /** Returns the parts in words. */
    @Override
    public String toString() {
        return parts.isEmpty()
                ? "no errors"
                : String.join(", ", parts.stream().map(Part::toString).toList());
    }
}
