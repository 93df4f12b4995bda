package headrace.economics.tariff;

import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Energy;
import headrace.units.Money;
import java.util.List;
import java.util.function.Function;

/**
 * What a year of powers costs under a tariff, month by month.
 *
 * @param tariff the tariff
 * @param powers what was billed
 * @param months the months, January first
 * @param notes what was touched
 * @param basis what it rests on
 */
public record Bill(Tariff tariff, String powers, List<BilledMonth> months, Notes notes, Basis basis) implements Traced {
    /** Keeps the months from changing. */
    public Bill {
        months = List.copyOf(months);
    }

    /** Returns the energy of the year. */
    public Energy energy() {
        return months.stream().map(BilledMonth::energy).reduce(Energy.ZERO, Energy::plus);
    }

    /** Returns what the energy costs. */
    public Money energyCost() {
        return sum(BilledMonth::energyCost);
    }

    /** Returns what the demand costs. */
    public Money demandCost() {
        return sum(month -> month.demand().cost());
    }

    /** Returns the fixed charges. */
    public Money fixed() {
        return sum(BilledMonth::fixed);
    }

    /** Returns what the year costs. */
    public Money total() {
        return sum(BilledMonth::total);
    }

    private Money sum(Function<BilledMonth, Money> part) {
        return months.stream().map(part).reduce(Money::plus).orElseThrow();
    }

    @Override
    public String toString() {
        return powers + " under " + tariff.name() + ": " + energy() + ", " + total() + " (energy " + energyCost()
                + ", demand " + demandCost() + ", fixed " + fixed() + ")";
    }
}
