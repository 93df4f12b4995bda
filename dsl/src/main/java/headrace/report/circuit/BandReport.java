package headrace.report.circuit;

import headrace.chart.Chart;
import headrace.chart.mark.Area;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.mark.Points;
import headrace.chart.mark.Symbol;
import headrace.circuit.Demands;
import headrace.circuit.band.BandEdge;
import headrace.circuit.band.BandPoint;
import headrace.circuit.band.HeadBand;
import headrace.control.BandWithLaws;
import headrace.control.ControlLaw;
import headrace.control.LoopOperation;
import headrace.data.Column;
import headrace.data.Table;
import headrace.report.Caution;
import headrace.report.Composed;
import headrace.report.Ruler;
import headrace.report.Shown;
import headrace.units.Flow;
import headrace.units.Head;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/** How head bands show themselves: as an area, with the laws that are to serve it. */
public final class BandReport {
    /** Beyond so many terminals a pattern is no reading matter. */
    private static final int MOST_NAMED = 8;

    private static final List<Ink> INKS = List.of(Ink.BLUE, Ink.VERMILION, Ink.PURPLE, Ink.BLACK);
    private static final List<Symbol> SYMBOLS = List.of(Symbol.values());

    private BandReport() {}

    /** Shows a band. */
    public static Shown band(HeadBand band) {
        Composed composed = Composed.titled(title(band)).line(widest(band));
        if (band.points().size() > 1) {
            composed.chart(chart(band, List.of()));
        }
        return composed.table(table(band)).shown(band, Caution.ESTIMATE);
    }

    /** Shows a band with laws. */
    public static Shown laws(BandWithLaws with) {
        Composed composed = Composed.titled(title(with.band())).line(widest(with.band()));
        with.laws().forEach(law -> composed.line(verdict(with, law)));
        List<Mark> marks = new ArrayList<>();
        for (int i = 0; i < with.laws().size(); i++) {
            law(with, i, marks);
        }
        return composed.chart(chart(with.band(), marks))
                .table(table(with.band()))
                .shown(with, Caution.ESTIMATE);
    }

    private static String title(HeadBand band) {
        return "Head band of a " + band.circuit();
    }

    private static String widest(HeadBand band) {
        BandPoint widest = band.points().stream()
                .max((one, other) -> width(one).compareTo(width(other)))
                .orElseThrow();
        return "At " + widest.flow() + " the circuit needs from "
                + widest.least().head() + " to "
                + widest.greatest().head() + ", depending on who asks for it; most if '"
                + widest.greatest().decides() + "' is among them.";
    }

    private static Head width(BandPoint point) {
        return point.greatest().head().minus(point.least().head());
    }

    private static String verdict(BandWithLaws with, ControlLaw law) {
        if (law.requiredHead(with.band().demands().total()).isEmpty()) {
            return "'" + law.name() + "' makes no head of flow alone: its points are drawn, all branches asking alike.";
        }
        return with.gap(law)
                .map(gap ->
                        "'" + law.name() + "' gives less than some pattern needs from " + gap.from() + " to " + gap.to()
                                + ": at " + gap.worst().flow() + " '"
                                + gap.worst().greatest().decides() + "' may miss up to " + gap.missing() + ".")
                .orElse("'" + law.name() + "' gives what every pattern needs.");
    }

    private static Chart chart(HeadBand band, List<Mark> laws) {
        List<Mark> marks = new ArrayList<>();
        Ruler flow = Ruler.of(Flow.KIND);
        Ruler head = Ruler.of(Head.KIND);
        double[] flows = flow.on(values(band, point -> point.flow().si()));
        double[] least = head.on(values(band, point -> point.least().head().si()));
        double[] greatest =
                head.on(values(band, point -> point.greatest().head().si()));
        marks.add(Area.between(flows, least, greatest).in(Ink.SKY).labelled("what the circuit may need"));
        marks.add(Line.through(flows, greatest).in(Ink.GREEN).labelled("greatest need"));
        marks.add(Line.through(flows, least).in(Ink.GREY).labelled("least need"));
        marks.addAll(laws);
        return Chart.titled("Head band")
                .across(flow.axis("Total flow").from(0))
                .panel(head.axis("Head at the pump").from(0), marks)
                .caption(
                        laws.isEmpty()
                                ? "Every way to share a total flow, each branch up to its demand."
                                : "Every way to share a total flow, each branch up to its demand. Points: the pump set under a"
                                        + " law, all branches asking for the same share.")
                .build();
    }

    private static double[] values(HeadBand band, ToDoubleFunction<BandPoint> of) {
        return band.points().stream().mapToDouble(of).toArray();
    }

    private static void law(BandWithLaws with, int i, List<Mark> marks) {
        ControlLaw law = with.laws().get(i);
        Ink ink = INKS.get(i % INKS.size());
        Ruler flow = Ruler.of(Flow.KIND);
        Ruler head = Ruler.of(Head.KIND);
        double most = flow.on(with.band().demands().total().si());
        boolean ofFlow = law.requiredHead(Flow.ZERO).isPresent();
        if (ofFlow) {
            marks.add(Line.of(
                            q -> head.on(law.headAt(Flow.cubicMetresPerSecond(
                                            q * flow.unit().factor()))
                                    .si()),
                            0,
                            most)
                    .in(ink)
                    .labelled(law.name()));
        }
        List<LoopOperation> runs = with.points().get(i);
        double[] flows = runs.stream()
                .mapToDouble(run -> flow.on(run.circuit().flow().si()))
                .toArray();
        double[] heads = runs.stream()
                .mapToDouble(run -> head.on(run.circuit().head().si()))
                .toArray();
        if (runs.size() > 0) {
            marks.add(Points.at(flows, heads)
                    .in(ink)
                    .as(SYMBOLS.get(i % SYMBOLS.size()))
                    .labelled(ofFlow ? "" : law.name()));
        }
    }

    private static Table table(HeadBand band) {
        Table table = Table.of(
                "Both edges",
                Column.of("total flow", Flow.KIND),
                Column.of("least head", Head.KIND),
                Column.text("decided by"),
                Column.of("greatest head", Head.KIND),
                Column.text("then decided by"),
                Column.text("pattern of the greatest"));
        List<Object[]> rows = new ArrayList<>();
        for (BandPoint point : band.points()) {
            BandEdge least = point.least();
            BandEdge greatest = point.greatest();
            rows.add(new Object[] {
                point.flow(),
                least.head(),
                least.decides(),
                greatest.head(),
                greatest.decides(),
                pattern(greatest.pattern())
            });
        }
        return table.rows(rows);
    }

    private static String pattern(Demands demands) {
        List<String> asked = demands.flows().entrySet().stream()
                .filter(each -> each.getValue().si() > 0)
                .map(each -> each.getKey() + " " + each.getValue())
                .toList();
        return asked.size() <= MOST_NAMED
                ? String.join(", ", asked)
                : asked.stream().limit(MOST_NAMED).collect(Collectors.joining(", ")) + " and "
                        + (asked.size() - MOST_NAMED) + " more";
    }
}
