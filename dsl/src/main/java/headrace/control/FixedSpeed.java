package headrace.control;

import headrace.circuit.Closing;
import headrace.curve.Duty;
import headrace.curve.PumpCurve;
import headrace.pump.PumpSet;
import java.util.Optional;
import java.util.Set;

/**
 * The one speed at which the pump meets the design point; at less flow it rides its curve at that speed.
 *
 * @param forDuty the design point
 */
record FixedSpeed(Duty forDuty) implements ControlLaw {
    @Override
    public String name() {
        return "fixed design speed";
    }

    @Override
    public String statement() {
        return "the drive keeps the speed at which the pump delivers " + forDuty
                + ", the pump rides its curve and valves" + " throttle the rest";
    }

    @Override
    public Set<Observed> observes() {
        return Set.of();
    }

    @Override
    public Optional<Duty> design() {
        return Optional.of(forDuty);
    }

    @Override
    public Demand demand(LoopState state, PumpSet set) {
        return new Demand.OfSpeed(set.curve().pointFor(forDuty).speed());
    }

    @Override
    public Closing closing(PumpSet set) {
        PumpCurve curve = set.curve();
        double speed = curve.pointFor(forDuty).speed().over(curve.speed()).value();
        return Closing.ofFlow(q -> curve.headMetres(Math.max(0, q), speed));
    }

    @Override
    public String toString() {
        return name();
    }
}
