package headrace.numeric;

import headrace.work.Work;
import java.util.ArrayList;
import java.util.List;

/**
 * Lines of equal value in a field, by marching squares on a grid.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Plain numbers; the caller knows what they are.
 *   <dt>Limits
 *   <dd>Every point of a contour lies on its level to rounding, because it is searched for on the field itself along a
 *       side of a cell, not between the values at the corners. Between two points the contour is a straight step, so a
 *       finer grid gives a smoother line. An island that fits between the corners is not seen. Where the field ends
 *       within a cell the contour is taken to that edge and left open.
 *   <dt>Errors
 *   <dd>None: a value that is infinite or not a number counts as outside the field.
 *   <dt>Source
 *   <dd>Marching squares is common practice; the search along the sides and at the edge of the field is our own.
 * </dl>
 */
public final class Contours {
    /** Halvings of an interval: past the precision of a double. */
    private static final int HALVINGS = 60;

    private final Field field;
    private final Grid grid;
    private final double[][] values;

    private Contours(Field field, Grid grid) {
        this.field = field;
        this.grid = grid;
        values = new double[grid.cells() + 1][grid.cells() + 1];
        for (int j = 0; j <= grid.cells(); j++) {
            Work.poll();
            for (int i = 0; i <= grid.cells(); i++) {
                values[j][i] = value(grid.x(i), grid.y(j));
            }
        }
    }

    /** Returns the contours of a field at some levels, level by level in the order given. */
    public static List<Contour> of(Field field, Grid grid, double... levels) {
        Contours contours = new Contours(field, grid);
        List<Contour> found = new ArrayList<>();
        for (double level : levels) {
            found.addAll(contours.at(level));
        }
        return found;
    }

    private List<Contour> at(double level) {
        ContourJoin join = new ContourJoin(level, grid);
        for (int j = 0; j < grid.cells(); j++) {
            Work.poll();
            for (int i = 0; i < grid.cells(); i++) {
                cell(i, j, level, join);
            }
        }
        return join.contours();
    }

    /** Walks around a cell; each run of corners inside the field, with the edge of the field, is a polygon to cut. */
    private void cell(int i, int j, double level, ContourJoin join) {
        Corner[] corners = {corner(i, j), corner(i + 1, j), corner(i + 1, j + 1), corner(i, j + 1)};
        long[] sides = {lying(i, j), standing(i + 1, j), lying(i, j + 1), standing(i, j)};
        int outside = 0;
        boolean above = false;
        boolean below = false;
        for (Corner corner : corners) {
            outside += corner.inside() ? 0 : 1;
            above |= corner.value() >= level;
            below |= corner.value() < level;
        }
        if (outside == 0) {
            if (above && below) {
                cut(List.of(corners), sides, level, join);
            }
            return;
        }
        for (int start = 0; start < 4; start++) {
            if (corners[start].inside() && !corners[(start + 3) % 4].inside()) {
                run(corners, sides, start, level, join);
            }
        }
    }

    private void run(Corner[] corners, long[] sides, int start, double level, ContourJoin join) {
        List<Corner> polygon = new ArrayList<>();
        List<Long> keys = new ArrayList<>();
        polygon.add(edge(corners[start], corners[(start + 3) % 4]));
        keys.add(sides[(start + 3) % 4]);
        int at = start;
        while (corners[at % 4].inside()) {
            polygon.add(corners[at % 4]);
            keys.add(sides[at % 4]);
            at++;
        }
        polygon.add(edge(corners[(at - 1) % 4], corners[at % 4]));
        keys.add(ContourJoin.ALONE);
        cut(polygon, keys.stream().mapToLong(key -> key).toArray(), level, join);
    }

