package headrace.trend;

import headrace.problem.Refusal;
import headrace.units.Ratio;

/**
 * How well a baseline meets its readings.
 *
 * <p>With n readings y of mean ȳ, p fitted parameters and e = y − baseline: {@code CV(RMSE) = √(Σe²/(n−p))/ȳ} and
 * {@code NMBE = Σe/((n−p)·ȳ)}. A model that is not fitted to the readings it is held against has p = 0.
 *
 * <p>Source: ASHRAE Guideline 14-2014, definitions and the limits for hourly readings, 30 % and 10 %.
 *
 * @param cvRmse the coefficient of variation of the root mean square error
 * @param nmbe the normalised mean bias error; above 0 where the readings are above the baseline
 * @param readings n
 * @param parameters p
 */
public record FitQuality(Ratio cvRmse, Ratio nmbe, int readings, int parameters) {
    /** A fitted line has no bias but for rounding. */
    private static final double ROUNDING = 1e-12;

    /** The greatest scatter of a baseline for hourly readings. */
    public static final Ratio MOST_SCATTER = Ratio.percent(30);

    /** The greatest bias of a baseline for hourly readings, up or down. */
    public static final Ratio MOST_BIAS = Ratio.percent(10);

    /**
     * Returns how well a baseline meets readings.
     *
     * @param measured the readings
     * @param baseline what it gives, as many
     * @param readings how many of them count, more than parameters
     * @param parameters how many parameters were fitted to these readings
     */
    public static FitQuality of(double[] measured, double[] baseline, int readings, int parameters) {
        double sum = 0;
        double off = 0;
        double squares = 0;
        for (int i = 0; i < readings; i++) {
            double e = measured[i] - baseline[i];
            sum += measured[i];
            off += e;
            squares += e * e;
        }
        double mean = sum / readings;
        if (!(mean > 0)) {
            throw new Refusal(
                    TrendProblem.TOO_SHORT_LOG,
                    "Asked how well a baseline meets " + readings + " readings whose mean is not above 0",
                    "Scatter and bias are shares of that mean",
                    "Take a part of the log in which the pump runs");
        }
        double free = readings - parameters;
        double bias = off / (free * mean);
        return new FitQuality(
                Ratio.of(Math.sqrt(squares / free) / mean),
                Ratio.of(Math.abs(bias) < ROUNDING ? 0 : bias),
                readings,
                parameters);
    }

    /** Returns whether scatter and bias are within the limits for hourly readings. */
    public boolean withinHourlyLimits() {
        return cvRmse.compareTo(MOST_SCATTER) <= 0 && Math.abs(nmbe.value()) <= MOST_BIAS.value();
    }

    @Override
    public String toString() {
        return "CV(RMSE) " + cvRmse + ", NMBE " + nmbe + " from " + readings + " readings and " + parameters
                + " parameters";
    }
}
