package headrace.pump;

import headrace.curve.CurvePoint;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Where several pumps and a system meet.
 *
 * @param head the head between the headers, which the system takes
 * @param flow the flow of the system
 * @param branches how each pump runs, in the order in which they were given
 * @param others the other points at which these pumps and the system can meet; those have none listed themselves
 * @param notes closed valves of running pumps, several points, and what the curves have to say
 * @param basis what it rests on
 */
public record ParallelPoint(
        Head head, Flow flow, List<BranchFlow> branches, List<ParallelPoint> others, Notes notes, Basis basis)
        implements Traced {
    /** Keeps the lists from changing. */
    public ParallelPoint {
        branches = List.copyOf(branches);
        others = List.copyOf(others);
    }

    /** Returns what the shafts of the pumps that deliver take together. */
    public Power shaftPower() {
        return branches.stream()
                .flatMap(branch -> branch.point().stream())
                .map(CurvePoint::shaftPower)
                .reduce(Power.ZERO, Power::plus);
    }

    @Override
    public String toString() {
        return flow + " at " + head + ": "
                + branches.stream().map(BranchFlow::toString).collect(Collectors.joining(", "));
    }
}
