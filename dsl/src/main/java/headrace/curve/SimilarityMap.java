package headrace.curve;

import headrace.numeric.Polynomial;
import headrace.numeric.SmoothCurve;
import headrace.problem.Notes;
import java.util.stream.DoubleStream;

/**
 * The map that the affinity laws make of a curve at one speed.
 *
 * <p>Every speed is the tested one seen at another scale: {@code H(Q,s) = s²·h(Q/s)} and {@code P(Q,s) = s³·p(Q/s)},
 * the latter changed by the efficiency model. Written so, nothing grows without bound as the speed falls, as the terms
 * {@code Qⁱ·s^(2−i)} do.
 *
 * @param head the head in m at the tested speed
 * @param power the shaft power in W at the tested speed
 * @param tested the tested flows
 * @param weight density times gravity
 * @param model how the efficiency changes with speed
 * @param testedBest the best efficiency at the tested speed
 * @param bestFlow its flow
 */
record SimilarityMap(
        SmoothCurve head,
        SmoothCurve power,
        Range tested,
        double weight,
        EfficiencyOverSpeed model,
        double testedBest,
        double bestFlow)
        implements PumpMap {
    private static final int MOST_STEPS = 200;
    private static final double ROOT_ROUNDING = 1e-15;

    static SimilarityMap of(SmoothCurve head, SmoothCurve power, Range tested, double weight) {
        SimilarityMap plain = new SimilarityMap(head, power, tested, weight, EfficiencyOverSpeed.affinity(), 0, 0);
        Best best = plain.bestAt(1);
        return new SimilarityMap(
                head, power, tested, weight, EfficiencyOverSpeed.correlation(), best.efficiency(), best.flow());
    }

    @Override
    public SimilarityMap with(EfficiencyOverSpeed other) {
        return new SimilarityMap(head, power, tested, weight, other, testedBest, bestFlow);
    }

    SimilarityMap withDensityTimes(double factor) {
        return new SimilarityMap(head, power.times(factor), tested, weight * factor, model, testedBest, bestFlow);
    }

    @Override
    public double headMetres(double q, double s) {
        return s * s * head.valueAt(q / s);
    }

    @Override
    public double shaftWatts(double q, double s) {
        return model.shaftWatts(s * s * s * power.valueAt(q / s), s, testedBest);
    }

    @Override
    public double efficiency(double q, double s) {
        return weight * q * headMetres(q, s) / shaftWatts(q, s);
    }

    @Override
    public void fill(CurveArrays arrays, double ratio) {
        if (ManyPoints.fill(this, arrays, ratio)) {
            return;
        }
        double[] flows = arrays.flows();
        double[] speeds = arrays.speeds();
        double[] heads = arrays.heads();
        double[] powers = arrays.powers();
        double[] efficiencies = arrays.efficiencies();
        for (int i = 0; i < flows.length; i++) {
            double q = flows[i];
            double s = speeds[i] * ratio;
            double x = q / s;
            double square = s * s;
            double metres = square * head.valueAt(x);
            double watts = model.shaftWatts(square * s * power.valueAt(x), s, testedBest);
            heads[i] = metres;
            powers[i] = watts;
            efficiencies[i] = weight * q * metres / watts;
        }
    }

    @Override
    public void fillAt(double s, CurveArrays arrays, int count) {
        if (!ManyPoints.fillAt(this, s, arrays, count)) {
            PumpMap.super.fillAt(s, arrays, count);
        }
    }

    @Override
    public void fillHeads(CurveArrays arrays, double ratio, int count) {
        if (!ManyPoints.fillHeads(this, arrays, ratio, count)) {
            PumpMap.super.fillHeads(arrays, ratio, count);
        }
    }

    @Override
    public void fillSlopesAt(double s, CurveArrays arrays, CurveSlopes slopes, int count) {
        SimilaritySlopes.of(this, s).fill(arrays, slopes, count);
    }

    /** The model is linear in power, so that the power turns at the same homologous flow at every speed. */
    @Override
    public double[] powerStops(double s, Range range) {
        double[] stops = SmoothCurve.stops(range.low(), range.high(), power.stationaryIn(range.low(), range.high()));
        for (int i = 0; i < stops.length; i++) {
            stops[i] *= s;
        }
        return stops;
    }

    @Override
    public double homologous(double q, double s) {
        return q / s;
    }

    @Override
    public double actual(double x, double s) {
        return x * s;
    }

    @Override
    public double headGain(double q, double s) {
        return s * s;
    }

    /** The model is linear in power: its slope counts. */
    @Override
    public double powerGain(double q, double s) {
        return model.shaftWatts(s * s * s, s, testedBest) - model.shaftWatts(0, s, testedBest);
    }

    @Override
    public double slowest() {
        return model.slowest(testedBest);
    }

    @Override
    public SimilarityMap similarity() {
        return this;
    }

    @Override
    public Notes notesAt(double s) {
        return Notes.NONE;
    }

    /** The model is linear in power, so that the same search serves at every speed. */
    @Override
    public Best bestAt(double s) {
        double cube = s * s * s;
        double shift = model.shaftWatts(0, s, testedBest) / cube;
        double scale = model.shaftWatts(cube, s, testedBest) / cube - shift;
        double[] stops = SmoothCurve.stops(tested.low(), tested.high(), head.breaksIn(tested.low(), tested.high()));
        Best best = new Best(0, Double.NEGATIVE_INFINITY);
        for (int i = 1; i < stops.length; i++) {
            double middle = 0.5 * (stops[i - 1] + stops[i]);
            Polynomial hydraulic = head.pieceAt(middle).times(Polynomial.of(0, weight));
            Polynomial shaft = power.pieceAt(middle).times(scale).plus(Polynomial.of(shift));
            Best local = bestOf(hydraulic, shaft, stops[i - 1], stops[i]);
            best = local.efficiency() > best.efficiency() ? local : best;
        }
        return new Best(best.flow() * s, best.efficiency());
    }

    /** Efficiency is stationary where Pu'·P = Pu·P', the root of a polynomial: no maximum is missed. */
    private static Best bestOf(Polynomial hydraulic, Polynomial shaft, double low, double high) {
        Polynomial stationary = hydraulic
                .derivative()
                .times(shaft)
                .plus(hydraulic.times(shaft.derivative()).times(-1));
        Best best = new Best(low, hydraulic.valueAt(low) / shaft.valueAt(low));
        for (double q : SmoothCurve.stops(low, high, stationary.rootsIn(low, high))) {
            double efficiency = hydraulic.valueAt(q) / shaft.valueAt(q);
            best = efficiency > best.efficiency() ? new Best(q, efficiency) : best;
        }
        return best;
    }

    @Override
    public double[] flowsAt(double metres, double s, Range range) {
        double[] found = head.argumentsOf(metres / (s * s), range.low(), range.high());
        for (int i = 0; i < found.length; i++) {
            found[i] *= s;
        }
        return found;
    }

    @Override
    public Rise headRise(double s) {
        Rise rise = greatestRise(head);
        return new Rise(rise.from() * s, rise.to() * s, rise.by() * s * s);
    }

    /** Returns the stretch over which the shaft power falls most at the tested speed. */
    Rise powerFall() {
        return greatestRise(power.times(-1));
    }

    private Rise greatestRise(SmoothCurve curve) {
        double[] turns = curve.stationaryIn(tested.low(), tested.high());
        return Rise.greatest(SmoothCurve.stops(tested.low(), tested.high(), turns), curve::valueAt);
    }

    @Override
    public double[] extremeHeads(double s, Range range) {
        double least = Double.POSITIVE_INFINITY;
        double greatest = Double.NEGATIVE_INFINITY;
        for (double q : SmoothCurve.stops(range.low(), range.high(), head.stationaryIn(range.low(), range.high()))) {
            least = Math.min(least, head.valueAt(q));
            greatest = Math.max(greatest, head.valueAt(q));
        }
        return new double[] {least * s * s, greatest * s * s};
    }

    @Override
    public double greatestWatts(double s) {
        return DoubleStream.of(powerStops())
                .map(q -> shaftWatts(q * s, s))
                .max()
                .orElseThrow();
    }

    @Override
    public double leastWatts() {
        return DoubleStream.of(powerStops()).map(power::valueAt).min().orElseThrow();
    }

    private double[] powerStops() {
        return SmoothCurve.stops(tested.low(), tested.high(), power.stationaryIn(tested.low(), tested.high()));
    }

    @Override
    public double speedRatio(double q, double metres, Range range) {
        double s;
        if (q == 0) {
            s = Math.sqrt(metres / head.valueAt(0));
        } else if (isQuadratic()) {
            s = closedForm((Polynomial) head, q, metres);
        } else {
            s = q / meeting(metres / (q * q), range);
        }
        return inside(s, q, range);
    }

    private boolean isQuadratic() {
        return head instanceof Polynomial formula && formula.degree() <= 2 && formula.coefficient(0) > 0;
    }

    private static double inside(double s, double q, Range range) {
        return s > 0 && range.holds(q, s) ? s : Double.POSITIVE_INFINITY;
    }

    /** Solves a₀s² + a₁Qs + (a₂Q² − H) = 0 in the arrangement that subtracts no nearly equal numbers. */
    private static double closedForm(Polynomial formula, double q, double metres) {
        double a = formula.coefficient(0);
        double b = formula.coefficient(1) * q;
        double c = formula.coefficient(2) * q * q - metres;
        double root = Math.sqrt(b * b - 4 * a * c);
        return b > 0 ? -2 * c / (b + root) : (root - b) / (2 * a);
    }

    /** A falling parabola, the usual case, in a loop without a branch; so are other polynomials. */
    @Override
    public void fillSpeedRatios(double[] flows, double[] heads, double[] ratios, Range range) {
        if (!isQuadratic() && ManyMeetings.fill(this, range, flows, heads, ratios)) {
            return;
        }
        if (!isQuadratic() || ((Polynomial) head).coefficient(1) > 0) {
            PumpMap.super.fillSpeedRatios(flows, heads, ratios, range);
            return;
        }
        double a = ((Polynomial) head).coefficient(0);
        double b = ((Polynomial) head).coefficient(1);
        double discriminant = b * b - 4 * a * ((Polynomial) head).coefficient(2);
        double half = 1 / (2 * a);
        for (int i = 0; i < flows.length; i++) {
            double q = flows[i];
            ratios[i] = (Math.sqrt(discriminant * q * q + 4 * a * heads[i]) - b * q) * half;
        }
        for (int i = 0; i < flows.length; i++) {
            ratios[i] = inside(ratios[i], flows[i], range);
        }
    }

    /**
     * Returns the x at which the curve meets the parabola k·x², by Newton's method kept inside its bracket, or 0 if the
     * curve is not above the parabola where the range begins and below it where the range ends.
     */
    private double meeting(double k, Range range) {
        double low = Math.max(0, range.low() - ROUNDING * range.high());
        double high = range.high() * (1 + ROUNDING);
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
            if (!(next >= low && next <= high)) {
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
