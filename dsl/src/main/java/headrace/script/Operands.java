package headrace.script;

/** What {@link NumberRules} puts around the operands of a script. */
public final class Operands {
    private Operands() {}

    /** Returns a divisor as it is, but a number as a double, so that the quotient is one too. */
    public static Object divisor(Object given) {
        return given instanceof Number number ? (Object) number.doubleValue() : given;
    }
}
