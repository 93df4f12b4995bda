package headrace.economics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Refusal;
import headrace.units.Money;
import headrace.units.Ratio;
import headrace.units.UnitProblem;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class CashFlowTest {
    /** Life-cycle cost slides of a course (read in a copy): printed future worth 2324.80. */
    @Test
    void the_future_worth_of_the_published_example_is_met_to_the_cent() {
        CashFlow flow = CashFlow.of("USD", -25000, 8000, 8000, 8000, 8000, 8000 + 5000);
        assertEquals(2324.80, flow.futureValue(Ratio.percent(20)).amount(), 0.005);
    }

    /** Closed form: S·(1 − ((1+g)/(1+r))^n)/(r − g) less the outlay. */
    @Test
    void the_present_value_of_a_growing_series_is_its_closed_form() {
        double rate = 0.07;
        double growth = 0.025;
        double[] amounts = new double[16];
        amounts[0] = -4200;
        for (int year = 1; year <= 15; year++) {
            amounts[year] = 900 * Math.pow(1 + growth, year - 1);
        }
        double closed = -4200 + 900 * (1 - Math.pow((1 + growth) / (1 + rate), 15)) / (rate - growth);
        assertEquals(
                closed, CashFlow.of("", amounts).netPresentValue(Ratio.of(rate)).amount(), 1e-9 * closed);
    }

    /** One outlay C and one return R after n years: i = (R/C)^(1/n) − 1. */
    @Test
    void the_internal_rate_of_one_return_is_its_root() {
        double[] amounts = new double[11];
        amounts[0] = -1000;
        amounts[10] = 2500;
        assertRates(CashFlow.of("", amounts), Math.pow(2.5, 0.1) - 1);
    }

    /**
     * A saving for ever at S/C; over n years the rate solves C = S·UPV, here with i = 8 %, so that C = UPV(8 %, 12).
     */
    @Test
    void the_internal_rate_of_equal_savings_undoes_the_uniform_present_value() {
        double[] amounts = new double[13];
        Arrays.fill(amounts, 1);
        amounts[0] = -Factors.uniformPresentValue(Ratio.percent(8), 12);
        assertRates(CashFlow.of("", amounts), 0.08);
    }

    /** −1000·(1+i)² + 2500·(1+i) − 1540 = −1000·((1+i) − 1.1)·((1+i) − 1.4). */
    @Test
    void two_internal_rates_are_both_found_and_said_to_be_two() {
        CashFlow flow = CashFlow.of("EUR", -1000, 2500, -1540);
        assertRates(flow, 0.1, 0.4);
        assertTrue(flow.internalRates().notes().has(EconomicsProblem.SEVERAL_INTERNAL_RATES));
        assertEquals(2, flow.internalRates().signChanges());
        assertTrue(flow.internalRates().only().isEmpty());
    }

    /** The product of ((1+i) − 0.5), ((1+i) − 1), ((1+i) − 1.25) and ((1+i) − 3). */
    @Test
    void internal_rates_below_and_at_and_far_above_zero_are_found_together() {
        double[] product = {1};
        for (double root : new double[] {0.5, 1, 1.25, 3}) {
            double[] next = new double[product.length + 1];
            for (int i = 0; i < product.length; i++) {
                next[i] += product[i];
                next[i + 1] -= root * product[i];
            }
            product = next;
        }
        assertRates(CashFlow.of("", product), -0.5, 0, 0.25, 2);
    }

    /** −1000·g² + 2000·g − 1500 has the discriminant 4e6 − 6e6, below 0. */
    @Test
    void a_flow_without_an_internal_rate_says_so() {
        CashFlow flow = CashFlow.of("EUR", -1000, 2000, -1500);
        assertRates(flow);
        assertTrue(flow.internalRates().notes().has(EconomicsProblem.NO_INTERNAL_RATE));
        assertEquals("none", flow.internalRates().toString());
        assertRates(CashFlow.of("EUR", -10, -10, -10));
    }

    @Test
    void the_present_value_at_an_internal_rate_is_nothing() {
        CashFlow flow = CashFlow.of("", -4200, 1100, 1200, -300, 1400, 1500, 900, -2000, 1800);
        for (Ratio rate : flow.internalRates().rates()) {
            assertEquals(0, flow.netPresentValue(rate).amount(), 1e-8);
        }
    }

    /** 1000 + 1000 + 1000 of 3500 after three years, then 500 of 2000: 3 + 500/2000. */
    @Test
    void a_payback_is_counted_in_a_straight_line_inside_its_year() {
        CashFlow flow = CashFlow.of("", -3500, 1000, 1000, 1000, 2000, 2000);
        assertEquals(3.25, flow.payback(Ratio.ZERO).orElseThrow().toYears(), 1e-12);
        assertTrue(CashFlow.of("", -3500, 1000, 1000).payback(Ratio.ZERO).isEmpty());
    }

    /** At 10 %: 1100/1.1 = 1000, 1210/1.21 = 1000, 1331/1.331 = 1000; 2500 is paid in the middle of year 3. */
    @Test
    void a_discounted_payback_counts_discounted_amounts() {
        CashFlow flow = CashFlow.of("", -2500, 1100, 1210, 1331);
        assertEquals(2.5, flow.payback(Ratio.percent(10)).orElseThrow().toYears(), 1e-9);
    }

    @Test
    void flows_are_subtracted_year_by_year_also_where_one_is_shorter() {
        CashFlow difference = CashFlow.of("EUR", -10, 3, 3).minus(CashFlow.of("EUR", -4, 1));
        assertEquals(List.of(new Money(-6, "EUR"), new Money(2, "EUR"), new Money(3, "EUR")), difference.amounts());
    }

    @Test
    void currencies_do_not_mix_and_no_amount_is_infinite() {
        Refusal mixed =
                assertThrows(Refusal.class, () -> CashFlow.of("EUR", -10, 3).minus(CashFlow.of("USD", -4, 1)));
        assertEquals(UnitProblem.MEANINGLESS_ARITHMETIC, mixed.problem());
        assertThrows(Refusal.class, () -> CashFlow.of("EUR", -10, Double.NaN));
        assertThrows(Refusal.class, () -> CashFlow.of("EUR", -10));
    }

    private static void assertRates(CashFlow flow, double... expected) {
        List<Ratio> found = flow.internalRates().rates();
        assertEquals(expected.length, found.size(), found.toString());
        for (int i = 0; i < expected.length; i++) {
            assertEquals(expected[i], found.get(i).value(), 1e-9);
        }
    }
}
