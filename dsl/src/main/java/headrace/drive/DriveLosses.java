package headrace.drive;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.units.Numbers;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.List;

/**
 * Losses of a drive between its declared points: {@code c0 + c1·f + c2·i + c3·f·i + c4·i²} in W, least squares over the
 * points, with frequency {@code f} and torque current {@code i} as shares of their rated values.
 *
 * <dl>
 *   <dt>Units
 *   <dd>W; shares of rated frequency and torque current.
 *   <dt>Limits
 *   <dd>Frequencies and torque currents of the points; a point at 90 % frequency stands for those up to 100 %. Above 0
 *       everywhere from 0 to 100 % of both, or refused. A residual above 5 % of the mean loss is noted, above 25 %
 *       refused.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code TOO_FEW_LOSS_POINTS}, {@code LOSS_POINTS_ALIKE}, {@code LOSS_POINTS_CONTRADICT} or
 *       {@code DRIVE_LOSS_NOT_POSITIVE}.
 *   <dt>Source
 *   <dd>IEC 61800-9-2 has the eight points (0;25), (0;50), (0;100), (50;25), (50;50), (50;100), (90;50) and (90;100);
 *       the formula between them is our own.
 * </dl>
 */
public final class DriveLosses {
    private static final double REFERENCE_FREQUENCY = 0.9;
    private static final LossFit.Form FORM = new LossFit.Form(
            "the losses of a drive",
            false,
            "five points or more, at two frequencies and at three torque currents or more");

    private final List<LossPoint> points;
    private final DriveTerms.Watts watts;
    private final LossFit fit;

    private DriveLosses(List<LossPoint> points) {
        this.points = List.copyOf(points);
        this.fit = LossFit.of(points, FORM, DriveLosses::terms);
        this.watts = new DriveTerms.Watts(
                fit.fit().coefficient(0),
                fit.fit().coefficient(1),
                fit.fit().coefficient(2),
                fit.fit().coefficient(3),
                fit.fit().coefficient(4));
        requirePositive();
    }

    /** Returns the losses nearest the declared points, each at a frequency and a torque current. */
    public static DriveLosses of(List<LossPoint> points) {
        return new DriveLosses(points);
    }

    /** Returns the points. */
    public List<LossPoint> points() {
        return points;
    }

    /** Returns what the formula gives at a frequency and a torque current, as shares of rated, in W. */
    public double wattsAt(double frequency, double torqueCurrent) {
        return watts.at(frequency, torqueCurrent);
    }

    /** Returns the loss at 90 % frequency and 100 % torque current: as declared there, else by the formula. */
    public Power referenceLoss() {
        return points.stream()
                .filter(point -> Math.abs(point.speed().value() - REFERENCE_FREQUENCY) < DriveTrain.ROUNDING)
                .filter(point -> Math.abs(point.torque().value() - 1) < DriveTrain.ROUNDING)
                .map(LossPoint::loss)
                .findFirst()
                .orElseGet(() -> Power.watts(wattsAt(REFERENCE_FREQUENCY, 1)));
    }

    /** Returns the root mean square of what formula and points differ by, over the mean loss of the points. */
    public Ratio residual() {
        return fit.residual();
    }

    /** Returns what is to be said of the fit. */
    public Notes notes() {
        return fit.notes();
    }

    /** Returns the formula with its numbers and its residual. */
    public String statement() {
        return "drive loss in W = " + Numbers.print(watts.c0()) + " + " + Numbers.print(watts.c1()) + "·f + "
                + Numbers.print(watts.c2()) + "·i + " + Numbers.print(watts.c3()) + "·f·i + "
                + Numbers.print(watts.c4()) + "·i², fitted to " + points.size() + " declared points with a residual of "
                + residual() + " of their mean";
    }

    DriveTerms.Watts watts() {
        return watts;
    }

    LossPoint.Range frequencies() {
        return LossPoint.Range.of(points, LossPoint::speed).towardsRated();
    }

    LossPoint.Range torqueCurrents() {
        return LossPoint.Range.of(points, LossPoint::torque);
    }

    /** Straight in frequency and square in current: least at an end of f, and at an end or the vertex of i. */
    private void requirePositive() {
        for (double frequency : new double[] {0, 1}) {
            double vertex = watts.c4() > 0 ? -(watts.c2() + watts.c3() * frequency) / (2 * watts.c4()) : 0;
            for (double current : new double[] {0, 1, Math.min(1, Math.max(0, vertex))}) {
                double lost = wattsAt(frequency, current);
                if (!(lost > 0)) {
                    throw new Refusal(
                            DriveProblem.DRIVE_LOSS_NOT_POSITIVE,
                            "Asked to fit the losses of a drive to " + points.size()
                                    + " points, and the formula gives " + Numbers.print(lost) + " W at "
                                    + Ratio.of(frequency) + " frequency and " + Ratio.of(current) + " torque current",
                            "A drive loses something at every frequency and current",
                            "Look for a typing error, or add points at low frequency and low current");
                }
            }
        }
    }

    private static double[] terms(LossPoint point) {
        double f = point.speed().value();
        double i = point.torque().value();
        return new double[] {1, f, i, f * i, i * i};
    }

    @Override
    public String toString() {
        return statement();
    }
}
