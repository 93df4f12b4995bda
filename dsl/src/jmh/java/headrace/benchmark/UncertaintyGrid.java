package headrace.benchmark;

import headrace.estimate.Cause;
import headrace.estimate.FlowEstimator;
import headrace.estimate.Method;
import headrace.estimate.ThroughLosses;
import headrace.estimate.UncertaintyMap;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;

/** W7b: the uncertainty of flow and head over 200 flows and 100 speeds, with blind and ambiguous cells. */
final class UncertaintyGrid implements Workload {
    private static final int FLOWS = 200;
    private static final int SPEEDS = 100;

    private final UncertaintyMap map;

    UncertaintyGrid() {
        double[] q = new double[FLOWS];
        double[] s = new double[SPEEDS];
        Arrays.setAll(q, j -> 120 * (j + 1.0) / FLOWS / 3600);
        Arrays.setAll(s, i -> 0.30 + 0.75 * i / (SPEEDS - 1));
        FlowEstimator estimator = FlowEstimator.of(
                ThroughLosses.of(FlowFromPower.set()), FlowFromPower.ERRORS.with(Cause.POWER_READING, 0.010, 10));
        map = UncertaintyMap.of(estimator, Method.POWER_AND_SPEED, q, s);
    }

    @Override
    public String name() {
        return "W7b uncertainty map 200x100";
    }

    @Override
    public void call() {
        map.fill();
    }

    @Override
    public int inner() {
        return 10;
    }

    @Override
    public Map<String, Object> outputs() {
        int valid = 0;
        int blind = 0;
        int ambiguous = 0;
        double least = Double.POSITIVE_INFINITY;
        double[] flow = new double[FLOWS * SPEEDS];
        double[] head = new double[FLOWS * SPEEDS];
        for (int i = 0; i < SPEEDS; i++) {
            for (int j = 0; j < FLOWS; j++) {
                if (map.covers(i, j)) {
                    double ofFlow = 3600 * map.flowUncertainty(i, j);
                    flow[valid] = Math.log(ofFlow);
                    head[valid] = Math.log(map.headUncertainty(i, j));
                    least = Math.min(least, ofFlow);
                    blind += map.blind(i, j) ? 1 : 0;
                    ambiguous += map.ambiguous(i, j) ? 1 : 0;
                    valid++;
                }
            }
        }
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("valid", valid);
        out.put("blind", blind);
        out.put("ambiguous", ambiguous);
        out.put("sum_log_uQ", Inputs.sum(Arrays.copyOf(flow, valid), 1));
        out.put("sum_log_uH", Inputs.sum(Arrays.copyOf(head, valid), 1));
        out.put("uQ[50,60]", 3600 * map.flowUncertainty(50, 60));
        out.put("uH[50,60]", map.headUncertainty(50, 60));
        out.put("min_uQ", least);
        return out;
    }
}
