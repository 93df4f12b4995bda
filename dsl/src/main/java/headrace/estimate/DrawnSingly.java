package headrace.estimate;

import headrace.estimate.RootSearch.At;
import headrace.estimate.Sensitivity.Answers;
import headrace.numeric.Roots;
import java.util.function.DoubleUnaryOperator;

/**
 * Draw by draw, for every method and map: the place along the range is sought on the stretch on which the estimate
 * lies.
 */
final class DrawnSingly implements DrawnFlows {
    private final PowerMap map;
    private final Method method;
    private final DrawnInputs in;
    private final RootSearch search;
    private final double[] byPower;
    private final double[] byHead;
    private final double weight;
    private final double[] flows;
    private final double[] heads;

    DrawnSingly(FlowEstimate estimate, At root, DrawnInputs in) {
        this.map = estimate.estimator().map();
        this.method = estimate.method();
        this.in = in;
        this.search = new RootSearch(map);
        double s = root.speed();
        double span = map.highestFlow(s) - map.lowestFlow(s);
        double place = Math.max(0, Math.min(1, (root.flow() - map.lowestFlow(s)) / span));
        boolean ofHead = method == Method.HEAD_AND_SPEED || method == Method.MIX;
        byHead = ofHead ? pieces(p -> map.headMetres(flow(p, s), s)).around(place) : new double[2];
        byPower = switch (method) {
            case POWER_AND_SPEED, MIX ->
                pieces(p -> map.wireWatts(flow(p, s), s)).around(place);
            case TORQUE_AND_SPEED -> pieces(p -> map.shaftWatts(flow(p, s), s)).around(place);
            case POWER_AND_HEAD -> alongHead(estimate, place);
            case HEAD_AND_SPEED -> new double[2];
        };
        weight = method == Method.MIX ? weightAt(estimate, root) : 0;
        flows = new double[in.power.length];
        heads = new double[in.power.length];
    }

    private static Pieces pieces(DoubleUnaryOperator function) {
        return Pieces.of(function, 0, 1);
    }

    private double flow(double place, double s) {
        return RootSearch.flowAt(map, place, s);
    }

    private double[] alongHead(FlowEstimate estimate, double place) {
        double metres = estimate.reading().head().orElseThrow().metres();
        return pieces(p -> {
                    double s = search.speedAt(p, metres);
                    return map.wireWatts(flow(p, s), s);
                })
                .around(place);
    }

    private double weightAt(FlowEstimate estimate, At root) {
        MapRow row = new MapRow(1);
        row.flow[0] = root.flow();
        map.fill(root.speed(), row, 1);
        FlowEstimator estimator = estimate.estimator();
        Answers one = estimator.answers(Method.POWER_AND_SPEED, row, 0, root.speed());
        Answers two = estimator.answers(Method.HEAD_AND_SPEED, row, 0, root.speed());
        return Mix.weight(one, two);
    }

    @Override
    public void solve(int count) {
        for (int i = 0; i < count; i++) {
            switch (method) {
                case POWER_AND_SPEED, TORQUE_AND_SPEED -> power(i);
                case HEAD_AND_SPEED -> head(i);
                case POWER_AND_HEAD -> powerAndHead(i);
                case MIX -> mix(i);
            }
        }
    }

    private double watts(double place, double s, int i) {
        return map.wireWatts(flow(place, s), s, in.pump[i], in.losses[i]);
    }

    private void power(int i) {
        double s = in.speed[i];
        double place = method == Method.TORQUE_AND_SPEED
                ? place(
                        p -> in.pump[i] * map.shaftWatts(flow(p, s), s),
                        byPower,
                        in.torque[i] * s * map.speed().si())
                : place(p -> watts(p, s, i), byPower, in.power[i]);
        store(i, place, s);
    }

    private void head(int i) {
        double s = in.speed[i];
        store(i, headPlace(i, s), s);
    }

    private double headPlace(int i, double s) {
        return place(p -> in.mapHead[i] * map.headMetres(flow(p, s), s), byHead, in.head[i]);
    }

    private void powerAndHead(int i) {
        double metres = in.head[i] / in.mapHead[i];
        double place = place(p -> watts(p, search.speedAt(p, metres), i), byPower, in.power[i]);
        store(i, place, Double.isFinite(place) ? search.speedAt(place, metres) : 1);
    }

    private void mix(int i) {
        double s = in.speed[i];
        double one = weight > 0 ? place(p -> watts(p, s, i), byPower, in.power[i]) : 0;
        double two = weight < 1 ? headPlace(i, s) : 0;
        if (!Double.isFinite(one) || !Double.isFinite(two)) {
            flows[i] = Double.isFinite(one) ? two : one;
            return;
        }
        flows[i] = weight * flow(one, s) + (1 - weight) * flow(two, s);
        double atOne = weight > 0 ? map.headMetres(flow(one, s), s) : 0;
        double atTwo = weight < 1 ? map.headMetres(flow(two, s), s) : 0;
        heads[i] = in.mapHead[i] * (weight * atOne + (1 - weight) * atTwo);
    }

    private void store(int i, double place, double s) {
        if (!Double.isFinite(place)) {
            flows[i] = place;
            return;
        }
        flows[i] = flow(place, s);
        heads[i] = in.mapHead[i] * map.headMetres(flows[i], s);
    }

    /** Returns where a function that only rises or only falls has a value; infinite where it has it nowhere. */
    private static double place(DoubleUnaryOperator function, double[] ends, double value) {
        double from = function.applyAsDouble(ends[0]);
        double to = function.applyAsDouble(ends[1]);
        if (value < Math.min(from, to)) {
            return Double.NEGATIVE_INFINITY;
        }
        if (value > Math.max(from, to)) {
            return Double.POSITIVE_INFINITY;
        }
        return Roots.between(p -> function.applyAsDouble(p) - value, ends[0], ends[1]);
    }

    @Override
    public double[] flows() {
        return flows;
    }

    @Override
    public double[] heads() {
        return heads;
    }

    @Override
    public int twoFlows() {
        return 0;
    }
}
