package headrace.drive;

import headrace.problem.Notes;
import headrace.units.Power;
import java.util.List;

/**
 * Motor and drive keep the efficiency they have at full load.
 *
 * <p>Good for a first estimate at full load and for comparison with such estimates. At part load it leaves out what
 * does not shrink with the load, and so it makes every control law look better than it is; the part-load rule refuses
 * it.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Losses in proportion to the shaft power.
 *   <dt>Limits
 *   <dd>Near full load only.
 *   <dt>Errors
 *   <dd>None of its own.
 *   <dt>Source
 *   <dd>Common practice, no source.
 * </dl>
 */
public record ConstantEfficiency() implements LossModel {
    @Override
    public String name() {
        return "constant efficiency";
    }

    @Override
    public String statement() {
        return "motor and drive keep their full-load efficiency at every load and speed (common practice, no source; says"
                + " nothing of part load)";
    }

    @Override
    public boolean followsLoad() {
        return false;
    }

    @Override
    public LossCurve withDrive(Motor motor, Drive drive) {
        double motorShare = motor.fullLoadLoss().over(motor.rated()).value();
        double driveShare = drive.referenceLoss().over(drive.rated()).value();
        return new Curve(motorShare, driveShare);
    }

    @Override
    public LossCurve onMains(Motor motor) {
        return new Curve(motor.fullLoadLoss().over(motor.rated()).value(), 0);
    }

    /** Losses as shares of the shaft power. */
    private record Curve(double motor, double drive) implements LossCurve {
        @Override
        public double watts(double shaftWatts, double speedRatio) {
            return (motor + drive) * shaftWatts;
        }

        @Override
        public List<Losses.Part> parts(double shaftWatts, double speedRatio) {
            Losses.Part first = new Losses.Part(Losses.Place.MOTOR, "motor", Power.watts(motor * shaftWatts));
            if (drive == 0) {
                return List.of(first);
            }
            return List.of(first, new Losses.Part(Losses.Place.DRIVE, "drive", Power.watts(drive * shaftWatts)));
        }

        @Override
        public Notes notes(double shaftWatts, double speedRatio) {
            return Notes.NONE;
        }
    }
}
