package headrace.circuit.solve;

/** Where on its law a link stands. */
public enum LinkState {
    /** On its law; of a terminal: fully open. */
    OPEN,
    /** Shut against a head that would drive the liquid back: no flow. */
    SHUT,
    /** At the flow that is asked for, with head to spare. */
    DELIVERING,
    /** Out of the network: nothing is asked for, or it leads nowhere. */
    REMOVED
}
