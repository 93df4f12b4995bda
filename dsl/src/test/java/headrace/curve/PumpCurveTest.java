package headrace.curve;

import static headrace.curve.CurveProblem.DUTY_OUT_OF_RANGE;
import static headrace.curve.CurveProblem.EFFICIENCY_ABOVE_ONE;
import static headrace.curve.CurveProblem.FLOW_OUT_OF_RANGE;
import static headrace.curve.CurveProblem.HEAD_FALLS_TO_ZERO;
import static headrace.curve.CurveProblem.HEAD_OUT_OF_RANGE;
import static headrace.curve.CurveProblem.POWER_FALLS_TO_ZERO;
import static headrace.curve.CurveProblem.SPEED_OUT_OF_RANGE;
import static headrace.curve.Pumps.cubic;
import static headrace.curve.Pumps.curve;
import static headrace.curve.Pumps.drooping;
import static headrace.curve.Pumps.m3ph;
import static headrace.curve.Pumps.parabola;
import static headrace.curve.Pumps.refusal;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.liquid.Liquid;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PumpCurveTest {
    static List<PumpCurve> curves() {
        return List.of(parabola(), drooping(), cubic());
    }

    /** By hand at 60 m³/h: 40 − 9 = 31 m, 4 + 6 = 10 kW, η = ρ·g·Q·H/P. */
    @Test
    void agrees_with_its_formulas_worked_by_hand() {
        assertEquals(31, parabola().headAt(m3ph(60)).metres(), 1e-12);
        assertEquals(10_000, parabola().shaftPowerAt(m3ph(60)).watts(), 1e-9);
        double hydraulic = parabola().liquid().density().si() * 9.80665 * 60 / 3600 * 31;
        assertEquals(hydraulic / 10_000, parabola().efficiencyAt(m3ph(60)).value(), 1e-12);
    }

    /** The three are one statement: P = ρ·g·Q·H/η, with efficiency 0 at no flow. */
    @ParameterizedTest
    @MethodSource("curves")
    void gives_head_power_and_efficiency_that_agree_with_each_other(PumpCurve curve) {
        for (double s : new double[] {0.4, 1, 1.1}) {
            PumpCurve moved = curve.atSpeed(Ratio.of(s));
            for (int i = 0; i <= 50; i++) {
                CurvePoint point = moved.at(moved.highestFlow().times(i / 50.0));
                double hydraulic = curve.liquid().pressureOf(point.head()).pascals()
                        * point.flow().si();
                assertEquals(
                        hydraulic,
                        point.efficiency().value() * point.shaftPower().watts(),
                        1e-9);
                assertTrue(point.tested());
            }
        }
        assertEquals(0, curve.efficiencyAt(Flow.ZERO).value());
    }

    /** dη/dQ = 0 where (40 − 0.0075·Q²)·(4000 + 100·Q) = (40·Q − 0.0025·Q³)·100, so 0.5·Q³ + 30·Q² = 160 000. */
    @Test
    void has_its_best_efficiency_where_the_derivative_is_nothing() {
        double q = parabola().bestEfficiencyPoint().flow().toCubicMetresPerHour();
        assertEquals(160_000, 0.5 * q * q * q + 30 * q * q, 1e-6);
        assertEquals(parabola().bestEfficiencyPoint().head(), parabola().headAt(m3ph(q)));
    }

    @ParameterizedTest
    @MethodSource("curves")
    void is_nowhere_better_than_at_best_efficiency(PumpCurve curve) {
        for (double s : new double[] {0.4, 0.7, 1, 1.1}) {
            PumpCurve moved = curve.atSpeed(Ratio.of(s));
            double best = moved.bestEfficiencyPoint().efficiency().value();
            for (int i = 0; i <= 1000; i++) {
                double efficiency = moved.efficiencyAt(moved.highestFlow().times(i / 1000.0))
                        .value();
                assertTrue(efficiency <= best + 1e-12 && efficiency >= 0);
            }
        }
    }

    @Test
    void says_how_far_it_reaches_when_asked_beyond_the_test() {
        String message =
                refusal(FLOW_OUT_OF_RANGE, () -> parabola().headAt(m3ph(121))).getMessage();
        assertEquals(
                "Asked for the curve of P-A at 121 m³/h. At 1450 rpm it covers 0 m³/h to 120 m³/h. Ask within that range,"
                        + " extend the curve by choice, or test the pump at that flow. [flow-out-of-range]",
                message);
    }

    @Test
    void refuses_every_query_outside_the_test_at_every_speed() {
        PumpCurve fromTen = curve(new double[] {40, 0, -0.0025}, new double[] {4000, 100}, 10, 120);
        for (double s : new double[] {0.5, 1, 1.1}) {
            PumpCurve moved = fromTen.atSpeed(Ratio.of(s));
            for (double q : new double[] {-1, 9.99 * s, 120.01 * s, 1e9}) {
                refusal(FLOW_OUT_OF_RANGE, () -> moved.headAt(m3ph(q)));
                refusal(FLOW_OUT_OF_RANGE, () -> moved.shaftPowerAt(m3ph(q)));
                refusal(FLOW_OUT_OF_RANGE, () -> moved.efficiencyAt(m3ph(q)));
                refusal(FLOW_OUT_OF_RANGE, () -> moved.at(m3ph(q)));
                assertFalse(moved.covers(m3ph(q).si(), 1));
            }
            assertEquals(10 * s, moved.lowestFlow().toCubicMetresPerHour(), 1e-12);
            assertEquals(120 * s, moved.highestFlow().toCubicMetresPerHour(), 1e-12);
        }
    }

    /** Typed decimals of a moved end may lie a rounding beyond it. */
    @ParameterizedTest
    @MethodSource("curves")
    void takes_its_own_ends_whatever_the_rounding(PumpCurve curve) {
        double end = Math.rint(curve.highestFlow().toCubicMetresPerHour());
        for (int percent = 30; percent <= 120; percent++) {
            PumpCurve moved = curve.atSpeed(Ratio.percent(percent));
            Flow typed = m3ph(end * percent / 100);
            double expected = curve.headAt(m3ph(end)).metres() * percent * percent / 10_000;
            assertEquals(expected, moved.headAt(typed).metres(), 1e-10);
            List<Flow> again = moved.flowsAt(Head.metres(expected));
            assertEquals(typed.si(), again.get(again.size() - 1).si(), 1e-9 * typed.si());
            Head justBelow =
                    Head.metres(expected - 1e-11 * moved.headAt(Flow.ZERO).metres());
            List<Flow> atTheEnd = moved.flowsAt(justBelow);
            assertEquals(typed.si(), atTheEnd.get(atTheEnd.size() - 1).si(), 1e-9 * typed.si());
        }
    }

    @Test
    void finds_both_flows_of_a_head_where_it_droops() {
        List<Flow> flows = drooping().flowsAt(Head.metres(20.8));
        assertEquals(2, flows.size());
        assertEquals(10, flows.get(0).toCubicMetresPerHour(), 1e-10);
        assertEquals(40, flows.get(1).toCubicMetresPerHour(), 1e-10);
        assertEquals(1, drooping().flowsAt(Head.metres(19)).size());
        assertEquals(1, parabola().flowsAt(Head.metres(31)).size());
    }

    @Test
    void finds_flows_again_at_another_speed() {
        List<Flow> flows = drooping().atSpeed(Ratio.percent(50)).flowsAt(Head.metres(20.8 / 4));
        assertEquals(5, flows.get(0).toCubicMetresPerHour(), 1e-10);
        assertEquals(20, flows.get(1).toCubicMetresPerHour(), 1e-10);
    }

    @Test
    void refuses_a_head_that_it_nowhere_has() {
        String message = refusal(HEAD_OUT_OF_RANGE, () -> drooping().flowsAt(Head.metres(21.3)))
                .getMessage();
        assertTrue(message.contains("heads from 15.2 m to 21.25 m"), message);
        refusal(HEAD_OUT_OF_RANGE, () -> drooping().flowsAt(Head.metres(15.1)));
        refusal(HEAD_OUT_OF_RANGE, () -> drooping().pointsAt(Head.metres(-1)));
    }

    @Test
    void measures_its_droop() {
        Droop droop = drooping().droop().orElseThrow();
        assertEquals(1.25, droop.rise().metres(), 1e-12);
        assertEquals(0, droop.foot().si());
        assertEquals(25, droop.flowOfMaximum().toCubicMetresPerHour(), 1e-10);
        assertEquals(21.25, droop.maximum().metres(), 1e-12);
        assertTrue(drooping().notes().has(CurveProblem.HEAD_DROOP));
        Droop slower = drooping().atSpeed(Ratio.percent(60)).droop().orElseThrow();
        assertEquals(0.45, slower.rise().metres(), 1e-12);
        assertEquals(15, slower.flowOfMaximum().toCubicMetresPerHour(), 1e-10);
        assertTrue(parabola().droop().isEmpty());
        assertFalse(parabola().notes().has(CurveProblem.HEAD_DROOP));
    }

    /** H = 30 − 0.6·Q + 0.01·Q² falls to 21 m at 30 m³/h and rises to 25 m at 50 m³/h. */
    @Test
    void measures_a_rise_that_begins_inside_the_range() {
        Droop rise = curve(new double[] {30, -0.6, 0.01}, new double[] {5000, 100}, 0, 50)
                .droop()
                .orElseThrow();
        assertEquals(4, rise.rise().metres(), 1e-11);
        assertEquals(30, rise.foot().toCubicMetresPerHour(), 1e-10);
        assertEquals(50, rise.flowOfMaximum().toCubicMetresPerHour(), 1e-10);
    }

    @Test
    void notes_a_power_that_falls_with_flow() {
        PumpCurve falling = curve(new double[] {40, 0, -0.0025}, new double[] {4000, 200, -1}, 0, 120);
        String note = falling.notes().toString();
        assertTrue(falling.notes().has(CurveProblem.POWER_NOT_RISING));
        assertTrue(note.contains("falls by 0.4 kW from 100 m³/h to 120 m³/h"), note);
        assertFalse(parabola().notes().has(CurveProblem.POWER_NOT_RISING));
    }

    @Test
    void notes_a_best_efficiency_at_the_end_of_the_test() {
        PumpCurve tooShort = curve(new double[] {40, 0, -0.0025}, new double[] {4000, 100}, 0, 50);
        assertTrue(tooShort.notes().has(CurveProblem.BEST_EFFICIENCY_AT_END));
        assertEquals(50, tooShort.bestEfficiencyPoint().flow().toCubicMetresPerHour(), 1e-12);
        PumpCurve tooLate = curve(new double[] {40, 0, -0.0025}, new double[] {4000, 100}, 75, 120);
        assertTrue(tooLate.notes().has(CurveProblem.BEST_EFFICIENCY_AT_END));
        assertFalse(parabola().notes().has(CurveProblem.BEST_EFFICIENCY_AT_END));
    }

    @Test
    void marks_every_point_beyond_the_test_when_extended_by_choice() {
        PumpCurve extended = parabola().extendedTo(m3ph(125));
        CurvePoint beyond = extended.at(m3ph(125));
        assertEquals(40 - 0.0025 * 125 * 125, beyond.head().metres(), 1e-11);
        assertTrue(beyond.notes().has(CurveProblem.EXTENDED_BEYOND_TEST));
        assertFalse(beyond.tested());
        assertTrue(extended.at(m3ph(120)).tested());
        assertTrue(extended.notes().has(CurveProblem.CURVE_EXTENDED));
        assertEquals(125, extended.extendedHighestFlow().toCubicMetresPerHour(), 1e-12);
        assertEquals(120, extended.highestFlow().toCubicMetresPerHour(), 1e-12);
        refusal(FLOW_OUT_OF_RANGE, () -> extended.at(m3ph(125.1)));
    }

    @Test
    void gives_nothing_unmarked_beyond_the_test_even_when_extended() {
        PumpCurve extended = parabola().extendedTo(m3ph(125));
        String message =
                refusal(FLOW_OUT_OF_RANGE, () -> extended.headAt(m3ph(123))).getMessage();
        assertTrue(message.contains("Ask for the point at that flow, which is marked as extended"), message);
        refusal(FLOW_OUT_OF_RANGE, () -> extended.shaftPowerAt(m3ph(123)));
        refusal(FLOW_OUT_OF_RANGE, () -> extended.efficiencyAt(m3ph(123)));
        Head headBeyond = Head.metres(40 - 0.0025 * 123 * 123);
        refusal(HEAD_OUT_OF_RANGE, () -> extended.flowsAt(headBeyond));
        assertFalse(extended.pointsAt(headBeyond).get(0).tested());
        Duty dutyBeyond = new Duty(m3ph(123), headBeyond);
        refusal(DUTY_OUT_OF_RANGE, () -> extended.speedFor(dutyBeyond));
        assertFalse(extended.pointFor(dutyBeyond).tested());
        assertEquals(
                1, extended.pointFor(dutyBeyond).speed().over(extended.speed()).value(), 1e-12);
        refusal(DUTY_OUT_OF_RANGE, () -> parabola().pointFor(dutyBeyond));
    }

    @Test
    void can_be_extended_down_to_shut_off_too() {
        PumpCurve extended = curve(new double[] {40, 0, -0.0025}, new double[] {4000, 100}, 20, 120)
                .extendedTo(Flow.ZERO);
        assertEquals(40, extended.at(Flow.ZERO).head().metres(), 1e-12);
        assertFalse(extended.at(m3ph(19)).tested());
        assertTrue(extended.at(m3ph(20)).tested());
        assertEquals(0, extended.extendedLowestFlow().si());
        assertEquals(20, extended.lowestFlow().toCubicMetresPerHour(), 1e-12);
    }

    @Test
    void is_not_extended_by_a_flow_inside_its_range() {
        assertTrue(parabola().extendedTo(m3ph(50)).notes().isEmpty());
        refusal(FLOW_OUT_OF_RANGE, () -> parabola().extendedTo(m3ph(-1)));
    }

    @Test
    void keeps_its_extension_when_moved() {
        PumpCurve slower = parabola().extendedTo(m3ph(125)).atSpeed(Ratio.percent(50));
        assertEquals(62.5, slower.extendedHighestFlow().toCubicMetresPerHour(), 1e-12);
        assertFalse(slower.at(m3ph(62)).tested());
        assertTrue(slower.at(m3ph(60)).tested());
    }

    @Test
    void refuses_points_of_an_extension_that_no_pump_can_have() {
        refusal(HEAD_FALLS_TO_ZERO, () -> parabola().extendedTo(m3ph(200)).at(m3ph(130)));
        PumpCurve falling = curve(new double[] {40, 0, -0.001}, new double[] {4000, 300, -2}, 0, 100);
        refusal(EFFICIENCY_ABOVE_ONE, () -> falling.extendedTo(m3ph(200)).at(m3ph(140)));
        refusal(POWER_FALLS_TO_ZERO, () -> falling.extendedTo(m3ph(200)).at(m3ph(170)));
    }

    @Test
    void refuses_formulas_that_no_pump_can_have() {
        refusal(HEAD_FALLS_TO_ZERO, () -> curve(new double[] {40, 0, -0.0025}, new double[] {4000, 100}, 0, 130));
        refusal(POWER_FALLS_TO_ZERO, () -> curve(new double[] {40, 0, -0.0025}, new double[] {4000, -100}, 0, 100));
        refusal(POWER_FALLS_TO_ZERO, () -> curve(new double[] {40, 0, -0.0025}, new double[] {500, -100, 1}, 0, 100));
        refusal(EFFICIENCY_ABOVE_ONE, () -> curve(new double[] {40, 0, -0.0025}, new double[] {400, 10}, 0, 100));
        refusal(FLOW_OUT_OF_RANGE, () -> curve(new double[] {40}, new double[] {400}, 100, 100));
        refusal(FLOW_OUT_OF_RANGE, () -> curve(new double[] {40}, new double[] {400}, -1, 100));
    }

    @Test
    void refuses_to_turn_at_no_speed() {
        refusal(SPEED_OUT_OF_RANGE, () -> parabola().atSpeed(Speed.ZERO));
        refusal(SPEED_OUT_OF_RANGE, () -> parabola().atSpeed(Ratio.percent(-20)));
        String message = refusal(SPEED_OUT_OF_RANGE, () -> parabola().atSpeed(Ratio.of(1e-9)))
                .getMessage();
        assertTrue(message.contains("(1−η)/(1−η₀)"), message);
    }

    @Test
    void notes_a_speed_far_from_the_tested_one() {
        assertTrue(parabola().atSpeed(Ratio.of(0.29)).notes().has(CurveProblem.SPEED_FAR_FROM_TEST));
        assertTrue(parabola().atSpeed(Ratio.of(1.21)).notes().has(CurveProblem.SPEED_FAR_FROM_TEST));
        assertTrue(parabola().atSpeed(Ratio.of(0.31)).notes().isEmpty());
        assertTrue(parabola().atSpeed(Ratio.of(1.19)).notes().isEmpty());
        PumpCurve back = parabola().atSpeed(Ratio.of(0.1)).atSpeed(parabola().speed());
        assertTrue(back.notes().isEmpty());
    }

    @Test
    void names_what_it_rests_on() {
        List<String> choices = parabola().basis().choices();
        assertTrue(
                choices.stream().anyMatch(c -> c.contains("efficiency over speed: (1−η)/(1−η₀)")), choices.toString());
        assertTrue(choices.stream().anyMatch(c -> c.contains("IAPWS")), choices.toString());
    }

    @Test
    void has_no_points_and_no_scatter_when_given_as_formulas() {
        assertTrue(parabola().points().isEmpty());
        assertTrue(parabola().headFit().residual().isEmpty());
        assertEquals(0, parabola().headFit().degreesOfFreedom());
        assertTrue(parabola().powerFit().meanBandAt(m3ph(1), Ratio.percent(95)).isEmpty());
        assertTrue(parabola().impellerDiameter().isEmpty());
    }

    @Test
    void says_in_one_line_what_it_is() {
        String line = parabola().toString();
        assertTrue(line.startsWith("P-A at 1450 rpm: 0 m³/h to 120 m³/h, best efficiency "), line);
    }

    @Test
    void is_in_the_liquid_that_it_was_given() {
        Liquid liquid = parabola().liquid();
        assertEquals(Pumps.WATER, liquid);
        assertEquals(Pumps.RATED, parabola().testedSpeed());
    }
}
