package headrace.economics;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Energy;
import headrace.units.Mass;
import headrace.units.Ratio;

/**
 * The carbon dioxide that belongs to an energy from the wire, year after year.
 *
 * <dl>
 *   <dt>Units
 *   <dd>A factor in mass of CO₂ equivalent for 1 kWh.
 *   <dt>Limits
 *   <dd>1 to 200 years. Two totals are given: with the grid as it is, and with a grid whose factor falls by a share
 *       each year after the first.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_TERM} or {@code IMPOSSIBLE_YEARS}.
 *   <dt>Source
 *   <dd>The factor's, which is stated by the user.
 * </dl>
 *
 * @param energy the energy of a year
 * @param factor the factor of the grid
 * @param years over how many years
 */
public record Carbon(Energy energy, Factor factor, int years) implements Traced {
    /**
     * What the grid emits.
     *
     * @param perKilowattHour for 1 kWh in year 1
     * @param decline by which share it falls each year after
     * @param source where it comes from, with place and year, and whether it is a mean or a marginal factor
     */
    public record Factor(Mass perKilowattHour, Ratio decline, String source) {
        /** Refuses a factor below 0 and a decline outside 0 to 100 %. */
        public Factor {
            if (perKilowattHour.si() < 0 || decline.value() < 0 || decline.value() > 1) {
                throw new Refusal(
                        EconomicsProblem.IMPOSSIBLE_TERM,
                        "Asked for a grid of " + perKilowattHour + " for 1 kWh that falls by " + decline + " a year",
                        "The factor must be 0 or more, and its decline from 0 to 100 %",
                        "Correct the factor");
            }
        }
    }

    /** Refuses a time that cannot be. */
    public Carbon {
        Factors.years(years);
    }

    /** Returns what belongs to year 1. */
    public Mass firstYear() {
        return factor.perKilowattHour().times(energy.toKilowattHours());
    }

    /** Returns what belongs to all years, with the grid as it is. */
    public Mass total() {
        return firstYear().times(years);
    }

    /** Returns what belongs to all years, with a grid that gets cleaner. */
    public Mass totalWithDecline() {
        return firstYear().times(Factors.geometricSum(1 - factor.decline().value(), years));
    }

    @Override
    public Notes notes() {
        return Notes.NONE;
    }

    @Override
    public Basis basis() {
        return Basis.of("carbon factor: " + factor.perKilowattHour() + " for 1 kWh, falling " + factor.decline()
                + " a year, " + factor.source());
    }

    @Override
    public String toString() {
        return firstYear() + " a year, " + total() + " in " + years + " years with the grid as it is, "
                + totalWithDecline() + " with one that falls by " + factor.decline() + " a year";
    }
}
