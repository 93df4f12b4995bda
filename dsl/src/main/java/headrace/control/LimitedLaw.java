package headrace.control;

import headrace.circuit.Closing;
import headrace.curve.Duty;
import headrace.problem.Notes;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Head;
import java.time.LocalDateTime;
import java.util.Optional;
import java.util.Set;

/**
 * A law with limits of its own after it.
 *
 * @param law the law
 * @param limits the limits
 */
record LimitedLaw(ControlLaw law, LawLimits limits) implements ControlLaw {
    @Override
    public String name() {
        return law.name() + ", " + limits;
    }

    @Override
    public String statement() {
        return law.statement() + "; then " + limits;
    }

    @Override
    public Set<Observed> observes() {
        return law.observes();
    }

    @Override
    public Optional<Duty> design() {
        return law.design();
    }

    @Override
    public Demand demand(LoopState state, PumpSet set) {
        return law.demand(state, set);
    }

    @Override
    public Optional<Head> requiredHead(Flow flow) {
        return law.requiredHead(limits.pumped(flow));
    }

    @Override
    public boolean needsCircuit() {
        return law.needsCircuit();
    }

    @Override
    public boolean followsClock() {
        return law.followsClock();
    }

    @Override
    public ControlLaw at(LocalDateTime time) {
        return new LimitedLaw(law.at(time), limits);
    }

    @Override
    public Closing closing(PumpSet set) {
        return law.closing(set);
    }

    @Override
    public Notes notes() {
        return law.notes();
    }

    @Override
    public String toString() {
        return name();
    }
}
