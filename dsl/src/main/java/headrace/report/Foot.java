package headrace.report;

import headrace.problem.GatheredNotes;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Input;
import headrace.record.Traced;
import headrace.report.Block.NotesBlock;
import headrace.report.Block.TextBlock;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** What stands beneath every result: cautions, its notes, and what it rests on. */
final class Foot {
    private static final int HASH_DIGITS = 12;

    /** More notes than these nobody reads one by one. */
    private static final int READ = 12;

    private Foot() {}

    /** Returns the foot of a result, with the cautions that belong beside it. */
    static List<Block> of(Traced result, String... cautions) {
        return of(result.notes(), result.basis(), cautions);
    }

    static List<Block> of(Notes notes, Basis basis, String... cautions) {
        List<Block> blocks = new ArrayList<>();
        if (cautions.length > 0) {
            blocks.add(new TextBlock("Caution", List.of(cautions)));
        }
        if (!notes.isEmpty()) {
            blocks.add(new NotesBlock(notes.list().size() > READ ? gathered(notes) : notes));
        }
        List<String> lines = Stream.concat(basis.inputs().stream().map(Foot::line), basis.choices().stream())
                .toList();
        if (!lines.isEmpty()) {
            blocks.add(new TextBlock("Basis", lines));
        }
        return blocks;
    }

    private static Notes gathered(Notes notes) {
        GatheredNotes gathered = new GatheredNotes();
        gathered.add(notes);
        return gathered.notes();
    }

    private static String line(Input input) {
        return input.name() + ": " + input.source() + " (SHA-256 "
                + input.sha256().substring(0, HASH_DIGITS) + "…)";
    }
}
