package headrace.drive;

import headrace.problem.Notes;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.List;

/**
 * The default of the US pump procedure: motor and drive lose together the full-load loss of the motor times {@code z(x)
 * = a·x² + b·x + c}, with {@code x} shaft power over rated power. On the mains the motor alone loses its full-load loss
 * times {@code y(x) = −0.4508·x³ + 1.2399·x² − 0.4301·x + 0.6410}.
 *
 * <p>{@code z} contains the motor: no motor loss is ever added to it.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Factors on the full-load loss of the motor. Speed has no say of its own.
 *   <dt>Limits
 *   <dd>{@code z} is used from 5 to 110 % load, {@code y} from 10 to 110 %; outside, the factor stays at the end of the
 *       range and the result carries {@code PART_LOAD_OUTSIDE_MODEL}. The ranges are our reading. Motors of 1 to 200
 *       hp, else {@code MOTOR_SIZE_OUTSIDE_MODEL}. The procedure applies it to a default motor, here it is applied to
 *       the motor that was chosen.
 *   <dt>Errors
 *   <dd>None of its own.
 *   <dt>Source
 *   <dd>10 CFR 431 Subpart Y, Appendix A, 2016 procedure; from memory, unconfirmed, checked at y(1) = 1.
 * </dl>
 */
public record CombinedLosses() implements LossModel {
    private static final double MOST_LOAD = 1.1;
    private static final double LEAST_WITH_DRIVE = 0.05;
    private static final double LEAST_ON_MAINS = 0.10;

    private static final Cubic ON_MAINS = new Cubic(-0.4508, 1.2399, -0.4301, 0.6410, LEAST_ON_MAINS);

    /** Up to hp, a, b, c. */
    private static final double[][] WITH_DRIVE = {
        {5, -0.4658, 1.4965, 0.5303},
        {20, -1.3198, 2.9551, 0.1052},
        {50, -1.5122, 3.0777, 0.1847},
        {Double.POSITIVE_INFINITY, -0.8914, 2.8846, 0.2625}
    };

    /**
     * Returns z(x) as the procedure computes it, which keeps to no range.
     *
     * @param rated the rated power of the motor
     * @param load shaft power over rated power
     */
    public static double factorWithDrive(Power rated, double load) {
        return withDrive(rated).ofLoad(load);
    }

    /**
     * Returns y(x) as the procedure computes it, which keeps to no range.
     *
     * @param load shaft power over rated power
     */
    public static double factorOnMains(double load) {
        return ON_MAINS.ofLoad(load);
    }

    private static Cubic withDrive(Power rated) {
        double horsepower = rated.toHorsepower();
        int band = 0;
        while (horsepower > WITH_DRIVE[band][0] * (1 + DriveTrain.ROUNDING)) {
            band++;
        }
        double[] row = WITH_DRIVE[band];
        return new Cubic(0, row[1], row[2], row[3], LEAST_WITH_DRIVE);
    }

    @Override
    public String name() {
        return "combined";
    }

    @Override
    public String statement() {
        return "losses of motor and drive together = full-load loss of the motor times z = a·x² + b·x + c by size of motor;"
                + " on the mains the motor alone, times y = −0.4508·x³ + 1.2399·x² − 0.4301·x + 0.6410 (x load as a share"
                + " of rated; 10 CFR 431 Subpart Y Appendix A, 2016 procedure, from memory)";
    }

    @Override
    public boolean followsLoad() {
        return true;
    }

    @Override
    public LossCurve withDrive(Motor motor, Drive drive) {
        Cubic factor = withDrive(motor.rated());
        return new Curve(motor, factor, Losses.Place.MOTOR_AND_DRIVE, "motor and drive together");
    }

    @Override
    public LossCurve onMains(Motor motor) {
        return new Curve(motor, ON_MAINS, Losses.Place.MOTOR, "motor");
    }

    private record Cubic(double a3, double a2, double a1, double a0, double least) {
        double at(double load) {
            return ofLoad(Math.min(Math.max(load, least), MOST_LOAD));
        }

        double ofLoad(double x) {
            return ((a3 * x + a2) * x + a1) * x + a0;
        }
    }

    private record Curve(double ratedWatts, double lossWatts, Cubic factor, Losses.Place place, String part, Notes size)
            implements LossCurve {
        Curve(Motor motor, Cubic factor, Losses.Place place, String part) {
            this(motor.rated().watts(), motor.fullLoadLoss().watts(), factor, place, part, sizeNotes(motor));
        }

        @Override
        public double watts(double shaftWatts, double speedRatio) {
            return lossWatts * factor.at(shaftWatts / ratedWatts);
        }

        @Override
        public List<Losses.Part> parts(double shaftWatts, double speedRatio) {
            return List.of(new Losses.Part(place, part, Power.watts(watts(shaftWatts, speedRatio))));
        }

        @Override
        public Notes notes(double shaftWatts, double speedRatio) {
            double load = shaftWatts / ratedWatts;
            if (load >= factor.least() && load <= MOST_LOAD) {
                return size;
            }
            return size.with(
                    DriveProblem.PART_LOAD_OUTSIDE_MODEL,
                    "The loss model 'combined' is used from " + Ratio.of(factor.least()) + " to "
                            + Ratio.of(MOST_LOAD) + " of rated power, the load is " + Ratio.of(load)
                            + "; the loss stays at the end of the range");
        }

        private static Notes sizeNotes(Motor motor) {
            double horsepower = motor.rated().toHorsepower();
            if (horsepower >= 1 - DriveTrain.ROUNDING && horsepower <= 200 * (1 + DriveTrain.ROUNDING)) {
                return Notes.NONE;
            }
            return Notes.NONE.with(
                    DriveProblem.MOTOR_SIZE_OUTSIDE_MODEL,
                    "The loss model 'combined' is made for motors of 1 to 200 hp, this one has " + motor.rated());
        }
    }
}
