package headrace.circuit.part;

/**
 * A control valve: it takes away whatever head is left so that its branch gets the flow that is asked for, until it
 * stands fully open.
 *
 * <p>Its law is that of the open valve. {@code share} is the flow coefficient over that of the open valve, from 0 to 1,
 * {@code opening} the stroke from 0 to 1.
 */
public interface Throttling extends Part {
    /** Returns the stroke at which the valve has a share of its greatest flow coefficient. */
    double openingAt(double share);

    /** Returns the share of its greatest flow coefficient at a stroke. */
    double shareAt(double opening);

    /** Lets the liquid pass forward only: a valve that is asked for a flow does not deliver a negative one. */
    @Override
    default Passage passage() {
        return Passage.FORWARD;
    }
}
