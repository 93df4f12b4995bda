package headrace.control;

import headrace.circuit.Branch;
import headrace.circuit.CircuitSolver;
import headrace.circuit.Closing;
import headrace.circuit.solve.ClosingLaw;
import headrace.circuit.solve.HeadSource;
import headrace.circuit.solve.NetworkSolution;
import headrace.curve.PumpCurve;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Head;

/**
 * Runs a circuit under a law hour by hour, in bare numbers: as {@link LoopOperation} without its notes.
 *
 * <dl>
 *   <dt>Units
 *   <dd>SI; speeds as shares of the speed of the pump curve.
 *   <dt>Limits
 *   <dd>Laws without limits of flow; those go by {@link LoopOperation}.
 *   <dt>Errors
 *   <dd>As {@link CircuitSolver#solve} and {@link PumpCurve#pointFor}.
 *   <dt>Source
 *   <dd>As {@link LoopOperation}.
 * </dl>
 *
 * <p>Not for use by two threads at once; several runners may share a solver one after the other.
 */
public final class LoopRunner {
    private static final double ROUNDING = 1e-9;

    private final ControlLaw law;
    private final PumpSet set;
    private final PumpSet powered;
    private final PumpCurve curve;
    private final CircuitSolver solver;
    private final Closing closing;
    private final HeadSource source;
    private final TrimAndRespond.Course course;
    private final ClosingLaw stepped;
    private final double fixedSpeed;
    private final double least;
    private final double greatest;
    private NetworkSolution found;
    private double flow;
    private double head;
    private double speed;

    private LoopRunner(ControlLaw law, PumpSet all, CircuitSolver solver) {
        this.law = law;
        this.solver = solver;
        set = new LimitsAfterLaw(law, all).set();
        curve = set.curve();
        least = set.minimumSpeed().over(curve.speed()).value();
        greatest = set.maximumSpeed().over(curve.speed()).value();
        Demand first = law.needsCircuit() ? new Demand.OfHead(Head.ZERO) : law.demand(new LoopState(Flow.ZERO), set);
        boolean mains = first instanceof Demand.FullSpeedOnMains;
        powered = mains ? set.onMains() : set;
        fixedSpeed = mains ? set.ratedSpeed().over(curve.speed()).value() : Double.NaN;
        course = law instanceof TrimAndRespond steps ? steps.begin() : null;
        closing = mains ? law.closing(set) : new WithinPump(set, law.limits()).keep(law.closing(set));
        ClosingLaw once = law.needsCircuit() ? null : closing.on(solver);
        source = once instanceof HeadSource of ? of : null;
        stepped = course == null ? null : stepped(set);
    }

    /** Prepares a law, a pump set and a circuit. */
    public static LoopRunner of(ControlLaw law, PumpSet set, CircuitSolver solver) {
        return new LoopRunner(law, set, solver);
    }

    /** The head that is wanted at this step, as far as the pump set can give it. */
    private ClosingLaw stepped(PumpSet limited) {
        WithinPump within = new WithinPump(limited, law.limits());
        return (HeadSource) q -> within.kept(course.metres(), q);
    }

    /** Returns how many steps an hour has: one, but for a law that moves in time. */
    public int stepsAnHour() {
        return law instanceof TrimAndRespond steps ? steps.stepsAnHour() : 1;
    }

    /** Takes a step in time with what the valves request after the last run. */
    public void step(double[] demands) {
        if (course != null) {
            course.step(requests(demands));
        }
    }

    private int requests(double[] demands) {
        double opening = ((TrimAndRespond) law).requests().opening().value();
        int requests = 0;
        for (int i = 0; i < demands.length; i++) {
            if (demands[i] > 0) {
                boolean starved = found.flow(i) < demands[i] * (1 - ROUNDING);
                boolean open = solver.opening(i, found.flow(i), available(i)).orElse(0) > opening;
                requests += starved || open ? 1 : 0;
            }
        }
        return requests;
    }

