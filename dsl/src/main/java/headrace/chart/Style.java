package headrace.chart;

import headrace.chart.mark.Dash;
import headrace.chart.mark.Ink;
import headrace.chart.paint.Lettering;
import headrace.chart.paint.Pen;
import headrace.chart.paint.Typeface;
import java.util.ArrayList;
import java.util.List;

/**
 * Sizes and weights of the house style at one width of page. Everything grows slowly with the width, so that a chart is
 * read as well in a column as over a whole page.
 *
 * @param width of the page in pixels
 */
record Style(int width) {
    static final int TEXT = 0x1F2328;
    static final int QUIET_TEXT = 0x4B535D;
    static final int GRID = 0xE4E7EB;
    static final int BASE_LINE = 0x7A828C;

    /** Returns the size of ordinary lettering: 11 px at 400, 13 px at 800, 15 px at 1600. */
    double text() {
        return 11 + 2 * Math.log(width / 400.0) / Math.log(2);
    }

    double title() {
        return 1.25 * text();
    }

    double tick() {
        return 0.95 * text();
    }

    /** Returns the step from one line of text to the next. */
    double line() {
        return 1.32 * text();
    }

    /** Returns the height of a single panel; a wide page would otherwise be taller than a screen. */
    double frameHeight() {
        return width * (0.6 - 0.05 * Math.log(width / 400.0) / Math.log(2));
    }

    /** Returns the least step between the numbers of an axis: 32 px on a narrow page, 64 px on the widest. */
    double tickSpacing() {
        return 1.6 * Math.sqrt(width);
    }

    double margin() {
        return 0.9 * text();
    }

    double gap() {
        return 0.4 * text();
    }

    /** Returns the gap between an axis and its numbers: a symbol on the axis must not touch them. */
    double tickGap() {
        return 0.62 * text();
    }

    double lineWidth() {
        return 0.14 * text();
    }

    double symbolRadius() {
        return 0.32 * text();
    }

    double hatchSpacing() {
        return 0.75 * text();
    }

    Pen grid() {
        return Pen.solid(GRID, 0.08 * text());
    }

    Pen baseLine() {
        return Pen.solid(BASE_LINE, 0.09 * text());
    }

    Pen pen(Ink ink, Dash dash, double weight) {
        double w = weight * lineWidth();
        List<Double> dashes = switch (dash) {
            case SOLID -> List.of();
            case DASHED -> List.of(5.0, 3.2);
            case DOTTED -> List.of(1.3, 2.2);
            case DASH_DOT -> List.of(7.0, 2.4, 1.6, 2.4);
        };
        return new Pen(ink.rgb(), w, dashes.stream().map(d -> d * w).toList());
    }

    Lettering lettering(String text, int rgb, double x, double y) {
        return new Lettering(text, Typeface.REGULAR, text(), rgb, x, y);
    }

    /** Returns a number at an axis. */
    Lettering tick(String number, double x, double y) {
        return new Lettering(number, Typeface.REGULAR, tick(), QUIET_TEXT, x, y);
    }

    double tickWidth(String number) {
        return Typeface.REGULAR.width(number, tick());
    }

    /** Returns the width of the widest number at an axis. */
    double widest(Ticks ticks) {
        return ticks.labels().stream().mapToDouble(this::tickWidth).max().orElse(0);
    }

    double textWidth(String text) {
        return Typeface.REGULAR.width(text, text());
    }

    /** Breaks a text into lines that fit; a word too long for a line is broken where it must be. */
    static List<String> wrapped(String text, Typeface face, double size, double room) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : text.strip().split("\\s+")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (face.width(longer, size) <= room) {
                line = longer;
                continue;
            }
            if (!line.isEmpty()) {
                lines.add(line);
            }
            line = word;
            while (face.width(line, size) > room && line.codePointCount(0, line.length()) > 1) {
                int end = line.offsetByCodePoints(0, 1);
                while (face.width(line.substring(0, line.offsetByCodePoints(end, 1)), size) <= room) {
                    end = line.offsetByCodePoints(end, 1);
                }
                lines.add(line.substring(0, end));
                line = line.substring(end);
            }
        }
        lines.add(line);
        return lines;
    }
}
