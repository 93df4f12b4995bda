package headrace.economics.tariff;

import headrace.units.Energy;
import headrace.units.Money;
import headrace.units.Power;
import java.time.Month;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A month of a bill.
 *
 * @param month the month
 * @param byRate the energy at each rate, in the order of the tariff
 * @param energyCost what it costs
 * @param demand the demand
 * @param fixed the fixed charge
 */
public record BilledMonth(Month month, Map<String, Energy> byRate, Money energyCost, Demand demand, Money fixed) {
    /**
     * The demand of a month.
     *
     * @param highest the highest mean of the month
     * @param billed the demand that is billed, by a ratchet more than the highest; 0 without a demand charge
     * @param cost what it costs
     */
    public record Demand(Power highest, Power billed, Money cost) {}

    /** Keeps the energies from changing. */
    public BilledMonth {
        byRate = Collections.unmodifiableMap(new LinkedHashMap<>(byRate));
    }

    /** Returns the energy of the month. */
    public Energy energy() {
        return byRate.values().stream().reduce(Energy.ZERO, Energy::plus);
    }

    /** Returns what the month costs. */
    public Money total() {
        return energyCost.plus(demand.cost()).plus(fixed);
    }
}
