package headrace.estimate;

import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.List;

/**
 * A flow that a reading can mean, with its head, and how sure both are if it is the one.
 *
 * @param flow the flow with its spread
 * @param head the head with its spread
 * @param speed the speed: as read, or as found from power and head
 * @param correlation how the errors of flow and head go together, from −1 to 1
 * @param shares what share of the variance of the flow each cause has, the greatest first
 * @param steepness by how many per cent the power (or the head, where no power was read) changes with a per cent of
 *     flow: an error of the reading comes out as one over it
 * @param blind whether the standard uncertainty of the flow is beyond 5 % of best-efficiency flow
 */
public record FlowRoot(
        Spread<Flow> flow,
        Spread<Head> head,
        Speed speed,
        double correlation,
        List<Share> shares,
        double steepness,
        boolean blind) {
    /** Keeps the shares from changing. */
    public FlowRoot {
        shares = List.copyOf(shares);
    }

    /**
     * The share of a cause.
     *
     * @param cause where the error comes from
     * @param flow the standard uncertainty of the flow that it brings
     * @param share its share of the variance
     */
    public record Share(Cause cause, Flow flow, Ratio share) {}

    /** Returns flow and head with their uncertainties. */
    @Override
    public String toString() {
        return flow + " and " + head;
    }
}
