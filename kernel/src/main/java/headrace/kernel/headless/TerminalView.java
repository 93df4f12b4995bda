package headrace.kernel.headless;

import headrace.kernel.display.MimeBundle;
import headrace.kernel.headless.page.TerminalColours;
import headrace.kernel.session.Fault;
import java.io.PrintStream;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;

/** Tells a terminal, or a file in its place, what a run does, cell by cell while it runs. */
public final class TerminalView {
    private static final String ERASE_LINE = "\r\u001b[K";

    private static final int NARROWEST = 79;

    private static final String PLAIN = "\u001b[0m";

    private final PrintStream out;
    private final boolean coloured;
    private boolean midLine;
    private boolean passing;

    /** Kinds of text, with their colour command. */
    private enum Tone {
        HEADING("\u001b[1m"),
        CODE("\u001b[2m"),
        ERROR("\u001b[31m");

        private final String command;

        Tone(String command) {
            this.command = command;
        }
    }

    /**
     * Makes a view.
     *
     * @param out where the text goes
     * @param coloured whether that place is a terminal, with colours and lines that can be drawn anew
     */
    public TerminalView(PrintStream out, boolean coloured) {
        this.out = out;
        this.coloured = coloured;
    }

    /** Says one sentence of the run itself. */
    public void say(String sentence) {
        line(printable(sentence));
    }

    void heading(String text) {
        line("");
        line(toned(Tone.HEADING, printable(text)));
    }

    /** Announces a cell by its number and its first line that is no comment. */
    void cell(int number, String code) {
        Optional<String> first =
                code.lines().map(String::strip).filter(TerminalView::says).findFirst();
        boolean more =
                code.lines().map(String::strip).filter(TerminalView::says).count() > 1;
        line("");
        line(toned(Tone.CODE, number + "  " + printable(first.orElse("")) + (more ? " …" : "")));
    }

    private static boolean says(String line) {
        return !line.isEmpty() && !line.startsWith("//");
    }

    void printed(String text, boolean error) {
        String shown = printable(TerminalColours.without(text));
        erasePassing();
        out.print(error ? toned(Tone.ERROR, shown) : shown);
        out.flush();
        midLine = shown.isEmpty() ? midLine : !shown.endsWith("\n");
    }

    void shown(MimeBundle bundle) {
        line(printable(bundle.text()));
    }

    /** Draws something that will soon be drawn anew, such as how far a calculation has come, where that is possible. */
    void passing(MimeBundle bundle) {
        Optional<String> line = bundle.text().lines().findFirst();
        if (!coloured) {
            return;
        }
        erasePassing();
        if (midLine) {
            out.println();
            midLine = false;
        }
        String text = printable(line.orElse(""));
        out.print(text.substring(0, Math.min(NARROWEST, text.length())));
        out.flush();
        passing = !text.isEmpty();
    }

    private void erasePassing() {
        if (passing) {
            out.print(ERASE_LINE);
            passing = false;
        }
    }

    /** Says how long a cell took. */
    void took(Duration time) {
        line(toned(Tone.CODE, String.format(Locale.ROOT, "   took %.2f s", time.toMillis() / 1000.0)));
    }

    void failed(Fault fault) {
        fault.lines().forEach(each -> line(toned(Tone.ERROR, printable(TerminalColours.without(each)))));
    }

    private void line(String text) {
        erasePassing();
        if (midLine) {
            out.println();
            midLine = false;
        }
        out.println(text);
    }

    private String toned(Tone tone, String text) {
        return coloured && !text.isEmpty() ? tone.command + text + PLAIN : text;
    }

    /** Text from a file must not command the terminal. */
    private static String printable(String text) {
        return text.replaceAll("[\\p{Cntrl}&&[^\n\t\r]]", "\uFFFD");
    }
}
