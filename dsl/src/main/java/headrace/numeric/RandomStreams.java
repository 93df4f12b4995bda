package headrace.numeric;

/**
 * Random numbers that anybody can make again from a seed: several streams, each of which can be entered anywhere.
 *
 * <dl>
 *   <dt>Units
 *   <dd>None. Uniform numbers lie from 0 to below 1 in steps of 2⁻⁵³; normal ones have mean 0 and deviation 1.
 *   <dt>Limits
 *   <dd>The period of a stream is 2⁶⁴. Not for secrets.
 *   <dt>Errors
 *   <dd>None.
 *   <dt>Source
 *   <dd>SplitMix64 of Steele, Lea and Flood, OOPSLA 2014, constants from memory; normal pairs by Box and Muller, Annals
 *       of Mathematical Statistics 29 (1958).
 * </dl>
 */
public final class RandomStreams {
    private static final long STEP = 0x9E3779B97F4A7C15L;
    private static final double PER_BIT = 0x1p-53;
    private static final double S0 = 1.0 / 1L;
    private static final double S1 = -1.0 / 6L;
    private static final double S2 = 1.0 / 120L;
    private static final double S3 = -1.0 / 5040L;
    private static final double S4 = 1.0 / 362880L;
    private static final double S5 = -1.0 / 39916800L;
    private static final double S6 = 1.0 / 6227020800L;
    private static final double S7 = -1.0 / 1307674368000L;
    private static final double C0 = 1.0 / 1L;
    private static final double C1 = -1.0 / 2L;
    private static final double C2 = 1.0 / 24L;
    private static final double C3 = -1.0 / 720L;
    private static final double C4 = 1.0 / 40320L;
    private static final double C5 = -1.0 / 3628800L;
    private static final double C6 = 1.0 / 479001600L;
    private static final double C7 = -1.0 / 87178291200L;
    private static final double C8 = 1.0 / 20922789888000L;

    private final long first;

    private RandomStreams(long first) {
        this.first = first;
    }

    /** Returns the streams of a seed; those of neighbouring seeds have nothing to do with each other. */
    public static RandomStreams of(long seed) {
        return new RandomStreams(mixed(seed + STEP));
    }

    /** Returns the streams of which the first is SplitMix64 started from a number, the next from that plus 1. */
    public static RandomStreams startingAt(long first) {
        return new RandomStreams(first);
    }

    private static long mixed(long bits) {
        long z = (bits ^ (bits >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }

    /** Returns the uniform number of a stream at a place, both from 0. */
    public double uniform(int stream, long place) {
        return (mixed(first + stream + (place + 1) * STEP) >>> 11) * PER_BIT;
    }

    /** Fills the uniform numbers of a stream from a place on. */
    public void fillUniform(int stream, long from, double[] out, int count) {
        long start = first + stream + (from + 1) * STEP;
        for (int i = 0; i < count; i++) {
            long bits = start + i * STEP;
            long z = (bits ^ (bits >>> 30)) * 0xBF58476D1CE4E5B9L;
            z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
            out[i] = ((z ^ (z >>> 31)) >>> 11) * PER_BIT;
        }
    }

    /**
     * Fills pairs of normal numbers from a place on, made of two streams.
     *
     * @param stream the first of the two streams
     * @param from the place
     * @param one the first of each pair
     * @param two the second of each pair
     * @param count how many pairs
     */
    public void fillNormal(int stream, long from, double[] one, double[] two, int count) {
        fillUniform(stream, from, one, count);
        fillUniform(stream + 1, from, two, count);
        makeNormal(one, two, count);
    }

    /** Turns pairs of uniform numbers into pairs of normal ones, in their place. */
    public static void makeNormal(double[] one, double[] two, int count) {
        for (int i = 0; i < count; i++) {
            one[i] = Math.log(1 - one[i]);
        }
        turned(one, two, count);
    }

    /**
     * Sine and cosine of a quarter of the angle by their series, then doubled twice: no branch, so that the compiler
     * can work on several at once. The angle is taken from its middle, which changes both signs.
     */
    private static void turned(double[] one, double[] two, int count) {
        for (int i = 0; i < count; i++) {
            double a = (two[i] - 0.5) * (0.5 * Math.PI);
            double w = a * a;
            double sine = a * (S0 + w * (S1 + w * (S2 + w * (S3 + w * (S4 + w * (S5 + w * (S6 + w * S7)))))));
            double cosine = C0 + w * (C1 + w * (C2 + w * (C3 + w * (C4 + w * (C5 + w * (C6 + w * (C7 + w * C8)))))));
            double sineOfHalf = 2 * sine * cosine;
            double cosineOfHalf = 1 - 2 * sine * sine;
            double radius = Math.sqrt(-2 * one[i]);
            one[i] = radius * (2 * sineOfHalf * sineOfHalf - 1);
            two[i] = radius * (-2 * sineOfHalf * cosineOfHalf);
        }
    }
}
