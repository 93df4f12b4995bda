package headrace.units;

/**
 * A quantity that counts from nothing, so that two of a kind can be added: every kind but temperatures and pressures
 * against a zero of their own.
 *
 * <p>A script may bring two kinds together where the Java compiler would not: that is refused with
 * {@code MEANINGLESS_ARITHMETIC}, naming both.
 *
 * @param <Q> its own class
 */
public abstract class Amount<Q extends Amount<Q>> extends Scaled<Q> {
    Amount(double si) {
        super(si);
    }

    /** Returns the sum. */
    public final Q plus(Q other) {
        return make(si() + Arithmetic.alike("add", this, other).si());
    }

    /** Returns the difference. */
    public final Q minus(Q other) {
        return make(si() - Arithmetic.alike("subtract", this, other).si());
    }
}
