package headrace.chart;

import headrace.chart.paint.Box;
import headrace.chart.paint.Track;

/**
 * From the values of two axes to pixels.
 *
 * @param frame where the values stand
 * @param across the range of the axis across
 * @param up the range of the axis going up
 */
record Scale(Box frame, Ticks across, Ticks up) {
    /** Pixels: so that rounding does not lose what lies right on the frame. */
    private static final double ROUNDING = 0.01;

    /** Returns the box to which everything is cut. */
    Box clip() {
        return frame.grown(ROUNDING);
    }

    double x(double value) {
        return frame.x() + (value - across.from()) / (across.to() - across.from()) * frame.width();
    }

    double y(double value) {
        return frame.bottom() - (value - up.from()) / (up.to() - up.from()) * frame.height();
    }

    Track track(Track values) {
        double[] x = new double[values.size()];
        double[] y = new double[values.size()];
        for (int i = 0; i < x.length; i++) {
            x[i] = x(values.x(i));
            y[i] = y(values.y(i));
        }
        return Track.through(x, y);
    }
}
