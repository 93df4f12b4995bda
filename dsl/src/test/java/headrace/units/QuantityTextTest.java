package headrace.units;

import static headrace.units.UnitProblem.UNKNOWN_CURRENCY;
import static headrace.units.UnitProblem.UNKNOWN_UNIT;
import static headrace.units.UnitProblem.UNREADABLE_QUANTITY;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Problem;
import headrace.problem.Refusal;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class QuantityTextTest {
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            ignoreLeadingAndTrailingWhitespace = false,
            value = {
                "52 m³/h|52",
                "52m3/h|52",
                "52 m3/h|52",
                " 52  m³ / h |52",
                "52\u00A0m³/h|52",
                "52\u202Fm³/h|52",
                "52 m^3/h|52",
                "52 m3/hr|52",
                "52 m3ph|52",
                "+52 m³/h|52",
                "-52 m³/h|-52",
                "\u221252 m³/h|-52",
                "5.2e1 m³/h|52",
                "5.2E+1 m³/h|52",
                ".5 m³/h|0.5",
                "52. m³/h|52"
            })
    void reads_a_flow_however_it_is_spelled(String text, double expected) {
        assertEquals(expected, Flow.KIND.parse(text).toCubicMetresPerHour(), 1e-12 * 52);
    }

    @ParameterizedTest(name = "{0} is {1} {2}")
    @CsvSource({
        "12 º C, 12, degC",
        "12℃, 12, degC",
        "54 ℉, 54, degF",
        "5 N*m, 5, Nm",
        "5 N m, 5, Nm",
        "5 Nm, 5, Nm",
        "5 kg/dm3, 5000, kgpm3",
        "40 %, 40, percent",
        "40%, 40, percent",
        "40 per cent, 40, percent",
        "0.4 ratio, 0.4, ratio",
        "1450 r/min, 1450, rpm",
        "1450 1/min, 1450, rpm",
        "1450 min⁻¹, 1450, rpm",
        "480 GPM, 480, gpm",
        "480 US gpm, 480, gpm",
        "480 imp gpm, 480, impGpm",
        "480 UK gpm, 480, impGpm",
        "7.5 KW, 7.5, kW",
        "10 PS, 10, metricHp",
        "6 mWC, 6, mH2O",
        "10 bar g, 10, barGauge",
        "10 bara, 10, barAbs",
        "300 MBH, 300, kbtuph"
    })
    void reads_what_stands_on_drawings_and_nameplates(String text, double value, String word) {
        assertEquals(Quantities.of(value, word).orElseThrow(), Quantities.parse(text));
    }

    @ParameterizedTest(name = "{0} is a {1} unless another kind is wanted")
    @CsvSource({
        "3 m, length",
        "3 ft, length",
        "3 K, temperature difference",
        "3 °C, temperature",
        "3 °F, temperature",
        "3 t, mass",
        "3 ton, power",
        "3 a, time",
        "3 h, time",
        "3 min, time",
        "3 bar, pressure difference",
        "3 psi, pressure difference",
        "3 gpm, flow",
        "3 gal, volume",
        "3 1/s, speed",
        "3 m2/s, kinematic viscosity"
    })
    void takes_an_ambiguous_unit_by_its_documented_default(String text, String kind) {
        assertEquals(kind, Quantities.parse(text).kind().name());
    }

    @Test
    void takes_an_ambiguous_unit_by_the_kind_that_is_wanted() {
        assertEquals(Head.metres(3), Head.KIND.parse("3 m"));
        assertEquals(Head.feet(3), Head.KIND.parse("3 ft"));
        assertEquals(Length.metres(3), Length.KIND.parse("3 m"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"12,5 m³/h", "1,234.5 m³/h", "1.234,5 m³/h", "1,234,567 m³/h", "-0,5 m³/h", ",5 m³/h"})
    void refuses_a_comma_and_says_why(String text) {
        String said = refused(UNREADABLE_QUANTITY, () -> Flow.KIND.parse(text));
        assertTrue(said.contains("decimal mark as a point"), said);
    }

    @Test
    void refuses_digits_grouped_by_a_space_and_says_why() {
        String said = refused(UNREADABLE_QUANTITY, () -> Speed.KIND.parse("1 450 rpm"));
        assertTrue(said.contains("do not group digits"), said);
        assertEquals(Speed.revolutionsPerMinute(1450), Speed.KIND.parse("1450 1/min"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " ",
                "m³/h",
                "abc m³/h",
                "++5 m³/h",
                "5e m³/h5",
                "NaN m³/h",
                "Infinity m³/h",
                "٥٢ m³/h",
                "0x10 m",
                "- 5 m"
            })
    void refuses_what_is_no_number_and_unit(String text) {
        Refusal refusal = assertThrows(Refusal.class, () -> Flow.KIND.parse(text));
        assertTrue(refusal.problem() == UNREADABLE_QUANTITY || refusal.problem() == UNKNOWN_UNIT, text);
    }

    @Test
    void refuses_a_number_whose_unit_is_not_said() {
        String said = refused(UNREADABLE_QUANTITY, () -> Flow.KIND.parse("52"));
        assertTrue(said.contains("Say the unit too, as in 52 m³/s"), said);
        refused(UNREADABLE_QUANTITY, () -> Ratio.KIND.parse("0.4"));
        refused(UNREADABLE_QUANTITY, () -> Quantities.parse("0.4"));
    }

    @Test
    void refuses_a_number_too_large_to_hold() {
        refused(UnitProblem.IMPOSSIBLE_QUANTITY, () -> Flow.KIND.parse("1e999 m³/h"));
    }

    @ParameterizedTest(name = "a {0} in {1} might have been {2}")
    @CsvSource({
        "flow, gmp, gpm",
        "flow, m³/hh, m³/h",
        "flow, l/hr, L/h",
        "power, mW, MW",
        "power, kv, kW",
        "pressure difference, kpa, kPa",
        "pressure difference, Mpa, MPa"
    })
    void names_the_nearest_units_of_the_kind(String kind, String written, String near) {
        Kind<?> wanted = Quantities.KINDS.stream()
                .filter(each -> each.name().equals(kind))
                .findFirst()
                .orElseThrow();
        String said = refused(UNKNOWN_UNIT, () -> wanted.parse("3 " + written));
        String nearest = said.substring(said.indexOf("The nearest "));
        assertTrue(nearest.contains(near), said);
    }

    @ParameterizedTest(name = "{0} is no unit of a {1}")
    @CsvSource({
        "m, flow",
        "kPa, head",
        "bar gauge, pressure difference",
        "psi, head",
        "K, temperature",
        "°C, temperature difference",
        "Hz, speed",
        "rpm, frequency",
        "kWh, power",
        "kW, energy",
        "kg/s, flow",
        "m³/h, mass flow",
        "ton, mass",
        "t, power",
        "m²/s, viscosity",
        "cP, kinematic viscosity",
        "Nm, energy",
        "J, torque",
        "Kv, flow",
        "m³, area",
        "m², volume"
    })
    void does_not_take_the_unit_of_one_kind_for_another(String unit, String kind) {
        Kind<?> wanted = Quantities.KINDS.stream()
                .filter(each -> each.name().equals(kind))
                .findFirst()
                .orElseThrow();
        refused(UNKNOWN_UNIT, () -> wanted.parse("3 " + unit));
    }

    @Test
    void names_the_nearest_units_of_any_kind_when_none_is_wanted() {
        String said = refused(UNKNOWN_UNIT, () -> Quantities.parse("3 kPaa gauge"));
        assertTrue(said.contains("kPa gauge"), said);
        assertTrue(
                refused(UNKNOWN_UNIT, () -> Quantities.parse("3 furlongs")).contains("No unit is spelled nearly so"));
    }

    @Test
    void reads_each_unit_by_its_word_its_symbol_and_its_spellings() {
        for (Kind<?> kind : Quantities.KINDS) {
            for (Unit unit : kind.units()) {
                Quantity<?> expected = kind.of(7, unit.word());
                assertEquals(expected, kind.parse("7 " + unit.word()));
                for (String spelling : unit.spellings()) {
                    assertEquals(expected, kind.parse("7 " + spelling), spelling);
                }
                if (!unit.symbol().isEmpty()) {
                    assertEquals(expected, kind.parse("7 " + unit.symbol()), unit.symbol());
                }
            }
        }
    }

    @Test
    void reads_money_and_prices() {
        assertEquals(Money.of(120, "EUR"), Money.parse("120 EUR"));
        assertEquals(new EnergyPrice(Money.of(0.18, "EUR")), EnergyPrice.parse("0.18 EUR/kWh"));
        assertEquals(new EnergyPrice(Money.of(0.18, "EUR")), EnergyPrice.parse("0.18 EUR per kWh"));
        assertEquals(new EnergyPrice(new Money(0.18, "")), EnergyPrice.parse("0.18 /kWh"));
        assertEquals(new EnergyPrice(new Money(0.18, "")), EnergyPrice.parse("0.18/kWh"));
    }

    @Test
    void refuses_money_without_a_currency_and_prices_of_something_else() {
        refused(UNREADABLE_QUANTITY, () -> Money.parse("120"));
        refused(UNKNOWN_CURRENCY, () -> Money.parse("120 euros"));
        refused(UNREADABLE_QUANTITY, () -> EnergyPrice.parse("0.18 EUR"));
        refused(UNREADABLE_QUANTITY, () -> EnergyPrice.parse("0.18 EUR/MWh"));
        refused(UNREADABLE_QUANTITY, () -> EnergyPrice.parse("0,18 EUR/kWh"));
        refused(UNKNOWN_CURRENCY, () -> EnergyPrice.parse("0.18 XXY/kWh"));
        assertTrue(refused(UNKNOWN_CURRENCY, () -> Money.of(1, "EUX")).contains("EUR"));
    }

    private static String refused(Problem problem, Executable asked) {
        Refusal refusal = assertThrows(Refusal.class, asked);
        assertEquals(problem, refusal.problem(), refusal.getMessage());
        return refusal.getMessage();
    }
}
