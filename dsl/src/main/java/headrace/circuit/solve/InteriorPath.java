package headrace.circuit.solve;

/**
 * The way round when Newton's method does not settle which links rest: it comes from the inside of all bounds, where
 * each bound pushes back the more the nearer it is, and lets the pushes fade.
 *
 * <p>Source: primal-dual interior point method for a convex problem (textbook: Nocedal and Wright, Numerical
 * Optimization, 2nd edition, chapter 14 and 19).
 */
final class InteriorPath {
    private static final int STEPS = 60;
    private static final double FADE = 0.2;
    private static final double LEAST_PUSH = 1e-10;
    private static final double TO_THE_BOUND = 0.95;

    private final Iterate at;
    private final Network.Scale scale;
    private final double[] low;
    private final double[] high;
    private final double[] lowChange;
    private final double[] highChange;
    private double push;

    InteriorPath(Iterate at, Network.Scale scale) {
        this.at = at;
        this.scale = scale;
        low = new double[at.flow.length];
        high = low.clone();
        lowChange = low.clone();
        highChange = low.clone();
    }

    /** Walks to where the pushes have faded, and returns how many steps it took. */
    int walk(LinearStep step, ClosingLaw law, ClosingLine line) {
        enter();
        int steps = 0;
        double least = LEAST_PUSH * scale.metres() * scale.cubicMetresPerSecond();
        while (push > least && steps < STEPS) {
            at.evaluate();
            linearise(step);
            if (!step.solve(true)) {
                break;
            }
            steps++;
            line.meet(step, law);
            step.finish();
            double share = share(step);
            at.mark();
            at.move(step, Math.min(share, Math.nextDown(1.0)));
            for (int l = 0; l < low.length; l++) {
                low[l] += share * lowChange[l];
                high[l] += share * highChange[l];
            }
            push *= share > 1 - FADE ? FADE : 1 - share * (1 - FADE);
        }
        at.evaluate();
        return steps;
    }

    private void enter() {
        push = 0.1 * scale.metres() * scale.cubicMetresPerSecond();
        for (int l = 0; l < low.length; l++) {
            double size = scale.cubicMetresPerSecond();
            if (at.most[l] < Double.POSITIVE_INFINITY) {
                at.flow[l] = at.live.isLive(l) ? at.most[l] / 2 : 0;
                size = at.most[l] / 2;
            } else if (at.least(l) == 0) {
                at.flow[l] = Math.max(at.flow[l], 0.1 * size);
                size = at.flow[l];
            }
            low[l] = bounded(l, at.least(l)) ? push / size : 0;
            high[l] = bounded(l, at.most[l]) ? push / size : 0;
        }
    }

    private boolean bounded(int l, double bound) {
        return at.live.isLive(l) && Math.abs(bound) < Double.POSITIVE_INFINITY;
    }

    private void linearise(LinearStep step) {
        for (int l = 0; l < low.length; l++) {
            if (!at.live.isLive(l)) {
                step.rest(l);
                continue;
            }
            double slope = at.slope(l);
            double spare = at.headAcross(l) - at.lost(l);
            if (low[l] > 0) {
                slope += low[l] / at.flow[l];
                spare += push / at.flow[l];
            }
            if (high[l] > 0) {
                slope += high[l] / (at.most[l] - at.flow[l]);
                spare -= push / (at.most[l] - at.flow[l]);
            }
            step.conductance[l] = 1 / slope;
            step.base[l] = spare / slope;
        }
    }

    /** Returns which share of the step stays inside all bounds, the pushes being bounded too. */
    private double share(LinearStep step) {
        double share = 1;
        for (int l = 0; l < low.length; l++) {
            double change = step.flowChange[l];
            if (low[l] > 0) {
                lowChange[l] = (push - low[l] * change) / at.flow[l] - low[l];
                share = limited(share, at.flow[l], change);
                share = limited(share, low[l], lowChange[l]);
            }
            if (high[l] > 0) {
                double room = at.most[l] - at.flow[l];
                highChange[l] = (push + high[l] * change) / room - high[l];
                share = limited(share, room, -change);
                share = limited(share, high[l], highChange[l]);
            }
        }
        return share;
    }

    private static double limited(double share, double value, double change) {
        return change < 0 ? Math.min(share, -TO_THE_BOUND * value / change) : share;
    }
}
