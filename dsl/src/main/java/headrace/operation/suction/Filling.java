package headrace.operation.suction;

import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.AbsolutePressure;
import headrace.units.GaugePressure;
import headrace.units.Length;
import headrace.units.Pressure;
import java.util.Optional;

/**
 * The pressure to which a closed loop is filled, and the least one when it is hot, both at the tank.
 *
 * <p>Cold, the top of the loop keeps a gauge pressure so that air can be let out; hot, it keeps a margin above the
 * pressure at which the liquid boils: {@code p_top ≥ p_v + margin − p_air}, and not less than cold.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Gauge pressures at the height of the tank.
 *   <dt>Limits
 *   <dd>At rest. 30 kPa at the top when cold and 30 kPa above boiling when hot unless stated, noted.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_FILLING}.
 *   <dt>Source
 *   <dd>Common practice, no source.
 * </dl>
 *
 * @param cold the filling pressure
 * @param hot the least pressure when the loop is hot
 * @param notes what was assumed
 * @param basis what it rests on
 */
public record Filling(GaugePressure cold, GaugePressure hot, Notes notes, Basis basis) implements Traced {
    private static final Pressure USUAL = Pressure.kilopascals(30);

    /**
     * The loop that is filled.
     *
     * @param cold its liquid when it is filled
     * @param hot its liquid at its hottest
     * @param topAboveTank how high its top stands above the tank, 0 or more
     * @param air the pressure of the air
     */
    public record Loop(Liquid cold, Liquid hot, Length topAboveTank, AbsolutePressure air) {
        /** Refuses a loop below its tank or colder when hot. */
        public Loop {
            if (topAboveTank.si() < 0 || hot.temperature().compareTo(cold.temperature()) < 0 || air.si() <= 0) {
                throw impossible("of a loop whose top stands " + topAboveTank + " above the tank, filled with " + cold
                        + " and then " + hot + ", in air at " + air);
            }
        }
    }

    /** Returns the pressures with both margins assumed. */
    public static Filling of(Loop loop) {
        return of(loop, Optional.empty(), Optional.empty());
    }

    /**
     * Returns the pressures.
     *
     * @param loop the loop
     * @param top the gauge pressure at the top when cold, above 0, if stated
     * @param aboveBoiling how far the top stays above boiling when hot, above 0, if stated
     */
    public static Filling of(Loop loop, Optional<Pressure> top, Optional<Pressure> aboveBoiling) {
        double atTop = top.orElse(USUAL).pascals();
        double margin = aboveBoiling.orElse(USUAL).pascals();
        if (atTop <= 0 || margin <= 0) {
            throw impossible(
                    "with " + top.orElse(USUAL) + " at the top and " + aboveBoiling.orElse(USUAL) + " above boiling");
        }
        double height = loop.topAboveTank.metres();
        double hotTop = Math.max(atTop, loop.hot.vapourPressure().pascals() + margin - loop.air.pascals());
        Notes notes = loop.cold.notes().and(loop.hot.notes());
        if (top.isEmpty() || aboveBoiling.isEmpty()) {
            notes = notes.with(
                    SuctionProblem.FILLING_MARGIN_ASSUMED,
                    "Not every margin of the filling was stated; " + USUAL + " is assumed for "
                            + (top.isEmpty() ? "the top when cold" : "")
                            + (top.isEmpty() && aboveBoiling.isEmpty() ? " and for " : "")
                            + (aboveBoiling.isEmpty() ? "what lies above boiling when hot" : ""));
        }
        return new Filling(
                GaugePressure.pascals(atTop + weight(loop.cold) * height),
                GaugePressure.pascals(hotTop + weight(loop.hot) * height),
                notes,
                loop.cold
                        .basis()
                        .and(loop.hot.basis())
                        .with("filling: top " + loop.topAboveTank + " above the tank, air at " + loop.air));
    }

    private static double weight(Liquid liquid) {
        return liquid.density().kilogramsPerCubicMetre() * Liquid.STANDARD_GRAVITY;
    }

    private static Refusal impossible(String what) {
        return new Refusal(
                SuctionProblem.IMPOSSIBLE_FILLING,
                "Asked for the filling " + what,
                "The top stands at or above the tank, hot is not below cold, and pressures and margins are above 0",
                "Check the order and the signs of what was given");
    }

    @Override
    public String toString() {
        return "fill to " + cold + " when cold, keep " + hot + " when hot, at the tank";
    }
}
