package headrace.energy;

import headrace.problem.Problem;

/** What can be wrong with a load profile or a comparison, and what these can have to say about themselves. */
public enum EnergyProblem implements Problem {
    /** A bin of a load profile that cannot be. */
    IMPOSSIBLE_BIN,
    /** A load profile without bins, without hours, or with more hours than a year has. */
    IMPOSSIBLE_PROFILE,
    /** Bins of the same flow, whose hours were added. */
    REPEATED_BINS,
    /** A comparison of laws that are not made for one design point, or of none. */
    DESIGN_MISSING,
    /** An energy price below 0: a saving of energy is then a loss of money. */
    NEGATIVE_PRICE,
    /** Hours at no flow, in which the pump stands still. */
    PUMP_OFF,
    /** A pump that at full speed does not reach the design point, so that throttling it is no fair baseline. */
    FULL_SPEED_SHORT_OF_DESIGN,
    /** A law that takes less partly because it does not serve every branch. */
    SAVES_BY_NOT_SERVING
}
