package headrace.operation;

import headrace.problem.Problem;

/** What can be wrong with an operating point. */
public enum OperationProblem implements Problem {
    /** A duty that the pump set delivers only at a speed outside its range. */
    DUTY_OUTSIDE_SPEED_RANGE,
    /** A system curve that the pump meets nowhere. */
    NO_OPERATING_POINT
}
