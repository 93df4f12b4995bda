package headrace.economics;

import headrace.economics.StrategyAppraisal.FirstCosts;
import headrace.economics.tariff.PowerSeries;
import headrace.economics.tariff.Tariff;
import headrace.energy.Baseline;
import headrace.energy.year.CircuitYear;
import headrace.energy.year.LawHours;
import headrace.energy.year.LawSaving;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.units.Money;
import java.util.List;
import java.util.function.Function;

/**
 * What the laws of a year of a circuit are worth against both baselines.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Money in the currency of the price or tariff.
 *   <dt>Limits
 *   <dd>A tariff takes the calendar year of the load, and its saving is the difference of two bills, demand included.
 *   <dt>Errors
 *   <dd>As {@link Appraisal#of} and {@link Tariff#bill}.
 *   <dt>Source
 *   <dd>Textbook knowledge.
 * </dl>
 */
public final class CircuitAppraisal {
    private CircuitAppraisal() {}

    /** Returns what each law is worth at the price of the year. */
    public static List<StrategyAppraisal> of(CircuitYear year, FirstCosts costs, Terms terms) {
        Basis price = Basis.of("price of the saved energy " + year.price());
        return appraised(year, new Question(costs, terms, saving -> saving.worth(year.price()), Notes.NONE, price));
    }

    /** Returns what each law is worth under a tariff, as the difference of the bills of the year. */
    public static List<StrategyAppraisal> of(CircuitYear year, FirstCosts costs, Terms terms, Tariff tariff) {
        Basis told = Basis.of("saving as the difference of two bills under the tariff " + tariff);
        return appraised(
                year,
                new Question(
                        costs,
                        terms,
                        saving -> billed(year, saving.before(), tariff).minus(billed(year, saving.after(), tariff)),
                        tariff.notes(),
                        told));
    }

    private static Money billed(CircuitYear year, LawHours hours, Tariff tariff) {
        int calendar = year.year().load().start().getYear();
        return tariff.bill(PowerSeries.of(hours.law().name(), calendar, hours.hourly(), hours))
                .total();
    }

    private record Question(FirstCosts costs, Terms terms, Function<LawSaving, Money> worth, Notes notes, Basis basis) {
        Appraisal of(CircuitYear year, LawSaving saving) {
            boolean mains = saving.baseline() == Baseline.CONSTANT_SPEED;
            return Appraisal.of(
                    saving.after().law().name() + " against "
                            + saving.baseline().words(),
                    mains ? costs.beyondConstantSpeed() : costs.beyondFixedSpeed(),
                    worth.apply(saving),
                    terms,
                    saving.after().notes().and(notes),
                    year.basis()
                            .and(basis)
                            .with("saving against: " + saving.baseline().words()));
        }
    }

    private static List<StrategyAppraisal> appraised(CircuitYear year, Question question) {
        List<LawSaving> savings = year.savings();
        return year.laws().stream()
                .map(law -> new StrategyAppraisal(
                        law.law().name(),
                        question.of(year, saving(savings, law, Baseline.CONSTANT_SPEED)),
                        question.of(year, saving(savings, law, Baseline.FIXED_DESIGN_SPEED))))
                .toList();
    }

    private static LawSaving saving(List<LawSaving> savings, LawHours law, Baseline baseline) {
        return savings.stream()
                .filter(each -> each.baseline() == baseline && each.after() == law)
                .findFirst()
                .orElseThrow();
    }
}
