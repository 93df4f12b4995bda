package headrace.economics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import headrace.problem.Refusal;
import headrace.units.Ratio;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class FactorsTest {
    /** NIST Handbook 135, 1995: formulas standard, values recomputed with six decimals. */
    @ParameterizedTest
    @CsvSource({
        "3, 10, 0.744094, 8.530203",
        "3, 20, 0.553676, 14.877475",
        "3, 25, 0.477606, 17.413148",
        "7, 10, 0.508349, 7.023582",
        "7, 20, 0.258419, 10.594014"
    })
    void factors_agree_with_the_published_tables(double percent, int years, double single, double uniform) {
        Ratio rate = Ratio.percent(percent);
        assertEquals(single, Factors.singlePresentValue(rate, years), 6e-7);
        assertEquals(uniform, Factors.uniformPresentValue(rate, years), 6e-7);
        assertEquals(1 / uniform, Factors.capitalRecovery(rate, years), 1e-7);
    }

    /** NIST Handbook 135, 1995, modified uniform present value: values recomputed. */
    @ParameterizedTest
    @CsvSource({"8, 4, 8, 6.775723", "3, 2, 20, 18.081229"})
    void escalated_factors_agree_with_the_published_values(double rate, double rise, int years, double expected) {
        assertEquals(expected, Factors.escalatedPresentValue(Ratio.percent(rate), Ratio.percent(rise), years), 6e-7);
    }

    @Test
    void a_price_that_rises_as_fast_as_it_is_discounted_counts_each_year_alike() {
        assertEquals(12, Factors.escalatedPresentValue(Ratio.percent(5), Ratio.percent(5), 12), 1e-12);
        assertEquals(12, Factors.escalatedPresentValue(Ratio.percent(5), Ratio.of(0.05 + 1e-15), 12), 1e-9);
        assertEquals(7, Factors.uniformPresentValue(Ratio.ZERO, 7), 1e-12);
    }

    @Test
    void a_rate_that_loses_everything_and_a_study_of_no_years_are_refused() {
        Refusal rate = assertThrows(Refusal.class, () -> Factors.uniformPresentValue(Ratio.percent(-100), 5));
        assertEquals(EconomicsProblem.IMPOSSIBLE_RATE, rate.problem());
        Refusal years = assertThrows(Refusal.class, () -> Factors.uniformPresentValue(Ratio.percent(5), 0));
        assertEquals(EconomicsProblem.IMPOSSIBLE_YEARS, years.problem());
    }
}
