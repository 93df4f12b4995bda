package headrace.circuit;

import headrace.circuit.part.Part;
import headrace.liquid.Liquid;
import headrace.problem.Nearest;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A closed loop of named branches around one pump or group of pumps.
 *
 * <p>The pump stands between two junctions, from the suction to the discharge; it is not a branch. Any shape is
 * possible: direct return, reverse return, loops.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Quantities; heads are heads of the liquid, above the suction of the pump.
 *   <dt>Limits
 *   <dd>Every branch hangs together with both sides of the pump, and a way leads from the discharge to the suction.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code UNCONNECTED_CIRCUIT}, {@code DOUBLE_BRANCH} or {@code UNKNOWN_BRANCH}.
 *   <dt>Source
 *   <dd>Conservation of mass at junctions and of energy around loops.
 * </dl>
 *
 * @param liquid what flows in it
 * @param discharge the junction into which the pump delivers
 * @param suction the junction from which it draws
 * @param branches the branches, each with a name of its own
 * @param origin what it was made from, such as a file
 */
public record Circuit(Liquid liquid, String discharge, String suction, List<Branch> branches, Basis origin)
        implements Traced {
    /** Refuses what does not hang together. */
    public Circuit {
        branches = List.copyOf(branches);
        Set<String> names = new LinkedHashSet<>();
        for (Branch branch : branches) {
            if (!names.add(branch.name())) {
                throw new Refusal(
                        CircuitProblem.DOUBLE_BRANCH,
                        "Asked for a circuit with two branches called '" + branch.name() + "'",
                        "Results speak of a branch by its name, so each has one of its own",
                        "Rename one of them");
            }
        }
        if (discharge.equals(suction)) {
            throw unconnected(
                    "whose pump delivers into '" + discharge + "' and draws from it",
                    "The two sides of the pump are two junctions",
                    "Name the junction from which it draws");
        }
        requireConnected(branches, discharge, suction);
    }

    /** Creates a circuit that was made from nothing but what is given here. */
    public Circuit(Liquid liquid, String discharge, String suction, List<Branch> branches) {
        this(liquid, discharge, suction, branches, Basis.NONE);
    }

    /** Returns a circuit. */
    public static Circuit of(Liquid liquid, String discharge, String suction, Branch... branches) {
        return new Circuit(liquid, discharge, suction, List.of(branches));
    }

    /**
     * Returns the branch of a name.
     *
     * @throws Refusal with {@code UNKNOWN_BRANCH}
     */
    public Branch branch(String name) {
        return branches.stream()
                .filter(branch -> branch.name().equals(name))
                .findFirst()
                .orElseThrow(() -> unknown(name, names(branches)));
    }

    /** Returns the branches that serve loads. */
    public List<Branch> terminals() {
        return branches.stream().filter(Branch::isTerminal).toList();
    }

    /** Returns the names of the junctions: the two sides of the pump, then those of the branches in their order. */
    public List<String> junctions() {
        Set<String> all = new LinkedHashSet<>(List.of(suction, discharge));
        for (Branch branch : branches) {
            all.add(branch.from());
            all.add(branch.to());
        }
        return List.copyOf(all);
    }

    /** Returns the sum of the design flows. */
    public Flow designFlow() {
        double sum = 0;
        for (Branch branch : terminals()) {
            sum += branch.design().orElseThrow().si();
        }
        return Flow.cubicMetresPerSecond(sum);
    }

    /** Returns the design flow of each terminal. */
    public Demands designDemands() {
        Map<String, Flow> all = new LinkedHashMap<>();
        for (Branch branch : terminals()) {
            all.put(branch.name(), branch.design().orElseThrow());
        }
        return new Demands(all);
    }

    /**
     * Returns whether what is asked of the terminals settles every flow: no loop, no bypass, nothing that passes beyond
     * a held flow.
     */
    public boolean carriesOnlyDemands() {
        Map<String, String> group = new LinkedHashMap<>();
        junctions().forEach(junction -> group.put(junction, junction));
        join(group, discharge, suction);
        for (Branch branch : branches) {
            boolean closes = !branch.isTerminal() && !join(group, branch.from(), branch.to());
            if (closes || branch.limiter().isPresent()) {
                return false;
            }
        }
        return true;
    }

    /** Joins two junctions; returns false if they hang together already. */
    private static boolean join(Map<String, String> group, String one, String other) {
        String first = root(group, one);
        String second = root(group, other);
        group.put(first, second);
        return !first.equals(second);
    }

    private static String root(Map<String, String> group, String junction) {
        String at = junction;
        while (!group.get(at).equals(at)) {
            at = group.get(at);
        }
        return at;
    }

    /** Returns this circuit with another liquid in it. */
    public Circuit with(Liquid other) {
        return new Circuit(other, discharge, suction, branches, origin);
    }

    /** Returns this circuit with a branch in the place of the one of the same name. */
    public Circuit with(Branch changed) {
        branch(changed.name());
        List<Branch> all = new ArrayList<>(branches);
        all.replaceAll(branch -> branch.name().equals(changed.name()) ? changed : branch);
        return new Circuit(liquid, discharge, suction, all, origin);
    }

    /**
     * Returns how it stands at the design flows with a head or a law at the pump.
     *
     * @throws Refusal as {@link CircuitSolver#solve}
     */
    public CircuitSolution solve(Closing closing) {
        return CircuitSolver.of(this).solve(designDemands(), closing);
    }

    /**
     * Returns how it stands with given demands.
     *
     * @throws Refusal as {@link CircuitSolver#solve}
     */
    public CircuitSolution solve(Demands demands, Closing closing) {
        return CircuitSolver.of(this).solve(demands, closing);
    }

    @Override
    public Notes notes() {
        Notes all = liquid.notes();
        for (Branch branch : branches) {
            for (Part part : branch.parts()) {
                all = all.and(part.notes(liquid));
            }
        }
        return all.and(CircuitNotes.mixedUnits(this));
    }

    @Override
    public Basis basis() {
        Basis all = liquid.basis().and(origin);
        for (Branch branch : branches) {
            for (Part part : branch.parts()) {
                all = all.and(part.basis());
            }
        }
        return all.with(
                "circuit of " + branches.size() + " branches, " + terminals().size() + " of them terminals, " + liquid);
    }

    @Override
    public String toString() {
        return "circuit of " + branches.size() + " branches, " + terminals().size() + " of them terminals, with "
                + liquid + ", design flow " + designFlow();
    }

    /** Returns the refusal of a name that no branch has. */
    static Refusal unknown(String name, List<String> names) {
        return new Refusal(
                CircuitProblem.UNKNOWN_BRANCH,
                "Asked for the branch '" + name + "'",
                "The circuit has " + (names.isEmpty() ? "none that serves a load" : Nearest.either(names)),
                Nearest.sentence(Nearest.to(name, names), "Write the name as it stands there"));
    }

    /** Returns the refusal of a name that no junction has. */
    static Refusal unknownJunction(String name, List<String> names) {
        return new Refusal(
                CircuitProblem.UNKNOWN_JUNCTION,
                "Asked for the junction '" + name + "'",
                "The circuit has " + Nearest.either(names),
                Nearest.sentence(Nearest.to(name, names), "Write the name as it stands there"));
    }

    static List<String> names(List<Branch> branches) {
        return branches.stream().map(Branch::name).toList();
    }

    private static void requireConnected(List<Branch> branches, String discharge, String suction) {
        Set<String> fromDischarge = reached(branches, discharge);
        if (!fromDischarge.contains(suction)) {
            throw unconnected(
                    "without a way from '" + discharge + "' to '" + suction + "'",
                    "The junctions that the pump reaches are " + Nearest.either(List.copyOf(fromDischarge)),
                    "Lead a branch back to '" + suction + "', or correct the name of a junction");
        }
        Optional<Branch> loose = branches.stream()
                .filter(branch -> !fromDischarge.contains(branch.from()))
                .findFirst();
        if (loose.isPresent()) {
            List<String> near = Nearest.to(loose.get().from(), fromDischarge);
            throw unconnected(
                    "in which '" + loose.get().name() + "' from '" + loose.get().from() + "' to '"
                            + loose.get().to() + "' hangs together with neither side of the pump",
                    "Every branch is joined to the others by the names of its junctions",
                    Nearest.sentence(near, "Correct the name of a junction, or take the branch out"));
        }
    }

    private static Set<String> reached(List<Branch> branches, String start) {
        Map<String, List<String>> beside = new LinkedHashMap<>();
        for (Branch branch : branches) {
            beside.computeIfAbsent(branch.from(), name -> new ArrayList<>()).add(branch.to());
            beside.computeIfAbsent(branch.to(), name -> new ArrayList<>()).add(branch.from());
        }
        Set<String> reached = new LinkedHashSet<>(List.of(start));
        Deque<String> open = new ArrayDeque<>(reached);
        while (!open.isEmpty()) {
            for (String next : beside.getOrDefault(open.remove(), List.of())) {
                if (reached.add(next)) {
                    open.add(next);
                }
            }
        }
        return reached;
    }

    private static Refusal unconnected(String what, String possible, String next) {
        return new Refusal(CircuitProblem.UNCONNECTED_CIRCUIT, "Asked for a circuit " + what, possible, next);
    }
}
