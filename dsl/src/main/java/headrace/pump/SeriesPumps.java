package headrace.pump;

import headrace.curve.CurvePoint;
import headrace.curve.PumpCurve;
import headrace.numeric.RootScan;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.units.Flow;
import headrace.units.Head;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * Pumps one behind the other: the same flow through all, their heads add; they may differ in curve and speed.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Heads in metres of the liquid.
 *   <dt>Limits
 *   <dd>The flows that all curves cover, extended by choice or not: a pump that is driven beyond its curve by the
 *       others is not guessed at. The pressure of the last one is the sum: see the highest working pressure.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code NO_PUMPS}, {@code NO_SHARED_FLOW}, {@code BEYOND_PUMP_CURVES} or
 *       {@code NO_SHARED_POINT}.
 *   <dt>Source
 *   <dd>Textbook knowledge: heads add.
 * </dl>
 */
public final class SeriesPumps {
    private static final double STEP = 1e-6;

    private final List<PumpCurve> curves;
    private final double low;
    private final double high;

    private SeriesPumps(List<PumpCurve> curves) {
        this.curves = List.copyOf(curves);
        this.low = curves.stream()
                .mapToDouble(curve -> curve.extendedLowestFlow().si())
                .max()
                .orElseThrow();
        this.high = curves.stream()
                .mapToDouble(curve -> curve.extendedHighestFlow().si())
                .min()
                .orElseThrow();
    }

    /** Returns pumps in series, each at the speed of its curve. */
    public static SeriesPumps of(List<PumpCurve> curves) {
        if (curves.isEmpty()) {
            throw new Refusal(
                    PumpProblem.NO_PUMPS,
                    "Asked for pumps in series and given none",
                    "There must be at least one",
                    "Give a list of curves");
        }
        SeriesPumps pumps = new SeriesPumps(curves);
        if (pumps.low >= pumps.high) {
            throw new Refusal(
                    PumpProblem.NO_SHARED_FLOW,
                    "Asked for " + pumps.names() + " in series",
                    "One curve begins at " + pumps.lowestFlow() + ", another ends at " + pumps.highestFlow(),
                    "Put pumps of like size in series, or extend the curves by choice");
        }
        return pumps;
    }

    /** Returns the curves, in the order in which they were given. */
    public List<PumpCurve> curves() {
        return curves;
    }

    /** Returns the least flow that all curves cover. */
    public Flow lowestFlow() {
        return Flow.cubicMetresPerSecond(low);
    }

    /** Returns the greatest flow that all curves cover. */
    public Flow highestFlow() {
        return Flow.cubicMetresPerSecond(high);
    }

    /** Returns the head of all together in m at a flow in m³/s. Checks no range. */
    public double headMetres(double q) {
        double sum = 0;
        for (PumpCurve curve : curves) {
            sum += curve.headMetres(q, 1);
        }
        return sum;
    }

    /**
     * Returns where the pumps and a system meet; of several flows the greatest at which their head falls more steeply
     * than that of the system.
     *
     * @param systemMetres the head that the system takes in m, of its flow in m³/s
     * @param system the system in words, for messages and the basis
     */
    public SeriesPoint meeting(DoubleUnaryOperator systemMetres, String system) {
        DoubleUnaryOperator above = q -> headMetres(q) - systemMetres.applyAsDouble(q);
        double[] flows = RootScan.between(above, low, high);
        if (flows.length == 0) {
            throw nowhere(above, system);
        }
        double chosen = flows[flows.length - 1];
        for (double q : flows) {
            double step = Math.min(STEP * high, q - low);
            chosen = above.applyAsDouble(q - step) > 0 ? q : chosen;
        }
        double settled = chosen;
        List<Flow> others = Arrays.stream(flows)
                .filter(q -> q != settled)
                .mapToObj(Flow::cubicMetresPerSecond)
                .toList();
        return point(Flow.cubicMetresPerSecond(chosen), others, system);
    }

    private SeriesPoint point(Flow flow, List<Flow> others, String system) {
        List<CurvePoint> points = curves.stream().map(curve -> curve.at(flow)).toList();
        Notes notes = Notes.NONE;
        for (CurvePoint point : points) {
            notes = notes.and(point.notes());
        }
        if (!others.isEmpty()) {
            notes = notes.with(
                    PumpProblem.SEVERAL_SOLUTIONS,
                    "A head rises with flow, and besides " + flow + " the pumps can settle at " + others);
        }
        Basis basis = Basis.NONE;
        for (PumpCurve curve : curves) {
            basis = basis.and(curve.basis());
        }
        Head head = Head.metres(headMetres(flow.si()));
        return new SeriesPoint(flow, head, points, others, notes, basis.with("system: " + system));
    }

    private Refusal nowhere(DoubleUnaryOperator above, String system) {
        boolean beyond = above.applyAsDouble(high) > 0;
        double end = beyond ? high : low;
        String there = "At " + Flow.cubicMetresPerSecond(end) + ", an end of the flows that all their curves cover,"
                + " they give " + Head.metres(headMetres(end)) + " and the system takes "
                + Head.metres(headMetres(end) - above.applyAsDouble(end));
        return new Refusal(
                beyond ? PumpProblem.BEYOND_PUMP_CURVES : PumpProblem.NO_SHARED_POINT,
                "Asked where " + names() + " in series meet the " + system,
                there,
                beyond
                        ? "Throttle the system or lower the speed, or extend the curves by choice"
                        : "Choose higher speeds or a system that takes less head");
    }

    private String names() {
        return String.join(", ", curves.stream().map(PumpCurve::name).toList());
    }

    @Override
    public String toString() {
        return curves.size() + " pumps in series: "
                + String.join(", ", curves.stream().map(PumpCurve::name).toList());
    }
}
