package headrace.rule.window;

import headrace.control.ControlLaw;
import headrace.curve.Duty;
import headrace.pump.PumpSet;
import headrace.rule.MinimumHeadLimit;
import headrace.rule.RuleVerdict;
import headrace.units.Ratio;
import java.util.Optional;

/**
 * The upper end of the window for one loss model.
 *
 * @param limit the largest minimum head that passes the rule
 * @param width by how much it lies above the smallest that serves; below 0 if the window is empty
 * @param evidence what happens on both sides of it, where it is an end
 */
public record RuleEnd(MinimumHeadLimit limit, Ratio width, Optional<Evidence> evidence) {
    static RuleEnd of(MinimumHeadLimit limit, LeastMinimumHead least, PumpSet set, Duty design) {
        double upper = limit.outcome() == MinimumHeadLimit.Outcome.NONE
                ? 0
                : limit.minimumHead().value();
        Ratio width = Ratio.of(upper - least.minimumHead().value());
        return new RuleEnd(limit, width, evidence(limit, set, design));
    }

    /** Returns whether some minimum head passes the rule and serves every branch. */
    public boolean isOpen(LeastMinimumHead least) {
        return limit.outcome() != MinimumHeadLimit.Outcome.NONE
                && least.outcome() != LeastMinimumHead.Outcome.NONE
                && width.value() >= 0;
    }

    private static Optional<Evidence> evidence(MinimumHeadLimit limit, PumpSet set, Duty design) {
        if (limit.outcome() != MinimumHeadLimit.Outcome.UP_TO) {
            return Optional.empty();
        }
        double end = limit.minimumHead().value();
        Ratio inside = Ratio.of(Math.max(0, end - Evidence.ASIDE));
        Ratio outside = Ratio.of(Math.min(1, end + Evidence.ASIDE));
        PumpSet own = set.with(limit.model());
        return Optional.of(new Evidence(
                "largest that passes with losses '" + limit.model().name() + "'",
                inside,
                said(limit, own, design, inside),
                outside,
                said(limit, own, design, outside)));
    }

    private static String said(MinimumHeadLimit limit, PumpSet set, Duty design, Ratio share) {
        RuleVerdict verdict = limit.verdict().rule().judge(set, ControlLaw.quadratic(design, share));
        return (verdict.passes() ? "passes with " : "fails with ") + verdict.share() + " of design wattage";
    }
}
