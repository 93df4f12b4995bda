package headrace.estimate.site;

import headrace.estimate.FlowEstimate;
import headrace.estimate.FlowEstimator;
import headrace.estimate.FlowRoot;
import headrace.estimate.Method;
import headrace.estimate.PowerMap;
import headrace.estimate.Reading;
import headrace.numeric.Quantiles;
import headrace.problem.Notes;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Torque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What an estimator would say along the flows of one speed of a pump whose real map is known, as in a lesson or a
 * trial.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Quantities.
 *   <dt>Limits
 *   <dd>The readings are those of the real map without noise, so that only what is wrong with the estimator's map
 *       shows; its band shows what noise would add.
 *   <dt>Errors
 *   <dd>As {@link FlowEstimator} for the speed.
 *   <dt>Source
 *   <dd>None.
 * </dl>
 *
 * @param estimator what is tried
 * @param truth the real map
 * @param method from what the flow is estimated
 * @param speed the speed
 * @param rows the flows, increasing
 */
public record AgainstTruth(FlowEstimator estimator, PowerMap truth, Method method, Speed speed, List<Row> rows)
        implements Traced {
    private static final int STEPS = 40;

    /** Keeps the rows from changing. */
    public AgainstTruth {
        rows = List.copyOf(rows);
    }

    /**
     * A flow and what is made of its reading.
     *
     * @param truth the real flow
     * @param nearest the estimate nearest to it, if the reading lay on the map
     * @param others the other flows that the reading can mean
     * @param offMap why the reading was refused, if it was
     */
    public record Row(Flow truth, Optional<FlowRoot> nearest, List<FlowRoot> others, Optional<Problem> offMap) {
        /** Returns by how much the nearest estimate is above the real flow. */
        public Optional<Flow> error() {
            return nearest.map(root -> root.flow().value().minus(truth));
        }
    }

    /** Returns the estimates along one speed. */
    public static AgainstTruth of(FlowEstimator estimator, PowerMap truth, Method method, Speed speed) {
        double s = speed.over(truth.speed()).value();
        double low = truth.lowestFlow(s);
        double high = truth.highestFlow(s);
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i <= STEPS; i++) {
            double q = low + (high - low) * i / STEPS;
            rows.add(row(estimator, truth, method, new double[] {q, s}));
        }
        return new AgainstTruth(estimator, truth, method, speed, rows);
    }

    private static Row row(FlowEstimator estimator, PowerMap truth, Method method, double[] at) {
        Flow real = Flow.cubicMetresPerSecond(at[0]);
        Reading reading = Reading.of(
                        Power.watts(truth.wireWatts(at[0], at[1])),
                        truth.speed().times(at[1]))
                .with(Head.metres(Math.max(0, truth.headMetres(at[0], at[1]))));
        if (truth.knowsShaft()) {
            double radians = at[1] * truth.speed().si();
            reading = reading.with(Torque.newtonMetres(truth.shaftWatts(at[0], at[1]) / radians));
        }
        try {
            FlowEstimate estimate = estimator.estimate(method, reading);
            FlowRoot nearest = estimate.nearest(real);
            List<FlowRoot> others =
                    estimate.roots().stream().filter(root -> root != nearest).toList();
            return new Row(real, Optional.of(nearest), others, Optional.empty());
        } catch (Refusal refused) {
            return new Row(real, Optional.empty(), List.of(), Optional.of(refused.problem()));
        }
    }

    /** Returns the greatest error of the nearest estimates as a share of the design flow, of either sign. */
    public Ratio greatestError() {
        double most = rows.stream()
                .flatMap(row -> row.error().stream())
                .mapToDouble(error -> Math.abs(error.si()))
                .max()
                .orElse(0);
        return Ratio.of(most / estimator.design().si());
    }

    /** Returns the error that half of the nearest estimates keep within, as a share of the design flow. */
    public Ratio medianError() {
        double[] errors = rows.stream()
                .flatMap(row -> row.error().stream())
                .mapToDouble(error -> Math.abs(error.si()))
                .toArray();
        double median = errors.length == 0 ? 0 : Quantiles.of(errors).at(0.5);
        return Ratio.of(median / estimator.design().si());
    }

    /** Returns how many flows have an estimate whose band of k = 2 holds them. */
    public long held() {
        return rows.stream()
                .filter(row -> row.nearest()
                        .map(root -> root.flow().low().compareTo(row.truth()) <= 0
                                && root.flow().high().compareTo(row.truth()) >= 0)
                        .orElse(false))
                .count();
    }

    @Override
    public Notes notes() {
        return estimator.notes();
    }

    @Override
    public Basis basis() {
        return estimator.basis().with("readings without noise from " + truth);
    }

    @Override
    public String toString() {
        return "flow from " + method + " at " + speed + ": off by " + medianError() + " of design flow at the median, "
                + greatestError() + " at most; held by its band at " + held() + " of " + rows.size() + " flows";
    }
}
