package headrace.benchmark;

import headrace.pump.PumpSet;
import headrace.pump.WireMap;
import headrace.pump.WireMap.Table;
import java.util.LinkedHashMap;
import java.util.Map;

/** W2: 400 flows by 400 speeds from head to wire power, with motor and drive losses. */
final class MapGrid implements Workload {
    private static final int CELLS = 400;
    private final PumpSet set;
    private final WireMap map;

    MapGrid() {
        set = SetInputs.of(Inputs.pump());
        double[] q = new double[CELLS];
        double[] s = new double[CELLS];
        for (int i = 0; i < CELLS; i++) {
            q[i] = 140.0 * i / (CELLS - 1) / 3600;
            s[i] = 0.35 + 0.70 * i / (CELLS - 1);
        }
        map = WireMap.of(q, s);
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
