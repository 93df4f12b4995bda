package headrace.circuit.part;

/** Which way a part lets the liquid pass. */
public enum Passage {
    /** Either way. */
    BOTH_WAYS,
    /** Forward only, as a check valve: its law at no flow is the head that opens it. */
    FORWARD
}
