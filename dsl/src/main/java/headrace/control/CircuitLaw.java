package headrace.control;

import headrace.curve.Duty;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import java.util.Optional;

/** A law that looks out into a circuit, so that it asks for nothing where there is none. */
interface CircuitLaw extends ControlLaw {
    /** Returns the duty it is made for. */
    Duty forDuty();

    @Override
    default Optional<Duty> design() {
        return Optional.of(forDuty());
    }

    @Override
    default boolean needsCircuit() {
        return true;
    }

    @Override
    default Demand demand(LoopState state, PumpSet set) {
        throw new Refusal(
                ControlProblem.LAW_NEEDS_CIRCUIT,
                "Asked for '" + name() + "' without a circuit",
                "It looks at branches, so that it can be used with a circuit and its demands only",
                "Give the circuit, or take a law of flow and head at the pump");
    }
}
