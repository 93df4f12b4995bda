package headrace.curve;

import headrace.curve.PumpMap.Range;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;

/** The sentences with which a pump curve refuses what it cannot say. */
final class CurveRefusals {
    private CurveRefusals() {}

    static Refusal flow(PumpCurve curve, Flow flow, Range range, boolean extended) {
        return new Refusal(
                CurveProblem.FLOW_OUT_OF_RANGE,
                "Asked for the curve of " + curve.name() + " at " + flow,
                "At " + curve.speed() + " it covers " + curve.flows(range),
                extended
                        ? "Ask for the point at that flow, which is marked as extended"
                        : "Ask within that range, extend the curve by choice, or test the pump at that flow");
    }

    static Refusal extension(PumpCurve curve, Flow flow) {
        return new Refusal(
                CurveProblem.FLOW_OUT_OF_RANGE,
                "Asked to extend the curve of " + curve.name() + " to " + flow,
                "A curve can be extended to a flow of 0 or more",
                "Check the sign");
    }

    static Refusal head(PumpCurve curve, Head head, Range range, double[] heads) {
        return new Refusal(
                CurveProblem.HEAD_OUT_OF_RANGE,
                "Asked for the flow at which " + curve.name() + " has a head of " + head + " at " + curve.speed(),
                "Over " + curve.flows(range) + " it has heads from " + Head.metres(heads[0]) + " to "
                        + Head.metres(heads[1]),
                "Ask within those heads, or change the speed");
    }

    /** A duty misses the curve beyond its last point, before its first one, or for want of head altogether. */
    static Refusal duty(PumpCurve curve, Duty duty, Range range) {
        double q = duty.flow().si();
        double share = q / curve.seen().flow(range.high()).si();
        Head least = Head.metres(share > 0 ? curve.headMetres(q, share) : 0);
        String possible = duty.head().compareTo(least) < 0
                ? "At that flow the curve begins with a head of " + least + " at "
                        + curve.speed().times(share) + ", where it covers "
                        + curve.seen().flows(range, share)
                : "The curve begins at " + curve.flows(range) + " at " + curve.speed()
                        + ", and the duty asks for less flow at its head";
        return new Refusal(
                CurveProblem.DUTY_OUT_OF_RANGE,
                "Asked for the speed at which " + curve.name() + " delivers " + duty,
                possible,
                "Choose a pump whose tested range holds the duty, or extend this curve and take the marked point");
    }

    static Refusal speed(PumpCurve curve, double slowest, double fastest) {
        String least =
                slowest > 0 ? ", and here at least " + curve.testedSpeed().times(slowest) : "";
        String most = fastest < Double.POSITIVE_INFINITY
                ? " and at most " + curve.testedSpeed().times(fastest)
                : "";
        return new Refusal(
                CurveProblem.SPEED_OUT_OF_RANGE,
                "Asked for the curve of " + curve.name() + " at " + curve.speed(),
                "The speed must be above 0" + least + most + ", with the efficiency over speed: "
                        + curve.efficiencyOverSpeed().name(),
                "Leave a stopped pump out, or choose another efficiency model");
    }

    static Refusal meaningless(PumpCurve curve, CurveProblem problem, Flow flow, Range tested) {
        double q = flow.si();
        return new Refusal(
                problem,
                "Asked for a point at " + flow + " on the extended curve of " + curve.name() + ", where it gives "
                        + Head.metres(curve.headMetres(q, 1)) + " and " + Power.watts(curve.shaftWatts(q, 1)),
                "The tested range is " + curve.flows(tested),
                "Extend less far, or test the pump up to the flow you need");
    }

    static Refusal aboveWhole(String what, Ratio efficiency, Object liquid) {
        return new Refusal(
                CurveProblem.EFFICIENCY_ABOVE_ONE,
                what + " has an efficiency of " + efficiency,
                "A pump gives less hydraulic power than it takes at its shaft, in " + liquid + " too",
                "Check the units of flow, head and power");
    }
}
