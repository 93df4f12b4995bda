package headrace.drive;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.units.Numbers;
import headrace.units.Ratio;
import java.util.List;

/**
 * Losses of a motor fitted to given points: {@code iron·s^a + copper·t² + friction·s^b + stray·t²·s} in W, with torque
 * {@code t} and speed {@code s} as shares of their rated values. No term is below 0. The drive, if there is one, loses
 * what is declared for it, or its reference loss in the assumed shape.
 *
 * <dl>
 *   <dt>Units
 *   <dd>W; shares of rated torque and speed.
 *   <dt>Limits
 *   <dd>The torques and speeds of the points, a speed of 90 % standing for those up to rated; a load beyond carries
 *       {@code PART_LOAD_OUTSIDE_MODEL}. Exponents a from 1.3 to 2 and b from 2 to 3. A residual above 5 % of the mean
 *       loss is noted, above 25 % refused; so is a loss at full load noted that differs by more than 5 % from what the
 *       efficiency of the motor says.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code TOO_FEW_LOSS_POINTS}, {@code LOSS_POINTS_ALIKE}, {@code LOSS_POINTS_CONTRADICT} or
 *       {@code IMPOSSIBLE_LOSSES}.
 *   <dt>Source
 *   <dd>The form is that of textbooks on inverter duty; points such as the seven of IEC 60034-2-3.
 * </dl>
 */
public final class FittedLosses implements LossModel {
    private static final double DIFFERS = 0.05;
    private static final LossFit.Form FORM = new LossFit.Form(
            "the losses of a motor", true, "four points or more, at two speeds and at two torques or more");

    private final List<LossPoint> points;
    private final Exponents exponents;
    private final MotorTerms.Watts watts;
    private final LossFit fit;

    /**
     * How iron and friction follow the speed.
     *
     * @param iron the exponent a of the iron losses, 1.3 to 2
     * @param friction the exponent b of friction and windage, 2 to 3
     */
    public record Exponents(double iron, double friction) {
        /** The middle of both ranges, nearly. */
        public static final Exponents USUAL = new Exponents(1.5, 2.5);

        /** Refuses exponents that no motor has. */
        public Exponents {
            if (!(iron >= 1.3 && iron <= 2 && friction >= 2 && friction <= 3)) {
                throw new Refusal(
                        DriveProblem.IMPOSSIBLE_LOSSES,
                        "Asked for iron losses with the exponent " + iron + " of speed and friction with " + friction,
                        "Iron losses follow the speed with 1.3 to 2, friction and windage with 2 to 3",
                        "Leave them out for 1.5 and 2.5");
            }
        }
    }

    private FittedLosses(List<LossPoint> points, Exponents exponents) {
        this.points = List.copyOf(points);
        this.exponents = exponents;
        this.fit = LossFit.of(points, FORM, point -> terms(point, exponents));
        this.watts = new MotorTerms.Watts(
                0,
                fit.fit().coefficient(0),
                fit.fit().coefficient(1),
                fit.fit().coefficient(2),
                fit.fit().coefficient(3));
    }

    /** Returns the losses nearest the points. */
    public static FittedLosses of(List<LossPoint> points) {
        return of(points, Exponents.USUAL);
    }

    /** Returns the losses nearest the points, with other exponents of speed. */
    public static FittedLosses of(List<LossPoint> points, Exponents exponents) {
        return new FittedLosses(points, exponents);
    }

    /** Returns the points. */
    public List<LossPoint> points() {
        return points;
    }

    /** Returns what the formula gives at a speed and a torque, as shares of rated, in W. */
    public double wattsAt(double speed, double torque) {
        return new MotorTerms(1, watts, exponents.iron, exponents.friction).at(torque, speed);
    }

    /** Returns the root mean square of what formula and points differ by, over the mean loss of the points. */
    public Ratio residual() {
        return fit.residual();
    }

    @Override
    public String name() {
        return "fitted";
    }

    @Override
    public String statement() {
        return "motor loss in W = " + Numbers.print(watts.iron()) + "·s^" + Numbers.print(exponents.iron) + " + "
                + Numbers.print(watts.copper()) + "·t² + " + Numbers.print(watts.friction()) + "·s^"
                + Numbers.print(exponents.friction) + " + " + Numbers.print(watts.stray()) + "·t²·s, fitted to "
                + points.size() + " points with a residual of " + residual()
                + " of their mean; drive as declared, else its reference loss in the assumed shape (t torque, s speed,"
                + " as shares of rated)";
    }

    @Override
    public boolean followsLoad() {
        return true;
    }

    @Override
    public Notes notes() {
        return fit.notes();
    }

    @Override
    public boolean usesDeclaredLosses() {
        return true;
    }

    @Override
    public LossCurve withDrive(Motor motor, Drive drive) {
        return curve(motor, DriveTerms.of(drive, DriveShape.ASSUMED));
    }

    @Override
    public LossCurve onMains(Motor motor) {
        return curve(motor, null);
    }

    private LossCurve curve(Motor motor, DriveTerms drive) {
        double rated = motor.rated().watts();
        SeparateCurve.Bounds bounds = new SeparateCurve.Bounds(
                name(),
                LossPoint.Range.of(points, LossPoint::torque),
                LossPoint.Range.of(points, LossPoint::speed).towardsRated());
        Notes notes = fit.notes();
        double full = wattsAt(1, 1);
        double stated = motor.fullLoadLoss().watts();
        if (Math.abs(full - stated) > DIFFERS * stated) {
            notes = notes.with(
                    DriveProblem.FITTED_LOSS_DIFFERS,
                    "At full load the fitted losses are " + Numbers.print(full) + " W, the efficiency of the " + motor
                            + " says " + Numbers.print(stated) + " W");
        }
        return new SeparateCurve(
                new MotorTerms(rated, watts, exponents.iron, exponents.friction), drive, bounds, notes);
    }

    private static double[] terms(LossPoint point, Exponents exponents) {
        double s = point.speed().value();
        double t = point.torque().value();
        return new double[] {
            t * t, MotorTerms.power(s, exponents.iron), MotorTerms.power(s, exponents.friction), t * t * s
        };
    }
}
