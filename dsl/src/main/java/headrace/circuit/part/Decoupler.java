package headrace.circuit.part;

import headrace.problem.Notes;
import headrace.units.Flow;
import headrace.units.Ratio;

/**
 * The pipe without resistance that parts a plant loop from a load loop: both have one pressure there, and the
 * difference of their flows passes it.
 *
 * <dl>
 *   <dt>Units
 *   <dd>m³/s.
 *   <dt>Limits
 *   <dd>So wide and short that it takes no head; each loop is then solved with its own pump.
 *   <dt>Errors
 *   <dd>{@link headrace.problem.Refusal} with {@code IMPOSSIBLE_PART}.
 *   <dt>Source
 *   <dd>Balance of volume.
 * </dl>
 *
 * @param name what it is called
 * @param plant the flow of the plant loop
 * @param load the flow of the load loop
 */
public record Decoupler(String name, Flow plant, Flow load) {
    /** Which way the liquid goes through it. */
    public enum Direction {
        /** From supply to return: the plant delivers more than the load takes. */
        FORWARD,
        /** Not at all. */
        STILL,
        /** From return to supply: return water mixes into what the load gets. */
        BACKWARD
    }

    /** Refuses what cannot be. */
    public Decoupler {
        PartName part = new PartName("decoupler", name);
        part.notNegative(plant, "flow of the plant");
        part.notNegative(load, "flow of the load");
    }

    /** Returns its flow, above 0 from supply to return. */
    public Flow flow() {
        return plant.minus(load);
    }

    /** Returns which way it goes. */
    public Direction direction() {
        int sign = plant.compareTo(load);
        return sign == 0 ? Direction.STILL : sign > 0 ? Direction.FORWARD : Direction.BACKWARD;
    }

    /** Returns how much of what the load gets is its own return water. */
    public Ratio returnShare() {
        return direction() == Direction.BACKWARD ? load.minus(plant).over(load) : Ratio.ZERO;
    }

    /** Returns whether it runs backward. */
    public Notes notes() {
        return direction() != Direction.BACKWARD
                ? Notes.NONE
                : Notes.NONE.with(
                        PartProblem.DECOUPLER_REVERSED,
                        "Through " + new PartName("decoupler", name) + " go " + load.minus(plant)
                                + " from return to supply: " + returnShare() + " of what the load gets");
    }

    @Override
    public String toString() {
        return name + ": " + flow();
    }
}
