package headrace.energy;

import headrace.problem.Refusal;
import headrace.units.Ratio;
import headrace.units.Time;

/**
 * A part of the year at one load.
 *
 * <dl>
 *   <dt>Units
 *   <dd>The load as a flow, in shares of the design flow.
 *   <dt>Limits
 *   <dd>0 to 120 % of design flow. At no flow the pump stands still.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_BIN}.
 *   <dt>Source
 *   <dd>The limits are an assumption.
 * </dl>
 *
 * @param flowFraction the flow as a share of design flow
 * @param hours how long in a year
 */
public record LoadBin(Ratio flowFraction, Time hours) {
    private static final double MOST = 1.2;

    /** Refuses a flow outside 0 to 120 % and hours below 0. */
    public LoadBin {
        double fraction = flowFraction.value();
        if (fraction < 0 || fraction > MOST * (1 + LoadProfile.ROUNDING) || hours.seconds() < 0) {
            throw new Refusal(
                    EnergyProblem.IMPOSSIBLE_BIN,
                    "Asked for " + hours + " at " + flowFraction + " of design flow",
                    "A bin has 0 to 120 % of design flow and 0 hours or more",
                    fraction > MOST && fraction <= 100 * MOST
                            ? "Write the flow with its %, if it was meant in per cent"
                            : "Correct the bin");
        }
    }
}
