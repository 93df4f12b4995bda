package headrace.control;

import headrace.problem.Problem;

/** What can be wrong with a control law, and what its steady state can have to say about itself. */
public enum ControlProblem implements Problem {
    /** A minimum head below 0 or above the design head, or an exponent that no law has. */
    IMPOSSIBLE_LAW,
    /** A state of the loop that cannot be. */
    IMPOSSIBLE_LOOP_STATE,
    /** The law asks for less than the pump gives at its least speed. */
    MINIMUM_SPEED_REACHED,
    /** The law asks for more than the pump gives at its greatest speed. */
    MAXIMUM_SPEED_REACHED,
    /** The law asks for more than its greatest wire power gives. */
    MAXIMUM_POWER_REACHED,
    /** The circuit asks for more flow than the law lets through. */
    MAXIMUM_FLOW_REACHED,
    /** The circuit asks for less flow than the law keeps moving. */
    MINIMUM_FLOW_KEPT,
    /** A law of the user's own answered with nothing, or with what is neither a head nor a speed. */
    WRONG_ANSWER_OF_LAW,
    /** A law of the user's own asks for less head as flow rises. */
    LAW_NOT_MONOTONE,
    /** A law that makes no head of flow alone was asked for one. */
    NO_HEAD_OF_FLOW,
    /** A law asked for something of the circuit that it does not see. */
    NOTHING_SEEN_OF_CIRCUIT,
    /** A law that looks at the circuit was used without one. */
    LAW_NEEDS_CIRCUIT,
    /** A law and a circuit whose equations were not met in some hour. */
    LAW_NOT_SOLVED
}
