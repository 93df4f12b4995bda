package headrace.circuit.part.valve;

import headrace.circuit.part.SquareLaw;
import headrace.units.Flow;
import headrace.units.FlowCoefficient;
import headrace.units.Gravity;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Pressure;

/**
 * What a flow coefficient means: {@code Δp/1 bar = (ρ/1000 kg/m³)·(Q/Kv)²}, Q in m³/h, and so the same head in every
 * liquid, {@code h = 10⁵/(1000·g)·(Q/Kv)²}.
 *
 * <p>Source: IEC 60534-1, for turbulent flow without cavitation.
 */
public final class Orifice {
    /** The head in m that 1 bar is in the water of the definition. */
    private static final double BAR_METRES = 1e5 / (1000 * Gravity.STANDARD);

    private static final double SECONDS_PER_HOUR = 3600;

    private Orifice() {}

    /** Returns the law of a flow coefficient above 0. */
    public static SquareLaw law(FlowCoefficient coefficient) {
        double perCoefficient = SECONDS_PER_HOUR / coefficient.kv();
        return new SquareLaw(BAR_METRES * perCoefficient * perCoefficient);
    }

    /** Returns the flow coefficient that takes a head above 0 at a flow. */
    public static FlowCoefficient taking(Head head, Flow flow) {
        return FlowCoefficient.kv(SECONDS_PER_HOUR * flow.si() / Math.sqrt(head.metres() / BAR_METRES));
    }

    /** Returns the flow through a flow coefficient under a head of 0 or more. */
    public static Flow flow(FlowCoefficient coefficient, Head head) {
        return Flow.cubicMetresPerSecond(coefficient.kv() / SECONDS_PER_HOUR * Math.sqrt(head.metres() / BAR_METRES));
    }

    /** Returns the flow coefficient of a K in a pipe of an inside diameter: {@code h = K·v²/2g}. */
    public static FlowCoefficient ofK(double k, Length inside) {
        double area = Math.PI / 4 * inside.metres() * inside.metres();
        double squareFlow = k / (2 * Gravity.STANDARD * area * area);
        return FlowCoefficient.kv(SECONDS_PER_HOUR * Math.sqrt(BAR_METRES / squareFlow));
    }

    /** Returns the K in a pipe of an inside diameter that takes as much as a flow coefficient. */
    public static double kOf(FlowCoefficient coefficient, Length inside) {
        double area = Math.PI / 4 * inside.metres() * inside.metres();
        return law(coefficient).metresPerSquaredFlow() * 2 * Gravity.STANDARD * area * area;
    }

    /** Returns the flow coefficient that passes a flow at a pressure difference, in the water of the definition. */
    static FlowCoefficient passing(Flow flow, Pressure at) {
        return taking(Head.metres(at.toBars() * BAR_METRES), flow);
    }
}
