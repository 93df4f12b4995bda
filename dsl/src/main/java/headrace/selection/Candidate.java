package headrace.selection;

import headrace.curve.NpshCurve;
import headrace.curve.PumpCurve;
import headrace.curve.PumpTest;
import headrace.drive.Drive;
import headrace.drive.DriveTrain;
import headrace.drive.Motor;
import headrace.operation.OperatingPoint;
import headrace.operation.limit.OperatingRegion;
import headrace.operation.limit.RegionPoint;
import headrace.operation.suction.NpshCheck;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.rule.LargestMinimumHead;
import headrace.rule.MinimumHeadLimit;
import headrace.rule.RuleProblem;
import headrace.units.Energy;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.List;
import java.util.Optional;

/**
 * A pump that can do what is wished.
 *
 * @param set the pump with the motor and drive that were chosen for it
 * @param greatestPower the greatest shaft power of its curve at rated speed, for which the motor was chosen
 * @param point where it runs at the duty
 * @param region how the duty lies in its operating region
 * @param npsh the margin of NPSH at the duty; absent if no suction side or no NPSH required is known
 * @param largestMinimumHead how far the minimum head may go under the rule
 * @param yearEnergy what the wire gives in the year under the law
 * @param preferred the share of running hours in the preferred region
 * @param notes what was touched
 * @param basis what it rests on
 */
public record Candidate(
        PumpSet set,
        Power greatestPower,
        OperatingPoint point,
        RegionPoint region,
        Optional<NpshCheck> npsh,
        MinimumHeadLimit largestMinimumHead,
        Energy yearEnergy,
        Ratio preferred,
        Notes notes,
        Basis basis)
        implements Traced {
    private static final double ROUNDING = 1e-9;

    /** Returns the pump of a test as a candidate. Refuses it with the reason for which it is dropped. */
    static Candidate of(PumpTest test, Wish wish) {
        PumpCurve fitted = PumpCurve.fit(test);
        PumpCurve curve = wish.conditions().liquid().map(fitted::inLiquid).orElse(fitted);
        PumpSet set = set(test, curve, wish);
        requireSpeed(set, wish);
        OperatingPoint point = OperatingPoint.at(set, wish.duty());
        RegionPoint region = wish.conditions().region().at(curve, point.point());
        requireRegion(region);
        Optional<NpshCheck> npsh = npsh(test, curve, point, wish);
        MinimumHeadLimit limit = LargestMinimumHead.of(
                        set,
                        wish.duty(),
                        wish.conditions().rule(),
                        List.of(wish.motors().model()))
                .limits()
                .get(0);
        requireWindow(limit, wish);
        YearAtTheWire year = YearAtTheWire.of(set, wish);
        return new Candidate(
                set,
                curve.greatestPower(),
                point,
                region,
                npsh,
                limit,
                year.energy(),
                year.preferred(),
                point.notes().and(region.notes()).and(scope(set, limit)),
                point.basis());
    }

    private static PumpSet set(PumpTest test, PumpCurve curve, Wish wish) {
        Power rating = StandardRatings.atLeast(curve.greatestPower());
        int poles = StandardRatings.poles(test.poles(), curve.speed());
        DriveTrain train = DriveTrain.of(
                Motor.ofClass(rating, wish.motors().ieClass(), poles),
                Drive.reference(rating),
                wish.motors().model());
        PumpSet set = PumpSet.of(curve, train);
        return set.withMinimumSpeed(set.ratedSpeed().times(wish.motors().leastSpeed()));
    }

    private static void requireSpeed(PumpSet set, Wish wish) {
        double s =
                set.curve().pointFor(wish.duty()).speed().over(set.ratedSpeed()).value();
        if (s > 1 + ROUNDING || s < wish.motors().leastSpeed().value() * (1 - ROUNDING)) {
            throw new Refusal(
                    SelectionProblem.DUTY_BEYOND_SPEED,
                    "The duty needs " + set.ratedSpeed().times(s),
                    "The motor turns at " + set.minimumSpeed() + " to " + set.maximumSpeed(),
                    s > 1 ? "Take a larger pump" : "Take a smaller pump");
        }
    }

    private static void requireRegion(RegionPoint region) {
        if (region.zone() == OperatingRegion.Zone.OUTSIDE) {
            throw new Refusal(
                    SelectionProblem.DUTY_OUTSIDE_REGION,
                    "The duty lies at " + region.share() + " of best-efficiency flow",
                    "The allowable operating region does not reach there",
                    region.share().value() > 1 ? "Take a larger pump" : "Take a smaller pump");
        }
    }

    private static Optional<NpshCheck> npsh(PumpTest test, PumpCurve curve, OperatingPoint point, Wish wish) {
        if (wish.conditions().suction().isEmpty() || test.npsh().isEmpty()) {
            return Optional.empty();
        }
        NpshCheck.Terms terms = new NpshCheck.Terms(
                wish.conditions().suction().get(),
                NpshCurve.of(test).movedAs(curve),
                wish.conditions().margin(),
                curve.liquid());
        NpshCheck check = NpshCheck.of(point.point(), terms);
        if (check.margin().metres() < 0) {
            throw new Refusal(
                    SelectionProblem.NPSH_NOT_MET,
                    "At the duty " + check,
                    "The NPSH available falls short of what is needed by "
                            + check.margin().times(-1),
                    "Raise the fill pressure, lower the loss of the suction side, or take a slower pump");
        }
        return Optional.of(check);
    }

    /** Says where the part-load rule asks nothing of a candidate. */
    private static Notes scope(PumpSet set, MinimumHeadLimit limit) {
        return limit.verdict().binds()
                ? Notes.NONE
                : Notes.NONE.with(
                        RuleProblem.RULE_NOT_BINDING,
                        "The part-load rule is not applicable to " + set.curve().name() + " with its motor of "
                                + set.driveTrain().motor().rated());
    }

    private static void requireWindow(MinimumHeadLimit limit, Wish wish) {
        double most = switch (limit.outcome()) {
            case ALL -> 1;
            case NONE -> -1;
            case UP_TO -> limit.minimumHead().value();
        };
        wish.conditions().leastMinimumHead().ifPresent(least -> {
            if (limit.verdict().binds() && least.value() > most + ROUNDING) {
                throw new Refusal(
                        SelectionProblem.WINDOW_EMPTY,
                        "The branches need a minimum head of " + least + " of design head",
                        "Under the part-load rule, " + limit,
                        "Take a pump or drive with less loss at part load, or another law");
            }
        });
    }

    /** Returns the name of the pump. */
    public String name() {
        return set.curve().name();
    }

    @Override
    public String toString() {
        return name() + ": " + yearEnergy + " a year, " + point;
    }
}
