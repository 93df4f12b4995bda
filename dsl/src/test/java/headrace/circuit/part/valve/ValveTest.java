package headrace.circuit.part.valve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.part.PartProblem;
import headrace.circuit.part.Passage;
import headrace.circuit.part.valve.Characteristic.Point;
import headrace.circuit.part.valve.SettingTable.Row;
import headrace.liquid.Liquid;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.FlowCoefficient;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Pressure;
import headrace.units.Ratio;
import headrace.units.Temperature;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ValveTest {
    private static final Liquid WATER = Liquid.water(Temperature.celsius(20));
    private static final ControlValve VALVE = ControlValve.of("north valve", FlowCoefficient.kv(6.3));

    private static Head metres(Pressure pressure) {
        return Head.metres(pressure.pascals() / 9806.65); // of the water of the definition, 1000 kg/m³
    }

    /** Q = Kv·√Δp by hand: 6.3·√0.2 = 2.817446 m³/h; Δp = (3.6/10)² bar = 12.96 kPa. */
    @Test
    void a_flow_coefficient_is_the_flow_at_one_bar() {
        assertEquals(
                2.817446,
                Orifice.flow(FlowCoefficient.kv(6.3), metres(Pressure.kilopascals(20)))
                        .toCubicMetresPerHour(),
                1e-6);
        double head = Orifice.law(FlowCoefficient.kv(10)).headMetres(3.6 / 3600);
        assertEquals(12.96, head * 9.80665, 1e-9);
    }

    /** The unit factor of one to the other, by hand from the definitions of gallon, pound and inch. */
    @Test
    void kv_and_cv_are_two_units_of_one_thing() {
        assertEquals(1.1560992284, FlowCoefficient.kv(1).toCv(), 1e-10);
        assertEquals(0.8649776554, FlowCoefficient.cv(1).kv(), 1e-10);
    }

    /** K = 2·10⁵/1000·3600²·(π/4)²·D⁴/Kv²: 99.9297 for Kv 10 in 50 mm; printed 3.6 for Kv 500 in 154 mm. */
    @Test
    void a_flow_coefficient_has_a_k_in_a_pipe() {
        assertEquals(99.9297, Orifice.kOf(FlowCoefficient.kv(10), Length.millimetres(50)), 1e-4);
        assertEquals(3.6, Orifice.kOf(FlowCoefficient.kv(500), Length.millimetres(154)), 0.01);
        assertEquals(
                500,
                Orifice.ofK(Orifice.kOf(FlowCoefficient.kv(500), Length.millimetres(154)), Length.millimetres(154))
                        .kv(),
                1e-9);
    }

    /**
     * Example 7.27 of the Technical Paper 410, 2009 edition: 250 US gpm at 60.998 lb/ft³ and 9.8 psi. Without factors
     * of fittings it recomputes to 78.98 on water of 62.364 lb/ft³, and so to 78.98·√(62.364/62.428) = 78.94 on the
     * 1000 kg/m³ of the definition; printed is 79.94, with such factors.
     */
    @Test
    void the_published_example_of_a_control_valve_comes_out_before_the_factors_of_its_fittings() {
        double metres = 9.8 * 6894.757293 / (60.998 * 16.01846337396 * 9.80665);
        double cv = Orifice.taking(Head.metres(metres), Flow.usGallonsPerMinute(250))
                .toCv();
        assertEquals(78.94, cv, 0.01);
        assertEquals(79.94, cv, 79.94 * 0.015);
    }

    @Test
    void an_actuator_holds_against_more_than_nothing() {
        Refusal refusal = assertThrows(
                Refusal.class,
                () -> new ControlValve(
                        "north valve",
                        FlowCoefficient.kv(6.3),
                        Characteristic.linear(),
                        Optional.of(Pressure.kilopascals(0))));
        assertTrue(refusal.getMessage().contains("'north valve'"), refusal.getMessage());
    }

    /** Sizing example 1 of IEC 60534-2-1, which prints 165: 360 m³/h at 965.4 kg/m³ and 460 kPa. */
    @Test
    void the_sizing_example_of_the_standard_comes_out() {
        Head head = Head.metres(460_000 / (965.4 * 9.80665));
        assertEquals(165, Orifice.taking(head, Flow.cubicMetresPerHour(360)).kv(), 0.1);
    }

    /** By hand: κ = 50^(x−1) and 1/50 + (49/50)·x; q = 1/√(1 − N + N/κ²). */
    @ParameterizedTest
    @CsvSource({
        "0.10, 0.029575, 0.029575, 0.041807, 0.059073, 0.118000, 0.165727, 0.231220",
        "0.25, 0.053183, 0.053183, 0.075106, 0.105917, 0.265000, 0.362262, 0.481684",
        "0.50, 0.141421, 0.141421, 0.198030, 0.274721, 0.510000, 0.642514, 0.764458",
        "0.75, 0.376060, 0.376060, 0.497794, 0.630220, 0.755000, 0.852136, 0.917247",
        "0.90, 0.676243, 0.676243, 0.792214, 0.878180, 0.902000, 0.947219, 0.972537",
        "1.00, 1, 1, 1, 1, 1, 1, 1"
    })
    void inherent_and_installed_characteristics_are_those_of_the_table(
            double opening,
            double equal,
            double one,
            double half,
            double quarter,
            double line,
            double lineHalf,
            double lineQuarter) {
        Characteristic percentage = Characteristic.equalPercentage(50);
        Characteristic linear = Characteristic.linear(50);
        assertEquals(equal, percentage.shareAt(opening), 5e-7);
        assertEquals(line, linear.shareAt(opening), 5e-7);
        assertEquals(one, installed(percentage, 1, opening), 5e-7);
        assertEquals(half, installed(percentage, 0.5, opening), 5e-7);
        assertEquals(quarter, installed(percentage, 0.25, opening), 5e-7);
        assertEquals(lineHalf, installed(linear, 0.5, opening), 5e-7);
        assertEquals(lineQuarter, installed(linear, 0.25, opening), 5e-7);
    }

    private static double installed(Characteristic characteristic, double authority, double opening) {
        var installed = new InstalledCharacteristic(characteristic, Ratio.of(authority));
        Ratio flow = installed.flowAt(Ratio.of(opening));
        assertEquals(opening, installed.openingFor(flow).si(), 1e-12);
        return flow.si();
    }

    @Test
    void every_characteristic_goes_from_shut_to_open_and_back_again() {
        for (Characteristic characteristic : List.of(
                Characteristic.linear(),
                Characteristic.linear(30),
                Characteristic.equalPercentage(30),
                Characteristic.quickOpening(),
                Characteristic.through(
                        List.of(point(0, 0), point(20, 3), point(50, 14), point(80, 55), point(100, 100))))) {
            assertEquals(0, characteristic.shareAt(0), 0, characteristic.toString());
            assertEquals(1, characteristic.shareAt(1), 1e-15, characteristic.toString());
            double before = 0;
            for (double x = 0.005; x < 1; x += 0.005) {
                double share = characteristic.shareAt(x);
                assertTrue(share > before, characteristic + " at " + x);
                assertEquals(x, characteristic.openingAt(share), 1e-9, characteristic + " at " + x);
                before = share;
            }
        }
    }

    private static Point point(double opening, double share) {
        return new Point(Ratio.percent(opening), Ratio.percent(share));
    }

    /** By hand: at x = 1/50 it is 50^(0.02−1) = 0.021628; half-way to shut, half of it. */
    @Test
    void equal_percentage_closes_on_a_straight_line_at_the_end_of_its_stroke() {
        Characteristic percentage = Characteristic.equalPercentage(50);
        assertEquals(0.021628, percentage.shareAt(0.02), 1e-6);
        assertEquals(0.010814, percentage.shareAt(0.01), 1e-6);
    }

    @Test
    void a_table_that_does_not_rise_or_does_not_reach_the_ends_is_refused() {
        for (List<Point> points : List.of(
                List.of(point(0, 0), point(50, 60), point(40, 70), point(100, 100)),
                List.of(point(0, 0), point(50, 60), point(70, 60), point(100, 100)),
                List.of(point(0, 3), point(100, 100)),
                List.of(point(0, 0), point(90, 100)),
                List.<Point>of())) {
            Refusal refusal = assertThrows(Refusal.class, () -> Characteristic.through(points));
            assertEquals(PartProblem.IMPOSSIBLE_PART, refusal.problem());
        }
        assertThrows(Refusal.class, () -> Characteristic.equalPercentage(1));
    }

    /**
     * Kv 6.3 fully open at 20 kPa passes 2.817 m³/h; a third of Kvs is at 1 + ln(1/3)/ln 50 = 71.92 % of the stroke.
     */
    @Test
    void the_opening_for_a_flow_is_that_of_its_share_of_the_open_valve() {
        Head head = metres(Pressure.kilopascals(20));
        Flow third = Flow.cubicMetresPerHour(2.8174457 / 3);
        Ratio opening = VALVE.openingFor(third, head);
        assertEquals(71.917, opening.toPercent(), 1e-3);
        assertEquals(third.si(), VALVE.flowAt(opening, head).si(), 1e-12);
        assertEquals(0, VALVE.openingFor(Flow.ZERO, head).si(), 0);
    }

    @Test
    void a_demand_above_the_open_valve_is_refused_with_its_name() {
        Refusal refusal = assertThrows(
                Refusal.class, () -> VALVE.openingFor(Flow.cubicMetresPerHour(2.9), metres(Pressure.kilopascals(20))));
        assertEquals(PartProblem.DEMAND_ABOVE_OPEN_VALVE, refusal.problem());
        assertTrue(refusal.getMessage().contains("north valve"), refusal.getMessage());
        assertTrue(refusal.getMessage().contains("2.817 m³/h"), refusal.getMessage());
        assertThrows(Refusal.class, () -> ControlValve.of("none", FlowCoefficient.ZERO));
    }

    /** By hand: 2 m of 5 m at design is 0.4; with 10 m across the shut valve it is 0.2, which is low. */
    @Test
    void design_and_effective_authority_are_two_numbers() {
        Authority authority = Authority.of(Head.metres(2), Head.metres(5), Head.metres(10));
        assertEquals(0.4, authority.design().si(), 1e-15);
        assertEquals(0.2, authority.effective().si(), 1e-15);
        assertTrue(authority.notes().has(PartProblem.LOW_AUTHORITY));
        assertTrue(authority.notes().toString().contains("effective authority is 0.2"));
        assertTrue(Authority.of(Head.metres(2), Head.metres(5), Head.metres(6))
                .notes()
                .isEmpty());
        assertThrows(Refusal.class, () -> Authority.of(Head.metres(6), Head.metres(5), Head.metres(6)));
    }

    private static final SettingTable TABLE = SettingTable.of(List.of(
            new Row(0.5, FlowCoefficient.kv(0.7)),
            new Row(1, FlowCoefficient.kv(1.6)),
            new Row(2, FlowCoefficient.kv(4)),
            new Row(3, FlowCoefficient.kv(7.5)),
            new Row(4, FlowCoefficient.kv(11))));

    /** By hand: 4 m³/h at 1 bar of excess is Kv 4, which the table has at 2 turns. */
    @Test
    void a_balancing_valve_is_set_from_the_excess_head() {
        BalancingValve open = BalancingValve.open("BV 3", TABLE);
        BalancingValve set = open.taking(metres(Pressure.bars(1)), Flow.cubicMetresPerHour(4));
        assertEquals(2, set.setting(), 1e-9);
        assertEquals(4, set.coefficient().kv(), 1e-9);
        Head excess = Head.metres(3.3);
        Flow flow = Flow.cubicMetresPerHour(2.9);
        assertEquals(3.3, open.taking(excess, flow).headAt(flow, WATER).si(), 1e-9);
    }

    @Test
    void an_excess_that_the_open_valve_takes_but_for_rounding_leaves_it_open() {
        BalancingValve open = BalancingValve.open("BV 3", TABLE);
        Flow flow = Flow.cubicMetresPerHour(4);
        Head head = open.headAt(flow, WATER).times(1 - 1e-13);
        assertEquals(4, open.taking(head, flow).setting(), 1e-9);
    }

    @Test
    void an_excess_that_no_setting_takes_is_refused_with_its_name() {
        BalancingValve open = BalancingValve.open("BV 3", TABLE);
        Flow flow = Flow.cubicMetresPerHour(4);
        for (Head excess : List.of(Head.ZERO, Head.metres(0.5), Head.metres(500))) {
            Refusal refusal = assertThrows(Refusal.class, () -> open.taking(excess, flow));
            assertEquals(PartProblem.NO_SUCH_SETTING, refusal.problem());
            assertTrue(refusal.getMessage().contains("BV 3"), refusal.getMessage());
        }
        assertThrows(Refusal.class, () -> open.at(4.5));
    }

    /** By hand: 2 m³/h set, at half lift 1 m³/h from 25 kPa on; at a quarter of the floor half of that. */
    @Test
    void a_pressure_independent_valve_holds_its_flow_from_the_floor_on() {
        var valve =
                PressureIndependentValve.of("PI 7", Flow.cubicMetresPerHour(2)).at(Ratio.percent(50));
        assertEquals(1, valve.flowAt(Pressure.kilopascals(200), WATER).toCubicMetresPerHour(), 1e-12);
        assertEquals(1, valve.flowAt(Pressure.kilopascals(25), WATER).toCubicMetresPerHour(), 1e-12);
        assertEquals(0.5, valve.flowAt(Pressure.kilopascals(6.25), WATER).toCubicMetresPerHour(), 1e-12);
        assertEquals(25, valve.headAt(valve.limit(), WATER).pressureOf(WATER).toKilopascals(), 1e-9);
        assertEquals(400, valve.ceiling(WATER).pressureOf(WATER).toKilopascals(), 1e-9);
        assertTrue(valve.notesAt(Pressure.kilopascals(20)).has(PartProblem.BELOW_VALVE_FLOOR));
        assertTrue(valve.notesAt(Pressure.kilopascals(450)).has(PartProblem.ABOVE_VALVE_CEILING));
        assertTrue(valve.notesAt(Pressure.kilopascals(30)).isEmpty());
        Refusal refusal =
                assertThrows(Refusal.class, () -> valve.between(Pressure.kilopascals(50), Pressure.kilopascals(40)));
        assertTrue(refusal.getMessage().contains("PI 7"), refusal.getMessage());
    }

    /** By hand: 0.03 bar and (5/25)² bar are 7 kPa in water of 1000 kg/m³. */
    @Test
    void a_check_valve_takes_its_cracking_head_and_that_of_its_flow_coefficient() {
        CheckValve valve = new CheckValve("CV 1", Pressure.bars(0.03), FlowCoefficient.kv(25));
        assertEquals(Passage.FORWARD, valve.passage());
        double cracking = 3000 / (WATER.density().si() * 9.80665);
        assertEquals(cracking, valve.in(WATER).headMetres(0), 1e-12);
        assertEquals(
                cracking + 4000 / 9806.65,
                valve.headAt(Flow.cubicMetresPerHour(5), WATER).si(),
                1e-12);
        assertThrows(Refusal.class, () -> new CheckValve("CV 1", Pressure.bars(-0.03), FlowCoefficient.kv(25)));
    }

    @Test
    void a_bypass_valve_opens_at_its_set_value() {
        BypassValve valve = new BypassValve("bypass", Pressure.kilopascals(80), FlowCoefficient.kv(10));
        assertEquals(80_000 / (WATER.density().si() * 9.80665), valve.in(WATER).headMetres(0), 1e-12);
        assertTrue(valve.in(WATER).slope(1e-3) > 0);
        assertThrows(Refusal.class, () -> new BypassValve("bypass", Pressure.ZERO, FlowCoefficient.kv(10)));
    }

    @Test
    void a_minimum_flow_valve_bypasses_what_is_lacking() {
        var valve = new MinimumFlowValve("least", Flow.cubicMetresPerHour(15), FlowCoefficient.kv(10));
        assertEquals(5, valve.demandBeside(Flow.cubicMetresPerHour(10)).toCubicMetresPerHour(), 1e-12);
        assertEquals(0, valve.demandBeside(Flow.cubicMetresPerHour(20)).si(), 0);
        assertFalse(valve.passage() == Passage.BOTH_WAYS);
    }
}
