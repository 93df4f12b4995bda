package headrace.units;

import headrace.problem.Refusal;

/**
 * A number of a unit: what stands at the doors of every calculation.
 *
 * <p>Immutable; equal when of the same class and the same SI value.
 *
 * @param <Q> its own class
 */
public abstract class Quantity<Q extends Quantity<Q>> implements Comparable<Q> {
    private final double si;

    /** Refuses what no quantity can be, with {@code IMPOSSIBLE_QUANTITY}. */
    Quantity(double si) {
        if (!Double.isFinite(si)) {
            throw new Refusal(
                    UnitProblem.IMPOSSIBLE_QUANTITY,
                    "A quantity of class " + getClass().getSimpleName() + " was given as " + si,
                    "It must be a finite number",
                    "Check the cell or file it came from");
        }
        this.si = si + 0.0;
    }

    /** Returns what this quantity is. */
    public abstract Kind<Q> kind();

    /** Returns the value in the SI unit. */
    public final double si() {
        return si;
    }

    /**
     * Returns the value in a unit, given by its word, symbol or another spelling.
     *
     * @throws Refusal with {@code UNKNOWN_UNIT} if this kind has no such unit
     */
    public final double in(String unit) {
        return kind().unit(unit).fromSi(si);
    }

    /** Returns the sum. */
    public final Q plus(Q other) {
        return make(si + other.si());
    }

    /** Returns the difference. */
    public final Q minus(Q other) {
        return make(si - other.si());
    }

    /** Returns this with the other sign. */
    public final Q negative() {
        return make(-si);
    }

    /** Returns so many times this. */
    public final Q times(double factor) {
        return make(si * factor);
    }

    /** Returns a share of this. */
    public final Q times(Ratio share) {
        return make(si * share.value());
    }

    /** Returns this as a share of another of the same kind. */
    public final Ratio over(Q other) {
        return Ratio.of(si / other.si());
    }

    private Q make(double value) {
        return kind().make().apply(value);
    }

    @Override
    public final int compareTo(Q other) {
        return Double.compare(si, other.si());
    }

    @Override
    public final boolean equals(Object other) {
        return other != null && getClass() == other.getClass() && si == ((Quantity<?>) other).si;
    }

    @Override
    public final int hashCode() {
        return Double.hashCode(si);
    }

    /** Returns the value as an engineer reads it, in the unit system of this thread, such as {@code 12.5 m³/h}. */
    @Override
    public final String toString() {
        Unit unit = UnitSystem.current().unitOf(kind());
        return (Numbers.print(unit.fromSi(si)) + " " + unit.symbol()).strip();
    }
}
