package headrace.circuit.solve;

/**
 * How a closing law and a network answer to each other around a solution: with {@code asked} the head that the law asks
 * for, the gain is {@code 1/(1 − d asked/d head)}, taken along the line on which the network can move.
 *
 * <p>For a law {@code Hₘ + c·Q²} and a network with its valves held, {@code k·Q²}, that is {@code 1/(1 − c/k)}: by so
 * much more than with a pump of fixed head a small change of a valve moves the square of flow. At 1 the law does not
 * see the network; towards infinity both run alike and no operating point is defined; below 0 the law is the steeper
 * one.
 */
final class Gain {
    private static final double STEP = 1e-5;

    private final Iterate at;
    private final LinearStep step;
    private final double metres;

    Gain(Iterate at, LinearStep step, double metres) {
        this.at = at;
        this.step = step;
        this.metres = metres;
    }

    /** Returns {@code 1 − d asked/d head}: the inverse of the gain. */
    double inverse(ClosingLaw law, boolean valvesHeld) {
        if (law instanceof ClosingLaw.GivenHead || !line(valvesHeld)) {
            return 1;
        }
        double delta = STEP * metres;
        double up = off(law, delta);
        double down = off(law, -delta);
        return (up - down) / (2 * delta);
    }

    /** Returns by how much the flow through the pump grows with its head, in m²/s. */
    double response(boolean valvesHeld) {
        return line(valvesHeld) ? step.pumpResponse() : 0;
    }

    private boolean line(boolean valvesHeld) {
        at.live.find(at.most);
        step.linearise();
        for (int l = 0; l < at.flow.length; l++) {
            step.base[l] = 0;
            if (valvesHeld && at.state[l] == LinkState.DELIVERING) {
                double spare = Math.max(0, at.headAcross(l) - at.lost(l));
                step.conductance[l] = 1 / (at.slope(l) + 2 * spare / at.flow[l]);
            }
        }
        return step.solve(true);
    }

    private double off(ClosingLaw law, double change) {
        step.choose(change);
        return step.head() - law.headMetres(step);
    }
}
