package headrace.report;

import headrace.chart.Chart;
import headrace.chart.mark.Bars;
import headrace.chart.mark.Dash;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.circuit.SystemCurve;
import headrace.control.ControlLaw;
import headrace.control.SteadyState;
import headrace.curve.Duty;
import headrace.data.Column;
import headrace.data.Table;
import headrace.drive.Drive;
import headrace.drive.Losses;
import headrace.drive.Motor;
import headrace.operation.OperatingPoint;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/** How a pump set, its circuit, its control and the point where they meet show themselves. */
final class SetReports {
    private static final double BEYOND_DESIGN = 1.2;
    private static final List<Ink> INKS = List.of(Ink.BLUE, Ink.VERMILION, Ink.GREEN, Ink.PURPLE, Ink.BLACK);

    private SetReports() {}

    static Shown motor(Motor motor) {
        return Composed.titled(PlainReports.capital(motor.name()))
                .fact("efficiency at full load", motor.fullLoadEfficiency())
                .fact("loss at full load", motor.fullLoadLoss())
                .fact("stated speed", motor.statedSpeed())
                .fact("gives where it stands", derated(motor))
                .shown(motor);
    }

    private static Optional<Power> derated(Motor motor) {
        return motor.notes().isEmpty() ? Optional.empty() : Optional.of(motor.usable());
    }

    static Shown pumpSet(PumpSet set) {
        Composed composed = Composed.titled("Pump set: " + set.curve().name())
                .line(set.curve().toString() + ".")
                .fact("motor", set.driveTrain().motor())
                .fact("drive", set.driveTrain().drive().map(Drive::toString).orElse("none, on the mains"))
                .fact(
                        "losses",
                        "'" + set.driveTrain().model().name() + "': "
                                + set.driveTrain().model().statement())
                .fact("rated speed", set.ratedSpeed())
                .fact(
                        "speed range",
                        set.minimumSpeed() + (set.minimumSpeedStated() ? "" : " (assumed)") + " to "
                                + set.maximumSpeed());
        if (set.driveTrain().cableLoss().si() > 0) {
            composed.fact("cables and filters lose", set.driveTrain().cableLoss() + " of what passes");
        }
        composed.chart(SpeedMapChart.of(SpeedMap.of(set)));
        return set.hasDrive() ? composed.shown(set, Caution.RESTART) : composed.shown(set);
    }

    static Shown systemCurve(SystemCurve system) {
        Ruler flow = Ruler.of(Flow.KIND);
        Ruler head = Ruler.of(Head.KIND);
        Line line = Line.of(
                        q -> head.on(system.headMetres(q * flow.unit().factor())),
                        0,
                        flow.on(BEYOND_DESIGN * system.design().flow().si()))
                .in(Ink.BLACK)
                .broken(Dash.DASH_DOT)
                .labelled("system curve");
        return Composed.titled("System curve through " + system.design())
                .fact("static head", system.staticHead())
                .fact("exponent", system.exponent())
                .chart(Chart.titled("System curve through " + system.design())
                        .across(flow.axis("Flow").from(0))
                        .panel(head.axis("Head").from(0), line)
                        .build())
                .shown(system);
    }

    static Shown controlLaw(ControlLaw law) {
        Composed composed = Composed.titled("Control law: " + law.name())
                .line(PlainReports.capital(law.statement()) + ".")
                .fact(
                        "observes",
                        law.observes().isEmpty() ? "nothing" : words(new TreeSet<>(law.observes()).toString()))
                .fact("design", law.design());
        Optional<Duty> design =
                law.design().filter(duty -> law.requiredHead(duty.flow()).isPresent());
        design.ifPresent(duty -> composed.chart(lawChart(law, duty)));
        return composed.shown();
    }

