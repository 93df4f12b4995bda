package headrace.economics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.economics.Realisation.Reason;
import headrace.problem.Refusal;
import headrace.units.Energy;
import headrace.units.Mass;
import headrace.units.Money;
import headrace.units.Ratio;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class AppraisalTest {
    private static final Terms PLAIN = Terms.over(10, Discounting.real(Ratio.percent(5)));

    /** 4200 less a rebate of 200, over 1100 less an upkeep of 100 = 4 years. */
    @Test
    void the_simple_payback_is_the_outlay_over_the_net_saving_of_the_first_year() {
        Terms terms = PLAIN.rebate(eur(200)).upkeep(eur(100), Ratio.percent(2));
        Appraisal appraisal = Appraisal.of("reset", eur(4200), eur(1100), terms);
        assertEquals(4, appraisal.simplePayback().orElseThrow().toYears(), 1e-12);
        assertEquals(4000, appraisal.outlay().amount(), 1e-12);
    }

    /**
     * All terms at once, each year by hand: saving·share·1.03^(t−1) − 100·1.02^(t−1) − 900·1.015^4 in year 4 + 50 at
     * last.
     */
    @Test
    void every_term_stands_in_its_year() {
        Terms terms = Terms.over(5, Discounting.real(Ratio.percent(6)))
                .escalating(Ratio.percent(3))
                .realising(new Realisation(List.of(new Reason("bypass", Ratio.percent(80)))))
                .upkeep(eur(100), Ratio.percent(2))
                .replacing(4, eur(900), Ratio.percent(1.5))
                .residual(eur(50));
        Appraisal appraisal = Appraisal.of("reset", eur(3000), eur(1000), terms);
        double present = -3000;
        for (int t = 1; t <= 5; t++) {
            double amount = 800 * Math.pow(1.03, t - 1) - 100 * Math.pow(1.02, t - 1);
            amount -= t == 4 ? 900 * Math.pow(1.015, 4) : 0;
            amount += t == 5 ? 50 : 0;
            assertEquals(amount, appraisal.flow().in(t).amount(), 1e-9, "year " + t);
            present += amount / Math.pow(1.06, t);
        }
        assertEquals(present, appraisal.netPresentValue().amount(), 1e-9);
        assertEquals(1 + present / 3000, appraisal.savingToInvestment().value(), 1e-12);
    }

    /** 1000 for 10 years at 5 %: 7721.73 back for 7721.73 grow at the discount rate itself. */
    @Test
    void the_adjusted_rate_of_a_fair_exchange_is_the_discount_rate() {
        double outlay = 1000 * Factors.uniformPresentValue(Ratio.percent(5), 10);
        Appraisal fair = Appraisal.of("fair", eur(outlay), eur(1000), PLAIN);
        assertEquals(0, fair.netPresentValue().amount(), 1e-9);
        assertEquals(0.05, fair.adjustedRate().orElseThrow().value(), 1e-12);
        assertEquals(0.05, fair.internalRates().only().orElseThrow().value(), 1e-9);
    }

    @Test
    void a_saving_taken_in_full_says_what_the_field_found() {
        Appraisal full = Appraisal.of("reset", eur(4200), eur(1100), PLAIN);
        assertTrue(full.notes().has(EconomicsProblem.REALISATION_NOT_STATED));
        Appraisal realised = Appraisal.of("reset", eur(4200), eur(1100), PLAIN.realising(Realisation.FIELD_STUDY));
        assertFalse(realised.notes().has(EconomicsProblem.REALISATION_NOT_STATED));
        assertEquals(440, realised.flow().in(1).amount(), 1e-12);
        assertTrue(realised.basis().choices().stream().anyMatch(line -> line.contains("Gopalakrishnan")));
    }

    /** 90 % of 50 % is 45 %. */
    @Test
    void the_reasons_of_a_realisation_multiply() {
        Realisation both = new Realisation(
                List.of(new Reason("bypass left open", Ratio.percent(90)), new Reason("set point", Ratio.percent(50))));
        assertEquals(45, both.share().toPercent(), 1e-12);
        assertEquals(1, Realisation.FULL.share().value());
        assertThrows(Refusal.class, () -> new Reason("wonder", Ratio.percent(120)));
    }

    /** Year 1 brings 10, its upkeep costs 20. */
    @Test
    void a_saving_that_its_upkeep_eats_up_pays_nothing_back_and_says_so() {
        Appraisal none = Appraisal.of("reset", eur(100), eur(10), PLAIN.upkeep(eur(20), Ratio.ZERO));
        assertTrue(none.simplePayback().isEmpty());
        assertTrue(none.discountedPayback().isEmpty());
        assertTrue(none.notes().has(EconomicsProblem.NOTHING_SAVED));
        assertTrue(none.notes().has(EconomicsProblem.NO_INTERNAL_RATE));
        assertTrue(none.adjustedRate().isEmpty());
    }

    @Test
    void a_replacement_that_takes_the_payback_back_is_noted() {
        Terms terms = Terms.over(4, Discounting.real(Ratio.ZERO)).replacing(3, eur(500), Ratio.ZERO);
        Appraisal lost = Appraisal.of("reset", eur(150), eur(100), terms);
        assertEquals(1.5, lost.discountedPayback().orElseThrow().toYears(), 1e-12);
        assertTrue(lost.notes().has(EconomicsProblem.PAYBACK_LOST_AGAIN));
    }

    @Test
    void what_costs_nothing_and_what_is_replaced_after_the_study_are_refused() {
        Refusal free =
                assertThrows(Refusal.class, () -> Appraisal.of("reset", eur(200), eur(10), PLAIN.rebate(eur(200))));
        assertEquals(EconomicsProblem.IMPOSSIBLE_TERM, free.problem());
        assertThrows(Refusal.class, () -> PLAIN.replacing(11, eur(1), Ratio.ZERO));
    }

    /** 10 000 kWh at 0.4 kg: 4 t a year; falling by 10 % a year over 3 years 4·(1 + 0.9 + 0.81) = 10.84 t. */
    @Test
    void carbon_is_told_with_the_grid_as_it_is_and_with_one_that_gets_cleaner() {
        Carbon.Factor factor = new Carbon.Factor(Mass.kilograms(0.4), Ratio.percent(10), "invented");
        Carbon carbon = new Carbon(Energy.kilowattHours(10_000), factor, 3);
        assertEquals(4, carbon.firstYear().toTonnes(), 1e-12);
        assertEquals(12, carbon.total().toTonnes(), 1e-12);
        assertEquals(10.84, carbon.totalWithDecline().toTonnes(), 1e-12);
        assertThrows(Refusal.class, () -> new Carbon.Factor(Mass.kilograms(-1), Ratio.ZERO, "wrong"));
    }

    private static Money eur(double amount) {
        return new Money(amount, "EUR");
    }
}
