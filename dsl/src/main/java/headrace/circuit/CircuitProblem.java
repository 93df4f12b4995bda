package headrace.circuit;

import headrace.problem.Problem;

/** What can be wrong with a circuit. */
public enum CircuitProblem implements Problem {
    /** A system curve that cannot be. */
    IMPOSSIBLE_SYSTEM_CURVE,
    /** A flow in a circuit that is below 0. */
    NEGATIVE_SYSTEM_FLOW
}
