package headrace.script;

/** What {@link NumberRules} puts around the operands of a script. */
public final class Operands {
    private Operands() {}

    /** Returns a divisor as it is, but a number as a double, so that the quotient is one too. */
    public static Object divisor(Object given) {
        return given instanceof Number number ? (Object) number.doubleValue() : given;
    }

    /** Returns a factor as it is, but an int as a long, so that a product of two does not wrap around. */
    public static Object factor(Object given) {
        return given instanceof Integer whole ? (Object) whole.longValue() : given;
    }

    /** Returns a product as it is, but one of whole numbers as an int again, if it fits. */
    public static Object product(Object given) {
        return given instanceof Long whole && whole == whole.intValue() ? (Object) whole.intValue() : given;
    }
}
