package headrace.kernel.session;

import headrace.kernel.display.HowFar;
import headrace.work.Watcher;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;

/**
 * Tells a door a few times a second how far the calculations of one cell have come, and at the end that they are over.
 * A calculation that is quick tells nothing.
 *
 * <p>A calculation begins anew where its words change or its share goes back.
 */
public final class Progress implements Watcher {
    private static final long QUIET_NANOS = 400_000_000L;
    private static final long BETWEEN_NANOS = 250_000_000L;

    private final BooleanSupplier stopped;
    private final Output output;
    private final LongSupplier clock;
    private String what = "";
    private double share;
    private long begun;
    private TimeLeft left;
    private long told;
    private boolean heard;
    private boolean heardOfThis;
    private boolean ended;

    /**
     * Creates the watcher of one cell.
     *
     * @param stopped whether the user asked to stop
     * @param output is told
     */
    public Progress(BooleanSupplier stopped, Output output) {
        this(stopped, output, System::nanoTime);
    }

    Progress(BooleanSupplier stopped, Output output, LongSupplier clock) {
        this.stopped = stopped;
        this.output = output;
        this.clock = clock;
    }

    @Override
    public boolean stopped() {
        return stopped.getAsBoolean();
    }

    @Override
    public synchronized void progress(String now, double done) {
        if (ended) {
            return;
        }
        long nanos = clock.getAsLong();
        double reached = Math.max(0, Math.min(1, done));
        if (left == null || !now.equals(what) || reached < share) {
            what = now;
            begun = nanos;
            left = new TimeLeft(nanos, reached);
            heardOfThis = false;
        }
        share = reached;
        // The end is told at once, so that what comes next does not stand under a time that is over.
        boolean due = share == 1
                ? heardOfThis
                : nanos - begun >= QUIET_NANOS && (!heardOfThis || nanos - told >= BETWEEN_NANOS);
        if (due) {
            told = nanos;
            heard = true;
            heardOfThis = true;
            output.progress(new HowFar(what, share, share == 1 ? Optional.empty() : left.at(nanos, share)));
        }
    }

    /** Tells that the calculations are over, if anything was told of them, and nothing from then on. */
    public synchronized void end() {
        if (heard && !ended) {
            output.progressEnded();
        }
        ended = true;
    }
}
