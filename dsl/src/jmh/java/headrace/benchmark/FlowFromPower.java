package headrace.benchmark;

import headrace.estimate.Cause;
import headrace.estimate.ErrorBudget;
import headrace.estimate.FlowDraws;
import headrace.estimate.FlowEstimate;
import headrace.estimate.FlowEstimator;
import headrace.estimate.FlowRoot;
import headrace.estimate.Reading;
import headrace.estimate.ThroughLosses;
import headrace.numeric.RandomStreams;
import headrace.pump.PumpSet;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * W7a and W7r: a hundred thousand draws of power, speed and map, each read backwards to flow and head. Making the random
 * numbers is timed too.
 */
final class FlowFromPower implements Workload {
    static final ErrorBudget ERRORS = ErrorBudget.NONE
            .with(Cause.POWER_READING, 0.010, 0)
            .with(Cause.SPEED_READING, 0.002, 0)
            .with(Cause.POWER_MAP, 0.02, 0);
    private static final int DRAWS = 100_000;

    private final char variant;
    private final FlowEstimate estimate;
    private final FlowRoot root;
    private final double watts;
    private final double[] bands = new double[4];
    private FlowDraws draws;

    FlowFromPower(char variant) {
        this.variant = variant;
        PumpSet set = set();
        double q = (variant == 'B' ? 1.5 : 45) / 3600;
        double s = variant == 'B' ? 0.45 : 0.85;
        watts = set.wireWatts(q, s);
        FlowEstimator estimator = FlowEstimator.of(ThroughLosses.of(set), ERRORS);
        estimate = estimator.estimate(Reading.of(Power.watts(watts), Inputs.SPEED.times(s)));
        root = estimate.roots().get(0);
    }

    /** Pump P-B, whose power turns at 94.44 m³/h. */
    static PumpSet set() {
        return SetInputs.of(Inputs.pump(
                        "P-B", new double[] {31.2, -0.012, -0.00140}, new double[] {4.2, 0.068, -0.00036}, 120))
                .withSpeeds(Inputs.SPEED.times(0.3), Inputs.SPEED.times(1.05));
    }

    @Override
    public String name() {
        return switch (variant) {
            case 'A' -> "W7a MC point A, supplied uniforms";
            case 'B' -> "W7a MC point B, supplied uniforms";
            default -> "W7r MC point A, own generator";
        };
    }

    @Override
    public void call() {
        RandomStreams streams =
                switch (variant) {
                    case 'A' -> RandomStreams.startingAt(701);
                    case 'B' -> RandomStreams.startingAt(711);
                    default -> RandomStreams.of(12345);
                };
        draws = FlowDraws.of(estimate, root, new FlowDraws.Seeded(DRAWS, variant, streams));
        bands[0] = draws.lowFlow().si();
        bands[1] = draws.highFlow().si();
        bands[2] = draws.lowHead().metres();
        bands[3] = draws.highHead().metres();
    }

    @Override
    public Map<String, Object> outputs() {
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("mean_Q", draws.meanFlow().toCubicMetresPerHour());
        out.put("std_Q", draws.deviationOfFlow().toCubicMetresPerHour());
        out.put("q2.5", draws.lowFlow().toCubicMetresPerHour());
        out.put("q97.5", draws.highFlow().toCubicMetresPerHour());
        if (variant == 'r') {
            return out;
        }
        out.put("P_el0", watts / 1000);
        out.put("mean_H", draws.meanHead().metres());
        out.put("std_H", draws.deviationOfHead().metres());
        out.put("H2.5", draws.headAt(Ratio.of(0.025)).metres());
        out.put("H97.5", draws.headAt(Ratio.of(0.975)).metres());
        out.put("corr_QH", draws.correlation());
        out.put("below_zero_flow", draws.counts().below());
        out.put("above_max", draws.counts().above());
        out.put("two_flows", draws.counts().twoFlows());
        if (variant == 'A') {
            out.put("linear_uQ", root.flow().standard().toCubicMetresPerHour());
        }
        return out;
    }
}
