package headrace.control;

import headrace.units.Head;
import headrace.units.Speed;

/** What a control law asks of a pump set: a head or a speed. The limits of speed come after. */
public sealed interface Demand {
    /**
     * A head at the pump.
     *
     * @param head the head, 0 or more
     */
    record OfHead(Head head) implements Demand {}

    /**
     * A speed through the drive; the pump rides its curve at that speed.
     *
     * @param speed the speed, above 0
     */
    record OfSpeed(Speed speed) implements Demand {}

    /** Rated speed on the mains, without the losses of a drive; the pump rides its curve. */
    record FullSpeedOnMains() implements Demand {}
}
