package headrace.report.plant;

import headrace.chart.Axis;
import headrace.chart.Chart;
import headrace.chart.mark.Dash;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.mark.Reference;
import headrace.control.staging.PumpPlant;
import headrace.control.staging.StagedRun;
import headrace.control.staging.Staging;
import headrace.control.staging.Switch;
import headrace.data.Column;
import headrace.data.Table;
import headrace.report.Caution;
import headrace.report.Composed;
import headrace.report.Ruler;
import headrace.report.Shown;
import headrace.units.Flow;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * How the staging of pumps shows itself: the powers of each number over flow, the switches, the price of a fixed rule.
 */
public final class StagingReports {
    private static final List<Ink> INKS =
            List.of(Ink.BLUE, Ink.VERMILION, Ink.GREEN, Ink.PURPLE, Ink.ORANGE, Ink.BLACK);
    private static final int STEPS = 300;
    private static final int ROWS = 10;

    private StagingReports() {}

    /** Shows the staging of a plant. */
    public static Shown staging(Staging staging) {
        Composed shown = Composed.titled("Staging of " + staging.plant());
        if (staging.switches().isEmpty()) {
            shown.line("One number of pumps takes least at every flow.");
        }
        staging.switches().forEach(each -> shown.line(capital(each) + "."));
        return shown.line(penaltyLine(staging))
                .table(switches(staging))
                .chart(chart(staging))
                .table(flows(staging))
                .shown(staging, Caution.ESTIMATE, Caution.RESTART);
    }

    private static String capital(Switch each) {
        return "From " + each;
    }

    private static String penaltyLine(Staging staging) {
        double most = 0;
        Flow at = Flow.ZERO;
        for (int i = 1; i <= STEPS; i++) {
            Flow flow = staging.plant().design().flow().times((double) i / STEPS);
            double penalty = staging.penalty(flow).map(Power::watts).orElse(0.0);
            if (penalty > most) {
                most = penalty;
                at = flow;
            }
        }
        return most == 0
                ? "The fixed rule (" + staging.rule() + ") takes no more at any flow."
                : "The fixed rule (" + staging.rule() + ") takes up to " + Power.watts(most) + " more, at " + at + ".";
    }

    private static Table switches(Staging staging) {
        Table table = Table.of(
                "Switches",
                Column.text("pumps"),
                Column.of("flow", Flow.KIND),
                Column.of("share of design flow", Ratio.KIND),
                Column.of("wire power", Power.KIND),
                Column.text("what decides"));
        for (Switch each : staging.switches()) {
            table = table.row(
                    each.below() + " to " + each.above(), each.flow(), each.share(), each.power(), each.reason());
        }
        return table;
    }

    private static Table flows(Staging staging) {
        PumpPlant plant = staging.plant();
        Table table = Table.of(
                "Over flow",
                Column.of("share of design flow", Ratio.KIND),
                Column.of("flow", Flow.KIND),
                Column.number("pumps"),
                Column.of("speed", Speed.KIND),
                Column.of("wire power", Power.KIND),
                Column.number("pumps by the rule"),
                Column.of("more by the rule", Power.KIND));
        for (int i = 1; i <= ROWS; i++) {
            Ratio share = Ratio.of((double) i / ROWS);
            Flow flow = plant.design().flow().times(share);
            int best = plant.best(flow);
            table = table.row(
                    share,
                    flow,
                    best == 0 ? null : best,
                    best == 0 ? null : plant.speed(best, flow).orElse(null),
                    staging.leastPower(flow).orElse(null),
                    staging.byRule(flow).orElse(null),
                    staging.penalty(flow).orElse(null));
        }
        return table;
    }

    private static Chart chart(Staging staging) {
        PumpPlant plant = staging.plant();
        Ruler power = Ruler.of(Power.KIND);
        List<Mark> powers = new ArrayList<>();
        for (int n = 1; n <= plant.installed(); n++) {
            int running = n;
            String label = n == 1 ? "1 pump" : n + " pumps";
            powers.addAll(lines(
                    plant, power, flow -> plant.wirePower(running, flow), INKS.get((n - 1) % INKS.size()), label));
        }
        List<Mark> penalties = new ArrayList<>(lines(plant, power, staging::penalty, Ink.GREY, ""));
        for (Switch each : staging.switches()) {
            double at = Ruler.of(Flow.KIND).on(each.flow().si());
            powers.add(Reference.standingAt(at, each.below() + " to " + each.above()));
            penalties.add(Reference.standingAt(at, ""));
        }
        return Chart.titled("Wire power by the number of pumps, along the control curve")
                .across(Ruler.of(Flow.KIND).axis("Total flow").from(0))
                .panel(power.axis("Wire power").from(0), powers)
                .panel(power.axis("More by the fixed rule").from(0), penalties)
                .caption(plant.law().name() + "; losses of motor and drive by the model '"
                        + plant.set().driveTrain().model().name() + "'.")
                .build();
    }

    /** Returns a line for each run of flows at which there is a power. */
    private static List<Line> lines(
            PumpPlant plant, Ruler up, Function<Flow, Optional<Power>> power, Ink ink, String label) {
        Ruler across = Ruler.of(Flow.KIND);
        double design = plant.design().flow().si();
        double[] x = new double[STEPS];
        double[] y = new double[STEPS];
        List<Line> lines = new ArrayList<>();
        int count = 0;
        for (int i = 1; i <= STEPS + 1; i++) {
            Flow flow = Flow.cubicMetresPerSecond(design * i / STEPS);
            Optional<Power> here = i <= STEPS ? power.apply(flow) : Optional.empty();
            if (here.isPresent()) {
                x[count] = across.on(flow.si());
                y[count++] = up.on(here.get().si());
            } else {
                if (count > 1) {
                    Line line = Line.through(Arrays.copyOf(x, count), Arrays.copyOf(y, count))
                            .in(ink);
                    lines.add(lines.isEmpty() ? line.labelled(label) : line);
                }
                count = 0;
            }
        }
        return lines;
    }

    /** Shows a plant that followed flows in time. */
    public static Shown run(StagedRun run) {
        Composed shown = Composed.titled("Staged run: " + run.staging().plant())
                .line("The wire gives " + run.energy() + " with " + run.starts() + " starts beside the first pump; "
                        + run.least() + " with the best number in every step, " + run.byRule() + " by the fixed rule.");
        for (int pumps = 0; pumps <= run.staging().plant().installed(); pumps++) {
            shown.fact("with " + pumps + (pumps == 1 ? " pump" : " pumps"), run.with(pumps));
        }
        return shown.fact("not served", run.unserved()).chart(steps(run)).shown(run, Caution.ESTIMATE, Caution.RESTART);
    }

    private static Chart steps(StagedRun run) {
        int size = run.running().size();
        double[] x = new double[2 * size];
        double[] y = new double[2 * size];
        double hours = run.step().toHours();
        for (int i = 0; i < size; i++) {
            x[2 * i] = i * hours;
            x[2 * i + 1] = (i + 1) * hours;
            y[2 * i] = run.running().get(i);
            y[2 * i + 1] = run.running().get(i);
        }
        return Chart.titled("Pumps that run")
                .across(Axis.of("Time", "h").from(0))
                .panel(
                        Axis.counting("Pumps").from(0).to(run.staging().plant().installed() + 0.2),
                        Line.through(x, y).broken(Dash.SOLID))
                .build();
    }
}
