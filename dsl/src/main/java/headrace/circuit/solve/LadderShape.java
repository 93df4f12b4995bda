package headrace.circuit.solve;

import headrace.circuit.part.SquareLaw;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Recognises a direct-return circuit: two mains that run along each other from the pump, with branches between them,
 * none crossing another.
 */
final class LadderShape {
    private final Network network;
    private final Main supply;
    private final Main back;

    /** The links of the branches from the far end, and their places along the two mains. */
    private final int[] rung;

    private final int[] alongSupply;
    private final int[] alongBack;

    private LadderShape(Network network, Main supply, Main back, List<Integer> rungs) {
        this.network = network;
        this.supply = supply;
        this.back = back;
        rung = rungs.stream().mapToInt(l -> l).toArray();
        alongSupply = rungs.stream()
                .mapToInt(l -> supply.place(network.links().get(l).from()))
                .toArray();
        alongBack = rungs.stream()
                .mapToInt(l -> back.place(network.links().get(l).to()))
                .toArray();
    }

    /** Returns the shape, or nothing if the network is of another. */
    static LadderShape of(Network network) {
        if (Arrays.stream(network.withdrawals()).anyMatch(w -> w != 0)
                || network.links().stream().anyMatch(link -> !isSquare(link))) {
            return null;
        }
        Main supply = Main.from(network, network.source());
        Main back = Main.from(network, 0);
        if (supply == null || back == null) {
            return null;
        }
        List<Integer> rungs = new ArrayList<>();
        for (int l = 0; l < network.links().size(); l++) {
            Link link = network.links().get(l);
            if (isRung(link) && supply.place(link.from()) >= 0 && back.place(link.to()) >= 0) {
                rungs.add(l);
            }
        }
        rungs.sort(Comparator.<Integer>comparingInt(
                        l -> -supply.place(network.links().get(l).from()))
                .thenComparing(l -> -back.place(network.links().get(l).to())));
        LadderShape shape = new LadderShape(network, supply, back, rungs);
        boolean all = rungs.size() + supply.links.length + back.links.length
                == network.links().size();
        return all && !rungs.isEmpty() && !shape.crosses() ? shape : null;
    }

    private static boolean isSquare(Link link) {
        return link.law() instanceof SquareLaw square && square.metresPerSquaredFlow() >= (isRung(link) ? 1e-300 : 0);
    }

    private static boolean isRung(Link link) {
        return link.least() == 0 && link.most() < Double.POSITIVE_INFINITY;
    }

    private boolean crosses() {
        for (int j = 1; j < rung.length; j++) {
            if (alongBack[j] > alongBack[j - 1]) {
                return true;
            }
        }
        return false;
    }

    /** Returns the resistance of each branch with its valve open, from the far end. */
    double[] open() {
        return Arrays.stream(rung).mapToDouble(l -> k(network, l)).toArray();
    }

    /** Returns the resistance of the mains between each branch and the one before it, from the far end. */
    double[] main() {
        double[] all = new double[rung.length];
        for (int j = 0; j < rung.length; j++) {
            boolean first = j + 1 == rung.length;
            all[j] = supply.between(first ? 0 : alongSupply[j + 1], alongSupply[j])
                    + back.between(first ? 0 : alongBack[j + 1], alongBack[j]);
        }
        return all;
    }

    /** Returns the link of a branch, counted from the far end. */
    int rung(int j) {
        return rung[j];
    }

    /** Puts flows and heads where they belong. */
    void place(Iterate into, double[] flow, double head) {
        into.head[network.source()] = head;
        into.head[0] = 0;
        supply.place(into, rung, alongSupply, flow, 1);
        back.place(into, rung, alongBack, flow, -1);
        for (int j = 0; j < rung.length; j++) {
            into.live.mark(rung[j], into.most[rung[j]] > 0);
            into.flow[rung[j]] = flow[j];
        }
    }

    private static double k(Network network, int l) {
        return ((SquareLaw) network.links().get(l).law()).metresPerSquaredFlow();
    }

    /** A row of plain links that begins at one side of the pump. */
    private static final class Main {
        private final int[] nodes;
        private final int[] links;
        private final boolean[] outwards;
        private final double[] resistance;
        private final int[] placeOfNode;

        private Main(Network network, List<Integer> nodes, List<Integer> links) {
            this.nodes = nodes.stream().mapToInt(i -> i).toArray();
            this.links = links.stream().mapToInt(l -> l).toArray();
            outwards = new boolean[this.links.length];
            resistance = new double[this.links.length];
            for (int s = 0; s < resistance.length; s++) {
                outwards[s] = network.links().get(this.links[s]).from() == this.nodes[s];
                resistance[s] = k(network, this.links[s]);
            }
            placeOfNode = new int[network.nodes()];
            Arrays.fill(placeOfNode, -1);
            for (int p = 0; p < this.nodes.length; p++) {
                placeOfNode[this.nodes[p]] = p;
            }
        }

        static Main from(Network network, int start) {
            List<List<Integer>> at = new ArrayList<>();
            for (int i = 0; i < network.nodes(); i++) {
                at.add(new ArrayList<>());
            }
            for (int l = 0; l < network.links().size(); l++) {
                Link link = network.links().get(l);
                if (!isRung(link)) {
                    at.get(link.from()).add(l);
                    at.get(link.to()).add(l);
                }
            }
            List<Integer> nodes = new ArrayList<>(List.of(start));
            List<Integer> links = new ArrayList<>();
            int node = start;
            while (at.get(node).size() > (node == start ? 0 : 1)) {
                int from = node;
                int last = links.isEmpty() ? -1 : links.get(links.size() - 1);
                int l = at.get(node).stream()
                        .filter(each -> each != last)
                        .findFirst()
                        .orElse(-1);
                Link link = network.links().get(Math.max(l, 0));
                boolean fork = at.get(node).size() > (node == start ? 1 : 2);
                if (fork || link.least() == 0 || nodes.size() > network.nodes()) {
                    return null;
                }
                node = link.from() == from ? link.to() : link.from();
                links.add(l);
                nodes.add(node);
            }
            return new Main(network, nodes, links);
        }

        int place(int node) {
            return placeOfNode[node];
        }

        double between(int near, int far) {
            double sum = 0;
            for (int s = near; s < far; s++) {
                sum += resistance[s];
            }
            return sum;
        }

        /**
         * Adds the flows up from the far end, so that nothing flows where nothing is asked for, then walks outwards
         * with the heads. A part of the main beyond the last branch that is asked for anything is out of use.
         */
        void place(Iterate into, int[] rung, int[] along, double[] flow, int sign) {
            double q = 0;
            boolean used = false;
            int next = 0;
            for (int s = links.length - 1; s >= 0; s--) {
                for (; next < along.length && along[next] > s; next++) {
                    q += flow[next];
                    used |= into.most[rung[next]] > 0;
                }
                into.live.mark(links[s], used);
                into.flow[links[s]] = outwards[s] == sign > 0 ? q : -q;
            }
            for (int s = 0; s < links.length; s++) {
                double size = Math.abs(into.flow[links[s]]);
                into.head[nodes[s + 1]] = into.head[nodes[s]] - sign * resistance[s] * size * size;
            }
        }
    }
}
