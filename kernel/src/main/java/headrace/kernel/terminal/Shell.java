package headrace.kernel.terminal;

import headrace.kernel.session.Outcome;
import headrace.kernel.session.Output;
import headrace.kernel.session.Session;
import headrace.script.Vocabulary;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jline.keymap.KeyMap;
import org.jline.reader.EndOfFileException;
import org.jline.reader.LineReader;
import org.jline.reader.LineReaderBuilder;
import org.jline.reader.Reference;
import org.jline.reader.UserInterruptException;
import org.jline.terminal.Terminal;
import org.jline.terminal.Terminal.Signal;
import org.jline.terminal.Terminal.SignalHandler;

/**
 * The shell in a terminal: a cell is typed over one or several lines, runs, and shows its value beneath.
 *
 * <p>Tab completes, Alt-H explains the word at the cursor, Ctrl-C stops a running cell or takes back what is typed,
 * Ctrl-D ends the shell.
 */
public final class Shell {
    private static final int MOST_REMEMBERED = 10_000;
    private static final int LEAST_COLUMNS = 40;

    private final Session session;
    private final Terminal terminal;
    private final Screen screen;
    private final LineReader reader;
    private final LineReader asking;

    /**
     * Makes a shell.
     *
     * @param session runs the cells; left open
     * @param terminal where the user is; left open
     * @param choices how it shows and remembers
     */
    public Shell(Session session, Terminal terminal, Choices choices) {
        this.session = session;
        this.terminal = terminal;
        screen = new Screen(
                terminal.writer(),
                choices.coloured() ? Screen.Place.COLOURED_TERMINAL : Screen.Place.TERMINAL,
                new ChartView(terminal, choices.charts(), choices.coloured())::drawn);
        CellEditing editing = new CellEditing(session);
        reader = LineReaderBuilder.builder()
                .terminal(terminal)
                .appName("Headrace")
                .parser(editing)
                .completer(editing)
                .highlighter(new CellColours(words(), choices.coloured()))
                .variable(LineReader.HISTORY_FILE, choices.history().orElse(null))
                .variable(LineReader.HISTORY_SIZE, MOST_REMEMBERED)
                .variable(LineReader.HISTORY_FILE_SIZE, MOST_REMEMBERED)
                .variable(LineReader.SECONDARY_PROMPT_PATTERN, "%P> ")
                .variable(LineReader.INDENTATION, 4)
                .option(LineReader.Option.DISABLE_EVENT_EXPANSION, true)
                .option(LineReader.Option.INSERT_TAB, false)
                .option(LineReader.Option.AUTO_MENU_LIST, true)
                .build();
        reader.getWidgets().put("explain", this::explain);
        reader.getKeyMaps().get(LineReader.MAIN).bind(new Reference("explain"), KeyMap.alt('h'));
        asking = LineReaderBuilder.builder()
                .terminal(terminal)
                .option(LineReader.Option.DISABLE_EVENT_EXPANSION, true)
                .build();
    }

    /**
     * How a shell shows and remembers.
     *
     * @param charts how it draws charts
     * @param history the file in which it remembers the cells for later sessions, if it is to
     * @param coloured whether there are colours
     */
    public record Choices(Charts charts, Optional<Path> history, boolean coloured) {}

    private static Set<String> words() {
        return Vocabulary.all().words().stream().map(Vocabulary.Entry::name).collect(Collectors.toSet());
    }

    /** Greets, and reads and runs cells until the user ends it. */
    public void run(String greeting) {
        Output output = new ShellOutput(screen, this::ask);
        fit();
        output.print(greeting + "\n");
        for (Optional<String> cell = read(); cell.isPresent(); cell = read()) {
            if (!cell.get().isBlank()) {
                run(cell.get(), output);
            }
        }
    }

    static String prompt(Session session) {
        return session.count() + 1 + "> ";
    }

    /** Reads a cell; nothing at the end. */
    private Optional<String> read() {
        while (true) {
            try {
                return Optional.of(reader.readLine(prompt(session)));
            } catch (UserInterruptException takenBack) {
                continue;
            } catch (EndOfFileException end) {
                return Optional.empty();
            }
        }
    }

    private void run(String cell, Output output) {
        fit();
        SignalHandler before = terminal.handle(Signal.INT, signal -> session.interrupt());
        try {
            Outcome outcome = session.run(cell, true, output);
            if (outcome instanceof Outcome.Value value) {
                screen.shown(value.bundle());
            } else if (outcome instanceof Outcome.Failed failed) {
                screen.failed(failed.fault());
            }
            screen.freshLine();
        } finally {
            terminal.handle(Signal.INT, before);
        }
    }

    private void fit() {
        screen.fit(Math.max(LEAST_COLUMNS, terminal.getSize().getColumns()));
    }

    private Optional<String> ask(String prompt, boolean secret) {
        try {
            return Optional.of(secret ? asking.readLine(prompt, '*') : asking.readLine(prompt));
        } catch (UserInterruptException stop) {
            session.interrupt();
            return Optional.empty();
        } catch (EndOfFileException none) {
            return Optional.empty();
        }
    }

    private boolean explain() {
        String text = reader.getBuffer().toString();
        session.inspect(text, reader.getBuffer().cursor(), 0).ifPresent(bundle -> reader.printAbove(bundle.text()));
        return true;
    }
}
