package headrace.report.sheet;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.report.Block;
import headrace.report.Block.NotesBlock;
import headrace.report.Block.TextBlock;
import headrace.report.Caution;
import headrace.report.Reports;
import headrace.report.Shown;
import headrace.report.run.RunDifference;
import headrace.report.run.RunRecord;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A sheet that one hands over.
 *
 * <p>Its parts show results; the notes, cautions, inputs and choices of all of them are gathered at its end, so that
 * every number has its source on the same sheet. Two revisions tell what changed between them.
 *
 * @param head what stands at its top
 * @param parts what it shows
 * @param assumptions what was assumed beyond the notes of the results, in sentences
 * @param cautions the cautions of all parts, each once
 * @param notes the notes of all parts
 * @param basis what all parts rest on
 * @param changes what changed since an earlier revision, if one was given
 */
public record Sheet(
        SheetHead head,
        List<Part> parts,
        List<String> assumptions,
        List<String> cautions,
        Notes notes,
        Basis basis,
        Optional<RunDifference> changes)
        implements Traced {
    /**
     * A part of a sheet.
     *
     * @param heading its heading, the same in every revision
     * @param lines sentences
     * @param blocks tables, charts and facts
     */
    public record Part(String heading, List<String> lines, List<Block> blocks) {
        /** Keeps the lists from changing. */
        public Part {
            lines = List.copyOf(lines);
            blocks = List.copyOf(blocks);
        }
    }

    /** Keeps the lists from changing; refuses a sheet without parts. */
    public Sheet {
        parts = List.copyOf(parts);
        assumptions = List.copyOf(assumptions);
        cautions = List.copyOf(cautions);
        if (parts.isEmpty()) {
            throw new Refusal(
                    SheetProblem.INCOMPLETE_SHEET,
                    "Asked for the sheet '" + head.title() + "' without anything on it",
                    "A sheet shows at least one result",
                    "Add one");
        }
    }

    /** Returns a sheet without parts yet. */
    public static Draft titled(SheetHead head) {
        return new Draft(head);
    }

    /** What a sheet is made from, part by part. */
    public static final class Draft {
        private final SheetHead head;
        private final List<Part> parts = new ArrayList<>();
        private final List<String> assumptions = new ArrayList<>();
        private final Set<String> cautions = new LinkedHashSet<>();
        private Notes notes = Notes.NONE;
        private Basis basis = Basis.NONE;

        private Draft(SheetHead head) {
            this.head = head;
            cautions.add(Caution.ESTIMATE);
        }

        /** Adds what a result shows under a heading, and gathers its notes, cautions and basis. */
        public Draft part(String heading, Object result) {
            Shown shown = Reports.of(result).orElseGet(() -> Shown.line(String.valueOf(result)));
            if (result instanceof Traced traced) {
                notes = notes.and(traced.notes());
                basis = basis.and(traced.basis());
            }
            List<Block> kept = new ArrayList<>();
            for (Block block : shown.blocks()) {
                if (block instanceof TextBlock text && text.heading().equals("Caution")) {
                    cautions.addAll(text.lines());
                } else if (block instanceof NotesBlock noted) {
                    notes = notes.and(noted.notes());
                } else if (!(block instanceof TextBlock text && text.heading().equals("Basis"))) {
                    kept.add(block);
                }
            }
            List<String> lines = new ArrayList<>();
            lines.add(shown.title() + (shown.title().endsWith(".") ? "" : "."));
            lines.addAll(shown.lines());
            parts.add(new Part(heading, lines, kept));
            return this;
        }

        /** Adds what a part rests on that shows less than its whole result. */
        public Draft rest(Traced result) {
            notes = notes.and(result.notes());
            basis = basis.and(result.basis());
            return this;
        }

        /** Adds an assumption in a sentence. */
        public Draft assume(String sentence) {
            assumptions.add(sentence);
            return this;
        }

        /** Adds a note of the sheet itself. */
        public Draft note(SheetProblem problem, String text) {
            notes = notes.with(problem, text);
            return this;
        }

        /** Returns the sheet. */
        public Sheet sheet() {
            return new Sheet(head, parts, assumptions, List.copyOf(cautions), notes, basis, Optional.empty());
        }
    }

    /** Returns this sheet with what changed since an earlier revision. */
    public Sheet since(RunRecord earlier, int language) {
        return new Sheet(
                head,
                parts,
                assumptions,
                cautions,
                notes,
                basis,
                Optional.of(RunDifference.between(earlier, record(language))));
    }

    /** Returns every number of the sheet, with what it rests on, as the record of a run. */
    public RunRecord record(int language) {
        List<Object> results = new ArrayList<>();
        for (Part part : parts) {
            results.add(new Shown(part.heading(), part.lines(), part.blocks()));
        }
        Basis all = basis;
        for (String assumption : assumptions) {
            all = all.with("assumption: " + assumption);
        }
        results.add(new Rests(all));
        return RunRecord.of("revision " + head.revision(), language, results);
    }

    private record Rests(Basis basis) implements Traced {
        @Override
        public Notes notes() {
            return Notes.NONE;
        }
    }

    @Override
    public String toString() {
        return head.title() + ", " + head.project() + ", revision " + head.revision();
    }
}
