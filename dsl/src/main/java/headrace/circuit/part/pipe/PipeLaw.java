package headrace.circuit.part.pipe;

import headrace.circuit.part.LinkLaw;

/** Darcy and Weisbach's law of one pipe and its fittings in one liquid, on bare doubles. */
final class PipeLaw implements LinkLaw {
    private final Friction friction;
    private final double reynoldsPerFlow;
    private final double perFactor;
    private final double square;
    private final double linear;
    private final double laminar;

    /**
     * Sets the law up.
     *
     * @param friction the friction of the pipe
     * @param reynoldsPerFlow Reynolds number for each m³/s
     * @param perFactor head in m for each (m³/s)² and friction factor of 1, equivalent lengths included
     * @param fittings head of the fittings in m: for each (m³/s)², and for each m³/s
     */
    PipeLaw(Friction friction, double reynoldsPerFlow, double perFactor, double... fittings) {
        this.friction = friction;
        this.reynoldsPerFlow = reynoldsPerFlow;
        this.perFactor = perFactor;
        this.square = fittings[0];
        // 64/Re of laminar flow makes the head go with flow itself.
        this.linear = fittings[1];
        this.laminar = perFactor * 64 / reynoldsPerFlow;
    }

    @Override
    public double headMetres(double q) {
        double size = Math.abs(q);
        double reynolds = reynoldsPerFlow * size;
        double pipe = reynolds <= Friction.LAMINAR ? laminar : perFactor * friction.factor(reynolds) * size;
        return q * (pipe + linear + square * size);
    }

    @Override
    public double slope(double q) {
        double size = Math.abs(q);
        double reynolds = reynoldsPerFlow * size;
        double fittings = linear + 2 * square * size;
        if (reynolds <= Friction.LAMINAR) {
            return laminar + fittings;
        }
        double factor = friction.factor(reynolds);
        return perFactor * size * (2 * factor + reynolds * friction.slope(reynolds, factor)) + fittings;
    }

    /** Of turbulent flow the root of the friction factor is remembered. */
    @Override
    public void evaluate(double q, double[] into, int at) {
        double size = Math.abs(q);
        double reynolds = reynoldsPerFlow * size;
        if (reynolds <= Friction.LAMINAR) {
            into[at] = q * (laminar + linear + square * size);
            into[at + 1] = laminar + linear + 2 * square * size;
            return;
        }
        double factor;
        double change;
        if (reynolds >= Friction.TURBULENT) {
            double root = friction.root(reynolds, into[at + 2]);
            into[at + 2] = root;
            factor = 1 / (root * root);
            change = friction.relativeSlope(reynolds, root);
        } else {
            factor = friction.factor(reynolds);
            change = reynolds * friction.slope(reynolds, factor);
        }
        into[at] = q * (perFactor * factor * size + linear + square * size);
        into[at + 1] = perFactor * size * (2 * factor + change) + linear + 2 * square * size;
    }
}
