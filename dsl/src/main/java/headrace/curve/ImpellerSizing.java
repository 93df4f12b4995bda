package headrace.curve;

import headrace.numeric.Roots;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Length;
import headrace.units.Power;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Supplier;

/**
 * Sizes an impeller by a trim rule, at the speed of the curve.
 *
 * <dl>
 *   <dt>Limits
 *   <dd>Between 75 % of the tested diameter and the whole of it.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code TRIM_OUT_OF_RANGE} where no diameter in that range does it, and as
 *       {@link PumpCurve#trimmed} does.
 * </dl>
 *
 * @param curve the curve of the tested diameter
 * @param rule the rule
 */
public record ImpellerSizing(PumpCurve curve, TrimRule rule) {
    /**
     * An impeller and what it was sized to.
     *
     * @param aim what it was sized to
     * @param curve the curve of the trimmed impeller, if one does it
     * @param refusal why none does it, otherwise
     */
    public record Sized(String aim, Optional<PumpCurve> curve, Optional<Refusal> refusal) {}

    /** Returns the curve whose impeller delivers a duty. */
    public PumpCurve toDuty(Duty duty) {
        double q = duty.flow().si();
        return solved(
                "delivers " + duty,
                share -> at(share).extendedTo(duty.flow()).headMetres(q, 1)
                        - duty.head().metres(),
                found -> found.covers(q, 1));
    }

    /** Returns the curve whose impeller takes a power and no more anywhere in its range. */
    public PumpCurve toPower(Power most) {
        return at(1).greatestPower().compareTo(most) <= 0
                ? at(1)
                : solved(
                        "takes at most " + most,
                        share -> at(share).greatestPower().watts() - most.watts(),
                        found -> true);
    }

    /** Returns the curve whose impeller is at its best efficiency at a flow. */
    public PumpCurve toBestEfficiency(Flow flow) {
        return solved(
                "is best at " + flow,
                share -> at(share).bestEfficiencyPoint().flow().si() - flow.si(),
                found -> true);
    }

    /** Returns all three side by side, each with its curve or the reason why there is none. */
    public List<Sized> sideBySide(Duty duty, Power most) {
        List<Sized> all = new ArrayList<>();
        all.add(sized("duty of " + duty, () -> toDuty(duty)));
        all.add(sized("power of at most " + most, () -> toPower(most)));
        all.add(sized("best efficiency at " + duty.flow(), () -> toBestEfficiency(duty.flow())));
        return List.copyOf(all);
    }

    private static Sized sized(String aim, Supplier<PumpCurve> made) {
        try {
            return new Sized(aim, Optional.of(made.get()), Optional.empty());
        } catch (Refusal refusal) {
            return new Sized(aim, Optional.empty(), Optional.of(refusal));
        }
    }

    private PumpCurve at(double share) {
        return curve.trimmed(Trim.to(diameter(share), rule));
    }

    private Length diameter(double share) {
        return Trim.full(curve).times(share);
    }

    private interface Check {
        boolean passes(PumpCurve found);
    }

    private PumpCurve solved(String what, DoubleUnaryOperator excess, Check check) {
        double least = excess.applyAsDouble(Trim.LEAST_SHARE);
        double most = excess.applyAsDouble(1);
        if (least <= 0 && most >= 0) {
            PumpCurve found = at(Roots.between(excess, Trim.LEAST_SHARE, 1));
            if (check.passes(found)) {
                return found;
            }
        }
        throw new Refusal(
                CurveProblem.TRIM_OUT_OF_RANGE,
                "Asked for an impeller in " + curve.name() + " that " + what,
                "None from " + diameter(Trim.LEAST_SHARE) + " to " + diameter(1) + " does that within its range",
                most < 0 ? "Choose a larger pump, or turn it faster" : "Choose a smaller pump, or turn it slower");
    }
}
