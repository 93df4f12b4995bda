package headrace.circuit.solve;

import headrace.numeric.GraphFactor;
import java.util.Arrays;

/**
 * One linear step of the network: each link is taken as {@code Q + base + conductance·(δfrom − δto)}, the nodes are
 * brought into balance, and the head of the pump stays open as one number.
 *
 * <p>So the heads move on a line: {@code head + fixed + response·s}, s being the change of the pump's head.
 */
final class LinearStep implements LoopView {
    /** Ties a node to its present head when every link at it rests; as a share of design flow over design head. */
    private static final double TIE = 1e-12;

    final double[] base;
    final double[] conductance;
    final double[] flowChange;
    final double[] headChange;
    private final double[] resting;
    private final Iterate at;
    private final int source;
    private final double[] withdrawals;
    private final int[] inner;
    private final int[] edge;
    private final double tie;
    private final GraphFactor factor;
    private final double[] weight;
    private final double[] ground;
    private final double[] fixed;
    private final double[] response;
    private final double[] fixedNode;
    private final double[] responseNode;
    private double pumpFixed;
    private double pumpResponse;
    private double change;

    LinearStep(Network network, Iterate at) {
        this.at = at;
        source = network.source();
        withdrawals = network.withdrawals();
        int nodes = network.nodes();
        inner = new int[nodes];
        int count = 0;
        for (int i = 0; i < nodes; i++) {
            inner[i] = i == 0 || i == source ? -1 : count++;
        }
        edge = edges();
        int[] a = Arrays.stream(edge).map(l -> inner[at.from[l]]).toArray();
        int[] b = Arrays.stream(edge).map(l -> inner[at.to[l]]).toArray();
        factor = GraphFactor.of(count, a, b);
        weight = new double[edge.length];
        ground = new double[count];
        fixed = new double[count];
        response = new double[count];
        fixedNode = new double[nodes];
        responseNode = new double[nodes];
        base = new double[at.from.length];
        resting = new double[at.from.length];
        flowChange = new double[at.from.length];
        headChange = new double[nodes];
        conductance = new double[at.from.length];
        tie = TIE * network.scale().cubicMetresPerSecond() / network.scale().metres();
    }

    private int[] edges() {
        int[] all = new int[at.from.length];
        int n = 0;
        for (int l = 0; l < all.length; l++) {
            if (inner[at.from[l]] >= 0 && inner[at.to[l]] >= 0) {
                all[n++] = l;
            }
        }
        return Arrays.copyOf(all, n);
    }

    /** Takes a link that is out of the network. */
    void rest(int l) {
        conductance[l] = 0;
        base[l] = 0;
        resting[l] = 0;
    }

    /** Takes each link as its state says: on its law with its slope, or at rest. */
    void linearise() {
        for (int l = 0; l < base.length; l++) {
            if (at.state[l] == LinkState.OPEN) {
                conductance[l] = 1 / at.slope(l);
                base[l] = conductance[l] * at.off[l];
            } else {
                conductance[l] = 0;
                resting[l] = at.state[l] == LinkState.DELIVERING ? at.most[l] : 0;
                base[l] = resting[l] - at.flow[l];
            }
        }
    }

    /**
     * Brings the nodes into balance.
     *
     * @param open whether the head of the pump may still change
     * @return whether the system could be solved
     */
    boolean solve(boolean open) {
        assemble();
        if (!factor.solve(weight, ground, fixed)) {
            return false;
        }
        if (open) {
            factor.solveAgain(response);
        }
        spread(fixed, fixedNode, 0);
        spread(response, responseNode, 1);
        pumpFixed = 0;
        pumpResponse = 0;
        for (int l = 0; l < base.length; l++) {
            int sign = at.from[l] == source ? 1 : at.to[l] == source ? -1 : 0;
            if (sign != 0) {
                pumpFixed += sign * flowWithout(l);
                pumpResponse += sign * conductance[l] * (responseNode[at.from[l]] - responseNode[at.to[l]]);
            }
        }
        change = 0;
        return true;
    }

    private void assemble() {
        for (int i = 0; i < inner.length; i++) {
            if (inner[i] >= 0) {
                ground[inner[i]] = at.live.isLiveNode(i) ? tie : 1;
                fixed[inner[i]] = -withdrawals[i];
                response[inner[i]] = 0;
            }
        }
        for (int l = 0; l < base.length; l++) {
            int a = inner[at.from[l]];
            int b = inner[at.to[l]];
            double q = at.flow[l] + base[l];
            double c = conductance[l];
            if (a >= 0) {
                fixed[a] -= q;
                if (b < 0) {
                    ground[a] += c;
                    response[a] += at.to[l] == source ? c : 0;
                }
            }
            if (b >= 0) {
                fixed[b] += q;
                if (a < 0) {
                    ground[b] += c;
                    response[b] += at.from[l] == source ? c : 0;
                }
            }
        }
        for (int e = 0; e < edge.length; e++) {
            weight[e] = conductance[edge[e]];
        }
    }

    private void spread(double[] values, double[] nodes, double atSource) {
        for (int i = 0; i < nodes.length; i++) {
            nodes[i] = inner[i] >= 0 ? values[inner[i]] : i == source ? atSource : 0;
        }
    }

    /** Chooses the change of the pump's head. */
    void choose(double metres) {
        change = metres;
    }

    /** Settles by how much each flow and head changes. */
    void finish() {
        for (int i = 0; i < headChange.length; i++) {
            headChange[i] = fixedNode[i] + change * responseNode[i];
        }
        for (int l = 0; l < flowChange.length; l++) {
            flowChange[l] = base[l] + conductance[l] * (headChange[at.from[l]] - headChange[at.to[l]]);
        }
    }

    /** Puts the links that rest exactly where they rest. */
    void settle(double[] flow) {
        for (int l = 0; l < flow.length; l++) {
            if (conductance[l] == 0) {
                flow[l] = resting[l];
            }
        }
    }

    private double flowWithout(int l) {
        return at.flow[l] + base[l] + conductance[l] * (fixedNode[at.from[l]] - fixedNode[at.to[l]]);
    }

    /** Returns by how much the flow through the pump grows with its head. */
    double pumpResponse() {
        return pumpResponse;
    }

    @Override
    public double flow() {
        return pumpFixed + change * pumpResponse;
    }

    @Override
    public double head() {
        return at.head[source] + change;
    }

    @Override
    public double flow(int link) {
        return flowWithout(link)
                + change * conductance[link] * (responseNode[at.from[link]] - responseNode[at.to[link]]);
    }

    @Override
    public double headAt(int node) {
        int like = at.live.likes(at.most)[node];
        return at.head[like] + fixedNode[like] + change * responseNode[like];
    }

    @Override
    public double headAcross(int link) {
        return headAt(at.from[link]) - headAt(at.to[link]);
    }
}
