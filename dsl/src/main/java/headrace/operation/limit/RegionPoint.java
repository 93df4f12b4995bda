package headrace.operation.limit;

import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Ratio;

/**
 * Where a flow lies in the operating region.
 *
 * @param flow the flow
 * @param best the flow of best efficiency at the same speed
 * @param share flow over best-efficiency flow
 * @param zone the part of the region
 * @param notes what was assumed, and which region was left
 * @param basis what it rests on
 */
public record RegionPoint(Flow flow, Flow best, Ratio share, OperatingRegion.Zone zone, Notes notes, Basis basis)
        implements Traced {
    @Override
    public String toString() {
        return flow + ", " + share + " of best-efficiency flow: " + zone;
    }
}
