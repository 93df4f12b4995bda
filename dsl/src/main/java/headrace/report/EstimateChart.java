package headrace.report;

import headrace.chart.Axis;
import headrace.chart.Chart;
import headrace.chart.mark.Area;
import headrace.chart.mark.Dash;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.mark.Points;
import headrace.chart.mark.Reference;
import headrace.estimate.FlowDraws;
import headrace.estimate.FlowEstimate;
import headrace.estimate.FlowRoot;
import headrace.estimate.PowerMap;
import headrace.estimate.Spread;
import headrace.estimate.site.AgainstTruth;
import headrace.estimate.site.Calibration;
import headrace.estimate.site.KnownPoint;
import headrace.numeric.Quantiles;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** An estimate on the map that it was read from; a sweep against the truth; a calibration before and after. */
final class EstimateChart {
    private static final int BINS = 60;
    private static final double LOW = 0.0005;

    private final Ruler flow = Ruler.of(Flow.KIND);
    private final Ruler head = Ruler.of(Head.KIND);
    private final Ruler power = Ruler.of(Power.KIND);

    static Chart of(FlowEstimate estimate) {
        return new EstimateChart().estimate(estimate);
    }

    static Chart of(FlowDraws draws) {
        return new EstimateChart().draws(draws);
    }

    static Chart of(AgainstTruth swept) {
        return new EstimateChart().swept(swept);
    }

    static Chart of(Calibration calibration) {
        return new EstimateChart().calibrated(calibration);
    }

    private Chart estimate(FlowEstimate estimate) {
        PowerMap map = estimate.estimator().map();
        double s = estimate.roots().get(0).speed().over(map.speed()).value();
        List<Mark> powers = new ArrayList<>();
        List<Mark> heads = new ArrayList<>();
        for (FlowRoot root : estimate.roots()) {
            bands(root, map, s, powers, heads);
        }
        powers.add(over(map, s, q -> power.on(map.wireWatts(q, s)), Ink.PURPLE, "wire power"));
        heads.add(over(map, s, q -> head.on(map.headMetres(q, s)), Ink.BLUE, "head"));
        for (FlowRoot root : estimate.roots()) {
            double q = root.flow().value().si();
            powers.add(Points.at(flow.on(q), power.on(map.wireWatts(q, s)))
                    .labelled(root.flow().value().toString()));
            heads.add(Points.at(flow.on(q), head.on(root.head().value().si())));
        }
        estimate.reading()
                .power()
                .ifPresent(read -> powers.add(Reference.atHeight(power.on(read.si()), "reading " + read)));
        estimate.reading()
                .head()
                .ifPresent(read -> heads.add(Reference.atHeight(head.on(read.si()), "reading " + read)));
        return Chart.titled("Flow of " + map.name() + " from " + estimate.method())
                .across(flow.axis("Flow").from(0))
                .panel(power.axis("Wire power").from(0), powers)
                .panel(head.axis("Head").from(0), heads)
                .caption("At " + estimate.roots().get(0).speed() + ". Shaded: k = 2.")
                .build();
    }

    private void bands(FlowRoot root, PowerMap map, double s, List<Mark> powers, List<Mark> heads) {
        double[] ends = kept(root.flow(), map, s);
        double mostPower = power.on(Arrays.stream(map.powerStops(s))
                .map(q -> map.wireWatts(q, s))
                .max()
                .orElseThrow());
        double mostHead = head.on(map.headMetres(map.lowestFlow(s), s));
        powers.add(Area.rectangle(flow.on(ends[0]), flow.on(ends[1]), 0, mostPower));
        heads.add(Area.rectangle(flow.on(ends[0]), flow.on(ends[1]), 0, mostHead));
    }

    /** A band wider than the map says no more than the map. */
    private static double[] kept(Spread<Flow> spread, PowerMap map, double s) {
        double low = map.lowestFlow(s);
        double high = map.highestFlow(s);
        return new double[] {
            Math.max(low, spread.low().si()), Math.min(high, spread.high().si())
        };
    }

    private Line over(PowerMap map, double s, DoubleUnaryOperator value, Ink ink, String label) {
        double factor = flow.unit().factor();
        return Line.of(x -> value.applyAsDouble(x * factor), flow.on(map.lowestFlow(s)), flow.on(map.highestFlow(s)))
                .in(ink)
                .labelled(label);
    }

