package headrace.trend;

import headrace.curve.PumpCurve;
import headrace.pump.PumpSet;
import headrace.trend.Condition.Pattern;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.List;

/**
 * The patterns that conditions leave in the residuals of the hours after a reference, as sums of products with each
 * other and with the residuals, each residual in its own standard deviations.
 */
final class Signatures {
    private static final int COUNT = Pattern.values().length;

    /** The step of a slope as a share of the greatest flow. */
    private static final double STEP = 1e-4;

    /** Readings without any scatter would make every pattern infinitely sure. */
    private static final double LEAST = 1e-9;

    private final MapCheck check;
    private final double[][] products = new double[COUNT][COUNT];
    private final double[] observed = new double[COUNT];
    private int hours;

    private Signatures(MapCheck check) {
        this.check = check;
    }

    static Signatures of(MapCheck check) {
        Signatures signatures = new Signatures(check);
        signatures.power();
        if (check.log().has(Channel.HEAD)) {
            signatures.head();
        }
        if (check.log().has(Channel.PLANT_HEAD)) {
            signatures.plant();
        }
        return signatures;
    }

    /** How one residual answers to each pattern, row by row; null where it does not. */
    private static final class Answers {
        private final double[][] columns = new double[COUNT][];

        Answers with(Pattern pattern, double[] column) {
            columns[pattern.ordinal()] = column;
            return this;
        }
    }

    private void power() {
        MapReadings r = check.readings();
        double[] expected = new double[r.count];
        double[] less = new double[r.count];
        double[] torque = new double[r.count];
        double[] flow = new double[r.count];
        double rated = r.set.driveTrain().motor().rated().watts();
        double step = STEP * r.set.curve().highestFlow().si();
        for (int i = check.reference(); i < r.count; i++) {
            poll(i);
            expected[i] = check.powerLine().at(r.mapWatts[i]);
            less[i] = -expected[i];
            torque[i] = rated * r.share[i];
            double slope = (check.mapWatts(r.flow[i] + step, r.share[i]) - check.mapWatts(r.flow[i] - step, r.share[i]))
                    / (2 * step);
            flow[i] = -check.powerLine().slope() * slope * r.flow[i];
        }
        add(
                Channel.POWER,
                new Answers()
                        .with(Pattern.POWER, expected)
                        .with(Pattern.AIR, less)
                        .with(Pattern.TORQUE, torque)
                        .with(Pattern.FLOW, flow));
    }

    private void head() {
        MapReadings r = check.readings();
        PumpSet set = r.set;
        PumpCurve curve = set.curve();
        double factor = check.headFactor().orElseThrow().value();
        double step = STEP * curve.highestFlow().si();
        double atRest = factor * curve.headMetres(curve.lowestFlow().si(), 1);
        double[] less = new double[r.count];
        double[] offset = new double[r.count];
        double[] flow = new double[r.count];
        for (int i = check.reference(); i < r.count; i++) {
            poll(i);
            less[i] = -factor * r.mapMetres[i];
            offset[i] = atRest;
            double slope =
                    (curve.headMetres(r.flow[i] + step, r.share[i]) - curve.headMetres(r.flow[i] - step, r.share[i]))
                            / (2 * step);
            flow[i] = -factor * slope * r.flow[i];
        }
        add(
                Channel.HEAD,
                new Answers()
                        .with(Pattern.HEAD, less)
                        .with(Pattern.AIR, less)
                        .with(Pattern.OFFSET, offset)
                        .with(Pattern.FLOW, flow));
    }

    private void plant() {
        MapReadings r = check.readings();
        double[] expected = new double[r.count];
        double[] flow = new double[r.count];
        for (int i = check.reference(); i < r.count; i++) {
            expected[i] = check.plantFactor() * r.flow[i] * r.flow[i];
            flow[i] = -2 * expected[i];
        }
        add(Channel.PLANT_HEAD, new Answers().with(Pattern.PLANT, expected).with(Pattern.FLOW, flow));
    }

    private static void poll(int row) {
        if ((row & 0xFF) == 0) {
            Work.poll();
        }
    }

    /** Adds the hours of one residual. */
    private void add(Channel channel, Answers answers) {
        HourSeries series = check.residual(channel).orElseThrow();
        double deviation = Math.max(series.deviation() * series.widening(), LEAST);
        List<double[]> columns = new ArrayList<>();
        List<Integer> patterns = new ArrayList<>();
        for (int p = 0; p < COUNT; p++) {
            if (answers.columns[p] != null) {
                columns.add(answers.columns[p]);
                patterns.add(p);
            }
        }
        MapReadings r = check.readings();
        Hours means = Hours.of(r.seconds, r.count, check.log().step(), columns.toArray(double[][]::new));
        hours = Math.max(hours, series.count() - series.reference());
        for (int hour = series.reference(); hour < series.count(); hour++) {
            for (int a = 0; a < patterns.size(); a++) {
                double one = means.means()[a][hour] / deviation;
                observed[patterns.get(a)] += one * series.values()[hour] / deviation;
                for (int b = 0; b < patterns.size(); b++) {
                    products[patterns.get(a)][patterns.get(b)] += one * means.means()[b][hour] / deviation;
                }
            }
        }
    }

    boolean sees(Pattern pattern) {
        return check.log().has(pattern.needed());
    }

    int hours() {
        return hours;
    }

    double[][] products() {
        return products;
    }

    double[] observed() {
        return observed;
    }
}
