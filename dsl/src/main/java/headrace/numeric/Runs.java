package headrace.numeric;

import org.hipparchus.util.CombinatoricsUtils;

/**
 * Whether the signs of residuals come in too few runs to be chance, as they do when a curve of too low a degree swings
 * about its points.
 *
 * <p>Source: Wald and Wolfowitz, Annals of Mathematical Statistics 11 (1940), the exact distribution.
 */
public final class Runs {
    private Runs() {}

    /** Returns how many runs of equal sign there are; a residual of 0 counts as positive. */
    public static int count(double[] residuals) {
        int runs = residuals.length == 0 ? 0 : 1;
        for (int i = 1; i < residuals.length; i++) {
            runs += residuals[i] < 0 == residuals[i - 1] < 0 ? 0 : 1;
        }
        return runs;
    }

    /** Returns the probability that so many signs of each kind, in random order, make no more than so many runs. */
    public static double probabilityOfAtMost(int runs, int positives, int negatives) {
        if (positives == 0 || negatives == 0) {
            return 1;
        }
        double ways = 0;
        for (int r = 2; r <= runs; r++) {
            int half = r / 2;
            ways += r % 2 == 0
                    ? 2 * choose(positives, half) * choose(negatives, half)
                    : choose(positives, half + 1) * choose(negatives, half)
                            + choose(positives, half) * choose(negatives, half + 1);
        }
        return ways / CombinatoricsUtils.binomialCoefficientDouble(positives + negatives, positives);
    }

    /** Returns in how many ways so many signs fall into so many runs. */
    private static double choose(int signs, int runs) {
        return runs > signs ? 0 : CombinatoricsUtils.binomialCoefficientDouble(signs - 1, runs - 1);
    }
}
