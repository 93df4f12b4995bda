package headrace.benchmark;

import headrace.curve.PumpCurve;
import headrace.units.Flow;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * W3: a million speeds for a duty, in closed form and by iteration; and ten thousand one by one. The head takes the
 * general way if it is given with a coefficient of degree 3, which is 0 here.
 */
final class SpeedForDuty implements Workload {
    private static final int DUTIES = 1_000_000;
    private static final int SINGLY = 10_000;

    private final char variant;
    private final PumpCurve pump;
    private final double[] q = new double[DUTIES];
    private final double[] metres = new double[DUTIES];
    private final double[] s = new double[DUTIES];

    SpeedForDuty(char variant) {
        this.variant = variant;
        double[] general = {Inputs.HEAD[0], Inputs.HEAD[1], Inputs.HEAD[2], 0};
        pump = Inputs.pump(Inputs.GREATEST, variant == 'a' ? Inputs.HEAD : general)
                .extendedTo(Flow.cubicMetresPerHour(190));
        for (int i = 0; i < DUTIES; i++) {
            q[i] = (10 + 100 * Inputs.uniform(301, i)) / 3600;
            metres[i] = 4 + 24 * Inputs.uniform(302, i);
        }
    }

    @Override
    public String name() {
        return switch (variant) {
            case 'a' -> "W3a closed form";
            case 'b' -> "W3b bracketed Newton";
            default -> "W3c brentq, 10 k points";
        };
    }

    @Override
    public void call() {
        if (variant == 'c') {
            for (int i = 0; i < SINGLY; i++) {
                s[i] = pump.speedRatioFor(q[i], metres[i]);
            }
        } else {
            pump.fillSpeedRatios(q, metres, s);
        }
    }

    @Override
    public Map<String, Object> outputs() {
        Map<String, Object> out = new LinkedHashMap<>();
        if (variant == 'c') {
            out.put("sum_s[:10000]", Inputs.sum(Arrays.copyOf(s, SINGLY), 1));
            return out;
        }
        out.put("sum_s", Inputs.sum(s, 1));
        if (variant == 'a') {
            closedFormOutputs(out);
        }
        return out;
    }

    private void closedFormOutputs(Map<String, Object> out) {
        double least = Double.POSITIVE_INFINITY;
        double most = 0;
        int outsideSpeed = 0;
        int outsideFlow = 0;
        double[] watts = new double[DUTIES];
        for (int i = 0; i < DUTIES; i++) {
            least = Math.min(least, s[i]);
            most = Math.max(most, s[i]);
            outsideSpeed += s[i] < 0.30 || s[i] > 1.05 ? 1 : 0;
            outsideFlow += q[i] * 3600 > Inputs.GREATEST * s[i] ? 1 : 0;
            watts[i] = pump.shaftWatts(q[i], s[i]);
        }
        for (int i : new int[] {0, 123_456, DUTIES - 1}) {
            out.put("s[" + i + "]", s[i]);
        }
        out.put("min_s", least);
        out.put("max_s", most);
        out.put("outside_speed_0.30_1.05", outsideSpeed);
        out.put("outside_phi_135", outsideFlow);
        out.put("sum_P", Inputs.sum(watts, 1e-3));
    }
}
