package headrace.estimate;

import headrace.problem.Refusal;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Quantity;
import headrace.units.Speed;
import headrace.units.Torque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What was read at a running pump.
 *
 * @param power the wire power, if it was read
 * @param torque the torque at the shaft, if it was read
 * @param head the head of the pump, if it was read
 * @param speed the speed, if it was read
 */
public record Reading(Optional<Power> power, Optional<Torque> torque, Optional<Head> head, Optional<Speed> speed) {
    /** Nothing read. */
    public static final Reading NONE =
            new Reading(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    /** Refuses with {@code IMPOSSIBLE_READING} what no running pump can give. */
    public Reading {
        require(power.map(Power::watts).orElse(1.0), power, "wire power");
        require(torque.map(Torque::newtonMetres).orElse(1.0), torque, "torque");
        require(speed.map(Speed::si).orElse(1.0), speed, "speed");
        require(head.map(each -> each.metres() + 1e-9).orElse(1.0), head, "head");
    }

    private static void require(double positive, Optional<? extends Quantity<?>> read, String name) {
        if (!(positive > 0)) {
            throw new Refusal(
                    EstimateProblem.IMPOSSIBLE_READING,
                    "Given a " + name + " of " + read.map(Object::toString).orElse(""),
                    "Power, torque and speed of a running pump are above 0, its head 0 or more",
                    "Leave out times at which the pump stood still, and check the sign");
        }
    }

    /** Returns the reading of wire power and speed. */
    public static Reading of(Power power, Speed speed) {
        return NONE.with(power).with(speed);
    }

    /** Returns this reading with a wire power. */
    public Reading with(Power read) {
        return new Reading(Optional.of(read), torque, head, speed);
    }

    /** Returns this reading with a torque. */
    public Reading with(Torque read) {
        return new Reading(power, Optional.of(read), head, speed);
    }

    /** Returns this reading with a head. */
    public Reading with(Head read) {
        return new Reading(power, torque, Optional.of(read), speed);
    }

    /** Returns this reading with a speed. */
    public Reading with(Speed read) {
        return new Reading(power, torque, head, Optional.of(read));
    }

    /** Returns the fixed part of an error in the unit of what it is an error of. */
    static String printed(Cause cause, double si) {
        return switch (cause) {
            case TORQUE_READING -> Torque.newtonMetres(si).toString();
            case HEAD_READING -> Head.metres(si).toString();
            case SPEED_READING -> Speed.radiansPerSecond(si).toString();
            default -> Power.watts(si).toString();
        };
    }

    /** Returns what was read, in words. */
    @Override
    public String toString() {
        List<String> all = new ArrayList<>();
        power.ifPresent(each -> all.add(each + " at the wire"));
        torque.ifPresent(each -> all.add(each + " at the shaft"));
        head.ifPresent(each -> all.add(each + " of head"));
        speed.ifPresent(each -> all.add(each.toString()));
        return all.isEmpty() ? "nothing" : String.join(" and ", all);
    }
}
