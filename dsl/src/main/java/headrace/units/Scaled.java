package headrace.units;

/**
 * A quantity that can be so many times another of its kind: every kind but temperature, whose zero is a convention.
 *
 * @param <Q> its own class
 */
public abstract class Scaled<Q extends Scaled<Q>> extends Quantity<Q> {
    Scaled(double si) {
        super(si);
    }

    /** Returns this with the other sign. */
    public final Q negative() {
        return make(-si());
    }

    /** Returns so many times this. */
    public final Q times(double factor) {
        return make(si() * factor);
    }

    /** Returns a share of this. */
    public final Q times(Ratio share) {
        return make(si() * share.value());
    }

    /** Returns one part of this, divided into so many. */
    public final Q over(double divisor) {
        return make(si() / divisor);
    }

    /** Returns this as a share of another of the same kind. */
    public final Ratio over(Q other) {
        return Ratio.of(si() / Arithmetic.alike("divide", this, other).si());
    }
}
