package headrace.rule;

import headrace.control.ControlLaw;
import headrace.control.SteadyState;
import headrace.operation.OperatingPoint;
import headrace.problem.Notes;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Numbers;
import headrace.units.Power;
import headrace.units.Ratio;

/**
 * What a part-load rule says of a control law: an engineering estimate, not a certificate.
 *
 * @param rule the rule
 * @param atDesign where the pump set runs at the design point
 * @param atPart where it runs under the law at the flow of the rule
 * @param notes what was touched on the way
 * @param basis what it rests on
 */
public record RuleVerdict(PartLoadRule rule, OperatingPoint atDesign, SteadyState atPart, Notes notes, Basis basis)
        implements Traced {
    private static final double ROUNDING = 1e-9;

    /** What a rule says of a law. */
    public enum Outcome {
        /** The rule binds and is kept. */
        PASSES,
        /** The rule binds and is broken. */
        FAILS,
        /** The rule does not bind this pump set; its number is given all the same. */
        NOT_APPLICABLE
    }

    static RuleVerdict of(PartLoadRule rule, PumpSet set, OperatingPoint atDesign, SteadyState atPart) {
        Notes notes = atDesign.notes().and(atPart.notes());
        Power rated = set.driveTrain().motor().rated();
        if (rated.compareTo(rule.smallestMotor()) < 0) {
            notes = notes.with(
                    RuleProblem.RULE_NOT_BINDING,
                    "The rule binds from motors of " + rule.smallestMotor() + " on, this one has " + rated);
        } else if (atDesign.head().compareTo(rule.smallestHead()) < 0) {
            notes = notes.with(
                    RuleProblem.RULE_NOT_BINDING,
                    "The rule binds from design heads of " + rule.smallestHead() + " on, this one is "
                            + atDesign.head());
        }
        Basis basis = atDesign.basis()
                .and(atPart.basis())
                .with("rule: " + rule + ", " + rule.jurisdiction() + ", " + rule.source());
        return new RuleVerdict(rule, atDesign, atPart, notes, basis);
    }

    /** Returns the law that was judged. */
    public ControlLaw law() {
        return atPart.law();
    }

    /** Returns the design wattage: the power from the wire at the design point, drive included. */
    public Power designWattage() {
        return atDesign.wirePower();
    }

    /** Returns the power from the wire at the flow of the rule. */
    public Power partWattage() {
        return atPart.point().wirePower();
    }

    /** Returns part wattage over design wattage. */
    public Ratio share() {
        return partWattage().over(designWattage());
    }

    /** Returns the same share counted at the pump's shaft, without motor and drive. */
    public Ratio shaftShare() {
        return atPart.point().shaftPower().over(atDesign.shaftPower());
    }

    /** Returns the same share counted in the liquid, without pump, motor and drive. */
    public Ratio hydraulicShare() {
        return atPart.point().hydraulicPower().over(atDesign.hydraulicPower());
    }

    /** Returns what the rule allows less the share; below 0 if the rule is broken. */
    public Ratio margin() {
        return rule.powerFraction().minus(share());
    }

    /** Returns whether the share is at or below what the rule allows. */
    public boolean passes() {
        return margin().value() >= -ROUNDING;
    }

    /** Returns whether motor and head are large enough for the rule to bind. */
    public boolean binds() {
        return !notes.has(RuleProblem.RULE_NOT_BINDING);
    }

    /** Returns whether the law passes, fails, or is not asked. */
    public Outcome outcome() {
        if (!binds()) {
            return Outcome.NOT_APPLICABLE;
        }
        return passes() ? Outcome.PASSES : Outcome.FAILS;
    }

    /** Returns the verdict with its numbers, in one line. */
    @Override
    public String toString() {
        String said = switch (outcome()) {
            case PASSES -> " passes: ";
            case FAILS -> " fails: ";
            case NOT_APPLICABLE -> ", rule not applicable: ";
        };
        return law().name() + said + share() + " of design wattage at " + rule.flowFraction() + " of design flow, "
                + rule.powerFraction() + " allowed, margin " + Numbers.print(margin().toPercent()) + " points";
    }
}
