package headrace.control;

import headrace.circuit.Circuit;
import headrace.circuit.CircuitSolution;
import headrace.circuit.CircuitSolver;
import headrace.circuit.Closing;
import headrace.circuit.Demands;
import headrace.circuit.LeastFlow;
import headrace.problem.Notes;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import java.util.Optional;

/**
 * How a pump set under a law runs a circuit with given demands: one solve of circuit, law and pump together.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Heads of the liquid, at the pump.
 *   <dt>Limits
 *   <dd>Steady state. Limits of speed, power and flow are part of the solve, so that a circuit that the pump cannot
 *       serve shows which branch starves.
 *   <dt>Errors
 *   <dd>As {@link CircuitSolver#solve} and {@link SteadyState#of}; outside the range of the pump curve as
 *       {@link headrace.curve.PumpCurve#at}.
 *   <dt>Source
 *   <dd>As those.
 * </dl>
 *
 * @param law the law
 * @param circuit how the circuit stands
 * @param pump how the pump set runs; none where nothing is asked, since it stands still then
 * @param notes what was touched
 */
public record LoopOperation(ControlLaw law, CircuitSolution circuit, Optional<SteadyState> pump, Notes notes)
        implements Traced {
    /**
     * Returns how a pump set under a law runs a circuit, whose liquid it pumps.
     *
     * @param law the law
     * @param set the pump set
     * @param circuit the circuit
     * @param demands what is asked of its terminals
     */
    public static LoopOperation of(ControlLaw law, PumpSet set, Circuit circuit, Demands demands) {
        return of(law, set, CircuitSolver.of(circuit), demands);
    }

    /**
     * Returns how a pump set under a law runs a circuit that was prepared; it pumps the liquid of the circuit. Its
     * minimum-flow valves bypass what the pump lacks; with nothing else to serve, the pump stands still.
     */
    public static LoopOperation of(ControlLaw law, PumpSet given, CircuitSolver solver, Demands demands) {
        PumpSet set = given.inLiquid(solver.circuit().liquid());
        Demands loads = LeastFlow.loads(solver.circuit(), demands);
        return loads.total().si() == 0
                ? asked(law, set, solver, loads)
                : LeastFlow.solve(
                        solver.circuit(), demands, all -> asked(law, set, solver, all), LoopOperation::circuit);
    }

    private static LoopOperation asked(ControlLaw law, PumpSet set, CircuitSolver solver, Demands demands) {
        if (demands.total().si() == 0) {
            CircuitSolution still = solver.solve(demands, Closing.head(Head.ZERO));
            return new LoopOperation(law, still, Optional.empty(), still.notes());
        }
        LimitsAfterLaw limits = new LimitsAfterLaw(law, set);
        Run run = new Run(law, limits.set(), solver, demands);
        Flow wanted = run.free.flow();
        CircuitSolution found = run.withinFlows();
        Demand demand = found.flow().compareTo(wanted) < 0 ? new Demand.OfHead(found.head()) : run.demand(found);
        SteadyState state = SteadyState.met(law, set, wanted, demand);
        return new LoopOperation(law, found, Optional.of(state), found.notes().and(state.notes()));
    }

    /** One solve, and a second one where the law limits the flow. */
    private static final class Run {
        private final ControlLaw law;
        private final PumpSet set;
        private final CircuitSolver solver;
        private final Demands demands;
        private final WithinPump within;
        private final CircuitSolution free;

        Run(ControlLaw law, PumpSet set, CircuitSolver solver, Demands demands) {
            this.law = law;
            this.set = set;
            this.solver = solver;
            this.demands = demands;
            within = new WithinPump(set, law.limits());
            free = solver.solve(demands, closing());
        }

        private Closing closing() {
            boolean mains =
                    !law.needsCircuit() && law.demand(new LoopState(Flow.ZERO), set) instanceof Demand.FullSpeedOnMains;
            return mains ? law.closing(set) : within.keep(law.closing(set));
        }

        CircuitSolution withinFlows() {
            Flow pumped = law.limits().pumped(free.flow());
            int order = pumped.compareTo(free.flow());
            if (order < 0) {
                return solver.solve(demands, atFlow(pumped));
            }
            return order > 0 ? solver.solve(demands, Closing.head(headAt(pumped))) : free;
        }

        /** The head at which just this flow goes through the pump: what is not yet at that flow moves the head. */
        private Closing atFlow(Flow flow) {
            double stiffness = free.head().metres() / free.flow().si();
            return place -> loop -> loop.head() + (flow.si() - loop.flow()) * stiffness;
        }

        /** Returns the head that the law makes with more flow at the pump than the circuit takes. */
        private Head headAt(Flow pumped) {
            SeenPump seen = new SeenPump(pumped.si(), new SeenSolution(free));
            return Head.metres(closing().on(solver).headMetres(seen));
        }

        /** Returns what the law asks for at the state that was found, before the limits of the pump. */
        Demand demand(CircuitSolution found) {
            if (!law.needsCircuit()) {
                return law.demand(new LoopState(law.limits().pumped(found.flow())), set);
            }
            solver.ask(demands);
            double metres = law.closing(set).on(solver).headMetres(new SeenSolution(found));
            return new Demand.OfHead(Head.metres(Math.max(0, metres)));
        }
    }

    /** Returns by how much the pump gives more head than the law asks for; none where it stands still. */
    public Optional<Head> excessHead() {
        return pump.map(SteadyState::excessHead);
    }

    @Override
    public Basis basis() {
        return circuit.basis().and(pump.map(SteadyState::basis).orElse(Basis.NONE));
    }

    @Override
    public String toString() {
        return "'" + law.name() + "': " + circuit
                + pump.map(state -> ", " + state.point().speed() + ", "
                                + state.point().wirePower() + " from the wire")
                        .orElse(", the pump stands still");
    }
}
