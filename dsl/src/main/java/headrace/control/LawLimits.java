package headrace.control;

import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Power;
import headrace.units.Quantity;
import headrace.units.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Limits that are applied after a control law has spoken, narrower than those of the pump set.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Power is wire power, everything counted.
 *   <dt>Limits
 *   <dd>A least flow is what the pump keeps moving, so a bypass takes what the circuit does not; a greatest flow is
 *       where the pump stops serving more.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_LAW} for a limit of 0 or below, or a least above its greatest.
 *   <dt>Source
 *   <dd>Common practice, no source.
 * </dl>
 *
 * @param leastSpeed the speed below which it does not go
 * @param greatestSpeed the speed above which it does not go
 * @param greatestPower the wire power above which it does not go
 * @param leastFlow the flow that the pump moves at least
 * @param greatestFlow the flow that the pump moves at most
 */
public record LawLimits(
        Optional<Speed> leastSpeed,
        Optional<Speed> greatestSpeed,
        Optional<Power> greatestPower,
        Optional<Flow> leastFlow,
        Optional<Flow> greatestFlow) {
    /** No limits beside those of the pump set. */
    public static final LawLimits NONE =
            new LawLimits(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    /** Refuses limits that leave nothing. */
    public LawLimits {
        requirePositive("least speed", leastSpeed);
        requirePositive("greatest speed", greatestSpeed);
        requirePositive("greatest power", greatestPower);
        requirePositive("least flow", leastFlow);
        requirePositive("greatest flow", greatestFlow);
        requireOrder("speed", leastSpeed, greatestSpeed);
        requireOrder("flow", leastFlow, greatestFlow);
    }

    /** Returns the flow that the pump moves when the circuit asks for one. */
    public Flow pumped(Flow asked) {
        Flow more = leastFlow.filter(least -> least.compareTo(asked) > 0).orElse(asked);
        return greatestFlow.filter(most -> most.compareTo(more) < 0).orElse(more);
    }

    @Override
    public String toString() {
        List<String> said = new ArrayList<>();
        leastSpeed.ifPresent(speed -> said.add("no slower than " + speed));
        greatestSpeed.ifPresent(speed -> said.add("no faster than " + speed));
        greatestPower.ifPresent(power -> said.add("no more than " + power + " from the wire"));
        leastFlow.ifPresent(flow -> said.add("no less than " + flow));
        greatestFlow.ifPresent(flow -> said.add("no more than " + flow));
        return String.join(", ", said);
    }

    private static void requirePositive(String name, Optional<? extends Quantity<?>> limit) {
        if (limit.isPresent() && limit.get().si() <= 0) {
            throw new Refusal(
                    ControlProblem.IMPOSSIBLE_LAW,
                    "Asked for a control law with a " + name + " of " + limit.get(),
                    "A limit is above 0",
                    "Check the sign, or leave the limit out");
        }
    }

    private static <Q extends Quantity<Q>> void requireOrder(String kind, Optional<Q> least, Optional<Q> greatest) {
        if (least.isPresent()
                && greatest.isPresent()
                && least.get().si() > greatest.get().si()) {
            throw new Refusal(
                    ControlProblem.IMPOSSIBLE_LAW,
                    "Asked for a control law with a " + kind + " from " + least.get() + " to " + greatest.get(),
                    "The least " + kind + " must not be above the greatest",
                    "Change one of the two");
        }
    }
}
