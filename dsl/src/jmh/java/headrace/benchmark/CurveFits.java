package headrace.benchmark;

import headrace.numeric.FitBatch;
import headrace.numeric.Polynomial;
import java.util.LinkedHashMap;
import java.util.Map;

/** W10: ten thousand fits of eleven points, the degree from 1 to 4 by the corrected information criterion. */
final class CurveFits implements Workload {
    private static final int FITS = 10_000;
    private static final int POINTS = 11;

    private final double[] x = new double[FITS * POINTS];
    private final double[] y = new double[FITS * POINTS];
    private final double[] scale = new double[FITS];
    private final double[] criteria = new double[FITS];
    private FitBatch fits;

    CurveFits() {
        for (int i = 0; i < FITS; i++) {
            double most = 60 + 60 * Inputs.uniform(1002, i);
            double[] c = coefficients(i);
            for (int p = 0; p < POINTS; p++) {
                int at = i * POINTS + p;
                double share = Math.max(0, (p + 0.6 * (Inputs.uniform(1001, at) - 0.5)) / 10);
                x[at] = p == 0 ? 0 : most * share;
                scale[i] = Math.max(scale[i], x[at]);
                double t = x[at] / most;
                double head = c[0] * (1 - t * (c[1] + t * (c[2] + t * (c[3] + t * c[4]))));
                double normal = Math.sqrt(-2 * Math.log(1 - Inputs.uniform(1004, at)))
                        * Math.cos(2 * Math.PI * Inputs.uniform(1005, at));
                y[at] = head + 0.005 * c[0] * normal;
            }
        }
    }

    /** In turn of degree 1, 2, 3 and 4. */
    private static double[] coefficients(int i) {
        double[] v = new double[5];
        for (int j = 0; j < v.length; j++) {
            v[j] = Inputs.uniform(1003, 5L * i + j);
        }
        int group = i % 4;
        return new double[] {
            25 + 15 * v[0],
            group == 0 ? 0.30 + 0.10 * v[1] : 0.10 * v[1],
            group == 0 ? 0 : 0.10 + 0.25 * v[2],
            group <= 1 ? 0 : 0.20 * v[3],
            group <= 2 ? 0 : 0.15 * v[4]
        };
    }

    @Override
    public String name() {
        return "W10a recurrence, all fits at once";
    }

    /** The criterion belongs to the result, so that it is timed too. */
    @Override
    public void call() {
        fits = FitBatch.of(x, y, POINTS);
        for (int i = 0; i < FITS; i++) {
            criteria[i] = fits.criterion(i);
        }
    }

    @Override
    public Map<String, Object> outputs() {
        Map<String, Object> out = new LinkedHashMap<>();
        int[] counts = new int[5];
        double[][] c = new double[5][FITS];
        double[] squares = new double[FITS];
        for (int i = 0; i < FITS; i++) {
            counts[fits.degree(i)]++;
            squares[i] = fits.sumOfSquares(i);
            Polynomial scaled = fits.polynomial(i).ofScaled(scale[i]);
            for (int k = 0; k < 5; k++) {
                c[k][i] = scaled.coefficient(k);
            }
        }
        for (int k = 1; k < 5; k++) {
            out.put("degree" + k, counts[k]);
        }
        for (int k = 0; k < 5; k++) {
            out.put("sum_c" + k, Inputs.sum(c[k], 1));
        }
        out.put("sum_RSS", Inputs.sum(squares, 1));
        out.put("sum_AICc", Inputs.sum(criteria, 1));
        for (int i : new int[] {0, 1, 7777}) {
            out.put("deg[" + i + "]", fits.degree(i));
            out.put("c[" + i + "]", new double[] {c[0][i], c[1][i], c[2][i], c[3][i], c[4][i]});
            out.put("RSS[" + i + "]", squares[i]);
        }
        return out;
    }
}
