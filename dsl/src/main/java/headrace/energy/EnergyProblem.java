package headrace.energy;

import headrace.problem.Problem;

/** What can be wrong with a load profile or a comparison, and what these can have to say about themselves. */
public enum EnergyProblem implements Problem {
    /** A bin of a load profile that cannot be. */
    IMPOSSIBLE_BIN,
    /** A load profile without bins, without hours, or with more hours than a year has. */
    IMPOSSIBLE_PROFILE,
    /** Bins of the same flow, whose hours were added. */
    REPEATED_BINS
}
