package headrace.energy;

import headrace.control.ControlLaw;
import headrace.control.Demand;
import headrace.control.LoopState;
import headrace.control.SteadyState;
import headrace.curve.Duty;
import headrace.problem.GatheredNotes;
import headrace.problem.Notes;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Energy;
import headrace.units.EnergyPrice;
import headrace.units.Flow;
import headrace.units.Money;
import headrace.units.Power;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * A year under one control law, bin by bin.
 *
 * @param law the law
 * @param bins the bins, the least flow first
 * @param cost what the energy from the wire costs
 * @param notes what was touched in any bin
 * @param basis what it rests on
 */
public record LawYear(ControlLaw law, List<BinResult> bins, Money cost, Notes notes, Basis basis) implements Traced {
    /** Keeps the bins from changing. */
    public LawYear {
        bins = List.copyOf(bins);
    }

    static LawYear of(ControlLaw law, PumpSet set, Duty design, Year year) {
        List<BinResult> bins = new ArrayList<>();
        GatheredNotes notes = new GatheredNotes();
        notes.add(year.profile().notes());
        Basis last = Basis.NONE;
        Basis basis =
                year.profile().basis().with("load: " + year.profile().name() + ", flow as a share of " + design.flow());
        Power standby = standby(law, set);
        for (LoadBin bin : year.profile().bins()) {
            Work.poll();
            Flow flow = design.flow().times(bin.flowFraction());
            Optional<SteadyState> state =
                    flow.si() > 0 ? Optional.of(SteadyState.of(law, set, flow)) : Optional.empty();
            bins.add(new BinResult(bin, flow, state, standby));
            notes.add(state.map(SteadyState::notes).orElseGet(() -> off(bin, standby)));
            Basis here = state.map(SteadyState::basis).orElse(last);
            basis = here.equals(last) ? basis : basis.and(here);
            last = here;
        }
        Money cost = year.price().of(sum(bins, BinResult::wireEnergy));
        return new LawYear(law, bins, cost, notes.notes(), basis.with("energy price: " + year.price()));
    }

    /**
     * A load profile and what a kilowatt-hour costs over it.
     *
     * @param profile the load profile
     * @param price the price, the same at every hour
     */
    record Year(LoadProfile profile, EnergyPrice price) {}

    /** Returns what the wire gives in the year. */
    public Energy wireEnergy() {
        return sum(bins, BinResult::wireEnergy);
    }

    /** Returns what the shaft takes in the year. */
    public Energy shaftEnergy() {
        return sum(bins, BinResult::shaftEnergy);
    }

    /** Returns what the liquid takes up in the year. */
    public Energy hydraulicEnergy() {
        return sum(bins, BinResult::hydraulicEnergy);
    }

    @Override
    public String toString() {
        return law.name() + ": " + wireEnergy() + ", " + cost;
    }

    private static Energy sum(List<BinResult> bins, Function<BinResult, Energy> part) {
        return bins.stream().map(part).reduce(Energy.ZERO, Energy::plus);
    }

    /** A motor on the mains is switched off without a drive that waits. */
    private static Power standby(ControlLaw law, PumpSet set) {
        boolean mains = law.demand(new LoopState(Flow.ZERO), set) instanceof Demand.FullSpeedOnMains;
        return mains ? Power.ZERO : set.driveTrain().standby();
    }

    private static Notes off(LoadBin bin, Power standby) {
        String taken = standby.si() > 0 ? standby + " of standby power" : "nothing";
        return Notes.NONE.with(
                EnergyProblem.PUMP_OFF,
                "In the " + bin.hours() + " at no flow the pump stands still and takes " + taken
                        + "; a pump that is left" + " running takes more");
    }
}
