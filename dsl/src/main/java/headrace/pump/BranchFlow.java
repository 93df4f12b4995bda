package headrace.pump;

import headrace.curve.CurvePoint;
import headrace.units.Flow;
import java.util.Optional;

/**
 * How one of several pumps runs: its check valve, and its point if it delivers.
 *
 * @param branch the pump on its branch
 * @param valve whether its check valve is open
 * @param point where the pump runs; none behind a closed valve
 */
public record BranchFlow(PumpBranch branch, CheckValve valve, Optional<CurvePoint> point) {
    /** The state of a check valve. */
    public enum CheckValve {
        /** The pump delivers. */
        OPEN,
        /** The head between the headers holds the valve shut: no flow, neither way. */
        CLOSED
    }

    static BranchFlow of(PumpBranch branch, double q) {
        return q > 0
                ? new BranchFlow(
                        branch, CheckValve.OPEN, Optional.of(branch.curve().at(Flow.cubicMetresPerSecond(q))))
                : new BranchFlow(branch, CheckValve.CLOSED, Optional.empty());
    }

    /** Returns the flow, exactly 0 behind a closed valve. */
    public Flow flow() {
        return point.map(CurvePoint::flow).orElse(Flow.ZERO);
    }

    /** Returns whether the pump turns against a closed valve. */
    public boolean deadHeaded() {
        return branch.running() && valve == CheckValve.CLOSED;
    }

    @Override
    public String toString() {
        if (valve == CheckValve.OPEN) {
            return branch.name() + " " + flow();
        }
        return branch.name() + (branch.running() ? " against its closed check valve" : " standing still");
    }
}
