package headrace.estimate;

import headrace.curve.PowerStretch;
import java.util.List;

/**
 * The flow and head that a controller without a flow meter goes by: the estimate from power and speed in bare numbers,
 * one at every reading.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Flows in m³/s, powers in W, heads in m, speeds as shares of that of the estimator's map.
 *   <dt>Limits
 *   <dd>A controller must go on where an estimate would refuse: off the map it takes the end of it, and of several
 *       flows the least. Both are assumptions of our own.
 *   <dt>Errors
 *   <dd>None.
 *   <dt>Source
 *   <dd>As {@link FlowEstimator}.
 * </dl>
 */
public final class BelievedFlow {
    private final PowerMap map;
    private final List<PowerStretch> stretches;

    private BelievedFlow(PowerMap map) {
        this.map = map;
        this.stretches = map instanceof ThroughLosses set ? set.set().curve().powerStretches() : List.of();
    }

    /** Returns what a controller goes by that has the map of an estimator. */
    public static BelievedFlow of(FlowEstimator estimator) {
        return new BelievedFlow(estimator.map());
    }

    /** Returns the flow that is taken for the real one at a wire power and a speed. */
    public double flowAt(double wireWatts, double s) {
        if (stretches.isEmpty()) {
            return onPieces(wireWatts, s);
        }
        MapFactors factors = map.factors();
        double unmoved = (map.movedWatts(wireWatts, s) - factors.offsetWatts() * s) / factors.power();
        PowerStretch first = stretches.get(0);
        double flow = first.flowAt(unmoved, s);
        if (Double.isFinite(flow)) {
            return flow;
        }
        return flow > 0 == first.rising() ? first.toAt(s) : first.fromAt(s);
    }

    private double onPieces(double wireWatts, double s) {
        Pieces pieces = Pieces.of(q -> map.wireWatts(q, s), map.lowestFlow(s), map.highestFlow(s));
        return pieces.rootsOf(wireWatts).stream()
                .findFirst()
                .orElseGet(() -> pieces.where(wireWatts > pieces.greatest()));
    }

    /** Returns the head that the map has at a flow and a speed. */
    public double headAt(double flow, double s) {
        return map.headMetres(flow, s);
    }
}
