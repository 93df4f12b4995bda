package headrace.kernel.terminal;

import java.awt.Shape;
import java.awt.geom.PathIterator;
import java.util.List;

/** Walks along the lines of a shape in small steps, and says each place at which the pen is down. */
final class Walk {
    private static final double FLATNESS = 0.5;

    private final List<Double> dashes;
    private final double round;
    private final double step;
    private final Places places;
    private double gone;

    /** Hears each place. */
    interface Places {
        /** Takes a place. */
        void at(double x, double y);
    }

    private Walk(List<Double> dashes, double step, Places places) {
        this.dashes = dashes;
        double once = dashes.stream().mapToDouble(Double::doubleValue).sum();
        round = dashes.size() % 2 == 0 ? once : 2 * once;
        this.step = step;
        this.places = places;
    }

    static void along(Shape shape, List<Double> dashes, double step, Places places) {
        Walk walk = new Walk(dashes, step, places);
        double[] to = new double[6];
        double startX = 0;
        double startY = 0;
        double x = 0;
        double y = 0;
        for (PathIterator path = shape.getPathIterator(null, FLATNESS); !path.isDone(); path.next()) {
            int kind = path.currentSegment(to);
            if (kind == PathIterator.SEG_MOVETO) {
                startX = to[0];
                startY = to[1];
                walk.gone = 0;
            } else if (kind == PathIterator.SEG_CLOSE) {
                walk.line(x, y, startX, startY);
                to[0] = startX;
                to[1] = startY;
            } else {
                walk.line(x, y, to[0], to[1]);
            }
            x = to[0];
            y = to[1];
        }
    }

    private void line(double x, double y, double toX, double toY) {
        double length = Math.hypot(toX - x, toY - y);
        int steps = (int) Math.ceil(length / step);
        for (int i = 0; i <= steps; i++) {
            double part = steps == 0 ? 0 : (double) i / steps;
            if (isDown(gone + part * length)) {
                places.at(x + part * (toX - x), y + part * (toY - y));
            }
        }
        gone += length;
    }

    private boolean isDown(double at) {
        if (round <= 0) {
            return true;
        }
        double rest = at % round;
        for (int i = 0; ; i++) {
            rest -= dashes.get(i % dashes.size());
            if (rest < 0) {
                return i % 2 == 0;
            }
        }
    }
}
