package headrace.circuit.solve;

/**
 * How a network stands.
 *
 * @param flows the flow in each link in m³/s
 * @param heads the head at each node in m above the suction of the pump
 * @param states where on its law each link stands
 * @param pump the flow through the pump in m³/s and its head in m
 * @param residuals how exactly the equations hold
 * @param iterations how many linear systems were solved
 * @param converged whether the residuals are within the tolerance
 */
public record NetworkSolution(
        double[] flows,
        double[] heads,
        LinkState[] states,
        Pump pump,
        Residuals residuals,
        int iterations,
        boolean converged) {
    /**
     * Where the pump stands.
     *
     * @param cubicMetresPerSecond its flow
     * @param metres its head
     */
    public record Pump(double cubicMetresPerSecond, double metres) {}

    /**
     * How exactly the equations hold.
     *
     * @param energyMetres the greatest difference between a law and the head across its link
     * @param worstLink the link at which it is
     * @param massCubicMetresPerSecond the greatest imbalance of a node
     * @param closingMetres by how much the head at the pump differs from what the closing law asks for
     */
    public record Residuals(
            double energyMetres, int worstLink, double massCubicMetresPerSecond, double closingMetres) {}

    /** Copies the arrays. */
    public NetworkSolution {
        flows = flows.clone();
        heads = heads.clone();
        states = states.clone();
    }

    /** Returns the flow in each link. */
    @Override
    public double[] flows() {
        return flows.clone();
    }

    /** Returns the head at each node. */
    @Override
    public double[] heads() {
        return heads.clone();
    }

    /** Returns where on its law each link stands. */
    @Override
    public LinkState[] states() {
        return states.clone();
    }

    /** Returns the flow in a link in m³/s. */
    public double flow(int link) {
        return flows[link];
    }

    /** Returns the head at a node in m. */
    public double headAt(int node) {
        return heads[node];
    }

    /** Returns where on its law a link stands. */
    public LinkState state(int link) {
        return states[link];
    }
}
