package headrace.rule.index;

import headrace.problem.Refusal;
import java.util.Arrays;
import java.util.Locale;

/**
 * The types of clear-water pump of the US pump energy index, with the constant C of each nominal speed.
 *
 * <dl>
 *   <dt>Units
 *   <dd>C in points of efficiency.
 *   <dt>Limits
 *   <dd>Nominal speeds of 1800 and 3600 rpm.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code UNKNOWN_PUMP_TYPE}.
 *   <dt>Source
 *   <dd>10 CFR 431.465; read in a copy.
 * </dl>
 */
public enum ClearWaterPumpType {
    /** End suction, close coupled. */
    ESCC("end suction, close coupled", 128.47, 130.42),
    /** End suction, frame mounted. */
    ESFM("end suction, frame mounted", 128.85, 130.99),
    /** Inline. */
    IL("inline", 129.30, 133.84),
    /** Radially split, multistage, vertical. */
    RSV("radially split, vertical, multistage", 129.63, 133.20),
    /** Submersible turbine. */
    ST("submersible turbine", 138.78, 134.85);

    private final String words;
    private final double slow;
    private final double fast;

    ClearWaterPumpType(String words, double slow, double fast) {
        this.words = words;
        this.slow = slow;
        this.fast = fast;
    }

    /** Returns the type of its abbreviation in the regulation, such as {@code ESCC}. */
    public static ClearWaterPumpType of(String abbreviation) {
        String plain = abbreviation.strip().toUpperCase(Locale.ROOT);
        return Arrays.stream(values())
                .filter(type -> type.name().equals(plain))
                .findFirst()
                .orElseThrow(() -> new Refusal(
                        IndexProblem.UNKNOWN_PUMP_TYPE,
                        "Asked for the pump energy index of a pump of type '" + abbreviation + "'",
                        "The types are ESCC, ESFM, IL, RSV and ST",
                        "Use one of these"));
    }

    /** Returns what the abbreviation stands for. */
    public String words() {
        return words;
    }

    double constant(double revolutionsPerMinute) {
        return revolutionsPerMinute < 2700 ? slow : fast;
    }
}