    /** Draws the steps of a contour through a polygon; at a saddle the value in the middle decides what joins. */
    private void cut(List<Corner> polygon, long[] keys, double level, ContourJoin join) {
        int count = polygon.size();
        double middleX = polygon.stream().mapToDouble(Corner::x).average().orElseThrow();
        double middleY = polygon.stream().mapToDouble(Corner::y).average().orElseThrow();
        boolean middle = value(middleX, middleY) >= level;
        for (int side = 0; side < count; side++) {
            boolean here = polygon.get(side).value() >= level;
            boolean leaves = here == middle && polygon.get((side + 1) % count).value() >= level != middle;
            if (leaves) {
                int back = side + 1;
                while (polygon.get((back + 1) % count).value() >= level != middle) {
                    back++;
                }
                join.step(
                        crossing(polygon, keys, side, level, join), crossing(polygon, keys, back % count, level, join));
            }
        }
    }

    private long crossing(List<Corner> polygon, long[] keys, int side, double level, ContourJoin join) {
        long key = keys[side];
        if (key != ContourJoin.ALONE && join.knows(key)) {
            return key;
        }
        Corner from = polygon.get(side);
        Corner to = polygon.get((side + 1) % polygon.size());
        boolean above = from.value() >= level;
        double low = 0;
        double high = 1;
        for (int i = 0; i < HALVINGS; i++) {
            double share = (low + high) / 2;
            double[] point = onSide(polygon, key, from, to, share);
            if (value(point[0], point[1]) >= level == above) {
                low = share;
            } else {
                high = share;
            }
        }
        double[] point = onSide(polygon, key, from, to, low);
        return join.point(key, point[0], point[1]);
    }

    /** Returns a point of a side of a cell; or, across a cell where the field ends, the point of its edge behind it. */
    private double[] onSide(List<Corner> polygon, long key, Corner from, Corner to, double share) {
        double x = from.x() + share * (to.x() - from.x());
        double y = from.y() + share * (to.y() - from.y());
        if (key != ContourJoin.ALONE) {
            return new double[] {x, y};
        }
        List<Corner> whole = polygon.subList(1, polygon.size() - 1);
        double baseX = whole.stream().mapToDouble(Corner::x).average().orElseThrow();
        double baseY = whole.stream().mapToDouble(Corner::y).average().orElseThrow();
        double in = 0;
        double out = 2;
        if (inside(baseX + out * (x - baseX), baseY + out * (y - baseY))) {
            return new double[] {x, y};
        }
        for (int i = 0; i < HALVINGS; i++) {
            double part = (in + out) / 2;
            if (inside(baseX + part * (x - baseX), baseY + part * (y - baseY))) {
                in = part;
            } else {
                out = part;
            }
        }
        return new double[] {baseX + in * (x - baseX), baseY + in * (y - baseY)};
    }

    /** Returns the last point inside the field on the way from a corner inside to one outside. */
    private Corner edge(Corner from, Corner to) {
        double in = 0;
        double out = 1;
        for (int i = 0; i < HALVINGS; i++) {
            double share = (in + out) / 2;
            if (inside(from.x() + share * (to.x() - from.x()), from.y() + share * (to.y() - from.y()))) {
                in = share;
            } else {
                out = share;
            }
        }
        double x = from.x() + in * (to.x() - from.x());
        double y = from.y() + in * (to.y() - from.y());
        return new Corner(x, y, value(x, y));
    }

    private Corner corner(int i, int j) {
        return new Corner(grid.x(i), grid.y(j), values[j][i]);
    }

    private boolean inside(double x, double y) {
        return !Double.isNaN(value(x, y));
    }

    /** Returns the value, or NaN outside the field; never leaves this class. */
    private double value(double x, double y) {
        if (!field.covers(x, y)) {
            return Double.NaN;
        }
        double value = field.at(x, y);
        return Double.isFinite(value) ? value : Double.NaN;
    }

    private long lying(int i, int j) {
        return 2L * ((long) j * (grid.cells() + 1) + i);
    }

    private long standing(int i, int j) {
        return lying(i, j) + 1;
    }

    private record Corner(double x, double y, double value) {
        boolean inside() {
            return !Double.isNaN(value);
        }
    }
}