    private Chart draws(FlowDraws draws) {
        double[] all = draws.flows();
        Quantiles quantiles = Quantiles.of(all);
        double low = quantiles.at(LOW);
        double high = Math.max(quantiles.at(1 - LOW), low * (1 + 1e-9) + 1e-12);
        double width = (high - low) / BINS;
        double[] counts = new double[BINS];
        Arrays.stream(all)
                .filter(q -> q >= low && q < high)
                .forEach(q -> counts[(int) Math.min(BINS - 1.0, (q - low) / width)]++);
        double[] x = new double[2 * BINS + 2];
        double[] y = new double[2 * BINS + 2];
        x[0] = flow.on(low);
        for (int i = 0; i < BINS; i++) {
            x[2 * i + 1] = flow.on(low + i * width);
            x[2 * i + 2] = flow.on(low + (i + 1) * width);
            y[2 * i + 1] = 100 * counts[i] / all.length;
            y[2 * i + 2] = y[2 * i + 1];
        }
        x[2 * BINS + 1] = flow.on(high);
        Spread<Flow> linear = draws.root().flow();
        List<Mark> marks = new ArrayList<>();
        marks.add(Area.between(x, new double[x.length], y).labelled("draws"));
        marks.add(normal(linear, low, high, 100 * width));
        marks.add(Reference.standingAt(flow.on(draws.lowFlow().si()), "2.5 %").in(Ink.VERMILION));
        marks.add(Reference.standingAt(flow.on(draws.highFlow().si()), "97.5 %").in(Ink.VERMILION));
        return Chart.titled(
                        "Drawn flows of " + draws.estimate().estimator().map().name())
                .across(flow.axis("Flow"))
                .panel(Axis.of("Share of draws", "%").from(0), marks)
                .caption("Line: what linear propagation makes of the same errors.")
                .build();
    }

    private Mark normal(Spread<Flow> linear, double low, double high, double scale) {
        double factor = flow.unit().factor();
        double mean = linear.value().si();
        double sigma = Math.max(linear.standard().si(), 1e-12);
        return Line.of(
                        x -> {
                            double z = (x * factor - mean) / sigma;
                            return scale / (sigma * Math.sqrt(2 * Math.PI)) * Math.exp(-0.5 * z * z);
                        },
                        flow.on(low),
                        flow.on(high))
                .broken(Dash.DASHED)
                .labelled("linear");
    }

    private Chart swept(AgainstTruth swept) {
        List<AgainstTruth.Row> rows =
                swept.rows().stream().filter(row -> row.nearest().isPresent()).toList();
        PowerMap map = swept.estimator().map();
        double s = swept.speed().over(map.speed()).value();
        double[] real = new double[rows.size()];
        double[] found = new double[rows.size()];
        double[] low = new double[rows.size()];
        double[] high = new double[rows.size()];
        for (int i = 0; i < rows.size(); i++) {
            FlowRoot root = rows.get(i).nearest().orElseThrow();
            double[] ends = kept(root.flow(), map, s);
            real[i] = flow.on(rows.get(i).truth().si());
            found[i] = flow.on(root.flow().value().si());
            low[i] = flow.on(ends[0]);
            high[i] = flow.on(ends[1]);
        }
        double most = flow.on(swept.truth().highestFlow(s));
        List<Mark> marks = new ArrayList<>();
        if (rows.size() > 1) {
            marks.add(Area.between(real, low, high).labelled("band, k = 2"));
            marks.add(Line.through(real, found).labelled("estimate"));
        }
        marks.add(Line.of(q -> q, 0, most).in(Ink.BLACK).broken(Dash.DASHED).labelled("truth"));
        others(swept, marks);
        return Chart.titled("Estimate against truth, " + map.name() + " at " + swept.speed())
                .across(flow.axis("Real flow").from(0))
                .panel(flow.axis("Estimated flow").from(0), marks)
                .caption("Readings without noise; from " + swept.method() + ".")
                .build();
    }

    private void others(AgainstTruth swept, List<Mark> marks) {
        List<double[]> all = new ArrayList<>();
        for (AgainstTruth.Row row : swept.rows()) {
            for (FlowRoot other : row.others()) {
                all.add(new double[] {
                    flow.on(row.truth().si()), flow.on(other.flow().value().si())
                });
            }
        }
        if (!all.isEmpty()) {
            marks.add(Points.at(
                            all.stream().mapToDouble(p -> p[0]).toArray(),
                            all.stream().mapToDouble(p -> p[1]).toArray())
                    .in(Ink.VERMILION)
                    .labelled("the other flow"));
        }
    }

    private Chart calibrated(Calibration calibration) {
        PowerMap before = calibration.before().map();
        PowerMap after = calibration.after().map();
        List<Mark> marks = new ArrayList<>();
        List<Double> drawn = new ArrayList<>();
        for (Calibration.Row row : calibration.rows()) {
            double s = row.point().speed().over(after.speed()).value();
            if (drawn.stream().noneMatch(other -> Math.abs(other - s) < 1e-3) && drawn.size() < 3) {
                drawn.add(s);
                String label = row.point().speed().toString();
                marks.add(over(before, s, q -> power.on(before.wireWatts(q, s)), Ink.GREY, label + " before")
                        .broken(Dash.DASHED));
                marks.add(over(after, s, q -> power.on(after.wireWatts(q, s)), Ink.BLUE, label + " after"));
            }
        }
        List<KnownPoint> points =
                calibration.rows().stream().map(Calibration.Row::point).toList();
        marks.add(Points.at(
                        points.stream().mapToDouble(p -> flow.on(p.flow().si())).toArray(),
                        points.stream()
                                .mapToDouble(p -> power.on(p.power().si()))
                                .toArray())
                .labelled("known points"));
        return Chart.titled("Wire power of " + after.name() + " before and after")
                .across(flow.axis("Flow").from(0))
                .panel(power.axis("Wire power").from(0), marks)
                .build();
    }
}
