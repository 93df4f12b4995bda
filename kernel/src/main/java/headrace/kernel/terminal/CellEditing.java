package headrace.kernel.terminal;

import headrace.kernel.session.Completeness;
import headrace.kernel.session.Completion;
import headrace.kernel.session.Session;
import java.util.List;
import java.util.Optional;
import org.jline.reader.Candidate;
import org.jline.reader.Completer;
import org.jline.reader.EOFError;
import org.jline.reader.LineReader;
import org.jline.reader.ParsedLine;
import org.jline.reader.Parser;

/** Tells the line editor when a cell is whole, and what could stand at the cursor. */
final class CellEditing implements Parser, Completer {
    /** A blank and parentheses about what is told, and a column that stays free. */
    private static final int AROUND = 5;

    private static final int LEAST_TOLD = 8;

    private final Session session;

    CellEditing(Session session) {
        this.session = session;
    }

    @Override
    public ParsedLine parse(String line, int cursor, ParseContext context) {
        if (context == ParseContext.COMPLETE) {
            return new CellLine(line, cursor, Optional.of(session.complete(line, cursor)));
        }
        if (context == ParseContext.ACCEPT_LINE
                && session.completeness(line).state() == Completeness.State.INCOMPLETE
                && !line.endsWith("\n\n")) {
            throw new EOFError(-1, cursor, "the cell goes on");
        }
        return new CellLine(line, cursor, Optional.empty());
    }

    @Override
    public void complete(LineReader reader, ParsedLine line, List<Candidate> candidates) {
        if (!(line instanceof CellLine cell) || cell.completion().isEmpty()) {
            return;
        }
        List<Completion.Candidate> all = cell.completion().get().candidates();
        int room = room(reader.getTerminal().getSize().getColumns(), cell, all);
        int rank = 0;
        for (Completion.Candidate one : all) {
            String told = one.signature().isEmpty() ? one.type() : one.signature();
            String fitting = told.length() <= room ? told : told.substring(0, Math.max(0, room - 1)) + "…";
            candidates.add(new Candidate(
                    one.text(), one.text(), null, room < LEAST_TOLD ? null : fitting, null, null, false, rank++));
        }
    }

    /** How long what is told of a candidate may be: the list stands under the word, and must not be broken. */
    private int room(int columns, CellLine cell, List<Completion.Candidate> candidates) {
        String before = cell.line().substring(0, cell.cursor() - cell.wordCursor());
        int begins = Shell.prompt(session).length() + before.length() - before.lastIndexOf('\n') - 1;
        int widest =
                candidates.stream().mapToInt(one -> one.text().length()).max().orElse(0);
        return columns - begins % columns - widest - AROUND;
    }

    @Override
    public boolean isEscapeChar(char any) {
        return false;
    }
}
