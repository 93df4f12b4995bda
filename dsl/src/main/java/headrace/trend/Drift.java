package headrace.trend;

import headrace.numeric.Cusum;
import headrace.problem.Refusal;
import java.util.Optional;

/**
 * Whether a residual drifts: two cumulative sums over its hours, and how many false alarms they raise.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Sums in standard deviations of an hour.
 *   <dt>Limits
 *   <dd>Mean and deviation are those of the reference hours. Hours near each other resemble each other; their deviation
 *       is widened accordingly, so that the stated rate of false alarms holds over many hours. A short reference knows
 *       its mean badly; the allowance is widened by twice the error of that mean, which makes a short reference blind
 *       to small drifts instead of restless.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code TOO_SHORT_LOG} or {@code IMPOSSIBLE_TREND_CHOICE}.
 *   <dt>Source
 *   <dd>{@link Cusum}; {@link HourSeries#widening()}. That the allowance is widened too is our own.
 * </dl>
 */
public final class Drift {
    private static final double ALLOWANCE = 0.5;
    private static final double HOURS_OF_YEAR = 8760;
    private static final double MEAN_ERRORS = 2;
    private static final int LEAST_REFERENCE = 24;

    private final HourSeries series;
    private final Cusum sums;
    private final double deviation;
    private final double limit;

    /**
     * An alarm.
     *
     * @param hour the hour after which the sum was above its limit, since 1970 UTC
     * @param began the hour from which on the sum had grown
     * @param low whether the readings are too low
     */
    public record Alarm(long hour, long began, boolean low) {}

    private Drift(HourSeries series, double widening, double allowance, double limit) {
        this.series = series;
        this.limit = limit;
        this.deviation = series.deviation() * widening;
        double[] z = new double[series.count()];
        double mean = series.mean();
        for (int i = 0; i < z.length; i++) {
            z[i] = deviation > 0 ? (series.values()[i] - mean) / deviation : 0;
        }
        this.sums = Cusum.of(z, allowance, limit);
    }

    /**
     * Returns the drift of a residual with a limit that leads to so many false alarms.
     *
     * @param perYear how many false alarms in a year of hours, above 0 and up to 100
     */
    public static Drift withFalseAlarms(HourSeries series, double perYear) {
        if (!(perYear > 0 && perYear <= 100)) {
            throw new Refusal(
                    TrendProblem.IMPOSSIBLE_TREND_CHOICE,
                    "Asked for " + perYear + " false alarms a year",
                    "More than 0 and up to 100 can be had",
                    "Common is 0.2: one in five years");
        }
        requireReference(series);
        double allowance = ALLOWANCE + MEAN_ERRORS / Math.sqrt(series.reference());
        return new Drift(series, series.widening(), allowance, Cusum.limitFor(ALLOWANCE, HOURS_OF_YEAR / perYear));
    }

    /** Returns the drift of a residual with a limit in plain standard deviations, as if its hours were independent. */
    public static Drift withLimit(HourSeries series, double limit) {
        if (!(limit > 0)) {
            throw new Refusal(
                    TrendProblem.IMPOSSIBLE_TREND_CHOICE,
                    "Asked for a limit of " + limit + " standard deviations",
                    "A limit is above 0",
                    "Common is 10 or more for hours that resemble each other");
        }
        requireReference(series);
        return new Drift(series, 1, ALLOWANCE, limit);
    }

    private static void requireReference(HourSeries series) {
        if (series.reference() < LEAST_REFERENCE) {
            throw new Refusal(
                    TrendProblem.TOO_SHORT_LOG,
                    "Asked for the drift of the " + series.channel().words() + " from " + series.reference()
                            + " reference hours",
                    "It takes " + LEAST_REFERENCE + " hours of reference or more",
                    "Let the reference last longer, with until:");
        }
    }

    /** Returns the residual. */
    public HourSeries series() {
        return series;
    }

    /** Returns the limit of the sums. */
    public double limit() {
        return limit;
    }

    /** Returns the standard deviation of an hour, widened where hours resemble each other, in SI. */
    public double deviation() {
        return deviation;
    }

    /** Returns the false alarms to be expected in a year of hours. */
    public double falseAlarmsPerYear() {
        return HOURS_OF_YEAR / Cusum.runLength(ALLOWANCE, limit);
    }

    /** Returns the sum for low readings after each hour. */
    public double lowAt(int index) {
        return sums.lowAt(index);
    }

    /** Returns the sum for high readings after each hour. */
    public double highAt(int index) {
        return sums.highAt(index);
    }

    /** Returns the first alarm of low readings. */
    public Optional<Alarm> lowAlarm() {
        return alarm(sums.lowAlarm(), true);
    }

    /** Returns the first alarm of high readings. */
    public Optional<Alarm> highAlarm() {
        return alarm(sums.highAlarm(), false);
    }

    /** Returns the first alarm of either. */
    public Optional<Alarm> alarm() {
        Optional<Alarm> low = lowAlarm();
        Optional<Alarm> high = highAlarm();
        boolean lowFirst = low.isPresent()
                && (high.isEmpty() || low.get().hour() <= high.get().hour());
        return lowFirst ? low : high;
    }

    private Optional<Alarm> alarm(int at, boolean low) {
        return at < 0
                ? Optional.empty()
                : Optional.of(new Alarm(series.hours()[at], series.hours()[sums.began(at, low)], low));
    }
}
