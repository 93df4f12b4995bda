package headrace.control;

import headrace.curve.Duty;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Ratio;
import java.util.Optional;
import java.util.Set;

/**
 * A control law: from the state of the loop to the head or the speed that it asks of a pump set.
 *
 * <dl>
 *   <dt>Units
 *   <dd>A minimum head is given as a share of the design head: the head that is kept at no flow.
 *   <dt>Limits
 *   <dd>Steady state. A law knows nothing of the limits of speed; {@link SteadyState} applies them.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_LAW}.
 *   <dt>Source
 *   <dd>Textbook knowledge.
 * </dl>
 */
public interface ControlLaw {
    /** Returns its name, which tells it from others in a table, such as {@code quadratic, 35 % minimum head}. */
    String name();

    /** Returns what it does in a sentence, with its formula. */
    String statement();

    /** Returns what it has to observe. */
    Set<Observed> observes();

    /** Returns the flow and head for which it is made, if it is made for one. */
    Optional<Duty> design();

    /** Returns what it asks of a pump set in a state of the loop. */
    Demand demand(LoopState state, PumpSet set);

    /** Returns the head that it asks for at a flow, if it asks for a head that depends on flow alone. */
    default Optional<Head> requiredHead(Flow flow) {
        return Optional.empty();
    }

    /**
     * Returns full speed, throttled: the pump rides its curve, its motor on the mains without the losses of a drive.
     */
    static ControlLaw constantSpeed() {
        return new ConstantSpeed(false);
    }

    /** Returns full speed, throttled, with the losses of the drive at full speed. */
    static ControlLaw constantSpeedThroughDrive() {
        return new ConstantSpeed(true);
    }

    /** Returns the speed at which the pump meets the design point, kept and throttled at less flow. */
    static ControlLaw fixedSpeed(Duty design) {
        return new FixedSpeed(design);
    }

    /** Returns the design head at every flow. */
    static ControlLaw constantHead(Duty design) {
        return HeadLaw.constant(design);
    }

    /**
     * Returns a head that rises in a straight line from the minimum head at no flow to the design head.
     *
     * @throws Refusal with {@code IMPOSSIBLE_LAW} if the minimum head is below 0 or above 100 % of the design head
     */
    static ControlLaw linear(Duty design, Ratio minimumHead) {
        return new HeadLaw("linear", design, design.head().times(minimumHead), 1);
    }

    /**
     * Returns a head that rises with the square of flow from the minimum head at no flow to the design head.
     *
     * @throws Refusal with {@code IMPOSSIBLE_LAW} if the minimum head is below 0 or above 100 % of the design head
     */
    static ControlLaw quadratic(Duty design, Ratio minimumHead) {
        return new HeadLaw("quadratic", design, design.head().times(minimumHead), 2);
    }
}
