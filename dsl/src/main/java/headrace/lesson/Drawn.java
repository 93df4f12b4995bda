package headrace.lesson;

import headrace.units.Quantity;
import java.util.Random;

/**
 * Numbers that vary from student to student: the same name and seed give the same number on every machine.
 *
 * <dl>
 *   <dt>Units
 *   <dd>those of the ends
 *   <dt>Limits
 *   <dd>a number of steps from the first end, never beyond the last
 *   <dt>Errors
 *   <dd>none
 * </dl>
 */
public final class Drawn {
    private static final long MIXING = 0x9E3779B97F4A7C15L;

    private Drawn() {}

    /**
     * Draws a quantity.
     *
     * @param name what is drawn, so that two numbers of one student do not go together
     * @param from the first that can be drawn
     * @param to the last that can be drawn
     * @param steps into how many equal steps the way between them is divided, from 1
     * @param seed the seed of the student
     */
    public static <Q extends Quantity<Q>> Q between(String name, Q from, Q to, int steps, long seed) {
        // The generator of java.util.Random and the hash of a text are laid down in the language.
        Random random = new Random(seed * MIXING ^ name.hashCode());
        random.nextLong();
        double share = (double) random.nextInt(steps + 1) / steps;
        return from.kind().make().apply(from.si() + share * (to.si() - from.si()));
    }
}
