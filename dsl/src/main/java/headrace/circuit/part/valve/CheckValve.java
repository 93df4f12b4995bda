package headrace.circuit.part.valve;

import headrace.circuit.part.LinkLaw;
import headrace.circuit.part.NamedPart;
import headrace.circuit.part.PartName;
import headrace.circuit.part.Passage;
import headrace.liquid.Liquid;
import headrace.units.FlowCoefficient;
import headrace.units.Pressure;

/**
 * A check valve: shut until a pressure difference cracks it, then that and the head of its flow coefficient; tight
 * backwards.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Pa, Kv; head in metres of the liquid.
 *   <dt>Limits
 *   <dd>Its law is for flows forward; its cracking pressure stays as it opens.
 *   <dt>Errors
 *   <dd>{@link headrace.problem.Refusal} with {@code IMPOSSIBLE_PART}.
 *   <dt>Source
 *   <dd>Common practice, no source: 0.02 to 0.05 bar crack it. The constant cracking head is an assumption of our own.
 * </dl>
 *
 * @param name what it is called
 * @param cracking the pressure difference that opens it
 * @param open the flow coefficient of the open valve
 */
public record CheckValve(String name, Pressure cracking, FlowCoefficient open) implements NamedPart {
    /** Refuses what cannot be. */
    public CheckValve {
        PartName part = new PartName("check valve", name);
        part.notNegative(cracking, "cracking pressure");
        part.positive(open, "flow coefficient");
    }

    @Override
    public CheckValve named(String other) {
        return new CheckValve(other, cracking, open);
    }

    @Override
    public Passage passage() {
        return Passage.FORWARD;
    }

    @Override
    public LinkLaw in(Liquid liquid) {
        return new CrackingLaw(cracking.headOf(liquid).metres(), Orifice.law(open));
    }

    @Override
    public String toString() {
        return name + ", opens at " + cracking + ", " + open;
    }
}
