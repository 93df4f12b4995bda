package headrace.circuit;

import headrace.circuit.part.FlowLimiting;
import headrace.circuit.part.LinkLaw;
import headrace.circuit.part.Part;
import headrace.circuit.part.Throttling;
import headrace.circuit.solve.ClosingLaw;
import headrace.circuit.solve.Link;
import headrace.circuit.solve.Network;
import headrace.circuit.solve.NetworkSolution;
import headrace.circuit.solve.NetworkSolver;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * A named circuit in bare numbers. Link i is branch i; branches whose flow is held have a second link, which carries
 * what goes beyond it.
 */
final class CircuitNetwork {
    private static final Network.Scale FIRST_GUESS = new Network.Scale(0.01, 10);

    final Circuit circuit;
    private final Map<String, Integer> nodes = new HashMap<>();
    private final Map<String, Integer> links = new HashMap<>();
    private final List<LinkLaw> laws = new ArrayList<>();
    private final List<LinkLaw> withoutValve = new ArrayList<>();
    private final List<Optional<Throttling>> valves = new ArrayList<>();
    private final boolean[] terminal;
    private final double[] held;
    private final int[] beyond;
    final Network network;

    CircuitNetwork(Circuit circuit) {
        this.circuit = circuit;
        nodes.put(circuit.suction(), 0);
        nodes.put(circuit.discharge(), 1);
        List<Branch> branches = circuit.branches();
        terminal = new boolean[branches.size()];
        held = new double[branches.size()];
        beyond = new int[branches.size()];
        Arrays.fill(beyond, -1);
        for (Branch branch : branches) {
            terminal[links.size()] = branch.isTerminal();
            held[links.size()] = branch.limiter().map(part -> part.limit().si()).orElse(Double.POSITIVE_INFINITY);
            valves.add(branch.valve());
            links.put(branch.name(), links.size());
            nodes.putIfAbsent(branch.from(), nodes.size());
            nodes.putIfAbsent(branch.to(), nodes.size());
            laws.add(law(branch, part -> true));
            withoutValve.add(
                    law(branch, part -> branch.valve().filter(part::equals).isEmpty()));
        }
        network = network(links(), scale(links()));
    }

    private LinkLaw law(Branch branch, Predicate<Part> which) {
        return SeriesLaw.of(branch.parts().stream()
                .filter(which)
                .map(part -> part.in(circuit.liquid()))
                .toList());
    }

    private List<Link> links() {
        List<Link> all = new ArrayList<>();
        List<Link> further = new ArrayList<>();
        for (Branch branch : circuit.branches()) {
            Work.poll();
            int i = all.size();
            double held = branch.limiter().map(part -> part.limit().si()).orElse(Double.POSITIVE_INFINITY);
            double most = branch.design().map(flow -> Math.min(flow.si(), held)).orElse(held);
            double least = branch.isOneWay() ? 0 : Double.NEGATIVE_INFINITY;
            all.add(new Link(nodes.get(branch.from()), nodes.get(branch.to()), laws.get(i), least, most));
            if (branch.limiter().isPresent()) {
                beyond[i] = circuit.branches().size() + further.size();
                further.add(Link.check(nodes.get(branch.from()), nodes.get(branch.to()), beyondLaw(i, most)));
            }
        }
        all.addAll(further);
        return all;
    }

    private LinkLaw beyondLaw(int i, double held) {
        Branch branch = circuit.branches().get(i);
        FlowLimiting limiter = branch.limiter().orElseThrow();
        double ceiling = limiter.ceiling(circuit.liquid()).metres();
        return new BeyondLaw(law(branch, part -> !part.equals(limiter)), held, ceiling);
    }

    private Network network(List<Link> all, Network.Scale scale) {
        return Network.closed(nodes.size(), 1, all, scale);
    }

    /** The size of the design: what flows when every terminal has its design flow, and the head that takes. */
    private Network.Scale scale(List<Link> all) {
        double flow = circuit.designFlow().si();
        if (flow > 0) {
            Network rough = network(all, new Network.Scale(flow, FIRST_GUESS.metres()));
            NetworkSolution open = NetworkSolver.of(rough).solve(neediest(designs(), 1));
            double metres = Math.abs(open.pump().metres());
            return new Network.Scale(flow, metres > 0 ? metres : FIRST_GUESS.metres());
        }
        NetworkSolution found =
                NetworkSolver.of(network(all, FIRST_GUESS)).solve(ClosingLaw.constant(FIRST_GUESS.metres()));
        double most = Arrays.stream(found.flows()).map(Math::abs).max().orElse(0);
        return new Network.Scale(most > 0 ? most : FIRST_GUESS.cubicMetresPerSecond(), FIRST_GUESS.metres());
    }

    private double[] designs() {
        return circuit.branches().stream()
                .mapToDouble(branch -> branch.design().map(flow -> flow.si()).orElse(0.0))
                .toArray();
    }

    /** Returns the law of the least head at which each terminal gets its demand, its valve at most at a stroke. */
    ClosingLaw neediest(double[] demands, double opening) {
        return neediest(demands, opening, 0);
    }

    /** Returns the same law without so many of the neediest. */
    ClosingLaw neediest(double[] demands, double opening, int ignored) {
        int[] at = new int[demands.length];
        double[] wanted = new double[demands.length];
        for (int i = 0; i < demands.length; i++) {
            at[i] = i;
            wanted[i] = demands[i] > 0 ? needed(i, demands[i], opening) : Double.NEGATIVE_INFINITY;
        }
        return ignored == 0 ? ClosingLaw.neediest(at, wanted) : ClosingLaw.neediest(at, wanted, ignored);
    }

    /** Returns the head that a terminal needs for a flow with its valve at a stroke. */
    double needed(int i, double flow, double opening) {
        double open = laws.get(i).headMetres(flow);
        double others = withoutValve.get(i).headMetres(flow);
        double share = valves.get(i).map(valve -> valve.shareAt(opening)).orElse(1.0);
        return others + (open - others) / (share * share);
    }

    /** Returns the stroke of a terminal's valve that leaves it a flow at a head, if it has a valve. */
    Optional<Double> opening(int i, double flow, double available) {
        return valves.get(i).map(valve -> {
            double others = withoutValve.get(i).headMetres(flow);
            double valveOpen = laws.get(i).headMetres(flow) - others;
            double share = flow > 0 ? Math.sqrt(valveOpen / Math.max(valveOpen, available - others)) : 0;
            return valve.openingAt(share);
        });
    }

    boolean isTerminal(int i) {
        return terminal[i];
    }

    /** Returns the flow that a branch is held to, infinity where nothing holds it. */
    double held(int i) {
        return held[i];
    }

    LinkLaw law(int i) {
        return laws.get(i);
    }

    /** Returns the link that carries what goes beyond a held flow, or -1. */
    int beyond(int i) {
        return beyond[i];
    }

    /** Returns the branch to which a link belongs. */
    int branchOf(int link) {
        for (int i = 0; i < beyond.length; i++) {
            if (beyond[i] == link) {
                return i;
            }
        }
        return link;
    }

    /** Returns the law of that link when another flow is held. */
    LinkLaw beyondFor(int i, double held) {
        return beyondLaw(i, held);
    }

    Integer node(String junction) {
        return nodes.get(junction);
    }

    Integer link(String branch) {
        return links.get(branch);
    }
}
