package headrace.operation.limit;

import headrace.curve.CurvePoint;
import headrace.curve.PumpCurve;
import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Mass;
import headrace.units.Numbers;
import headrace.units.Power;
import headrace.units.Speed;
import headrace.units.Temperature;
import headrace.units.Time;
import headrace.units.Volume;

/**
 * How fast a pump heats itself against a closed valve: {@code t = (m_w·c_w + m_m·c_m)·(T_lim − T₀)/P(0)}, without heat
 * given off.
 *
 * <dl>
 *   <dt>Units
 *   <dd>The time at the speed of the curve; it goes with one over its cube.
 *   <dt>Limits
 *   <dd>Adiabatic, the whole filling at one temperature: the real hot spot comes sooner. A measure of haste, never a
 *       permission. The power at no flow must be on the curve, tested or extended by choice.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_DEAD_HEAD}, and as {@link PumpCurve#at}.
 *   <dt>Source
 *   <dd>Energy balance. The heat capacity of cast iron, 460 J/(kg·K), from memory, unconfirmed.
 * </dl>
 *
 * @param time the time
 * @param power the shaft power at no flow
 * @param speed the speed
 * @param limit the temperature that is reached
 * @param notes that this is no permission, and what the curve has to say
 * @param basis what it rests on
 */
public record DeadHead(Time time, Power power, Speed speed, Temperature limit, Notes notes, Basis basis)
        implements Traced {
    private static final double IRON = 460;

    /**
     * Returns the time in which a pump heats its filling from the temperature of its liquid to a limit.
     *
     * @param curve the curve at the speed at which it turns
     * @param filling the liquid inside the casing, above 0
     * @param casing the metal that warms with it, 0 or more
     * @param limit the temperature, above that of the liquid
     */
    public static DeadHead of(PumpCurve curve, Volume filling, Mass casing, Temperature limit) {
        Liquid liquid = curve.liquid();
        double kelvins = limit.minus(liquid.temperature()).kelvins();
        if (filling.si() <= 0 || casing.si() < 0 || kelvins <= 0) {
            throw new Refusal(
                    LimitProblem.IMPOSSIBLE_DEAD_HEAD,
                    "Asked how long " + filling + " of " + liquid + " in " + casing + " of metal take to " + limit,
                    "The filling must be above 0, the metal 0 or more, and the limit above the temperature of the liquid",
                    "Correct what was given, or take the liquid at another temperature");
        }
        CurvePoint closed = curve.at(Flow.ZERO);
        double heat = filling.times(liquid.density()).kilograms()
                        * liquid.heatCapacity().joulesPerKilogramKelvin()
                + casing.kilograms() * IRON;
        Time time = Time.seconds(heat * kelvins / closed.shaftPower().watts());
        Notes notes = closed.notes()
                .with(
                        LimitProblem.DEAD_HEAD_TIME,
                        "Against a closed valve " + curve.name() + " at " + curve.speed() + " takes "
                                + closed.shaftPower() + " and heats its filling to " + limit + " in " + minutes(time)
                                + " if it gives off none; parts of it are hotter sooner: never use this time as"
                                + " permission");
        Basis basis = curve.basis()
                .and(liquid.basis())
                .with("against a closed valve: " + filling + " of liquid, " + casing
                        + " of cast iron at 460 J/(kg·K), no heat given off");
        return new DeadHead(time, closed.shaftPower(), curve.speed(), limit, notes, basis);
    }

    private static String minutes(Time time) {
        return Numbers.print(time.toMinutes()) + " min";
    }

    @Override
    public String toString() {
        return minutes(time) + " to " + limit + " at " + power + ", adiabatic; never a permission";
    }
}
