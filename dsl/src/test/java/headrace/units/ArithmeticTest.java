package headrace.units;

import static headrace.units.UnitProblem.IMPOSSIBLE_QUANTITY;
import static headrace.units.UnitProblem.MEANINGLESS_ARITHMETIC;
import static headrace.units.UnitProblem.UNEVEN_POLES;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Problem;
import headrace.problem.Refusal;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** All values are worked by hand. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class ArithmeticTest {
    private static final double ROUNDING = 1e-12;

    @ParameterizedTest(name = "{0} times {1} is {2} {3}")
    @CsvSource({
        // 36 m³/h is 0.01 m³/s
        "36 m³/h, 200 kPa, 2, kW",
        "10 L/s, 2 h, 72, m³",
        "10 L/s, 1000 kg/m³, 10, kg/s",
        "0.01 m², 2 m/s, 72, m³/h",
        "10 kg/s, 1 h, 36, t",
        "800 kg/m³, 2 m³, 1600, kg",
        "5.5 kW, 10 h, 55, kWh",
        // 60 rpm is 2π rad/s
        "10 N·m, 60 rpm, 62.83185307179586, W",
        "3 m, 4 m, 12, m²",
        "12 m², 2 m, 24, m³",
        "2 m/s, 1 min, 120, m",
        "1 mm²/s, 1000 kg/m³, 1, mPa·s",
        "50 %, 30 m³/h, 15, m³/h",
        "50 %, 50 %, 25, %"
    })
    void multiplies_to_the_kind_that_it_means_in_either_order(String one, String other, double value, String unit) {
        Quantity<?> a = Quantities.parse(one);
        Quantity<?> b = Quantities.parse(other);
        Quantity<?> product = (Quantity<?>) Arithmetic.times(a, b);
        assertEquals(value, product.in(unit), ROUNDING * value);
        assertEquals(product, Arithmetic.times(b, a));
    }

    @ParameterizedTest(name = "{0} over {1} is {2} {3}")
    @CsvSource({
        "72 m³, 2 h, 36, m³/h",
        "72 m³, 36 m³/h, 2, h",
        "55 kWh, 10 h, 5.5, kW",
        "55 kWh, 5.5 kW, 10, h",
        "2 kW, 36 m³/h, 200, kPa",
        "2 kW, 200 kPa, 36, m³/h",
        "62.83185307179586 W, 60 rpm, 10, N·m",
        "62.83185307179586 W, 10 N·m, 60, rpm",
        "36 m³/h, 0.01 m², 1, m/s",
        "36 m³/h, 1 m/s, 0.01, m²",
        "10 kg/s, 1000 kg/m³, 10, L/s",
        "10 kg/s, 10 L/s, 1000, kg/m³",
        "1600 kg, 2 m³, 800, kg/m³",
        "1600 kg, 800 kg/m³, 2, m³",
        "1 mPa·s, 1000 kg/m³, 1, mm²/s",
        "12 m², 4 m, 3, m",
        "24 m³, 12 m², 2, m",
        "24 m³, 2 m, 12, m²",
        "120 m, 60 s, 2, m/s",
        "120 m, 2 m/s, 60, s",
        "15 m³/h, 60 m³/h, 25, %",
        "15 m³/h, 50 %, 30, m³/h",
        "2 bar abs, 4 bar abs, 50, %",
        "25 %, 50 %, 50, %"
    })
    void divides_back_to_the_kind_that_it_means(String whole, String part, double value, String unit) {
        Quantity<?> quotient = (Quantity<?>) Arithmetic.over(Quantities.parse(whole), Quantities.parse(part));
        assertEquals(value, quotient.in(unit), ROUNDING * value);
    }

    @ParameterizedTest(name = "{0} {1} {2} is {3}")
    @CsvSource({
        "20 °C, plus, 5 K, 25 °C",
        "5 K, plus, 20 °C, 25 °C",
        "20 °C, minus, 5 K, 15 °C",
        "20 °C, minus, 5 °C, 15 K",
        "50 °F, minus, 32 °F, 10 K",
        "2 bar gauge, plus, 1 bar, 3 bar gauge",
        "1 bar, plus, 2 bar gauge, 3 bar gauge",
        "2 bar gauge, minus, 50 kPa, 1.5 bar gauge",
        "2 bar gauge, minus, 1 bar gauge, 1 bar",
        "2 bar abs, plus, 1 bar, 3 bar abs",
        "1 bar, plus, 2 bar abs, 3 bar abs",
        "2 bar abs, minus, 1.5 bar, 0.5 bar abs",
        "2 bar abs, minus, 3 bar abs, -1 bar",
        "3 m, plus, 40 cm, 3.4 m",
        "3 m, minus, 5 m, -2 m",
        "30 m³/h, plus, 10 L/s, 66 m³/h"
    })
    void adds_and_subtracts_what_can_be(String one, String operation, String other, String expected) {
        Quantity<?> a = Quantities.parse(one);
        Quantity<?> b = Quantities.parse(other);
        Object result = operation.equals("plus") ? Arithmetic.plus(a, b) : Arithmetic.minus(a, b);
        Quantity<?> wanted = Quantities.parse(expected);
        assertEquals(wanted.kind(), ((Quantity<?>) result).kind());
        assertEquals(wanted.si(), ((Quantity<?>) result).si(), ROUNDING * 300);
    }

    static Stream<Arguments> traps() {
        return Stream.of(
                trap("add", "3 m³/h", "4 m head"),
                trap("add", "3 m³/h", "4 kg/s"),
                trap("add", "16 m", "2 m head"),
                trap("add", "16 m head", "30 kPa"),
                trap("add", "2 bar gauge", "2 bar abs"),
                trap("add", "2 bar gauge", "2 bar gauge"),
                trap("add", "2 bar abs", "2 bar abs"),
                trap("add", "20 °C", "5 °C"),
                trap("add", "5 kW", "5 kWh"),
                trap("add", "50 Hz", "50 rpm"),
                trap("add", "1450 rpm", "2 m/s"),
                trap("add", "5 N·m", "5 J"),
                trap("add", "1 mPa·s", "1 mm²/s"),
                trap("add", "10 Kv", "10 m³/h"),
                trap("add", "5 K", "30 kPa"),
                trap("subtract", "20 °C", "30 kPa"),
                trap("subtract", "5 K", "20 °C"),
                trap("subtract", "1 bar", "2 bar gauge"),
                trap("subtract", "2 bar gauge", "1 bar abs"),
                trap("subtract", "2 bar abs", "1 bar gauge"),
                trap("subtract", "5 kg", "5 m³"),
                trap("subtract", "40 %", "3 m"),
                trap("multiply", "52 m³/h", "16 m head"),
                trap("multiply", "52 m³/h", "16 m"),
                trap("multiply", "52 m³/h", "52 m³/h"),
                trap("multiply", "16 m head", "1000 kg/m³"),
                trap("multiply", "30 kPa", "30 kPa"),
                trap("multiply", "52 m³/h", "2 bar gauge"),
                trap("multiply", "5 kW", "5 kW"),
                trap("multiply", "5 kWh", "2 h"),
                trap("multiply", "10 N·m", "50 Hz"),
                trap("multiply", "1450 rpm", "2 h"),
                trap("multiply", "20 °C", "50 %"),
                trap("multiply", "20 °C", "5 K"),
                trap("multiply", "4.2 kJ/(kg·K)", "5 K"),
                trap("divide", "30 kPa", "16 m head"),
                trap("divide", "30 kPa", "52 m³/h"),
                trap("divide", "16 m head", "16 m"),
                trap("divide", "5 kW", "2 h"),
                trap("divide", "5 kW", "16 m head"),
                trap("divide", "52 m³/h", "2 h"),
                trap("divide", "50 Hz", "1450 rpm"),
                trap("divide", "20 °C", "10 °C"),
                trap("divide", "20 °C", "10 K"),
                trap("divide", "2 bar abs", "2 bar gauge"),
                trap("divide", "50 %", "2 h"),
                trap("divide", "10 Kv", "10 m³/h"),
                trap("compare", "16 m", "16 m head"),
                trap("compare", "20 °C", "20 K"),
                trap("compare", "2 bar gauge", "2 bar"),
                trap("compare", "2 bar gauge", "2 bar abs"),
                trap("compare", "5 kW", "5 kWh"),
                trap("compare", "5 N·m", "5 J"),
                trap("compare", "50 Hz", "50 rpm"));
    }

    private static Arguments trap(String verb, String one, String other) {
        return Arguments.of(verb, quantity(one), quantity(other));
    }

    private static Quantity<?> quantity(String text) {
        return text.endsWith("m head") ? Head.KIND.parse(text) : Quantities.parse(text);
    }

    @ParameterizedTest(name = "{0} {1} and {2}")
    @MethodSource("traps")
    void refuses_what_means_nothing_and_names_both(String verb, Quantity<?> one, Quantity<?> other) {
        String said = refused(MEANINGLESS_ARITHMETIC, () -> calculate(verb, one, other));
        String both = verb + " " + one + " (" + one.what() + ") and " + other + " (" + other.what() + ")";
        assertTrue(said.contains(both), said);
    }

    @Test
    void offers_the_head_that_a_length_may_mean_and_the_ratio_that_a_number_may_mean() {
        assertTrue(refused(MEANINGLESS_ARITHMETIC, () -> calculate("add", Head.metres(16), Length.metres(2)))
                .contains("such as 5.mHead"));
        assertTrue(refused(MEANINGLESS_ARITHMETIC, () -> calculate("subtract", Ratio.of(0.4), 0.25))
                .contains("0.25.ratio"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"add", "subtract", "compare"})
    void refuses_a_bare_number_beside_a_quantity(String verb) {
        for (Object flow : List.of(Flow.cubicMetresPerHour(3), Ratio.of(0.4), Money.of(3, "EUR"))) {
            assertTrue(refused(MEANINGLESS_ARITHMETIC, () -> calculate(verb, flow, 3))
                    .contains("3 (a bare number)"));
            assertTrue(refused(MEANINGLESS_ARITHMETIC, () -> calculate(verb, 3, flow))
                    .contains("3 (a bare number)"));
        }
    }

    @Test
    void refuses_nothing_and_text_beside_a_quantity() {
        Flow flow = Flow.cubicMetresPerHour(3);
        for (String verb : List.of("add", "subtract", "multiply", "divide", "compare")) {
            refused(MEANINGLESS_ARITHMETIC, () -> calculate(verb, flow, null));
            refused(MEANINGLESS_ARITHMETIC, () -> calculate(verb, flow, "3"));
        }
    }

    @Test
    void refuses_a_number_divided_by_a_quantity() {
        refused(MEANINGLESS_ARITHMETIC, () -> Arithmetic.over(2, Time.hours(1)));
        refused(MEANINGLESS_ARITHMETIC, () -> Arithmetic.over(1, Ratio.of(0.5)));
    }

    @Test
    void refuses_the_negative_and_the_multiple_of_a_temperature() {
        refused(MEANINGLESS_ARITHMETIC, () -> Arithmetic.negative(Temperature.celsius(12)));
        refused(MEANINGLESS_ARITHMETIC, () -> Arithmetic.times(2, Temperature.celsius(12)));
        refused(MEANINGLESS_ARITHMETIC, () -> Arithmetic.over(Temperature.celsius(12), 2));
    }

    @Test
    void offers_the_way_from_a_pressure_to_a_head_and_from_gauge_to_absolute() {
        String head = refused(MEANINGLESS_ARITHMETIC, () -> Arithmetic.plus(Head.metres(16), Pressure.kilopascals(30)));
        assertTrue(head.contains("30.kPa.headOf(liquid)"), head);
        String absolute =
                refused(MEANINGLESS_ARITHMETIC, () -> Arithmetic.plus(GaugePressure.bars(2), AbsolutePressure.bars(2)));
        assertTrue(absolute.contains("toAbsolute"), absolute);
    }

    @Test
    void says_what_a_kind_can_be_multiplied_and_divided_by() {
        String times = refused(MEANINGLESS_ARITHMETIC, () -> Arithmetic.times(Flow.litresPerSecond(1), Head.metres(1)));
        assertTrue(times.contains("can be multiplied by: pressure difference, time, density, number or ratio"), times);
        String over = refused(MEANINGLESS_ARITHMETIC, () -> Arithmetic.over(Energy.joules(1), Head.metres(1)));
        assertTrue(over.contains("can be divided by: power, time, energy, number or ratio"), over);
    }

    @Test
    void scales_everything_but_a_temperature() {
        assertEquals(Flow.cubicMetresPerHour(12), Arithmetic.times(Flow.cubicMetresPerHour(4), 3));
        assertEquals(GaugePressure.bars(3), Arithmetic.times(1.5, GaugePressure.bars(2)));
        assertEquals(AbsolutePressure.bars(1), Arithmetic.over(AbsolutePressure.bars(2), 2));
        assertEquals(Money.of(240, "EUR"), Arithmetic.times(Money.of(120, "EUR"), 2));
        assertEquals(Money.of(60, "EUR"), Arithmetic.times(Ratio.percent(50), Money.of(120, "EUR")));
        assertEquals(new EnergyPrice(Money.of(0.25, "EUR")), Arithmetic.over(new EnergyPrice(Money.of(0.5, "EUR")), 2));
        assertEquals(Flow.cubicMetresPerHour(-4), Arithmetic.negative(Flow.cubicMetresPerHour(4)));
    }

    @Test
    void makes_money_of_energy_and_its_price_and_back() {
        Energy energy = Energy.kilowattHours(200);
        EnergyPrice price = new EnergyPrice(Money.of(0.25, "EUR"));
        Money cost = Money.of(50, "EUR");
        assertEquals(cost, Arithmetic.times(energy, price));
        assertEquals(cost, Arithmetic.times(price, energy));
        assertEquals(cost, energy.times(price));
        assertEquals(price, Arithmetic.over(cost, energy));
        assertEquals(energy, Arithmetic.over(cost, price));
        assertEquals(Ratio.of(0.5), Arithmetic.over(cost, Money.of(100, "EUR")));
    }

    @Test
    void never_mixes_currencies() {
        Money euros = Money.of(5, "EUR");
        for (Money other : List.of(Money.of(5, "USD"), new Money(5, ""))) {
            for (String verb : List.of("add", "subtract", "divide", "compare")) {
                String said = refused(MEANINGLESS_ARITHMETIC, () -> calculate(verb, euros, other));
                assertTrue(said.contains(euros.toString()) && said.contains("5.00"), said);
            }
            refused(MEANINGLESS_ARITHMETIC, () -> Arithmetic.over(euros, new EnergyPrice(other)));
            refused(MEANINGLESS_ARITHMETIC, () -> new EnergyPrice(euros).plus(new EnergyPrice(other)));
        }
        refused(MEANINGLESS_ARITHMETIC, () -> Arithmetic.times(euros, euros));
        refused(MEANINGLESS_ARITHMETIC, () -> Arithmetic.times(euros, Energy.kilowattHours(1)));
        assertEquals(Money.of(3, "EUR"), Arithmetic.minus(euros, Money.of(2, "EUR")));
        assertEquals(Money.of(3, "EUR"), euros.minus(Money.of(2, "EUR")));
    }

    @Test
    void compares_two_of_a_kind_by_size_whatever_their_units() {
        assertTrue(Arithmetic.compare(Length.feet(1), Length.metres(0.3)) > 0);
        assertTrue(Arithmetic.compare(Temperature.celsius(-40), Temperature.fahrenheit(-39)) < 0);
        assertEquals(0, Arithmetic.compare(Money.of(5, "EUR"), Money.of(5, "EUR")));
        assertTrue(Arithmetic.compare(new EnergyPrice(new Money(2, "")), new EnergyPrice(new Money(1, ""))) > 0);
    }

    @Test
    void turns_a_pressure_into_a_head_only_in_a_liquid_and_back() {
        // 1000 kg/m³ · 9.80665 m/s² · 3 m = 29419.95 Pa
        Density water = Density.kilogramsPerCubicMetre(1000);
        assertEquals(3, Pressure.pascals(29419.95).headOf(water).metres(), ROUNDING * 3);
        assertEquals(29419.95, Head.metres(3).pressureOf(water).pascals(), ROUNDING * 29420);
        assertEquals(29419.95, Length.metres(3).pressureOf(water).pascals(), ROUNDING * 29420);
        refused(IMPOSSIBLE_QUANTITY, () -> Pressure.pascals(1).headOf(Density.ZERO));
    }

    @Test
    void moves_between_gauge_and_absolute_by_the_pressure_of_the_air() {
        AbsolutePressure air = AbsolutePressure.kilopascals(100);
        assertEquals(300, GaugePressure.bars(2).toAbsolute(air).toKilopascals(), ROUNDING * 300);
        assertEquals(2, AbsolutePressure.bars(3).toGauge(air).toBars(), ROUNDING * 3);
    }

    @ParameterizedTest(name = "{0} poles on {1} Hz turn at {2} rpm")
    @CsvSource({"2, 50, 3000", "4, 50, 1500", "6, 50, 1000", "4, 60, 1800", "8, 60, 900"})
    void turns_a_frequency_into_a_synchronous_speed_by_the_poles(int poles, double hertz, double rpm) {
        assertEquals(rpm, Frequency.hertz(hertz).synchronousSpeed(poles).toRevolutionsPerMinute(), ROUNDING * rpm);
    }

    @ParameterizedTest
    @ValueSource(ints = {-2, 0, 1, 3})
    void refuses_poles_that_do_not_come_in_pairs(int poles) {
        refused(UNEVEN_POLES, () -> Frequency.hertz(50).synchronousSpeed(poles));
    }

    @Test
    void refuses_what_no_quantity_can_be() {
        refused(IMPOSSIBLE_QUANTITY, () -> Flow.cubicMetresPerHour(Double.NaN));
        refused(IMPOSSIBLE_QUANTITY, () -> Flow.cubicMetresPerHour(Double.POSITIVE_INFINITY));
        refused(IMPOSSIBLE_QUANTITY, () -> new Money(Double.NaN, "EUR"));
        refused(IMPOSSIBLE_QUANTITY, () -> Length.metres(1).over(Length.ZERO));
        refused(IMPOSSIBLE_QUANTITY, () -> Length.metres(1).over(0));
        refused(IMPOSSIBLE_QUANTITY, () -> Power.watts(1e200).times(1e200));
    }

    private static Object calculate(String verb, Object one, Object other) {
        return switch (verb) {
            case "add" -> Arithmetic.plus(one, other);
            case "subtract" -> Arithmetic.minus(one, other);
            case "multiply" -> Arithmetic.times(one, other);
            case "divide" -> Arithmetic.over(one, other);
            default -> Arithmetic.compare(one, other);
        };
    }

    private static String refused(Problem problem, Executable asked) {
        Refusal refusal = assertThrows(Refusal.class, asked);
        assertEquals(problem, refusal.problem());
        return refusal.getMessage();
    }
}
