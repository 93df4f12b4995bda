package headrace.circuit.part;

import headrace.liquid.Liquid;
import headrace.units.Flow;
import headrace.units.Head;

/**
 * A part that holds a flow whatever the head across it, between a floor and a ceiling: a pressure-independent valve, an
 * automatic flow limiter.
 *
 * <p>Below the floor it is a plain resistance, the law of {@link #in}, which loses the floor at the flow that it holds.
 * Above the ceiling it is a plain resistance too, the greatest that it can be, which loses the ceiling at that flow.
 */
public interface FlowLimiting extends Part {
    /** Returns the flow that it holds. */
    Flow limit();

    /** Returns the greatest head across it at which it still holds the flow. */
    Head ceiling(Liquid liquid);

    /** Lets the liquid pass forward only. */
    @Override
    default Passage passage() {
        return Passage.FORWARD;
    }
}
