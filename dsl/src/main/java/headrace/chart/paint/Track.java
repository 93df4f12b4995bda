package headrace.chart.paint;

import headrace.problem.Refusal;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A line through points in order: of a curve in the units of its axes, or of its picture in pixels.
 *
 * <p>Every value is finite and not beyond ±10¹⁰⁰, so that differences are finite too; a track may be a single point.
 */
public final class Track {
    /** The largest value that has a place on an axis, either sign. */
    public static final double LARGEST = 1e100;

    private final double[] x;
    private final double[] y;

    private Track(double[] x, double[] y) {
        this.x = x;
        this.y = y;
    }

    /**
     * Returns the track through these points.
     *
     * @throws Refusal with {@code UNDRAWABLE_VALUE} if there is none, if the lists differ in length, or if a value is
     *     not a number or beyond ±10¹⁰⁰
     */
    public static Track through(double[] x, double[] y) {
        if (x.length != y.length || x.length == 0) {
            throw new Refusal(
                    ChartProblem.UNDRAWABLE_VALUE,
                    "Asked to draw a line of " + x.length + " values across and " + y.length + " up",
                    "A line has at least one point, and as many values up as across",
                    "Give one value up for each value across");
        }
        for (int i = 0; i < x.length; i++) {
            if (!(Math.abs(x[i]) <= LARGEST && Math.abs(y[i]) <= LARGEST)) {
                throw new Refusal(
                        ChartProblem.UNDRAWABLE_VALUE,
                        "Asked to draw a point at (" + x[i] + ", " + y[i] + ")",
                        "Only finite values, and none beyond 1e100, have a place on an axis",
                        "Leave the point out, or look at what it was computed from");
            }
        }
        return new Track(x.clone(), y.clone());
    }

    /** Returns how many points there are. */
    public int size() {
        return x.length;
    }

    /** Returns where the point stands across. */
    public double x(int index) {
        return x[index];
    }

    /** Returns where the point stands up (in data) or down (in pixels). */
    public double y(int index) {
        return y[index];
    }

