package headrace.lesson;

import headrace.problem.Refusal;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Quantities;
import headrace.units.Quantity;
import headrace.units.Ratio;
import java.util.Locale;

/** What an exercise asks for, and what a student gives. */
public sealed interface Answer {
    /** Returns what kind of answer it is, such as {@code a flow}, as it stands in a sentence. */
    String what();

    /**
     * A number with a unit.
     *
     * @param value the quantity
     */
    record Measured(Quantity<?> value) implements Answer {
        @Override
        public String what() {
            return value.kind().one();
        }

        @Override
        public String toString() {
            return value.toString();
        }
    }

    /**
     * A number without a unit.
     *
     * @param value the number, finite
     */
    record Plain(double value) implements Answer {
        @Override
        public String what() {
            return "a number without a unit";
        }

        @Override
        public String toString() {
            return value == Math.rint(value) && Math.abs(value) < 1e9
                    ? String.valueOf((long) value)
                    : String.valueOf(value);
        }
    }

    /**
     * A name, such as that of a branch.
     *
     * @param text the name
     */
    record Named(String text) implements Answer {
        @Override
        public String what() {
            return "a name";
        }

        /** Returns whether both name the same: case and the number of blanks do not count. */
        boolean isSameAs(Named other) {
            return plain().equals(other.plain());
        }

        private String plain() {
            return text.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
        }

        @Override
        public String toString() {
            return text;
        }
    }

    /**
     * Takes what a script gave as an answer. A text that reads as a number with a unit is one; a length is kept as what
     * it is until it is held against a head.
     *
     * @throws Refusal with {@code INCOMPLETE_EXERCISE} if it can be no answer
     */
    static Answer of(Object given) {
        if (given instanceof Quantity<?> quantity) {
            return new Measured(quantity);
        }
        if (given instanceof Number number && Double.isFinite(number.doubleValue())) {
            return new Plain(number.doubleValue());
        }
        if (given instanceof CharSequence text && !text.toString().isBlank()) {
            return read(text.toString());
        }
        throw new Refusal(
                LessonProblem.INCOMPLETE_EXERCISE,
                "The answer was given as " + given,
                "An answer is a number with its unit, a finite number without one, or a name",
                "Give one of these, such as 12.3.m");
    }

    private static Answer read(String text) {
        try {
            return new Measured(Quantities.parse(text));
        } catch (Refusal noQuantity) {
            return new Named(text);
        }
    }

    /** Returns this answer as one of the same kind as another, where a length stands for a head. */
    default Answer asFor(Answer wanted) {
        if (this instanceof Measured own && wanted instanceof Measured other) {
            if (other.value() instanceof Head && own.value() instanceof Length length) {
                return new Measured(Head.metres(length.metres()));
            }
            if (other.value() instanceof Length && own.value() instanceof Head head) {
                return new Measured(Length.metres(head.metres()));
            }
        }
        return this instanceof Measured own && wanted instanceof Plain && own.value() instanceof Ratio ratio
                ? new Plain(ratio.value())
                : this;
    }
}
