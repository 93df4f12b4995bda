package headrace.control.staging;

import headrace.problem.Problem;

/** What can be wrong with the staging of pumps, and what it can have to say about itself. */
public enum StagingProblem implements Problem {
    /** A number of pumps that cannot be staged. */
    IMPOSSIBLE_STAGING,
    /** A law that asks for no head of flow alone, so that a total flow does not say what the pumps must give. */
    STAGING_WITHOUT_HEAD_LAW,
    /** Pumps that together do not reach the design point. */
    PLANT_SHORT_OF_DESIGN,
    /** The least stable flow of a pump beside another, taken as assumed. */
    STABLE_FLOW_ASSUMED,
    /** A rule of staging that cannot be. */
    IMPOSSIBLE_STAGING_RULE
}
