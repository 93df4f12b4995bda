package headrace.circuit.part.valve;

import headrace.circuit.part.LinkLaw;
import headrace.circuit.part.NamedPart;
import headrace.circuit.part.PartName;
import headrace.liquid.Liquid;
import headrace.units.FlowCoefficient;

/**
 * A valve, or whatever else is known by its flow coefficient, that stays as it is.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Kv; head in metres of the liquid.
 *   <dt>Limits
 *   <dd>Turbulent flow without cavitation.
 *   <dt>Errors
 *   <dd>{@link headrace.problem.Refusal} with {@code IMPOSSIBLE_PART}.
 *   <dt>Source
 *   <dd>{@link Orifice}.
 * </dl>
 *
 * @param name what it is called
 * @param coefficient its flow coefficient
 */
public record FixedValve(String name, FlowCoefficient coefficient) implements NamedPart {
    /** Refuses what cannot be. */
    public FixedValve {
        new PartName("valve", name).positive(coefficient, "flow coefficient");
    }

    @Override
    public FixedValve named(String other) {
        return new FixedValve(other, coefficient);
    }

    @Override
    public LinkLaw in(Liquid liquid) {
        return Orifice.law(coefficient);
    }

    @Override
    public String toString() {
        return name + ", " + coefficient;
    }
}
