package headrace.rule.index;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.curve.CurvePoint;
import headrace.curve.PumpCurve;
import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.rule.index.MinimumEfficiencyIndex.Reached;
import headrace.rule.index.MinimumEfficiencyIndex.Required;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class MinimumEfficiencyIndexTest {
    /** The formula of EU 547/2012 Annex III, recomputed independently. */
    @ParameterizedTest
    @CsvSource({
        "ESCC, 2900, 50, 32, true, 66.777, 70.514, 69.456",
        "ESCC, 2900, 50, 32, false, 61.890, 65.354, 64.374",
        "ESOB, 1450, 100, 20, true, 72.680, 76.748, 75.597"
    })
    void asks_for_the_efficiencies_of_the_regulation(
            String type, double rpm, double flow, double head, boolean forty, double part, double best, double over) {
        CurvePoint point = new CurvePoint(
                Flow.cubicMetresPerHour(flow),
                Head.metres(head),
                Power.kilowatts(5),
                Ratio.percent(70),
                Speed.revolutionsPerMinute(rpm),
                Notes.NONE);
        Required required = MinimumEfficiencyIndex.required(WaterPumpType.of(type), point, 1, forty);
        assertEquals(part, required.partLoad().toPercent(), 6e-4);
        assertEquals(best, required.best().toPercent(), 6e-4);
        assertEquals(over, required.overload().toPercent(), 6e-4);
    }

    /** The pump asks 70.514 % for 0.40 and 65.354 % for 0.10; its part load and overload have a little to spare. */
    @ParameterizedTest
    @CsvSource({"70.52, AT_LEAST_0_40", "70.50, AT_LEAST_0_10", "65.36, AT_LEAST_0_10", "65.34, BELOW_0_10"})
    void says_which_index_a_pump_reaches_at_all_three_points(double percent, Reached reached) {
        MinimumEfficiencyIndex index =
                MinimumEfficiencyIndex.of(JudgedPump.of(Ratio.percent(percent), 2900), WaterPumpType.ESCC, 1);
        assertEquals(reached, index.reached());
        assertEquals(25.4021, index.specificSpeed(), 1e-3);
        assertEquals(
                percent * JudgedPump.PART_LOAD,
                index.points().get(0).efficiency().toPercent(),
                1e-6);
        assertEquals(percent, index.points().get(1).efficiency().toPercent(), 1e-6);
        assertEquals(
                percent * JudgedPump.OVERLOAD,
                index.points().get(2).efficiency().toPercent(),
                1e-6);
        assertTrue(index.toString().contains("not a certified rating"));
        assertTrue(index.notes().isEmpty());
    }

    @Test
    void moves_a_curve_near_the_nominal_speed_and_says_so() {
        PumpCurve tested = JudgedPump.of(Ratio.percent(75), 2950);
        MinimumEfficiencyIndex index = MinimumEfficiencyIndex.of(tested, WaterPumpType.ESCC, 1);
        assertTrue(index.notes().has(IndexProblem.MOVED_TO_NOMINAL_SPEED));
        assertEquals(50 * 2900 / 2950.0, index.points().get(1).flow().toCubicMetresPerHour(), 1e-5);
        assertEquals(75, index.points().get(1).efficiency().toPercent(), 1e-9);
    }

    @Test
    void refuses_a_pump_outside_the_scope() {
        refused(JudgedPump.of(Ratio.percent(75), 2200), WaterPumpType.ESCC, 1);
        refused(JudgedPump.of(Ratio.percent(75), 2900), WaterPumpType.ESCC, 2);
        refused(JudgedPump.of(Ratio.percent(75), 2900), WaterPumpType.MS_V, 1);
        refused(JudgedPump.of(Ratio.percent(75), 2900), WaterPumpType.ESCC, 0);
        refused(JudgedPump.of(Ratio.percent(75), 1450), WaterPumpType.MS_V, 3);
        Liquid glycol = Liquid.propyleneGlycol(Ratio.percent(30), Temperature.celsius(20));
        refused(JudgedPump.of(Ratio.percent(75), 2900, glycol), WaterPumpType.ESCC, 1);
        assertEquals(
                IndexProblem.UNKNOWN_PUMP_TYPE,
                assertThrows(Refusal.class, () -> WaterPumpType.of("ESFM")).problem());
    }

    @Test
    void judges_the_head_of_a_stage_where_there_are_several() {
        PumpCurve curve = JudgedPump.of(Ratio.percent(70), 2900);
        double one = MinimumEfficiencyIndex.of(curve, WaterPumpType.ESCC, 1).specificSpeed();
        MinimumEfficiencyIndex three = MinimumEfficiencyIndex.of(curve, WaterPumpType.of("MS-V"), 3);
        assertEquals(one * Math.pow(3, 0.75), three.specificSpeed(), 1e-9);
        assertFalse(three.toString().isEmpty());
    }

    private static void refused(PumpCurve curve, WaterPumpType type, int stages) {
        Refusal refusal = assertThrows(Refusal.class, () -> MinimumEfficiencyIndex.of(curve, type, stages));
        assertEquals(IndexProblem.OUTSIDE_INDEX_SCOPE, refusal.problem(), refusal.getMessage());
    }
}
