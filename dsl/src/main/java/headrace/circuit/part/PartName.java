package headrace.circuit.part;

import headrace.problem.Refusal;
import headrace.units.Quantity;

/**
 * The name of a part with what it is, and the sentences with which it refuses what cannot be.
 *
 * @param kind what it is, such as {@code pipe}
 * @param name what it is called
 */
public record PartName(String kind, String name) {
    /** Refuses a part without a name. */
    public PartName {
        if (name.isBlank()) {
            throw new Refusal(
                    PartProblem.IMPOSSIBLE_PART,
                    "Asked for a " + kind + " without a name",
                    "Each part is called something, so that a result can say which it means",
                    "Give it the name that it has on the drawing");
        }
    }

    /** Refuses a quantity that is not above 0. */
    public void positive(Quantity<?> value, String what) {
        if (!(value.si() > 0)) {
            throw impossible(
                    one(what) + " of " + value, "It must be above 0", "Check the sign and the unit of the " + what);
        }
    }

    /** Refuses a quantity below 0. */
    public void notNegative(Quantity<?> value, String what) {
        if (!(value.si() >= 0)) {
            throw impossible(
                    one(what) + " of " + value, "It must be 0 or more", "Check the sign and the unit of the " + what);
        }
    }

    private static String one(String what) {
        return ("aeio".indexOf(what.charAt(0)) < 0 ? "a " : "an ") + what;
    }

    /** Returns the refusal of a part that cannot be. */
    public Refusal impossible(String with, String possible, String next) {
        return refusal(PartProblem.IMPOSSIBLE_PART, "Asked for " + this + " with " + with, possible, next);
    }

    /** Returns a refusal. */
    public Refusal refusal(PartProblem problem, String asked, String possible, String next) {
        return new Refusal(problem, asked, possible, next);
    }

    /** Returns what it is and its name, such as {@code the pipe 'riser'}; only the name where it says what it is. */
    @Override
    public String toString() {
        return name.startsWith(kind) ? "the " + name : "the " + kind + " '" + name + "'";
    }
}
