package headrace.operation.suction;

import headrace.problem.Problem;

/** What can be wrong with a suction side or a pressure, and what they can have to say. */
public enum SuctionProblem implements Problem {
    /** An altitude for which the pressure of the air is not known. */
    ALTITUDE_OUT_OF_RANGE,
    /** A suction side that cannot be: no pressure of the air, a bore of nothing. */
    IMPOSSIBLE_SUCTION,
    /** A margin of NPSH below 1 times or below 0. */
    IMPOSSIBLE_MARGIN,
    /** A filling that cannot be. */
    IMPOSSIBLE_FILLING,
    /** A highest working pressure of nothing. */
    IMPOSSIBLE_PRESSURE,
    /** A margin of NPSH that nobody stated. */
    NPSH_MARGIN_ASSUMED,
    /** An NPSH available that lies below what is required with its margin. */
    NPSH_MARGIN,
    /** A pressure below that at which the liquid boils. */
    BELOW_VAPOUR_PRESSURE,
    /** A tank on the discharge side, which lets the suction pressure fall by the head of the pump. */
    TANK_ON_DISCHARGE_SIDE,
    /** A pressure margin of a filling that nobody stated. */
    FILLING_MARGIN_ASSUMED,
    /** A highest working pressure above what a part bears. */
    OVER_RATING
}
