package headrace.circuit.part;

import headrace.liquid.Liquid;
import headrace.units.Ratio;

/**
 * A strainer, clean or with a share of its free area blocked: {@code h = h_clean·(Q/Q_d)²/(1 − b)²}.
 *
 * <dl>
 *   <dt>Units
 *   <dd>m³/s, metres of the liquid.
 *   <dt>Limits
 *   <dd>A blocked share from 0 to 99 %.
 *   <dt>Errors
 *   <dd>{@link headrace.problem.Refusal} with {@code IMPOSSIBLE_PART}.
 *   <dt>Source
 *   <dd>An assumption of our own: the free holes take all the loss, which goes with the square of the velocity in them.
 * </dl>
 *
 * @param name what it is called
 * @param clean what it takes when it is clean
 * @param blocked {@code b}, the share of its free area that is blocked
 */
public record Strainer(String name, Drop clean, Ratio blocked) implements NamedPart {
    private static final double MOST_BLOCKED = 0.99;

    /** Refuses what cannot be. */
    public Strainer {
        PartName part = new PartName("strainer", name);
        clean.check(part, 2);
        if (!(blocked.si() >= 0 && blocked.si() <= MOST_BLOCKED)) {
            throw part.impossible(
                    blocked + " of its free area blocked",
                    "From 0 to 99 % may be",
                    "Leave it out for a clean one; for a blocked one close the branch");
        }
    }

    /** Returns a clean strainer. */
    public static Strainer of(String name, Drop clean) {
        return new Strainer(name, clean, Ratio.ZERO);
    }

    /** Returns this strainer with a share of its free area blocked. */
    public Strainer fouled(Ratio share) {
        return new Strainer(name, clean, share);
    }

    @Override
    public Strainer named(String other) {
        return new Strainer(other, clean, blocked);
    }

    @Override
    public LinkLaw in(Liquid liquid) {
        double q = clean.flow().si();
        double free = 1 - blocked.si();
        return new SquareLaw(clean.headIn(liquid).metres() / (q * q * free * free));
    }

    @Override
    public String toString() {
        return name + ", " + clean + (blocked.si() > 0 ? " when clean, " + blocked + " blocked" : "");
    }
}
