package headrace.report.circuit;

import headrace.chart.Axis;
import headrace.chart.Chart;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.mark.Points;
import headrace.chart.mark.Reference;
import headrace.circuit.part.Part;
import headrace.circuit.part.coil.CoilHeat;
import headrace.circuit.part.pipe.Pipe;
import headrace.circuit.part.valve.BalancingValve;
import headrace.circuit.part.valve.ControlValve;
import headrace.circuit.part.valve.PressureIndependentValve;
import headrace.circuit.part.valve.SettingTable;
import headrace.report.Ruler;
import headrace.units.Flow;
import headrace.units.FlowCoefficient;
import headrace.units.Head;
import headrace.units.Pressure;
import headrace.units.Ratio;
import headrace.units.Velocity;
import java.util.ArrayList;
import java.util.List;

/** What the parts of a circuit draw. */
final class PartCharts {
    private static final String IN_WATER = "In " + PartReports.WATER + ".";
    private static final double BEYOND = 1.5;
    private static final int[] OPENINGS = {100, 75, 50};

    private PartCharts() {}

    /** Returns the charts of a part. */
    static List<Chart> of(Part part, Flow usual) {
        if (part instanceof PressureIndependentValve valve) {
            return List.of(held(valve));
        }
        if (part instanceof ControlValve valve) {
            return List.of(throttled(valve, usual), stroke(valve));
        }
        return part instanceof BalancingValve valve
                ? List.of(head(part, usual), settings(valve))
                : List.of(head(part, usual));
    }

    /** Returns the head over flow, of a pipe with the velocity. */
    private static Chart head(Part part, Flow usual) {
        Ruler flow = Ruler.of(Flow.KIND);
        Ruler head = Ruler.of(Head.KIND);
        double most = flow.on(BEYOND * usual.si());
        Chart.Draft draft = Chart.titled("Head of the " + part.name())
                .across(flow.axis("Flow").from(0))
                .panel(
                        head.axis("Head").from(0),
                        Line.of(
                                q -> head.on(
                                        PartReports.headAt(part, flow(q, flow)).si()),
                                0,
                                most));
        if (part instanceof Pipe pipe) {
            Ruler velocity = Ruler.of(Velocity.KIND);
            draft.panel(
                    velocity.axis("Velocity").from(0),
                    Line.of(q -> velocity.on(pipe.velocityAt(flow(q, flow)).si()), 0, most)
                            .in(Ink.GREEN));
        }
        return draft.caption(IN_WATER).build();
    }

    private static Flow flow(double printed, Ruler flow) {
        return Flow.cubicMetresPerSecond(printed * flow.unit().factor());
    }

    /** Returns the head of a control valve over flow at a few openings. */
    private static Chart throttled(ControlValve valve, Flow usual) {
        Ruler flow = Ruler.of(Flow.KIND);
        Ruler head = Ruler.of(Head.KIND);
        double top = head.on(PartReports.headAt(valve, usual.times(BEYOND)).si());
        List<Mark> lines = new ArrayList<>();
        for (int opening : OPENINGS) {
            double share = valve.shareAt(opening / 100.0);
            if (share > 0) {
                lines.add(Line.of(
                                q -> head.on(PartReports.headAt(valve, flow(q / share, flow))
                                        .si()),
                                0,
                                flow.on(BEYOND * usual.si()) * share)
                        .labelled(Ratio.percent(opening) + (opening == 100 ? " open" : "")));
            }
        }
        return Chart.titled("Head of the " + valve.name())
                .across(flow.axis("Flow").from(0))
                .panel(head.axis("Head").from(0).to(top), lines)
                .caption(IN_WATER)
                .build();
    }

    /** Returns the flow coefficient over the stroke. */
    private static Chart stroke(ControlValve valve) {
        Ruler coefficient = Ruler.of(FlowCoefficient.KIND);
        double open = coefficient.on(valve.open().si());
        return Chart.titled("Flow coefficient over the stroke")
                .across(Axis.of("Opening", "%").from(0).to(100))
                .panel(
                        coefficient.axis("Flow coefficient").from(0),
                        Line.of(x -> open * valve.shareAt(x / 100), 0, 100).in(Ink.GREEN))
                .caption("The " + valve.characteristic() + " characteristic.")
                .build();
    }

    private static Chart settings(BalancingValve valve) {
        Ruler coefficient = Ruler.of(FlowCoefficient.KIND);
        List<SettingTable.Row> rows = valve.table().rows();
        double[] settings = rows.stream().mapToDouble(SettingTable.Row::setting).toArray();
        double[] open = coefficient.on(
                rows.stream().mapToDouble(row -> row.coefficient().si()).toArray());
        return Chart.titled("Flow coefficient over the setting")
                .across(Axis.of("Setting", "").from(0))
                .panel(
                        coefficient.axis("Flow coefficient").from(0),
                        Line.of(
                                        x -> coefficient.on(
                                                valve.at(x).coefficient().si()),
                                        settings[0],
                                        settings[settings.length - 1])
                                .in(Ink.GREEN),
                        Points.at(settings, open).labelled("of the table"),
                        Points.at(
                                        valve.setting(),
                                        coefficient.on(valve.coefficient().si()))
                                .in(Ink.VERMILION)
                                .labelled("set"))
                .build();
    }

    /** Returns the flow that a valve holds over the pressure difference across it. */
    private static Chart held(PressureIndependentValve valve) {
        Ruler flow = Ruler.of(Flow.KIND);
        Ruler pressure = Ruler.of(Pressure.KIND);
        double most = pressure.on(valve.most().si());
        return Chart.titled("Flow that the " + valve.name() + " holds")
                .across(pressure.axis("Pressure difference").from(0))
                .panel(
                        flow.axis("Flow").from(0),
                        Line.of(
                                        p -> flow.on(valve.flowAt(
                                                        Pressure.pascals(p
                                                                * pressure.unit()
                                                                        .factor()),
                                                        PartReports.WATER)
                                                .si()),
                                        0,
                                        most)
                                .labelled("held flow"),
                        Reference.standingAt(pressure.on(valve.floor().si()), "floor"))
                .caption(IN_WATER)
                .build();
    }

    /** Returns the heat of a coil over its flow, as shares of design. */
    static Chart heat(CoilHeat coil) {
        return Chart.titled("Heat of a " + coil)
                .across(Axis.of("Flow", "% of design").from(0))
                .panel(
                        Axis.of("Heat", "% of design").from(0),
                        Line.of(q -> coil.heatAt(Ratio.percent(q)).toPercent(), 0, 100))
                .build();
    }
}
