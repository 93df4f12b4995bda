package headrace.circuit.part.fitting;

import headrace.circuit.part.PartName;

/**
 * So many fittings of a kind in a pipe.
 *
 * @param name what they are, such as {@code elbow}
 * @param loss what one of them takes
 * @param count how many there are
 */
public record Fitting(String name, FittingLoss loss, int count) {
    /** Refuses what cannot be. */
    public Fitting {
        PartName part = new PartName("fitting", name);
        if (!loss.possible()) {
            throw part.impossible(
                    loss.method() + " of " + described(loss),
                    "Its numbers must be 0 or more, and finite",
                    "Check them against the table they are from");
        }
        if (count < 0) {
            throw part.impossible("a count of " + count, "It must be 0 or more", "Check the sign");
        }
    }

    /** Returns one fitting. */
    public static Fitting of(String name, FittingLoss loss) {
        return new Fitting(name, loss, 1);
    }

    /** Returns so many of them. */
    public Fitting times(int number) {
        return new Fitting(name, loss, number);
    }

    private static String described(FittingLoss loss) {
        return loss instanceof ConstantK constant ? String.valueOf(constant.k()) : "numbers below 0 or without end";
    }

    @Override
    public String toString() {
        return (count == 1 ? "" : count + " × ") + name;
    }
}
