package headrace.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class FitBatchTest {
    private static final int POINTS = 11;

    /** Householder QR of each degree, one fit after another, is the slow way to the same result. */
    @Test
    void agrees_with_fits_made_one_by_one() {
        int fits = 200;
        Random random = new Random(6);
        double[] x = new double[fits * POINTS];
        double[] y = new double[fits * POINTS];
        for (int i = 0; i < x.length; i++) {
            int fit = i / POINTS;
            x[i] = (i % POINTS + 0.5 * random.nextDouble()) * (1 + fit) * 0.01;
            double t = i % POINTS / 10.0;
            double bend = fit % 4 == 0 ? 0 : t * t * (fit % 4 == 1 ? 1 : t);
            y[i] = 30 - 9 * t - 6 * bend - (fit % 4 == 3 ? 9 * t * t * t * t : 0) + 0.1 * random.nextGaussian();
        }
        FitBatch batch = FitBatch.of(x, y, POINTS);
        assertEquals(fits, batch.fits());
        for (int fit = 0; fit < fits; fit++) {
            compare(batch, fit, Arrays.copyOfRange(x, fit * POINTS, (fit + 1) * POINTS), y);
        }
    }

    private static void compare(FitBatch batch, int fit, double[] x, double[] allY) {
        double[] y = Arrays.copyOfRange(allY, fit * POINTS, (fit + 1) * POINTS);
        double[] ones = new double[POINTS];
        Arrays.fill(ones, 1);
        PolynomialFit best = PolynomialFit.of(x, y, ones, 1);
        for (int degree = 2; degree <= 4; degree++) {
            PolynomialFit other = PolynomialFit.of(x, y, ones, degree);
            best = other.correctedInformationCriterion() < best.correctedInformationCriterion() ? other : best;
        }
        assertEquals(best.polynomial().degree(), batch.degree(fit));
        assertEquals(best.correctedInformationCriterion(), batch.criterion(fit), 1e-8);
        assertEquals(best.sumOfSquares(), batch.sumOfSquares(fit), 1e-10 * best.sumOfSquares());
        for (double at : x) {
            assertEquals(best.polynomial().valueAt(at), batch.polynomial(fit).valueAt(at), 1e-10);
        }
    }

    @Test
    void takes_the_lowest_degree_that_meets_exact_points() {
        double[] x = new double[8 * 4];
        double[] y = new double[8 * 4];
        double[] truth = {30, -1, -0.5, -0.03, -0.02};
        for (int i = 0; i < x.length; i++) {
            x[i] = i % 8;
            y[i] = Polynomial.of(Arrays.copyOf(truth, i / 8 + 2)).valueAt(x[i]);
        }
        FitBatch batch = FitBatch.of(x, y, 8);
        for (int fit = 0; fit < 4; fit++) {
            assertEquals(fit + 1, batch.degree(fit));
            for (int power = 0; power <= fit + 1; power++) {
                assertEquals(truth[power], batch.polynomial(fit).coefficient(power), 1e-9);
            }
        }
    }

    @Test
    void takes_no_points_that_make_no_whole_fits() {
        assertThrows(IllegalArgumentException.class, () -> FitBatch.of(new double[22], new double[21], 11));
        assertThrows(IllegalArgumentException.class, () -> FitBatch.of(new double[23], new double[23], 11));
        assertThrows(IllegalArgumentException.class, () -> FitBatch.of(new double[14], new double[14], 7));
        assertEquals(0, FitBatch.of(new double[0], new double[0], 8).fits());
    }
}
