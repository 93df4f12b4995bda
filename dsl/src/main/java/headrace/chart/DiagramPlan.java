package headrace.chart;

import headrace.chart.Layout.Role;
import headrace.chart.mark.Diagram;
import headrace.chart.mark.Diagram.Rung;
import headrace.chart.mark.Diagram.Side;
import headrace.chart.mark.Diagram.Upright;
import headrace.chart.mark.Ink;
import headrace.chart.paint.Box;
import headrace.chart.paint.Lettering;
import headrace.chart.paint.Pen;
import headrace.chart.paint.Surface;
import headrace.chart.paint.Typeface;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;

/**
 * A line diagram. Each row is as high as its own lettering needs, and the notes of the uprights stand outside of them,
 * so that no lettering meets another at any width.
 */
final class DiagramPlan {
    private static final double MOST_FOR_NOTES = 0.2;
    private static final double MOST_FOR_COLUMNS = 0.25;

    private final Style style;
    private final Plan.Page page;
    private final Diagram diagram;
    private final double left;
    private final double right;
    private final double step;
    private final List<List<String>> leftNotes = new ArrayList<>();
    private final List<List<String>> rightNotes = new ArrayList<>();
    private final double[] lines;

    DiagramPlan(Plan.Page page, Diagram diagram) {
        this.page = page;
        this.style = page.style();
        this.diagram = diagram;
        for (int row = 0; row < diagram.rungs().size(); row++) {
            leftNotes.add(note(Side.LEFT, row));
            rightNotes.add(note(Side.RIGHT, row));
        }
        left = style.margin() + gutter(leftNotes);
        right = style.width() - style.margin() - gutter(rightNotes);
        int columns = Math.max(diagram.columns(Side.LEFT), diagram.columns(Side.RIGHT));
        step = Math.min(2.2 * style.text(), MOST_FOR_COLUMNS * (right - left) / Math.max(1, columns));
        lines = new double[diagram.rungs().size()];
    }

    /** Adds everything to the page and returns where it ends. */
    double add(double top) {
        double y = top + 0.6 * style.text();
        for (int row = 0; row < lines.length; row++) {
            y = row(row, y);
        }
        Box frame = new Box(left, top, right - left, y - top);
        page.frame(frame);
        for (Upright upright : diagram.uprights()) {
            page.paint(surface -> upright(surface, upright));
        }
        for (int row = 0; row < lines.length; row++) {
            int at = row;
            page.paint(surface -> rung(surface, at));
        }
        return y;
    }

    /** Sets the lettering of a row and returns where it ends. */
    private double row(int row, double top) {
        Rung rung = diagram.rungs().get(row);
        double from = x(Side.LEFT, innermost(Side.LEFT, row, rung.left())) + style.text();
        from = Math.max(from, begin(rung) + style.text());
        double to = rung.right() < 0 ? end(rung) : x(Side.RIGHT, innermost(Side.RIGHT, row, rung.right()));
        double room = to - style.text() - from;
        List<String> title = Style.wrapped(rung.title(), Typeface.SEMIBOLD, style.text(), room);
        List<String> detail = rung.detail().isBlank()
                ? List.of()
                : Style.wrapped(rung.detail(), Typeface.REGULAR, style.text(), room);
        double notes = Math.max(leftNotes.get(row).size(), rightNotes.get(row).size()) * style.line() / 2;
        double above = Math.max(title.size() * style.line() + half(), notes);
        double line = top + above;
        lines[row] = line;
        int rgb = rung.ink() == Ink.BLACK ? Style.TEXT : rung.ink().letteringRgb();
        double y = line - half() - (title.size() - 1) * style.line() - 0.35 * style.text();
        for (String text : title) {
            page.text(Role.LABEL, new Lettering(text, Typeface.SEMIBOLD, style.text(), rgb, from, y));
            y += style.line();
        }
        y = line + half() + (Typeface.ASCENT + 0.2) * style.text();
        for (String text : detail) {
            page.text(Role.LABEL, style.lettering(text, rgb == Style.TEXT ? Style.QUIET_TEXT : rgb, from, y));
            y += style.line();
        }
        notes(leftNotes.get(row), Side.LEFT, line);
        notes(rightNotes.get(row), Side.RIGHT, line);
        double below = Math.max(half() + (0.1 * style.text()) + detail.size() * style.line(), notes);
        return line + below + 0.7 * style.text();
    }

