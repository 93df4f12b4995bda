package headrace.operation.suction;

import headrace.curve.PumpCurve;
import headrace.liquid.Liquid;
import headrace.operation.limit.ReachableRegion;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.GaugePressure;
import headrace.units.Head;
import headrace.units.Pressure;
import java.util.List;
import java.util.Optional;

/**
 * The highest pressure that a pump can make in its loop, held against what each part bears: static pressure, the
 * greatest head at the greatest speed, and the swing of the tank. A relief valve counts with 90 % of its setting.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Gauge pressures.
 *   <dt>Limits
 *   <dd>Steady: what a valve that shuts fast adds is not in it. All parts are taken to stand at the height of the
 *       static pressure.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_PRESSURE}.
 *   <dt>Source
 *   <dd>Common practice, no source.
 * </dl>
 *
 * @param highest the highest pressure
 * @param weakest the part with the least left, if any was named
 * @param notes the parts that bear less
 * @param basis what it rests on
 */
public record WorkingPressure(GaugePressure highest, Optional<Part> weakest, Notes notes, Basis basis)
        implements Traced {
    private static final double OF_RELIEF = 0.9;

    /**
     * A part and what it bears.
     *
     * @param name the part
     * @param bears the pressure that it bears
     */
    public record Part(String name, GaugePressure bears) {
        /** Returns a relief valve, which must not begin to open: it counts with 90 % of its setting. */
        public static Part relief(GaugePressure setting) {
            return new Part("relief valve at 90 % of " + setting, setting.times(OF_RELIEF));
        }
    }

    /**
     * What adds up to the highest pressure.
     *
     * @param atRest the static pressure where the pump stands
     * @param greatestHead the greatest head of the pump at its greatest speed; of all pumps where they stand in series
     * @param liquid the liquid when it is heaviest
     * @param swing how far the pressure of the tank rises, 0 or more
     */
    public record Terms(GaugePressure atRest, Head greatestHead, Liquid liquid, Pressure swing) {
        /** Refuses a head or a swing below 0. */
        public Terms {
            if (greatestHead.si() < 0 || swing.si() < 0) {
                throw new Refusal(
                        SuctionProblem.IMPOSSIBLE_PRESSURE,
                        "Asked for the highest pressure from a head of " + greatestHead + " and a swing of " + swing,
                        "Both are 0 or more",
                        "Check the signs");
            }
        }
    }

    /**
     * Returns the highest pressure that a pump set can make at its greatest speed against a closed valve.
     *
     * @param reach what the pump set can reach, in the liquid when it is heaviest
     * @param atRest the static pressure where the pump stands
     * @param swing how far the pressure of the tank rises, 0 or more
     * @param parts what it is held against
     * @throws Refusal with {@code SHUT_OFF_UNKNOWN} if the curve begins above no flow
     */
    public static WorkingPressure of(ReachableRegion reach, GaugePressure atRest, Pressure swing, List<Part> parts) {
        PumpCurve fastest = reach.curveAt(reach.speedAtNoFlow());
        WorkingPressure made = of(new Terms(atRest, reach.greatestHead(), fastest.liquid(), swing), parts);
        return new WorkingPressure(
                made.highest,
                made.weakest,
                fastest.notes().and(made.notes),
                reach.basis().and(made.basis).with("greatest head at " + fastest.speed()));
    }

    /** Returns the highest pressure, held against some parts. */
    public static WorkingPressure of(Terms terms, List<Part> parts) {
        GaugePressure highest =
                terms.atRest.plus(terms.liquid.pressureOf(terms.greatestHead)).plus(terms.swing);
        Notes notes = terms.liquid.notes();
        Part weakest = null;
        for (Part part : parts) {
            weakest = weakest == null || part.bears.compareTo(weakest.bears) < 0 ? part : weakest;
            if (highest.compareTo(part.bears) > 0) {
                notes = notes.with(
                        SuctionProblem.OVER_RATING,
                        "The pressure can rise to " + highest + ", " + highest.minus(part.bears) + " above the "
                                + part.bears + " that counts for " + part.name);
            }
        }
        Basis basis = terms.liquid
                .basis()
                .with("highest pressure: " + terms.atRest + " at rest, " + terms.greatestHead + " of " + terms.liquid
                        + ", " + terms.swing + " swing of the tank");
        return new WorkingPressure(highest, Optional.ofNullable(weakest), notes, basis);
    }

    @Override
    public String toString() {
        return "highest working pressure " + highest
                + weakest.map(part -> "; the weakest part, " + part.name + ", bears " + part.bears)
                        .orElse("");
    }
}