    /** Returns the length along the track. */
    public double length() {
        double length = 0;
        for (int i = 1; i < x.length; i++) {
            length += Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]);
        }
        return length;
    }

    /** Returns the smallest upright box around the track. */
    public Box bounds() {
        double left = Arrays.stream(x).min().orElseThrow();
        double top = Arrays.stream(y).min().orElseThrow();
        double right = Arrays.stream(x).max().orElseThrow();
        double bottom = Arrays.stream(y).max().orElseThrow();
        return new Box(left, top, right - left, bottom - top);
    }

    /** Returns the length of what lies inside a box. */
    public double lengthWithin(Box box) {
        double length = 0;
        for (int i = 1; i < x.length; i++) {
            double[] inside = inside(i, box);
            if (inside[1] != inside[0]) { // most pieces lie elsewhere, and a root is dear
                length += (inside[1] - inside[0]) * Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]);
            }
        }
        return length;
    }

    /** Returns how far a box is from that point of the track which is nearest to the middle of the box. */
    public double distance(Box box) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = x.length == 1 ? 0 : 1; i < x.length; i++) {
            double fromX = x[Math.max(0, i - 1)];
            double fromY = y[Math.max(0, i - 1)];
            double dx = x[i] - fromX;
            double dy = y[i] - fromY;
            double square = dx * dx + dy * dy;
            double along = square == 0 ? 0 : ((box.middle() - fromX) * dx + (box.centre() - fromY) * dy) / square;
            double share = Math.max(0, Math.min(1, along));
            least = Math.min(least, box.distance(new double[] {fromX + share * dx, fromY + share * dy}));
        }
        return least;
    }

    /** Returns the pieces that lie inside a box. A track of one point is a piece, or none. */
    public List<Track> within(Box box) {
        if (x.length == 1) {
            return box.holds(new Box(x[0], y[0], 0, 0)) ? List.of(this) : List.of();
        }
        Pieces pieces = new Pieces();
        for (int i = 1; i < x.length; i++) {
            double[] inside = inside(i, box);
            if (inside[0] < inside[1]) {
                add(pieces, i, inside[0], inside[1]);
            }
        }
        return pieces.all();
    }

    /** Returns the pieces that lie outside a box. */
    public List<Track> without(Box box) {
        Pieces pieces = new Pieces();
        for (int i = 1; i < x.length; i++) {
            double[] inside = inside(i, box);
            if (inside[0] >= inside[1]) {
                add(pieces, i, 0, 1);
            } else {
                if (inside[0] > 0) {
                    add(pieces, i, 0, inside[0]);
                }
                if (inside[1] < 1) {
                    add(pieces, i, inside[1], 1);
                }
            }
        }
        return pieces.all();
    }

    /** Returns the point at a share of the length, and the direction there: x, y, and a step of length 1. */
    public double[] at(double share) {
        double left = share * length();
        for (int i = 1; i < x.length; i++) {
            double dx = x[i] - x[i - 1];
            double dy = y[i] - y[i - 1];
            double step = Math.hypot(dx, dy);
            if (step > 0 && (left <= step || i == x.length - 1)) {
                double part = Math.min(1, left / step);
                return new double[] {x[i - 1] + part * dx, y[i - 1] + part * dy, dx / step, dy / step};
            }
            left -= step;
        }
        return new double[] {x[x.length - 1], y[x.length - 1], 1, 0};
    }

    /** Returns the track as an open path. */
    public Path2D toPath() {
        Path2D.Double path = new Path2D.Double();
        path.moveTo(x[0], y[0]);
        for (int i = 1; i < x.length; i++) {
            path.lineTo(x[i], y[i]);
        }
        return path;
    }

    private void add(Pieces pieces, int i, double from, double to) {
        double dx = x[i] - x[i - 1];
        double dy = y[i] - y[i - 1];
        pieces.add(
                x[i - 1] + from * dx,
                y[i - 1] + from * dy,
                to == 1 ? x[i] : x[i - 1] + to * dx,
                to == 1 ? y[i] : y[i - 1] + to * dy);
    }

    /** Returns the shares of the step to a point between which it lies inside the box, by Liang and Barsky (1984). */
    private double[] inside(int i, Box box) {
        double[] span = {0, 1};
        double dx = x[i] - x[i - 1];
        double dy = y[i] - y[i - 1];
        boolean meets = narrow(span, -dx, x[i - 1] - box.x())
                && narrow(span, dx, box.right() - x[i - 1])
                && narrow(span, -dy, y[i - 1] - box.y())
                && narrow(span, dy, box.bottom() - y[i - 1]);
        return meets ? span : new double[] {0, 0};
    }

    private static boolean narrow(double[] span, double rate, double room) {
        if (rate == 0) {
            return room >= 0;
        }
        double share = room / rate;
        if (rate < 0) {
            span[0] = Math.max(span[0], share);
        } else {
            span[1] = Math.min(span[1], share);
        }
        return span[0] < span[1];
    }

    /** Collects steps and joins those that follow on. */
    private static final class Pieces {
        private final List<Track> done = new ArrayList<>();
        private final List<double[]> open = new ArrayList<>();

        void add(double fromX, double fromY, double toX, double toY) {
            double[] last = open.isEmpty() ? null : open.get(open.size() - 1);
            if (last == null || last[0] != fromX || last[1] != fromY) {
                close();
                open.add(new double[] {fromX, fromY});
            }
            open.add(new double[] {toX, toY});
        }

        void close() {
            if (!open.isEmpty()) {
                done.add(new Track(
                        open.stream().mapToDouble(point -> point[0]).toArray(),
                        open.stream().mapToDouble(point -> point[1]).toArray()));
                open.clear();
            }
        }

        List<Track> all() {
            close();
            return done;
        }
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Track track && Arrays.equals(x, track.x) && Arrays.equals(y, track.y);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(x) + Arrays.hashCode(y);
    }

    @Override
    public String toString() {
        return size() + " points from (" + x[0] + ", " + y[0] + ") to (" + x[size() - 1] + ", " + y[size() - 1] + ")";
    }
}
