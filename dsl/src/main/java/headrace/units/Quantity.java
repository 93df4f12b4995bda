package headrace.units;

import headrace.problem.Refusal;

/**
 * A number of a unit: what stands at the doors of every calculation.
 *
 * <p>Immutable; equal when of the same class and the same SI value. A quantity may have either sign: the place that
 * cannot take a negative one refuses it. What can be added is an {@link Amount}; a temperature or a pressure against a
 * zero of its own is not.
 *
 * <dl>
 *   <dt>Units
 *   <dd>held in the SI unit of its {@link #kind()}
 *   <dt>Errors
 *   <dd>{@code IMPOSSIBLE_QUANTITY} if infinite or not a number
 * </dl>
 *
 * @param <Q> its own class
 */
public abstract class Quantity<Q extends Quantity<Q>> implements Comparable<Q>, Operand {
    private final double si;

    /** Refuses what no quantity can be, with {@code IMPOSSIBLE_QUANTITY}. */
    Quantity(double si) {
        if (!Double.isFinite(si)) {
            throw new Refusal(
                    UnitProblem.IMPOSSIBLE_QUANTITY,
                    "The value of " + kind().one() + " came out as " + si,
                    "It must be a finite number",
                    "Look for a division by zero, or a blank cell of a file, that led to it");
        }
        this.si = si + 0.0;
    }

    /** Returns what this quantity is. */
    public abstract Kind<Q> kind();

    @Override
    public final String what() {
        return kind().name();
    }

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

    /** Returns this quantity, of a kind that remembers it with the unit in which it was said. */
    @SuppressWarnings("unchecked")
    Q saidIn(Unit unit) {
        return (Q) this;
    }

    /** Makes another quantity of this kind. */
    final Q make(double value) {
        return kind().make().apply(value);
    }

    /**
     * Returns which is greater.
     *
     * @throws Refusal with {@code MEANINGLESS_ARITHMETIC} if a script compares two kinds
     */
    @Override
    public final int compareTo(Q other) {
        return Double.compare(si, Arithmetic.alike("compare", this, other).si());
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
        return UnitSystem.current().unitOf(kind(), si).print(si);
    }
}
