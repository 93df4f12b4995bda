package headrace.circuit;

import headrace.circuit.solve.LinkState;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Ratio;
import java.util.Optional;

/**
 * How one branch of a circuit stands.
 *
 * @param branch the branch
 * @param demand what is asked of it, of a terminal
 * @param flow what flows through it, below 0 against its direction
 * @param available the head across it
 * @param opening the stroke of its control valve from 0 to 1, if it has one
 * @param missing the head that it would need beside what is available to get its demand; 0 if it gets it
 * @param state where on its law it stands
 */
public record BranchState(
        Branch branch,
        Optional<Flow> demand,
        Flow flow,
        Head available,
        Optional<Ratio> opening,
        Head missing,
        LinkState state) {
    /** Returns its name. */
    public String name() {
        return branch.name();
    }

    /** Returns what it gets over what is asked of it; 1 where nothing is asked. */
    public Ratio delivered() {
        double asked = demand.map(Flow::si).orElse(0.0);
        return Ratio.of(asked > 0 ? flow.si() / asked : 1);
    }

    /** Returns the flow that it does not get. */
    public Flow shortfall() {
        return Flow.cubicMetresPerSecond(Math.max(0, demand.map(Flow::si).orElse(flow.si()) - flow.si()));
    }

    /** Returns whether it gets less than is asked of it. */
    public boolean isStarved() {
        return demand.isPresent()
                && state != LinkState.DELIVERING
                && shortfall().si() > 0;
    }
}
