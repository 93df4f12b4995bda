package headrace.units;

/**
 * A price of energy.
 *
 * @param perKilowattHour what 1 kWh costs
 */
public record EnergyPrice(Money perKilowattHour) {
    /** Returns what this much energy costs. */
    public Money of(Energy energy) {
        return perKilowattHour.times(energy.toKilowattHours());
    }

    @Override
    public String toString() {
        return perKilowattHour + "/kWh";
    }
}
