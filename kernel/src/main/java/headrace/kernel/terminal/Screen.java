package headrace.kernel.terminal;

import headrace.chart.Chart;
import headrace.kernel.display.HowFar;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.display.TerminalLines;
import headrace.kernel.display.TerminalLines.Tone;
import headrace.kernel.display.TerminalText;
import headrace.kernel.session.Fault;
import headrace.report.Block;
import headrace.report.Block.ChartBlock;
import headrace.report.Shown;
import java.io.PrintWriter;
import java.util.function.Function;

/**
 * Writes what cells print and show. Text from elsewhere never commands the terminal, and where there is no terminal
 * nothing does.
 */
final class Screen {
    private static final int UNKNOWN_COLUMNS = 100;

    private final TerminalLines lines;
    private final Function<Chart, String> drawing;
    private final Place place;
    private int columns = UNKNOWN_COLUMNS;
    private int column;

    /** Where text goes. */
    enum Place {
        /** A file, or another program. */
        FILE,
        /** A terminal of which no colours are wanted. */
        TERMINAL,
        /** A terminal with colours. */
        COLOURED_TERMINAL
    }

    /**
     * Makes a screen.
     *
     * @param out where the text goes
     * @param place what kind of place that is
     * @param drawing what draws a chart there, with a line break at its end
     */
    Screen(PrintWriter out, Place place, Function<Chart, String> drawing) {
        lines = TerminalLines.on(out, place != Place.FILE);
        this.place = place;
        this.drawing = drawing;
    }

    /** Tells how wide lines may be from now on. */
    synchronized void fit(int width) {
        columns = width;
    }

    synchronized void printed(String text, boolean error) {
        String shown = fitted(safe(text), column);
        lines.print(shown, error ? wrong() : Tone.PLAIN);
        int end = shown.lastIndexOf('\n');
        column = end < 0 ? column + shown.length() : shown.length() - end - 1;
    }

    synchronized void shown(MimeBundle bundle) {
        freshLine();
        if (bundle.shown().isEmpty()) {
            lines.line(fitted(safe(bundle.text()), 0), Tone.PLAIN);
        }
        boolean first = true;
        for (Shown each : bundle.shown()) {
            if (!first) {
                lines.line("", Tone.PLAIN);
            }
            first = false;
            shown(each);
        }
    }

    private void shown(Shown shown) {
        boolean begun = !shown.isTitledByItsTable();
        if (begun) {
            lines.line(safe(shown.headingText(columns)), Tone.PLAIN);
        }
        for (Block block : shown.blocks()) {
            String text = block instanceof ChartBlock chart
                    ? drawing.apply(chart.chart())
                    : safe(block.toText(columns)) + "\n";
            if (!text.isBlank()) {
                if (begun) {
                    lines.line("", Tone.PLAIN);
                }
                lines.print(text, Tone.PLAIN);
                begun = true;
            }
        }
    }

    /** Draws in one line what will soon be drawn anew; nothing if that is empty. */
    synchronized void passing(MimeBundle bundle) {
        lines.passing(safe(bundle.text()), columns);
    }

    /**
     * Draws in one line how far a calculation is, until something else is written; nothing where there is no terminal.
     */
    synchronized void progress(HowFar far) {
        lines.passing(safe(far.line(TerminalLines.roomIn(columns))), columns);
    }

    synchronized void failed(Fault fault) {
        freshLine();
        fault.lines().forEach(line -> lines.line(told(safe(line)), wrong()));
    }

    private Tone wrong() {
        return place == Place.TERMINAL ? Tone.PLAIN : Tone.ERROR;
    }

    /** What is indented is code, and stays as it is. */
    private String told(String line) {
        return line.startsWith(" ") ? line : fitted(line, 0);
    }

    /** Begins a line of its own, so that what is typed next does not stand behind what was printed. */
    synchronized void freshLine() {
        lines.freshLine();
        column = 0;
    }

    private String fitted(String text, int at) {
        return place != Place.FILE ? Fitted.of(text, columns, at) : text;
    }

    private static String safe(String text) {
        return TerminalText.printable(TerminalText.withoutColours(text));
    }
}
