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
        int rank = 0;
        for (Completion.Candidate one : cell.completion().get().candidates()) {
            String told = one.signature().isEmpty() ? one.type() : one.signature();
            candidates.add(new Candidate(one.text(), one.text(), null, told, null, null, false, rank++));
        }
    }

    @Override
    public boolean isEscapeChar(char any) {
        return false;
    }
}
