package headrace.drive;

import headrace.problem.Notes;
import headrace.units.Ratio;

/**
 * The losses of one drive in W over frequency {@code f} and torque current {@code i} as shares of their rated values:
 * {@code c0 + c1·f + c2·i + c3·f·i + c4·i²}.
 */
record DriveTerms(
        double ratedWatts, Watts watts, double magnetising, LossPoint.Range frequency, LossPoint.Range current) {
    private static final LossPoint.Range ANY = new LossPoint.Range(0, Double.MAX_VALUE);

    record Watts(double c0, double c1, double c2, double c3, double c4) {
        double at(double frequency, double current) {
            return c0 + c1 * frequency + (c2 + c3 * frequency + c4 * current) * current;
        }
    }

    /** The declared losses of a drive where it has them, else its reference loss in an assumed shape. */
    static DriveTerms of(Drive drive, DriveShape shape) {
        double magnetising = drive.extras().magnetisingCurrent().value();
        double rated = drive.rated().watts();
        return drive.extras()
                .declared()
                .map(losses -> new DriveTerms(
                        rated, losses.watts(), magnetising, losses.frequencies(), losses.torqueCurrents()))
                .orElseGet(() ->
                        new DriveTerms(rated, shape.times(drive.referenceLoss().watts()), magnetising, ANY, ANY));
    }

    double at(double frequency, double torqueCurrent) {
        return watts.at(frequency, current(torqueCurrent));
    }

    /** All but the current is the same for every load of a speed. */
    void fill(double currentPerWatt, double frequencyNow, LossArrays arrays, int count) {
        double[] shaft = arrays.shafts();
        double[] out = arrays.drives();
        double still = magnetising * magnetising;
        double square = (1 - still) * currentPerWatt * currentPerWatt;
        double constant = watts.c0 + watts.c1 * frequencyNow;
        double slope = watts.c2 + watts.c3 * frequencyNow;
        double bend = watts.c4;
        for (int i = 0; i < count; i++) {
            double squared = still + square * shaft[i] * shaft[i];
            out[i] = constant + slope * Math.sqrt(squared) + bend * squared;
        }
    }

    /**
     * Adds the slopes; without magnetising current the total current has a kink at no load, where its slope counts 0.
     */
    void addSlopes(double currentPerWatt, double frequencyNow, LossSlopes slopes, int count) {
        double[] shaft = slopes.shafts();
        double[] perShaft = slopes.perShaft();
        double[] perSpeed = slopes.perSpeed();
        double still = magnetising * magnetising;
        double square = (1 - still) * currentPerWatt * currentPerWatt;
        double slope = watts.c2 + watts.c3 * frequencyNow;
        double twice = 2 * watts.c4;
        double least = Double.MIN_NORMAL;
        for (int i = 0; i < count; i++) {
            double torque = square * shaft[i];
            double current = Math.sqrt(still + torque * shaft[i] + least);
            double growth = slope / current + twice;
            perShaft[i] += growth * torque;
            perSpeed[i] += watts.c1 + watts.c3 * current - growth * torque * shaft[i] / frequencyNow;
        }
    }

    /**
     * The magnetising current stands at a right angle to the torque current, both as shares of their sum at rated load.
     */
    private double current(double torqueCurrent) {
        return magnetising == 0
                ? torqueCurrent
                : Math.sqrt(
                        magnetising * magnetising + (1 - magnetising * magnetising) * torqueCurrent * torqueCurrent);
    }

    Notes notes(double frequencyNow, double torqueCurrent) {
        Notes notes = Notes.NONE;
        if (torqueCurrent > 1 + DriveTrain.ROUNDING) {
            notes = notes.with(
                    DriveProblem.DRIVE_OVERLOAD,
                    "The load takes " + Ratio.of(torqueCurrent)
                            + " of the torque current for which the drive is rated");
        }
        if (!frequency.holds(frequencyNow) || !current.holds(current(torqueCurrent))) {
            notes = notes.with(
                    DriveProblem.PART_LOAD_OUTSIDE_MODEL,
                    "The losses of the drive are declared for " + frequency + " frequency and " + current
                            + " torque current, the load has " + Ratio.of(current(torqueCurrent)) + " at "
                            + Ratio.of(frequencyNow));
        }
        return notes;
    }
}
