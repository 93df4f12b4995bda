package headrace.drive;

import headrace.problem.Notes;
import headrace.units.Numbers;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.List;

/**
 * Losses of motor and drive apart: each with its own parts, which follow torque and speed.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Torque, speed, frequency and torque current as shares of their rated values; slip is left out, so that
 *       frequency and speed are the same share.
 *   <dt>Limits
 *   <dd>Up to rated speed and up to 110 % of rated torque; a load beyond carries {@code PART_LOAD_OUTSIDE_MODEL}.
 *   <dt>Errors
 *   <dd>None of its own.
 *   <dt>Source
 *   <dd>Full-load loss of the motor and reference loss of the drive as these say; the shares of the parts are assumed
 *       by this project and can be replaced.
 * </dl>
 *
 * @param motor the shares of the motor's losses
 * @param drive the shape of the drive's losses
 */
public record SeparateLosses(MotorShares motor, DriveShape drive) implements LossModel {
    /** The model with the assumed shares. */
    public static final SeparateLosses ASSUMED = new SeparateLosses(MotorShares.ASSUMED, DriveShape.ASSUMED);

    private static final double MOST_TORQUE = 1.1;

    @Override
    public String name() {
        return "separate";
    }

    @Override
    public String statement() {
        return "losses of motor and drive apart: " + motor.statement() + "; " + drive.statement()
                + " (t torque, s and f speed, i torque current, as shares of rated; the shares are assumed)";
    }

    @Override
    public boolean followsLoad() {
        return true;
    }

    @Override
    public LossCurve withDrive(Motor driven, Drive by) {
        return new Curve(
                this,
                driven.rated().watts(),
                driven.fullLoadLoss().watts(),
                by.referenceLoss().watts(),
                by.rated().watts());
    }

    @Override
    public LossCurve onMains(Motor driven) {
        return new Curve(
                this,
                driven.rated().watts(),
                driven.fullLoadLoss().watts(),
                0,
                driven.rated().watts());
    }

    /** On the mains the reference loss of the drive is 0. */
    private record Curve(
            SeparateLosses model, double ratedWatts, double motorWatts, double driveWatts, double driveRatedWatts)
            implements LossCurve {
        @Override
        public double watts(double shaftWatts, double speedRatio) {
            double torque = torque(shaftWatts, speedRatio);
            MotorShares shares = model.motor;
            double motor = shares.copperAt(torque)
                    + shares.ironAt(speedRatio)
                    + shares.frictionAt(speedRatio)
                    + shares.strayAt(torque, speedRatio);
            return motorWatts * motor + driveWatts * model.drive.at(speedRatio, current(torque));
        }

        @Override
        public List<Losses.Part> parts(double shaftWatts, double speedRatio) {
            double torque = torque(shaftWatts, speedRatio);
            MotorShares shares = model.motor;
            Losses.Part copper = motorPart("motor copper", shares.copperAt(torque));
            Losses.Part iron = motorPart("motor iron", shares.ironAt(speedRatio));
            Losses.Part friction = motorPart("motor friction and windage", shares.frictionAt(speedRatio));
            Losses.Part stray = motorPart("motor stray load", shares.strayAt(torque, speedRatio));
            if (driveWatts == 0) {
                return List.of(copper, iron, friction, stray);
            }
            Power lost = Power.watts(driveWatts * model.drive.at(speedRatio, current(torque)));
            return List.of(copper, iron, friction, stray, new Losses.Part(Losses.Place.DRIVE, "drive", lost));
        }

        @Override
        public Notes notes(double shaftWatts, double speedRatio) {
            double torque = torque(shaftWatts, speedRatio);
            Notes notes = Notes.NONE;
            if (torque > MOST_TORQUE || speedRatio > 1 + DriveTrain.ROUNDING) {
                notes = notes.with(
                        DriveProblem.PART_LOAD_OUTSIDE_MODEL,
                        "The loss model 'separate' holds up to 110 % torque and 100 % speed, the load has "
                                + Ratio.of(torque) + " torque at " + Ratio.of(speedRatio) + " speed");
            }
            double current = current(torque);
            if (driveWatts > 0 && current > 1 + DriveTrain.ROUNDING) {
                notes = notes.with(
                        DriveProblem.DRIVE_OVERLOAD,
                        "The load takes " + Numbers.print(100 * current)
                                + " % of the torque current for which the drive is rated");
            }
            return notes;
        }

        private Losses.Part motorPart(String name, double share) {
            return new Losses.Part(Losses.Place.MOTOR, name, Power.watts(motorWatts * share));
        }

        private double torque(double shaftWatts, double speedRatio) {
            return shaftWatts / (ratedWatts * speedRatio);
        }

        private double current(double torque) {
            return torque * ratedWatts / driveRatedWatts;
        }
    }
}
