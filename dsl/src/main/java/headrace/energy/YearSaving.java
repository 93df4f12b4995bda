package headrace.energy;

import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Energy;
import headrace.units.Money;
import headrace.units.Ratio;

/**
 * What a law saves in a year against one baseline, at the wire.
 *
 * @param baseline what it is compared with
 * @param before the year under the baseline
 * @param after the year under the law
 */
public record YearSaving(Baseline baseline, LawYear before, LawYear after) implements Traced {
    /** Returns the energy saved; below 0 if the law takes more. */
    public Energy energy() {
        return before.wireEnergy().minus(after.wireEnergy());
    }

    /** Returns the cost saved. */
    public Money cost() {
        return before.cost().minus(after.cost());
    }

    /** Returns the energy saved as a share of the baseline's. */
    public Ratio share() {
        return energy().over(before.wireEnergy());
    }

    @Override
    public Notes notes() {
        return before.notes().and(after.notes());
    }

    @Override
    public Basis basis() {
        return before.basis().and(after.basis()).with("saving against: " + baseline.words());
    }

    /** Returns the saving with its basis, in one line. */
    @Override
    public String toString() {
        return after.law().name() + " against " + baseline.words() + ": " + energy() + " (" + share() + "), " + cost();
    }
}
