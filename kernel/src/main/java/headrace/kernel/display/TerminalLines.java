package headrace.kernel.display;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.util.function.Consumer;

/**
 * The lines of a terminal, or of a file in its place: text as it is printed, whole lines, and one line that is drawn
 * anew, such as how far a calculation has come. Commands go out only where there is a terminal.
 *
 * <p>Texts are taken as they are: make them {@linkplain TerminalText#printable printable} first.
 */
public final class TerminalLines {
    private static final String ERASE_LINE = "\r\u001b[K";
    private static final String AS_BEFORE = "\u001b[0m";

    /**
     * So many characters of a line that is drawn anew stay free: a terminal writes {@code ^C} there when it is stopped.
     */
    private static final int FREE = 3;

    /** A line that is to be erased must not run on into the next one, however narrow the terminal is. */
    private static final String CUT_AT_MARGIN = "\u001b[?7l";

    private static final String WRAP_AT_MARGIN = "\u001b[?7h";

    private final Consumer<String> out;
    private final Runnable flush;
    private final boolean commands;
    private boolean midLine;
    private boolean passing;

    /** Kinds of text, each with its colour. */
    public enum Tone {
        /** As the terminal writes. */
        PLAIN(""),
        /** A heading. */
        HEADING("\u001b[1m"),
        /** Code, and remarks about it. */
        CODE("\u001b[2m"),
        /** What went wrong. */
        ERROR("\u001b[31m");

        private final String command;

        Tone(String command) {
            this.command = command;
        }
    }

    private TerminalLines(Consumer<String> out, Runnable flush, boolean commands) {
        this.out = out;
        this.flush = flush;
        this.commands = commands;
    }

    /**
     * Returns the lines of a stream.
     *
     * @param commands whether it is a terminal that understands commands
     */
    public static TerminalLines on(PrintStream stream, boolean commands) {
        return new TerminalLines(stream::print, stream::flush, commands);
    }

    /**
     * Returns the lines of a writer.
     *
     * @param commands whether it is a terminal that understands commands
     */
    public static TerminalLines on(PrintWriter writer, boolean commands) {
        return new TerminalLines(writer::print, writer::flush, commands);
    }

    /** Prints a piece of text, which may end in the middle of a line. */
    public void print(String text, Tone tone) {
        erasePassing();
        out.accept(toned(text, tone));
        flush.run();
        midLine = text.isEmpty() ? midLine : !text.endsWith("\n");
    }

    /** Prints a line of its own. */
    public void line(String text, Tone tone) {
        freshLine();
        out.accept(toned(text, tone) + System.lineSeparator());
        flush.run();
    }

    /**
     * Draws in one line what will soon be drawn anew; nothing where that is not possible, or if the text is empty.
     *
     * @param text its first line counts
     * @param columns so wide is the terminal
     */
    public void passing(String text, int columns) {
        if (!commands) {
            return;
        }
        freshLine();
        String line = text.lines().findFirst().orElse("");
        if (!line.isEmpty()) {
            out.accept(CUT_AT_MARGIN + line.substring(0, Math.min(roomIn(columns), line.length())) + WRAP_AT_MARGIN);
        }
        flush.run();
        passing = !line.isEmpty();
    }

    /** Returns how many characters of a line that is drawn anew a terminal of so many columns has room for. */
    public static int roomIn(int columns) {
        return Math.max(1, columns - FREE);
    }

    /** Begins a line of its own, so that what comes next does not stand behind what was printed. */
    public void freshLine() {
        erasePassing();
        if (midLine) {
            out.accept(System.lineSeparator());
            midLine = false;
        }
        flush.run();
    }

    private void erasePassing() {
        if (passing) {
            out.accept(ERASE_LINE);
            passing = false;
        }
    }

    private String toned(String text, Tone tone) {
        return commands && tone != Tone.PLAIN && !text.isEmpty() ? tone.command + text + AS_BEFORE : text;
    }
}
