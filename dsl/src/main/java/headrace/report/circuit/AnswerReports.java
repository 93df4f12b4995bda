package headrace.report.circuit;

import headrace.chart.Axis;
import headrace.chart.Chart;
import headrace.chart.mark.Diagram.Side;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.circuit.Branch;
import headrace.circuit.BranchState;
import headrace.circuit.CircuitSolution;
import headrace.circuit.answer.BranchAnswer;
import headrace.circuit.answer.CircuitSurvey;
import headrace.circuit.answer.HeadMargin;
import headrace.circuit.answer.HeadNeed;
import headrace.circuit.answer.HeadProfile;
import headrace.circuit.answer.ProportionalBalance;
import headrace.data.Column;
import headrace.data.Table;
import headrace.report.Caution;
import headrace.report.Composed;
import headrace.report.Ruler;
import headrace.report.Shown;
import headrace.units.Flow;
import headrace.units.FlowCoefficient;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Numbers;
import headrace.units.Ratio;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** How answers about circuits show themselves. */
public final class AnswerReports {
    private AnswerReports() {}

    /** Shows a survey. */
    public static Shown survey(CircuitSurvey survey) {
        CircuitSolution now = survey.solution();
        Composed shown = Composed.titled("Branches at " + now.flow() + " and " + now.head());
        survey.need()
                .ifPresent(need -> shown.line("For these demands the circuit needs " + need.head() + ", decided by '"
                        + need.index() + "', its index circuit."));
        List<String> starved = now.starvedBranches();
        shown.line(
                starved.isEmpty()
                        ? "Every branch gets what is asked of it."
                        : "Too little at " + String.join(", ", starved) + ".");
        survey.greatest().ifPresent(head -> shown.fact("head of the pump at full speed and no flow", head));
        CircuitReports.schematic(now).ifPresent(shown::chart);
        return shown.table(answers(survey)).shown(survey, Caution.ESTIMATE);
    }

    private static Table answers(CircuitSurvey survey) {
        Table table = Table.of(
                "Branches that serve a load",
                Column.text("branch"),
                Column.of("demand", Flow.KIND),
                Column.of("flow", Flow.KIND),
                Column.of("delivered", Ratio.KIND),
                Column.of("head across", Head.KIND),
                Column.of("missing head", Head.KIND),
                Column.of("opening", Ratio.KIND),
                Column.of("head when shut", Head.KIND),
                Column.number("design authority"),
                Column.number("effective authority"),
                Column.of("design heat not delivered", Ratio.KIND));
        return table.rows(survey.branches().stream().map(AnswerReports::row).toList());
    }

    private static Object[] row(BranchAnswer answer) {
        BranchState state = answer.state();
        return new Object[] {
            answer.name(),
            state.demand().orElseThrow(),
            state.flow(),
            state.delivered(),
            state.available(),
            state.missing(),
            state.opening().orElse(null),
            answer.shut(),
            answer.authority().map(both -> both.design().value()).orElse(null),
            answer.authority().map(both -> both.effective().value()).orElse(null),
            answer.heatMissing().orElse(null)
        };
    }

    /** Shows the head that is needed. */
    public static Shown need(HeadNeed need) {
        return Composed.titled("Head that the circuit needs: " + need.head() + " for " + need.flow())
                .line("'" + need.index() + "' decides it: the index circuit, whose valve stands fully open.")
                .table(needs(need))
                .shown(need, Caution.ESTIMATE);
    }

    /** Shows what stands against a head that was specified. */
    public static Shown margin(HeadMargin margin) {
        return Composed.titled("Margin in the specified head")
                .line(margin.sentence() + ".")
                .table(needs(margin.need()))
                .shown(margin, Caution.ESTIMATE);
    }

    private static Table needs(HeadNeed need) {
        return Table.of(
                        "Branches",
                        Column.text("branch"),
                        Column.of("demand", Flow.KIND),
                        Column.of("head across", Head.KIND),
                        Column.of("head it needs", Head.KIND),
                        Column.of("excess head", Head.KIND))
                .rows(need.branches().stream()
                        .map(each ->
                                new Object[] {each.name(), each.demand(), each.available(), each.needed(), each.excess()
                                })
                        .toList());
    }

