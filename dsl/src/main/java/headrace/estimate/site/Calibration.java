package headrace.estimate.site;

import headrace.estimate.Cause;
import headrace.estimate.ErrorBudget;
import headrace.estimate.EstimateProblem;
import headrace.estimate.FlowEstimator;
import headrace.estimate.MapFactors;
import headrace.estimate.PowerMap;
import headrace.estimate.Reading;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Ratio;
import java.util.List;
import java.util.Optional;

/**
 * A map moved to meet readings at known flows, before and after.
 *
 * <p>One point gives a factor of the power; two or more a factor and an offset, by least squares; a closed valve the
 * offset alone. Heads that were read give a factor of the head.
 *
 * <dl>
 *   <dt>Units
 *   <dd>The power that is moved is that at the shaft, or at the wire of a map that was measured there.
 *   <dt>Limits
 *   <dd>Each mends what it names and leaves the rest, see {@link Kind}. After it the tolerance of the map gives way to
 *       the error of the known flow and of the power reading at the points; a quarter of the tolerance stays for the
 *       shape of the curve, which is our own choice. What motor and drive lose stays as unsure as it was.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_CALIBRATION}.
 *   <dt>Source
 *   <dd>Least squares; the offset goes with speed, as a friction of constant torque does.
 * </dl>
 */
public final class Calibration implements Traced {
    private static final double MOST = 2;
    private static final double SHAPE = 0.25;
    private static final double ALIKE = 0.02;

    private final Kind kind;
    private final FlowEstimator before;
    private final FlowEstimator after;
    private final List<Row> rows;
    private final Ratio flowError;

    private Calibration(Kind kind, FlowEstimator before, FlowEstimator after, List<KnownPoint> points, Ratio error) {
        this.kind = kind;
        this.before = before;
        this.after = after;
        this.rows = points.stream().map(this::row).toList();
        this.flowError = error;
    }

    /** What a calibration can mend. */
    public enum Kind {
        /** One known flow. */
        ONE_POINT(
                "one point",
                "a power that is the same share too high or too low everywhere: the scale of a meter, a density",
                "a friction that does not go with the cube of speed, another shape of the curve, losses that change"
                        + " with load"),
        /** Two known flows or more. */
        TWO_POINTS(
                "two points or more",
                "a scale and an offset together: a scale of the meter, friction in bearings and seals",
                "another shape of the curve between and beyond the points"),
        /** Against a closed valve. */
        CLOSED_VALVE(
                "closed valve",
                "an offset of the power: friction in bearings and seals, standing losses of the drive",
                "a scale of the power, which shows only where there is flow");

        private final String words;
        private final String mends;
        private final String leaves;

        Kind(String words, String mends, String leaves) {
            this.words = words;
            this.mends = mends;
            this.leaves = leaves;
        }

        /** Returns what it mends, in words. */
        public String mends() {
            return mends;
        }

