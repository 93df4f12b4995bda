package headrace.economics;

import headrace.economics.tariff.Tariff;
import headrace.energy.Baseline;
import headrace.energy.StrategyComparison;
import headrace.energy.YearSaving;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Energy;
import headrace.units.EnergyPrice;
import headrace.units.Money;
import headrace.units.Ratio;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a control law is worth against both baselines: throttling at constant speed, and the fixed speed of the design
 * point. A payback that is quick against one need not be so against the other.
 *
 * <dl>
 *   <dt>Units
 *   <dd>The currency of the price of energy.
 *   <dt>Limits
 *   <dd>One price of energy at every hour, as the comparison has it; demand is not counted.
 *   <dt>Errors
 *   <dd>{@link Refusal} as {@link Appraisal}.
 *   <dt>Source
 *   <dd>The two baselines are a rule of this program.
 * </dl>
 *
 * @param law the name of the law
 * @param againstConstantSpeed against throttling at constant speed
 * @param againstFixedSpeed against fixed design speed
 */
public record StrategyAppraisal(String law, Appraisal againstConstantSpeed, Appraisal againstFixedSpeed)
        implements Traced {

    /**
     * What the change costs at first.
     *
     * @param beyondConstantSpeed more than the pump on the mains
     * @param beyondFixedSpeed more than a drive at fixed design speed
     */
    public record FirstCosts(Money beyondConstantSpeed, Money beyondFixedSpeed) {}

    /**
     * A tariff for a load of which the hours are not known.
     *
     * @param tariff the tariff
     * @param shares the share of the saved energy at each rate, by its name
     */
    public record Priced(Tariff tariff, Map<String, Ratio> shares) {
        /** Keeps the shares in their order. */
        public Priced {
            shares = Collections.unmodifiableMap(new LinkedHashMap<>(shares));
        }

        private Appraisal of(Appraisal flat, Energy saved) {
            EnergyPrice price = tariff.priceFor(shares);
            String told = "price of the saved energy " + price + " from the tariff " + tariff + ", shares " + shares;
            Notes notes = flat.own()
                    .and(tariff.notes())
                    .with(
                            EconomicsProblem.SHARES_OF_ENERGY_STATED,
                            "The load is known in bins without their hours; the saved energy is priced at " + price
                                    + " for the stated shares " + shares);
            return Appraisal.of(
                    flat.name(),
                    flat.firstCost(),
                    price.of(saved),
                    flat.terms(),
                    notes,
                    flat.source().with(told));
        }
    }

    /** Returns what each law of a comparison is worth at the price of the comparison. */
    public static List<StrategyAppraisal> of(StrategyComparison comparison, FirstCosts costs, Terms terms) {
        return comparison.laws().stream()
                .map(law -> new StrategyAppraisal(
                        law.law().name(),
                        appraisal(saving(comparison, law.law().name(), Baseline.CONSTANT_SPEED), costs, terms),
                        appraisal(saving(comparison, law.law().name(), Baseline.FIXED_DESIGN_SPEED), costs, terms)))
                .toList();
    }

    /** Returns what each law of a comparison is worth under a tariff; demand and fixed charges are not counted. */
    public static List<StrategyAppraisal> of(
            StrategyComparison comparison, FirstCosts costs, Terms terms, Priced priced) {
        return of(comparison, costs, terms).stream()
                .map(flat -> new StrategyAppraisal(
                        flat.law(),
                        priced.of(
                                flat.againstConstantSpeed(),
                                saving(comparison, flat.law(), Baseline.CONSTANT_SPEED)
                                        .energy()),
                        priced.of(
                                flat.againstFixedSpeed(),
                                saving(comparison, flat.law(), Baseline.FIXED_DESIGN_SPEED)
                                        .energy())))
                .toList();
    }

    private static YearSaving saving(StrategyComparison comparison, String law, Baseline baseline) {
        return comparison.yearSavings().stream()
                .filter(each ->
                        each.baseline() == baseline && each.after().law().name().equals(law))
                .findFirst()
                .orElseThrow();
    }

    private static Appraisal appraisal(YearSaving saving, FirstCosts costs, Terms terms) {
        Money cost =
                saving.baseline() == Baseline.CONSTANT_SPEED ? costs.beyondConstantSpeed() : costs.beyondFixedSpeed();
        String name =
                saving.after().law().name() + " against " + saving.baseline().words();
        return Appraisal.of(name, cost, saving.cost(), terms, saving.notes(), saving.basis());
    }

    /** Returns both appraisals. */
    public List<Appraisal> both() {
        return List.of(againstConstantSpeed, againstFixedSpeed);
    }

    @Override
    public Notes notes() {
        return againstConstantSpeed.notes().and(againstFixedSpeed.notes());
    }

    @Override
    public Basis basis() {
        return againstConstantSpeed.basis().and(againstFixedSpeed.basis());
    }

    @Override
    public String toString() {
        return againstConstantSpeed + "\n" + againstFixedSpeed;
    }
}
