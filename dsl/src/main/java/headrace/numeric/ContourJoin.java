package headrace.numeric;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Joins the steps of one contour level into lines. Points are known by the side of a cell on which they lie. */
final class ContourJoin {
    /** The side of no other cell: a point there ends a contour. */
    static final long ALONE = -1;

    /** Points closer than this share of the grid are the same: rounding of the search along a side. */
    private static final double ROUNDING = 1e-12;

    private final double level;
    private final double nearX;
    private final double nearY;
    private final Map<Long, double[]> points = new HashMap<>();
    private final Map<Long, List<Long>> neighbours = new LinkedHashMap<>();
    private long lastAlone = ALONE;

    ContourJoin(double level, Grid grid) {
        this.level = level;
        this.nearX = ROUNDING * (grid.right() - grid.left());
        this.nearY = ROUNDING * (grid.top() - grid.bottom());
    }

    boolean knows(long key) {
        return key != ALONE && points.containsKey(key);
    }

    /** Adds a point and returns its key, a new one for a point alone. */
    long point(long key, double x, double y) {
        long own = key == ALONE ? --lastAlone : key;
        points.put(own, new double[] {x, y});
        return own;
    }

    void step(long from, long to) {
        neighbours.computeIfAbsent(from, key -> new ArrayList<>(2)).add(to);
        neighbours.computeIfAbsent(to, key -> new ArrayList<>(2)).add(from);
    }

    /** Returns the lines: those with ends first, in the order in which their first step was found. */
    List<Contour> contours() {
        List<Contour> found = new ArrayList<>();
        for (long key : List.copyOf(neighbours.keySet())) {
            if (neighbours.get(key).size() == 1) {
                add(found, walk(key), false);
            }
        }
        for (long key : List.copyOf(neighbours.keySet())) {
            if (!neighbours.get(key).isEmpty()) {
                add(found, walk(key), true);
            }
        }
        return found;
    }

    /** Takes the steps from a point on as long as there are any; of a loop the first point comes again at the end. */
    private List<Long> walk(long first) {
        List<Long> line = new ArrayList<>();
        long at = first;
        line.add(at);
        while (!neighbours.get(at).isEmpty()) {
            long next = neighbours.get(at).remove(0);
            neighbours.get(next).remove((Long) at);
            line.add(next);
            at = next;
        }
        return line;
    }

    /** Leaves out points that repeat the one before, as where the level runs through a corner of the grid. */
    private void add(List<Contour> found, List<Long> line, boolean closed) {
        List<double[]> distinct = new ArrayList<>();
        for (long key : line) {
            double[] point = points.get(key);
            if (distinct.isEmpty() || !near(distinct.get(distinct.size() - 1), point)) {
                distinct.add(point);
            }
        }
        if (closed && distinct.size() > 1 && near(distinct.get(0), distinct.get(distinct.size() - 1))) {
            distinct.remove(distinct.size() - 1);
        }
        if (distinct.size() >= (closed ? 3 : 2)) {
            found.add(new Contour(
                    level,
                    closed,
                    distinct.stream().mapToDouble(point -> point[0]).toArray(),
                    distinct.stream().mapToDouble(point -> point[1]).toArray()));
        }
    }

    private boolean near(double[] a, double[] b) {
        return Math.abs(a[0] - b[0]) <= nearX && Math.abs(a[1] - b[1]) <= nearY;
    }
}
