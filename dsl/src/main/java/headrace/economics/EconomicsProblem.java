package headrace.economics;

import headrace.problem.Problem;

/** What can be wrong with a question of money, and what its answers can have to say about themselves. */
public enum EconomicsProblem implements Problem {
    /** A rate of −100 % or less. */
    IMPOSSIBLE_RATE,
    /** A cash flow of no years or of too many, or an event outside its years. */
    IMPOSSIBLE_YEARS,
    /** A share, a probability or a cost that cannot be. */
    IMPOSSIBLE_TERM,
    /** A discount rate below inflation: money later is worth more than money now. */
    DISCOUNT_BELOW_INFLATION,
    /** A cost that falls due after the last year of a study. */
    COST_AFTER_STUDY,
    /** Energy that the supplier pays for. */
    ENERGY_PRICE_BELOW_ZERO,
    /** No rate at which the present value is 0. */
    NO_INTERNAL_RATE,
    /** More than one rate at which the present value is 0. */
    SEVERAL_INTERNAL_RATES,
    /** A payback that a later cost takes back for a while. */
    PAYBACK_LOST_AGAIN,
    /** A saving that does not pay for its upkeep in the first year. */
    NOTHING_SAVED,
    /** The calculated saving is taken for the real one. */
    REALISATION_NOT_STATED,
    /** A tariff that leaves hours of the year without a price. */
    TARIFF_INCOMPLETE,
    /** A part of a tariff that cannot be. */
    IMPOSSIBLE_TARIFF,
    /** Powers over the year that a tariff cannot bill. */
    IMPOSSIBLE_POWER_SERIES,
    /** Powers that are means over longer times than the demand charge looks at. */
    DEMAND_WINDOW_COARSE,
    /** A price of bins that stands on shares of the energy that were stated. */
    SHARES_OF_ENERGY_STATED,
    /** A spread of a driver that cannot be. */
    IMPOSSIBLE_SPREAD,
    /** Draws whose cash flow has no internal rate. */
    DRAWS_WITHOUT_RATE
}
