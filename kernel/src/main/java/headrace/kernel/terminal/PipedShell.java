package headrace.kernel.terminal;

import headrace.kernel.session.Completeness;
import headrace.kernel.session.Outcome;
import headrace.kernel.session.Output;
import headrace.kernel.session.Session;
import headrace.report.Block.ChartBlock;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.Optional;

/**
 * The shell where there is no terminal: cells come from a file or another program, results go out as plain text. Each
 * cell ends with the line that makes it whole.
 */
public final class PipedShell {
    private static final int COLUMNS = 100;

    private final Session session;
    private final PrintWriter out;
    private final Screen screen;
    private final boolean prompts;
    private boolean failed;

    /**
     * Makes a shell.
     *
     * @param session runs the cells; left open
     * @param out where results go
     * @param prompts whether somebody types at a terminal that knows no commands, and is to be prompted
     */
    public PipedShell(Session session, PrintWriter out, boolean prompts) {
        this.session = session;
        this.out = out;
        this.prompts = prompts;
        screen = new Screen(out, Screen.Place.FILE, chart -> new ChartBlock(chart).toText(COLUMNS) + "\n");
    }

    /** Runs all cells, also those after one that failed; returns whether none failed. */
    public boolean run(Reader cells) {
        Output output = new ShellOutput(screen, (prompt, secret) -> Optional.empty());
        StringBuilder cell = new StringBuilder();
        try (BufferedReader lines = new BufferedReader(cells)) {
            prompt(cell);
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                cell.append(line).append('\n');
                if (session.completeness(cell.toString()).state() != Completeness.State.INCOMPLETE) {
                    run(cell, output);
                }
                prompt(cell);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        run(cell, output);
        return !failed;
    }

    private void prompt(StringBuilder cell) {
        if (prompts) {
            String prompt = Shell.prompt(session);
            out.print(cell.length() == 0 ? prompt : prompt.replaceAll("\\d", ">"));
            out.flush();
        }
    }

    private void run(StringBuilder cell, Output output) {
        String code = cell.toString();
        cell.setLength(0);
        if (code.isBlank()) {
            return;
        }
        Outcome outcome = session.run(code, true, output);
        if (outcome instanceof Outcome.Value value) {
            screen.shown(value.bundle());
        } else if (outcome instanceof Outcome.Failed fault) {
            failed = true;
            screen.failed(fault.fault());
        }
        screen.freshLine();
    }
}
