package headrace.script;

import static headrace.script.Scripts.refused;
import static headrace.script.Scripts.run;
import static headrace.units.UnitProblem.MEANINGLESS_ARITHMETIC;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** All values are worked by hand. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class ScriptOperatorsTest {
    @ParameterizedTest(name = "{0} is {1}")
    @CsvSource({
        "36.m3ph * 200.kPa, 2 kW",
        "200.kPa * 36.m3ph, 2 kW",
        "36.m3ph * 2.h, 72 m³",
        "72.m3 / 2.h, 36 m³/h",
        "5.5.kW * 10.h, 55 kWh",
        "55.kWh / 10.h, 5.5 kW",
        "200.kWh * 0.25.EUR.perKWh, 50.00 EUR",
        "0.25.EUR.perKWh * 200.kWh, 50.00 EUR",
        "50.EUR / 200.kWh, 0.25 EUR/kWh",
        "2.kW / 36.m3ph, 200 kPa",
        "36.m3ph / 0.01.m2, 1 m/s",
        "36.m3ph * 1000.kgpm3, 10 kg/s",
        "10.kgps / 1000.kgpm3, 36 m³/h",
        "3.m * 4.m, 12 m²",
        "3.m * 4.m * 2.m, 24 m³",
        "3 * 4.m, 12 m",
        "4.m * 3, 12 m",
        "0.5 * 4.m, 2 m",
        "50.percent * 4.m, 2 m",
        "4.m * 50.percent, 2 m",
        "4.m / 8, 0.5 m",
        "4.m / 50.percent, 8 m",
        "15.m3ph / 60.m3ph, 25 %",
        "4.m + 1.ft * 0, 4 m",
        "20.degC + 5.K, 25 °C",
        "5.K + 20.degC, 25 °C",
        "20.degC - 5.degC, 15 K",
        "2.barGauge + 1.bar, 300 kPa gauge",
        "1.bar + 2.barGauge, 300 kPa gauge",
        "2.barAbs - 1.barAbs, 100 kPa",
        "1.mPas / 1000.kgpm3, 1 mm²/s",
        "[1.m; 2.m; 4.m].sum(), 7 m",
        "[1.m; 4.m; 2.m].max(), 4 m",
        "[3.kW; 1.kW].sort()[0], 1 kW",
        "2.EUR + 3.EUR, 5.00 EUR",
        "2 * 3.EUR, 6.00 EUR",
        "3.EUR / 2, 1.50 EUR",
        "+(3.m), 3 m",
        "'Head: ' + 3.m, Head: 3 m",
        "3.m + ' of head', 3 m of head",
        "50.Hz.synchronousSpeed(4), 1500 rpm",
        "29.41995.kPa.headOf(1000.kgpm3), 3 m",
        "3.m.pressureOf(1000.kgpm3), 29.42 kPa",
        "2.barGauge.toAbsolute(100.kPaAbs), 300 kPa abs",
        "x = 3.m; x += 1.m; x, 4 m",
        "x = 3.m; x *= 2; x, 6 m",
        "x = 3.m; x /= 2; x, 1.5 m"
    })
    void operators_mean_what_they_say(String script, String printed) {
        assertEquals(
                printed,
                run(script.replace("; 2", ", 2").replace("; 4", ", 4").replace("; 1.kW", ", 1.kW"))
                        .toString());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "1.ft < 1.m",
                "1.m > 1.ft",
                "1.m >= 100.cm",
                "1.m <= 1.m",
                "1.m == 100.cm",
                "1.m != 2.m",
                "5.EUR > 3.EUR",
                "5.m != null",
                "(1.m <=> 2.m) == -1",
                "1.m in [2.m, 1.m]",
                "0.2.EUR.perKWh > 0.1.EUR.perKWh"
            })
    void comparisons_look_at_the_size_and_not_at_the_unit(String script) {
        assertEquals(true, run(script));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "52.m3ph + 16.m|flow|length",
                "52.m3ph - 5.kgps|flow|mass flow",
                "16.m + 2.mHead|length|head",
                "16.mHead + 30.kPa|head|pressure difference",
                "2.barGauge + 2.barAbs|gauge pressure|absolute pressure",
                "20.degC + 5.degC|temperature|temperature",
                "5.kW + 5.kWh|power|energy",
                "5.m + 3|length|bare number",
                "3 + 5.m|bare number|length",
                "3 - 5.m|bare number|length",
                "5.m - 3|length|bare number",
                "1 - 40.percent|bare number|ratio",
                "40.percent + 10|ratio|bare number",
                "52.m3ph * 16.m|flow|length",
                "52.m3ph * 16.mHead|flow|head",
                "2 * 20.degC|bare number|temperature",
                "20.degC * 2|temperature|bare number",
                "20.degC / 10.degC|temperature|temperature",
                "5.kW / 3.m|power|length",
                "100 / 4.kW|bare number|power",
                "5.EUR * 3.EUR|money in EUR|money in EUR",
                "5.EUR + 3|money in EUR|bare number",
                "5.EUR * 3.kW|money in EUR|power",
                "5.kWh * 3.EUR|energy|money in EUR",
                "5.m < 3.kW|length|power",
                "5.m >= 3|length|bare number",
                "3 < 5.m|bare number|length",
                "5.m == 3|length|bare number",
                "3 == 5.m|bare number|length",
                "5.m == 5.mHead|length|head",
                "5.m != 5.mHead|length|head",
                "5.m <=> 5.kW|length|power",
                "5.EUR < 3.m|money in EUR|length",
                "5.EUR == 5|money in EUR|bare number",
                "3.m < 5.EUR|length|money in EUR",
                "[1.m, 2.kW].max()|power|length",
                "[1.m, 2.kW].sum()|length|power"
            })
    void refuses_what_means_nothing_and_names_both(String script, String one, String other) {
        String said = refused(MEANINGLESS_ARITHMETIC, script);
        int first = said.indexOf(one + ")");
        assertTrue(first >= 0 && said.indexOf(other + ")", first + 1) > first, said);
    }

    @ParameterizedTest
    @ValueSource(strings = {"5.m ** 2", "5.m % 2", "5.m == 'five'", "5.EUR + 5.USD", "5.EUR < 5.USD", "5.m == '5 m'"})
    void refuses_what_a_quantity_does_not_know(String script) {
        refused(MEANINGLESS_ARITHMETIC, script);
    }

    @Test
    void a_value_of_ours_tells_without_parentheses() {
        assertEquals(16.0, run("16.m.metres"));
        assertEquals(List.of(1.0, 2.0), run("[1.m, 2.m]*.metres"));
        assertEquals("EUR", run("5.EUR.currency"));
    }

    @Test
    void a_refusal_of_what_is_asked_comes_through() {
        refused(headrace.units.UnitProblem.UNKNOWN_UNIT, "16.m.in('kPa')");
    }
}
