package headrace.drive;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Power;
import java.util.List;

/**
 * A variable-speed drive: its rating and its loss at the reference point, 90 % of the rated frequency and 100 % of the
 * rated torque current.
 *
 * <dl>
 *   <dt>Units
 *   <dd>The rated power is that of the motor for which it is made.
 *   <dt>Limits
 *   <dd>Motors of 0.12 to 1000 kW; between two ratings the higher loss counts.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code RATING_OUTSIDE_TABLE} or {@code IMPOSSIBLE_LOSSES}.
 *   <dt>Source
 *   <dd>Commission Regulation (EU) 2019/1781, Annex I, Table 6; read in a copy. Classes as in IEC 61800-9-2: IE1 within
 *       25 % of the reference losses, IE2 at least 25 % below.
 * </dl>
 *
 * @param name what it is, such as {@code drive for 5.5 kW, reference losses}
 * @param rated the rated power of its motor
 * @param referenceLoss its loss at the reference point
 * @param basis where the loss comes from
 */
public record Drive(String name, Power rated, Power referenceLoss, Basis basis) implements Traced {
    private static final double ROUNDING = 1e-9;
    private static final double IE2_SHARE = 0.75;

    /** kVA, kW of the motor, kW of loss, cos phi; ordered by kW. */
    private static final List<double[]> TABLE = PublishedTable.rows("drives-eu-2019-1781.csv");

    /** Refuses a drive without a rating or without a loss. */
    public Drive {
        if (rated.watts() <= 0 || referenceLoss.watts() <= 0) {
            throw new Refusal(
                    DriveProblem.IMPOSSIBLE_LOSSES,
                    "Asked for a drive for " + rated + " that loses " + referenceLoss,
                    "Both must be above 0",
                    "State the loss at 90 % frequency and 100 % torque current");
        }
    }

    /** Returns the drive with the reference losses of the regulation: the middle of class IE1. */
    public static Drive reference(Power motorRated) {
        return published(motorRated, 1, "reference losses");
    }

    /** Returns the drive that just meets class IE2: three quarters of the reference losses. */
    public static Drive ie2(Power motorRated) {
        return published(motorRated, IE2_SHARE, "IE2");
    }

    /** Returns a drive by the loss that is declared for it at the reference point. */
    public static Drive declared(Power motorRated, Power referenceLoss) {
        String name = "drive for " + motorRated;
        return new Drive(
                name,
                motorRated,
                referenceLoss,
                Basis.of(name + ": loses " + referenceLoss
                        + " at 90 % frequency and 100 % torque current, as stated by the user"));
    }

    @Override
    public Notes notes() {
        return Notes.NONE;
    }

    @Override
    public String toString() {
        return name;
    }

    private static Drive published(Power motorRated, double share, String label) {
        double kilowatts = motorRated.toKilowatts();
        double least = TABLE.get(0)[1];
        double[] row = TABLE.stream()
                .filter(each -> kilowatts >= least * (1 - ROUNDING) && each[1] >= kilowatts * (1 - ROUNDING))
                .findFirst()
                .orElseThrow(() -> new Refusal(
                        DriveProblem.RATING_OUTSIDE_TABLE,
                        "Asked for a drive for a motor of " + motorRated,
                        "The table of reference losses holds motors of 0.12 to 1000 kW",
                        "Choose within it, or state the declared loss of the drive"));
        Power loss = Power.kilowatts(row[2] * share);
        String name = "drive for " + motorRated + ", " + label;
        return new Drive(
                name,
                motorRated,
                loss,
                Basis.of(name + ": " + loss
                        + " lost at 90 % frequency and 100 % torque current (EU 2019/1781 Annex I Table 6)"));
    }
}
