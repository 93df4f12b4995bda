package headrace.rule.index;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Refusal;
import headrace.rule.index.PumpEnergyIndex.Measured;
import headrace.rule.index.PumpEnergyIndex.Point;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** The worked case of the theory page: formulas of the 2016 procedure from memory, recomputed independently. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class PumpEnergyIndexTest {
    private static final Measured CASE = measured(14.482221, 16.630302, 17.493756, 18.491073, 1800, 1);

    @Test
    void gives_the_worked_case_of_the_procedure() {
        PumpEnergyIndex index = PumpEnergyIndex.of(CASE, ClearWaterPumpType.of("escc"));
        assertEquals(1272.7922, index.standard().specificSpeed(), 5e-5);
        assertEquals(75.50678, index.standard().efficiency().toPercent(), 5e-6);
        assertEquals(20, index.motorRated().toHorsepower(), 1e-9);
        assertEquals(93.0, index.motorEfficiency().toPercent(), 1e-9);
        assertEquals(17.67377, index.standardRating().toHorsepower(), 1e-5);
        assertEquals(17.50763, index.constantRating().toHorsepower(), 1e-5);
        assertEquals(8.61232, index.variableRating().toHorsepower(), 1e-5);
        assertEquals(0.99060, index.constantLoad(), 5e-6);
        assertEquals(0.48729, index.variableLoad(), 5e-6);
        double[] inputs = {1.4236, 4.1693, 9.7424, 19.1140};
        for (int i = 0; i < inputs.length; i++) {
            assertEquals(inputs[i], index.loads().variableInput().get(i).toHorsepower(), 6e-5);
        }
        assertTrue(index.toString().contains("not a certified rating"));
    }

    @Test
    void is_one_for_the_pump_that_just_meets_the_standard() {
        List<Power> standard =
                PumpEnergyIndex.of(CASE, ClearWaterPumpType.ESCC).loads().standardShaft();
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            Point point = CASE.points().get(i);
            points.add(new Point(point.flow(), point.head(), standard.get(i)));
        }
        Measured just = new Measured(CASE.speed(), 1, points, CASE.overload());
        assertEquals(1, PumpEnergyIndex.of(just, ClearWaterPumpType.ESCC).constantLoad(), 1e-14);
    }

    /** 50 m³/h is 220.14 gpm and 32 m is 104.99 ft; at 3600 rpm, so N_s = 3600·√220.14/104.99^0.75. */
    @Test
    void takes_the_points_of_a_curve() {
        PumpEnergyIndex index = PumpEnergyIndex.of(JudgedPump.of(Ratio.percent(75), 3600), ClearWaterPumpType.ESFM, 1);
        assertEquals(
                3600 * Math.sqrt(220.14) / Math.pow(104.99, 0.75),
                index.standard().specificSpeed(),
                0.1);
        List<Power> shaft = index.loads().constant();
        assertEquals(0.875 * shaft.get(1).watts(), shaft.get(0).watts(), 1e-4);
        assertEquals(1.05 * shaft.get(1).watts(), shaft.get(2).watts(), 1e-4);
        PumpEnergyIndex moved = PumpEnergyIndex.of(JudgedPump.of(Ratio.percent(75), 3500), ClearWaterPumpType.ESFM, 1);
        assertTrue(moved.notes().has(IndexProblem.MOVED_TO_NOMINAL_SPEED));
        assertEquals(
                Math.pow(3600 / 3500.0, 3),
                moved.loads().constant().get(1).over(shaft.get(1)).value(),
                1e-6);
    }

    @Test
    void refuses_a_pump_outside_the_scope() {
        refused(measured(0.8, 0.9, 0.95, 0.97, 1800, 1));
        refused(measured(180, 201, 210, 220, 1800, 1));
        refused(measured(180, 190, 198, 220, 1800, 1));
        refused(measured(14, 16, 17, 18, 3600, 20));
        refused(measured(14, 16, 17, 18, 1800, 0));
        assertEquals(
                IndexProblem.UNKNOWN_PUMP_TYPE,
                assertThrows(Refusal.class, () -> ClearWaterPumpType.of("ESOB")).problem());
        assertThrows(
                Refusal.class,
                () -> PumpEnergyIndex.of(JudgedPump.of(Ratio.percent(75), 2900), ClearWaterPumpType.ESCC, 1));
    }

    private static Measured measured(double a, double b, double c, double overload, double rpm, int stages) {
        return new Measured(
                Speed.revolutionsPerMinute(rpm),
                stages,
                List.of(point(375, 110, a), point(500, 100, b), point(550, 95, c)),
                Power.horsepower(overload));
    }

    private static Point point(double gallonsPerMinute, double feet, double horsepower) {
        return new Point(Flow.usGallonsPerMinute(gallonsPerMinute), Head.feet(feet), Power.horsepower(horsepower));
    }

    private static void refused(Measured measured) {
        Refusal refusal = assertThrows(Refusal.class, () -> PumpEnergyIndex.of(measured, ClearWaterPumpType.ESCC));
        assertEquals(IndexProblem.OUTSIDE_INDEX_SCOPE, refusal.problem(), refusal.getMessage());
    }
}
