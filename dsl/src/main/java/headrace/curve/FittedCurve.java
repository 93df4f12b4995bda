package headrace.curve;

import headrace.numeric.Polynomial;
import headrace.numeric.PolynomialFit;
import headrace.numeric.ShapedFit;
import headrace.numeric.SmoothCurve;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Kind;
import headrace.units.Quantity;
import headrace.units.Ratio;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/**
 * A polynomial of flow fitted to a pump test at its own speed, with its scatter and its bands.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Coefficients in the SI unit of the value per power of m³/s.
 *   <dt>Limits
 *   <dd>Scatter and bands exist only where six points or more were fitted, bands only where no shape was imposed. The
 *       bands take the scatter of the points as random, alike along the curve, and normally distributed; they hold no
 *       error that all points share.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_CONFIDENCE}.
 *   <dt>Source
 *   <dd>Weighted least squares; tables by the monotone cubics of Fritsch and Carlson (1980); bands with Student's t as
 *       in Draper and Smith, Applied Regression Analysis.
 * </dl>
 *
 * @param <Q> head or power
 */
public final class FittedCurve<Q extends Quantity<Q>> {
    private final Kind<Q> kind;
    private final SmoothCurve curve;
    private final Optional<PolynomialFit> scatter;
    private final Optional<Q> residual;
    private final int degreesOfFreedom;

    private FittedCurve(
            Kind<Q> kind, SmoothCurve curve, Optional<PolynomialFit> scatter, Optional<Q> residual, int freedom) {
        this.kind = kind;
        this.curve = curve;
        this.scatter = scatter;
        this.residual = residual;
        this.degreesOfFreedom = freedom;
    }

    static <Q extends Quantity<Q>> FittedCurve<Q> of(Kind<Q> kind, PolynomialFit fit, boolean withScatter) {
        return withScatter
                ? new FittedCurve<>(
                        kind,
                        fit.polynomial(),
                        Optional.of(fit),
                        Optional.of(kind.make().apply(fit.standardDeviation())),
                        fit.degreesOfFreedom())
                : known(kind, fit.polynomial());
    }

    /** A curve that a condition on its shape moved from the nearest one: it has a residual, but no band. */
    static <Q extends Quantity<Q>> FittedCurve<Q> held(Kind<Q> kind, ShapedFit fit, int freedom) {
        Optional<Q> residual = freedom == 0
                ? Optional.empty()
                : Optional.of(kind.make().apply(Math.sqrt(fit.sumOfSquares() / freedom)));
        return new FittedCurve<>(kind, fit.polynomial(), Optional.empty(), residual, freedom);
    }

    static <Q extends Quantity<Q>> FittedCurve<Q> known(Kind<Q> kind, SmoothCurve curve) {
        return new FittedCurve<>(kind, curve, Optional.empty(), Optional.empty(), 0);
    }

    SmoothCurve curve() {
        return curve;
    }

    Optional<PolynomialFit> scatter() {
        return scatter;
    }

    /** Returns the degree. */
    public int degree() {
        return curve.degree();
    }

    /** Returns the coefficients, the constant first, in SI units per power of m³/s; none if it is made of pieces. */
    public List<Double> coefficients() {
        return curve instanceof Polynomial polynomial
                ? DoubleStream.of(polynomial.coefficients()).boxed().toList()
                : List.of();
    }

    /** Returns the standard deviation of the points about the curve, if there were enough points to tell. */
    public Optional<Q> residual() {
        return residual;
    }

    /** Returns the points beyond the number of coefficients. */
    public int degreesOfFreedom() {
        return degreesOfFreedom;
    }

    /**
     * Returns half the width of the band that holds the curve that many such tests would give on average.
     *
     * @param flow the flow, at the speed of the test
     * @param confidence how sure, such as 95 %
     */
    public Optional<Q> meanBandAt(Flow flow, Ratio confidence) {
        double share = checked(confidence);
        return scatter.map(fit -> quantity(fit.meanHalfWidthAt(flow.cubicMetresPerSecond(), share)));
    }

    /**
     * Returns half the width of the band that holds one more reading.
     *
     * @param flow the flow, at the speed of the test
     * @param confidence how sure, such as 95 %
     */
    public Optional<Q> singleTestBandAt(Flow flow, Ratio confidence) {
        double share = checked(confidence);
        return scatter.map(fit -> quantity(fit.singleHalfWidthAt(flow.cubicMetresPerSecond(), share)));
    }

    static double checked(Ratio confidence) {
        double share = confidence.value();
        if (!(share > 0 && share < 1)) {
            throw new Refusal(
                    CurveProblem.IMPOSSIBLE_CONFIDENCE,
                    "Asked for a band with a confidence of " + confidence,
                    "A confidence lies between 0 and 100 %, both excluded",
                    "Use 95 % if nothing else is agreed");
        }
        return share;
    }

    private Q quantity(double si) {
        return kind.make().apply(si);
    }

    /** Returns the degree, the residual and whether there is a band, in one line. */
    @Override
    public String toString() {
        String shape = curve instanceof Polynomial ? "of degree " + degree() : "through every point by monotone cubics";
        String bands = scatter.isPresent() ? "" : ", no band";
        return kind + " " + shape + ", " + residual().map(r -> "residual " + r).orElse("no residual") + bands;
    }
}
