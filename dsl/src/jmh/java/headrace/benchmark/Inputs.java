package headrace.benchmark;

import headrace.curve.CurveFormula;
import headrace.curve.PumpCurve;
import headrace.liquid.Liquid;
import headrace.liquid.LiquidProperties;
import headrace.numeric.Polynomial;
import headrace.units.AbsolutePressure;
import headrace.units.Density;
import headrace.units.Flow;
import headrace.units.HeatCapacity;
import headrace.units.Speed;
import headrace.units.Temperature;
import headrace.units.Viscosity;
import java.util.Arrays;

/** The invented pump and the random numbers that all workloads share. Flows of the workloads are in m³/h. */
final class Inputs {
    static final Speed SPEED = Speed.revolutionsPerMinute(1450);
    static final double[] HEAD = {31.2, -0.012, -0.00082};
    static final double[] KILOWATTS = {3.1, 0.062, -0.00012};
    static final double GREATEST = 135;

    /** Only the density counts here. */
    private static final Liquid WATER = Liquid.of(
            "water of a stated density",
            Temperature.celsius(20),
            new LiquidProperties(
                    Density.kilogramsPerCubicMetre(998.2),
                    Viscosity.pascalSeconds(1.002e-3),
                    AbsolutePressure.pascals(2339),
                    HeatCapacity.joulesPerKilogramKelvin(4184)));

    private Inputs() {}

    /** Returns output {@code i + 1} of SplitMix64 started from a seed. */
    static long bits(long seed, long i) {
        long z = seed + (i + 1) * 0x9E3779B97F4A7C15L;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }

    /** Returns the upper 53 bits of it as a number from 0 to below 1. */
    static double uniform(long seed, long i) {
        return (bits(seed, i) >>> 11) * 0x1p-53;
    }

    /** Returns the pump of given coefficients of its head in m of the flow in m³/h. */
    static PumpCurve pump(double to, double... head) {
        return pump("P-A", head, KILOWATTS, to);
    }

    /** Returns another pump, of given coefficients of its head in m and its power in kW of the flow in m³/h. */
    static PumpCurve pump(String name, double[] head, double[] kilowatts, double to) {
        double[] watts = Arrays.stream(kilowatts).map(c -> 1000 * c).toArray();
        CurveFormula formula = new CurveFormula(
                Polynomial.of(head).ofScaled(3600),
                Polynomial.of(watts).ofScaled(3600),
                Flow.ZERO,
                Flow.cubicMetresPerHour(to));
        return PumpCurve.of(name, SPEED, WATER, formula);
    }

    static PumpCurve pump() {
        return pump(GREATEST, HEAD);
    }

    /** Returns a sum that rounding hardly touches. */
    static double sum(double[] values, double scale) {
        double sum = 0;
        double lost = 0;
        for (double each : values) {
            double value = each * scale;
            double next = sum + value;
            lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
            sum = next;
        }
        return sum + lost;
    }
}
