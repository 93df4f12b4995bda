package headrace.control.staging;

import headrace.problem.Refusal;
import headrace.units.Ratio;

/**
 * A fixed rule of staging: of n pumps another one starts where {@code Q/Q_d > N/n − margin}, and one stops where
 * {@code Q/Q_d < (N−1)/n − margin}, whatever the pumps take.
 *
 * <p>Source: ASHRAE Guideline 36, headered pumps, margin 3 %, read in an open implementation of the guideline.
 *
 * @param margin the margin
 */
public record FlowRatioRule(Ratio margin) {
    /** The margin of the guideline. */
    public static final FlowRatioRule GUIDELINE = new FlowRatioRule(Ratio.percent(3));

    /** Refuses a margin outside 0 to 50 %. */
    public FlowRatioRule {
        if (margin.value() < 0 || margin.value() > 0.5) {
            throw new Refusal(
                    StagingProblem.IMPOSSIBLE_STAGING_RULE,
                    "Asked for a margin of " + margin + " in a rule of staging",
                    "It lies from 0 to 50 % of design flow",
                    "Common is 3 %");
        }
    }

    /** Returns how many of the installed pumps the rule runs at a share of design flow that lasts. */
    public int running(Ratio share, int installed) {
        int running = 1;
        while (running < installed && share.value() > (double) running / installed - margin.value()) {
            running++;
        }
        return running;
    }

    @Override
    public String toString() {
        return "another pump where the share of design flow passes N/n less " + margin;
    }
}
