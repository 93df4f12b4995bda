package headrace.report;

import headrace.chart.Chart;
import headrace.chart.mark.Dash;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.curve.NpshCurve;
import headrace.curve.PumpCurve;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** Shaft power, efficiency and, where it is known, the NPSH required over flow, at the speeds of a map. */
final class SpeedPanelsChart {
    private static final double ROUNDING = 1e-9;

    private final SpeedMap map;
    private final Ruler flow = Ruler.of(Flow.KIND);

    private SpeedPanelsChart(SpeedMap map) {
        this.map = map;
    }

    static Chart of(SpeedMap map) {
        return new SpeedPanelsChart(map).chart();
    }

    private Chart chart() {
        PumpCurve curve = map.set().curve();
        Ruler power = Ruler.of(Power.KIND);
        Ruler efficiency = Ruler.of(Ratio.KIND);
        Ruler head = Ruler.of(Head.KIND);
        List<Mark> powers = new ArrayList<>();
        List<Mark> efficiencies = new ArrayList<>();
        List<Mark> required = new ArrayList<>();
        for (Speed speed : SpeedMapChart.speeds(map)) {
            PumpCurve moved = curve.atSpeed(speed);
            powers.addAll(lines(moved, q -> power.on(moved.shaftWatts(q, 1)), Ink.VERMILION, speed));
            efficiencies.addAll(lines(moved, q -> efficiency.on(moved.efficiency(q, 1)), Ink.GREEN, speed));
            map.npsh().ifPresent(npsh -> required.addAll(npsh(npsh, moved, head)));
        }
        Chart.Draft draft = Chart.titled("Power and efficiency of " + curve.name() + " over speed")
                .across(flow.axis("Flow").from(0))
                .panel(power.axis("Shaft power").from(0), powers)
                .panel(efficiency.axis("Pump efficiency").from(0), efficiencies);
        return (map.npsh().isPresent() ? draft.panel(head.axis("NPSH required").from(0), required) : draft)
                .caption("Efficiency over speed: " + curve.efficiencyOverSpeed().name() + ".")
                .build();
    }

    private List<Mark> lines(PumpCurve moved, DoubleUnaryOperator value, Ink ink, Speed speed) {
        return CurveLines.of(
                x -> value.applyAsDouble(x * flow.unit().factor()),
                CurveLines.Span.of(moved, flow),
                ink,
                speed.toString());
    }

    /** Returns the NPSH over its readings, and dashed below them, as far as the curve goes. */
    private List<Mark> npsh(NpshCurve npsh, PumpCurve moved, Ruler head) {
        Speed speed = moved.speed();
        double s = npsh.share(speed).value();
        double from = moved.lowestFlow().si();
        double low = Math.max(from, npsh.lowestFlow(speed).si());
        double high =
                Math.min(moved.highestFlow().si(), npsh.highestTestedFlow(speed).si());
        DoubleUnaryOperator metres = x -> head.on(npsh.metres(x * flow.unit().factor(), s));
        List<Mark> lines = new ArrayList<>();
        if (low < high) {
            Line line =
                    Line.of(metres, flow.on(low), flow.on(high)).in(Ink.PURPLE).labelled(speed.toString());
            lines.add(Math.abs(s - 1) > ROUNDING ? line.broken(Dash.DASH_DOT) : line);
            if (low > from) {
                lines.add(Line.of(metres, flow.on(from), flow.on(low))
                        .in(Ink.PURPLE)
                        .extended(true));
            }
        }
        return lines;
    }
}
