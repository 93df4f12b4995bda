package headrace.kernel.headless;

import static headrace.kernel.display.TerminalText.printable;
import static headrace.kernel.display.TerminalText.withoutColours;

import headrace.kernel.display.HowFar;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.display.TerminalLines;
import headrace.kernel.display.TerminalLines.Tone;
import headrace.kernel.session.Fault;
import java.io.PrintStream;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import java.util.function.LongSupplier;

/** Tells a terminal, or a file in its place, what a run does, cell by cell while it runs. */
public final class TerminalView {
    private final TerminalLines lines;
    private final boolean terminal;
    private final int columns;
    private final ProgressLog log;

    /**
     * Makes a view.
     *
     * @param out where the text goes
     * @param terminal whether that place is a terminal, with colours and lines that can be drawn anew
     * @param columns how wide that terminal is
     */
    public TerminalView(PrintStream out, boolean terminal, int columns) {
        this(out, terminal, columns, System::nanoTime);
    }

    TerminalView(PrintStream out, boolean terminal, int columns, LongSupplier clock) {
        lines = TerminalLines.on(out, terminal);
        this.terminal = terminal;
        this.columns = columns;
        log = new ProgressLog(clock);
    }

    /** Says one sentence of the run itself. */
    public void say(String sentence) {
        lines.line(printable(sentence), Tone.PLAIN);
    }

    /** Begins a line of its own, for what others write to the same place. */
    public void freshLine() {
        lines.freshLine();
    }

    void heading(String text) {
        lines.line("", Tone.PLAIN);
        lines.line(printable(text), Tone.HEADING);
    }

    /** Announces a cell by its number and its first line that is no comment. */
    void cell(int number, String code) {
        Optional<String> first =
                code.lines().map(String::strip).filter(TerminalView::says).findFirst();
        boolean more =
                code.lines().map(String::strip).filter(TerminalView::says).count() > 1;
        lines.line("", Tone.PLAIN);
        lines.line(number + "  " + printable(first.orElse("")) + (more ? " …" : ""), Tone.CODE);
    }

    private static boolean says(String line) {
        return !line.isEmpty() && !line.startsWith("//");
    }

    void printed(String text, boolean error) {
        lines.print(printable(withoutColours(text)), error ? Tone.ERROR : Tone.PLAIN);
    }

    void shown(MimeBundle bundle) {
        lines.line(printable(bundle.text()), Tone.PLAIN);
    }

    /** Draws something that will soon be drawn anew, where that is possible. */
    void passing(MimeBundle bundle) {
        lines.passing(printable(bundle.text()), columns);
    }

    /** Says how far a calculation has come: on a terminal in a line drawn anew, else in a line now and then. */
    public void progress(HowFar far) {
        if (terminal) {
            lines.passing(printable(far.line(TerminalLines.roomIn(columns))), columns);
        } else {
            log.line(far).ifPresent(line -> lines.line(printable(line), Tone.PLAIN));
        }
    }

    /** Takes away what was drawn of how far a calculation has come. */
    public void progressEnded() {
        lines.freshLine();
        log.ended();
    }

    /** Says how long a cell took. */
    void took(Duration time) {
        lines.line(String.format(Locale.ROOT, "   took %.2f s", time.toMillis() / 1000.0), Tone.CODE);
    }

    void failed(Fault fault) {
        fault.lines().forEach(each -> lines.line(printable(withoutColours(each)), Tone.ERROR));
    }
}
