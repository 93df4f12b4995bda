package headrace.curve;

import headrace.numeric.Polynomial;

/**
 * Head and shaft power over flow and speed, on bare doubles: flow in m³/s, speed as a share of the tested speed.
 *
 * <p>By the affinity laws every speed is the tested one seen at another scale: {@code H(Q,s) = s²·h(Q/s)} and
 * {@code P(Q,s) = s³·p(Q/s)}, the latter changed by the efficiency model. Written so, nothing grows without bound as
 * the speed falls, as the terms {@code Qⁱ·s^(2−i)} do.
 *
 * @param head the head in m at the tested speed
 * @param power the shaft power in W at the tested speed
 * @param low the least tested flow
 * @param high the greatest tested flow
 * @param weight density times gravity
 * @param model how the efficiency changes with speed
 * @param best the point of best efficiency at the tested speed
 */
record CurveMap(
        Polynomial head,
        Polynomial power,
        double low,
        double high,
        double weight,
        EfficiencyOverSpeed model,
        Best best) {
    /** Rounding: flows that differ by this share of the greatest count as the same. */
    static final double ROUNDING = 1e-9;

    private static final int MOST_STEPS = 200;
    private static final double ROOT_ROUNDING = 1e-15;

    /**
     * The point of best efficiency.
     *
     * @param flow its flow
     * @param efficiency its efficiency
     */
    record Best(double flow, double efficiency) {}

    static CurveMap of(Polynomial head, Polynomial power, double low, double high, double weight) {
        return new CurveMap(
                head,
                power,
                low,
                high,
                weight,
                EfficiencyOverSpeed.correlation(),
                bestOf(head.times(weight), power, low, high));
    }

    CurveMap with(EfficiencyOverSpeed other) {
        return new CurveMap(head, power, low, high, weight, other, best);
    }

    CurveMap withDensityTimes(double factor) {
        return new CurveMap(head, power.times(factor), low, high, weight * factor, model, best);
    }

    double headMetres(double q, double s) {
        return s * s * head.valueAt(q / s);
    }

    double shaftWatts(double q, double s) {
        return model.shaftWatts(s * s * s * power.valueAt(q / s), s, best.efficiency);
    }

    double efficiency(double q, double s) {
        return weight * q * headMetres(q, s) / shaftWatts(q, s);
    }

    /** Returns the best efficiency at a speed: the model is linear in power, so the same search serves. */
    Best bestAt(double s) {
        double cube = s * s * s;
        double shift = model.shaftWatts(0, s, best.efficiency) / cube;
        double scale = model.shaftWatts(cube, s, best.efficiency) / cube - shift;
        Best atTestedScale = bestOf(head.times(weight), power.times(scale).plus(Polynomial.of(shift)), low, high);
        return new Best(atTestedScale.flow * s, atTestedScale.efficiency);
    }

    /** Efficiency is stationary where (Q·h)'·p = (Q·h)·p', a polynomial: no maximum is missed. */
    private static Best bestOf(Polynomial pressure, Polynomial power, double low, double high) {
        Polynomial hydraulic = pressure.times(Polynomial.of(0, 1));
        Polynomial stationary = hydraulic
                .derivative()
                .times(power)
                .plus(hydraulic.times(power.derivative()).times(-1));
        Best best = new Best(high, hydraulic.valueAt(high) / power.valueAt(high));
        for (double q : stationary.rootsIn(low, high)) {
            double efficiency = hydraulic.valueAt(q) / power.valueAt(q);
            if (efficiency > best.efficiency) {
                best = new Best(q, efficiency);
            }
        }
        double atLow = hydraulic.valueAt(low) / power.valueAt(low);
        return atLow > best.efficiency ? new Best(low, atLow) : best;
    }

    /**
     * Returns the speed at which the curve passes through a flow and a head, with {@code q/s} from {@code from} to
     * {@code to}, or infinity if there is none. Allocates nothing.
     */
    double speedRatio(double q, double metres, double from, double to) {
        double s;
        if (q == 0) {
            s = Math.sqrt(metres / head.coefficient(0));
        } else if (head.degree() <= 2 && head.coefficient(0) > 0) {
            s = closedForm(q, metres);
        } else {
            s = q / scaledFlow(metres / (q * q), from, to);
        }
        double scaled = q / s;
        double slack = ROUNDING * to;
        return s > 0 && scaled >= from - slack && scaled <= to + slack ? s : Double.POSITIVE_INFINITY;
    }

    /** Solves a₀s² + a₁Qs + (a₂Q² − H) = 0 in the arrangement that subtracts no nearly equal numbers. */
    private double closedForm(double q, double metres) {
        double a = head.coefficient(0);
        double b = head.coefficient(1) * q;
        double c = head.coefficient(2) * q * q - metres;
        double root = Math.sqrt(b * b - 4 * a * c);
        return b > 0 ? -2 * c / (b + root) : (root - b) / (2 * a);
    }

    /**
     * Returns the x at which the curve meets the parabola k·x², by Newton's method kept inside its bracket, or 0 if it
     * is not met: the head is above the parabola at small flow and below it at large flow.
     */
    private double scaledFlow(double k, double from, double to) {
        double low = from * (1 - ROUNDING);
        double high = to * (1 + ROUNDING);
        if (!(head.valueAt(low) >= k * low * low && head.valueAt(high) <= k * high * high)) {
            return 0;
        }
        double x = 0.5 * (low + high);
        for (int i = 0; i < MOST_STEPS; i++) {
            double above = head.valueAt(x) - k * x * x;
            if (above >= 0) {
                low = x;
            } else {
                high = x;
            }
            double next = x - above / (head.slopeAt(x) - 2 * k * x);
            if (!(next > low && next < high)) {
                next = 0.5 * (low + high);
            }
            if (Math.abs(next - x) <= ROOT_ROUNDING * x) {
                return next;
            }
            x = next;
        }
        return x;
    }
}
