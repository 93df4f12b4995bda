package headrace.chart;

import headrace.chart.mark.Diagram.Sign;
import headrace.chart.paint.Pen;
import headrace.chart.paint.Surface;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/**
 * The signs of a diagram, drawn about a point.
 *
 * @param half half the height of a sign
 * @param pen the pen of its strokes
 * @param x its middle
 * @param y its middle
 */
record Signs(double half, Pen pen, double x, double y) {
    private static final int WHITE = 0xFFFFFF;

    /** Returns how much of a line a sign takes. */
    static double width(double half) {
        return 2.6 * half;
    }

    void draw(Surface surface, Sign sign, boolean forward) {
        switch (sign) {
            case DRIVE -> {
                shape(surface, new Ellipse2D.Double(x - half, y - half, 2 * half, 2 * half));
                double tip = forward ? half : -half;
                surface.fill(triangle(x + tip * 0.9, x - tip * 0.45, 0.75 * half), pen.rgb(), 1);
            }
            case HEAT -> {
                shape(surface, box());
                surface.stroke(zigzag(), pen);
            }
            case THROTTLE -> bow(surface);
            case SET -> {
                bow(surface);
                surface.stroke(line(x - half * 0.8, y + half, x + half * 0.8, y - half), pen);
            }
            case HOLD -> {
                bow(surface);
                double r = 0.4 * half;
                shape(surface, new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r));
            }
            case ONE_WAY -> {
                double tip = forward ? half : -half;
                shape(surface, triangle(x + tip, x - tip, half * 0.85));
                surface.stroke(line(x + tip, y - half * 0.85, x + tip, y + half * 0.85), pen);
            }
            default -> shape(surface, box());
        }
    }

    private void shape(Surface surface, Shape shape) {
        surface.fill(shape, WHITE, 1);
        surface.stroke(shape, pen);
    }

    private void bow(Surface surface) {
        double wide = 1.2 * half;
        shape(surface, triangle(x, x - wide, 0.8 * half));
        shape(surface, triangle(x, x + wide, 0.8 * half));
    }

    private Rectangle2D box() {
        return new Rectangle2D.Double(x - 1.2 * half, y - 0.8 * half, 2.4 * half, 1.6 * half);
    }

    private Path2D zigzag() {
        Path2D.Double path = new Path2D.Double();
        path.moveTo(x - 1.2 * half, y);
        for (int i = 0; i < 4; i++) {
            path.lineTo(x + (-0.9 + 0.6 * i) * half, y + (i % 2 == 0 ? -0.5 : 0.5) * half);
        }
        path.lineTo(x + 1.2 * half, y);
        return path;
    }

    private Path2D triangle(double tip, double base, double high) {
        Path2D.Double path = new Path2D.Double();
        path.moveTo(tip, y);
        path.lineTo(base, y - high);
        path.lineTo(base, y + high);
        path.closePath();
        return path;
    }

    static Path2D line(double fromX, double fromY, double toX, double toY) {
        Path2D.Double path = new Path2D.Double();
        path.moveTo(fromX, fromY);
        path.lineTo(toX, toY);
        return path;
    }
}
