package headrace.benchmark;

import headrace.curve.CurveArrays;
import headrace.curve.PumpCurve;
import java.util.LinkedHashMap;
import java.util.Map;

/** W1: ten million points of flow and speed to head, shaft power and efficiency. */
final class CurveEvaluation implements Workload {
    private static final int POINTS = 10_000_000;

    private final PumpCurve pump = Inputs.pump();
        private final CurveArrays values;

    CurveEvaluation() {
        double[] q = new double[POINTS];
        double[] s = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            s[i] = 0.40 + 0.65 * Inputs.uniform(101, i);
            q[i] = s[i] * (2 + 123 * Inputs.uniform(102, i)) / 3600;
        }
        values = CurveArrays.of(q, s);
    }

    @Override
    public String name() {
        return "W1";
    }

    @Override
    public void call() {
        pump.fill(values);
    }

    @Override
    public Map<String, Object> outputs() {
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("sum_H", Inputs.sum(values.heads(), 1));
        out.put("sum_P", Inputs.sum(values.powers(), 1e-3));
        out.put("sum_eta", Inputs.sum(values.efficiencies(), 1));
        for (int i : new int[] {0, 1_234_567, POINTS - 1}) {
            out.put("H[" + i + "]", values.heads()[i]);
            out.put("P[" + i + "]", values.powers()[i] / 1000);
            out.put("eta[" + i + "]", values.efficiencies()[i]);
        }
        double most = 0;
        for (double each : values.efficiencies()) {
            most = Math.max(most, each);
        }
        out.put("max_eta", most);
        return out;
    }
}
