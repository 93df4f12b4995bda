package headrace.circuit.part.valve;

import headrace.circuit.part.LinkLaw;
import headrace.circuit.part.NamedPart;
import headrace.circuit.part.PartName;
import headrace.circuit.part.Passage;
import headrace.liquid.Liquid;
import headrace.units.FlowCoefficient;
import headrace.units.Pressure;

/**
 * A bypass valve that opens on pressure difference: shut below its set value, above it that and the head of its open
 * orifice.
 *
 * <p>So it keeps the pressure difference where it stands from rising far above the set value. What passes it is load of
 * the pump and of no use to anybody.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Pa, Kv; head in metres of the liquid.
 *   <dt>Limits
 *   <dd>Its law is for flows forward; its spring holds the set value as it opens.
 *   <dt>Errors
 *   <dd>{@link headrace.problem.Refusal} with {@code IMPOSSIBLE_PART}.
 *   <dt>Source
 *   <dd>An assumption of our own.
 * </dl>
 *
 * @param name what it is called
 * @param opensAt the pressure difference at which it opens
 * @param open the flow coefficient of the open valve
 */
public record BypassValve(String name, Pressure opensAt, FlowCoefficient open) implements NamedPart {
    /** Refuses what cannot be. */
    public BypassValve {
        PartName part = new PartName("bypass valve", name);
        part.positive(opensAt, "set pressure difference");
        part.positive(open, "flow coefficient");
    }

    @Override
    public BypassValve named(String other) {
        return new BypassValve(other, opensAt, open);
    }

    @Override
    public Passage passage() {
        return Passage.FORWARD;
    }

    @Override
    public LinkLaw in(Liquid liquid) {
        return new CrackingLaw(opensAt.headOf(liquid).metres(), Orifice.law(open));
    }

    @Override
    public String toString() {
        return name + ", opens at " + opensAt + ", " + open;
    }
}
