package headrace.kernel.headless;

import headrace.kernel.session.Session;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;

/** Stops a cell that takes longer than it may. */
public final class Limits implements AutoCloseable {
    private static final long ASK_AGAIN_MILLISECONDS = 100;

    private final Optional<Duration> most;
    private final Session session;
    private final ScheduledExecutorService clock;

    /** Limits each cell to so long; empty for no limit. */
    public Limits(Optional<Duration> most, Session session) {
        this.most = most;
        this.session = session;
        clock = most.isEmpty()
                ? null
                : Executors.newSingleThreadScheduledExecutor(body -> {
                    Thread thread = new Thread(body, "time limit");
                    thread.setDaemon(true);
                    return thread;
                });
    }

    /** Runs a cell, and returns whether it took too long. */
    public boolean passed(Runnable cell) {
        if (most.isEmpty()) {
            cell.run();
            return false;
        }
        AtomicBoolean passed = new AtomicBoolean();
        Runnable stop = () -> {
            passed.set(true);
            session.interrupt();
        };
        ScheduledFuture<?> stopping =
                clock.scheduleAtFixedRate(stop, most.get().toMillis(), ASK_AGAIN_MILLISECONDS, TimeUnit.MILLISECONDS);
        try {
            cell.run();
        } finally {
            stopping.cancel(false);
        }
        return passed.get();
    }

    @Override
    public void close() {
        if (clock != null) {
            clock.shutdownNow();
        }
    }
}
