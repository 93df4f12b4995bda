package headrace.rule;

import headrace.problem.Refusal;
import headrace.units.Ratio;
import java.util.List;

/**
 * The share of design power over the share of design flow that compliance modelling takes for a kind of pumping, to lay
 * beside a law's own.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Shares of design power and design flow; {@code b·q + c·q² + d·q³}, which is not quite 1 at design.
 *   <dt>Limits
 *   <dd>Flows from 0 to 100 %.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_RULE} outside that.
 *   <dt>Source
 *   <dd>The coefficients of US code-compliance modelling as published in the openstudio-standards repository (NREL,
 *       read); they describe no pump in particular.
 * </dl>
 *
 * @param name what it describes
 * @param b of flow
 * @param c of its square
 * @param d of its cube
 */
public record PartLoadCurve(String name, double b, double c, double d) {
    /** The pump rides its curve at constant speed. */
    public static final PartLoadCurve RIDING = new PartLoadCurve("riding the curve", 3.2485, -4.7443, 2.5294);

    /** Variable speed, the head wanted stays. */
    public static final PartLoadCurve NO_RESET = new PartLoadCurve("variable speed, no reset", 0.5726, -0.301, 0.7347);

    /** Variable speed, the head wanted is reset. */
    public static final PartLoadCurve RESET =
            new PartLoadCurve("variable speed, differential pressure reset", 0.0205, 0.4101, 0.5753);

    /** All of them. */
    public static final List<PartLoadCurve> PUBLISHED = List.of(RIDING, NO_RESET, RESET);

    /** Returns the share of design power at a share of design flow. */
    public Ratio at(Ratio flow) {
        double q = flow.value();
        if (!(q >= 0 && q <= 1)) {
            throw new Refusal(
                    RuleProblem.IMPOSSIBLE_RULE,
                    "Asked for the part-load curve '" + name + "' at " + flow + " of design flow",
                    "It goes from 0 to 100 % of design flow",
                    "Ask for a share in between");
        }
        return Ratio.of(q * (b + q * (c + q * d)));
    }
}
