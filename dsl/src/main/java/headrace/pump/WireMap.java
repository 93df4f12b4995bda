package headrace.pump;

import headrace.curve.CurveArrays;
import headrace.curve.PumpCurve;
import headrace.drive.DriveTrain;
import headrace.drive.LossArrays;
import java.util.Arrays;

/**
 * Tables of a pump set over flow and speed, from head to wire power; filled by {@link PumpSet#fill} as often as one
 * likes. A row is a speed, a column a flow, and row after row stands in one array.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Flows in m³/s, speeds as shares of the speed of the curve, heads in m, powers in W.
 *   <dt>Limits
 *   <dd>A cell outside the tested curve, or where it has no head, is not covered and holds 0 in every table. Limits of
 *       the loss model are not looked at.
 *   <dt>Errors
 *   <dd>{@link IllegalArgumentException} for flows that do not increase from 0 or more, or speeds not above 0.
 *   <dt>Source
 *   <dd>Those of the pump set.
 * </dl>
 */
public final class WireMap {
    private final double[] flows;
    private final double[] speeds;
    private final boolean[] covered;
    private final double[][] tables;
    private final CurveArrays row;
    private final LossArrays losses;
    private final double[] wire;
    private final double[] wireToWater;

    private WireMap(double[] flows, double[] speeds) {
        this.flows = flows;
        this.speeds = speeds;
        int columns = flows.length;
        covered = new boolean[speeds.length * columns];
        row = CurveArrays.of(new double[columns], new double[columns]);
        losses = LossArrays.of(row.powers());
        wire = new double[columns];
        wireToWater = new double[columns];
        tables = new double[Table.values().length][speeds.length * columns];
    }

    /** What a table holds. */
    public enum Table {
        /** The head in m. */
        HEAD,
        /** The shaft power in W. */
        SHAFT,
        /** Hydraulic over shaft power. */
        EFFICIENCY,
        /** The loss of the motor in W; of motor and drive where the loss model does not tell them apart. */
        MOTOR_LOSS,
        /** The loss of the drive in W. */
        DRIVE_LOSS,
        /** The wire power in W, with the loss of cables. */
        WIRE,
        /** Hydraulic over wire power. */
        WIRE_TO_WATER
    }

    /** Returns an empty map of increasing flows in m³/s and of speeds as shares of that of the curve. */
    public static WireMap of(double[] flows, double[] speeds) {
        boolean possible = Arrays.stream(speeds).allMatch(s -> s > 0) && (flows.length == 0 || flows[0] >= 0);
        for (int i = 1; i < flows.length; i++) {
            possible &= flows[i] > flows[i - 1];
        }
        if (!possible) {
            throw new IllegalArgumentException("The flows must increase from 0 or more, and the speeds be above 0");
        }
        return new WireMap(flows.clone(), speeds.clone());
    }

    /** Returns the number of flows. */
    public int columns() {
        return flows.length;
    }

    /** Returns the number of speeds. */
    public int rows() {
        return speeds.length;
    }

    /** Returns whether the pump set covers a cell. */
    public boolean covers(int rowOf, int column) {
        return covered[rowOf * flows.length + column];
    }

    /** Returns what a table holds in a cell, 0 where it is not covered. */
    public double at(Table table, int rowOf, int column) {
        return tables[table.ordinal()][rowOf * flows.length + column];
    }

    void fill(PumpCurve curve, DriveTrain train, double ofRated) {
        for (int i = 0; i < speeds.length; i++) {
            double s = speeds[i];
            int first = 0;
            while (first < flows.length && !curve.covers(flows[first], s)) {
                first++;
            }
            int end = end(curve, s, first);
            System.arraycopy(flows, first, row.flows(), 0, end - first);
            curve.fillAt(s, row, end - first);
            train.fillLosses(s * ofRated, losses, end - first);
            wire(1 + train.cableLoss().value(), end - first);
            store(i * flows.length, first, end);
        }
    }

    /** The covered flows of a speed stand side by side. */
    private int end(PumpCurve curve, double s, int first) {
        int low = first;
        int high = flows.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (curve.covers(flows[middle], s)) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private void wire(double cable, int count) {
        double[] shaft = row.powers();
        double[] motor = losses.motors();
        double[] drive = losses.drives();
        double[] efficiency = row.efficiencies();
        for (int i = 0; i < count; i++) {
            wire[i] = cable * (shaft[i] + motor[i] + drive[i]);
        }
        for (int i = 0; i < count; i++) {
            wireToWater[i] = efficiency[i] * shaft[i] / wire[i];
        }
    }

    private void store(int at, int first, int end) {
        double[][] rows = {
            row.heads(), row.powers(), row.efficiencies(), losses.motors(), losses.drives(), wire, wireToWater
        };
        for (int t = 0; t < rows.length; t++) {
            Arrays.fill(tables[t], at, at + first, 0);
            System.arraycopy(rows[t], 0, tables[t], at + first, end - first);
            Arrays.fill(tables[t], at + end, at + flows.length, 0);
        }
        Arrays.fill(covered, at, at + flows.length, false);
        Arrays.fill(covered, at + first, at + end, true);
        for (int i = 0; i < end - first; i++) {
            if (!(row.heads()[i] >= 0)) {
                empty(at + first + i);
            }
        }
    }

    private void empty(int cell) {
        covered[cell] = false;
        for (double[] table : tables) {
            table[cell] = 0;
        }
    }
}
