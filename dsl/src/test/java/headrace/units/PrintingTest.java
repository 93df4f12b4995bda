package headrace.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Refusal;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PrintingTest {
    private final Locale before = Locale.getDefault();

    @AfterEach
    void restore() {
        Locale.setDefault(before);
        UnitSystem.METRIC.choose();
    }

    @ParameterizedTest(name = "{0} is printed as {1}")
    @CsvSource({
        "0, 0",
        "-0.0, 0",
        "1, 1",
        "12.5, 12.5",
        "12.345, 12.35",
        "-12.344, -12.34",
        "0.123449, 0.1234",
        "1450, 1450",
        "1450.26, 1450",
        "9999.6, 10000",
        "12345.6, 12346",
        "123456789, 123456789",
        "999999999.9, 1000000000",
        "1234567890, 1.235e9",
        "1e9, 1e9",
        "0.00012345, 0.0001235",
        "0.0001, 0.0001",
        "0.00009, 9e-5",
        "-0.000012345, -1.235e-5",
        "1e-300, 1e-300",
        "8760, 8760"
    })
    void prints_four_digits_and_no_fewer_than_stand_before_the_point(double value, String printed) {
        assertEquals(printed, Numbers.print(value));
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void never_prints_what_is_no_finite_number(double value) {
        Refusal refusal = assertThrows(Refusal.class, () -> Numbers.print(value));
        assertEquals(UnitProblem.IMPOSSIBLE_QUANTITY, refusal.problem());
    }

    @ParameterizedTest(name = "{0}: {1}, {2}, {3}, {4}, {5}")
    @CsvSource({
        "METRIC, 52 m³/h, 16 m, 5.5 kW, 12 °C, 1000 kg/m³",
        "US_CUSTOMARY, 228.9 gpm, 52.49 ft, 7.376 hp, 53.6 °F, 62.43 lb/ft³",
        "IMPERIAL, 190.6 imp gpm, 52.49 ft, 7.376 hp, 53.6 °F, 62.43 lb/ft³"
    })
    void prints_in_the_chosen_units(
            UnitSystem system, String flow, String head, String power, String temperature, String density) {
        // 52 m³/h / 0.2271247 = 228.95 gpm, / 0.2727654 = 190.64 imp gpm; 16 / 0.3048 = 52.493 ft; 5500 / 745.7 =
        // 7.3756
        system.choose();
        assertEquals(flow, Flow.cubicMetresPerHour(52).toString());
        assertEquals(head, Head.metres(16).toString());
        assertEquals(power, Power.kilowatts(5.5).toString());
        assertEquals(temperature, Temperature.celsius(12).toString());
        assertEquals(density, Density.kilogramsPerCubicMetre(1000).toString());
    }

    @Test
    void prints_a_short_length_and_a_short_time_in_a_smaller_unit() {
        assertEquals("65 mm", Length.millimetres(65).toString());
        assertEquals("499 mm", Length.millimetres(499).toString());
        assertEquals("0.5 m", Length.millimetres(500).toString());
        assertEquals("5 s", Time.seconds(5).toString());
        assertEquals("5 min", Time.minutes(5).toString());
        assertEquals("0.5 h", Time.minutes(30).toString());
        assertEquals("0 m", Head.ZERO.toString());
        UnitSystem.US_CUSTOMARY.choose();
        assertEquals("2.5 in", Length.inches(2.5).toString());
    }

    @Test
    void prints_no_trace_of_rounding_at_the_zero_of_a_temperature_scale() {
        Temperature zero = Temperature.celsius(20.1).minus(TemperatureDifference.kelvins(20.1));
        assertEquals("0 °C", zero.toString());
        UnitSystem.US_CUSTOMARY.choose();
        assertEquals("0 °F", Temperature.fahrenheit(0).toString());
    }

    @ParameterizedTest(name = "{0} {1} is printed as {2}")
    @CsvSource({
        "120, EUR, 120.00 EUR",
        "0.5, EUR, 0.50 EUR",
        "999.994, EUR, 999.99 EUR",
        "1000, EUR, 1000 EUR",
        "12345.6, EUR, 12346 EUR",
        "-12.5, USD, -12.50 USD",
        "-0.001, USD, 0.00 USD",
        "-0.0, USD, 0.00 USD"
    })
    void prints_money_with_cents_below_a_thousand(double amount, String currency, String printed) {
        assertEquals(printed, Money.of(amount, currency).toString());
    }

    @Test
    void prints_a_price_with_all_that_matters() {
        assertEquals("0.1825 EUR/kWh", new EnergyPrice(Money.of(0.1825, "EUR")).toString());
        assertEquals("0.18/kWh", new EnergyPrice(new Money(0.18, "")).toString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"de-DE", "ar-EG", "hi-IN-u-nu-deva", "tr-TR", "fr-FR", "th-TH-u-nu-thai"})
    void prints_and_reads_the_same_in_every_locale(String locale) {
        Locale.setDefault(Locale.forLanguageTag(locale));
        assertEquals(
                "1234.5 m³/h".replace("1234.5", "1235"),
                Flow.cubicMetresPerHour(1234.5).toString());
        assertEquals("-12.35 °C", Temperature.celsius(-12.346).toString());
        assertEquals(
                "1.5e-5 Pa·s".replace("1.5e-5 Pa", "0.015 mPa"),
                Viscosity.pascalSeconds(1.5e-5).toString());
        assertEquals("120.25 EUR", Money.of(120.25, "EUR").toString());
        assertEquals(Flow.cubicMetresPerHour(12.5), Flow.KIND.parse("12.5 m³/h"));
        assertEquals("impossible-quantity", UnitProblem.IMPOSSIBLE_QUANTITY.anchor());
    }

    @ParameterizedTest
    @EnumSource
    void what_is_printed_reads_back_within_its_four_digits(UnitSystem system) {
        system.choose();
        Random random = new Random(20260101);
        for (Kind<?> kind : Quantities.KINDS) {
            for (int i = 0; i < 200; i++) {
                double size = Math.pow(10, random.nextDouble() * 16 - 6) * (random.nextBoolean() ? 1 : -1);
                Quantity<?> quantity = kind.of(size, system.unitOf(kind).word());
                Quantity<?> again = kind.parse(quantity.toString());
                String unit = system.unitOf(kind).word();
                double smallest = kind.type() == Temperature.class ? 1e-9 : 0;
                assertEquals(quantity.in(unit), again.in(unit), 5.01e-4 * Math.abs(quantity.in(unit)) + smallest);
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void each_kind_can_be_printed_in_each_system(UnitSystem system) {
        for (Kind<?> kind : Quantities.KINDS) {
            assertTrue(kind.units().contains(system.unitOf(kind)), kind.name());
        }
    }

    @Test
    void the_choice_of_units_is_inherited_by_the_threads_that_a_script_starts_and_reaches_no_other() throws Exception {
        AtomicReference<UnitSystem> inside = new AtomicReference<>();
        Thread other = new Thread(() -> UnitSystem.IMPERIAL.choose());
        other.start();
        other.join();
        assertEquals(UnitSystem.METRIC, UnitSystem.current());
        UnitSystem.US_CUSTOMARY.choose();
        Thread child = new Thread(() -> inside.set(UnitSystem.current()));
        child.start();
        child.join();
        assertEquals(UnitSystem.US_CUSTOMARY, inside.get());
    }

    @Test
    void a_quantity_is_equal_to_one_of_its_kind_and_value_only() {
        assertEquals(Length.metres(1), Length.centimetres(100));
        assertEquals(Length.metres(1).hashCode(), Length.centimetres(100).hashCode());
        assertFalse(Length.metres(1).equals(Head.metres(1)));
        assertFalse(Length.metres(1).equals(null));
    }

    @Test
    void there_is_no_negative_nothing() {
        assertEquals(0, Length.metres(0).compareTo(Length.metres(-0.0)));
        assertEquals(Length.metres(0).hashCode(), Length.metres(-0.0).hashCode());
        assertEquals(Money.of(0, "EUR"), Money.of(-0.0, "EUR"));
        assertEquals("0 m", Head.metres(-0.0).toString());
    }
}
