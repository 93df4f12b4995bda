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
import java.util.stream.Stream;

/**
 * Writes what cells print and show. Text from elsewhere never commands the terminal, and where there is no terminal
 * nothing does.
 */
final class Screen {
    private static final int UNKNOWN_COLUMNS = 100;

    private final TerminalLines lines;
    private final Function<Chart, String> drawing;
    private int columns = UNKNOWN_COLUMNS;

    /**
     * Makes a screen.
     *
     * @param out where the text goes
     * @param commands whether that is a terminal that understands commands
     * @param drawing what draws a chart there, with a line break at its end
     */
    Screen(PrintWriter out, boolean commands, Function<Chart, String> drawing) {
        lines = TerminalLines.on(out, commands);
        this.drawing = drawing;
    }

    /** Tells how wide lines may be from now on. */
    synchronized void fit(int width) {
        columns = width;
    }

    synchronized void printed(String text, boolean error) {
        lines.print(safe(text), error ? Tone.ERROR : Tone.PLAIN);
    }

    synchronized void shown(MimeBundle bundle) {
        lines.freshLine();
        if (bundle.shown().isEmpty()) {
            lines.line(safe(bundle.text()), Tone.PLAIN);
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
        boolean first = shown.isTableAlone();
        if (!first) {
            lines.line(safe(shown.headingText(columns)), Tone.PLAIN);
        }
        for (Block block : shown.blocks()) {
            String text = block instanceof ChartBlock chart
                    ? drawing.apply(chart.chart())
                    : safe(block.toText(columns)) + "\n";
            if (!text.isBlank()) {
                if (!first) {
                    lines.line("", Tone.PLAIN);
                }
                first = false;
                lines.print(text, Tone.PLAIN);
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
        fault.lines().stream().map(Screen::safe).flatMap(this::broken).forEach(line -> lines.line(line, Tone.ERROR));
    }

    /** Begins a line of its own, so that what is typed next does not stand behind what was printed. */
    synchronized void freshLine() {
        lines.freshLine();
    }

    /** Breaks a sentence at blanks into lines that fit; what is indented is code, and stays as it is. */
    private Stream<String> broken(String line) {
        if (line.startsWith(" ") || line.length() <= columns) {
            return Stream.of(line);
        }
        int blank = line.lastIndexOf(' ', columns);
        int end = blank > 0 ? blank : columns;
        return Stream.concat(
                Stream.of(line.substring(0, end)), broken(line.substring(end).stripLeading()));
    }

    private static String safe(String text) {
        return TerminalText.printable(TerminalText.withoutColours(text));
    }
}
