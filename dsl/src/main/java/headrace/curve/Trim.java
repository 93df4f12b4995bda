package headrace.curve;

import headrace.curve.PumpMap.Range;
import headrace.liquid.Liquid;
import headrace.numeric.SmoothCurve;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Numbers;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.List;
import java.util.Optional;

/**
 * An impeller turned down to a smaller diameter, by a rule.
 *
 * <dl>
 *   <dt>Limits
 *   <dd>Down to 75 % of the tested diameter; refused below. Beyond the validity of the rule, and of the efficiency, the
 *       curve carries a note with the limit. ISO 9906 keeps the efficiency for a type number up to 1.0 and 3 % off the
 *       diameter, and its rule for a type number up to 1.5 and 5 %.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code DIAMETER_UNKNOWN}, {@code TRIM_OUT_OF_RANGE} or {@code IMPOSSIBLE_TRIM}.
 *   <dt>Source
 *   <dd>Rules as in {@link TrimRule}; the least diameter of 75 % after US DOE Pumping Systems Tip Sheet 7 (2006); the
 *       loss of efficiency of 0.15 to 0.4 points for each per cent after textbooks, 0.2 unless chosen being our
 *       assumption.
 * </dl>
 *
 * @param diameter the diameter after the trim
 * @param rule the rule
 * @param pointsPerPercent the points of efficiency lost for each per cent of diameter
 */
public record Trim(Length diameter, TrimRule rule, double pointsPerPercent) {
    /** The points of efficiency that a trim loses for each per cent of diameter, unless chosen. */
    public static final double USUAL_LOSS = 0.2;

    static final double LEAST_SHARE = 0.75;
    private static final double SAME_EFFICIENCY = 0.03;
    private static final double TYPE_NUMBER_OF_RULE = 1.5;
    private static final double TYPE_NUMBER_OF_EFFICIENCY = 1.0;

    /** Refuses with {@code IMPOSSIBLE_TRIM} a gain in efficiency, or a loss of more than a point for each per cent. */
    public Trim {
        if (!(pointsPerPercent >= 0 && pointsPerPercent <= 1)) {
            throw new Refusal(
                    CurveProblem.IMPOSSIBLE_TRIM,
                    "Asked for a trim that loses " + pointsPerPercent + " points of efficiency for each per cent",
                    "Trims lose 0 to 1 points, commonly 0.15 to 0.4",
                    "Take 0.2 if nothing better is known");
        }
    }

    /** Returns the trim to a diameter by a rule, with the usual loss of efficiency. */
    public static Trim to(Length diameter, TrimRule rule) {
        return new Trim(diameter, rule, USUAL_LOSS);
    }

    /** Returns the type number of a curve at best efficiency, for one stage: ω·√Q/(g·H)^¾. */
    public static double typeNumber(PumpCurve curve) {
        CurvePoint best = curve.bestEfficiencyPoint();
        return curve.speed().radiansPerSecond()
                * Math.sqrt(best.flow().si())
                / Math.pow(Liquid.STANDARD_GRAVITY * best.head().metres(), 0.75);
    }

    /** Returns the diameter of a curve, refusing one whose diameter is not known. */
    static Length full(PumpCurve curve) {
        return curve.impellerDiameter()
                .orElseThrow(() -> new Refusal(
                        CurveProblem.DIAMETER_UNKNOWN,
                        "Asked to trim the impeller of " + curve.name() + ", whose diameter is not known",
                        "A trim begins from the diameter that was tested",
                        "State the impeller diameter with the test"));
    }

    /** Returns the curve of the trimmed impeller. */
    PumpCurve of(PumpCurve curve) {
        Length full = full(curve);
        double left = diameter.over(full).value();
        if (!(left >= LEAST_SHARE && left <= 1)) {
            throw new Refusal(
                    CurveProblem.TRIM_OUT_OF_RANGE,
                    "Asked for an impeller of " + diameter + " in " + curve.name() + ", tested with " + full,
                    "A trim goes from " + full + " down to " + full.times(LEAST_SHARE),
                    "Choose a diameter in between, or another pump");
        }
        double flow = rule.flowFactor(full, diameter);
        double head = rule.headFactor(full, diameter);
        SimilarityMap map = curve.map().similarity();
        double kept = 1 - pointsPerPercent * (1 - left) / map.testedBest();
        SmoothCurve heads = map.head().ofScaled(1 / flow).times(head);
        SmoothCurve powers = map.power().ofScaled(1 / flow).times(flow * head / kept);
        Range range = new Range(map.tested().low() * flow, map.tested().high() * flow);
        SimilarityMap made =
                SimilarityMap.of(heads, powers, range, map.weight()).with(map.model());
        String choice = "trim from " + full + " to " + diameter + ": " + rule.name() + "; efficiency down by "
                + Numbers.print(pointsPerPercent) + " points for each per cent";
        return curve.remade(trimmed(curve, heads, powers), made, notes(curve, left), choice);
    }

    private Tested trimmed(PumpCurve curve, SmoothCurve head, SmoothCurve power) {
        Tested tested = curve.tested();
        return new Tested(
                tested.name(),
                tested.speed(),
                Optional.of(diameter),
                tested.liquid(),
                tested.testedIn(),
                List.of(),
                FittedCurve.known(Head.KIND, head),
                FittedCurve.known(Power.KIND, power));
    }

    private Notes notes(PumpCurve curve, double left) {
        double off = 1 - left;
        if (off == 0) {
            return Notes.NONE;
        }
        double type = typeNumber(curve);
        Notes notes = Notes.NONE.with(
                CurveProblem.TRIMMED_BY_RULE,
                "the curve of " + curve.name() + " at " + diameter
                        + " follows a rule, not a test: cut in steps and test");
        if (off > rule.validUpTo().value() || type > TYPE_NUMBER_OF_RULE) {
            notes = notes.with(
                    CurveProblem.TRIM_BEYOND_VALIDITY,
                    "the trim of " + Ratio.of(off) + " at a type number of " + Numbers.print(type)
                            + " lies beyond the rule, valid up to " + rule.validUpTo() + " and a type number of "
                            + Numbers.print(TYPE_NUMBER_OF_RULE));
        }
        if (pointsPerPercent == 0 && (off > SAME_EFFICIENCY || type > TYPE_NUMBER_OF_EFFICIENCY)) {
            notes = notes.with(
                    CurveProblem.TRIM_BEYOND_VALIDITY,
                    "the efficiency was kept over a trim of " + Ratio.of(off) + " at a type number of "
                            + Numbers.print(type) + "; it is held to stay the same up to "
                            + Ratio.of(SAME_EFFICIENCY) + " and a type number of "
                            + Numbers.print(TYPE_NUMBER_OF_EFFICIENCY));
        }
        return notes;
    }
}
