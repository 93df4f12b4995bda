package headrace.economics.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.economics.Appraisal;
import headrace.economics.Discounting;
import headrace.economics.EconomicsProblem;
import headrace.economics.Terms;
import headrace.economics.study.PaybackModel.PartReplacement;
import headrace.problem.Refusal;
import headrace.units.Money;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PaybackStudyTest {
    private static final int DRAWS = 100_000;
    private static final Ratio MIDDLE = Ratio.percent(50);

    /** 10 kW over 5000 h at 0.2: 10 000 a year; 60 % saved 6000; fixed speed takes 80 %, so 40 % saved, 4000. */
    private static final PaybackStudy FIXED = PaybackStudy.of("EUR", fixed(), PaybackModel.over(15));

    @Test
    void without_spreads_every_draw_is_the_simple_calculation_against_both_baselines() {
        PaybackRange range = FIXED.draw(1, 700);
        Terms terms = Terms.over(15, Discounting.real(Ratio.percent(6)))
                .escalating(Ratio.percent(2))
                .upkeep(eur(100), Ratio.ZERO);
        assertSame(Appraisal.of("", eur(8000), eur(6000), terms), range.againstConstantSpeed());
        assertSame(Appraisal.of("", eur(8000), eur(4000), terms), range.againstFixedSpeed());
    }

    @Test
    void growing_upkeep_and_a_replacement_stand_where_the_simple_calculation_has_them() {
        PartReplacement part = new PartReplacement(11, Ratio.percent(45), Ratio.percent(1.5));
        PaybackRange range =
                FIXED.with(new PaybackModel(15, Ratio.percent(2), 0, part)).draw(1, 700);
        Terms terms = Terms.over(15, Discounting.real(Ratio.percent(6)))
                .escalating(Ratio.percent(2))
                .upkeep(eur(100), Ratio.percent(2))
                .replacing(11, eur(0.45 * 8000), Ratio.percent(1.5));
        assertSame(Appraisal.of("", eur(8000), eur(6000), terms), range.againstConstantSpeed());
    }

    /**
     * A last block of 700 − 512 draws must be drawn like any other: a payback of 1000 to 3000 over a saving of 1000.
     */
    @Test
    void a_spread_of_first_costs_is_the_spread_of_the_payback() {
        PaybackStudy study = spreadCost(Spread.uniform(1000, 3000));
        Outcomes many = study.draw(7, DRAWS).againstConstantSpeed();
        assertEquals(0.5, many.probabilityOfPaybackBelow(Time.years(2)).value(), 0.005);
        assertEquals(1.2, years(many.simplePayback(Ratio.percent(10))), 0.01);
        assertEquals(2.9, years(many.simplePayback(Ratio.percent(95))), 0.01);
        Outcomes few = study.draw(7, 700).againstConstantSpeed();
        assertEquals(2, years(few.meanSimplePayback()), 0.08);
        assertEquals(0, few.withoutRate());
    }

    /** Mean (1 + 2 + 6)/3 = 3; below the mode 2 lies (2 − 1)/(6 − 1) = 20 %. */
    @Test
    void a_triangle_has_its_mean_and_its_mode() {
        Outcomes outcomes =
                spreadCost(Spread.triangular(1000, 2000, 6000)).draw(3, DRAWS).againstConstantSpeed();
        assertEquals(3, years(outcomes.meanSimplePayback()), 0.012);
        assertEquals(0.2, outcomes.probabilityOfPaybackBelow(Time.years(2)).value(), 0.004);
    }

    /** Normal: 2.5 % below the mean less 1.959964 deviations. */
    @Test
    void a_normal_spread_has_its_quantiles() {
        Outcomes outcomes = spreadCost(Spread.normal(2000, 100)).draw(3, DRAWS).againstConstantSpeed();
        assertEquals(2 - 0.1959964, years(outcomes.simplePayback(Ratio.percent(2.5))), 0.003);
        assertEquals(2, years(outcomes.simplePayback(MIDDLE)), 0.002);
    }

    /** The mean of the price itself is 0.2, so that the mean present value is that of the fixed price. */
    @Test
    void a_log_normal_price_keeps_its_mean() {
        Outcomes spread = FIXED.with(Driver.PRICE, Spread.logNormal(0.2, 0.3))
                .draw(5, DRAWS)
                .againstConstantSpeed();
        Outcomes fixed = FIXED.draw(5, 100).againstConstantSpeed();
        double worth = fixed.meanNetPresentValue().amount() + 8000;
        assertEquals(
                fixed.meanNetPresentValue().amount(),
                spread.meanNetPresentValue().amount(),
                0.005 * worth);
    }

    /**
     * Over two years without discount the present value is S·p·(2 + e). A price within 1 % moves it by 0.02·S, a rise
     * within 2 points by 0.02·S: together they add to 0.04, apart they cancel, free of one another they give √2·0.02.
     */
    @Test
    void price_and_rise_are_correlated_as_stated() {
        Map<Driver, Spread> spreads = fixed();
        spreads.put(Driver.UPKEEP, Spread.fixed(0));
        spreads.put(Driver.PRICE, Spread.normal(0.2, 0.002));
        spreads.put(Driver.ESCALATION, Spread.normal(0, 0.02));
        spreads.put(Driver.DISCOUNT, Spread.fixed(0));
        double[] expected = {0.04, Math.hypot(0.02, 0.02), 0};
        double[] correlations = {1, 0, -1};
        for (int i = 0; i < 3; i++) {
            PaybackModel model = new PaybackModel(2, Ratio.ZERO, correlations[i], PartReplacement.NONE);
            Outcomes outcomes =
                    PaybackStudy.of("", spreads, model).draw(11, DRAWS).againstConstantSpeed();
            double relative = outcomes.deviationOfNetPresentValue().amount() / 6000;
            assertEquals(expected[i], relative, 0.0006, "correlation " + correlations[i]);
        }
    }

    /** The lowest tenth of 1000 to 3000 is 1100 on average, the highest 2900; the hours move nothing. */
    @Test
    void drivers_are_ranked_by_what_they_do_in_the_same_draws() {
        PaybackStudy study = spreadCost(Spread.uniform(1000, 3000)).with(Driver.UPKEEP, Spread.uniform(0, 10));
        PaybackRange range = study.draw(2, DRAWS);
        List<DriverRank> ranks = range.drivers(range.againstConstantSpeed());
        assertEquals(
                List.of(Driver.FIRST_COST, Driver.UPKEEP),
                ranks.stream().map(DriverRank::driver).toList());
        assertEquals(1800, ranks.get(0).swing().amount(), 20);
        assertTrue(ranks.get(0).atLow().compareTo(ranks.get(0).atHigh()) > 0);
        assertEquals(1200, ranks.get(0).tenth(), 10);
    }

    @Test
    void a_seed_gives_the_same_numbers_again_and_another_seed_gives_others() {
        PaybackStudy study = spreadCost(Spread.uniform(1000, 3000));
        double first =
                study.draw(1, 1000).againstFixedSpeed().meanNetPresentValue().amount();
        assertEquals(
                first,
                study.draw(1, 1000).againstFixedSpeed().meanNetPresentValue().amount());
        assertNotEquals(
                first,
                study.draw(2, 1000).againstFixedSpeed().meanNetPresentValue().amount());
    }

    /** Fixed speed takes 30 % and the law saves 60 %, so that it takes 10 points more than fixed speed. */
    @Test
    void a_draw_that_never_pays_back_counts_as_longer_than_any_other() {
        Outcomes never =
                FIXED.with(Driver.FIXED_SPEED, Spread.fixed(0.3)).draw(1, 100).againstFixedSpeed();
        assertTrue(never.simplePayback(MIDDLE).isEmpty());
        assertTrue(never.internalRate(MIDDLE).isEmpty());
        assertEquals(100, never.withoutRate());
        assertEquals(0, never.probabilityOfPaybackBelow(Time.years(1000)).value());
        assertEquals(0, never.probabilityOfGain().value());
        assertFalse(never.toString().contains("NaN"));
        PaybackRange range = FIXED.with(Driver.FIXED_SPEED, Spread.fixed(0.3)).draw(1, 100);
        assertTrue(range.notes().has(EconomicsProblem.DRAWS_WITHOUT_RATE));
    }

    @Test
    void what_cannot_be_drawn_is_refused() {
        assertThrows(Refusal.class, () -> Spread.triangular(3, 2, 4));
        assertThrows(Refusal.class, () -> Spread.logNormal(0, 0.1));
        assertThrows(Refusal.class, () -> Spread.normal(1, Double.NaN));
        assertThrows(Refusal.class, () -> FIXED.draw(1, 10));
        assertThrows(Refusal.class, () -> FIXED.with(Driver.FIRST_COST, Spread.fixed(0)));
        assertThrows(Refusal.class, () -> PaybackStudy.of("", Map.of(), PaybackModel.over(15)));
        assertThrows(Refusal.class, () -> new PaybackModel(15, Ratio.ZERO, 1.1, PartReplacement.NONE));
        assertThrows(Refusal.class, () -> PaybackModel.over(1));
    }

    private static void assertSame(Appraisal expected, Outcomes outcomes) {
        for (double share : new double[] {0, 0.5, 1}) {
            Ratio at = Ratio.of(share);
            assertEquals(years(expected.simplePayback()), years(outcomes.simplePayback(at)), 1e-12);
            assertEquals(years(expected.discountedPayback()), years(outcomes.discountedPayback(at)), 1e-12);
            assertEquals(
                    expected.netPresentValue().amount(),
                    outcomes.netPresentValue(at).amount(),
                    1e-8);
            assertEquals(
                    expected.internalRates().only().orElseThrow().value(),
                    outcomes.internalRate(at).orElseThrow().value(),
                    1e-11);
        }
    }

    private static PaybackStudy spreadCost(Spread cost) {
        Map<Driver, Spread> spreads = fixed();
        spreads.put(Driver.FIRST_COST, cost);
        spreads.put(Driver.PRICE, Spread.fixed(1.0 / 30));
        spreads.put(Driver.UPKEEP, Spread.fixed(0));
        return PaybackStudy.of("EUR", spreads, PaybackModel.over(15));
    }

    private static Map<Driver, Spread> fixed() {
        Map<Driver, Spread> spreads = new EnumMap<>(Driver.class);
        spreads.put(Driver.PRICE, Spread.fixed(0.2));
        spreads.put(Driver.ESCALATION, Spread.fixed(0.02));
        spreads.put(Driver.HOURS, Spread.fixed(5000));
        spreads.put(Driver.POWER, Spread.fixed(10));
        spreads.put(Driver.SAVED, Spread.fixed(0.6));
        spreads.put(Driver.FIXED_SPEED, Spread.fixed(0.8));
        spreads.put(Driver.REALISATION, Spread.fixed(1));
        spreads.put(Driver.FIRST_COST, Spread.fixed(8000));
        spreads.put(Driver.UPKEEP, Spread.fixed(100));
        spreads.put(Driver.DISCOUNT, Spread.fixed(0.06));
        return spreads;
    }

    private static double years(Optional<Time> time) {
        return time.orElseThrow().toYears();
    }

    private static Money eur(double amount) {
        return new Money(amount, "EUR");
    }
}
