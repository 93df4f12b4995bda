package headrace.operation.limit;

import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.TemperatureDifference;
import java.util.Optional;

/**
 * The limits of a pump set over all that it can reach.
 *
 * @param reach what it can reach
 * @param region the operating region
 * @param share the maker's least stable flow as a share of best-efficiency flow, if stated
 * @param rise the limit of the temperature rise in one passage, if stated
 */
public record PumpLimits(
        ReachableRegion reach, OperatingRegion region, Optional<Ratio> share, Optional<TemperatureDifference> rise)
        implements Traced {
    /** Returns the limits with all that is the maker's to state assumed. */
    public static PumpLimits of(ReachableRegion reach) {
        return new PumpLimits(reach, OperatingRegion.USUAL, Optional.empty(), Optional.empty());
    }

    /** Returns the least flows at a speed. */
    public MinimumFlow minimumFlowAt(Speed speed) {
        return MinimumFlow.of(reach.curveAt(speed), share, rise);
    }

    /** Returns the greatest power within reach. */
    public Overload overload() {
        return Overload.of(reach);
    }

    /** Returns the torque over speed. */
    public TorqueOverSpeed torque() {
        return TorqueOverSpeed.of(reach);
    }

    @Override
    public Notes notes() {
        return overload()
                .notes()
                .and(region.notes())
                .and(minimumFlowAt(reach.set().maximumSpeed()).notes());
    }

    @Override
    public Basis basis() {
        return reach.basis()
                .and(minimumFlowAt(reach.set().maximumSpeed()).basis())
                .with("operating region: " + region);
    }

    @Override
    public String toString() {
        return "limits of " + reach.set().curve().name() + ": " + overload() + "; "
                + minimumFlowAt(reach.set().maximumSpeed());
    }
}
