package headrace.report.circuit;

import headrace.chart.Chart;
import headrace.chart.mark.Bars;
import headrace.chart.mark.Ink;
import headrace.circuit.Branch;
import headrace.circuit.part.Part;
import headrace.circuit.shape.Tap;
import headrace.data.Column;
import headrace.data.Table;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.report.Composed;
import headrace.report.Ruler;
import headrace.report.Shown;
import headrace.units.Flow;
import headrace.units.Head;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How branches show themselves before they stand in a circuit, and parts in a row: each with the head that it loses.
 */
public final class BranchReports {
    private BranchReports() {}

    private record Placed(String place, Part part) {}

    /** Shows a terminal with the mains that lead to it. */
    public static Shown tap(Tap tap) {
        List<Placed> all = new ArrayList<>(placed("branch", tap.parts()));
        all.addAll(placed("supply main", tap.supplyMain()));
        all.addAll(placed("return main", tap.returnMain()));
        Composed shown = Composed.titled("Branch '" + tap.name() + "'").fact("design flow", tap.design());
        if (!tap.supplyMain().isEmpty() || !tap.returnMain().isEmpty()) {
            shown.line("In its mains flows what all branches beyond need too; the heads below are at its own flow.");
        }
        return parts(shown, all, Optional.of(tap.design()));
    }

    /** Shows a branch. */
    public static Shown branch(Branch branch) {
        Composed shown = Composed.titled("Branch '" + branch.name() + "'")
                .fact("from", branch.from())
                .fact("to", branch.to())
                .fact("design flow", branch.design());
        return parts(shown, placed("branch", branch.parts()), branch.design());
    }

    /** Shows parts that lie in a row of a script. */
    public static Shown list(List<Part> parts) {
        return parts(Composed.titled(parts.size() + " parts of a circuit"), placed("", parts), Optional.empty());
    }

    private static List<Placed> placed(String place, List<Part> parts) {
        return parts.stream().map(part -> new Placed(place, part)).toList();
    }

    private static Shown parts(Composed shown, List<Placed> all, Optional<Flow> design) {
        Table table = Table.of(
                "Parts, heads in " + PartReports.WATER,
                Column.text("part"),
                Column.text("where"),
                Column.of("at", Flow.KIND),
                Column.of("head", Head.KIND));
        List<Double> heads = new ArrayList<>();
        Ruler head = Ruler.of(Head.KIND);
        for (Placed each : all) {
            Flow flow = design.orElseGet(() -> PartReports.usualFlow(each.part()));
            Head lost = PartReports.headAt(each.part(), flow);
            heads.add(head.on(lost.si()));
            table = table.row(each.part().toString(), each.place(), flow, lost);
        }
        if (!all.isEmpty()) {
            shown.table(table);
        }
        if (all.size() > 1 && design.isPresent()) {
            shown.chart(Chart.titled("Head of each part at " + design.get())
                    .across(head.axis("Head").from(0))
                    .bars(Bars.of(all.stream().map(each -> each.part().name()).toList())
                            .with("", Ink.SKY, heads))
                    .caption("Valves that throttle stand fully open. In " + PartReports.WATER + ".")
                    .build());
        }
        return shown.shown(
                Notes.NONE, all.stream().map(each -> each.part().basis()).reduce(Basis.NONE, Basis::and));
    }
}
