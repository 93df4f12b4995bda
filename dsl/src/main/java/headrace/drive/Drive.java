package headrace.drive;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

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
 * @param extras what else is stated of it
 * @param basis where the loss comes from
 */
public record Drive(String name, Power rated, Power referenceLoss, Extras extras, Basis basis) implements Traced {
    private static final double ROUNDING = 1e-9;
    private static final double IE2_SHARE = 0.75;
    private static final double IE1_SHARE = 1.25;

    /** kVA, kW of the motor, kW of loss, cos phi; ordered by kW. */
    private static final List<double[]> TABLE = PublishedTable.rows("drives-eu-2019-1781.csv");

    /**
     * What may be stated of a drive beyond its reference loss.
     *
     * @param declared its losses between several declared points, if it has them
     * @param magnetisingCurrent the magnetising current of its motor as a share of the motor's rated current: with it
     *     the current is √(m² + (1 − m²)·t²) instead of the torque current {@code t} alone; 0 unless stated
     * @param standby what it takes while the pump stands still, 0 unless stated
     */
    public record Extras(Optional<DriveLosses> declared, Ratio magnetisingCurrent, Power standby) {
        /** Nothing else stated. */
        public static final Extras NONE = new Extras(Optional.empty(), Ratio.ZERO, Power.ZERO);

        /** Refuses a share or a power that cannot be. */
        public Extras {
            double share = magnetisingCurrent.value();
            if (!(share >= 0 && share < 1) || standby.watts() < 0) {
                throw new Refusal(
                        DriveProblem.IMPOSSIBLE_LOSSES,
                        "Asked for a drive with a magnetising current of " + magnetisingCurrent
                                + " and a standby power of " + standby,
                        "The magnetising current is a share of rated current below 100 %, and no power is below 0",
                        "Common are 20 to 60 % and a few watts");
            }
        }
    }

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
                Extras.NONE,
                Basis.of(name + ": loses " + referenceLoss
                        + " at 90 % frequency and 100 % torque current, as stated by the user"));
    }

    /** Returns a drive by the losses that are declared for it at several points. */
    public static Drive declared(Power motorRated, DriveLosses losses) {
        String name = "drive for " + motorRated;
        Extras extras = new Extras(Optional.of(losses), Ratio.ZERO, Power.ZERO);
        return new Drive(name, motorRated, losses.referenceLoss(), extras, Basis.of(name + ": " + losses.statement()));
    }

    /**
     * Returns this drive with the magnetising current of its motor counted, as a share of the motor's rated current.
     */
    public Drive withMagnetisingCurrent(Ratio share) {
        return with(
                new Extras(extras.declared, share, extras.standby),
                "magnetising current " + share + " of the motor's rated current");
    }

    /** Returns this drive with what it takes while the pump stands still. */
    public Drive withStandby(Power standby) {
        return with(
                new Extras(extras.declared, extras.magnetisingCurrent, standby),
                standby + " standby, as stated by the user");
    }

    private Drive with(Extras other, String choice) {
        return new Drive(name, rated, referenceLoss, other, basis.with(name + ": " + choice));
    }

    /**
     * Returns the efficiency class by the loss at the reference point: 0 above 125 % of the reference losses of EU
     * 2019/1781, 2 at 75 % of them or below, 1 between; none for a rating that its table does not hold.
     */
    public OptionalInt ieClass() {
        Optional<double[]> row = row(rated);
        if (row.isEmpty()) {
            return OptionalInt.empty();
        }
        double share = referenceLoss.toKilowatts() / row.get()[2];
        if (share <= IE2_SHARE * (1 + ROUNDING)) {
            return OptionalInt.of(2);
        }
        return OptionalInt.of(share <= IE1_SHARE * (1 + ROUNDING) ? 1 : 0);
    }

    @Override
    public Notes notes() {
        return extras.declared.map(DriveLosses::notes).orElse(Notes.NONE);
    }

    @Override
    public String toString() {
        return name;
    }

    private static Optional<double[]> row(Power motorRated) {
        double kilowatts = motorRated.toKilowatts();
        double least = TABLE.get(0)[1];
        return TABLE.stream()
                .filter(each -> kilowatts >= least * (1 - ROUNDING) && each[1] >= kilowatts * (1 - ROUNDING))
                .findFirst();
    }

    private static Drive published(Power motorRated, double share, String label) {
        double[] row = row(motorRated)
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
                Extras.NONE,
                Basis.of(name + ": " + loss
                        + " lost at 90 % frequency and 100 % torque current (EU 2019/1781 Annex I Table 6)"));
    }
}
