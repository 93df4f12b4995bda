package headrace.estimate;

import headrace.units.Numbers;
import headrace.units.Power;

/**
 * How a map was moved to meet readings on site: the power taken becomes {@code power·P + offset·s}, the head
 * {@code head·H}, with s the speed as a share of that of the map.
 *
 * @param power the factor of the power: at the shaft, or at the wire of a map that was measured there
 * @param offsetWatts the offset at the speed of the map in W: a friction of constant torque
 * @param head the factor of the head
 */
public record MapFactors(double power, double offsetWatts, double head) {
    /** A map as it was made. */
    public static final MapFactors NONE = new MapFactors(1, 0, 1);

    /** Returns what was moved, in words. */
    @Override
    public String toString() {
        return "power times " + Numbers.print(power) + " with an offset of " + Power.watts(offsetWatts)
                + " at the speed of the map, head times " + Numbers.print(head);
    }
}
