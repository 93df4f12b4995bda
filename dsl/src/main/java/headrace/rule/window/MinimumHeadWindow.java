package headrace.rule.window;

import headrace.circuit.BranchState;
import headrace.circuit.Circuit;
import headrace.circuit.CircuitSolver;
import headrace.control.ControlLaw;
import headrace.control.LoopOperation;
import headrace.curve.Duty;
import headrace.energy.load.LoadPattern;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.rule.LargestMinimumHead;
import headrace.rule.MinimumHeadLimit;
import headrace.rule.PartLoadRule;
import headrace.rule.RuleProblem;
import headrace.units.Head;
import headrace.units.Ratio;
import java.util.List;
import java.util.Optional;

/**
 * The minimum heads of a quadratic law that pass a part-load rule and starve no branch: from the smallest that serves
 * every load pattern to the largest that passes, for each loss model.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Minimum heads in shares of the design head.
 *   <dt>Limits
 *   <dd>Those of {@link LeastMinimumHead} and {@link LargestMinimumHead}. It serves the patterns that are given;
 *       another pattern may need more.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code NOTHING_TO_JUDGE} without patterns, and as those.
 *   <dt>Source
 *   <dd>As those.
 * </dl>
 *
 * @param design the design point
 * @param least the smallest that serves
 * @param serving what happens on both sides of the smallest, where it is an end
 * @param upper the upper end for each loss model
 * @param openers where the window is empty with a loss model, what would open it
 * @param basis what it rests on
 */
public record MinimumHeadWindow(
        Duty design,
        LeastMinimumHead least,
        Optional<Evidence> serving,
        List<RuleEnd> upper,
        List<String> openers,
        Basis basis)
        implements Traced {
    /** Keeps the lists from changing. */
    public MinimumHeadWindow {
        upper = List.copyOf(upper);
        openers = List.copyOf(openers);
    }

    /**
     * Returns the window.
     *
     * @param given the pump set, which pumps the liquid of the circuit
     * @param design the design point of the law
     * @param circuit the circuit
     * @param patterns the load patterns that have to be served
     * @param rule the part-load rule
     */
    public static MinimumHeadWindow of(
            PumpSet given, Duty design, Circuit circuit, List<LoadPattern> patterns, PartLoadRule rule) {
        if (patterns.isEmpty()) {
            throw new Refusal(
                    RuleProblem.NOTHING_TO_JUDGE,
                    "Asked for the window of minimum heads with no load pattern",
                    "The smallest minimum head is the one that serves every pattern",
                    "Give the ways in which the load can lie over the branches");
        }
        PumpSet set = given.inLiquid(circuit.liquid());
        CircuitSolver solver = CircuitSolver.of(circuit);
        LeastMinimumHead least = LeastMinimumHead.of(set, design, solver, patterns);
        LargestMinimumHead largest = LargestMinimumHead.of(set, design, rule);
        List<RuleEnd> upper = largest.limits().stream()
                .map(limit -> RuleEnd.of(limit, least, set, design))
                .toList();
        Basis basis = largest.basis()
                .and(circuit.basis())
                .with("window of minimum heads over " + patterns.size() + " load patterns");
        return new MinimumHeadWindow(
                design, least, serving(least, set, design, solver), upper, openers(least, upper, design), basis);
    }

    private static Optional<Evidence> serving(LeastMinimumHead least, PumpSet set, Duty design, CircuitSolver solver) {
        if (least.outcome() != LeastMinimumHead.Outcome.FROM) {
            return Optional.empty();
        }
        double end = least.minimumHead().value();
        Ratio inside = Ratio.of(Math.min(1, end + Evidence.ASIDE));
        Ratio outside = Ratio.of(Math.max(0, end - Evidence.ASIDE));
        return Optional.of(new Evidence(
                "smallest that serves every branch",
                inside,
                said(set, design, solver, least.decides(), inside),
                outside,
                said(set, design, solver, least.decides(), outside)));
    }

    private static String said(PumpSet set, Duty design, CircuitSolver solver, LoadPattern pattern, Ratio share) {
        LoopOperation run = LoopOperation.of(ControlLaw.quadratic(design, share), set, solver, pattern.demands());
        List<String> starved = run.circuit().starvedBranches();
        if (starved.isEmpty()) {
            return "every branch is served with '" + pattern.name() + "'";
        }
        BranchState worst = run.circuit().branch(starved.get(0));
        return "'" + worst.name() + "' is short by " + worst.missing() + " with '" + pattern.name() + "'";
    }

    private static List<String> openers(LeastMinimumHead least, List<RuleEnd> upper, Duty design) {
        if (upper.stream().allMatch(end -> end.isOpen(least))) {
            return List.of();
        }
        String who = least.branch().map(name -> "'" + name + "'").orElse("the neediest branch");
        String pattern = "'" + least.decides().name() + "'";
        if (least.outcome() == LeastMinimumHead.Outcome.NONE) {
            return List.of(
                    "With " + pattern + " the circuit needs " + least.needed() + " at the pump, more than a quadratic"
                            + " law for " + design + " gives: raise the design head, or lower what " + who + " needs");
        }
        double narrowest = upper.stream()
                .filter(end -> !end.isOpen(least))
                .mapToDouble(MinimumHeadWindow::end)
                .min()
                .orElse(0);
        double z = least.decides().demands().total().over(design.flow()).value();
        double given = design.head().metres() * (narrowest + (1 - narrowest) * z * z);
        Head less = Head.metres(least.needed().metres() - given);
        return List.of(
                "Lower what " + who + " needs with " + pattern + " by " + less
                        + ": a larger pipe, valve or coil on its way",
                "Observe " + who + " instead of the pump: a sensor there, or its valve, raises the head only while it"
                        + " asks for it",
                "Choose a pump, motor or drive that loses less at part load, which moves the upper end");
    }

    private static double end(RuleEnd end) {
        return end.limit().outcome() == MinimumHeadLimit.Outcome.NONE
                ? 0
                : end.limit().minimumHead().value();
    }

    /** Returns whether with every loss model some minimum head passes and serves. */
    public boolean isOpen() {
        return upper.stream().allMatch(end -> end.isOpen(least));
    }

    @Override
    public Notes notes() {
        return upper.stream().map(end -> end.limit().notes()).reduce(Notes.NONE, Notes::and);
    }

    @Override
    public String toString() {
        String from = switch (least.outcome()) {
            case FROM -> "from " + least.minimumHead();
            case ANY -> "from none";
            case NONE -> "no minimum head serves every branch";
        };
        return from + "; "
                + String.join(
                        "; ", upper.stream().map(end -> end.limit().toString()).toList());
    }
}
