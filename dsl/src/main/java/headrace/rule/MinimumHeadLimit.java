package headrace.rule;

import headrace.drive.LossModel;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Ratio;

/**
 * The largest minimum head that passes a rule with one loss model.
 *
 * @param model the loss model
 * @param outcome whether some, all or none pass
 * @param verdict the verdict at the largest minimum head that passes; at 100 % where all pass, at 0 where none does
 * @param minimumHead the minimum head of that verdict, as a share of the design head
 * @param notes what was touched on the way
 */
public record MinimumHeadLimit(LossModel model, Outcome outcome, RuleVerdict verdict, Ratio minimumHead, Notes notes)
        implements Traced {
    /** How far minimum heads pass. */
    public enum Outcome {
        /** Up to the minimum head of this answer. */
        UP_TO,
        /** Every minimum head up to the design head. */
        ALL,
        /** No minimum head, not even none. */
        NONE
    }

    @Override
    public Basis basis() {
        return verdict.basis();
    }

    /** Returns the answer with its number. */
    @Override
    public String toString() {
        String answer = "up to " + minimumHead + " of design head passes";
        if (outcome == Outcome.ALL) {
            answer = "every minimum head passes, the design head itself with " + verdict.share() + " of design wattage";
        } else if (outcome == Outcome.NONE) {
            answer = "none passes, no minimum head at all still takes " + verdict.share() + " of design wattage";
        }
        return "losses '" + model.name() + "': " + answer;
    }
}
