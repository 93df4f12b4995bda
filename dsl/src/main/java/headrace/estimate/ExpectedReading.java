package headrace.estimate;

import headrace.units.Head;
import headrace.units.Power;

/**
 * What should be read at a flow and a speed, with its spread: the map read forwards, with the same errors as an
 * estimate has.
 *
 * <p>Source: JCGM 100:2008, 5.1.
 */
public final class ExpectedReading {
    private final FlowEstimator estimator;

    private ExpectedReading(FlowEstimator estimator) {
        this.estimator = estimator;
    }

    /** Returns what should be read where an estimator would be used. */
    public static ExpectedReading of(FlowEstimator estimator) {
        return new ExpectedReading(estimator);
    }

    private MapRow row(double q, double s) {
        MapRow row = new MapRow(1);
        row.flow[0] = q;
        estimator.map().fill(s, row, 1);
        return row;
    }

    private double bySpeed(double slope, double s) {
        double radians = estimator.map().speed().si();
        return slope * estimator.budget().of(Cause.SPEED_READING).standard(s * radians) / radians;
    }

    /** Returns the wire power at a flow in m³/s and a share of the map's speed. */
    public Spread<Power> powerAt(double q, double s) {
        MapRow row = row(q, s);
        ErrorBudget budget = estimator.budget();
        double reading = budget.of(Cause.POWER_READING).standard(row.wire[0]);
        double scale = budget.of(Cause.METER_SCALE).standard(row.wire[0]);
        double map = Math.hypot(
                budget.of(Cause.POWER_MAP).standard(row.wireOverPower[0]),
                budget.of(Cause.DENSITY).standard(row.wireOverPower[0]));
        double lost = budget.of(Cause.LOSSES).standard(row.loss[0]);
        return new Spread<>(
                Power.watts(row.wire[0]),
                Power.watts(Math.hypot(reading, bySpeed(row.wireOverSpeed[0], s))),
                Power.watts(Math.hypot(Math.hypot(scale, map), lost)));
    }

    /** Returns the head at a flow in m³/s and a share of the map's speed. */
    public Spread<Head> headAt(double q, double s) {
        MapRow row = row(q, s);
        ErrorBudget budget = estimator.budget();
        return new Spread<>(
                Head.metres(row.head[0]),
                Head.metres(Math.hypot(
                        budget.of(Cause.HEAD_READING).standard(row.head[0]), bySpeed(row.headOverSpeed[0], s))),
                Head.metres(budget.of(Cause.HEAD_MAP).standard(row.head[0])));
    }
}
