package headrace.economics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.control.ControlLaw;
import headrace.curve.Duty;
import headrace.drive.SeparateLosses;
import headrace.economics.StrategyAppraisal.FirstCosts;
import headrace.economics.StrategyAppraisal.Priced;
import headrace.economics.tariff.EnergyRate;
import headrace.economics.tariff.Tariff;
import headrace.energy.LoadBin;
import headrace.energy.LoadProfile;
import headrace.energy.StrategyComparison;
import headrace.energy.YearSaving;
import headrace.pump.KnownPump;
import headrace.record.Basis;
import headrace.units.EnergyPrice;
import headrace.units.Money;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class StrategyAppraisalTest {
    private static final Duty DESIGN = KnownPump.DESIGN;
    private static final Terms TERMS = Terms.over(10, Discounting.real(Ratio.percent(5)));
    private static final FirstCosts COSTS = new FirstCosts(eur(3000), eur(400));
    private static final StrategyComparison COMPARISON = StrategyComparison.of(
            KnownPump.set(SeparateLosses.ASSUMED),
            LoadProfile.of(
                    "a made-up year",
                    List.of(
                            new LoadBin(Ratio.percent(50), Time.hours(4000)),
                            new LoadBin(Ratio.percent(100), Time.hours(1000))),
                    Basis.NONE),
            new EnergyPrice(eur(0.18)),
            List.of(ControlLaw.quadratic(DESIGN, Ratio.percent(40)), ControlLaw.constantHead(DESIGN)));

    @Test
    void every_law_is_weighed_against_both_baselines_with_the_first_cost_of_each() {
        List<StrategyAppraisal> all = StrategyAppraisal.of(COMPARISON, COSTS, TERMS);
        assertEquals(2, all.size());
        for (int i = 0; i < 2; i++) {
            YearSaving throttled = COMPARISON.yearSavings().get(2 * i);
            YearSaving fixed = COMPARISON.yearSavings().get(2 * i + 1);
            assertEquals(throttled.cost(), all.get(i).againstConstantSpeed().saving());
            assertEquals(fixed.cost(), all.get(i).againstFixedSpeed().saving());
            assertEquals(
                    3000 / throttled.cost().amount(),
                    all.get(i)
                            .againstConstantSpeed()
                            .simplePayback()
                            .orElseThrow()
                            .toYears(),
                    1e-9);
            assertEquals(
                    400 / fixed.cost().amount(),
                    all.get(i).againstFixedSpeed().simplePayback().orElseThrow().toYears(),
                    1e-9);
        }
    }

    /** 0.5·0.30 + 0.5·0.10 = 0.20 for 1 kWh instead of 0.18. */
    @Test
    void a_load_in_bins_is_priced_by_shares_that_are_said() {
        Tariff tariff = Tariff.of(
                "two prices",
                List.of(
                        EnergyRate.at("day", new EnergyPrice(eur(0.30))).between(7, 19),
                        EnergyRate.at("night", new EnergyPrice(eur(0.10)))));
        Priced priced = new Priced(tariff, Map.of("day", Ratio.percent(50), "night", Ratio.percent(50)));
        Appraisal flat = StrategyAppraisal.of(COMPARISON, COSTS, TERMS).get(0).againstFixedSpeed();
        Appraisal shared =
                StrategyAppraisal.of(COMPARISON, COSTS, TERMS, priced).get(0).againstFixedSpeed();
        assertEquals(flat.saving().amount() * 0.20 / 0.18, shared.saving().amount(), 1e-9);
        assertTrue(shared.notes().has(EconomicsProblem.SHARES_OF_ENERGY_STATED));
        assertTrue(shared.basis().choices().stream().anyMatch(line -> line.contains("two prices")));
    }

    private static Money eur(double amount) {
        return new Money(amount, "EUR");
    }
}
