package headrace.control;

/** What a control law has to know of the loop, measured or estimated. */
public enum Observed {
    /** The flow through the pump. */
    FLOW,
    /** The head of the pump. */
    PUMP_HEAD,
    /** The head across branches, by sensors out in the circuit. */
    BRANCH_HEAD,
    /** How far the valves of the branches stand open. */
    VALVE_OPENING,
    /** The clock of the place. */
    CLOCK
}