        /** Returns what it cannot mend, in words. */
        public String leaves() {
            return leaves;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /**
     * A known point before and after.
     *
     * @param point the point
     * @param before the flow that was estimated there before, if its reading lay on the map
     * @param after the flow that is estimated there now, if its reading lies on the map
     * @param powerBefore by what share the reading was above the map before
     * @param powerAfter by what share it is above the map now
     */
    public record Row(
            KnownPoint point, Optional<Flow> before, Optional<Flow> after, Ratio powerBefore, Ratio powerAfter) {}

    /**
     * Returns a calibration.
     *
     * @param before the estimator as it was
     * @param points readings at known flows
     * @param flowError one standard deviation of the known flows, as a share of them
     */
    public static Calibration of(FlowEstimator before, List<KnownPoint> points, Ratio flowError) {
        if (points.isEmpty() || !(flowError.value() >= 0 && flowError.value() <= 0.5)) {
            throw impossible(before, points.size() + " points known within " + flowError);
        }
        points.forEach(point -> requireOnMap(before, point));
        Fit fit = new Fit(before.map(), points);
        Kind kind = kind(points);
        MapFactors factors = fit.factors(kind, before);
        String how = "calibrated by " + kind + (kind == Kind.ONE_POINT ? "" : ", " + points.size() + " of them");
        PowerMap map = before.map().calibrated(factors, how);
        FlowEstimator moved = before.with(map);
        ErrorBudget budget = budget(moved, kind, points, flowError);
        return new Calibration(kind, before, moved.with(budget), points, flowError);
    }

    private static Kind kind(List<KnownPoint> points) {
        if (points.stream().allMatch(KnownPoint::closed)) {
            return Kind.CLOSED_VALVE;
        }
        return points.size() == 1 ? Kind.ONE_POINT : Kind.TWO_POINTS;
    }

    private static void requireOnMap(FlowEstimator before, KnownPoint point) {
        PowerMap map = before.map();
        double s = point.speed().over(map.speed()).value();
        double q = point.flow().si();
        boolean speed = s >= map.slowest() && s <= map.fastest();
        if (!speed || q < map.lowestFlow(s) * (1 - 1e-9) || q > map.highestFlow(s) * (1 + 1e-9)) {
            throw impossible(before, point + ", which its map does not cover");
        }
        if (!(map.movedWatts(point.power().watts(), s) > 0)) {
            throw impossible(before, point + ", less power than motor and drive lose without load");
        }
    }

    private static Refusal impossible(FlowEstimator estimator, String given) {
        return new Refusal(
                EstimateProblem.IMPOSSIBLE_CALIBRATION,
                "Asked to calibrate the map of " + estimator.map().name() + " by " + given,
                "It takes points on the map; two or more must differ in how much of the power is scale and how much"
                        + " offset; the factors must lie from 0.5 to 2",
                "Take points at other flows or speeds, and check pump, meter and units first where a factor is far from 1");
    }

    /** The unknown factor and offset of the power, and the factor of the head, from readings. */
    private record Fit(PowerMap map, List<KnownPoint> points) {
        MapFactors factors(Kind kind, FlowEstimator before) {
            double mm = 0;
            double ms = 0;
            double ss = 0;
            double mp = 0;
            double sp = 0;
            for (KnownPoint point : points) {
                double s = point.speed().over(map.speed()).value();
                double model = map.unmovedWattsAt(point.flow().si(), s);
                double read = map.movedWatts(point.power().watts(), s);
                mm += model * model;
                ms += model * s;
                ss += s * s;
                mp += model * read;
                sp += s * read;
            }
            MapFactors old = map.factors();
            double power = old.power();
            double offset = old.offsetWatts();
            switch (kind) {
                case CLOSED_VALVE -> offset = (sp - power * ms) / ss;
                case ONE_POINT -> power = (mp - offset * ms) / mm;
                case TWO_POINTS -> {
                    double determinant = mm * ss - ms * ms;
                    if (!(determinant > ALIKE * ALIKE * mm * ss)) {
                        throw impossible(before, points.size() + " points that say nearly the same");
                    }
                    power = (mp * ss - sp * ms) / determinant;
                    offset = (sp * mm - mp * ms) / determinant;
                }
            }
            double head = head(old.head());
            if (!(power > 1 / MOST && power < MOST && head > 1 / MOST && head < MOST)) {
                throw impossible(before, points.size() + " points that give " + new MapFactors(power, offset, head));
            }
            return new MapFactors(power, offset, head);
        }

        private double head(double otherwise) {
            double hh = 0;
            double hm = 0;
            for (KnownPoint point : points) {
                if (point.head().isPresent()) {
                    double s = point.speed().over(map.speed()).value();
                    double model = map.headMetres(point.flow().si(), s) / otherwise;
                    hh += model * model;
                    hm += model * point.head().orElseThrow().metres();
                }
            }
            return hh > 0 ? hm / hh : otherwise;
        }
    }

    /** What the points say of the scale is as sure as the power reading and, through its slope, the known flow. */
    private static ErrorBudget budget(FlowEstimator moved, Kind kind, List<KnownPoint> points, Ratio flowError) {
        ErrorBudget budget = moved.budget();
        boolean heads = points.stream().anyMatch(point -> point.head().isPresent());
        if (heads) {
            double read = budget.of(Cause.HEAD_READING).relative();
            budget = budget.with(
                    Cause.HEAD_MAP, remaining(budget.of(Cause.HEAD_MAP).relative(), read), 0);
        }
        if (kind == Kind.CLOSED_VALVE) {
            return budget;
        }
        double squares = 0;
        for (KnownPoint point : points) {
            double s = point.speed().over(moved.map().speed()).value();
            double q = point.flow().si();
            double p = moved.map().wireWatts(q, s);
            double dq = Math.max(1e-3 * q, 1e-9);
            double steepness = (moved.map().wireWatts(q + dq, s) - p) / dq * q / p;
            double read = budget.of(Cause.POWER_READING).standard(p) / p;
            squares += Math.pow(steepness * flowError.value(), 2) + read * read;
        }
        double known = Math.sqrt(squares) / points.size();
        return budget.with(Cause.POWER_MAP, remaining(budget.of(Cause.POWER_MAP).relative(), known), 0)
                .with(Cause.METER_SCALE, 0, 0);
    }

    /** Returns half the width of a rectangle of what the points leave open, never more than it was. */
    private static double remaining(double was, double known) {
        return Math.min(was, Math.hypot(SHAPE * was, Math.sqrt(3) * known));
    }

    private Row row(KnownPoint point) {
        return new Row(point, flow(before, point), flow(after, point), above(before, point), above(after, point));
    }

    private static Optional<Flow> flow(FlowEstimator estimator, KnownPoint point) {
        try {
            return Optional.of(estimator
                    .estimate(Reading.of(point.power(), point.speed()))
                    .nearest(point.flow())
                    .flow()
                    .value());
        } catch (Refusal offMap) {
            return Optional.empty();
        }
    }

    private static Ratio above(FlowEstimator estimator, KnownPoint point) {
        double s = point.speed().over(estimator.map().speed()).value();
        return Ratio.of(
                point.power().watts() / estimator.map().wireWatts(point.flow().si(), s) - 1);
    }

    /** Returns which kind it is. */
    public Kind kind() {
        return kind;
    }

    /** Returns the estimator as it was. */
    public FlowEstimator before() {
        return before;
    }

    /** Returns the calibrated estimator. */
    public FlowEstimator after() {
        return after;
    }

    /** Returns the points before and after. */
    public List<Row> rows() {
        return rows;
    }

    /** Returns how the map was moved. */
    public MapFactors factors() {
        return after.map().factors();
    }

    @Override
    public Notes notes() {
        return after.notes();
    }

    @Override
    public Basis basis() {
        return after.basis().with("known flows within " + flowError + ", one standard deviation");
    }

    @Override
    public String toString() {
        return "calibrated by " + kind + ": " + factors();
    }
}
