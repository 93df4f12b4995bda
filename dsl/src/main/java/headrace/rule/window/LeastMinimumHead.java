package headrace.rule.window;

import headrace.circuit.CircuitSolver;
import headrace.circuit.Closing;
import headrace.control.ControlLaw;
import headrace.control.LoopOperation;
import headrace.curve.Duty;
import headrace.energy.load.LoadPattern;
import headrace.pump.PumpSet;
import headrace.units.Head;
import headrace.units.Ratio;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.List;
import java.util.Optional;

/**
 * The smallest minimum head of a quadratic law that starves no branch over given load patterns.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Minimum heads in shares of the design head.
 *   <dt>Limits
 *   <dd>Each pattern needs one head, which one solve finds: the least at which every demand is met. The law gives
 *       {@code Hₘ + (H_d − Hₘ)·z²} at the share z of design flow, so that the minimum head which gives it follows in
 *       closed form. What the pump gives anyway at its least speed is taken into account.
 *   <dt>Errors
 *   <dd>As {@link CircuitSolver#solve}.
 *   <dt>Source
 *   <dd>Algebra.
 * </dl>
 *
 * @param outcome whether some, any or no minimum head serves
 * @param minimumHead the smallest that serves; 0 where any does, 100 % where none does
 * @param decides the pattern that decides
 * @param needed the head that it needs at the pump
 * @param branch the branch that starves first just below
 */
public record LeastMinimumHead(
        Outcome outcome, Ratio minimumHead, LoadPattern decides, Head needed, Optional<String> branch) {
    private static final double ROUNDING = 1e-9;

    /** Which minimum heads serve every branch. */
    public enum Outcome {
        /** From this one upwards. */
        FROM,
        /** Any, even none. */
        ANY,
        /** Not even the design head at every flow. */
        NONE
    }

    /**
     * Returns the smallest minimum head.
     *
     * @param set the pump set
     * @param design the design point of the law
     * @param solver the circuit, prepared
     * @param patterns the load patterns, at least one
     */
    static LeastMinimumHead of(PumpSet set, Duty design, CircuitSolver solver, List<LoadPattern> patterns) {
        LoadPattern worst = patterns.get(0);
        double most = Double.NEGATIVE_INFINITY;
        double needed = 0;
        try (Steps steps = Work.steps("minimum head over patterns of load", patterns.size())) {
            for (LoadPattern pattern : patterns) {
                steps.next();
                if (pattern.demands().total().si() > 0) {
                    double head = solver.solve(pattern.demands(), Closing.neediestValve(Ratio.of(1)))
                            .head()
                            .metres();
                    double share =
                            shareFor(set, design, pattern.demands().total().si(), head);
                    if (share > most) {
                        most = share;
                        worst = pattern;
                        needed = head;
                    }
                }
            }
        }
        Outcome outcome = most <= 0 ? Outcome.ANY : most <= 1 + ROUNDING ? Outcome.FROM : Outcome.NONE;
        Ratio share = Ratio.of(Math.max(0, Math.min(1, most)));
        Optional<String> branch =
                outcome == Outcome.ANY ? Optional.empty() : firstToStarve(set, design, solver, worst, share);
        return new LeastMinimumHead(outcome, share, worst, Head.metres(needed), branch);
    }

    /** Returns the minimum head, as a share, at which the law gives a head in m at a flow in m³/s. */
    private static double shareFor(PumpSet set, Duty design, double flow, double needed) {
        double least = set.minimumSpeed().over(set.curve().speed()).value();
        if (set.hasDrive() && set.curve().headMetres(flow, least) >= needed) {
            return Double.NEGATIVE_INFINITY;
        }
        double z = flow / design.flow().si();
        double above = needed / design.head().metres() - z * z;
        if (Math.abs(1 - z * z) <= ROUNDING) {
            return Math.abs(above) <= ROUNDING || above < 0 ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
        }
        // Beyond design flow less minimum head gives more head: there the law serves with none, or not at all.
        return z < 1 ? above / (1 - z * z) : above <= 0 ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
    }

    private static Optional<String> firstToStarve(
            PumpSet set, Duty design, CircuitSolver solver, LoadPattern pattern, Ratio share) {
        Ratio below = Ratio.of(Math.max(0, share.value() - Evidence.ASIDE));
        LoopOperation run = LoopOperation.of(ControlLaw.quadratic(design, below), set, solver, pattern.demands());
        return run.circuit().starvedBranches().stream().findFirst();
    }
}
