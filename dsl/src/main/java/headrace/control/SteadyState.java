package headrace.control;

import headrace.curve.Duty;
import headrace.curve.PumpCurve;
import headrace.operation.OperatingPoint;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Speed;
import java.util.Optional;

/**
 * What a control law makes of a pump set at a flow, once the limits of speed have had their say.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Heads in metres of the liquid, at the pump.
 *   <dt>Limits
 *   <dd>At least speed the pump rides its curve above the law; at greatest speed it falls short of the law, and the
 *       flow would not be reached. Both are noted with their numbers.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code DRIVE_MISSING} if the law needs a drive, and as {@link PumpCurve#at} and
 *       {@link PumpCurve#pointFor} outside the range of the curve.
 *   <dt>Source
 *   <dd>The law's own.
 * </dl>
 *
 * @param law the law
 * @param asked the head that it asks for; none for a law that asks for a speed
 * @param point where the pump set runs
 * @param limit the limit of speed that decided, if one did
 * @param notes the limits that were touched
 * @param basis what the point rests on
 */
public record SteadyState(
        ControlLaw law, Optional<Head> asked, OperatingPoint point, Limit limit, Notes notes, Basis basis)
        implements Traced {
    /** A limit of speed. */
    public enum Limit {
        /** The law was met. */
        NONE,
        /** The least speed: more head than the law asks for. */
        MINIMUM_SPEED,
        /** The greatest speed: less head than the law asks for. */
        MAXIMUM_SPEED,
        /** The greatest wire power: less head than the law asks for. */
        MAXIMUM_POWER
    }

    static final double ROUNDING = 1e-9;

    /**
     * Returns the steady state of a pump set under a law at a flow.
     *
     * @param law the law
     * @param set the pump set
     * @param flow the flow that the circuit asks for; what the pump moves differs where the law limits it
     */
    public static SteadyState of(ControlLaw law, PumpSet set, Flow flow) {
        PumpSet limited = new LimitsAfterLaw(law, set).set();
        return met(law, set, flow, law.demand(new LoopState(law.limits().pumped(flow)), limited));
    }

    /** Returns the steady state of a pump set of which a law asks this. */
    static SteadyState met(ControlLaw law, PumpSet set, Flow flow, Demand demand) {
        LimitsAfterLaw limits = new LimitsAfterLaw(law, set);
        SteadyState state = beforePower(law, limits.set(), law.limits().pumped(flow), demand);
        if (limits.takesTooMuch(state.point)) {
            state = heldToPower(state, limits.slower(state.point));
        }
        return state.with(limits.ofFlow(flow).and(law.notes()));
    }

    private static SteadyState beforePower(ControlLaw law, PumpSet set, Flow flow, Demand demand) {
        if (demand instanceof Demand.OfHead head) {
            return forHead(law, set, flow, head.head());
        }
        if (demand instanceof Demand.OfSpeed speed) {
            return forSpeed(law, set, flow, speed.speed());
        }
        OperatingPoint point = OperatingPoint.onMains(set, flow);
        return made(law, Optional.empty(), point, Limit.NONE, Notes.NONE);
    }

    private static SteadyState heldToPower(SteadyState before, OperatingPoint held) {
        String asked = before.asked.map(head -> "asks for " + head).orElse("asks for " + before.point.speed());
        Notes notes = Notes.NONE.with(
                ControlProblem.MAXIMUM_POWER_REACHED,
                "'" + before.law.name() + "' " + asked + " at " + held.flow() + ", which takes "
                        + before.point.wirePower() + "; at " + held.wirePower() + " the pump gives " + held.head());
        return made(before.law, before.asked, held, Limit.MAXIMUM_POWER, notes);
    }

    private SteadyState with(Notes more) {
        return more.isEmpty() ? this : new SteadyState(law, asked, point, limit, more.and(notes), basis);
    }

    /** Returns by how much the pump gives more head than the law asks for; below 0 if it gives less. */
    public Head excessHead() {
        return point.head().minus(asked.orElse(point.head()));
    }

    private static SteadyState forHead(ControlLaw law, PumpSet set, Flow flow, Head asked) {
        set.requireDrive("the law '" + law.name() + "', which changes the speed");
        PumpCurve curve = set.curve();
        double q = flow.si();
        double least = set.minimumSpeed().over(curve.speed()).value();
        double most = set.maximumSpeed().over(curve.speed()).value();
        double wanted = curve.speedRatioFor(q, asked.metres());
        if (wanted == Double.POSITIVE_INFINITY) {
            wanted = beyondCurve(curve, flow, asked, new double[] {least, most});
        }
        if (wanted < least * (1 - ROUNDING)) {
            OperatingPoint point = OperatingPoint.atSpeed(set, flow, set.minimumSpeed());
            return limited(law, asked, point, Limit.MINIMUM_SPEED);
        }
        if (wanted > most * (1 + ROUNDING)) {
            OperatingPoint point = OperatingPoint.atSpeed(set, flow, set.maximumSpeed());
            return limited(law, asked, point, Limit.MAXIMUM_SPEED);
        }
        Speed speed = curve.speed().times(wanted);
        return made(law, Optional.of(asked), OperatingPoint.atSpeed(set, flow, speed), Limit.NONE, Notes.NONE);
    }

    private static SteadyState limited(ControlLaw law, Head asked, OperatingPoint point, Limit limit) {
        boolean least = limit == Limit.MINIMUM_SPEED;
        Head off = least ? point.head().minus(asked) : asked.minus(point.head());
        Notes notes = Notes.NONE.with(
                least ? ControlProblem.MINIMUM_SPEED_REACHED : ControlProblem.MAXIMUM_SPEED_REACHED,
                "'" + law.name() + "' asks for " + asked + " at " + point.flow() + "; at its "
                        + (least ? "least" : "greatest") + " speed of " + point.speed() + " the pump gives "
                        + point.head() + ", " + off + (least ? " more" : " short"));
        return made(law, Optional.of(asked), point, limit, notes);
    }

    /**
     * Returns a speed ratio beyond the limit that holds when no point of the curve has what the law asks for: 0 where
     * the pump gives more than that already at its least speed, infinity where it gives less even at its greatest.
     */
    private static double beyondCurve(PumpCurve curve, Flow flow, Head asked, double[] limits) {
        double q = flow.si();
        if (inside(curve, q, limits[0]) && curve.headMetres(q, limits[0]) >= asked.metres()) {
            return 0;
        }
        if (inside(curve, q, limits[1]) && curve.headMetres(q, limits[1]) <= asked.metres()) {
            return Double.POSITIVE_INFINITY;
        }
        return curve.pointFor(new Duty(flow, asked)).speed().over(curve.speed()).value();
    }

    private static boolean inside(PumpCurve curve, double q, double s) {
        return q >= curve.extendedLowestFlow().si() * s
                && q <= curve.extendedHighestFlow().si() * s;
    }

    private static SteadyState forSpeed(ControlLaw law, PumpSet set, Flow flow, Speed wanted) {
        if (Math.abs(wanted.over(set.ratedSpeed()).value() - 1) > ROUNDING) {
            set.requireDrive("the law '" + law.name() + "' at " + wanted);
        }
        Limit limit = Limit.NONE;
        Speed speed = wanted;
        Notes notes = Notes.NONE;
        if (wanted.over(set.minimumSpeed()).value() < 1 - ROUNDING) {
            limit = Limit.MINIMUM_SPEED;
            speed = set.minimumSpeed();
            notes = notes.with(
                    ControlProblem.MINIMUM_SPEED_REACHED,
                    "'" + law.name() + "' asks for " + wanted + "; the pump set turns no slower than " + speed);
        } else if (wanted.over(set.maximumSpeed()).value() > 1 + ROUNDING) {
            limit = Limit.MAXIMUM_SPEED;
            speed = set.maximumSpeed();
            notes = notes.with(
                    ControlProblem.MAXIMUM_SPEED_REACHED,
                    "'" + law.name() + "' asks for " + wanted + "; the pump set turns no faster than " + speed);
        }
        return made(law, Optional.empty(), OperatingPoint.atSpeed(set, flow, speed), limit, notes);
    }

    private static SteadyState made(
            ControlLaw law, Optional<Head> asked, OperatingPoint point, Limit limit, Notes own) {
        Basis basis = point.basis().with("law '" + law.name() + "': " + law.statement());
        return new SteadyState(law, asked, point, limit, own.and(point.notes()), basis);
    }

    @Override
    public String toString() {
        return "'" + law.name() + "': " + point;
    }
}
