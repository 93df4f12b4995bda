package headrace.circuit.part.pipe;

/**
 * The Darcy friction factor of a round pipe against the Reynolds number.
 *
 * <p>Laminar {@code f = 64/Re} up to 2000; turbulent from 4000 by Colebrook, {@code 1/√f = −2·lg(ε/(3.7·D) +
 * 2.51/(Re·√f))}, solved exactly; between the two a cubic that joins both with their slopes.
 *
 * <dl>
 *   <dt>Units
 *   <dd>All numbers without unit.
 *   <dt>Limits
 *   <dd>Reynolds numbers above 0, relative roughness from 0 to 0.05. The equation is solved to rounding; it describes
 *       pipes within some 5 %, and between 2000 and 4000 nobody knows the friction well.
 *   <dt>Errors
 *   <dd>None: checked where a pipe is made.
 *   <dt>Source
 *   <dd>Colebrook, Journal of the Institution of Civil Engineers 11 (1939); start by Haaland, Journal of Fluids
 *       Engineering 105 (1983); steps by Halley. The cubic between the two is an assumption of our own.
 * </dl>
 */
public final class Friction {
    /** The Reynolds number up to which flow is taken as laminar. */
    public static final double LAMINAR = 2000;

    /** The Reynolds number from which flow is taken as turbulent. */
    public static final double TURBULENT = 4000;

    /** The greatest relative roughness that the equation was made for. */
    public static final double ROUGHEST = 0.05;

    private static final double SPAN = TURBULENT - LAMINAR;
    private static final double LAMINAR_FACTOR = 64 / LAMINAR;
    private static final double LAMINAR_SLOPE = -LAMINAR_FACTOR / LAMINAR;

    /** 2/ln 10: so the common logarithm, doubled, of the natural one. */
    private static final double TWICE_LG = 2 / Math.log(10);

    /** A step of this share of the root leaves an error of its cube. */
    private static final double NEAR = 2e-5;

    private static final double ROUGH = 3.7;
    private static final double SMOOTH = 2.51;

    private final double rough;
    private final double start;
    private final double turbulentFactor;
    private final double turbulentSlope;

    private Friction(double relativeRoughness) {
        rough = relativeRoughness / ROUGH;
        start = Math.pow(rough, 1.11);
        turbulentFactor = colebrook(TURBULENT);
        turbulentSlope = turbulentSlope(TURBULENT, turbulentFactor);
    }

    /**
     * Returns the friction of pipes with a relative roughness.
     *
     * @param relativeRoughness {@code ε/D}, from 0 to 0.05
     */
    public static Friction of(double relativeRoughness) {
        return new Friction(relativeRoughness);
    }

    /** Returns the friction factor at a Reynolds number above 0. */
    public double factor(double reynolds) {
        if (reynolds >= TURBULENT) {
            return colebrook(reynolds);
        }
        if (reynolds <= LAMINAR) {
            return 64 / reynolds;
        }
        double t = (reynolds - LAMINAR) / SPAN;
        double u = 1 - t;
        return u * u * ((1 + 2 * t) * LAMINAR_FACTOR + t * SPAN * LAMINAR_SLOPE)
                + t * t * ((1 + 2 * u) * turbulentFactor - u * SPAN * turbulentSlope);
    }

    /** Returns by how much the friction factor changes with the Reynolds number, where {@code factor} is its value. */
    public double slope(double reynolds, double factor) {
        if (reynolds >= TURBULENT) {
            return turbulentSlope(reynolds, factor);
        }
        if (reynolds <= LAMINAR) {
            return -factor / reynolds;
        }
        double t = (reynolds - LAMINAR) / SPAN;
        double u = 1 - t;
        return 6 * t * u * (turbulentFactor - LAMINAR_FACTOR) / SPAN
                + u * (1 - 3 * t) * LAMINAR_SLOPE
                + t * (1 - 3 * u) * turbulentSlope;
    }

    private double colebrook(double reynolds) {
        double x = root(reynolds, 0);
        return 1 / (x * x);
    }

    /**
     * Returns {@code 1/√f} of turbulent flow. A step cubes the error: from a start within 2 % two steps leave less than
     * rounding, from a near guess one does.
     *
     * @param guess what it is nearly, or 0 if that is not known
     */
    double root(double reynolds, double guess) {
        double smooth = SMOOTH / reynolds;
        double x = guess > 0 ? guess : -0.9 * TWICE_LG * Math.log(start + 6.9 / reynolds);
        double before;
        do {
            before = x;
            x = step(x, smooth);
        } while (Math.abs(x - before) > NEAR * x);
        return x;
    }

    /** Returns {@code Re·df/dRe} of turbulent flow, where {@code root} is {@code 1/√f}. */
    double relativeSlope(double reynolds, double root) {
        double smooth = SMOOTH / reynolds;
        double bend = TWICE_LG * smooth / (rough + smooth * root);
        return -2 * bend / ((1 + bend) * root * root);
    }

    private double step(double x, double smooth) {
        double inside = rough + smooth * x;
        double off = x + TWICE_LG * Math.log(inside);
        double bend = TWICE_LG * smooth / inside;
        double rise = 1 + bend;
        return x - off / (rise + off * bend * bend / (2 * TWICE_LG * rise));
    }

    private double turbulentSlope(double reynolds, double factor) {
        double smooth = SMOOTH / reynolds;
        double bend = TWICE_LG * smooth / (rough + smooth / Math.sqrt(factor));
        return -2 * factor * bend / (reynolds * (1 + bend));
    }
}
