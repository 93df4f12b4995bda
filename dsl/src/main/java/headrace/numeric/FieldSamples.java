package headrace.numeric;

import headrace.work.Work;

/** A field known at the corners of a grid, and asked again in between. Outside the field its value is NaN. */
final class FieldSamples {
    /** Halvings of an interval: past the precision of a double. */
    static final int HALVINGS = 60;

    private final Field field;
    private final Grid grid;
    private final double[][] values;

    /** A point and the value of the field there. */
    record Sample(double x, double y, double value) {
        boolean inside() {
            return !Double.isNaN(value);
        }
    }

    FieldSamples(Field field, Grid grid) {
        this.field = field;
        this.grid = grid;
        values = new double[grid.cells() + 1][grid.cells() + 1];
        for (int j = 0; j <= grid.cells(); j++) {
            Work.poll();
            for (int i = 0; i <= grid.cells(); i++) {
                values[j][i] = at(grid.x(i), grid.y(j)).value();
            }
        }
    }

    Grid grid() {
        return grid;
    }

    Sample corner(int i, int j) {
        return new Sample(grid.x(i), grid.y(j), values[j][i]);
    }

    Sample at(double x, double y) {
        double value = field.covers(x, y) ? field.at(x, y) : Double.NaN;
        return new Sample(x, y, Double.isFinite(value) ? value : Double.NaN);
    }

    Sample between(Sample from, Sample to, double share) {
        return at(from.x() + share * (to.x() - from.x()), from.y() + share * (to.y() - from.y()));
    }

    /** Returns the last sample inside the field on the way from one inside to one outside. */
    Sample edge(Sample from, Sample to) {
        double in = 0;
        double out = 1;
        for (int i = 0; i < HALVINGS; i++) {
            double share = (in + out) / 2;
            if (between(from, to, share).inside()) {
                in = share;
            } else {
                out = share;
            }
        }
        return between(from, to, in);
    }
}
