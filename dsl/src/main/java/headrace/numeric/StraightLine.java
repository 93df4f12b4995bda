package headrace.numeric;

/**
 * The straight line nearest many points by least squares, with the standard errors of its two coefficients.
 *
 * <p>Source: any textbook of regression. Sums are taken about the means, so that a large offset costs no digits.
 *
 * @param intercept the value at 0
 * @param slope the rise for each 1 across
 * @param interceptError the standard error of the intercept
 * @param slopeError the standard error of the slope
 * @param residual the root of the sum of squared residuals over {@code n − 2}
 */
public record StraightLine(double intercept, double slope, double interceptError, double slopeError, double residual) {
    /**
     * Returns the nearest line; a level one where all values across are equal.
     *
     * @param x the values across
     * @param y the values up
     * @param count how many of them count, at least 3
     */
    public static StraightLine through(double[] x, double[] y, int count) {
        double meanX = mean(x, count);
        double meanY = mean(y, count);
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (int i = 0; i < count; i++) {
            double dx = x[i] - meanX;
            double dy = y[i] - meanY;
            xx += dx * dx;
            xy += dx * dy;
            yy += dy * dy;
        }
        if (xx == 0) {
            return new StraightLine(meanY, 0, Math.sqrt(yy / (count - 2.0) / count), 0, Math.sqrt(yy / (count - 2.0)));
        }
        double slope = xy / xx;
        double variance = Math.max(0, yy - slope * xy) / (count - 2);
        return new StraightLine(
                meanY - slope * meanX,
                slope,
                Math.sqrt(variance * (1.0 / count + meanX * meanX / xx)),
                Math.sqrt(variance / xx),
                Math.sqrt(variance));
    }

    /** Returns the value of the line. */
    public double at(double x) {
        return intercept + slope * x;
    }

    private static double mean(double[] values, int count) {
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += values[i];
        }
        return sum / count;
    }
}
