package headrace.rule;

import headrace.control.ControlLaw;
import headrace.curve.Duty;
import headrace.curve.PumpCurve;
import headrace.operation.OperatingPoint;
import headrace.problem.Notes;
import headrace.pump.PumpSet;
import headrace.units.Ratio;
import headrace.work.Work;

/**
 * Seeks the largest minimum head that passes: from the design head downwards in steps, then by halving the step.
 *
 * <p>Less minimum head takes less power, so one bracket holds the answer; the walk downwards would also find the
 * largest if a model bent the other way.
 */
record MinimumHeadSearch(PumpSet set, Duty design, PartLoadRule rule) {
    private static final int STEPS = 100;
    private static final double ROUNDING = 1e-9;

    MinimumHeadLimit limit() {
        rule.requireLossesAtPartLoad(set);
        double atDesign = OperatingPoint.at(set, design).wirePower().watts();
        double allowed = atDesign * rule.powerFraction().value() * (1 + ROUNDING);
        int step = STEPS;
        while (step >= 0 && wireWatts((double) step / STEPS) > allowed) {
            step--;
        }
        if (step == STEPS) {
            return answer(MinimumHeadLimit.Outcome.ALL, 1);
        }
        if (step < 0) {
            return answer(MinimumHeadLimit.Outcome.NONE, 0);
        }
        double passes = (double) step / STEPS;
        double fails = (step + 1.0) / STEPS;
        while (fails - passes > ROUNDING) {
            double middle = 0.5 * (passes + fails);
            if (wireWatts(middle) <= allowed) {
                passes = middle;
            } else {
                fails = middle;
            }
        }
        return answer(MinimumHeadLimit.Outcome.UP_TO, passes);
    }

    /** Returns the wire power at the flow of the rule, infinite where the law leaves the range of the curve. */
    private double wireWatts(double minimumHead) {
        Work.poll();
        PumpCurve curve = set.curve();
        double f = rule.flowFraction().value();
        double q = design.flow().si() * f;
        double wanted = curve.speedRatioFor(q, design.head().metres() * (minimumHead + (1 - minimumHead) * f * f));
        if (wanted == Double.POSITIVE_INFINITY) {
            return wanted;
        }
        double least = set.minimumSpeed().over(curve.speed()).value();
        double most = set.maximumSpeed().over(curve.speed()).value();
        return set.wireWatts(q, Math.min(Math.max(wanted, least), most));
    }

    private MinimumHeadLimit answer(MinimumHeadLimit.Outcome outcome, double minimumHead) {
        Ratio share = Ratio.of(minimumHead);
        RuleVerdict verdict = rule.judge(set, ControlLaw.quadratic(design, share));
        Notes notes = verdict.notes();
        boolean ruleDecides = wireWatts(Math.min(1, minimumHead + 10 * ROUNDING)) < Double.POSITIVE_INFINITY;
        if (outcome == MinimumHeadLimit.Outcome.UP_TO && !ruleDecides) {
            notes = notes.with(
                    RuleProblem.LIMITED_BY_TESTED_RANGE,
                    "Above " + share + " minimum head the law leaves the tested range of "
                            + set.curve().name() + "; the rule itself would allow more");
        }
        return new MinimumHeadLimit(set.driveTrain().model(), outcome, verdict, share, notes);
    }
}
