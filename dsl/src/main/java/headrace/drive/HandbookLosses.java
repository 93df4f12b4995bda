package headrace.drive;

import headrace.problem.Notes;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.List;

/**
 * Part-load figures of public handbooks: the motor's efficiency at a load, relative to full load, by polynomials of its
 * size; the drive's efficiency by a table of size and load.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Load of the motor: shaft power over rated power. Load of the drive: what the motor takes, over what a motor of
 *       the drive's rating takes at full load. Speed has no say of its own.
 *   <dt>Limits
 *   <dd>5 to 110 % load of the motor; below, its loss stays at the end of the range, and both carry
 *       {@code PART_LOAD_OUTSIDE_MODEL}; the range is our reading. Drives of 3 to 400 hp, else the nearest size counts
 *       with {@code MOTOR_SIZE_OUTSIDE_MODEL}; between sizes and loads straight lines.
 *   <dt>Errors
 *   <dd>None of its own.
 *   <dt>Source
 *   <dd>Motor: polynomial fits to the Electric Motor handbook of the Washington State Energy Office, 1993. Drive: table
 *       of pulse-width-modulated drives, the same numbers as US DOE Motor Systems Tip Sheet 11. Both read in a copy.
 * </dl>
 */
public record HandbookLosses() implements LossModel {
    private static final double LEAST_LOAD = 0.05;
    private static final double MOST_LOAD = 1.1;

    /** Up to hp, c0 to c4, the load from which on the efficiency is that of full load. */
    private static final List<double[]> MOTORS = PublishedTable.rows("motor-part-load-handbook-1993.csv");

    /** First row the loads, then hp and the efficiency at each load. */
    private static final List<double[]> DRIVES = PublishedTable.rows("drive-efficiency-tip-sheet-11.csv");

    @Override
    public String name() {
        return "handbook";
    }

    @Override
    public String statement() {
        return "efficiency of the motor at part load by its size (Washington State Energy Office handbook, 1993) and of"
                + " the drive by size and load (as in US DOE Motor Systems Tip Sheet 11); load as a share of rated, speed"
                + " without a say of its own";
    }

    @Override
    public boolean followsLoad() {
        return true;
    }

    @Override
    public LossCurve withDrive(Motor motor, Drive drive) {
        return new Curve(MotorSide.of(motor), DriveSide.of(motor, drive));
    }

    @Override
    public LossCurve onMains(Motor motor) {
        return new Curve(MotorSide.of(motor), null);
    }

    /** Returns the efficiency of a motor at a load over that at full load. */
    static double motorFactor(double horsepower, double load) {
        return factor(motorRow(horsepower), load);
    }

    private static double[] motorRow(double horsepower) {
        return MOTORS.stream()
                .filter(each -> horsepower <= each[0] * (1 + DriveTrain.ROUNDING))
                .findFirst()
                .orElseThrow();
    }

    /** Returns the efficiency of a drive of a size at a load. */
    static double driveEfficiency(double horsepower, double load) {
        return at(row(horsepower), load);
    }

    private static double factor(double[] row, double load) {
        return load >= row[6] ? 1 : (((row[5] * load + row[4]) * load + row[3]) * load + row[2]) * load + row[1];
    }

    /** Returns the row of a size, between two of the table straight. */
    private static double[] row(double horsepower) {
        int above = 1;
        while (above < DRIVES.size() - 1 && DRIVES.get(above)[0] < horsepower) {
            above++;
        }
        double[] high = DRIVES.get(above);
        if (above == 1 || horsepower >= high[0]) {
            return high;
        }
        double[] low = DRIVES.get(above - 1);
        double[] between = new double[high.length];
        for (int i = 0; i < between.length; i++) {
            between[i] = low[i] + (high[i] - low[i]) * (horsepower - low[0]) / (high[0] - low[0]);
        }
        return between;
    }

    private static double at(double[] row, double load) {
        double[] loads = DRIVES.get(0);
        int above = 2;
        while (above < loads.length - 1 && loads[above] < load) {
            above++;
        }
        double within = Math.min(Math.max(load, loads[1]), loads[loads.length - 1]);
        return row[above - 1]
                + (row[above] - row[above - 1]) * (within - loads[above - 1]) / (loads[above] - loads[above - 1]);
    }

    private record MotorSide(double ratedWatts, double efficiency, double[] row) {
        static MotorSide of(Motor motor) {
            double[] row = motorRow(motor.rated().toHorsepower());
            return new MotorSide(
                    motor.rated().watts(), motor.fullLoadEfficiency().value(), row);
        }

        double lost(double shaftWatts) {
            double load = Math.max(shaftWatts / ratedWatts, LEAST_LOAD);
            return load * ratedWatts * (1 / (efficiency * factor(row, load)) - 1);
        }
    }

    private record DriveSide(double fullWatts, double[] row, Notes size) {
        static DriveSide of(Motor motor, Drive drive) {
            double horsepower = drive.rated().toHorsepower();
            double full = drive.rated().watts() / motor.fullLoadEfficiency().value();
            boolean known =
                    horsepower >= 3 * (1 - DriveTrain.ROUNDING) && horsepower <= 400 * (1 + DriveTrain.ROUNDING);
            Notes size = known
                    ? Notes.NONE
                    : Notes.NONE.with(
                            DriveProblem.MOTOR_SIZE_OUTSIDE_MODEL,
                            "The table of the loss model 'handbook' holds drives of 3 to 400 hp, this one is for "
                                    + drive.rated() + "; the nearest size counts");
            return new DriveSide(full, HandbookLosses.row(horsepower), size);
        }

        double lost(double motorInputWatts) {
            return motorInputWatts * (1 / at(row, motorInputWatts / fullWatts) - 1);
        }
    }

    private record Curve(MotorSide motor, DriveSide drive) implements LossCurve {
        @Override
        public double watts(double shaftWatts, double speedRatio) {
            double lost = motor.lost(shaftWatts);
            return drive == null ? lost : lost + drive.lost(shaftWatts + lost);
        }

        @Override
        public List<Losses.Part> parts(double shaftWatts, double speedRatio) {
            double lost = motor.lost(shaftWatts);
            Losses.Part first = new Losses.Part(Losses.Place.MOTOR, "motor", Power.watts(lost));
            if (drive == null) {
                return List.of(first);
            }
            Power inDrive = Power.watts(drive.lost(shaftWatts + lost));
            return List.of(first, new Losses.Part(Losses.Place.DRIVE, "drive", inDrive));
        }

        @Override
        public Notes notes(double shaftWatts, double speedRatio) {
            Notes notes = drive == null ? Notes.NONE : drive.size;
            double load = shaftWatts / motor.ratedWatts;
            if (load >= LEAST_LOAD && load <= MOST_LOAD) {
                return notes;
            }
            return notes.with(
                    DriveProblem.PART_LOAD_OUTSIDE_MODEL,
                    "The loss model 'handbook' is used from 5 % to 110 % of rated power, the load is " + Ratio.of(load)
                            + "; below, the loss of the motor stays at the end of the range");
        }
    }
}
