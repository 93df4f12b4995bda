package headrace.drive;

import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Power;
import java.util.List;

/**
 * Where the power goes between the wire and the shaft.
 *
 * @param shaft the power at the shaft
 * @param parts the losses one by one; a model of motor and drive together has one part for both
 * @param notes the limits that the load touched
 * @param basis the motor, the drive and the loss model
 */
public record Losses(Power shaft, List<Part> parts, Notes notes, Basis basis) implements Traced {
    /** What a part belongs to. */
    public enum Place {
        /** The motor. */
        MOTOR,
        /** The drive. */
        DRIVE,
        /** Motor and drive together, where the model does not tell them apart. */
        MOTOR_AND_DRIVE,
        /** Cable and filters between the mains, the drive and the motor. */
        CABLE_AND_FILTER
    }

    /**
     * One loss.
     *
     * @param place what it belongs to
     * @param name what it is, such as {@code motor iron}
     * @param power how much it is
     */
    public record Part(Place place, String name, Power power) {}

    /** Keeps the parts from changing. */
    public Losses {
        parts = List.copyOf(parts);
    }

    /** Returns all losses together. */
    public Power total() {
        return Power.watts(
                parts.stream().mapToDouble(part -> part.power().watts()).sum());
    }

    /** Returns the losses of one place together, none where the model does not have it. */
    public Power of(Place place) {
        return Power.watts(parts.stream()
                .filter(part -> part.place() == place)
                .mapToDouble(part -> part.power().watts())
                .sum());
    }

    /** Returns the wire power: what motor or drive takes from the mains. */
    public Power input() {
        return shaft.plus(total());
    }
}
