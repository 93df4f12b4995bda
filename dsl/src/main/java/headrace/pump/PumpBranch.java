package headrace.pump;

import headrace.curve.Duty;
import headrace.curve.PumpCurve;
import headrace.problem.Refusal;
import headrace.units.Head;

/**
 * A pump on its own branch between two headers, behind its own check valve: what it adds to the head between the
 * headers is its head less what the branch takes, {@code h = H(Q) − h_c − r·Q²}.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Heads in metres of the liquid; the loss of the branch in m for each (m³/s)².
 *   <dt>Limits
 *   <dd>A check valve that holds tight, and takes its cracking head at every flow while it is open. The pump turns at
 *       the speed of its curve or stands still.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_BRANCH}.
 *   <dt>Source
 *   <dd>Textbook knowledge; the constant cracking head is an assumption of our own.
 * </dl>
 *
 * @param name what the pump is called in the plant
 * @param curve its curve at the speed at which it runs
 * @param crackingHead the head that opens the check valve, 0 or more
 * @param lossMetresPerSquaredFlow {@code r}, 0 or more
 * @param running whether the pump turns
 */
public record PumpBranch(
        String name, PumpCurve curve, Head crackingHead, double lossMetresPerSquaredFlow, boolean running) {
    /** Refuses a branch that would add head. */
    public PumpBranch {
        boolean possible = crackingHead.si() >= 0
                && lossMetresPerSquaredFlow >= 0
                && lossMetresPerSquaredFlow < Double.POSITIVE_INFINITY;
        if (name.isBlank() || !possible) {
            throw new Refusal(
                    PumpProblem.IMPOSSIBLE_BRANCH,
                    "Asked for a pump branch '" + name + "' with a cracking head of " + crackingHead + " and a loss of "
                            + lossMetresPerSquaredFlow + " m for each (m³/s)²",
                    "A branch has a name, and takes head: both values are 0 or more",
                    "Check the signs");
        }
    }

    /** Returns the branch of a running pump that is called by the name of its curve and takes no head. */
    public static PumpBranch of(PumpCurve curve) {
        return new PumpBranch(curve.name(), curve, Head.ZERO, 0, true);
    }

    /** Returns this branch under another name. */
    public PumpBranch named(String other) {
        return new PumpBranch(other, curve, crackingHead, lossMetresPerSquaredFlow, running);
    }

    /** Returns this branch with a check valve that a head opens. */
    public PumpBranch withCheckValve(Head cracking) {
        return new PumpBranch(name, curve, cracking, lossMetresPerSquaredFlow, running);
    }

    /**
     * Returns this branch with the loss of its pipes and open valves, which goes with the square of the flow.
     *
     * @param atFlow a flow above 0 and the head lost at it
     */
    public PumpBranch withLoss(Duty atFlow) {
        double q = atFlow.flow().si();
        return new PumpBranch(name, curve, crackingHead, atFlow.head().metres() / (q * q), running);
    }

    /** Returns this branch with its pump standing still. */
    public PumpBranch stopped() {
        return new PumpBranch(name, curve, crackingHead, lossMetresPerSquaredFlow, false);
    }

    /** Returns this branch with its pump moved to another curve, such as another speed. */
    public PumpBranch with(PumpCurve other) {
        return new PumpBranch(name, other, crackingHead, lossMetresPerSquaredFlow, running);
    }

    /** Returns what the branch adds to the head between the headers in m, at a flow in m³/s. Checks no range. */
    public double headerMetres(double q) {
        return curve.headMetres(q, 1) - crackingHead.si() - lossMetresPerSquaredFlow * q * q;
    }

    /** Returns whether its curve begins at no flow, so that its shut-off head is known. */
    boolean knowsShutOff() {
        return curve.extendedLowestFlow().si() <= 0;
    }

    @Override
    public String toString() {
        return name + (running ? " at " + curve.speed() : ", standing still");
    }
}
