package headrace.circuit.part.fitting;

import headrace.circuit.part.PartProblem;
import headrace.problem.Nearest;
import headrace.problem.Refusal;
import java.util.Arrays;
import java.util.Locale;

/**
 * Common fittings with their published two-K and three-K numbers.
 *
 * <dl>
 *   <dt>Units
 *   <dd>As in {@link FittingLoss}.
 *   <dt>Limits
 *   <dd>Numbers for a kind, not for a make. A table by method says which fitting it has.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_PART} for one that is not listed.
 *   <dt>Source
 *   <dd>Hooper, Chemical Engineering, 24 August 1981, and Darby, Chemical Engineering, April 2001, both as they stand
 *       in the tables of the open library fluids 1.0.22.
 * </dl>
 */
public enum StandardFitting {
    /** An elbow of 90°, screwed, r/D = 1. */
    SCREWED_ELBOW("screwed elbow", new double[] {800, 0.4}, new double[] {800, 0.14, 4}),
    /** An elbow of 90°, flanged or welded, r/D = 1. */
    WELDED_ELBOW("welded elbow", new double[] {800, 0.25}, new double[] {800, 0.091, 4}),
    /** An elbow of 90°, long radius, r/D = 1.5, screwed at its three-K source. */
    LONG_ELBOW("long elbow", new double[] {800, 0.2}, new double[] {800, 0.071, 4.2}),
    /** An elbow of 45°, r/D = 1. */
    HALF_ELBOW("45° elbow", new double[] {500, 0.2}, new double[] {500, 0.071, 4.2}),
    /** A flanged or welded tee, straight through. */
    TEE_RUN("tee straight through", new double[] {150, 0.05}, new double[] {150, 0.05, 4}),
    /** A flanged or welded tee, through its branch. */
    TEE_BRANCH("tee through branch", new double[] {800, 0.8}, new double[] {800, 0.28, 4}),
    /** A gate valve, full bore, open. */
    GATE_VALVE("gate valve", new double[] {300, 0.1}, new double[] {300, 0.037, 3.9}),
    /** A globe valve, standard, open. */
    GLOBE_VALVE("globe valve", new double[] {1500, 4}, new double[] {1500, 1.7, 3.6}),
    /** A swing check valve, open. */
    SWING_CHECK("swing check valve", new double[] {1500, 1.5}, new double[] {1500, 0.46, 4}),
    /** A lift check valve, open. */
    LIFT_CHECK("lift check valve", new double[] {2000, 10}, new double[] {2000, 2.85, 3.8});

    private final String words;
    private final double[] two;
    private final double[] three;

    StandardFitting(String words, double[] two, double[] three) {
        this.words = words;
        this.two = two;
        this.three = three;
    }

    /** Returns the fitting of a name, such as {@code welded elbow}. */
    public static StandardFitting named(String name) {
        String wanted = name.strip().toLowerCase(Locale.ROOT);
        return Arrays.stream(values())
                .filter(one -> one.words.equals(wanted))
                .findFirst()
                .orElseThrow(() -> unknown(name));
    }

    private static Refusal unknown(String name) {
        var all = Arrays.stream(values()).map(one -> one.words).toList();
        return new Refusal(
                PartProblem.IMPOSSIBLE_PART,
                "Asked for the fitting '" + name + "'",
                "Those with published numbers are " + String.join(", ", all),
                Nearest.sentence(Nearest.to(name, all), "Give another by its own K"));
    }

    /** Returns it by two K. */
    public Fitting byTwoK() {
        return Fitting.of(words, FittingLoss.twoK(two[0], two[1]));
    }

    /** Returns it by three K. */
    public Fitting byThreeK() {
        return Fitting.of(words, FittingLoss.threeK(three[0], three[1], three[2]));
    }

    /** Returns it in words, such as {@code welded elbow}. */
    @Override
    public String toString() {
        return words;
    }
}
