package headrace.chart;

import headrace.chart.mark.Area;
import headrace.chart.mark.ContourLines;
import headrace.chart.mark.Dash;
import headrace.chart.mark.Line;
import headrace.chart.mark.Points;
import headrace.chart.mark.Reference;
import headrace.chart.mark.Symbol;
import headrace.chart.paint.Box;
import headrace.chart.paint.Hatching;
import headrace.chart.paint.Pen;
import headrace.chart.paint.Surface;
import headrace.chart.paint.Track;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;

/** Draws a planned panel, from the ground up: areas, grid, contours, lines, points, labels. */
record PanelPainter(Style style, Surface surface) {
    /** The weight of a line beyond its data, against 1 for one inside. */
    static final double EXTENDED = 0.75;

    private static final double TINT = 0.28;
    private static final int WHITE = 0xFFFFFF;

    void paint(PanelPlan plan) {
        each(plan, Area.class, drawn -> area(drawn, plan));
        grid(plan.scale());
        each(plan, ContourLines.class, drawn -> lines(drawn, plan));
        each(plan, Reference.class, drawn -> lines(drawn, plan));
        each(plan, Line.class, drawn -> lines(drawn, plan));
        each(plan, Points.class, drawn -> drawn.tracks().forEach(point -> symbol(drawn, point.x(0), point.y(0))));
        plan.letterings().forEach(surface::letter);
    }

    /** Draws a sample of the mark into a box of the legend. */
    void sample(Drawn drawn, Box box) {
        Track line = Track.through(new double[] {box.x(), box.right()}, new double[] {box.centre(), box.centre()});
        if (drawn.mark() instanceof Area area) {
            Shape shape = Plan.rectangle(box);
            if (area.hatched()) {
                Hatching.over(shape, style.hatchSpacing())
                        .forEach(stroke -> surface.stroke(stroke.toPath(), hatchPen(area)));
            } else {
                surface.fill(shape, area.ink().rgb(), TINT);
            }
        } else if (drawn.mark() instanceof Points) {
            symbol(drawn, box.middle(), box.centre());
        } else {
            surface.stroke(line.toPath(), pen(drawn));
        }
    }

    private static void each(PanelPlan plan, Class<?> kind, java.util.function.Consumer<Drawn> action) {
        plan.drawn().stream().filter(drawn -> kind.isInstance(drawn.mark())).forEach(action);
    }

    private void area(Drawn drawn, PanelPlan plan) {
        Area area = (Area) drawn.mark();
        if (area.hatched()) {
            Path2D.Double all = new Path2D.Double();
            for (Track stroke : Hatching.over(drawn.outline(), style.hatchSpacing())) {
                plan.uncovered(stroke).forEach(piece -> all.append(piece.toPath(), false));
            }
            if (all.getCurrentPoint() != null) {
                surface.stroke(all, hatchPen(area));
            }
        } else {
            surface.fill(drawn.outline(), area.ink().rgb(), TINT);
        }
    }

    private Pen hatchPen(Area area) {
        return Pen.solid(area.ink().rgb(), 0.06 * style.text());
    }

    private void grid(Scale scale) {
        Box frame = scale.frame();
        Path2D.Double lines = new Path2D.Double();
        for (double value : scale.up().values()) {
            lines.moveTo(frame.x(), scale.y(value));
            lines.lineTo(frame.right(), scale.y(value));
        }
        for (double value : scale.across().values()) {
            lines.moveTo(scale.x(value), frame.y());
            lines.lineTo(scale.x(value), frame.bottom());
        }
        surface.stroke(lines, style.grid());
        Path2D.Double base = new Path2D.Double();
        base.moveTo(frame.x(), frame.y());
        base.lineTo(frame.x(), frame.bottom());
        base.lineTo(frame.right(), frame.bottom());
        surface.stroke(base, style.baseLine());
    }

    private void lines(Drawn drawn, PanelPlan plan) {
        Path2D.Double all = new Path2D.Double();
        for (Track track : drawn.tracks()) {
            plan.uncovered(track).forEach(piece -> all.append(piece.toPath(), false));
        }
        if (all.getCurrentPoint() != null) {
            surface.stroke(all, pen(drawn));
        }
        for (Track track : drawn.tracks()) {
            if (track.length() == 0) {
                dot(drawn, track);
            }
        }
    }

    /** A line of a single point would not be seen. */
    private void dot(Drawn drawn, Track point) {
        Shape dot = outline(Symbol.CIRCLE, point.x(0), point.y(0), 1.2 * style.lineWidth());
        surface.fill(dot, drawn.mark().ink().rgb(), 1);
    }

    private Pen pen(Drawn drawn) {
        if (drawn.mark() instanceof Line line) {
            return style.pen(line.ink(), line.dash(), line.extended() ? EXTENDED : 1);
        }
        boolean reference = drawn.mark() instanceof Reference;
        return style.pen(drawn.mark().ink(), reference ? Dash.DOTTED : Dash.SOLID, reference ? 0.8 : 0.55);
    }

    private void symbol(Drawn drawn, double x, double y) {
        int rgb = drawn.mark().ink().rgb();
        double r = style.symbolRadius();
        Symbol symbol = drawn.symbol();
        if (symbol == Symbol.PLUS || symbol == Symbol.CROSS) {
            Path2D strokes = strokes(symbol, x, y, r);
            surface.stroke(strokes, Pen.solid(WHITE, 2.2 * style.lineWidth()));
            surface.stroke(strokes, Pen.solid(rgb, 1.1 * style.lineWidth()));
            return;
        }
        double casing = 0.35 * r;
        surface.fill(outline(symbol, x, y, r + casing), WHITE, 1);
        surface.fill(outline(symbol, x, y, r), rgb, 1);
        if (symbol == Symbol.RING) {
            surface.fill(outline(symbol, x, y, 0.55 * r), WHITE, 1);
        }
    }

    private static Path2D strokes(Symbol symbol, double x, double y, double r) {
        Path2D.Double path = new Path2D.Double();
        double a = symbol == Symbol.PLUS ? 0 : 0.8 * r;
        double b = symbol == Symbol.PLUS ? r : 0.8 * r;
        path.moveTo(x - b, y - a);
        path.lineTo(x + b, y + a);
        path.moveTo(x - a, y + b);
        path.lineTo(x + a, y - b);
        return path;
    }

    private static Shape outline(Symbol symbol, double x, double y, double r) {
        return switch (symbol) {
            case SQUARE -> Plan.rectangle(new Box(x - 0.88 * r, y - 0.88 * r, 1.76 * r, 1.76 * r));
            case TRIANGLE -> polygon(x, y - 1.15 * r, x + 1.1 * r, y + 0.8 * r, x - 1.1 * r, y + 0.8 * r);
            case DIAMOND -> polygon(x, y - 1.25 * r, x + 1.25 * r, y, x, y + 1.25 * r, x - 1.25 * r, y);
            default -> new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r);
        };
    }

    private static Path2D polygon(double... corners) {
        Path2D.Double path = new Path2D.Double();
        path.moveTo(corners[0], corners[1]);
        for (int i = 2; i < corners.length; i += 2) {
            path.lineTo(corners[i], corners[i + 1]);
        }
        path.closePath();
        return path;
    }
}
