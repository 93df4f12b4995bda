package headrace.circuit.part;

import headrace.liquid.Liquid;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Numbers;
import headrace.units.Pressure;

/**
 * What a part takes at one flow, as its data sheet states it: a pressure difference in the liquid of the circuit, or a
 * head.
 *
 * <dl>
 *   <dt>Units
 *   <dd>m³/s, Pa or metres of the liquid.
 *   <dt>Limits
 *   <dd>A flow above 0, a drop of 0 or more, an exponent of flow from 1 to 2.2: laminar to rough.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_PART}.
 *   <dt>Source
 *   <dd>Textbook knowledge; the exponent is a choice of model.
 * </dl>
 */
public final class Drop {
    private static final double LEAST_EXPONENT = 1;
    private static final double MOST_EXPONENT = 2.2;

    private final Flow flow;
    private final Pressure pressure;
    private final Head head;

    private Drop(Flow flow, Pressure pressure, Head head) {
        this.flow = flow;
        this.pressure = pressure;
        this.head = head;
    }

    /** Returns a pressure difference at a flow, in the liquid of the circuit. */
    public static Drop of(Flow flow, Pressure pressure) {
        return new Drop(flow, pressure, null);
    }

    /** Returns a head at a flow. */
    public static Drop of(Flow flow, Head head) {
        return new Drop(flow, null, head);
    }

    /** Returns the flow. */
    public Flow flow() {
        return flow;
    }

    /** Returns the drop in a liquid as a head. */
    public Head headIn(Liquid liquid) {
        return head == null ? pressure.headOf(liquid) : head;
    }

    /** Refuses in the name of a part what cannot be. */
    public void check(PartName part, double exponent) {
        part.positive(flow, "design flow");
        part.notNegative(head == null ? pressure : head, "loss at " + flow);
        if (!(exponent >= LEAST_EXPONENT && exponent <= MOST_EXPONENT)) {
            throw part.impossible(
                    "an exponent of flow of " + exponent,
                    "It goes from " + Numbers.print(LEAST_EXPONENT) + " in laminar flow to "
                            + Numbers.print(MOST_EXPONENT),
                    "Use 2 without further knowledge");
        }
    }

    /** Returns the law through this point with an exponent. */
    public LinkLaw law(Liquid liquid, double exponent) {
        double metres = headIn(liquid).metres();
        double q = flow.si();
        return exponent == 2 ? new SquareLaw(metres / (q * q)) : new PowerLaw(q, metres, exponent);
    }

    @Override
    public String toString() {
        return (head == null ? pressure.toString() : head.toString()) + " at " + flow;
    }
}
