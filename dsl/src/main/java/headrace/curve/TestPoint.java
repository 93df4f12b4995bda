package headrace.curve;

import headrace.liquid.Liquid;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;

/**
 * One reading of a pump test.
 *
 * @param flow the flow, at least 0
 * @param head the total head at that flow, at least 0
 * @param shaftPower the power into the shaft, above 0
 * @param speed the speed at which this point was read, above 0
 */
public record TestPoint(Flow flow, Head head, Power shaftPower, Speed speed) {
    /** Refuses with {@code IMPOSSIBLE_POINT} what no pump in its first quadrant can show. */
    public TestPoint {
        require(flow.si() >= 0, "a flow of " + flow, "A tested flow is 0 or more");
        require(head.si() >= 0, "a head of " + head, "A tested head is 0 or more");
        require(shaftPower.si() > 0, "a shaft power of " + shaftPower, "A turning pump takes more than no power");
        require(speed.si() > 0, "a speed of " + speed, "A tested speed is above 0");
    }

    /** Returns the reading that the affinity laws make of this one at another speed. */
    public TestPoint atSpeed(Speed other) {
        double s = other.over(speed).value();
        return new TestPoint(flow.times(s), head.times(s * s), shaftPower.times(s * s * s), other);
    }

    /** Returns the hydraulic power in a liquid over the shaft power. */
    public Ratio efficiencyIn(Liquid liquid) {
        return Ratio.of(liquid.pressureOf(head).pascals() * flow.si() / shaftPower.watts());
    }

    private static void require(boolean possible, String asked, String rule) {
        if (!possible) {
            throw new Refusal(
                    CurveProblem.IMPOSSIBLE_POINT,
                    "Given a test point with " + asked,
                    rule,
                    "Check the reading and its sign, or leave the point out");
        }
    }
}
