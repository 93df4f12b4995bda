package headrace.curve;

import headrace.numeric.RootScan;
import headrace.numeric.Roots;
import headrace.problem.Notes;
import headrace.units.Numbers;
import java.util.stream.DoubleStream;

/**
 * The map of a pump in a liquid more viscous than the one of its test, by the parameter method of ANSI/HI 9.6.7.
 *
 * <p>The parameter B grows as the speed falls, so that the correction is another at every speed and the affinity laws
 * hold only for what lies beneath it.
 *
 * @param plain the map in the liquid's density without correction
 * @param parameter B at the tested speed
 * @param ofTest B of the test itself, at least 1: what it did is in the plain map
 */
record ViscousMap(SimilarityMap plain, double parameter, double ofTest) implements PumpMap {
    /** Beyond this B the method gives no correction. */
    static final double MOST = 40;

    private static final double BASE = 2.71;
    private static final int MOST_STEPS = 200;
    private static final double ROOT_ROUNDING = 4e-16;
    private static final double LARGEST = 1e6;

    /** Returns B of best efficiency flow, head, speed and viscosity. */
    static double parameter(double squareMillimetresPerSecond, double metres, double cubicMetresPerHour, double rpm) {
        return 16.5
                * Math.sqrt(squareMillimetresPerSecond)
                * Math.pow(metres, 0.0625)
                / (Math.pow(cubicMetresPerHour, 0.375) * Math.pow(rpm, 0.25));
    }

    /** With flow, head and speed by the affinity laws B goes with s^(2/16 − 3/8 − 1/4). */
    double parameterAt(double s) {
        return parameter / Math.sqrt(s);
    }

    /** Returns the share of the flow that is left. */
    static double flowShare(double b) {
        return b <= 1 ? 1 : Math.pow(BASE, -0.165 * Math.pow(Math.log10(b), 3.15));
    }

    /** Returns the share of the efficiency that is left. */
    static double efficiencyShare(double b) {
        return b <= 1 ? 1 : Math.pow(b, -0.0547 * Math.pow(b, 0.69));
    }

    /** Returns the share of the flow of the test that is left at a speed. */
    double flowLeft(double s) {
        double b = parameterAt(s);
        return b <= ofTest ? 1 : flowShare(b) / flowShare(ofTest);
    }

    /** Returns the share of the efficiency of the test that is left at a speed. */
    private double efficiencyLeft(double s) {
        double b = parameterAt(s);
        return b <= ofTest ? 1 : efficiencyShare(b) / efficiencyShare(ofTest);
    }

    /** Returns the share of the head that is left, at a flow of the test. */
    private double headShare(double flowShare, double x) {
        return flowShare == 1 ? 1 : 1 - (1 - flowShare) * Math.pow(x / plain.bestFlow(), 0.75);
    }

    @Override
    public double headMetres(double q, double s) {
        double flowShare = flowLeft(s);
        double flow = q / flowShare;
        return headShare(flowShare, flow / s) * plain.headMetres(flow, s);
    }

    /** Hydraulic power over efficiency, arranged so that it holds at no flow too. */
    @Override
    public double shaftWatts(double q, double s) {
        double flowShare = flowLeft(s);
        double flow = q / flowShare;
        return flowShare * headShare(flowShare, flow / s) / efficiencyLeft(s) * plain.shaftWatts(flow, s);
    }

    @Override
    public double efficiency(double q, double s) {
        return plain.weight() * q * headMetres(q, s) / shaftWatts(q, s);
    }

    @Override
    public double homologous(double q, double s) {
        return q / (flowLeft(s) * s);
    }

    @Override
    public double actual(double x, double s) {
        return x * flowLeft(s) * s;
    }

    @Override
    public double headGain(double q, double s) {
        double flowShare = flowLeft(s);
        return headShare(flowShare, homologous(q, s)) * plain.headGain(q, s);
    }

    @Override
    public double powerGain(double q, double s) {
        double flowShare = flowLeft(s);
        return flowShare * headShare(flowShare, homologous(q, s)) / efficiencyLeft(s) * plain.powerGain(q, s);
    }

    /** The efficiency is scaled as a whole, so that the best point stays the same flow of the test. */
    @Override
    public Best bestAt(double s) {
        Best best = plain.bestAt(s);
        return new Best(best.flow() * flowLeft(s), best.efficiency() * efficiencyLeft(s));
    }

    @Override
    public double[] flowsAt(double metres, double s, Range range) {
        return RootScan.between(q -> headMetres(q, s) - metres, actual(range.low(), s), actual(range.high(), s));
    }

