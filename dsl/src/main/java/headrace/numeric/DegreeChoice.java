package headrace.numeric;

import java.util.Arrays;

/**
 * Chooses the degree of a fitted polynomial.
 *
 * <p>With six points or more: among degree 1 to 4, and at most four less than there are points, the lower of the one
 * that the corrected information criterion prefers and the one that leaving out each point in turn prefers. With fewer
 * points there is nothing to choose by: the lowest degree up to 2 that passes through them, or else the nearest of
 * degree 2.
 *
 * <p>Source: Hurvich and Tsai, Biometrika 76 (1989); Allen, Technometrics 16 (1974). Taking the lower of the two is an
 * assumption of our own: a term too many does more harm at the ends of a pump curve than a term too few.
 */
public final class DegreeChoice {
    /** With fewer points no degree can be chosen and no scatter stated. */
    public static final int FEWEST_POINTS = 6;

    private static final int HIGHEST_DEGREE = 4;
    private static final int POINTS_TO_SPARE = 4;

    /** A curve that misses its points by no more than this share of their largest value passes through them. */
    private static final double THROUGH = 1e-9;

    private DegreeChoice() {}

    /** Returns the fit of the chosen degree; wants two different arguments at least. */
    public static PolynomialFit fit(double[] x, double[] y, double[] weights) {
        int different = (int) Arrays.stream(x).distinct().count();
        return x.length < FEWEST_POINTS ? few(x, y, weights, different) : many(x, y, weights, different);
    }

    private static PolynomialFit few(double[] x, double[] y, double[] weights, int different) {
        PolynomialFit line = PolynomialFit.of(x, y, weights, 1);
        double largest = Arrays.stream(y).map(Math::abs).max().orElse(0);
        boolean through = true;
        for (int i = 0; i < x.length; i++) {
            through &= Math.abs(line.polynomial().valueAt(x[i]) - y[i]) <= THROUGH * largest;
        }
        return through || different < 3 ? line : PolynomialFit.of(x, y, weights, 2);
    }

    private static PolynomialFit many(double[] x, double[] y, double[] weights, int different) {
        int highest = Math.max(1, Math.min(Math.min(HIGHEST_DEGREE, x.length - POINTS_TO_SPARE), different - 1));
        PolynomialFit[] fits = new PolynomialFit[highest];
        int byCriterion = 0;
        int byLeavingOut = 0;
        for (int i = 0; i < highest; i++) {
            fits[i] = PolynomialFit.of(x, y, weights, i + 1);
            if (fits[i].correctedInformationCriterion() < fits[byCriterion].correctedInformationCriterion()) {
                byCriterion = i;
            }
            if (fits[i].leaveOneOut() < fits[byLeavingOut].leaveOneOut()) {
                byLeavingOut = i;
            }
        }
        return fits[Math.min(byCriterion, byLeavingOut)];
    }
}