    /** Returns the innermost column of what passes a row, so that its lettering stands clear of that. */
    private int innermost(Side side, int row, int column) {
        int most = column;
        for (Upright upright : diagram.uprights()) {
            boolean passes = Math.min(upright.fromRow(), upright.toRow()) <= row
                    && row <= Math.max(upright.fromRow(), upright.toRow());
            if (upright.side() == side && passes) {
                most = Math.max(most, upright.column());
            }
        }
        return most;
    }

    private void notes(List<String> notes, Side side, double line) {
        double y = line - notes.size() * style.line() / 2 + Typeface.ASCENT * style.text();
        for (String text : notes) {
            double x = side == Side.LEFT ? left - style.gap() - style.textWidth(text) : right + style.gap();
            page.text(Role.LABEL, style.lettering(text, Style.QUIET_TEXT, x, y));
            y += style.line();
        }
    }

    private List<String> note(Side side, int row) {
        double room = MOST_FOR_NOTES * style.width();
        List<String> all = new ArrayList<>();
        for (Upright upright : diagram.uprights()) {
            if (upright.side() == side && upright.toRow() == row) {
                for (String line : upright.note()) {
                    all.addAll(Style.wrapped(line, Typeface.REGULAR, style.text(), room));
                }
            }
        }
        return all;
    }

    private double gutter(List<List<String>> notes) {
        double widest = notes.stream()
                .flatMap(List::stream)
                .mapToDouble(style::textWidth)
                .max()
                .orElse(0);
        return widest + 1.5 * style.gap() + half();
    }

    private double half() {
        return 0.72 * style.text();
    }

    private double x(Side side, int column) {
        return side == Side.LEFT ? left + half() + column * step : right - half() - column * step;
    }

    /** Returns where a rung begins; one that begins in the open stands clear of all uprights. */
    private double begin(Rung rung) {
        return rung.left() < 0 ? x(Side.LEFT, diagram.columns(Side.LEFT) + 1) : x(Side.LEFT, rung.left());
    }

    private double end(Rung rung) {
        return rung.right() < 0 ? x(Side.RIGHT, diagram.columns(Side.RIGHT) + 1) : x(Side.RIGHT, rung.right());
    }

    private Pen pen(Ink ink) {
        return Pen.solid(ink.rgb(), style.lineWidth());
    }

    private void upright(Surface surface, Upright upright) {
        double x = x(upright.side(), upright.column());
        double from = x(upright.side(), upright.fromColumn());
        Path2D.Double path = new Path2D.Double();
        path.moveTo(from, lines[upright.fromRow()]);
        path.lineTo(x, lines[upright.fromRow()]);
        path.lineTo(x, lines[upright.toRow()]);
        surface.stroke(path, pen(Ink.BLACK));
        dot(surface, from, lines[upright.fromRow()]);
        dot(surface, x, lines[upright.toRow()]);
    }

    private void dot(Surface surface, double x, double y) {
        double r = 0.18 * style.text();
        surface.fill(new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r), Ink.BLACK.rgb(), 1);
    }

    private void rung(Surface surface, int row) {
        Rung rung = diagram.rungs().get(row);
        double y = lines[row];
        double from = begin(rung);
        double to = end(rung);
        surface.stroke(Signs.line(from, y, to, y), pen(rung.ink()));
        if (rung.left() >= 0) {
            dot(surface, from, y);
        }
        if (rung.right() >= 0) {
            dot(surface, to, y);
        }
        double arrow = rung.forward() ? to - 0.6 * style.text() : from + 0.6 * style.text();
        head(surface, arrow, y, rung);
        double wide = Signs.width(half());
        double room = Math.max(wide, (to - from) / (rung.signs().size() + 1));
        for (int i = 0; i < rung.signs().size(); i++) {
            double x = from + (i + 1) * room;
            new Signs(half(), pen(rung.ink()), x, y).draw(surface, rung.signs().get(i), rung.forward());
        }
    }

    private void head(Surface surface, double tip, double y, Rung rung) {
        double back = (rung.forward() ? -0.6 : 0.6) * style.text();
        Path2D.Double path = new Path2D.Double();
        path.moveTo(tip, y);
        path.lineTo(tip + back, y - 0.28 * style.text());
        path.lineTo(tip + back, y + 0.28 * style.text());
        path.closePath();
        surface.fill(path, rung.ink().rgb(), 1);
    }
}
