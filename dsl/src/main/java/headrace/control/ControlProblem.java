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
    MAXIMUM_SPEED_REACHED
}
