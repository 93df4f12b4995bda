package headrace.pump;

import headrace.curve.CurvePoint;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import java.util.List;

/**
 * Where pumps in series and a system meet.
 *
 * @param flow the flow through all of them
 * @param head the head of all together
 * @param points where each pump runs, in the order in which they were given
 * @param others the other flows at which they and the system can meet
 * @param notes several points, and what the curves have to say
 * @param basis what it rests on
 */
public record SeriesPoint(Flow flow, Head head, List<CurvePoint> points, List<Flow> others, Notes notes, Basis basis)
        implements Traced {
    /** Keeps the lists from changing. */
    public SeriesPoint {
        points = List.copyOf(points);
        others = List.copyOf(others);
    }

    /** Returns what the shafts of all pumps take together. */
    public Power shaftPower() {
        return points.stream().map(CurvePoint::shaftPower).reduce(Power.ZERO, Power::plus);
    }

    @Override
    public String toString() {
        return flow + " at " + head + ", " + points.size() + " pumps in series";
    }
}
