package headrace.report.run;

import headrace.data.Column;
import headrace.data.Table;
import headrace.report.Block.TableBlock;
import headrace.report.Shown;
import headrace.report.run.RunDifference.Change;
import headrace.report.run.RunRecord.Kind;
import headrace.units.Numbers;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** How the record of a run, and what changed between two, show themselves. */
public final class RunReports {
    private static final int HASH_SHOWN = 12;

    private RunReports() {}

    /** Shows a record. */
    public static Shown of(RunRecord record) {
        return new Shown(
                "Run '" + record.name() + "'", List.of(record + "."), List.of(new TableBlock(record.toTable())));
    }

    /** Shows what changed. */
    public static Shown of(RunDifference difference) {
        List<String> lines = new ArrayList<>();
        if (difference.isNothing()) {
            return new Shown(
                    "Nothing changed from '" + difference.before().name() + "' to '"
                            + difference.after().name() + "'",
                    List.of("The same versions, inputs and choices gave the same results."),
                    List.of());
        }
        List<Change> causes = new ArrayList<>(difference.of(Kind.EDITION));
        causes.addAll(difference.of(Kind.INPUT));
        causes.addAll(difference.of(Kind.CHOICE));
        List<Change> moved = difference.of(Kind.RESULT);
        lines.add(
                causes.isEmpty()
                        ? "No version, input or choice that is recorded changed."
                        : (causes.size() == 1 ? "One thing changed: " : causes.size() + " things changed: ")
                                + causes.stream().map(RunReports::said).collect(Collectors.joining("; ")) + ".");
        lines.add(effect(moved));
        return new Shown(
                "From '" + difference.before().name() + "' to '"
                        + difference.after().name() + "'",
                lines,
                List.of(new TableBlock(table(difference))));
    }

    private static String said(Change change) {
        String what = change.kind() == Kind.INPUT ? "the input " + change.what() : change.what();
        if (change.before().isEmpty()) {
            return what + " is new";
        }
        if (change.after().isEmpty()) {
            return what + " is gone";
        }
        return change.kind() == Kind.INPUT
                ? what + " has another content"
                : what + " from " + change.before().get() + " to "
                        + change.after().get();
    }

    private static String effect(List<Change> moved) {
        if (moved.isEmpty()) {
            return "No result moved.";
        }
        return moved.stream()
                .filter(change -> change.moved().isPresent())
                .max(Comparator.comparingDouble(
                        change -> Math.abs(change.moved().getAsDouble())))
                .map(most -> moved.size() + (moved.size() == 1 ? " result moved" : " results moved") + ", most of all "
                        + most.what() + ": " + printed(most.before().orElse("")) + " to "
                        + printed(most.after().orElse("")) + ", "
                        + signed(most.moved().getAsDouble()) + ".")
                .orElse(moved.size() + " results changed.");
    }

    private static Table table(RunDifference difference) {
        return Table.of(
                        "What is not the same",
                        Column.text("kind"),
                        Column.text("what"),
                        Column.text("before"),
                        Column.text("after"),
                        Column.text("change"))
                .rows(difference.changes().stream().map(RunReports::row).toList());
    }

    private static Object[] row(Change change) {
        return new Object[] {
            change.kind().name().toLowerCase(Locale.ROOT),
            change.what(),
            shortened(change, change.before().orElse("–")),
            shortened(change, change.after().orElse("–")),
            change.moved().isPresent() ? signed(change.moved().getAsDouble()) : ""
        };
    }

    private static String shortened(Change change, String value) {
        return change.kind() == Kind.INPUT && value.length() > HASH_SHOWN
                ? value.substring(0, HASH_SHOWN) + "…"
                : printed(value);
    }

    /** A number is recorded to its last bit and shown with the usual digits. */
    private static String printed(String value) {
        int blank = value.indexOf(' ');
        String number = blank < 0 ? value : value.substring(0, blank);
        try {
            return Numbers.print(Double.parseDouble(number)) + (blank < 0 ? "" : value.substring(blank));
        } catch (NumberFormatException words) {
            return value;
        }
    }

    private static String signed(double share) {
        return (share > 0 ? "+" : "") + Ratio.of(share);
    }
}
