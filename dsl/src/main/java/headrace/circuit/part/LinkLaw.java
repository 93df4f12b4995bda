package headrace.circuit.part;

/**
 * The head that is lost along a link of the circuit in its direction, as a function of the flow in that direction, for
 * one liquid.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Flow in m³/s, head in m of the liquid, slope in s/m².
 *   <dt>Limits
 *   <dd>Defined and continuous for every flow, negative ones too, and never falling; a pump is a link that loses a
 *       negative head. Laws of flow that can turn are odd: {@code h(−Q) = −h(Q)}. The slope is the exact derivative of
 *       the head; it may be 0 at no flow.
 *   <dt>Errors
 *   <dd>None: what is impossible is refused when the law is made.
 *   <dt>Source
 *   <dd>Each law its own.
 * </dl>
 */
public interface LinkLaw {
    /** How many numbers {@link #evaluate} uses. */
    int NUMBERS = 3;

    /** Returns the head lost at a flow. */
    double headMetres(double cubicMetresPerSecond);

    /** Returns the derivative of the head at a flow. */
    double slope(double cubicMetresPerSecond);

    /**
     * Puts the head at {@code into[at]} and the slope at {@code into[at + 1]}; a law whose head and slope share work
     * does both at once.
     *
     * <p>The third number is for the law to remember where an iteration of its own ended; it is 0 at first, and the
     * result may depend on it by rounding only.
     */
    default void evaluate(double cubicMetresPerSecond, double[] into, int at) {
        into[at] = headMetres(cubicMetresPerSecond);
        into[at + 1] = slope(cubicMetresPerSecond);
    }
}
