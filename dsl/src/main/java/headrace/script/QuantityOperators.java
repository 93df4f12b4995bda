package headrace.script;

import headrace.problem.Refusal;
import headrace.units.Arithmetic;
import headrace.units.Operand;
import headrace.units.UnitProblem;

/**
 * The operators of a script between quantities, numbers and money. What they mean, and what means nothing, is said in
 * {@link Arithmetic}. Two quantities of one kind add and compare by their own methods, which Groovy finds first.
 */
public final class QuantityOperators {
    private QuantityOperators() {}

    /** Adds. */
    public static Object plus(Operand self, Object other) {
        return Arithmetic.plus(self, other);
    }

    /** Joins a text to the printed value. */
    public static String plus(Operand self, CharSequence text) {
        return self.toString() + text;
    }

    /** Refuses a bare number beside a quantity. */
    public static Object plus(Number self, Operand other) {
        return Arithmetic.plus(self, other);
    }

    /** Subtracts. */
    public static Object minus(Operand self, Object other) {
        return Arithmetic.minus(self, other);
    }

    /** Refuses a bare number beside a quantity. */
    public static Object minus(Number self, Operand other) {
        return Arithmetic.minus(self, other);
    }

    /** Multiplies. */
    public static Object multiply(Operand self, Object other) {
        return Arithmetic.times(self, other);
    }

    /** Multiplies. */
    public static Object multiply(Number self, Operand other) {
        return Arithmetic.times(self, other);
    }

    /** Divides. */
    public static Object div(Operand self, Object other) {
        return Arithmetic.over(self, other);
    }

    /** Refuses a bare number divided by a quantity. */
    public static Object div(Number self, Operand other) {
        return Arithmetic.over(self, other);
    }

    /** Changes the sign. */
    public static Object negative(Operand self) {
        return Arithmetic.negative(self);
    }

    /** Leaves the sign. */
    public static Object positive(Operand self) {
        return self;
    }

    /** Refuses a power of a quantity, whose kind would depend on the exponent. */
    public static Object power(Operand self, Object exponent) {
        throw noOperator(self, "**", exponent, "Multiply instead, as in d * d for an area");
    }

    /** Refuses a remainder, which no quantity of the trade needs. */
    public static Object remainder(Operand self, Object divisor) {
        throw noOperator(self, "%", divisor, "Work with the plain numbers of a unit, as in x.in('m')");
    }

    /** Compares with a bare number, which is refused. */
    public static int compareTo(Operand self, Number other) {
        return Arithmetic.compare(self, other);
    }

    /** Compares with a text, which is refused. */
    public static int compareTo(Operand self, CharSequence other) {
        return Arithmetic.compare(self, other);
    }

    /** Compares with money or a price, which is refused for another kind. */
    public static int compareTo(Operand self, Operand other) {
        return Arithmetic.compare(self, other);
    }

    /** Compares a bare number with a quantity, which is refused. */
    public static int compareTo(Number self, Operand other) {
        return Arithmetic.compare(self, other);
    }

    private static Refusal noOperator(Operand self, String operator, Object other, String next) {
        return new Refusal(
                UnitProblem.MEANINGLESS_ARITHMETIC,
                "Asked for " + self + " (" + self.what() + ") " + operator + " " + other,
                "Quantities know + - * / and comparisons",
                next);
    }
}
