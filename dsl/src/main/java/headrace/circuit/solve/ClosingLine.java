package headrace.circuit.solve;

/** Finds where on the line of a linear step the closing law holds: one equation with one unknown. */
final class ClosingLine {
    private static final int STEPS = 40;
    private static final double DIFFERENCE = 1e-6;
    private static final double EXACT = 1e-13;

    /** No step takes the head of the pump further than so many times what it is. */
    private static final double FURTHEST = 3;

    private final double metres;
    private double off;

    ClosingLine(double metres) {
        this.metres = metres;
    }

    /**
     * Leaves the step at the change of head at which the law holds. A law that bends may not meet the line at all: then
     * at the change that its tangent gives, and no further than the head can be trusted.
     */
    void meet(LinearStep step, ClosingLaw law) {
        step.choose(0);
        double reach = FURTHEST * Math.max(metres, Math.abs(step.head()));
        double at = 0;
        double low = -reach;
        double high = reach;
        off = off(step, law, 0);
        double first = newton(step, law, 0);
        double next = first;
        for (int i = 0; i < STEPS && Math.abs(off) > EXACT * metres; i++) {
            low = off < 0 ? at : low;
            high = off < 0 ? high : at;
            at = next > low && next < high ? next : low + (high - low) / 2;
            off = off(step, law, at);
            next = newton(step, law, at);
        }
        boolean met = Math.abs(off) <= 1e-6 * metres;
        step.choose(met ? at : Math.max(-reach, Math.min(reach, first)));
    }

    /**
     * Returns where the tangent of the law at a change meets the line; where both run alike, where the law alone is.
     */
    private double newton(LinearStep step, ClosingLaw law, double at) {
        double delta = DIFFERENCE * metres;
        double slope = (off(step, law, at + delta) - off) / delta;
        return slope > DIFFERENCE ? at - off / slope : at - off;
    }

    private static double off(LinearStep step, ClosingLaw law, double change) {
        step.choose(change);
        return step.head() - law.headMetres(step);
    }
}
