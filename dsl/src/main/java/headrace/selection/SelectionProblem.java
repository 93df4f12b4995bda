package headrace.selection;

import headrace.problem.Problem;

/** What can be wrong with a choice of pumps, and why a candidate can be dropped. */
public enum SelectionProblem implements Problem {
    /** No candidate at all. */
    NO_CANDIDATES,
    /** A wish that no pump can be held against. */
    IMPOSSIBLE_WISH,
    /** No standard motor is large enough. */
    NO_MOTOR_LARGE_ENOUGH,
    /** No motor of 2 to 8 poles turns at the speed of the test. */
    NO_MOTOR_FOR_SPEED,
    /** The duty needs a speed outside that of the motor. */
    DUTY_BEYOND_SPEED,
    /** The duty lies outside the allowable operating region. */
    DUTY_OUTSIDE_REGION,
    /** A flow of the year lies outside the tested range. */
    LOAD_BEYOND_TEST,
    /** The NPSH available is too little. */
    NPSH_NOT_MET,
    /** No minimum head passes the rule and serves every branch. */
    WINDOW_EMPTY,
    /** A candidate's NPSH was not held against anything. */
    NPSH_NOT_JUDGED,
    /** All candidates were dropped. */
    NOBODY_LEFT
}
