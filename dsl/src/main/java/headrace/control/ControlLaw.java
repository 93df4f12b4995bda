package headrace.control;

import headrace.circuit.Closing;
import headrace.curve.Duty;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Numbers;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

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
     * Returns the head that it asks for at a flow.
     *
     * @throws Refusal with {@code NO_HEAD_OF_FLOW} if it asks for a speed, or for a head that depends on more than flow
     */
    default Head headAt(Flow flow) {
        return requiredHead(flow)
                .orElseThrow(() -> new Refusal(
                        ControlProblem.NO_HEAD_OF_FLOW,
                        "Asked for the head of the law '" + name() + "' at " + flow,
                        "It does not make a head of flow alone",
                        "Ask for its steady state with a pump set"));
    }

    /** Returns whether it looks at more than flow and head at the pump, so that it can be used with a circuit only. */
    default boolean needsCircuit() {
        return false;
    }

    /**
     * Returns the equation with which it closes a circuit around a pump set, before any limit.
     *
     * @param set the pump set, which a law that sets a speed needs for its curve
     */
    default Closing closing(PumpSet set) {
        return Closing.ofFlow(q ->
                metres(demand(new LoopState(Flow.cubicMetresPerSecond(Math.max(0, q))), set), set, q));
    }

    /**
     * Returns the head in m that a demand makes of a pump set.
     *
     * @param q the flow in m³/s
     */
    static double metres(Demand demand, PumpSet set, double q) {
        if (demand instanceof Demand.OfHead head) {
            return head.head().metres();
        }
        Speed speed = demand instanceof Demand.OfSpeed of ? of.speed() : set.ratedSpeed();
        return set.curve()
                .headMetres(Math.max(0, q), speed.over(set.curve().speed()).value());
    }

    /** Returns whether what it asks for changes with the clock. */
    default boolean followsClock() {
        return false;
    }

    /** Returns this law as it is at a time on the clock of the place. */
    default ControlLaw at(LocalDateTime time) {
        return this;
    }

    /** Returns the limits that are applied after it, beside those of the pump set. */
    default LawLimits limits() {
        return LawLimits.NONE;
    }

    /** Returns what is to be said of it wherever it is used. */
    default Notes notes() {
        return Notes.NONE;
    }

    /** Returns this law with limits after it. */
    default ControlLaw within(LawLimits limits) {
        return new LimitedLaw(this, limits);
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

    /**
     * Returns a head that rises with a power of flow from the minimum head at no flow to the design head.
     *
     * @param exponent the power, 1 to 2.2
     * @throws Refusal with {@code IMPOSSIBLE_LAW} if the exponent is outside that, or as {@link #quadratic}
     */
    static ControlLaw generalExponent(Duty design, Ratio minimumHead, double exponent) {
        if (!(exponent >= 1 && exponent <= 2.2)) {
            throw new Refusal(
                    ControlProblem.IMPOSSIBLE_LAW,
                    "Asked for a control law that rises with flow to the power of " + Numbers.print(exponent),
                    "The power goes from 1, a straight line, to 2.2",
                    "Choose one in between, or write another law as a block of your own");
        }
        return new HeadLaw(
                "exponent " + Numbers.print(exponent), design, design.head().times(minimumHead), exponent);
    }

    /**
     * Returns a law of the user's own.
     *
     * @param name what it is called
     * @param design the duty it is made for, over whose range of flow it is tried before it is taken
     * @param rule from the state of the loop to a {@link Head} (a length is taken as one) or a
     *     {@link headrace.units.Speed}, at every flow from none to 120 % of design flow
     * @throws Refusal with {@code WRONG_ANSWER_OF_LAW} where it answers with anything else
     */
    static ControlLaw of(String name, Duty design, Function<LoopState, ?> rule) {
        return UserLaw.of(name, Optional.of(design), rule);
    }

    /**
     * Returns a law of the user's own that looks at branches of a circuit.
     *
     * @param name what it is called
     * @param design the duty it is made for, if it is made for one
     * @param observed the names of the branches that it sees, and {@code clock} where it sees the time
     * @param rule from the state of the loop to a head or a speed
     */
    static ControlLaw of(String name, Optional<Duty> design, List<String> observed, Function<LoopState, ?> rule) {
        return UserLaw.seeing(name, design, observed, rule);
    }

    /**
     * Returns the least head at which every sensor out in the circuit sees what it wants.
     *
     * @param design the duty it is made for
     * @param wanted the head that is wanted across each named branch
     */
    static ControlLaw remoteSensors(Duty design, Map<String, Head> wanted) {
        return new RemoteSensors(design, wanted);
    }

    /**
     * Returns the least head at which every demand is met and no valve stands further open than a stroke.
     *
     * @param design the duty it is made for
     * @param greatestOpening the stroke, above 0 and up to 1
     */
    static ControlLaw neediestValve(Duty design, Ratio greatestOpening) {
        return new NeediestValve(design, greatestOpening);
    }

    /** Returns trim and respond with the usual numbers, above a minimum head. */
    static TrimAndRespond trimAndRespond(Duty design, Ratio minimumHead) {
        return TrimAndRespond.usual(design, minimumHead);
    }

    /** Returns a law of the user's own that is made for no duty, and is tried only where it is used. */
    static ControlLaw of(String name, Function<LoopState, ?> rule) {
        return UserLaw.of(name, Optional.empty(), rule);
    }
}
