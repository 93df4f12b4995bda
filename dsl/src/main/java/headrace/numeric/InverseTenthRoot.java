package headrace.numeric;

/**
 * The power {@code x^(−0.1)}, fast for many arguments: two square roots and a polynomial in the fourth root, without a
 * branch or a table, so that the compiler can work on several arguments at once.
 *
 * <dl>
 *   <dt>Units
 *   <dd>None.
 *   <dt>Limits
 *   <dd>From {@value #LOW} to {@value #HIGH} the relative error is below 1e-14, by a test against {@link Math#pow};
 *       outside it means nothing: {@link FixedPower} is for there.
 *   <dt>Errors
 *   <dd>None.
 *   <dt>Source
 *   <dd>Interpolation of degree 14 at the Chebyshev points of the fourth root, computed with 60 digits.
 * </dl>
 */
public final class InverseTenthRoot {
    /** The least argument of the polynomial. */
    public static final double LOW = 0.2;

    /** The greatest argument of the polynomial. */
    public static final double HIGH = 1.5;

    private static final double MIDDLE = 0.8877111123383719;
    private static final double C0 = 1.048796760972541;
    private static final double C1 = -0.47258471653493433;
    private static final double C2 = 0.3726542306124186;
    private static final double C3 = -0.33583378657070123;
    private static final double C4 = 0.3215671343810777;
    private static final double C5 = -0.3187739019747439;
    private static final double C6 = 0.32318680236085784;
    private static final double C7 = -0.33285539313507284;
    private static final double C8 = 0.34683693063153315;
    private static final double C9 = -0.364986109423507;
    private static final double C10 = 0.3864932251809995;
    private static final double C11 = -0.40278450070143607;
    private static final double C12 = 0.4309206761838928;
    private static final double C13 = -0.586050565043354;
    private static final double C14 = 0.6326421089229028;

    private InverseTenthRoot() {}

    /** Returns {@code x^(−0.1)} of an argument inside the limits, which are not looked at. */
    public static double inside(double x) {
        double u = Math.sqrt(Math.sqrt(x)) - MIDDLE;
        double w = u * u;
        double even = C0 + w * (C2 + w * (C4 + w * (C6 + w * (C8 + w * (C10 + w * (C12 + w * C14))))));
        double odd = C1 + w * (C3 + w * (C5 + w * (C7 + w * (C9 + w * (C11 + w * C13)))));
        return even + u * odd;
    }
}
