package headrace.circuit.solve;

import headrace.circuit.part.LinkLaw;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** Flows, heads, and how far they are from fulfilling the equations of the links. */
final class Iterate implements LoopView {
    /**
     * Where it loses less than this share of the design head, a law that goes with the square of flow counts as flat.
     */
    private static final double FLAT = 1e-11;

    /** The least slope of any link, as a share of design head over design flow. */
    private static final double LEAST_SLOPE = 1e-9;

    private static final int N = LinkLaw.NUMBERS;

    final int[] from;
    final int[] to;
    final double[] most;
    final double[] flow;
    final double[] head;
    final double[] off;
    final LinkState[] state;
    private final double[] least;
    private final LinkLaw[] law;
    private final double[] numbers;
    private final double[] floor;
    private final double[] weight;
    private final Network.Scale scale;
    private final double[] flowBefore;
    private final double[] headBefore;
    private final int source;
    private final int[] sourceLinks;
    private final double[] withdrawals;
    private final double[] balance;
    final LiveLinks live;

    /** The greatest of {@link #off}, where it is, and the sum of its squares over the design head squared. */
    double worst;

    int worstLink;
    double squares;

    Iterate(Network network) {
        List<Link> links = network.links();
        int n = links.size();
        scale = network.scale();
        from = links.stream().mapToInt(Link::from).toArray();
        to = links.stream().mapToInt(Link::to).toArray();
        least = links.stream().mapToDouble(Link::least).toArray();
        most = links.stream().mapToDouble(Link::most).toArray();
        law = links.stream().map(Link::law).toArray(LinkLaw[]::new);
        flow = new double[n];
        head = new double[network.nodes()];
        off = new double[n];
        state = new LinkState[n];
        numbers = new double[N * n];
        floor = new double[n];
        weight = new double[n];
        live = new LiveLinks(network);
        flowBefore = new double[n];
        headBefore = new double[head.length];
        source = network.source();
        sourceLinks = IntStream.range(0, n)
                .filter(l -> from[l] == source || to[l] == source)
                .toArray();
        withdrawals = network.withdrawals();
        balance = new double[head.length];
        for (int l = 0; l < n; l++) {
            replace(l, law[l]);
        }
    }

    /** Asks a link for a flow; its weight makes a flow that is missing as great as the head that it would take. */
    void ask(int l, double flow) {
        most[l] = flow;
        if (flow > 0 && flow < Double.POSITIVE_INFINITY) {
            weight[l] = Math.max(law[l].slope(flow), floor[l]);
        }
    }

    /** Gives a link a law. */
    void replace(int l, LinkLaw other) {
        law[l] = other;
        double slope = scale.metres() / scale.cubicMetresPerSecond();
        double bend = other.slope(scale.cubicMetresPerSecond()) / scale.cubicMetresPerSecond();
        floor[l] = Math.max(Math.sqrt(2 * bend * FLAT * scale.metres()), LEAST_SLOPE * slope);
        weight[l] = Math.max(floor[l], slope);
        ask(l, most[l]);
    }

    /** Takes the links out that cannot carry a flow, and starts from the demands. */
    void start() {
        live.find(most);
        Arrays.fill(numbers, 0);
        double share = scale.cubicMetresPerSecond() / Math.sqrt(flow.length);
        for (int l = 0; l < flow.length; l++) {
            double asked = most[l] < Double.POSITIVE_INFINITY ? most[l] : share;
            flow[l] = live.isLive(l) ? asked : 0;
        }
    }

    /** Reads the laws at the present flows, and where on it each link stands. */
    void evaluate() {
        worst = 0;
        worstLink = 0;
        squares = 0;
        double metres = scale.metres();
        for (int l = 0; l < flow.length; l++) {
            if (!live.isLive(l)) {
                state[l] = LinkState.REMOVED;
                off[l] = 0;
                continue;
            }
            law[l].evaluate(flow[l], numbers, N * l);
            double spare = head[from[l]] - head[to[l]] - numbers[N * l];
            off[l] = placed(l, spare);
            double size = Math.abs(off[l]);
            if (!(size <= worst)) {
                worst = size;
                worstLink = l;
            }
            squares += size / metres * (size / metres);
        }
    }

    /** Finds on which piece of its law a link stands, and returns by how much it is off it, as a head. */
    private double placed(int l, double spare) {
        double wanted = weight[l] * flow[l] + spare;
        if (wanted >= weight[l] * most[l]) {
            state[l] = LinkState.DELIVERING;
            return weight[l] * (flow[l] - most[l]);
        }
        if (least[l] == 0 && wanted <= 0) {
            state[l] = LinkState.SHUT;
            return weight[l] * flow[l];
        }
        state[l] = LinkState.OPEN;
        return spare;
    }

    /** Says that every terminal delivers, as at the start: its heads are not known yet. */
    void assumeDelivered() {
        for (int l = 0; l < flow.length; l++) {
            if (state[l] != LinkState.REMOVED) {
                state[l] = most[l] < Double.POSITIVE_INFINITY ? LinkState.DELIVERING : LinkState.OPEN;
                off[l] = head[from[l]] - head[to[l]] - numbers[N * l];
            }
        }
    }

    double least(int l) {
        return least[l];
    }

    double slope(int l) {
        return Math.max(numbers[N * l + 1], floor[l]);
    }

    /** Returns the head that the law loses at the present flow. */
    double lost(int l) {
        return numbers[N * l];
    }

    /** Keeps the present flows and heads, to move from there. */
    void mark() {
        System.arraycopy(flow, 0, flowBefore, 0, flow.length);
        System.arraycopy(head, 0, headBefore, 0, head.length);
    }

    /** Moves from the mark by a share of a step. A link that comes to rest is put there exactly. */
    void move(LinearStep step, double share) {
        for (int i = 0; i < head.length; i++) {
            head[i] = headBefore[i] + share * step.headChange[i];
        }
        for (int l = 0; l < flow.length; l++) {
            flow[l] = flowBefore[l] + share * step.flowChange[l];
        }
        if (share == 1) {
            step.settle(flow);
        }
    }

    /** Puts each link that rests exactly where it rests, and each other one inside its bounds: by rounding only. */
    void settle() {
        for (int l = 0; l < flow.length; l++) {
            switch (state[l]) {
                case DELIVERING -> flow[l] = most[l];
                case OPEN -> flow[l] = Math.max(least[l], Math.min(most[l], flow[l]));
                default -> flow[l] = 0;
            }
        }
    }

    /** Returns the greatest imbalance of a node. */
    double imbalance() {
        for (int i = 0; i < balance.length; i++) {
            balance[i] = withdrawals[i];
        }
        for (int l = 0; l < flow.length; l++) {
            balance[from[l]] += flow[l];
            balance[to[l]] -= flow[l];
        }
        double most = 0;
        for (int i = 1; i < balance.length; i++) {
            most = i == source ? most : Math.max(most, Math.abs(balance[i]));
        }
        return most;
    }

    @Override
    public double flow() {
        double sum = 0;
        for (int l : sourceLinks) {
            sum += from[l] == source ? flow[l] : -flow[l];
        }
        return sum;
    }

    @Override
    public double head() {
        return head[source];
    }

    @Override
    public double flow(int link) {
        return flow[link];
    }

    @Override
    public double headAt(int node) {
        return head[live.likes(most)[node]];
    }

    @Override
    public double headAcross(int link) {
        return headAt(from[link]) - headAt(to[link]);
    }
}
