package headrace.energy.year;

import headrace.energy.Baseline;
import headrace.units.Energy;
import headrace.units.EnergyPrice;
import headrace.units.Money;
import headrace.units.Ratio;

/**
 * What a law saves in a year of a circuit against one baseline, the same demands asked of both.
 *
 * @param baseline what it is compared with
 * @param before the year under the baseline
 * @param after the year under the law
 * @param ofMargin the part of the energy at the wire that the margin in the specified head wasted: what is saved by the
 *     design speed for the head that the circuit really needs
 */
public record LawSaving(Baseline baseline, LawHours before, LawHours after, Energy ofMargin) {
    /** Returns the energy saved at the wire; below 0 if the law takes more. */
    public Energy atWire() {
        return before.energy().wire().minus(after.energy().wire());
    }

    /** Returns the energy saved at the shaft. */
    public Energy atShaft() {
        return before.energy().shaft().minus(after.energy().shaft());
    }

    /** Returns the energy saved at the wire as a share of the baseline's. */
    public Ratio share() {
        return atWire().over(before.energy().wire());
    }

    /** Returns the part of the energy at the wire that the law itself saves. */
    public Energy ofLaw() {
        return atWire().minus(ofMargin);
    }

    /** Returns what the energy at the wire is worth. */
    public Money worth(EnergyPrice price) {
        return price.of(atWire());
    }

    @Override
    public String toString() {
        String saved =
                after.law().name() + " against " + baseline.words() + ": " + atWire() + " at the wire (" + share();
        return ofLaw().si() < 0
                ? saved + "), less than the " + ofMargin + " that the margin in the specified head alone wasted"
                : saved + "), " + ofMargin + " of it from the margin in the specified head";
    }
}
