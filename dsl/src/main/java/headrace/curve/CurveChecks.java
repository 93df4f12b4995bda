package headrace.curve;

import headrace.curve.PumpMap.Best;
import headrace.curve.PumpMap.Range;
import headrace.curve.PumpMap.Rise;
import headrace.liquid.Liquid;
import headrace.numeric.SmoothCurve;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Numbers;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.List;
import java.util.Optional;

/** What must hold for a curve to be one, and what stands out in its shape. */
final class CurveChecks {
    /** Between these shares of the tested speed pump tests have borne out the affinity laws: common practice. */
    private static final double SLOWEST = 0.3;

    private static final double FASTEST = 1.2;

    private CurveChecks() {}

    static PumpCurve curveOf(String name, Speed speed, Liquid liquid, CurveFormula formula) {
        Tested tested = new Tested(
                name,
                speed,
                Optional.empty(),
                liquid,
                liquid,
                List.of(),
                FittedCurve.known(Head.KIND, formula.headMetres()),
                FittedCurve.known(Power.KIND, formula.shaftWatts()));
        Range range = new Range(formula.lowest().si(), formula.highest().si());
        double lowestHead = lowest(formula.headMetres(), range);
        if (formula.headMetres().valueAt(lowestHead) < 0) {
            throw headBelowZero(name, formula.headMetres(), lowestHead);
        }
        Basis basis = liquid.basis().with(name + ": given as formulas");
        return checked(tested, formula.headMetres(), formula.shaftWatts(), range, liquid.notes(), basis);
    }

    /** Returns the curve, refusing one without power or with more than the whole of it. */
    static PumpCurve checked(
            Tested tested, SmoothCurve head, SmoothCurve power, Range range, Notes notes, Basis basis) {
        requirePower(tested.name(), power, range);
        double weight = tested.liquid().density().si() * Liquid.STANDARD_GRAVITY;
        SimilarityMap map = SimilarityMap.of(head, power, range, weight);
        if (map.testedBest() > 1) {
            throw CurveRefusals.aboveWhole(
                    "The curve of " + tested.name() + " at "
                            + Flow.cubicMetresPerSecond(map.bestAt(1).flow()),
                    Ratio.of(map.testedBest()),
                    tested.liquid());
        }
        return PumpCurve.made(tested, map, notes.and(shapeNotes(map)), basis);
    }

    static Refusal headBelowZero(String name, SmoothCurve head, double q) {
        return new Refusal(
                CurveProblem.HEAD_FALLS_TO_ZERO,
                "The head of " + name + " is " + Head.metres(head.valueAt(q)) + " at " + Flow.cubicMetresPerSecond(q),
                "A pump curve has a head above 0 where it begins, and none below 0",
                "Look for a wrong head, flow or unit among what was given");
    }

    private static void requirePower(String name, SmoothCurve power, Range range) {
        double q = lowest(power, range);
        if (!(power.valueAt(q) > 0)) {
            throw new Refusal(
                    CurveProblem.POWER_FALLS_TO_ZERO,
                    "The shaft power of " + name + " is " + Power.watts(power.valueAt(q)) + " at "
                            + Flow.cubicMetresPerSecond(q),
                    "A turning pump takes more than no power over its whole range",
                    "Look for a wrong power or unit among what was given");
        }
    }

    private static double lowest(SmoothCurve curve, Range range) {
        double where = range.low();
        double[] stationary = curve.stationaryIn(range.low(), range.high());
        for (double q : SmoothCurve.stops(range.low(), range.high(), stationary)) {
            where = curve.valueAt(q) < curve.valueAt(where) ? q : where;
        }
        return where;
    }

    /** Refuses a mechanical loss that is more than the pump takes, or than it loses altogether. */
    static void loss(String name, PumpMap map) {
        Best best = map.bestAt(1);
        double lost = map.shaftWatts(best.flow(), 1) * (1 - best.efficiency());
        double most = Math.min(lost, map.leastWatts());
        if (map.model() instanceof EfficiencyOverSpeed.MechanicalLoss split
                && split.loss().watts() >= most) {
            throw new Refusal(
                    CurveProblem.IMPOSSIBLE_LOSS,
                    "Asked for a mechanical loss of " + split.loss() + " in " + name,
                    "It must be less than all losses at best efficiency together and than the least shaft power: less than "
                            + Power.watts(most),
                    "Take 1 to 5 % of the power at best efficiency if nothing better is known");
        }
    }

