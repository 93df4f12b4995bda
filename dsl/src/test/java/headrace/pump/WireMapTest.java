package headrace.pump;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import headrace.curve.CurveFormula;
import headrace.curve.EfficiencyOverSpeed;
import headrace.curve.PumpCurve;
import headrace.drive.CombinedLosses;
import headrace.drive.DriveTrain;
import headrace.drive.Losses;
import headrace.drive.SeparateLosses;
import headrace.liquid.Liquid;
import headrace.numeric.Polynomial;
import headrace.pump.WireMap.Table;
import headrace.units.Flow;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Temperature;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class WireMapTest {
    private static final double[] FLOWS = new double[45];
    private static final double[] SPEEDS = new double[19];

    static {
        for (int i = 0; i < FLOWS.length; i++) {
            FLOWS[i] = 3 * i / 3600.0;
        }
        for (int i = 0; i < SPEEDS.length; i++) {
            SPEEDS[i] = 0.15 + 0.05 * i;
        }
    }

    static List<PumpSet> sets() {
        PumpSet set = KnownPump.set(SeparateLosses.ASSUMED);
        Liquid thick = Liquid.propyleneGlycol(Ratio.percent(55), Temperature.celsius(-5));
        DriveTrain cabled = set.driveTrain().withCableLoss(Ratio.percent(2));
        return List.of(
                set,
                set.onMains(),
                PumpSet.of(KnownPump.curve(), cabled),
                KnownPump.set(new CombinedLosses()),
                set.with(KnownPump.curve().withEfficiencyOverSpeed(EfficiencyOverSpeed.correlation())),
                set.with(KnownPump.curve()
                        .withEfficiencyOverSpeed(EfficiencyOverSpeed.mechanicalLoss(Power.watts(100), 1))),
                set.with(KnownPump.curve().inLiquid(thick)),
                set.with(KnownPump.curve().atSpeed(Ratio.percent(90))));
    }

    @ParameterizedTest
    @MethodSource("sets")
    void every_cell_holds_what_the_pump_set_says_of_it_alone(PumpSet set) {
        WireMap map = WireMap.of(FLOWS, SPEEDS);
        set.fill(map);
        double rated = set.curve().speed().over(set.ratedSpeed()).value();
        for (int i = 0; i < map.rows(); i++) {
            for (int j = 0; j < map.columns(); j++) {
                double q = FLOWS[j];
                double s = SPEEDS[i];
                assertEquals(set.curve().covers(q, s), map.covers(i, j));
                if (map.covers(i, j)) {
                    compare(set, map, i, j, rated * s);
                } else {
                    for (Table table : Table.values()) {
                        assertEquals(0, map.at(table, i, j));
                    }
                }
            }
        }
    }

    private static void compare(PumpSet set, WireMap map, int i, int j, double ofRated) {
        double q = FLOWS[j];
        double s = SPEEDS[i];
        double shaft = set.curve().shaftWatts(q, s);
        double efficiency = set.curve().efficiency(q, s);
        Losses losses = set.driveTrain().lossesAt(Power.watts(shaft), Ratio.of(ofRated));
        double both = losses.of(Losses.Place.MOTOR_AND_DRIVE).watts();
        double wire = set.wireWatts(q, s);
        assertEquals(set.curve().headMetres(q, s), map.at(Table.HEAD, i, j), 1e-12);
        assertEquals(shaft, map.at(Table.SHAFT, i, j), 1e-9);
        assertEquals(efficiency, map.at(Table.EFFICIENCY, i, j), 1e-12);
        assertEquals(losses.of(Losses.Place.MOTOR).watts() + both, map.at(Table.MOTOR_LOSS, i, j), 1e-9);
        assertEquals(losses.of(Losses.Place.DRIVE).watts(), map.at(Table.DRIVE_LOSS, i, j), 1e-9);
        assertEquals(wire, map.at(Table.WIRE, i, j), 1e-9);
        assertEquals(efficiency * shaft / wire, map.at(Table.WIRE_TO_WATER, i, j), 1e-12);
    }

    /** The second filling is of a pump with a shorter curve: 60 m³/h at full speed, so 40 at two thirds. */
    @Test
    void filled_again_nothing_of_the_first_filling_is_left() {
        PumpSet set = KnownPump.set(SeparateLosses.ASSUMED);
        CurveFormula formula = new CurveFormula(
                Polynomial.of(40, 0, -0.0025).ofScaled(3600),
                Polynomial.of(4000, 50).ofScaled(3600),
                Flow.ZERO,
                KnownPump.m3ph(60));
        PumpCurve curve = PumpCurve.of("P-B", KnownPump.SPEED, KnownPump.WATER, formula);
        WireMap map = WireMap.of(new double[] {0, 39 / 3600.0, 41 / 3600.0}, new double[] {2 / 3.0});
        set.fill(map);
        assertEquals(false, map.covers(0, 0));
        assertEquals(true, map.covers(0, 2));
        set.with(curve).fill(map);
        assertEquals(true, map.covers(0, 0));
        assertEquals(true, map.covers(0, 1));
        assertEquals(false, map.covers(0, 2));
        assertEquals(0, map.at(Table.WIRE, 0, 2));
        assertEquals(40 * 4 / 9.0, map.at(Table.HEAD, 0, 0), 1e-12);
        assertEquals(40 * 4 / 9.0 - 0.0025 * 39 * 39, map.at(Table.HEAD, 0, 1), 1e-12);
    }

    @Test
    void takes_no_flows_out_of_order_and_no_speed_of_nothing() {
        double[] one = {1};
        assertThrows(IllegalArgumentException.class, () -> WireMap.of(new double[] {0, 0}, one));
        assertThrows(IllegalArgumentException.class, () -> WireMap.of(new double[] {-1, 0}, one));
        assertThrows(IllegalArgumentException.class, () -> WireMap.of(one, new double[] {0}));
        assertThrows(IllegalArgumentException.class, () -> WireMap.of(one, new double[] {Double.NaN}));
        assertEquals(0, WireMap.of(new double[0], one).columns());
    }

    @Test
    void has_a_row_for_each_speed_and_a_column_for_each_flow() {
        WireMap map = WireMap.of(new double[] {0, 1, 2}, new double[] {0.5, 1});
        assertEquals(2, map.rows());
        assertEquals(3, map.columns());
    }
}
