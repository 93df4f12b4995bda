package headrace.rule.index;

import headrace.problem.Refusal;
import java.util.Arrays;
import java.util.Locale;

/**
 * The types of water pump of the EU minimum efficiency index, with the constant C of each nominal speed.
 *
 * <dl>
 *   <dt>Units
 *   <dd>C in points of efficiency.
 *   <dt>Limits
 *   <dd>C is published for the indices 0.10 and 0.40 only; nothing is said of the values between.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code UNKNOWN_PUMP_TYPE} or {@code OUTSIDE_INDEX_SCOPE}.
 *   <dt>Source
 *   <dd>Commission Regulation (EU) No 547/2012, Annex II; read in a copy.
 * </dl>
 */
public enum WaterPumpType {
    /** End suction, own bearings. */
    ESOB("end suction, own bearings", new double[] {132.58, 128.07}, new double[] {135.60, 130.27}),
    /** End suction, close coupled. */
    ESCC("end suction, close coupled", new double[] {132.74, 128.46}, new double[] {135.93, 130.77}),
    /** End suction, close coupled, inline. */
    ESCCI("end suction, close coupled, inline", new double[] {136.67, 132.30}, new double[] {139.45, 133.69}),
    /** Vertical multistage, tested with three stages. */
    MS_V("vertical multistage", null, new double[] {138.19, 133.95}),
    /** Submersible multistage, tested with nine stages. */
    MSS("submersible multistage", null, new double[] {134.31, 128.79});

    private static final int SLOW = 1450;

    private final String words;
    private final double[] slow;
    private final double[] fast;

    WaterPumpType(String words, double[] slow, double[] fast) {
        this.words = words;
        this.slow = slow;
        this.fast = fast;
    }

    /** Returns the type of its abbreviation in the regulation, such as {@code ESCCi}. */
    public static WaterPumpType of(String abbreviation) {
        String plain = abbreviation.strip().toUpperCase(Locale.ROOT).replace('-', '_');
        return Arrays.stream(values())
                .filter(type -> type.name().equals(plain))
                .findFirst()
                .orElseThrow(() -> new Refusal(
                        IndexProblem.UNKNOWN_PUMP_TYPE,
                        "Asked for the minimum efficiency index of a pump of type '" + abbreviation + "'",
                        "The types are ESOB, ESCC, ESCCi, MS-V and MSS",
                        "Use one of these"));
    }

    /** Returns what the abbreviation stands for. */
    public String words() {
        return words;
    }

    /** Returns whether the pump has several stages by its type. */
    public boolean multistage() {
        return slow == null;
    }

    double constant(double revolutionsPerMinute, boolean fortyHundredths) {
        double[] pair = Math.abs(revolutionsPerMinute - SLOW) < 1 ? slow : fast;
        if (pair == null) {
            throw new Refusal(
                    IndexProblem.OUTSIDE_INDEX_SCOPE,
                    "Asked for the minimum efficiency index of a pump of type " + this + " at 1450 rpm",
                    "Pumps of this type are judged at 2900 rpm",
                    "Take the curve at that speed");
        }
        return pair[fortyHundredths ? 1 : 0];
    }

    @Override
    public String toString() {
        return switch (this) {
            case ESCCI -> "ESCCi";
            case MS_V -> "MS-V";
            default -> name();
        };
    }
}
