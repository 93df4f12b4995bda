package headrace.lesson;

import headrace.problem.Refusal;
import headrace.units.Quantity;
import headrace.units.Ratio;

/**
 * How far a number may lie from the answer and still be right.
 *
 * <dl>
 *   <dt>Units
 *   <dd>a share of the answer, or a quantity of its kind
 *   <dt>Errors
 *   <dd>{@code IMPOSSIBLE_TOLERANCE} if negative, not finite, a share of half the answer or more, or a share of nothing
 * </dl>
 *
 * @param size a share of the answer, or an SI value
 * @param isShare whether it is a share
 * @param words how it is said, such as {@code 2 %}
 */
public record Tolerance(double size, boolean isShare, String words) {
    /** What is right where nothing else was chosen. */
    public static final Tolerance USUAL = of(Ratio.percent(2));

    /** Refuses what no answer can be held against. */
    public Tolerance {
        if (!(size >= 0) || Double.isInfinite(size) || isShare && size >= 0.5) {
            throw new Refusal(
                    LessonProblem.IMPOSSIBLE_TOLERANCE,
                    "An answer was to be right within " + words,
                    "A tolerance is a share of the answer from 0 % to below 50 %, or a quantity of its kind from 0 on",
                    "Choose one such as within: 2.percent");
        }
    }

    /** Returns a share of the answer. */
    public static Tolerance of(Ratio share) {
        return new Tolerance(share.value(), true, share.toString());
    }

    /** Returns a quantity of the answer's kind; of a ratio that is its own value, not a share. */
    public static Tolerance of(Quantity<?> width) {
        return new Tolerance(width.si(), false, width.toString());
    }

    /** Returns how far a number may lie from this answer. */
    double around(double answer) {
        return isShare ? size * Math.abs(answer) : size;
    }

    /**
     * Returns this tolerance if it fits the answer.
     *
     * @throws Refusal with {@code IMPOSSIBLE_TOLERANCE} if it is a share of nothing
     */
    Tolerance requireFor(double answer) {
        if (isShare && answer == 0) {
            throw new Refusal(
                    LessonProblem.IMPOSSIBLE_TOLERANCE,
                    "An answer of 0 was to be right within " + words + " of itself",
                    "A share of nothing is nothing",
                    "Give a tolerance with the unit of the answer, such as within: 0.1.m");
        }
        return this;
    }
}
