package headrace.chart.paint;

import java.awt.Shape;
import java.awt.geom.PathIterator;

/**
 * Writes a shape as SVG path data, in hundredths of a pixel and in few letters.
 *
 * <p>Each step goes from the last point as it was written, so that rounding does not add up along the way.
 *
 * <p>Source: SVG 1.1 (second edition), chapter 8.
 */
final class SvgPath {
    private final StringBuilder out;
    private long x;
    private long y;
    private long begunX;
    private long begunY;
    /** The last control point of a curve; the point itself after anything else, as SVG has it. */
    private long controlX;

    private long controlY;

    SvgPath(StringBuilder out) {
        this.out = out;
    }

    void append(Shape shape) {
        double[] c = new double[6];
        for (PathIterator it = shape.getPathIterator(null); !it.isDone(); it.next()) {
            switch (it.currentSegment(c)) {
                case PathIterator.SEG_MOVETO -> move(round(c[0]), round(c[1]));
                case PathIterator.SEG_LINETO -> line(round(c[0]), round(c[1]));
                case PathIterator.SEG_QUADTO -> curve(round(c[0]), round(c[1]), round(c[2]), round(c[3]));
                case PathIterator.SEG_CUBICTO -> {
                    out.append('c');
                    pair(round(c[0]) - x, round(c[1]) - y);
                    spaced(round(c[2]) - x);
                    spaced(round(c[3]) - y);
                    spaced(round(c[4]) - x);
                    spaced(round(c[5]) - y);
                    arrive(round(c[4]), round(c[5]));
                }
                default -> {
                    out.append('z');
                    arrive(begunX, begunY);
                }
            }
        }
    }

    private void move(long toX, long toY) {
        out.append('M');
        pair(toX, toY);
        begunX = toX;
        begunY = toY;
        arrive(toX, toY);
    }

    private void line(long toX, long toY) {
        if (toY == y) {
            out.append('h').append(hundredths(toX - x));
        } else if (toX == x) {
            out.append('v').append(hundredths(toY - y));
        } else {
            out.append('l');
            pair(toX - x, toY - y);
        }
        arrive(toX, toY);
    }

    /** Leaves the control point out where it mirrors the last one to a hundredth, as it does in most letters. */
    private void curve(long overX, long overY, long toX, long toY) {
        long mirrorX = 2 * x - controlX;
        long mirrorY = 2 * y - controlY;
        if (Math.abs(mirrorX - overX) <= 1 && Math.abs(mirrorY - overY) <= 1) {
            out.append('t');
            pair(toX - x, toY - y);
            arrive(toX, toY);
            controlX = mirrorX;
            controlY = mirrorY;
        } else {
            out.append('q');
            pair(overX - x, overY - y);
            spaced(toX - x);
            spaced(toY - y);
            arrive(toX, toY);
            controlX = overX;
            controlY = overY;
        }
    }

    private void arrive(long toX, long toY) {
        x = toX;
        y = toY;
        controlX = toX;
        controlY = toY;
    }

    private void pair(long first, long second) {
        out.append(hundredths(first));
        spaced(second);
    }

    private void spaced(long value) {
        String text = hundredths(value);
        out.append(text.charAt(0) == '-' ? "" : " ").append(text);
    }

    static long round(double value) {
        return Math.round(value * 100);
    }

    /** Prints hundredths without trailing zeros and without a zero before the point. */
    static String hundredths(long value) {
        if (value % 100 == 0) {
            return Long.toString(value / 100);
        }
        long size = Math.abs(value);
        String whole = size < 100 ? "" : Long.toString(size / 100);
        long rest = size % 100;
        String digits = rest % 10 == 0 ? Long.toString(rest / 10) : (rest < 10 ? "0" : "") + rest;
        return (value < 0 ? "-" : "") + whole + "." + digits;
    }
}
