package headrace.pump;

import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Power;
import headrace.units.Ratio;

/**
 * What efficiency a pump or a motor of some size commonly has: a first guess where nothing is known yet, no rating.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Flow and shaft power.
 *   <dt>Limits
 *   <dd>Pumps of 50 to 5000 US gpm, motors of 1 to 1500 hp; one pump of that size may lie well above or below.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code NO_TYPICAL_EFFICIENCY} outside that.
 *   <dt>Source
 *   <dd>Seider, Seader and Lewin, Product and Process Design Principles, 2nd edition, as cited and reproduced by an
 *       open library; the ranges are from memory, unconfirmed.
 * </dl>
 */
public final class TypicalEfficiency {
    private static final double LEAST_FLOW = 50;
    private static final double GREATEST_FLOW = 5000;
    private static final double LEAST_POWER = 1;
    private static final double GREATEST_POWER = 1500;

    private TypicalEfficiency() {}

    /** Returns that of a centrifugal pump for a flow: {@code −0.316 + 0.24015·ln q − 0.01199·ln² q}, q in US gpm. */
    public static Ratio ofPump(Flow flow) {
        double gpm = flow.in("gpm");
        if (!(gpm >= LEAST_FLOW && gpm <= GREATEST_FLOW)) {
            throw outside("a pump for " + flow, "50 to 5000 US gpm");
        }
        double size = Math.log(gpm);
        return Ratio.of(-0.316 + 0.24015 * size - 0.01199 * size * size);
    }

    /** Returns that of a motor for a shaft power: {@code 0.8 + 0.0319·ln P − 0.00182·ln² P}, P in hp. */
    public static Ratio ofMotor(Power shaft) {
        double horsepower = shaft.in("hp");
        if (!(horsepower >= LEAST_POWER && horsepower <= GREATEST_POWER)) {
            throw outside("a motor for " + shaft, "1 to 1500 hp");
        }
        double size = Math.log(horsepower);
        return Ratio.of(0.8 + 0.0319 * size - 0.00182 * size * size);
    }

    private static Refusal outside(String asked, String range) {
        return new Refusal(
                PumpProblem.NO_TYPICAL_EFFICIENCY,
                "Asked for the typical efficiency of " + asked,
                "The correlation covers " + range,
                "Take the maker's data, or a size within that");
    }
}