    /** Refuses a point of an extension that no pump can have. */
    static void meaning(PumpCurve curve, Flow flow) {
        Range tested = curve.map().tested();
        double q = flow.si();
        if (!(curve.headMetres(q, 1) >= 0)) {
            throw CurveRefusals.meaningless(curve, CurveProblem.HEAD_FALLS_TO_ZERO, flow, tested);
        }
        if (!(curve.shaftWatts(q, 1) > 0)) {
            throw CurveRefusals.meaningless(curve, CurveProblem.POWER_FALLS_TO_ZERO, flow, tested);
        }
        if (!(curve.efficiency(q, 1) <= 1)) {
            throw CurveRefusals.meaningless(curve, CurveProblem.EFFICIENCY_ABOVE_ONE, flow, tested);
        }
    }

    private static Notes shapeNotes(SimilarityMap map) {
        Notes notes = Notes.NONE;
        Rise rise = map.headRise(1);
        if (rise.by() > 0) {
            notes = notes.with(
                    CurveProblem.HEAD_DROOP,
                    "the head rises by " + Head.metres(rise.by()) + " from " + flow(rise.from()) + " to "
                            + flow(rise.to()) + ", so that a head near the maximum of "
                            + Head.metres(map.headMetres(rise.to(), 1)) + " is met at more than one flow");
        }
        Rise fall = map.powerFall();
        if (fall.by() > 0) {
            notes = notes.with(
                    CurveProblem.POWER_NOT_RISING,
                    "the shaft power falls by " + Power.watts(fall.by()) + " from " + flow(fall.from()) + " to "
                            + flow(fall.to()) + ", so that it does not tell the flow there");
        }
        double best = map.bestAt(1).flow();
        if (best <= map.tested().low() || best >= map.tested().high()) {
            notes = notes.with(
                    CurveProblem.BEST_EFFICIENCY_AT_END,
                    "the best efficiency stands at " + flow(best)
                            + ", an end of the tested range, and may lie beyond it");
        }
        return notes;
    }

    private static Flow flow(double q) {
        return Flow.cubicMetresPerSecond(q);
    }

    /** Returns the curve, refusing one at a speed for which its efficiency model does not hold. */
    static PumpCurve speed(PumpCurve curve) {
        PumpMap map = curve.map();
        double ratio = curve.seen().ratio();
        boolean slowEnough = ratio <= map.model().fastest() * (1 + PumpMap.ROUNDING);
        boolean fastEnough = ratio > 0 && ratio >= map.slowest() * (1 - PumpMap.ROUNDING);
        if (!slowEnough || !fastEnough) {
            throw CurveRefusals.speed(curve, map.slowest(), map.model().fastest());
        }
        return curve;
    }

    /** Returns what a moved or extended curve has to say beside its test. */
    static Notes notesOf(PumpCurve curve) {
        double ratio = curve.seen().ratio();
        Range tested = curve.map().tested();
        Notes notes = Notes.NONE;
        if (ratio < SLOWEST || ratio > FASTEST) {
            notes = notes.with(
                    CurveProblem.SPEED_FAR_FROM_TEST,
                    curve.speed() + " is " + Numbers.print(ratio) + " of the tested " + curve.testedSpeed()
                            + "; the affinity laws are borne out from " + Numbers.print(SLOWEST) + " to "
                            + Numbers.print(FASTEST));
        }
        if (!tested.reaches(curve.seen().range())) {
            notes = notes.with(
                    CurveProblem.CURVE_EXTENDED,
                    "the curve of " + curve.name() + " was continued by choice to "
                            + curve.flows(curve.seen().range()) + " at " + curve.speed() + "; tested were "
                            + curve.flows(tested));
        }
        return notes;
    }
}
