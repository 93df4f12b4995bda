package headrace.economics;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Money;
import headrace.units.Ratio;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Life-cycle costs side by side.
 *
 * @param all the costs; the first one is what the others are held against
 */
public record LifeCycleComparison(List<LifeCycleCost> all) implements Traced {
    /** Refuses costs over different times or at different rates, and none. */
    public LifeCycleComparison {
        List<LifeCycleCost> given = List.copyOf(all);
        all = given;
        boolean alike = !given.isEmpty()
                && given.stream()
                        .allMatch(cost -> cost.years() == given.get(0).years()
                                && cost.discounting().equals(given.get(0).discounting()));
        if (!alike) {
            throw new Refusal(
                    EconomicsProblem.IMPOSSIBLE_TERM,
                    "Asked to compare " + all.size() + " life-cycle costs",
                    "There must be at least one, and all must run over the same years at the same discount rate",
                    "Make them with the same years and rate");
        }
    }

    /** Returns the one that costs least. */
    public LifeCycleCost least() {
        return all.stream()
                .min(Comparator.comparing(LifeCycleCost::presentValue))
                .orElseThrow();
    }

    /** Returns what one saves in present value against the first. */
    public Money saved(LifeCycleCost cost) {
        return all.get(0).presentValue().minus(cost.presentValue());
    }

    /**
     * Returns what is saved later over what is paid more at once, both against the first; nothing if no more is paid at
     * once.
     */
    public Optional<Ratio> savingToInvestment(LifeCycleCost cost) {
        CashFlow extra = cost.flow().minus(all.get(0).flow());
        double outlay = -extra.in(0).amount();
        return outlay > 0 ? Optional.of(Ratio.of((saved(cost).amount() + outlay) / outlay)) : Optional.empty();
    }

    @Override
    public Notes notes() {
        return all.stream().map(LifeCycleCost::notes).reduce(Notes.NONE, Notes::and);
    }

    @Override
    public Basis basis() {
        return all.stream().map(LifeCycleCost::basis).reduce(Basis.NONE, Basis::and);
    }

    @Override
    public String toString() {
        return String.join("\n", all.stream().map(LifeCycleCost::toString).toList());
    }
}
