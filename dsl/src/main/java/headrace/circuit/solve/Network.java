package headrace.circuit.solve;

import java.util.List;

/**
 * A closed circuit in bare numbers: nodes, links, and the place of the pump.
 *
 * <p>Node 0 is the suction of the pump, at head 0; {@link #source} is its discharge. The pump itself is not a link: its
 * head is settled by a {@link ClosingLaw} when the network is solved.
 *
 * @param nodes how many nodes there are
 * @param source the node into which the pump delivers, not 0
 * @param links the links between them
 * @param withdrawals what is taken out at each node, in m³/s; all 0 in a closed loop
 * @param scale the size of a flow and of a head that matter here, to which residuals are held
 */
public record Network(int nodes, int source, List<Link> links, double[] withdrawals, Scale scale) {
    /**
     * The size of things, from the design.
     *
     * @param cubicMetresPerSecond the design flow, above 0
     * @param metres the design head, above 0
     */
    public record Scale(double cubicMetresPerSecond, double metres) {
        /** Refuses a scale of nothing; a mistake of the program, not of its user. */
        public Scale {
            if (!(cubicMetresPerSecond > 0 && metres > 0)) {
                throw new IllegalArgumentException("no scale: " + cubicMetresPerSecond + ", " + metres);
            }
        }
    }

    /** Copies the lists, and refuses links to nodes that are not there; a mistake of the program, not of its user. */
    public Network {
        links = List.copyOf(links);
        withdrawals = withdrawals.clone();
        if (source <= 0 || source >= nodes || withdrawals.length != nodes) {
            throw new IllegalArgumentException("no network of " + nodes + " nodes with its source at " + source);
        }
        for (Link link : links) {
            if (Math.min(link.from(), link.to()) < 0 || Math.max(link.from(), link.to()) >= nodes) {
                throw new IllegalArgumentException("no such nodes: " + link);
            }
        }
    }

    /** Returns a closed loop, from which nothing is withdrawn. */
    public static Network closed(int nodes, int source, List<Link> links, Scale scale) {
        return new Network(nodes, source, links, new double[nodes], scale);
    }

    /** Returns what is taken out at each node. */
    @Override
    public double[] withdrawals() {
        return withdrawals.clone();
    }
}
