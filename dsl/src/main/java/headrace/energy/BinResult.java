package headrace.energy;

import headrace.control.SteadyState;
import headrace.units.Energy;
import headrace.units.Flow;
import headrace.units.Power;
import java.util.Optional;

/**
 * One bin of the year under one law.
 *
 * @param bin the share of design flow and the hours
 * @param flow the flow
 * @param state where the pump set runs; none at no flow, where it stands still
 * @param standby what is taken from the wire while it stands still
 */
public record BinResult(LoadBin bin, Flow flow, Optional<SteadyState> state, Power standby) {
    /** Returns the power into the pump's shaft. */
    public Power shaftPower() {
        return state.map(at -> at.point().shaftPower()).orElse(Power.ZERO);
    }

    /** Returns the power from the wire. */
    public Power wirePower() {
        return state.map(at -> at.point().wirePower()).orElse(standby);
    }

    /** Returns what the liquid takes up in the hours of the bin. */
    public Energy hydraulicEnergy() {
        return over(state.map(at -> at.point().hydraulicPower()).orElse(Power.ZERO));
    }

    /** Returns what the shaft takes in the hours of the bin. */
    public Energy shaftEnergy() {
        return over(shaftPower());
    }

    /** Returns what the wire gives in the hours of the bin. */
    public Energy wireEnergy() {
        return over(wirePower());
    }

    private Energy over(Power power) {
        return Energy.joules(power.watts() * bin.hours().seconds());
    }
}
