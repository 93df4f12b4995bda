package headrace.benchmark;

import headrace.drive.Drive;
import headrace.drive.DriveLosses;
import headrace.drive.DriveTrain;
import headrace.drive.FittedLosses;
import headrace.drive.LossPoint;
import headrace.drive.Motor;
import headrace.pump.PumpSet;
import headrace.pump.WireMap;
import headrace.pump.WireMap.Table;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleBinaryOperator;

/** W2: 400 flows by 400 speeds from head to wire power, with motor and drive losses. */
final class MapGrid implements Workload {
    private static final int CELLS = 400;
    private static final double RATED_KILOWATTS = 11;
    private static final double[][] MOTOR_POINTS = {
        {.9, 1}, {.5, 1}, {.25, 1}, {.9, .5}, {.5, .5}, {.5, .25}, {.25, .25}
    };
    private static final double[][] DRIVE_POINTS = {
        {0, .25}, {0, .5}, {0, 1}, {.5, .25}, {.5, .5}, {.5, 1}, {.9, .5}, {.9, 1}
    };

    private final PumpSet set;
    private final WireMap map;

    MapGrid() {
        double l = Math.log10(RATED_KILOWATTS);
        double efficiency = (0.0773 * l * l * l - 1.8951 * l * l + 9.2984 * l + 83.7025) / 100;
        double full = RATED_KILOWATTS * (1 / efficiency - 1);
        Power rated = Power.kilowatts(RATED_KILOWATTS);
        List<LossPoint> motor = points(
                MOTOR_POINTS,
                (s, t) -> full * (0.22 * Math.pow(s, 1.6) + 0.50 * t * t + 0.10 * Math.pow(s, 2.5) + 0.18 * t * t * s));
        List<LossPoint> drive = points(
                DRIVE_POINTS, (f, i) -> 0.055 + 0.020 * f + 0.090 * i + 0.060 * f * i + 0.110 * i * i);
        DriveTrain train = DriveTrain.of(
                Motor.ofPlate(rated, 4, Ratio.of(efficiency)),
                Drive.declared(rated, DriveLosses.of(drive)).withMagnetisingCurrent(Ratio.of(0.45)),
                FittedLosses.of(motor, new FittedLosses.Exponents(1.6, 2.5)));
        set = PumpSet.of(Inputs.pump(), train);
        double[] q = new double[CELLS];
        double[] s = new double[CELLS];
        for (int i = 0; i < CELLS; i++) {
            q[i] = 140.0 * i / (CELLS - 1) / 3600;
            s[i] = 0.35 + 0.70 * i / (CELLS - 1);
        }
        map = WireMap.of(q, s);
    }

    private static List<LossPoint> points(double[][] at, DoubleBinaryOperator kilowatts) {
        List<LossPoint> points = new ArrayList<>();
        for (double[] each : at) {
            points.add(new LossPoint(
                    Ratio.of(each[0]),
                    Ratio.of(each[1]),
                    Power.kilowatts(kilowatts.applyAsDouble(each[0], each[1]))));
        }
        return points;
    }

    @Override
    public String name() {
        return "W2";
    }

    @Override
    public void call() {
        set.fill(map);
    }

    @Override
    public int inner() {
        return 10;
    }

    @Override
    public Map<String, Object> outputs() {
        Map<String, Object> out = new LinkedHashMap<>();
        int valid = 0;
        int best = 0;
        for (int cell = 0; cell < CELLS * CELLS; cell++) {
            valid += map.covers(cell / CELLS, cell % CELLS) ? 1 : 0;
            best = at(Table.WIRE_TO_WATER, cell) > at(Table.WIRE_TO_WATER, best) ? cell : best;
        }
        out.put("valid_cells", valid);
        out.put("sum_H", sum(Table.HEAD, 1));
        out.put("sum_P2", sum(Table.SHAFT, 1e-3));
        out.put("sum_eta", sum(Table.EFFICIENCY, 1));
        out.put("sum_Lm", sum(Table.MOTOR_LOSS, 1e-3));
        out.put("sum_Ld", sum(Table.DRIVE_LOSS, 1e-3));
        out.put("sum_P1", sum(Table.WIRE, 1e-3));
        out.put("sum_ww", sum(Table.WIRE_TO_WATER, 1));
        out.put("max_ww", at(Table.WIRE_TO_WATER, best));
        out.put("argmax_row_s", best / CELLS);
        out.put("argmax_col_q", best % CELLS);
        out.put("P1[300,200]", map.at(Table.WIRE, 300, 200) / 1000);
        out.put("ww[300,200]", map.at(Table.WIRE_TO_WATER, 300, 200));
        out.put("Ld[100,60]", map.at(Table.DRIVE_LOSS, 100, 60) / 1000);
        return out;
    }

    private double at(Table table, int cell) {
        return map.at(table, cell / CELLS, cell % CELLS);
    }

    private double sum(Table table, double scale) {
        double[] values = new double[CELLS * CELLS];
        for (int cell = 0; cell < values.length; cell++) {
            values[cell] = at(table, cell);
        }
        return Inputs.sum(values, scale);
    }
}