    /** Shows settings and their order. */
    public static Shown balance(ProportionalBalance balance) {
        Table table = Table.of(
                "What to do, in this order",
                Column.text("branch"),
                Column.text("do"),
                Column.of("excess head", Head.KIND),
                Column.of("flow coefficient", FlowCoefficient.KIND),
                Column.text("setting"),
                Column.of("shows before", Ratio.KIND),
                Column.of("then shows", Ratio.KIND),
                Column.of("reference shows", Ratio.KIND));
        List<Object[]> rows = new ArrayList<>();
        for (ProportionalBalance.Step step : balance.steps()) {
            rows.add(new Object[] {
                step.branch(),
                todo(balance, step),
                step.excess(),
                step.coefficient().orElse(null),
                step.setting().map(AnswerReports::turns).orElse(""),
                step.before(),
                step.after(),
                step.reference()
            });
        }
        boolean open = balance.steps().get(0).excess().si() == 0;
        return Composed.titled("Proportional balancing at " + balance.head())
                .line("Open every control valve and every balancing valve. '" + balance.reference()
                        + (open
                                ? "' has no excess head at design flow: it is the reference and stays open."
                                : "' has the least excess head of those with a valve to set: it is the reference."))
                .line(
                        "From the farthest inwards, turn each valve until its branch shows the same share of its design flow"
                                + " as the reference shows at that moment.")
                .line("The circuit needs " + balance.need().head() + " at the pump for its design flow.")
                .table(table.rows(rows))
                .shown(balance, Caution.ESTIMATE);
    }

    private static String todo(ProportionalBalance balance, ProportionalBalance.Step step) {
        if (!step.branch().equals(balance.reference())) {
            return "set to the reference";
        }
        return step.excess().si() > 0 ? "set, then leave" : "leave open";
    }

    private static String turns(double setting) {
        return Numbers.print(setting);
    }

    /** Shows heads along supply and return. */
    public static Shown profile(HeadProfile profile) {
        return Composed.titled("Heads along the mains at " + profile.solution())
                .chart(chart(profile))
                .shown(profile, Caution.ESTIMATE);
    }

    private static Chart chart(HeadProfile profile) {
        CircuitSolution now = profile.solution();
        SidedJunctions sides = new SidedJunctions(now.circuit());
        List<Mark> marks = new ArrayList<>();
        String supply = longest(profile, sides, Side.LEFT);
        String back = longest(profile, sides, Side.RIGHT);
        for (Branch branch : now.circuit().branches()) {
            Work.poll();
            if (!profile.reaches(branch.from()) || !profile.reaches(branch.to())) {
                continue;
            }
            Line line = line(profile, branch);
            if (branch.isTerminal()) {
                boolean starved = now.branch(branch.name()).isStarved();
                marks.add(line.in(starved ? Ink.VERMILION : Ink.GREY).labelled(branch.name()));
            } else if (length(profile, branch) == 0) {
                marks.add(line.in(Ink.BLACK).labelled(branch.name()));
            } else if (sides.side(branch.from()) == Side.LEFT) {
                marks.add(line.in(Ink.BLUE).labelled(branch.name().equals(supply) ? "supply" : ""));
            } else {
                marks.add(line.in(Ink.GREEN).labelled(branch.name().equals(back) ? "return" : ""));
            }
        }
        return Chart.titled("Heads along supply and return")
                .across(across(profile).from(0))
                .panel(
                        Ruler.of(Head.KIND)
                                .axis("Head above the suction of the pump")
                                .from(0),
                        marks)
                .caption("Between supply and return stands what each branch has; coloured where it is too little.")
                .build();
    }

    private static Axis across(HeadProfile profile) {
        return profile.inMetres()
                ? Ruler.of(Length.KIND).axis("Length of pipe from the pump")
                : Axis.counting("Mains from the pump");
    }

    /** Returns where a junction stands across: in the printed unit of length, or how many mains away. */
    private static double across(HeadProfile profile, String junction) {
        double distance = profile.distance(junction);
        return profile.inMetres() ? Ruler.of(Length.KIND).on(distance) : distance;
    }

    /** The main that says which of the two lines it belongs to: the longest of them. */
    private static String longest(HeadProfile profile, SidedJunctions sides, Side side) {
        return profile.solution().circuit().branches().stream()
                .filter(branch ->
                        !branch.isTerminal() && profile.reaches(branch.from()) && profile.reaches(branch.to()))
                .filter(branch -> sides.side(branch.from()) == side)
                .max(Comparator.comparingDouble(branch -> length(profile, branch)))
                .map(Branch::name)
                .orElse("");
    }

    private static double length(HeadProfile profile, Branch branch) {
        return Math.abs(profile.distance(branch.to()) - profile.distance(branch.from()));
    }

    /** A branch that serves a load stands upright, wherever it returns. */
    private static Line line(HeadProfile profile, Branch branch) {
        CircuitSolution now = profile.solution();
        double begins = across(profile, branch.from());
        Ruler head = Ruler.of(Head.KIND);
        return Line.through(
                new double[] {begins, branch.isTerminal() ? begins : across(profile, branch.to())}, new double[] {
                    head.on(now.headAt(branch.from()).si()),
                    head.on(now.headAt(branch.to()).si())
                });
    }
}
