package headrace.report;

import headrace.chart.Chart;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Mark;
import headrace.chart.mark.Points;
import headrace.chart.mark.Symbol;
import headrace.trend.Channel;
import headrace.trend.MapCheck;
import headrace.trend.TrendLog;
import headrace.units.Flow;
import headrace.units.Head;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Where a log has the pump at work, upon its islands of efficiency: before and after the end of the reference. */
final class CloudChart {
    private static final int MOST_POINTS = 350;

    private CloudChart() {}

    static Chart of(MapCheck check) {
        SpeedMap map = SpeedMap.of(check.set());
        Ruler flow = Ruler.of(Flow.KIND);
        Ruler head = Ruler.of(Head.KIND);
        List<Mark> marks = new ArrayList<>(SpeedMapChart.behind(map));
        TrendLog log = check.log();
        int end = (int) Arrays.stream(log.seconds())
                .filter(second -> second < check.until().getEpochSecond())
                .count();
        cloud(check, 0, end).ifPresent(p -> marks.add(p.in(Ink.GREY).labelled("reference")));
        cloud(check, end, log.count())
                .ifPresent(p -> marks.add(p.in(Ink.VERMILION).as(Symbol.PLUS).labelled("after")));
        return Chart.titled(check.set().curve().name() + ": where it worked")
                .across(flow.axis("Flow").from(0))
                .panel(head.axis("Head").from(0), marks)
                .caption(
                        log.has(Channel.HEAD)
                                ? "Rows of the log, measured flow and head."
                                : "Rows of the log, measured flow, and the head that the map has at the measured speed.")
                .build();
    }

    private static Optional<Points> cloud(MapCheck check, int from, int end) {
        TrendLog log = check.log();
        int step = 1 + Math.max(0, end - from - 1) / MOST_POINTS;
        double[] flow = log.values(Channel.FLOW);
        double[] heads = log.has(Channel.HEAD) ? log.values(Channel.HEAD) : null;
        double[] speeds = log.values(Channel.SPEED);
        double rated = check.set().curve().speed().si();
        int[] rows = IntStream.range(0, end - from)
                .filter(i -> i % step == 0)
                .map(i -> from + i)
                .filter(i -> speeds[i] > 0 && flow[i] > 0)
                .toArray();
        if (rows.length == 0) {
            return Optional.empty();
        }
        double[] x = IntStream.of(rows).mapToDouble(i -> flow[i]).toArray();
        double[] y = IntStream.of(rows)
                .mapToDouble(i -> heads == null ? check.set().curve().headMetres(flow[i], speeds[i] / rated) : heads[i])
                .toArray();
        return Optional.of(
                Points.at(Ruler.of(Flow.KIND).on(x), Ruler.of(Head.KIND).on(y)).as(Symbol.CROSS));
    }
}