    @Override
    public Rise headRise(double s) {
        double[] stops = stops(s, tested(), false);
        return Rise.greatest(stops, q -> headMetres(q, s));
    }

    private double[] stops(double s, Range range, boolean ofPower) {
        double low = actual(range.low(), s);
        double high = actual(range.high(), s);
        return ofPower
                ? Roots.stopsIn(q -> shaftWatts(q, s), low, high)
                : Roots.stopsIn(q -> headMetres(q, s), low, high);
    }

    @Override
    public double[] extremeHeads(double s, Range range) {
        double least = Double.POSITIVE_INFINITY;
        double greatest = Double.NEGATIVE_INFINITY;
        for (double q : stops(s, range, false)) {
            least = Math.min(least, headMetres(q, s));
            greatest = Math.max(greatest, headMetres(q, s));
        }
        return new double[] {least, greatest};
    }

    /**
     * Where the liquid is not viscous at the speed that the plain map gives, that speed is right. Otherwise, since head
     * at a flow grows with speed, the speed lies between those at which the flow is an end of the range.
     */
    @Override
    public double speedRatio(double q, double metres, Range range) {
        double inWater = plain.speedRatio(q, metres, range);
        if (q == 0 || parameterAt(inWater) <= ofTest && inWater < Double.POSITIVE_INFINITY) {
            return inWater;
        }
        double low = Math.max(slowest(), speedOf(q, range.high() * (1 + ROUNDING)));
        double high = range.low() > 0 ? speedOf(q, range.low() * (1 - ROUNDING)) : 2 * low;
        while (range.low() == 0 && headMetres(q, high) < metres && high < LARGEST) {
            high *= 2;
        }
        if (!(headMetres(q, low) <= metres && headMetres(q, high) >= metres)) {
            return Double.POSITIVE_INFINITY;
        }
        return between(q, metres, low, high);
    }

    /** The rule of Illinois: false position that halves the end which stays too long. */
    private double between(double q, double metres, double from, double to) {
        double low = from;
        double high = to;
        double atLow = headMetres(q, low) - metres;
        double atHigh = headMetres(q, high) - metres;
        int side = 0;
        for (int i = 0; i < MOST_STEPS && high - low > ROOT_ROUNDING * high; i++) {
            double s = atHigh == atLow ? low : (low * atHigh - high * atLow) / (atHigh - atLow);
            double above = headMetres(q, s) - metres;
            if (above == 0) {
                return s;
            }
            if (above > 0) {
                high = s;
                atHigh = above;
                atLow = side > 0 ? atLow / 2 : atLow;
                side = 1;
            } else {
                low = s;
                atLow = above;
                atHigh = side < 0 ? atHigh / 2 : atHigh;
                side = -1;
            }
        }
        return 0.5 * (low + high);
    }

    /** Returns the speed at which a flow is a given flow of the test; with the speed the share of flow only grows. */
    private double speedOf(double q, double x) {
        double low = q / x;
        double high = low / flowShare(MOST);
        for (int i = 0; i < MOST_STEPS && high - low > ROOT_ROUNDING * high; i++) {
            double s = 0.5 * (low + high);
            if (homologous(q, s) > x) {
                low = s;
            } else {
                high = s;
            }
        }
        return high;
    }

    @Override
    public double greatestWatts(double s) {
        return DoubleStream.of(stops(s, tested(), true))
                .map(q -> shaftWatts(q, s))
                .max()
                .orElseThrow();
    }

    @Override
    public double leastWatts() {
        return plain.leastWatts();
    }

    @Override
    public EfficiencyOverSpeed model() {
        return plain.model();
    }

    @Override
    public ViscousMap with(EfficiencyOverSpeed model) {
        return new ViscousMap(plain.with(model), parameter, ofTest);
    }

    @Override
    public Range tested() {
        return plain.tested();
    }

    @Override
    public double slowest() {
        return Math.max(plain.slowest(), Math.pow(parameter / MOST, 2));
    }

    @Override
    public SimilarityMap similarity() {
        return plain;
    }

    @Override
    public Notes notesAt(double s) {
        double b = parameterAt(s);
        if (b <= ofTest) {
            return Notes.NONE;
        }
        double flowShare = flowLeft(s);
        return Notes.NONE.with(
                CurveProblem.VISCOSITY_CORRECTED,
                "corrected for viscosity, B = " + Numbers.print(b) + " at this speed: flow times "
                        + Numbers.print(flowShare) + ", head at best efficiency times " + Numbers.print(flowShare)
                        + ", efficiency times " + Numbers.print(efficiencyLeft(s))
                        + (ofTest > 1 ? "; relative to the test, where B is " + Numbers.print(ofTest) : ""));
    }
}
