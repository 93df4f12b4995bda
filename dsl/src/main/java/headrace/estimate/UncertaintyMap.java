package headrace.estimate;

import headrace.numeric.Roots;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Ratio;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.Arrays;

/**
 * How sure the estimated flow and head would be over flow and speed: a row is a speed, a column a flow, and row after
 * row stands in one array.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Standard uncertainties; flows in m³/s, heads in m, speeds as shares of that of the map.
 *   <dt>Limits
 *   <dd>To first order. Blind are cells beyond 5 % of best-efficiency flow; ambiguous are those whose reading has
 *       another flow at the same speed.
 *   <dt>Errors
 *   <dd>{@link IllegalArgumentException} for flows or speeds that do not increase from above 0.
 *   <dt>Source
 *   <dd>JCGM 100:2008, 5.1.
 * </dl>
 */
public final class UncertaintyMap implements Traced {
    private static final double ROUNDING = 1e-9;

    /** Far below any slope: where the power turns, it keeps the uncertainty a number, though one beyond all use. */
    private static final double HARDLY = 1e-150;

    private final FlowEstimator estimator;
    private final Method method;
    private final double[] flows;
    private final double[] speeds;
    private final double[] ofFlow;
    private final double[] ofHead;
    private final boolean[] covered;
    private final boolean[] ambiguous;
    private final double blindFrom;
    private final MapRow row;
    private final double[] reads;

    private UncertaintyMap(FlowEstimator estimator, Method method, double[] flows, double[] speeds) {
        this.estimator = estimator;
        this.method = method;
        this.flows = flows;
        this.speeds = speeds;
        int cells = flows.length * speeds.length;
        ofFlow = new double[cells];
        ofHead = new double[cells];
        covered = new boolean[cells];
        ambiguous = new boolean[cells];
        blindFrom = FlowEstimator.BLIND * estimator.map().bestFlow().si();
        row = new MapRow(flows.length);
        reads = new double[flows.length];
    }

    /**
     * Returns the filled map of an estimator by a method.
     *
     * @param flows increasing from 0 or more, in m³/s
     * @param speeds increasing from above 0, as shares of the speed of the estimator's map
     */
    public static UncertaintyMap of(FlowEstimator estimator, Method method, double[] flows, double[] speeds) {
        if (!increases(flows) || !increases(speeds) || flows[0] < 0 || speeds[0] <= 0) {
            throw new IllegalArgumentException("Flows and speeds must increase, from 0 and from above 0");
        }
        UncertaintyMap map = new UncertaintyMap(estimator, method, flows.clone(), speeds.clone());
        map.fill();
        return map;
    }

    private static boolean increases(double[] values) {
        boolean increases = values.length > 0;
        for (int i = 1; i < values.length; i++) {
            increases &= values[i] > values[i - 1];
        }
        return increases;
    }

    /** Returns the map over 120 flows and 61 speeds that the estimator's own map covers. */
    public static UncertaintyMap of(FlowEstimator estimator, Method method) {
        PowerMap map = estimator.map();
        double slowest = map.slowest();
        double fastest = map.fastest();
        double most = map.highestFlow(fastest);
        double[] flows = new double[120];
        double[] speeds = new double[61];
        Arrays.setAll(flows, i -> most * (i + 1) / flows.length);
        Arrays.setAll(speeds, i -> slowest + (fastest - slowest) * i / (speeds.length - 1));
        return of(estimator, method, flows, speeds);
    }

    /** Fills the map again; done once when it is made. */
    public void fill() {
        Arrays.fill(covered, false);
        Arrays.fill(ambiguous, false);
        try (Steps steps = Work.steps("speeds of the uncertainty map", speeds.length)) {
            for (int i = 0; i < speeds.length; i++) {
                steps.next();
                fillRow(i, speeds[i]);
            }
        }
    }

    private void fillRow(int i, double s) {
        PowerMap map = estimator.map();
        double low = map.lowestFlow(s) * (1 - ROUNDING);
        double high = map.highestFlow(s) * (1 + ROUNDING);
        int first = 0;
        while (first < flows.length && flows[first] < low) {
            first++;
        }
        int end = first;
        while (end < flows.length && flows[end] <= high) {
            end++;
        }
        int count = end - first;
        System.arraycopy(flows, first, row.flow, 0, count);
        map.fill(s, row, count);
        int at = i * flows.length + first;
        if (method == Method.POWER_AND_SPEED) {
            byPower(s, at, count);
        } else {
            byAnswers(s, at, count);
        }
        Arrays.fill(covered, at, at + count, true);
        lookForOthers(s, at, count);
    }

