package headrace.kernel.terminal;

import headrace.chart.Chart;
import headrace.kernel.display.MimeBundle;
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
    private static final String ERASE_LINE = "\r\u001b[K";
    private static final String ERROR = "\u001b[31m";
    private static final String PLAIN = "\u001b[0m";
    private static final int UNKNOWN_COLUMNS = 100;

    private final PrintWriter out;
    private final boolean commands;
    private final Function<Chart, String> drawing;
    private int columns = UNKNOWN_COLUMNS;
    private boolean midLine;
    private boolean passing;

    /**
     * Makes a screen.
     *
     * @param out where the text goes
     * @param commands whether that is a terminal that understands commands
     * @param drawing what draws a chart there, with a line break at its end
     */
    Screen(PrintWriter out, boolean commands, Function<Chart, String> drawing) {
        this.out = out;
        this.commands = commands;
        this.drawing = drawing;
    }

    /** Tells how wide lines may be from now on. */
    synchronized void fit(int width) {
        columns = width;
    }

    synchronized void printed(String text, boolean error) {
        String safe = printable(text);
        erasePassing();
        out.print(error ? toned(safe) : safe);
        out.flush();
        midLine = safe.isEmpty() ? midLine : !safe.endsWith("\n");
    }

    synchronized void shown(MimeBundle bundle) {
        freshLine();
        if (bundle.shown().isEmpty()) {
            out.println(printable(bundle.text()));
        }
        boolean first = true;
        for (Shown each : bundle.shown()) {
            if (!first) {
                out.println();
            }
            first = false;
            shown(each);
        }
        out.flush();
    }

    private void shown(Shown shown) {
        out.println(printable(shown.headingText(columns)));
        for (Block block : shown.blocks()) {
            String text = block instanceof ChartBlock chart
                    ? drawing.apply(chart.chart())
                    : printable(block.toText(columns)) + "\n";
            if (!text.isBlank()) {
                out.println();
                out.print(text);
            }
        }
    }

    /** Draws in one line what will soon be drawn anew, such as how far a calculation is; nothing if that is empty. */
    synchronized void passing(MimeBundle bundle) {
        if (!commands) {
            return;
        }
        freshLine();
        String line = printable(bundle.text()).lines().findFirst().orElse("");
        out.print(line.substring(0, Math.min(columns - 1, line.length())));
        out.flush();
        passing = !line.isEmpty();
    }

    synchronized void failed(Fault fault) {
        freshLine();
        fault.lines().stream().map(Screen::printable).flatMap(this::broken).forEach(line -> out.println(toned(line)));
        out.flush();
    }

    /** Begins a line of its own, so that what is typed next does not stand behind what was printed. */
    synchronized void freshLine() {
        erasePassing();
        if (midLine) {
            out.println();
            midLine = false;
        }
        out.flush();
    }

    private void erasePassing() {
        if (passing) {
            out.print(ERASE_LINE);
            passing = false;
        }
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

    private String toned(String text) {
        return commands && !text.isEmpty() ? ERROR + text + PLAIN : text;
    }

    private static String printable(String text) {
        return text.replaceAll("\u001b\\[[0-9;?]*[A-Za-z]", "").replaceAll("[\\p{Cntrl}&&[^\n\t\r]]", "\uFFFD");
    }
}
