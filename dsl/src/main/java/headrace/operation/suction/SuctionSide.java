package headrace.operation.suction;

import headrace.curve.Duty;
import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.AbsolutePressure;
import headrace.units.Flow;
import headrace.units.GaugePressure;
import headrace.units.Head;
import headrace.units.Length;
import java.util.Optional;

/**
 * From where a pump draws: a surface open to the air, or the point of a closed loop at which its tank holds the
 * pressure.
 *
 * <p>NPSH available is {@code (p − p_v)/(ρ·g) + z − r·Q²}, with the absolute pressure {@code p} at the surface or at
 * the tank. With the tank on the discharge side the way leads back through the pump: its head is taken off and the loss
 * is given back.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Heights from the pump's datum, positive upwards: the surface or the tank above the pump.
 *   <dt>Limits
 *   <dd>Steady flow of a liquid without air. Losses go with the square of flow.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_SUCTION}.
 *   <dt>Source
 *   <dd>ISO 17769-1:2012 for the terms; energy balance.
 * </dl>
 */
public final class SuctionSide implements Traced {
    private final AbsolutePressure air;
    private final AbsolutePressure held;
    private final Length height;
    private final boolean closed;
    private final Way way;

    /** From where the pressure is held to the pump: the loss, the side, and the bore of the flange. */
    private record Way(double lossMetresPerSquaredFlow, boolean discharge, Optional<Length> flange) {}

    private SuctionSide(AbsolutePressure air, AbsolutePressure held, Length height, boolean closed, Way way) {
        this.air = air;
        this.held = held;
        this.height = height;
        this.closed = closed;
        this.way = way;
        if (air.si() <= 0 || held.si() < 0) {
            throw impossible("with air at " + air + " and " + held + " where the pressure is held");
        }
    }

    /** Returns a suction side that draws from a surface open to the air, so high above the pump; below is negative. */
    public static SuctionSide open(AbsolutePressure air, Length surfaceAbovePump) {
        return new SuctionSide(air, air, surfaceAbovePump, false, new Way(0, false, Optional.empty()));
    }

    /** Returns the suction side of a closed loop whose tank holds a pressure, so high above the pump. */
    public static SuctionSide closed(AbsolutePressure air, GaugePressure atTank, Length tankAbovePump) {
        return new SuctionSide(air, atTank.toAbsolute(air), tankAbovePump, true, new Way(0, false, Optional.empty()));
    }

    /** Returns it with the loss at a flow of the pipe between where the pressure is held and the pump. */
    public SuctionSide withLoss(Duty atFlow) {
        double q = atFlow.flow().si();
        return with(new Way(atFlow.head().metres() / (q * q), way.discharge, way.flange));
    }

    /** Returns the same closed loop with its tank on the discharge side of the pump. */
    public SuctionSide onDischargeSide() {
        if (!closed) {
            throw impossible("from an open surface on the discharge side");
        }
        return with(new Way(way.lossMetresPerSquaredFlow, true, way.flange));
    }

    /** Returns it with the bore of the suction flange, where part of the pressure is velocity. */
    public SuctionSide withFlange(Length bore) {
        if (bore.si() <= 0) {
            throw impossible("through a bore of " + bore);
        }
        return with(new Way(way.lossMetresPerSquaredFlow, way.discharge, Optional.of(bore)));
    }

    private SuctionSide with(Way other) {
        return new SuctionSide(air, held, height, closed, other);
    }

    private static Refusal impossible(String how) {
        return new Refusal(
                SuctionProblem.IMPOSSIBLE_SUCTION,
                "Asked for a suction side " + how,
                "Pressures are absolute and above 0, bores are above 0, and only a closed loop has a tank on either side",
                "Check what was given");
    }

    /** Returns the pressure of the air. */
    public AbsolutePressure air() {
        return air;
    }

    /** Returns whether the tank is on the discharge side. */
    public boolean tankOnDischargeSide() {
        return way.discharge;
    }

    /**
     * Returns the NPSH available in m. Below 0 the liquid boils.
     *
     * @param q the flow in m³/s
     * @param pumpMetres the head of the pump in m, which matters if the tank is on the discharge side
     * @param liquid what is pumped
     */
    public double npshMetres(double q, double pumpMetres, Liquid liquid) {
        double weight = liquid.density().kilogramsPerCubicMetre() * Liquid.STANDARD_GRAVITY;
        double vapour = liquid.vapourPressure().pascals();
        return (held.pascals() - vapour) / weight + height.metres() + wayMetres(q, pumpMetres);
    }

    private double wayMetres(double q, double pumpMetres) {
        double loss = way.lossMetresPerSquaredFlow * q * q;
        return way.discharge ? loss - pumpMetres : -loss;
    }

    /** Returns the NPSH available. */
    public Head npshAvailable(Duty point, Liquid liquid) {
        return Head.metres(npshMetres(point.flow().si(), point.head().metres(), liquid));
    }

    /** Returns the static pressure at the suction flange; without a bore, as if the liquid stood there. */
    public GaugePressure suctionPressure(Duty point, Liquid liquid) {
        double q = point.flow().si();
        double weight = liquid.density().kilogramsPerCubicMetre() * Liquid.STANDARD_GRAVITY;
        double metres = height.metres() + wayMetres(q, point.head().metres()) - velocityMetres(q);
        return GaugePressure.pascals(held.pascals() - air.pascals() + weight * metres);
    }

    private double velocityMetres(double q) {
        return way.flange.map(bore -> velocityHead(q, bore)).orElse(0.0);
    }

    private static double velocityHead(double q, Length bore) {
        double velocity = q / (Math.PI / 4 * bore.metres() * bore.metres());
        return velocity * velocity / (2 * Liquid.STANDARD_GRAVITY);
    }

    /**
     * A gauge at the suction flange of a running pump.
     *
     * @param reading what it shows
     * @param abovePump its height above the pump's datum
     * @param bore the bore where it sits
     */
    public record Gauge(GaugePressure reading, Length abovePump, Length bore) {
        /**
         * Returns the NPSH available that follows from the reading: {@code (p + p_air − p_v)/(ρ·g) + z + v²/2g}.
         *
         * @throws Refusal with {@code IMPOSSIBLE_SUCTION} if the bore is not above 0
         */
        public Head npshAvailable(Flow flow, Liquid liquid, AbsolutePressure air) {
            if (bore.si() <= 0) {
                throw impossible("through a bore of " + bore);
            }
            double weight = liquid.density().kilogramsPerCubicMetre() * Liquid.STANDARD_GRAVITY;
            double above =
                    reading.toAbsolute(air).pascals() - liquid.vapourPressure().pascals();
            return Head.metres(above / weight + abovePump.metres() + velocityHead(flow.si(), bore));
        }
    }

    /** Returns that the tank is on the discharge side, if it is. */
    @Override
    public Notes notes() {
        return way.discharge
                ? Notes.NONE.with(
                        SuctionProblem.TANK_ON_DISCHARGE_SIDE,
                        "The tank holds the pressure on the discharge side, so the suction pressure falls by nearly the"
                                + " whole head of the pump when it runs")
                : Notes.NONE;
    }

    @Override
    public Basis basis() {
        return Basis.of(toString());
    }

    @Override
    public String toString() {
        String from = closed
                ? "closed loop, " + held + " at the tank on the " + (way.discharge ? "discharge" : "suction") + " side"
                : "open surface at " + held;
        return "suction: " + from + ", " + height + " above the pump, air at " + air;
    }
}
