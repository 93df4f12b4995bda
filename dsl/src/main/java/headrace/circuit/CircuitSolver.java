package headrace.circuit;

import headrace.circuit.solve.ClosingLaw;
import headrace.circuit.solve.NetworkSolution;
import headrace.circuit.solve.NetworkSolver;
import headrace.problem.Refusal;
import headrace.units.Numbers;
import java.util.Arrays;
import java.util.List;

/**
 * Solves one circuit again and again, with other demands and closings; what depends on its shape only is done once.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Quantities at the named methods, SI at the bare ones.
 *   <dt>Limits
 *   <dd>As {@link NetworkSolver}.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code UNKNOWN_BRANCH}, {@code CIRCUIT_NOT_SOLVED} or {@code LAW_MISSES_CIRCUIT}.
 *   <dt>Source
 *   <dd>As {@link NetworkSolver}.
 * </dl>
 *
 * <p>Not for use by two threads at once.
 */
public final class CircuitSolver implements ClosingPlace {
    private final Circuit circuit;
    private final CircuitNetwork compiled;
    private final NetworkSolver solver;
    private final double[] demands;

    private CircuitSolver(Circuit circuit) {
        this.circuit = circuit;
        compiled = new CircuitNetwork(circuit);
        solver = NetworkSolver.of(compiled.network);
        demands = new double[circuit.branches().size()];
    }

    /** Prepares a circuit. */
    public static CircuitSolver of(Circuit circuit) {
        CircuitSolver made = new CircuitSolver(circuit);
        made.ask(circuit.designDemands());
        return made;
    }

    /** Returns the circuit. */
    public Circuit circuit() {
        return circuit;
    }

    /**
     * Returns how the circuit stands.
     *
     * @throws Refusal with {@code UNKNOWN_BRANCH} for a demand of no terminal, with {@code LAW_MISSES_CIRCUIT} if the
     *     law and the circuit do not meet, with {@code CIRCUIT_NOT_SOLVED} if the equations were not met otherwise
     */
    public CircuitSolution solve(Demands asked, Closing closing) {
        CircuitSolution solution = attempt(asked, closing);
        if (!solution.converged()) {
            throw refusal(solution);
        }
        return solution;
    }

    /** Returns how the circuit stands, or the best that was found: {@link CircuitSolution#converged} says which. */
    public CircuitSolution attempt(Demands asked, Closing closing) {
        ask(asked);
        ClosingLaw law = closing.on(this);
        NetworkSolution found = solver.solve(law);
        return CircuitSolution.of(compiled, asked, demands, found);
    }

    /** Asks for other demands from now on, for the bare methods; a terminal that is not named is asked for nothing. */
    public void ask(Demands asked) {
        Arrays.fill(demands, 0);
        asked.flows().forEach((name, flow) -> {
            int i = link(name);
            if (!circuit.branches().get(i).isTerminal()) {
                throw Circuit.unknown(name, Circuit.names(circuit.terminals()));
            }
            demands[i] = flow.si();
        });
        askAll();
    }

    /**
     * Asks for other demands from now on.
     *
     * @param cubicMetresPerSecond the flow of each branch in the order of the circuit; what stands at branches that are
     *     no terminals does not count
     */
    public void ask(double[] cubicMetresPerSecond) {
        System.arraycopy(cubicMetresPerSecond, 0, demands, 0, demands.length);
        askAll();
    }

    private void askAll() {
        for (int i = 0; i < demands.length; i++) {
            Branch branch = circuit.branches().get(i);
            if (branch.isTerminal()) {
                double held = branch.limiter().map(part -> part.limit().si()).orElse(Double.POSITIVE_INFINITY);
                double most = Math.min(demands[i], held);
                solver.ask(i, most);
                if (compiled.beyond(i) >= 0) {
                    solver.ask(compiled.beyond(i), most > 0 ? Double.POSITIVE_INFINITY : 0);
                    if (most > 0) {
                        solver.replace(compiled.beyond(i), compiled.beyondFor(i, most));
                    }
                }
            }
        }
    }

    /** Returns the solution in bare numbers for the demands that are asked; link i is branch i of the circuit. */
    public NetworkSolution solve(ClosingLaw law) {
        return solver.solve(law);
    }

    /** Returns the solver of the bare numbers, to look further: responses, gains, all crossings. */
    public NetworkSolver bare() {
        return solver;
    }

    @Override
    public int link(String branch) {
        Integer link = compiled.link(branch);
        if (link == null) {
            throw Circuit.unknown(branch, Circuit.names(circuit.branches()));
        }
        return link;
    }

    @Override
    public int node(String junction) {
        Integer node = compiled.node(junction);
        if (node == null) {
            throw Circuit.unknownJunction(junction, circuit.junctions());
        }
        return node;
    }

    @Override
    public ClosingLaw neediestValve(double opening) {
        return compiled.neediest(demands, opening);
    }

    private Refusal refusal(CircuitSolution solution) {
        NetworkSolution.Residuals off = solution.residuals();
        String worst = solution.worstBranch();
        List<String> unfed = solution.starvedBranches();
        return new Refusal(
                CircuitProblem.CIRCUIT_NOT_SOLVED,
                "Asked for the flows of a " + circuit,
                "The best that was found in " + solution.iterations() + " steps, at " + solution.flow() + " and "
                        + solution.head() + ", is off by " + Numbers.print(off.energyMetres()) + " m at '" + worst
                        + "' and by " + Numbers.print(Math.abs(off.closingMetres())) + " m at the pump"
                        + (unfed.isEmpty() ? "" : ", with too little at '" + unfed.get(0) + "'"),
                "Look at '" + worst + "' and at the law of the pump; try a head that is given first");
    }
}
