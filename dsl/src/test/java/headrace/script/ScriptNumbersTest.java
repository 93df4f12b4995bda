package headrace.script;

import static headrace.script.Scripts.refused;
import static headrace.script.Scripts.run;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertIterableEquals;

import headrace.units.Kind;
import headrace.units.Money;
import headrace.units.Quantities;
import headrace.units.Temperature;
import headrace.units.Unit;
import headrace.units.UnitProblem;
import java.util.List;
import java.util.function.BiFunction;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ScriptNumbersTest {
    @Test
    void each_unit_is_a_word_after_a_whole_number_a_decimal_and_a_variable() {
        List<?> read =
                (List<?>) run("x = 7; " + each((kind, word) -> "[12.W, 12.5.W, x.W, 1.2e3.W]".replace("W", word)));
        assertIterableEquals(
                each((kind, word) ->
                        List.of(kind.of(12, word), kind.of(12.5, word), kind.of(7, word), kind.of(1200, word))),
                read);
    }

    @Test
    void a_minus_before_a_number_with_a_unit_belongs_to_the_number_for_every_unit() {
        String all = each((kind, word) -> "[-12.W, (-12).W, { -7.W }(), 5 > 3 ? -12.5.W : 1.W]".replace("W", word))
                .toString();
        assertIterableEquals(
                each((kind, word) ->
                        List.of(kind.of(-12, word), kind.of(-12, word), kind.of(-7, word), kind.of(-12.5, word))),
                (List<?>) run(all));
    }

    private static <T> List<T> each(BiFunction<Kind<?>, String, T> make) {
        return Quantities.KINDS.stream()
                .flatMap(kind -> kind.units().stream().map(unit -> make.apply(kind, unit.word())))
                .toList();
    }

    @Test
    void the_minus_belongs_to_the_number_even_when_the_line_goes_on() {
        // only a scale with a zero of its own tells the one reading from the other
        assertEquals(261.15, (double) run("-12.degC.kelvins()"), 1e-12 * 300);
        assertEquals(261.15, (double) run("-12.degC.kelvins"), 1e-12 * 300);
        assertEquals(-40, (double) run("-40.degC.in('degF')"), 1e-12 * 500);
        assertEquals(Temperature.celsius(-7), run("-12.degC.plus(5.K)"));
        assertEquals(Temperature.celsius(-7), run("-12.degC + 5.K"));
    }

    @Test
    void no_two_kinds_share_a_word() {
        List<String> words = Quantities.KINDS.stream()
                .flatMap(kind -> kind.units().stream())
                .map(Unit::word)
                .toList();
        assertEquals(words.stream().distinct().toList(), words);
    }

    @ParameterizedTest
    @ValueSource(strings = {"12.degC", "12.m", "3.kW", "40.percent", "2.barGauge"})
    void a_minus_before_parentheses_or_a_variable_is_the_negative_of_the_quantity(String text) {
        if (text.endsWith("degC")) {
            refused(UnitProblem.MEANINGLESS_ARITHMETIC, "-(" + text + ")");
            refused(UnitProblem.MEANINGLESS_ARITHMETIC, "x = " + text + "; -x");
        } else {
            assertEquals(run("-" + text), run("-(" + text + ")"));
            assertEquals(run("-" + text), run("x = " + text + "; -x"));
        }
    }

    @Test
    void a_minus_between_two_quantities_still_subtracts() {
        assertEquals(Temperature.celsius(2), run("5.degC -3.K"));
        assertEquals(Temperature.celsius(-15), run("-12.degC - 3.K"));
        assertEquals(run("8.m"), run("5.m - -3.m"));
    }

    @ParameterizedTest(name = "{0} is {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "1/3|0.3333333333333333",
                "7/2*2|7",
                "10/4|2.5",
                "-7/2|-3.5",
                "6/3|2",
                "1.0/3|0.3333333333333333",
                "x = 7; x /= 2; x|3.5",
                "l = [7]; l[0] /= 2; l[0]|3.5",
                "m = [a: 7]; m.a /= 2; m.a|3.5",
                "c = { a, b -> a / b }; c(7, 2)|3.5",
                "c = { y = 1 / 4 -> y }; c()|0.25",
                "def f(a = 1 / 4) { a }; f()|0.25",
                "class A { def half() { 1 / 2 } }; new A().half()|0.5",
                "class A { def half = 1 / 2 }; new A().half|0.5",
                "10000000000 / 4|2500000000",
                "2 ** 70 / 2 ** 69|2",
                "1.5|1.5",
                "-1.5|-1.5",
                "1.5g|1.5",
                "1.5 * 2|3",
                "0.1 + 0.2|0.30000000000000004",
                "2.5 - 1|1.5",
                "1e3|1000",
                "[1, 2, 4].average()|2.3333333333333335",
                "[1, 2].average { it * 1.5 }|2.25",
                "2.567.round(2)|2.57",
                "(new BigDecimal('1')) / 3|0.3333333333333333",
                "[1, 2.5].sum()|3.5"
            })
    void decimals_and_quotients_are_doubles(String script, double expected) {
        assertEquals(expected, assertInstanceOf(Double.class, run(script)));
    }

    @ParameterizedTest(name = "{0} is {1}")
    @CsvSource({
        "7, 7",
        "-7, -7",
        "7 * 2, 14",
        "-7 * 0, 0",
        "10L * 2, 20",
        "7 - 9, -2",
        "7 % 4, 3",
        "7.intdiv(2), 3",
        "2 ** 3, 8",
        "(1..4).sum(), 10",
        "[3; 1; 2].max(), 3",
        "-5.abs(), -5"
    })
    void whole_numbers_stay_whole(String script, int expected) {
        assertEquals(expected, assertInstanceOf(Integer.class, run(script.replace(';', ','))));
    }

    @Test
    void a_product_of_whole_numbers_does_not_wrap_around() {
        assertEquals(60L * 60 * 24 * 365 * 100, run("60 * 60 * 24 * 365 * 100"));
        assertEquals(8_760L * 3_600 * 1_000, run("x = 8760; x *= 3600; x *= 1000; x"));
        assertEquals("ababab", run("'ab' * 3"));
        assertEquals(List.of(1, 1), run("[1] * 2"));
        assertEquals(run("12.m"), run("3.m * 4"));
    }

    @Test
    void powers_and_ranges_work_as_ever() {
        assertEquals(Math.sqrt(2), run("2 ** 0.5"));
        assertEquals(0.5, run("2 ** -1"));
        assertEquals(List.of(1, 2, 3), run("(1..3).toList()"));
        assertEquals(List.of(0.0, 0.25, 0.5), run("(0.0..0.5).by(0.25).toList()"));
        assertEquals(List.of(0.5, 1.5, 2.5), run("r = []; for (q in 0.5..2.5) r << q; r"));
        assertEquals(List.of(1, 3, 5), run("(1..5).step(2)"));
        assertEquals("in", run("switch (2.5) { case 2.5: return 'in'; default: return 'out' }"));
    }

    @Test
    void steps_of_decimals_end_before_the_end_and_do_not_drift() {
        assertEquals(List.of(0.0, 0.25, 0.5, 0.75), run("r = []; 0.step(1, 0.25) { r << it }; r"));
        assertEquals(List.of(1.0, 0.75, 0.5, 0.25), run("r = []; 1.step(0, -0.25) { r << it }; r"));
        assertEquals(List.of(0, 2, 4), run("r = []; 0.step(6, 2) { r << it }; r"));
        assertEquals(10, run("r = []; 0.step(1, 0.1) { r << it }; r.size()"));
        assertEquals(List.of(), run("r = []; 1.step(1, 0) { r << it }; r"));
        refused(ScriptProblem.WRONG_VALUE, "0.step(1, 0) { }");
        refused(ScriptProblem.WRONG_VALUE, "0.step(1, -0.5) { }");
    }

    @Test
    void averages_quantities_and_refuses_the_average_of_nothing() {
        assertEquals(run("1.5.m"), run("[1.m, 2.m].average()"));
        refused(ScriptProblem.WRONG_VALUE, "[].average()");
        refused(UnitProblem.MEANINGLESS_ARITHMETIC, "[1.m, 2.kW].average()");
    }

    @Test
    void each_common_currency_is_a_word_and_a_price_may_leave_it_out() {
        for (String currency : Money.CURRENCIES) {
            assertEquals(Money.of(120, currency), run("120." + currency));
            assertEquals(Money.of(-120, currency), run("-120." + currency));
        }
        assertEquals("0.18 EUR/kWh", run("0.18.EUR.perKWh").toString());
        assertEquals("-0.18 EUR/kWh", run("-0.18.EUR.perKWh").toString());
        assertEquals("0.18/kWh", run("0.18.perKWh").toString());
    }
}
