package headrace.energy;

import headrace.control.ControlLaw;
import headrace.control.SteadyState;
import headrace.curve.Duty;
import headrace.operation.OperatingPoint;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.EnergyPrice;
import headrace.units.Flow;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Control laws side by side, over one year with one pump set.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Loads in shares of design flow; energy and power at the wire include every loss of motor and drive.
 *   <dt>Limits
 *   <dd>Steady state in each bin; one price at every hour, no demand charge. The same flow in each bin for every law: a
 *       law that falls short of its head (noted) would in truth give less flow.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code DESIGN_MISSING}, and as {@link SteadyState#of} and {@link OperatingPoint#at}.
 *   <dt>Source
 *   <dd>Savings are differences of two results of this program, their baseline named beside each.
 * </dl>
 */
public final class StrategyComparison implements Traced {
    private static final double ROUNDING = 1e-9;

    private final PumpSet set;
    private final Duty design;
    private final LawYear.Year year;
    private final OperatingPoint designPoint;
    private final List<LawYear> laws;
    private final LawYear constantSpeed;
    private final LawYear fixedSpeed;

    private StrategyComparison(PumpSet set, Duty design, LawYear.Year year, List<ControlLaw> laws) {
        this.set = set;
        this.design = design;
        this.year = year;
        this.designPoint = OperatingPoint.at(set, design);
        this.constantSpeed = LawYear.of(ControlLaw.constantSpeed(), set, design, year);
        this.fixedSpeed = LawYear.of(ControlLaw.fixedSpeed(design), set, design, year);
        this.laws = laws.stream().map(law -> LawYear.of(law, set, design, year)).toList();
    }

    /**
     * Returns the comparison of laws that are made for one design point.
     *
     * @param set the pump set
     * @param profile the year, in shares of the flow of the design point
     * @param price the price of energy; one below 0 is computed and noted
     * @param laws the laws, one at least made for a design point
     */
    public static StrategyComparison of(PumpSet set, LoadProfile profile, EnergyPrice price, List<ControlLaw> laws) {
        Set<Duty> designs =
                laws.stream().map(ControlLaw::design).flatMap(Optional::stream).collect(Collectors.toSet());
        if (designs.size() != 1) {
            throw new Refusal(
                    EnergyProblem.DESIGN_MISSING,
                    "Asked to compare " + laws.size() + " control laws with " + designs.size() + " design points",
                    "A load profile is in shares of one design flow, so the laws must be made for one design point",
                    "Give every law the same design, and at least one law that has one, such as a fixed speed");
        }
        return new StrategyComparison(set, designs.iterator().next(), new LawYear.Year(profile, price), laws);
    }

    /** Returns the pump set. */
    public PumpSet set() {
        return set;
    }

    /** Returns the design point that the laws are made for. */
    public Duty design() {
        return design;
    }

    /** Returns the year. */
    public LoadProfile profile() {
        return year.profile();
    }

    /** Returns the price of energy. */
    public EnergyPrice price() {
        return year.price();
    }

    /** Returns where the pump set runs at the design point; its wire power is the design wattage. */
    public OperatingPoint designPoint() {
        return designPoint;
    }

    /** Returns the years under the laws, in the order in which they were given. */
    public List<LawYear> laws() {
        return laws;
    }

    /** Returns what each law saves in a year, against throttling at constant speed and against fixed design speed. */
    public List<YearSaving> yearSavings() {
        List<YearSaving> savings = new ArrayList<>();
        for (LawYear law : laws) {
            savings.add(new YearSaving(Baseline.CONSTANT_SPEED, constantSpeed, law));
            savings.add(new YearSaving(Baseline.FIXED_DESIGN_SPEED, fixedSpeed, law));
        }
        return savings;
    }

    /**
     * Returns what each law saves at a share of design flow, against every baseline.
     *
     * @param fraction the flow as a share of design flow, above 0
     */
    public List<PowerSaving> savingsAt(Ratio fraction) {
        Flow flow = design.flow().times(fraction);
        SteadyState throttled = SteadyState.of(constantSpeed.law(), set, flow);
        SteadyState fixed = SteadyState.of(fixedSpeed.law(), set, flow);
        List<PowerSaving> savings = new ArrayList<>();
        for (LawYear each : laws) {
            SteadyState after = SteadyState.of(each.law(), set, flow);
            savings.add(saving(Baseline.CONSTANT_SPEED, throttled.point(), throttled, after));
            savings.add(saving(Baseline.FIXED_DESIGN_SPEED, fixed.point(), fixed, after));
            savings.add(saving(Baseline.DESIGN_POWER, designPoint, designPoint, after));
        }
        return savings;
    }

    private static PowerSaving saving(Baseline baseline, OperatingPoint before, Traced source, SteadyState after) {
        return new PowerSaving(
                after.law(),
                baseline,
                before,
                after.point(),
                source.notes().and(after.notes()),
                source.basis().and(after.basis()).with("saving against: " + baseline.words()));
    }

    @Override
    public Notes notes() {
        Notes all = designPoint.notes().and(shortOfDesign()).and(paidForTaking());
        all = all.and(constantSpeed.notes()).and(fixedSpeed.notes());
        for (LawYear law : laws) {
            all = all.and(law.notes());
        }
        return all;
    }

    @Override
    public Basis basis() {
        Basis all = designPoint.basis().with("design point: " + design);
        all = all.and(constantSpeed.basis()).and(fixedSpeed.basis());
        for (LawYear law : laws) {
            all = all.and(law.basis());
        }
        return all;
    }

    @Override
    public String toString() {
        return set.curve().name() + " for " + design + ", " + laws.size() + " laws over " + year.profile();
    }

    private Notes paidForTaking() {
        return price().perKilowattHour().amount() >= 0
                ? Notes.NONE
                : Notes.NONE.with(
                        EnergyProblem.NEGATIVE_PRICE,
                        "At " + price() + " the law that takes most costs least, and every saving of energy is a loss");
    }

    private Notes shortOfDesign() {
        OperatingPoint full = OperatingPoint.onMains(set, design.flow());
        if (full.head().metres() >= design.head().metres() * (1 - ROUNDING)) {
            return Notes.NONE;
        }
        return Notes.NONE.with(
                EnergyProblem.FULL_SPEED_SHORT_OF_DESIGN,
                "At rated speed on the mains the pump gives " + full.head() + " at " + design.flow()
                        + ", less than the design head of " + design.head() + ", so throttling it serves less");
    }
}
