package headrace.pump;

/**
 * What a branch adds to the head, falling with flow, as bare doubles: a parabola where it is one, otherwise the curve
 * itself, inverted inside a bracket. Beyond its end the curve goes on along its tangent, so that it always falls.
 */
final class FallingHead {
    private static final int CHECKED = 16;
    private static final double SAME = 1e-11;
    private static final double SMALL_STEP = 1e-6;
    private static final double ROUNDING = 1e-14;
    private static final int MOST_STEPS = 200;

    private final PumpBranch branch;
    private final double end;
    private final double endMetres;
    private final double endSlope;
    private final double shutOff;
    private final double linear;
    private final double square;
    private final boolean parabola;

    FallingHead(PumpBranch branch) {
        this.branch = branch;
        this.end = branch.curve().extendedHighestFlow().si();
        this.shutOff = branch.headerMetres(0);
        this.endMetres = branch.headerMetres(end);
        double half = branch.headerMetres(0.5 * end);
        this.linear = (3 * shutOff - 4 * half + endMetres) / end;
        this.square = -2 * (shutOff - 2 * half + endMetres) / (end * end);
        this.parabola = isParabola();
        this.endSlope = slopeAt(end);
    }

    /** Three points make a parabola; whether it is the curve, the points between tell. */
    private boolean isParabola() {
        double nothing = SAME * (Math.abs(shutOff) + Math.abs(endMetres));
        for (int i = 0; i <= CHECKED; i++) {
            double q = end * i / CHECKED;
            if (Math.abs(shutOff - linear * q - square * q * q - branch.headerMetres(q)) > nothing) {
                return false;
            }
        }
        return linear >= -nothing / end && square >= -nothing / (end * end);
    }

    boolean parabola() {
        return parabola;
    }

    /** Returns {@code c} of {@code c − b·Q − e·Q²}: the head at no flow. */
    double shutOffMetres() {
        return shutOff;
    }

    /** Returns {@code b}, which rounding does not bring below 0. */
    double linear() {
        return Math.max(0, linear);
    }

    /** Returns {@code e}, which rounding does not bring below 0. */
    double square() {
        return Math.max(0, square);
    }

    double end() {
        return end;
    }

    /** Returns the slope at a flow, from a difference where the curve is no parabola. */
    double slopeAt(double q) {
        double at = Math.min(q, end);
        if (parabola) {
            return -linear - 2 * square * at;
        }
        double step = SMALL_STEP * end;
        double from = Math.max(0, at - step);
        double to = Math.min(end, at + step);
        return (branch.headerMetres(to) - branch.headerMetres(from)) / (to - from);
    }

    /** Returns the flow at a head below the shut-off head, by false position with the Illinois change. */
    double flowAt(double metres) {
        return flowAt(metres, MOST_STEPS);
    }

    /** Returns the flow as near as a number of steps brings it. */
    double flowAt(double metres, int mostSteps) {
        if (metres <= endMetres) {
            return end + (metres - endMetres) / endSlope;
        }
        double low = 0;
        double atLow = shutOff - metres;
        double high = end;
        double atHigh = endMetres - metres;
        int kept = 0;
        double q = 0;
        for (int i = 0; i < mostSteps && high - low > ROUNDING * end; i++) {
            q = low + (high - low) * atLow / (atLow - atHigh);
            double at = branch.headerMetres(q) - metres;
            if (Math.abs(at) <= ROUNDING * shutOff) {
                return q;
            }
            if (at > 0) {
                low = q;
                atLow = at;
                atHigh *= kept > 0 ? 0.5 : 1;
                kept = 1;
            } else {
                high = q;
                atHigh = at;
                atLow *= kept < 0 ? 0.5 : 1;
                kept = -1;
            }
        }
        return q;
    }
}
