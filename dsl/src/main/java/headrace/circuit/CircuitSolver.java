package headrace.circuit;

import headrace.circuit.part.LinkLaw;
import headrace.circuit.solve.ClosingLaw;
import headrace.circuit.solve.Crossings;
import headrace.circuit.solve.HeaderPump;
import headrace.circuit.solve.NetworkSolution;
import headrace.circuit.solve.NetworkSolver;
import headrace.circuit.solve.Scan;
import headrace.problem.Refusal;
import headrace.pump.PumpBranch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

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
    /** Below this a law and a circuit run alike: rounding decides where they meet. */
    private static final double ALIKE = 1e-6;

    /** How many times the design head is looked through for a meeting. */
    private static final double FURTHEST = 10;

    private final Circuit circuit;
    private final CircuitNetwork compiled;
    private final NetworkSolver solver;
    private final double[] demands;
    private final CircuitRefusals refusals;

    private CircuitSolver(Circuit circuit) {
        this.circuit = circuit;
        compiled = new CircuitNetwork(circuit);
        solver = NetworkSolver.of(compiled.network);
        refusals = new CircuitRefusals(circuit);
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
     *     law and the circuit do not meet or run alike, with {@code CIRCUIT_NOT_SOLVED} if the equations were not met
     *     otherwise
     */
    public CircuitSolution solve(Demands asked, Closing closing) {
        ask(asked);
        ClosingLaw law = closing.on(this);
        CircuitSolution solution = under(asked, law);
        if (!solution.converged()) {
            solution = searched(asked, law, solution);
        } else if (Math.abs(solver.inverseGain(law, true)) < ALIKE) {
            throw refusals.alike(solution);
        }
        return solution;
    }

    /** Returns how the circuit stands, or the best that was found: {@link CircuitSolution#converged} says which. */
    public CircuitSolution attempt(Demands asked, Closing closing) {
        ask(asked);
        return under(asked, closing.on(this));
    }

    private CircuitSolution under(Demands asked, ClosingLaw law) {
        NetworkSolution found = solver.solve(law);
        return CircuitSolution.of(compiled, asked, demands, found);
    }

    /**
     * Returns all points at which pumps on the header and the circuit agree, by rising flow: pumps whose curves droop
     * may have several, each of which is a solution and says so.
     *
     * @throws Refusal with {@code LAW_MISSES_CIRCUIT} if there is none
     */
    public List<CircuitSolution> solveAll(Demands asked, List<HeaderPump> pumps) {
        ask(asked);
        List<Crossings.Point> points = Crossings.of(solver::flowAt, pumps).points();
        if (points.isEmpty()) {
            throw refusals.noCrossing(pumps, solver::flowAt);
        }
        List<CircuitSolution> all = new ArrayList<>();
        for (Crossings.Point point : points) {
            NetworkSolution found = solver.solve(ClosingLaw.constant(point.metres()));
            CircuitSolution solution = CircuitSolution.of(compiled, asked, demands, found);
            all.add(points.size() == 1 ? solution : solution.with(CircuitNotes.oneOf(points, point)));
        }
        return all;
    }

    /** Returns a running pump with its branch as it stands on the header, for {@link #solveAll}. */
    public static HeaderPump onHeader(PumpBranch pump) {
        double r = pump.lossMetresPerSquaredFlow();
        double cracking = pump.crackingHead().metres();
        return new HeaderPump(
                q -> pump.curve().headMetres(q, 1) - cracking - r * q * q,
                pump.curve().extendedHighestFlow().si());
    }

    /** Where Newton's method found nothing, the heads are looked through one by one. */
    private CircuitSolution searched(Demands asked, ClosingLaw law, CircuitSolution best) {
        if (law instanceof ClosingLaw.GivenHead) {
            throw refusals.notSolved(best);
        }
        Scan scan = solver.scan(law, FURTHEST * solver.network().scale().metres());
        if (scan.heads().isEmpty()) {
            NetworkSolution furthest = solver.solve(ClosingLaw.constant(scan.to()));
            CircuitSolution there = CircuitSolution.of(compiled, asked, demands, furthest);
            throw refusals.noMeeting(scan, there.starvedBranches());
        }
        NetworkSolution found = solver.solve(ClosingLaw.constant(scan.heads().get(0)));
        if (!found.converged()) {
            throw refusals.notSolved(best);
        }
        return CircuitSolution.of(compiled, asked, demands, found).with(CircuitNotes.searched(scan));
    }

    /**
     * Returns how much more a small change of a valve moves the square of flow under a law than under a fixed head, at
     * the solution just found: {@code 1/(1 − c/k)} for {@code Hₘ + c·Q²} against {@code k·Q²}, the valves held; none
     * where the law is as steep as the circuit or steeper.
     */
    public Optional<Double> gain(Closing closing) {
        double inverse = solver.inverseGain(closing.on(this), true);
        return inverse > ALIKE ? Optional.of(1 / inverse) : Optional.empty();
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
            if (compiled.isTerminal(i)) {
                double most = Math.min(demands[i], compiled.held(i));
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

    /** Returns the law of a branch, of a terminal with its valve fully open. */
    public LinkLaw law(int branch) {
        return compiled.law(branch);
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
    public OptionalDouble opening(int link, double cubicMetresPerSecond, double available) {
        return compiled.opening(link, cubicMetresPerSecond, available)
                .map(OptionalDouble::of)
                .orElseGet(OptionalDouble::empty);
    }

    @Override
    public ClosingLaw needierThan(double opening, int ignored) {
        return compiled.neediest(demands, opening, ignored);
    }

    @Override
    public ClosingLaw neediestValve(double opening) {
        return compiled.neediest(demands, opening);
    }
}
