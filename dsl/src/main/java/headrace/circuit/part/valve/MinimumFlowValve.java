package headrace.circuit.part.valve;

import headrace.circuit.part.LinkLaw;
import headrace.circuit.part.NamedPart;
import headrace.circuit.part.PartName;
import headrace.circuit.part.Throttling;
import headrace.liquid.Liquid;
import headrace.units.Flow;
import headrace.units.FlowCoefficient;

/**
 * A valve that bypasses what the pump lacks of its least flow: it is asked for {@code max(0, Q_least − Q)}, where Q is
 * the flow of all that is not bypassed.
 *
 * <dl>
 *   <dt>Units
 *   <dd>m³/s, Kv; head in metres of the liquid.
 *   <dt>Limits
 *   <dd>It throttles on a straight line, and passes no more than it does fully open.
 *   <dt>Errors
 *   <dd>{@link headrace.problem.Refusal} with {@code IMPOSSIBLE_PART}.
 *   <dt>Source
 *   <dd>Textbook knowledge.
 * </dl>
 *
 * @param name what it is called
 * @param least the flow that the pump must have
 * @param open the flow coefficient of the open valve
 */
public record MinimumFlowValve(String name, Flow least, FlowCoefficient open) implements Throttling, NamedPart {
    /** Refuses what cannot be. */
    public MinimumFlowValve {
        PartName part = new PartName("minimum-flow valve", name);
        part.positive(least, "least flow");
        part.positive(open, "flow coefficient");
    }

    @Override
    public MinimumFlowValve named(String other) {
        return new MinimumFlowValve(other, least, open);
    }

    /** Returns what it is asked to bypass beside the flow of all else. */
    public Flow demandBeside(Flow others) {
        Flow lacking = least.minus(others);
        return lacking.si() > 0 ? lacking : Flow.ZERO;
    }

    @Override
    public LinkLaw in(Liquid liquid) {
        return Orifice.law(open);
    }

    @Override
    public double openingAt(double share) {
        return Math.min(1, Math.max(0, share));
    }

    @Override
    public double shareAt(double opening) {
        return Math.min(1, Math.max(0, opening));
    }

    @Override
    public String toString() {
        return name + ", keeps " + least + ", " + open;
    }
}
