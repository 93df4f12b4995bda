package headrace.kernel.session;

import java.time.Duration;
import java.util.Optional;

/**
 * How long one calculation still takes, as it has come forward so far on the whole.
 *
 * <p>Nothing is said before a second and a fiftieth of the calculation have gone by. After that the time said runs down
 * with the clock and is drawn towards each new estimate, halfway within three seconds, so that a step which takes
 * longer than others does not make it jump. These three numbers are our own choice.
 */
public final class TimeLeft {
    private static final double LEAST_SECONDS = 1;
    private static final double LEAST_SHARE = 0.02;
    private static final double HALFWAY_SECONDS = 3;

    private final long begun;
    private final double from;
    private double told = -1;
    private long toldAt;

    /**
     * Begins.
     *
     * @param nanos the time now
     * @param share how far the calculation has come now, from 0 to 1
     */
    public TimeLeft(long nanos, double share) {
        begun = nanos;
        from = share;
    }

    /**
     * Returns how long it still takes, or nothing where there is too little to tell from.
     *
     * @param nanos the time now
     * @param share how far the calculation has come now
     */
    public Optional<Duration> at(long nanos, double share) {
        double elapsed = (nanos - begun) / 1e9;
        double gone = share - from;
        if (elapsed < LEAST_SECONDS || gone < LEAST_SHARE) {
            return Optional.empty();
        }
        double estimated = elapsed * (1 - share) / gone;
        if (told < 0) {
            told = estimated;
        } else {
            double since = (nanos - toldAt) / 1e9;
            double expected = Math.max(0, told - since);
            told = expected + (estimated - expected) * since / (since + HALFWAY_SECONDS);
        }
        toldAt = nanos;
        return Optional.of(Duration.ofMillis(Math.round(told * 1000)));
    }
}
