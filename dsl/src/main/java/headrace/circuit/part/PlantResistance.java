package headrace.circuit.part;

import headrace.liquid.Liquid;

/**
 * The plant as one resistance: heat exchangers, headers and whatever else the whole flow passes.
 *
 * <dl>
 *   <dt>Units
 *   <dd>m³/s, metres of the liquid.
 *   <dt>Limits
 *   <dd>Those of {@link Drop}.
 *   <dt>Errors
 *   <dd>{@link headrace.problem.Refusal} with {@code IMPOSSIBLE_PART}.
 *   <dt>Source
 *   <dd>Textbook knowledge: {@code h = h_d·(Q/Q_d)^m}; {@code m} is 2 unless chosen.
 * </dl>
 *
 * @param name what it is called
 * @param drop what it takes at one flow
 * @param exponent {@code m}, from 1 to 2.2
 */
public record PlantResistance(String name, Drop drop, double exponent) implements NamedPart {
    /** Refuses what cannot be. */
    public PlantResistance {
        drop.check(new PartName("resistance", name), exponent);
    }

    /** Returns a resistance that goes with the square of flow. */
    public static PlantResistance of(String name, Drop drop) {
        return new PlantResistance(name, drop, 2);
    }

    @Override
    public PlantResistance named(String other) {
        return new PlantResistance(other, drop, exponent);
    }

    @Override
    public LinkLaw in(Liquid liquid) {
        return drop.law(liquid, exponent);
    }

    @Override
    public String toString() {
        return name + ", " + drop;
    }
}
