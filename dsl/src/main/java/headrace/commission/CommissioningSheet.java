package headrace.commission;

import headrace.curve.Duty;
import headrace.estimate.EstimateProblem;
import headrace.estimate.ExpectedReading;
import headrace.estimate.FlowEstimator;
import headrace.estimate.PowerMap;
import headrace.estimate.Spread;
import headrace.operation.limit.DeadHead;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What should be read at several speeds: the head and the wire power against a closed valve, and head and wire power
 * with the circuit open as at its design duty, each with its tolerance, from the same map as everything else.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Tolerances are expanded, k = 2, and hold the errors of readings and map.
 *   <dt>Limits
 *   <dd>With the valves left as at the design duty a circuit without static head takes a flow in proportion to speed;
 *       that is assumed. The map must reach no flow.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code SHUT_OFF_NOT_TESTED} or {@code IMPOSSIBLE_SHEET}.
 *   <dt>Source
 *   <dd>Affinity laws; JCGM 100:2008 for the tolerances.
 * </dl>
 */
public final class CommissioningSheet implements Traced {
    private static final int MOST_SPEEDS = 20;

    private final FlowEstimator estimator;
    private final Duty duty;
    private final Speed dutySpeed;
    private final List<Row> rows;
    private final DeadHead deadHead;

    private CommissioningSheet(FlowEstimator estimator, Duty duty, Speed dutySpeed, List<Row> rows, DeadHead deadHead) {
        this.estimator = estimator;
        this.duty = duty;
        this.dutySpeed = dutySpeed;
        this.rows = List.copyOf(rows);
        this.deadHead = deadHead;
    }

    /**
     * What should be read at one speed.
     *
     * @param speed the speed
     * @param shutOffHead the head against a closed valve
     * @param closedPower the wire power against a closed valve
     * @param dutyFlow the flow with the circuit open as at design
     * @param dutyHead the head there
     * @param dutyPower the wire power there
     */
    public record Row(
            Speed speed,
            Spread<Head> shutOffHead,
            Spread<Power> closedPower,
            Flow dutyFlow,
            Spread<Head> dutyHead,
            Spread<Power> dutyPower) {}

    /**
     * Returns the sheet of a pump set at a number of speeds, evenly from its least to that of the duty.
     *
     * @param speeds how many, 2 to 20
     */
    public static CommissioningSheet of(FlowEstimator estimator, Duty duty, int speeds) {
        Speed atDuty = dutySpeed(estimator.map(), duty);
        Speed least = estimator.map().speed().times(leastShare(estimator.map()));
        if (speeds < 2 || speeds > MOST_SPEEDS || least.compareTo(atDuty) >= 0) {
            throw impossible(
                    speeds + " speeds from " + least + " to " + atDuty,
                    "2 to 20 speeds, the least below that of" + " the duty");
        }
        List<Speed> all = new ArrayList<>();
        for (int i = 0; i < speeds; i++) {
            all.add(least.plus(atDuty.minus(least).times((double) i / (speeds - 1))));
        }
        return of(estimator, duty, all);
    }

    private static double leastShare(PowerMap map) {
        return Math.max(0.3, map.slowest() * 1.021);
    }

    /** Returns the sheet of a pump set at some speeds. */
    public static CommissioningSheet of(FlowEstimator estimator, Duty duty, List<Speed> speeds) {
        PowerMap map = estimator.map();
        Speed atDuty = dutySpeed(map, duty);
        List<Row> rows = speeds.stream()
                .map(speed -> row(estimator, duty, atDuty, speed))
                .toList();
        if (rows.isEmpty()) {
            throw impossible("no speeds", "one speed at least");
        }
        return new CommissioningSheet(estimator, duty, atDuty, rows, null);
    }

    private static Row row(FlowEstimator estimator, Duty duty, Speed atDuty, Speed speed) {
        PowerMap map = estimator.map();
        double s = speed.over(map.speed()).value();
        if (!(s >= map.slowest() && s <= map.fastest())) {
            throw impossible(
                    "a sheet at " + speed,
                    "speeds from " + map.speed().times(map.slowest()) + " to "
                            + map.speed().times(map.fastest()));
        }
        if (map.lowestFlow(s) > 1e-9 * map.highestFlow(s)) {
            throw new Refusal(
                    CommissionProblem.SHUT_OFF_NOT_TESTED,
                    "Asked for the readings of " + map.name() + " against a closed valve at " + speed,
                    "Its curve begins at " + Flow.cubicMetresPerSecond(map.lowestFlow(s)) + " there",
                    "Extend the curve to no flow by choice, or add a test point there");
        }
        ExpectedReading expected = ExpectedReading.of(estimator);
        double q = duty.flow().si() * speed.over(atDuty).value();
        return new Row(
                speed,
                expected.headAt(0, s),
                expected.powerAt(0, s),
                Flow.cubicMetresPerSecond(q),
                expected.headAt(q, s),
                expected.powerAt(q, s));
    }

