package headrace.estimate.site;

import headrace.estimate.EstimateProblem;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Speed;
import java.util.Optional;

/**
 * Readings at a flow that is known: from a portable meter, or none because the valve is closed.
 *
 * @param flow the known flow, 0 or more
 * @param power the wire power, above 0
 * @param speed the speed, above 0
 * @param head the head, if it was read
 */
public record KnownPoint(Flow flow, Power power, Speed speed, Optional<Head> head) {
    /** Refuses with {@code IMPOSSIBLE_READING} what no running pump can give. */
    public KnownPoint {
        boolean possible = flow.si() >= 0 && power.watts() > 0 && speed.si() > 0;
        if (!possible || head.map(h -> h.metres() <= 0).orElse(false)) {
            throw new Refusal(
                    EstimateProblem.IMPOSSIBLE_READING,
                    "Given " + power + " at " + speed + " and a known " + flow
                            + head.map(h -> " and " + h).orElse(""),
                    "The flow is 0 or more; power, speed and head are above 0",
                    "Check the signs, or leave the point out");
        }
    }

    /** Returns a point without a head. */
    public static KnownPoint of(Flow flow, Power power, Speed speed) {
        return new KnownPoint(flow, power, speed, Optional.empty());
    }

    /** Returns this point with a head. */
    public KnownPoint with(Head read) {
        return new KnownPoint(flow, power, speed, Optional.of(read));
    }

    boolean closed() {
        return flow.si() == 0;
    }

    @Override
    public String toString() {
        return flow + ", " + power + ", " + speed + head.map(h -> ", " + h).orElse("");
    }
}
