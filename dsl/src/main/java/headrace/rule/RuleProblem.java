package headrace.rule;

import headrace.problem.Problem;

/** What can be wrong with a rule or its use, and what a verdict can have to say about itself. */
public enum RuleProblem implements Problem {
    /** A rule whose thresholds cannot be. */
    IMPOSSIBLE_RULE,
    /** A loss model that keeps the efficiency constant, which a part-load rule cannot be judged with. */
    CONSTANT_EFFICIENCY_REFUSED,
    /** A law that is made for no design point, where the design wattage is not defined without one. */
    RULE_WITHOUT_DESIGN,
    /** A motor below the size from which the rule binds. */
    RULE_NOT_BINDING,
    /** The largest minimum head for no loss model. */
    NOTHING_TO_JUDGE,
    /** A largest minimum head that the tested range of the pump limits, not the rule. */
    LIMITED_BY_TESTED_RANGE
}