    private static Refusal impossible(String asked, String possible) {
        return new Refusal(
                CommissionProblem.IMPOSSIBLE_SHEET,
                "Asked for a commissioning sheet for " + asked,
                "It takes " + possible,
                "Give speeds inside the range of the pump set, and a duty that it reaches");
    }

    /** By the map the head at a fixed share of the range goes with the square of speed, or nearly so. */
    private static Speed dutySpeed(PowerMap map, Duty duty) {
        double low = map.slowest();
        double high = map.fastest();
        double q = duty.flow().si();
        Optional<Double> found = Optional.empty();
        for (int i = 0; i <= 400 && found.isEmpty(); i++) {
            double s = low + (high - low) * i / 400;
            boolean covered = q <= map.highestFlow(s) && q >= map.lowestFlow(s);
            if (covered && map.headMetres(q, s) >= duty.head().metres()) {
                double from = Math.max(low, low + (high - low) * (i - 1) / 400);
                boolean inside = i > 0 && q <= map.highestFlow(from) && q >= map.lowestFlow(from);
                found = Optional.of(inside ? between(map, duty, from, s) : s);
            }
        }
        return map.speed()
                .times(found.orElseThrow(() -> impossible(
                        "the duty " + duty,
                        "a duty that " + map.name() + " reaches up to "
                                + map.speed().times(high))));
    }

    private static double between(PowerMap map, Duty duty, double low, double high) {
        double from = low;
        double to = high;
        for (int i = 0; i < 60; i++) {
            double middle = 0.5 * (from + to);
            if (map.headMetres(duty.flow().si(), middle) < duty.head().metres()) {
                from = middle;
            } else {
                to = middle;
            }
        }
        return 0.5 * (from + to);
    }

    /** Returns this sheet with the time in which the pump heats its filling against a closed valve. */
    public CommissioningSheet with(DeadHead time) {
        return new CommissioningSheet(estimator, duty, dutySpeed, rows, time);
    }

    /**
     * Returns the time in which the pump heats its filling against a closed valve, if it was given; never a permission.
     */
    public Optional<DeadHead> deadHead() {
        return Optional.ofNullable(deadHead);
    }

    /** Returns what readings say. */
    public SiteVerdict judge(List<SiteReading> readings) {
        return SiteVerdict.of(this, readings);
    }

    /** Returns what the sheet was made from. */
    public FlowEstimator estimator() {
        return estimator;
    }

    /** Returns the design duty. */
    public Duty duty() {
        return duty;
    }

    /** Returns the speed at which the pump delivers it. */
    public Speed dutySpeed() {
        return dutySpeed;
    }

    /** Returns the rows by speed, as given. */
    public List<Row> rows() {
        return rows;
    }

    /** Returns what should be read at a speed of its own. */
    Row rowAt(Speed speed) {
        return row(estimator, duty, dutySpeed, speed);
    }

    /** A sheet is there to calibrate by: that the map is not yet calibrated is no news. */
    @Override
    public Notes notes() {
        Notes notes = deadHead == null ? Notes.NONE : deadHead.notes();
        for (var note : estimator.notes()) {
            if (note.problem() != EstimateProblem.NOT_CALIBRATED) {
                notes = notes.and(Notes.of(note));
            }
        }
        return notes;
    }

    @Override
    public Basis basis() {
        return estimator
                .basis()
                .with("with the valves as at " + duty + " the flow goes with speed: " + Ratio.of(1) + " of it at "
                        + dutySpeed);
    }

    @Override
    public String toString() {
        Row last = rows.get(rows.size() - 1);
        return "commissioning sheet of " + estimator.map().name() + " at " + rows.size() + " speeds; at " + last.speed()
                + ": " + last.shutOffHead() + " against a closed valve";
    }
}