    /** Shows several laws: what each does in a row, and in one chart those that follow flow. */
    static Shown controlLaws(List<ControlLaw> laws) {
        Table table = Table.of(
                        "Control laws",
                        Column.text("law"),
                        Column.text("what it does"),
                        Column.of("design flow", Flow.KIND),
                        Column.of("design head", Head.KIND))
                .rows(laws.stream()
                        .map(law -> new Object[] {
                            law.name(),
                            law.statement(),
                            law.design().map(Duty::flow).orElse(null),
                            law.design().map(Duty::head).orElse(null)
                        })
                        .toList());
        List<Mark> lines = new ArrayList<>();
        for (ControlLaw law : laws) {
            law.design()
                    .filter(duty -> law.requiredHead(duty.flow()).isPresent())
                    .ifPresent(duty -> lines.add(lawLine(law, duty).in(INKS.get(lines.size() % INKS.size()))));
        }
        Composed composed = Composed.titled("Control laws").table(table);
        if (!lines.isEmpty()) {
            composed.chart(Chart.titled("Head that each law asks for")
                    .across(Ruler.of(Flow.KIND).axis("Flow").from(0))
                    .panel(Ruler.of(Head.KIND).axis("Head").from(0), lines)
                    .build());
        }
        return composed.shown();
    }

    static String words(String constants) {
        return constants.replaceAll("[\\[\\]]", "").replace('_', ' ').toLowerCase(java.util.Locale.ROOT);
    }

    private static Chart lawChart(ControlLaw law, Duty design) {
        return Chart.titled("Head that '" + law.name() + "' asks for")
                .across(Ruler.of(Flow.KIND).axis("Flow").from(0))
                .panel(Ruler.of(Head.KIND).axis("Head").from(0), lawLine(law, design))
                .build();
    }

    private static Line lawLine(ControlLaw law, Duty design) {
        Ruler flow = Ruler.of(Flow.KIND);
        Ruler head = Ruler.of(Head.KIND);
        return Line.of(
                        q -> head.on(law.requiredHead(Flow.cubicMetresPerSecond(
                                        q * flow.unit().factor()))
                                .map(Head::si)
                                .orElse(0.0)),
                        0,
                        flow.on(design.flow().si()))
                .labelled(law.name());
    }

    static Shown operatingPoint(OperatingPoint point) {
        return point(Composed.titled("Operating point: " + point.flow() + " at " + point.head()), point)
                .shown(point);
    }

    static Shown steadyState(SteadyState state) {
        OperatingPoint point = state.point();
        Composed composed = Composed.titled("'" + state.law().name() + "' at " + point.flow())
                .fact("head asked for", state.asked());
        if (state.limit() != SteadyState.Limit.NONE) {
            composed.fact("limit reached", words(state.limit().name()));
        }
        return point(composed, point).shown(state);
    }

    private static Composed point(Composed composed, OperatingPoint point) {
        composed.line("The wire gives " + point.wirePower() + ", the liquid takes up " + point.hydraulicPower() + ": "
                        + point.wireToWater() + " from wire to water.")
                .fact("flow", point.flow())
                .fact("head", point.head())
                .fact("speed", point.speed() + ", " + point.speedRatio() + " of rated")
                .fact("pump efficiency", point.pumpEfficiency())
                .fact("hydraulic power", point.hydraulicPower())
                .fact("shaft power", point.shaftPower());
        for (Losses.Part part : point.losses().parts()) {
            composed.fact("loss, " + part.name(), part.power());
        }
        return composed.fact("wire power", point.wirePower())
                .fact("wire-to-water", point.wireToWater())
                .chart(powers(point));
    }

    /** Returns where each part of the wire power goes. */
    private static Chart powers(OperatingPoint point) {
        Ruler power = Ruler.of(Power.KIND);
        List<String> names = new ArrayList<>(List.of("to the liquid", "lost in the pump"));
        List<Double> values = new ArrayList<>(List.of(
                power.on(point.hydraulicPower().si()),
                power.on(point.shaftPower().si() - point.hydraulicPower().si())));
        for (Losses.Part part : point.losses().parts()) {
            names.add("lost, " + part.name());
            values.add(power.on(part.power().si()));
        }
        return Chart.titled("Where " + point.wirePower() + " from the wire goes")
                .across(power.axis("Power").from(0))
                .bars(Bars.of(names).with("", Ink.SKY, values))
                .build();
    }
}
