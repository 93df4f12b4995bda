package headrace.kernel.headless;

import headrace.kernel.notebook.Cell;
import headrace.kernel.notebook.Fields;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The cells of a script: a line that begins with {@code // %%} begins a new one, and what follows on that line becomes
 * its heading. A script without such lines is one cell. The lines of a cell whose line says {@code // %% [markdown]}
 * are comments, and become text. A line {@code // %% [parameters]} begins the cell whose values a run may replace.
 */
final class ScriptCells {
    private static final Pattern BEGIN = Pattern.compile("// ?%%\\s*(.*)");

    private static final Pattern COMMENT = Pattern.compile("\\s*//+ ?(.*)");

    private static final String TEXT = "[markdown]";

    private static final String PARAMETERS = "[parameters]";

    private final List<ScriptCell> cells = new ArrayList<>();
    private final StringBuilder lines = new StringBuilder();
    private int line;
    private int firstLine = 1;
    private boolean text;
    private boolean parameters;

    /**
     * A cell of a script.
     *
     * @param firstLine the line of the script where its text begins, from 1
     */
    record ScriptCell(Cell cell, int firstLine) {}

    private ScriptCells() {}

    static List<ScriptCell> of(String script) {
        ScriptCells split = new ScriptCells();
        script.lines().forEach(split::take);
        split.end();
        return List.copyOf(split.cells);
    }

    private void take(String line) {
        this.line++;
        Matcher begin = BEGIN.matcher(line);
        if (begin.matches()) {
            end();
            begin(begin.group(1).strip());
        } else if (text) {
            Matcher comment = COMMENT.matcher(line);
            lines.append(comment.matches() ? comment.group(1) : line).append('\n');
        } else {
            lines.append(line).append('\n');
        }
    }

    private void begin(String heading) {
        text = heading.startsWith(TEXT);
        parameters = heading.startsWith(PARAMETERS);
        if (!text && !parameters && !heading.isEmpty()) {
            cells.add(new ScriptCell(Cell.markdown("## " + heading), line));
        }
        firstLine = line + 1;
    }

    private void end() {
        int blanks = 0;
        while (blanks < lines.length() && lines.charAt(blanks) == '\n') {
            blanks++;
        }
        String source = lines.substring(blanks).stripTrailing();
        if (!source.isBlank()) {
            Cell cell = text ? Cell.markdown(source) : parameters ? tagged(source) : Cell.code(source);
            cells.add(new ScriptCell(cell, firstLine + blanks));
        }
        lines.setLength(0);
        text = false;
        parameters = false;
    }

    private static Cell tagged(String source) {
        return Cell.code(source).with(Fields.NONE.with("tags", List.of(RunParameters.TAG)));
    }
}
