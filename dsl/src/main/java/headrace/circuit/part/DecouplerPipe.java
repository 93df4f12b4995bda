package headrace.circuit.part;

import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.units.Flow;

/**
 * The decoupler as a link of a circuit: a pipe without resistance from the supply of a plant to its return, beside a
 * load loop with a pump of its own. It passes both ways; which way is found by the solve.
 *
 * <dl>
 *   <dt>Units
 *   <dd>m³/s.
 *   <dt>Limits
 *   <dd>So wide and short that it takes no head: both its ends have one head.
 *   <dt>Errors
 *   <dd>{@link headrace.problem.Refusal} with {@code IMPOSSIBLE_PART} without a name.
 *   <dt>Source
 *   <dd>Balance of volume.
 * </dl>
 *
 * @param name what it is called
 */
public record DecouplerPipe(String name) implements NamedPart {
    private static final SquareLaw NOTHING = new SquareLaw(0);

    /** Refuses a part without a name. */
    public DecouplerPipe {
        new PartName("decoupler", name);
    }

    @Override
    public DecouplerPipe named(String other) {
        return new DecouplerPipe(other);
    }

    @Override
    public LinkLaw in(Liquid liquid) {
        return NOTHING;
    }

    /** Says where return water mixes into what the load gets. */
    @Override
    public Notes notesAt(Flow flow, Liquid liquid) {
        return flow.si() >= 0
                ? Notes.NONE
                : Notes.NONE.with(
                        PartProblem.DECOUPLER_REVERSED,
                        "Through " + new PartName("decoupler", name) + " go " + flow.times(-1)
                                + " from return to supply: return water mixes into what the load gets");
    }

    @Override
    public String toString() {
        return name;
    }
}
