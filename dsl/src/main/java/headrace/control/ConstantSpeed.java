package headrace.control;

import headrace.curve.Duty;
import headrace.pump.PumpSet;
import java.util.Optional;
import java.util.Set;

/**
 * Full speed at every flow: valves throttle what the pump gives too much.
 *
 * @param throughDrive whether a drive is in the line and loses its share
 */
record ConstantSpeed(boolean throughDrive) implements ControlLaw {
    @Override
    public String name() {
        return throughDrive ? "constant speed through the drive" : "constant speed";
    }

    @Override
    public String statement() {
        return "the pump rides its curve at the rated speed of the motor and valves throttle the rest"
                + (throughDrive ? "; the drive is in the line" : "; the motor is on the mains, without a drive");
    }

    @Override
    public Set<Observed> observes() {
        return Set.of();
    }

    @Override
    public Optional<Duty> design() {
        return Optional.empty();
    }

    @Override
    public Demand demand(LoopState state, PumpSet set) {
        return throughDrive ? new Demand.OfSpeed(set.ratedSpeed()) : new Demand.FullSpeedOnMains();
    }

    @Override
    public String toString() {
        return name();
    }
}
