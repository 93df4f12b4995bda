package headrace.kernel.headless;

import headrace.kernel.display.HowFar;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * Says how far calculations are in a file that is read line by line: one line every ten seconds, so that a long run can
 * be followed and a quick one leaves no line.
 */
final class ProgressLog {
    private static final long BETWEEN_NANOS = 10_000_000_000L;

    private final LongSupplier clock;
    private boolean running;
    private long last;

    ProgressLog(LongSupplier clock) {
        this.clock = clock;
    }

    /** Returns the line that is due, if one is. */
    Optional<String> line(HowFar far) {
        long now = clock.getAsLong();
        if (!running) {
            running = true;
            last = now;
        }
        if (now - last < BETWEEN_NANOS) {
            return Optional.empty();
        }
        last = now;
        return Optional.of("   " + far.text());
    }

    /** Hears that the cell calculates no more. */
    void ended() {
        running = false;
    }
}
