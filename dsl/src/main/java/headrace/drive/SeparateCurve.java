package headrace.drive;

import headrace.problem.Notes;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.Arrays;
import java.util.List;

/** Losses of motor and drive apart, with the numbers of one motor in; on the mains the drive is {@code null}. */
record SeparateCurve(MotorTerms motor, DriveTerms drive, Bounds bounds, Notes own) implements LossCurve {
    /** On the mains a motor turns a little faster than at rated load, up to its synchronous speed. */
    static final double MOST_ON_MAINS = 1 / (1 - Motor.MOST_SLIP);

    /** Where a model of a name holds. */
    record Bounds(String model, LossPoint.Range torque, LossPoint.Range speed) {}

    @Override
    public double watts(double shaftWatts, double speedRatio) {
        double torque = torque(shaftWatts, speedRatio);
        double lost = motor.at(torque, speedRatio);
        return drive == null ? lost : lost + drive.at(speedRatio, current(torque));
    }

    @Override
    public void fill(double speedRatio, LossArrays arrays, int count) {
        double perWatt = torque(1, speedRatio);
        motor.fill(perWatt, speedRatio, arrays, count);
        if (drive == null) {
            Arrays.fill(arrays.drives(), 0, count, 0.0);
        } else {
            drive.fill(current(perWatt), speedRatio, arrays, count);
        }
    }

    @Override
    public void fillShafts(double[] taken, double[] speedRatios, double[] shafts, int count) {
        new SeparateInverse(motor, drive).fill(taken, speedRatios, shafts, count);
    }

    @Override
    public void fillSlopes(double speedRatio, LossSlopes slopes, int count) {
        double perWatt = torque(1, speedRatio);
        motor.fillSlopes(perWatt, speedRatio, slopes, count);
        if (drive != null) {
            drive.addSlopes(current(perWatt), speedRatio, slopes, count);
        }
    }

    @Override
    public List<Losses.Part> parts(double shaftWatts, double speedRatio) {
        double torque = torque(shaftWatts, speedRatio);
        Losses.Part copper = part("motor copper", motor.copper(torque));
        Losses.Part iron = part("motor iron", motor.iron(speedRatio));
        Losses.Part friction = part("motor friction and windage", motor.friction(speedRatio));
        Losses.Part stray = part("motor stray load", motor.stray(torque, speedRatio));
        if (drive == null) {
            return List.of(copper, iron, friction, stray);
        }
        Power lost = Power.watts(drive.at(speedRatio, current(torque)));
        return List.of(copper, iron, friction, stray, new Losses.Part(Losses.Place.DRIVE, "drive", lost));
    }

    @Override
    public Notes notes(double shaftWatts, double speedRatio) {
        double torque = torque(shaftWatts, speedRatio);
        Notes notes = own;
        if (!bounds.torque.holds(torque) || !bounds.speed.holds(speedRatio)) {
            notes = notes.with(
                    DriveProblem.PART_LOAD_OUTSIDE_MODEL,
                    "The loss model '" + bounds.model + "' holds for " + bounds.torque + " torque and " + bounds.speed
                            + " speed, the load has " + Ratio.of(torque) + " torque at " + Ratio.of(speedRatio)
                            + " speed");
        }
        return drive == null ? notes : notes.and(drive.notes(speedRatio, current(torque)));
    }

    private static Losses.Part part(String name, double watts) {
        return new Losses.Part(Losses.Place.MOTOR, name, Power.watts(watts));
    }

    private double torque(double shaftWatts, double speedRatio) {
        return shaftWatts / (motor.ratedWatts() * speedRatio);
    }

    private double current(double torque) {
        return torque * motor.ratedWatts() / drive.ratedWatts();
    }
}