    /** Returns whether the law can be run so. */
    public static boolean canRun(ControlLaw law) {
        LawLimits limits = law.limits();
        return limits.leastFlow().isEmpty() && limits.greatestFlow().isEmpty();
    }

    /**
     * Runs the demands that the solver was asked last.
     *
     * @param total the sum of the demands, above 0
     * @param needed the least head that meets all of them, where no flow but theirs can pass; else infinity
     * @return whether every demand is met, so that no flow needs to be looked up
     */
    public boolean run(double total, double needed) {
        if (source != null) {
            head = source.metresAt(total);
            if (head >= needed) {
                found = null;
                flow = total;
                speed = speed();
                return true;
            }
        }
        found = solver.solve(equation());
        if (!found.converged()) {
            throw unsolved();
        }
        flow = found.pump().cubicMetresPerSecond();
        head = found.pump().metres();
        speed = speed();
        return false;
    }

    private ClosingLaw equation() {
        if (stepped != null) {
            return stepped;
        }
        return source != null ? source : closing.on(solver);
    }

    /** Returns the flow through the pump. */
    public double flow() {
        return flow;
    }

    /** Returns the head at the pump. */
    public double head() {
        return head;
    }

    /** Returns the speed. */
    public double speedRatio() {
        return speed;
    }

    /** Returns whether the pump turns at its greatest speed. */
    public boolean atGreatestSpeed() {
        return speed >= greatest * (1 - ROUNDING);
    }

    /** Returns whether the pump turns at its least speed. */
    public boolean atLeastSpeed() {
        return speed <= least * (1 + ROUNDING);
    }

    /** Returns the power into the shaft. */
    public double shaftWatts() {
        return curve.shaftWatts(flow, speed);
    }

    /** Returns the power from the wire. */
    public double wireWatts() {
        return powered.wireWatts(flow, speed);
    }

    /** Returns the flow in the branch of an index, after a run that did not meet every demand by itself. */
    public double flow(int branch) {
        return found.flow(branch);
    }

    /**
     * Returns the head in m that a branch lacks for a flow, after a run that did not meet every demand by itself.
     *
     * @param branch its place in the circuit
     * @param asked the flow in m³/s
     */
    public double missingMetres(int branch, double asked) {
        return Math.max(0, solver.law(branch).headMetres(asked) - available(branch));
    }

    private double available(int branch) {
        Branch at = solver.circuit().branches().get(branch);
        return found.headAt(solver.node(at.from())) - found.headAt(solver.node(at.to()));
    }

    private double speed() {
        boolean fixed = !Double.isNaN(fixedSpeed);
        double ratio = fixed ? fixedSpeed : curve.speedRatioFor(flow, head);
        boolean known = fixed ? curve.covers(flow, ratio) : ratio < Double.POSITIVE_INFINITY;
        if (!known) {
            // Says by name and number where the law leaves what is known of the pump; at the very end of a curve a
            // limit of speed may hold yet.
            Demand demand = fixed ? new Demand.FullSpeedOnMains() : new Demand.OfHead(Head.metres(head));
            SteadyState met = SteadyState.met(law, set, Flow.cubicMetresPerSecond(flow), demand);
            ratio = met.point().speed().over(curve.speed()).value();
        }
        return fixed ? Math.max(ratio, least) : Math.min(Math.max(ratio, least), greatest);
    }

    private Refusal unsolved() {
        return new Refusal(
                ControlProblem.LAW_NOT_SOLVED,
                "Asked for '" + law.name() + "' with a " + solver.circuit(),
                "The best that was found is "
                        + Flow.cubicMetresPerSecond(found.pump().cubicMetresPerSecond()) + " at "
                        + Head.metres(found.pump().metres()) + ", where the equations do not hold",
                "Look at the law with settle() at these demands, which names the branch that is worst off");
    }
}