    /** Power and speed, the usual case, in loops without a branch: every cause is a power or a speed. */
    private void byPower(double s, int at, int count) {
        ErrorBudget budget = estimator.budget();
        double read = squares(budget.of(Cause.POWER_READING)) + squares(budget.of(Cause.METER_SCALE));
        double fixed = budget.of(Cause.POWER_READING).fixed();
        double pump = squares(budget.of(Cause.POWER_MAP)) + squares(budget.of(Cause.DENSITY));
        double lost = squares(budget.of(Cause.LOSSES));
        double head = squares(budget.of(Cause.HEAD_MAP));
        double radians = estimator.map().speed().si();
        double bySpeed = budget.of(Cause.SPEED_READING).standard(s * radians) / radians;
        double squaredFixed = fixed * fixed;
        double[] uncertain = reads;
        for (int j = 0; j < count; j++) {
            double p = row.wire[j];
            double mine = row.wireOverPower[j];
            uncertain[j] = read * p * p + squaredFixed + pump * mine * mine + lost * row.loss[j] * row.loss[j];
        }
        for (int j = 0; j < count; j++) {
            double perPower = 1 / (row.wireOverFlow[j] + HARDLY);
            double speed = row.wireOverSpeed[j] * bySpeed;
            double slope = row.headOverFlow[j] * perPower;
            double byMap = row.head[j] * row.head[j] * head;
            double across = (row.headOverSpeed[j] - slope * row.wireOverSpeed[j]) * bySpeed;
            row.shaftOverFlow[j] = Math.sqrt(uncertain[j] + speed * speed) * Math.abs(perPower);
            row.shaftOverSpeed[j] = Math.sqrt(slope * slope * uncertain[j] + across * across + byMap);
        }
        System.arraycopy(row.shaftOverFlow, 0, ofFlow, at, count);
        System.arraycopy(row.shaftOverSpeed, 0, ofHead, at, count);
    }

    private static double squares(ErrorBudget.Part part) {
        double standard = part.standard(1);
        double share = part.fixed() == 0 ? standard : part.relative();
        return share * share;
    }

    private void byAnswers(double s, int at, int count) {
        for (int j = 0; j < count; j++) {
            Sensitivity.Answers answers = estimator.answers(method, row, j, s);
            ofFlow[at + j] = size(answers.flow());
            ofHead[at + j] = size(answers.head());
        }
    }

    private static double size(double[] all) {
        double sum = 0;
        for (double each : all) {
            sum += each * each;
        }
        return Math.sqrt(sum);
    }

    /** A reading that also lies on another stretch between turns has another flow at that speed. */
    private void lookForOthers(double s, int at, int count) {
        if (method == Method.POWER_AND_HEAD || method == Method.MIX) {
            return; // along a head, or with one beside, another flow would need another head too
        }
        PowerMap map = estimator.map();
        boolean byHead = method == Method.HEAD_AND_SPEED;
        double[] stops = byHead ? headStops(s) : map.powerStops(s);
        double[] values = new double[stops.length];
        for (int k = 0; k < stops.length; k++) {
            values[k] = byHead ? map.headMetres(stops[k], s) : map.wireWatts(stops[k], s);
        }
        if (stops.length < 3 && !byHead) {
            return;
        }
        double[] read = byHead ? row.head : row.wire;
        for (int k = 1; k < stops.length; k++) {
            double least = Math.min(values[k - 1], values[k]);
            double most = Math.max(values[k - 1], values[k]);
            for (int j = 0; j < count; j++) {
                boolean elsewhere = row.flow[j] < stops[k - 1] || row.flow[j] > stops[k];
                ambiguous[at + j] |= elsewhere && read[j] >= least && read[j] <= most;
            }
        }
    }

    private double[] headStops(double s) {
        PowerMap map = estimator.map();
        return Roots.turnsIn(q -> map.headMetres(q, s), map.lowestFlow(s), map.highestFlow(s));
    }

    /** Returns the estimator. */
    public FlowEstimator estimator() {
        return estimator;
    }

    /** Returns the method. */
    public Method method() {
        return method;
    }

    /** Returns the number of flows. */
    public int columns() {
        return flows.length;
    }

    /** Returns the number of speeds. */
    public int rows() {
        return speeds.length;
    }

    /** Returns a flow in m³/s. */
    public double flow(int column) {
        return flows[column];
    }

    /** Returns a speed as a share of that of the map. */
    public double speed(int rowOf) {
        return speeds[rowOf];
    }

    /** Returns whether the map of the estimator covers a cell. */
    public boolean covers(int rowOf, int column) {
        return covered[rowOf * flows.length + column];
    }

    /** Returns the standard uncertainty of the flow in m³/s in a cell that is covered, huge where nothing bounds it. */
    public double flowUncertainty(int rowOf, int column) {
        return ofFlow[rowOf * flows.length + column];
    }

    /** Returns the standard uncertainty of the head in m in a cell that is covered, huge where nothing bounds it. */
    public double headUncertainty(int rowOf, int column) {
        return ofHead[rowOf * flows.length + column];
    }

    /** Returns whether a cell is blind. */
    public boolean blind(int rowOf, int column) {
        int cell = rowOf * flows.length + column;
        return covered[cell] && !(ofFlow[cell] <= blindFrom);
    }

    /** Returns whether the reading of a cell has another flow at the same speed. */
    public boolean ambiguous(int rowOf, int column) {
        return ambiguous[rowOf * flows.length + column];
    }

    @Override
    public Notes notes() {
        return estimator.notes();
    }

    @Override
    public Basis basis() {
        return estimator.basis().with("flow from " + method + "; propagation to first order, JCGM 100:2008");
    }

    @Override
    public String toString() {
        int all = 0;
        int blind = 0;
        int twice = 0;
        for (int cell = 0; cell < covered.length; cell++) {
            all += covered[cell] ? 1 : 0;
            blind += covered[cell] && !(ofFlow[cell] <= blindFrom) ? 1 : 0;
            twice += ambiguous[cell] ? 1 : 0;
        }
        return "uncertainty of flow from " + method + ": " + share(blind, all) + " of the map blind, "
                + share(twice, all) + " ambiguous";
    }

    private static String share(int part, int all) {
        return Ratio.of(all == 0 ? 0 : (double) part / all).toString();
    }
}
