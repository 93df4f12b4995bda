package headrace.drive;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.List;
import java.util.Optional;

/**
 * An induction motor: its rating and its efficiency at full load.
 *
 * <dl>
 *   <dt>Units
 *   <dd>The rated power is what it gives at its shaft.
 *   <dt>Limits
 *   <dd>Derated by place as {@link Site} says. Efficiency classes from 0.12 to 1000 kW, premium motors from 1 to 200
 *       hp. A class is what the motor must reach at least: the motor on site may do better, and its losses differ by
 *       the tolerance of its test.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code RATING_OUTSIDE_TABLE} or {@code IMPOSSIBLE_EFFICIENCY}.
 *   <dt>Source
 *   <dd>Commission Regulation (EU) 2019/1781, Annex I, Tables 1 to 3 and the formula for powers between; 10 CFR 431.25,
 *       Table 1. Both read in a copy.
 * </dl>
 *
 * @param name what it is, such as {@code motor 5.5 kW, IE3, 4 poles}
 * @param rated the rated power
 * @param poles the number of poles
 * @param fullLoadEfficiency shaft power over input at rated power, above 0 and below 1
 * @param statedSpeed the speed at rated power, where it was stated
 * @param site where it stands
 * @param basis where the efficiency comes from
 */
public record Motor(
        String name,
        Power rated,
        int poles,
        Ratio fullLoadEfficiency,
        Optional<Speed> statedSpeed,
        Site site,
        Basis basis)
        implements Traced {
    /** The most by which a motor turns slower than synchronous at full load; the bound is ours. */
    static final double MOST_SLIP = 0.15;

    private static final double ROUNDING = 1e-9;
    private static final int[] MAINS_HERTZ = {50, 60};
    private static final List<double[]> PREMIUM = PublishedTable.rows("motors-10-cfr-431-25.csv");

    /** Refuses a rating, a speed or an efficiency that cannot be. */
    public Motor {
        double efficiency = fullLoadEfficiency.value();
        if (!(efficiency > 0 && efficiency < 1)) {
            throw new Refusal(
                    DriveProblem.IMPOSSIBLE_EFFICIENCY,
                    "Asked for a motor of " + fullLoadEfficiency + " efficiency at full load",
                    "An efficiency lies above 0 % and below 100 %",
                    "Read the plate again");
        }
        boolean turns =
                statedSpeed.map(speed -> speed.compareTo(Speed.ZERO) > 0).orElse(true);
        if (rated.watts() <= 0 || poles < 2 || poles % 2 != 0 || !turns) {
            throw new Refusal(
                    DriveProblem.RATING_OUTSIDE_TABLE,
                    "Asked for a motor of " + rated + " with " + poles + " poles"
                            + statedSpeed.map(speed -> " at " + speed).orElse(""),
                    "The rated power and speed must be above 0 and the number of poles even",
                    "Read the plate again");
        }
    }

    /**
     * Returns the motor that just meets an efficiency class at 50 Hz.
     *
     * @param rated the rated power, 0.12 to 1000 kW
     * @param ieClass 2, 3 or 4
     * @param poles 2, 4, 6 or 8
     */
    public static Motor ofClass(Power rated, int ieClass, int poles) {
        Ratio efficiency = Ratio.percent(ClassEfficiency.percent(rated, ieClass, poles));
        String name = "motor " + rated + ", IE" + ieClass + ", " + poles + " poles";
        return new Motor(
                name,
                rated,
                poles,
                efficiency,
                Optional.empty(),
                Site.ORDINARY,
                Basis.of(name + ": " + efficiency + " at full load, the least its class allows (EU 2019/1781 Annex I,"
                        + " 50 Hz)"));
    }

    /** Returns the premium motor in an open housing at 60 Hz, 1 to 200 hp, with 2, 4 or 6 poles. */
    public static Motor premiumOpen(Power rated, int poles) {
        return premium(rated, poles, "open", 4 - poles / 2);
    }

    /** Returns the premium motor in a closed housing at 60 Hz, 1 to 200 hp, with 2, 4 or 6 poles. */
    public static Motor premiumEnclosed(Power rated, int poles) {
        return premium(rated, poles, "enclosed", 7 - poles / 2);
    }

    /** Returns the ratings of the table of premium motors, the smallest first. */
    public static List<Power> premiumRatings() {
        return PREMIUM.stream().map(row -> Power.horsepower(row[0])).toList();
    }

    /** Returns a motor by what stands on its plate. */
    public static Motor ofPlate(Power rated, int poles, Ratio fullLoadEfficiency) {
        String name = "motor " + rated + ", " + poles + " poles";
        return new Motor(
                name,
                rated,
                poles,
                fullLoadEfficiency,
                Optional.empty(),
                Site.ORDINARY,
                Basis.of(name + ": " + fullLoadEfficiency + " at full load, as stated by the user"));
    }

    /** Returns this motor with the speed at rated power that stands on its plate. */
    public Motor atRatedSpeed(Speed speed) {
        return new Motor(name, rated, poles, fullLoadEfficiency, Optional.of(speed), site, basis);
    }

    /** Returns this motor where it stands: on a mountain or in hot air it gives less than its rated power. */
    public Motor at(Site place) {
        return new Motor(name, rated, poles, fullLoadEfficiency, statedSpeed, place, basis);
    }

    /** Returns the power that it gives where it stands. */
    public Power usable() {
        return rated.times(site.usable());
    }

    /**
     * Returns the synchronous speed on 50 or 60 Hz that belongs to a rated speed, none if no slip of up to 15 % leads
     * to it.
     */
    public Optional<Speed> synchronousSpeed(Speed ratedSpeed) {
        for (int hertz : MAINS_HERTZ) {
            Speed synchronous = Speed.revolutionsPerMinute(120.0 * hertz / poles);
            double share = ratedSpeed.over(synchronous).value();
            if (share >= 1 - MOST_SLIP - ROUNDING && share <= 1 + ROUNDING) {
                return Optional.of(synchronous);
            }
        }
        return Optional.empty();
    }

    /**
     * Returns the torque on the mains as a share of rated, by the slip at a measured speed: slip goes with torque.
     *
     * @param measured the speed, at most the synchronous one
     * @throws Refusal with {@code SLIP_UNKNOWN} if the rated speed is not stated, leaves no slip, or the speed is above
     *     the synchronous one
     */
    public Ratio torqueBySlip(Speed measured) {
        Optional<Speed> synchronous = statedSpeed.flatMap(this::synchronousSpeed);
        double full =
                synchronous.map(speed -> speed.si() - statedSpeed.get().si()).orElse(0.0);
        double now = synchronous.map(speed -> speed.si() - measured.si()).orElse(0.0);
        if (!(full > 0 && now >= 0)) {
            throw new Refusal(
                    DriveProblem.SLIP_UNKNOWN,
                    "Asked for the load of the " + name + " by its slip at " + measured,
                    statedSpeed
                            .map(speed -> "Its rated speed is " + speed
                                    + "; it must lie below the synchronous speed, and the measured one not above that")
                            .orElse("Its rated speed is not stated"),
                    "State the rated speed from the plate with ratedSpeed:, and measure to 1 rpm");
        }
        return Ratio.of(now / full);
    }

    /** Returns the losses at rated power and speed. */
    public Power fullLoadLoss() {
        return rated.times(1 / fullLoadEfficiency.value() - 1);
    }

    @Override
    public Notes notes() {
        if (site.usable().value() >= 1 - ROUNDING) {
            return Notes.NONE;
        }
        return Notes.NONE.with(
                DriveProblem.MOTOR_DERATED,
                "At " + site + " the motor gives " + usable() + " of its rated " + rated
                        + " (1 % less for 100 m above 1000 m and for 1 K above 40 °C; common practice, from memory)");
    }

    @Override
    public String toString() {
        return name;
    }

    /** Between two ratings the regulation rounds up from the middle on, and down below it. */
    private static Motor premium(Power rated, int poles, String housing, int column) {
        double horsepower = rated.toHorsepower();
        double least = PREMIUM.get(0)[0];
        double most = PREMIUM.get(PREMIUM.size() - 1)[0];
        boolean known = poles == 2 || poles == 4 || poles == 6;
        if (!known || !(horsepower >= least * (1 - 1e-9) && horsepower <= most * (1 + 1e-9))) {
            throw new Refusal(
                    DriveProblem.RATING_OUTSIDE_TABLE,
                    "Asked for a premium motor of " + rated + " with " + poles + " poles",
                    "The table holds 1 to 200 hp with 2, 4 or 6 poles",
                    "Choose among these, or state the efficiency on the motor's plate");
        }
        double[] nearest = PREMIUM.get(0);
        for (double[] row : PREMIUM) {
            if (row[0] - horsepower <= horsepower - nearest[0] + 1e-9 * horsepower) {
                nearest = row;
            }
        }
        Ratio efficiency = Ratio.percent(nearest[column]);
        String name = "premium motor " + rated + ", " + housing + ", " + poles + " poles";
        return new Motor(
                name,
                rated,
                poles,
                efficiency,
                Optional.empty(),
                Site.ORDINARY,
                Basis.of(name + ": " + efficiency + " at full load (10 CFR 431.25 Table 1, 60 Hz)"));
    }
}
