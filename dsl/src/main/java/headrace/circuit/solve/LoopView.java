package headrace.circuit.solve;

/** What a closing law sees of the network: flows in m³/s, heads in m above the suction of the pump. */
public interface LoopView {
    /** Returns the flow through the pump. */
    double flow();

    /** Returns the head across the pump. */
    double head();

    /** Returns the flow in a link. */
    double flow(int link);

    /** Returns the head at a node. */
    double headAt(int node);

    /** Returns the head across a link, {@code head(from) − head(to)}. */
    double headAcross(int link);
}
