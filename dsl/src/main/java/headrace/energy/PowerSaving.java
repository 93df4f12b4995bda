package headrace.energy;

import headrace.control.ControlLaw;
import headrace.operation.OperatingPoint;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Power;
import headrace.units.Ratio;

/**
 * What a law saves at one flow against one baseline, at the shaft and at the wire.
 *
 * @param law the law
 * @param baseline what it is compared with
 * @param before the point under the baseline
 * @param after the point under the law
 * @param notes what was touched at either point
 * @param basis what both rest on
 */
public record PowerSaving(
        ControlLaw law, Baseline baseline, OperatingPoint before, OperatingPoint after, Notes notes, Basis basis)
        implements Traced {
    /** Returns the shaft power saved; below 0 if the law takes more. */
    public Power shaft() {
        return before.shaftPower().minus(after.shaftPower());
    }

    /** Returns the wire power saved; below 0 if the law takes more. */
    public Power wire() {
        return before.wirePower().minus(after.wirePower());
    }

    /** Returns the shaft power saved as a share of the baseline's. */
    public Ratio shaftShare() {
        return shaft().over(before.shaftPower());
    }

    /** Returns the wire power saved as a share of the baseline's. */
    public Ratio wireShare() {
        return wire().over(before.wirePower());
    }

    /** Returns the saving with its basis, in one line. */
    @Override
    public String toString() {
        return law.name() + " against " + baseline.words() + ": " + shaft() + " (" + shaftShare() + ") at the shaft, "
                + wire() + " (" + wireShare() + ") at the wire";
    }
}
