package headrace.control;

import headrace.curve.PumpCurve;
import headrace.numeric.Roots;
import headrace.operation.OperatingPoint;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Power;
import headrace.units.Speed;

/** Applies a law's own limits to a pump set. */
final class LimitsAfterLaw {
    private final ControlLaw law;
    private final LawLimits limits;
    private final PumpSet set;

    LimitsAfterLaw(ControlLaw law, PumpSet set) {
        this.law = law;
        this.limits = law.limits();
        this.set = limits.equals(LawLimits.NONE) ? set : narrowed(set);
    }

    /** Returns the pump set with the range of speed that the law leaves it. */
    PumpSet set() {
        return set;
    }

    /** Returns what is to be said where the pump does not move the flow that the circuit asks for. */
    Notes ofFlow(Flow asked) {
        Flow pumped = limits.pumped(asked);
        int order = pumped.compareTo(asked);
        if (order == 0) {
            return Notes.NONE;
        }
        return order > 0
                ? Notes.NONE.with(
                        ControlProblem.MINIMUM_FLOW_KEPT,
                        "The circuit asks for " + asked + "; '" + law.name() + "' keeps " + pumped
                                + " moving, so a bypass takes " + pumped.minus(asked))
                : Notes.NONE.with(
                        ControlProblem.MAXIMUM_FLOW_REACHED,
                        "The circuit asks for " + asked + "; '" + law.name() + "' lets through " + pumped + ", "
                                + asked.minus(pumped) + " short");
    }

    /** Returns whether a point takes more from the wire than the law allows. */
    boolean takesTooMuch(OperatingPoint point) {
        return limits.greatestPower()
                .filter(most -> point.wirePower().watts() > most.watts() * (1 + SteadyState.ROUNDING))
                .isPresent();
    }

    /** Returns the point at the same flow, so much slower that it takes the greatest power that the law allows. */
    OperatingPoint slower(OperatingPoint point) {
        Power most = limits.greatestPower().orElseThrow();
        set.requireDrive("a limit of wire power");
        PumpCurve curve = set.curve();
        double q = point.flow().si();
        double slowest = Math.max(
                set.minimumSpeed().over(curve.speed()).value(),
                q / curve.extendedHighestFlow().si());
        double now = point.speed().over(curve.speed()).value();
        if (slowest >= now || set.wireWatts(q, slowest) > most.watts()) {
            Speed least = curve.speed().times(Math.min(slowest, now));
            throw new Refusal(
                    ControlProblem.IMPOSSIBLE_LAW,
                    "Asked for '" + law.name() + "' at " + point.flow(),
                    "The least speed at which the pump moves that flow is " + least + ", and it takes "
                            + Power.watts(set.wireWatts(q, Math.min(slowest, now))) + " there",
                    "Allow more power, or ask for less flow");
        }
        double s = Roots.between(speed -> set.wireWatts(q, speed) - most.watts(), slowest, now);
        return OperatingPoint.atSpeed(set, point.flow(), curve.speed().times(s));
    }

    private PumpSet narrowed(PumpSet all) {
        Speed least = limits.leastSpeed()
                .filter(speed -> speed.compareTo(all.minimumSpeed()) > 0)
                .orElse(all.minimumSpeed());
        Speed greatest = limits.greatestSpeed()
                .filter(speed -> speed.compareTo(all.maximumSpeed()) < 0)
                .orElse(all.maximumSpeed());
        if (least.compareTo(greatest) > 0) {
            throw new Refusal(
                    ControlProblem.IMPOSSIBLE_LAW,
                    "Asked for '" + law.name() + "' with a pump set that turns at " + all.minimumSpeed() + " to "
                            + all.maximumSpeed(),
                    "Its limits leave that pump set no speed at all",
                    "Choose limits that overlap with the range of the pump set");
        }
        return limits.leastSpeed().isPresent() ? all.withSpeeds(least, greatest) : all.withMaximumSpeed(greatest);
    }
}
