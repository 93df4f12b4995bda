package headrace.curve;

import headrace.numeric.Roots;
import headrace.numeric.Slope;
import headrace.problem.Notes;
import java.util.function.DoubleUnaryOperator;

/**
 * Head and shaft power over flow and speed on bare doubles: flow in m³/s, speed as a share of the tested speed.
 *
 * <p>Every flow at every speed belongs to one flow of the test, its homologous flow; the tested range is a range of
 * those. The three values allocate nothing and check nothing.
 */
sealed interface PumpMap permits SimilarityMap, ViscousMap {
    /** Rounding: flows that differ by this share of the greatest count as the same. */
    double ROUNDING = 1e-9;

    /** So small a share of the greatest flow is taken for hardly any. */
    double LITTLE = 1e-4;

    /** Returns the head in m. */
    double headMetres(double q, double s);

    /** Returns the shaft power in W. */
    double shaftWatts(double q, double s);

    /** Returns hydraulic over shaft power. */
    double efficiency(double q, double s);

    /** Fills the values at many flows and speeds, the latter times a ratio. Allocates nothing. */
    default void fill(CurveArrays arrays, double ratio) {
        for (int i = 0; i < arrays.count(); i++) {
            double q = arrays.flows()[i];
            double s = arrays.speeds()[i] * ratio;
            arrays.heads()[i] = headMetres(q, s);
            arrays.powers()[i] = shaftWatts(q, s);
            arrays.efficiencies()[i] = efficiency(q, s);
        }
    }

    /** Fills the values at the first flows and one speed. */
    default void fillAt(double s, CurveArrays arrays, int count) {
        for (int i = 0; i < count; i++) {
            double q = arrays.flows()[i];
            arrays.heads()[i] = headMetres(q, s);
            arrays.powers()[i] = shaftWatts(q, s);
            arrays.efficiencies()[i] = efficiency(q, s);
        }
    }

    /** Fills the heads at the first flows and speeds, the latter times a ratio. */
    default void fillHeads(CurveArrays arrays, double ratio, int count) {
        for (int i = 0; i < count; i++) {
            arrays.heads()[i] = headMetres(arrays.flows()[i], arrays.speeds()[i] * ratio);
        }
    }

    /**
     * Fills the slopes at the first flows and one speed, where {@link #fillAt} has filled the values. Where they are
     * not known in closed form, by differences.
     */
    default void fillSlopesAt(double s, CurveArrays arrays, CurveSlopes slopes, int count) {
        for (int i = 0; i < count; i++) {
            double q = Math.max(arrays.flows()[i], LITTLE * actual(tested().high(), s));
            slopes.headOverFlow()[i] = Slope.at(flow -> headMetres(flow, s), q);
            slopes.powerOverFlow()[i] = Slope.at(flow -> shaftWatts(flow, s), q);
            slopes.headOverSpeed()[i] = Slope.at(speed -> headMetres(q, speed), s);
            slopes.powerOverSpeed()[i] = Slope.at(speed -> shaftWatts(q, speed), s);
        }
    }

    /**
     * Returns the ends of a range of homologous flows and where the shaft power turns between them, as flows at a
     * speed, increasing.
     */
    default double[] powerStops(double s, Range range) {
        return Roots.turnsIn(q -> shaftWatts(q, s), actual(range.low(), s), actual(range.high(), s));
    }

    /** Returns the flow of the test to which a flow at a speed belongs. */
    double homologous(double q, double s);

    /** Returns the flow at a speed to which a flow of the test belongs. */
    double actual(double x, double s);

    /** Returns how much an error of the tested head counts at a flow and a speed. */
    double headGain(double q, double s);

    /** Returns how much an error of the tested shaft power counts at a flow and a speed. */
    double powerGain(double q, double s);

    /** Returns the point of best efficiency at a speed, inside the tested range. */
    Best bestAt(double s);

    /** Returns every flow at which the head has a value at a speed, increasing, inside a range of homologous flows. */
    double[] flowsAt(double metres, double s, Range range);

    /** Returns the stretch over which the head rises most at a speed, inside the tested range. */
    Rise headRise(double s);

    /** Returns the least and the greatest head at a speed inside a range of homologous flows. */
    double[] extremeHeads(double s, Range range);

    /**
     * Returns the speed at which the map has a head at a flow, inside a range of homologous flows, or infinity if there
     * is none. Allocates nothing.
     */
    double speedRatio(double q, double metres, Range range);

    /** Returns the greatest shaft power at a speed, inside the tested range. */
    double greatestWatts(double s);

    /** Returns the least shaft power at the tested speed, inside the tested range. */
    double leastWatts();

    /** Fills the speeds for many flows and heads, as {@link #speedRatio} gives each. Allocates nothing. */
    default void fillSpeedRatios(double[] flows, double[] heads, double[] ratios, Range range) {
        for (int i = 0; i < flows.length; i++) {
            ratios[i] = speedRatio(flows[i], heads[i], range);
        }
    }

    /** Returns how the efficiency changes with speed. */
    EfficiencyOverSpeed model();

    /** Returns this map with another model of efficiency over speed. */
    PumpMap with(EfficiencyOverSpeed model);

    /** Returns the least speed for which the map holds. */
    double slowest();

    /** Returns the map without a correction for viscosity. */
    SimilarityMap similarity();

    /** Returns what the map has to say about a speed. */
    Notes notesAt(double s);

    /** Returns the tested range. */
    Range tested();

    /**
     * A point of best efficiency.
     *
     * @param flow its flow
     * @param efficiency its efficiency
     */
    record Best(double flow, double efficiency) {}

    /**
     * A stretch over which something rises or falls.
     *
     * @param from the flow at which it begins
     * @param to the flow at which it ends
     * @param by the change, 0 if there is none
     */
    record Rise(double from, double to, double by) {
        /** Returns the greatest rise between two of some arguments, between which the function does not turn. */
        static Rise greatest(double[] stops, DoubleUnaryOperator function) {
            double foot = stops[0];
            Rise greatest = new Rise(foot, foot, 0);
            for (double q : stops) {
                double by = function.applyAsDouble(q) - function.applyAsDouble(foot);
                greatest = by > greatest.by ? new Rise(foot, q, by) : greatest;
                foot = by < 0 ? q : foot;
            }
            double nothing = ROUNDING * Math.abs(function.applyAsDouble(greatest.to));
            return greatest.by > nothing ? greatest : new Rise(stops[0], stops[0], 0);
        }
    }

    /**
     * A range of homologous flows.
     *
     * @param low the least
     * @param high the greatest
     */
    record Range(double low, double high) {
        boolean holds(double x) {
            return x >= low - ROUNDING * high && x <= high * (1 + ROUNDING);
        }

        /** Returns whether it holds q/s, without the division. */
        boolean holds(double q, double s) {
            return q >= (low - ROUNDING * high) * s && q <= high * (1 + ROUNDING) * s;
        }

        Range including(double x) {
            return new Range(Math.min(low, x), Math.max(high, x));
        }

        boolean reaches(Range other) {
            return low <= other.low && high >= other.high;
        }
    }
}
