package headrace.economics;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Money;
import java.util.List;

/**
 * What something costs over its life, all of it at its present value.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Costs in today's money, discounted at the real rate.
 *   <dt>Limits
 *   <dd>1 to 200 years; payments at the end of a year, a cost after the last year does not count, which is noted.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_YEARS}, or {@code MEANINGLESS_ARITHMETIC} if currencies differ.
 *   <dt>Source
 *   <dd>Hydraulic Institute, Europump and US DOE, Pump Life Cycle Costs, Executive Summary, DOE/GO-102001-1190, 2001;
 *       NIST Handbook 135, 1995.
 * </dl>
 *
 * @param name what is bought
 * @param items its costs
 * @param years how long it is kept
 * @param discounting the discount rate
 */
public record LifeCycleCost(String name, List<CostItem> items, int years, Discounting discounting) implements Traced {
    /** Keeps the items from changing; refuses none and a time that cannot be. */
    public LifeCycleCost {
        Factors.years(years);
        items = List.copyOf(items);
        if (items.isEmpty()) {
            throw new Refusal(
                    EconomicsProblem.IMPOSSIBLE_TERM,
                    "Asked for the life-cycle cost of '" + name + "' without any cost",
                    "It is the sum of at least one cost",
                    "Give the first cost, the energy of a year and the upkeep");
        }
    }

    /** Returns the present value of one of the costs. */
    public Money presentValue(CostItem item) {
        double growth = 1 + discounting.real().value();
        double sum = 0;
        for (int year = 0; year <= years; year++) {
            sum += item.in(year) * Math.pow(growth, -year);
        }
        return new Money(sum, item.today().currency());
    }

    /** Returns the present value of all costs. */
    public Money presentValue() {
        return items.stream().map(this::presentValue).reduce(Money::plus).orElseThrow();
    }

    /** Returns the yearly amount, in today's money, that is worth the same. */
    public Money yearly() {
        return presentValue().times(Factors.capitalRecovery(discounting.real(), years));
    }

    /** Returns the costs by year in today's money, as outlays. */
    public CashFlow flow() {
        double[] amounts = new double[years + 1];
        for (CostItem item : items) {
            for (int year = 0; year <= years; year++) {
                amounts[year] -= item.in(year);
            }
        }
        return CashFlow.of(presentValue().currency(), amounts);
    }

    @Override
    public Notes notes() {
        Notes notes = discounting.notes();
        for (CostItem item : items) {
            if (!item.fallsDueWithin(years)) {
                notes = notes.with(
                        EconomicsProblem.COST_AFTER_STUDY,
                        "'" + item.name() + "', " + item.when() + ", falls due after the " + years
                                + " years of the study and counts nothing");
            }
        }
        return notes;
    }

    @Override
    public Basis basis() {
        Basis basis = Basis.of("life-cycle cost over " + years + " years, discounted at " + discounting
                + ", costs in today's money at the end of a year");
        for (CostItem item : items) {
            basis = basis.with(name + ": " + item);
        }
        return basis;
    }

    @Override
    public String toString() {
        return name + ": " + presentValue() + " over " + years + " years, " + yearly() + " a year";
    }
}
