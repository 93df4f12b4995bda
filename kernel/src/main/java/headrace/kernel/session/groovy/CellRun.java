package headrace.kernel.session.groovy;

import headrace.kernel.session.Outcome;
import headrace.kernel.session.cell.Stop;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;

/**
 * One run of a cell, from the moment it was asked for until its end.
 *
 * <p>A cell that was told to stop is woken from sleeps and waits again and again. One that still goes on after two
 * seconds sits in code that heeds nothing, such as a lock that is never released; its thread is left behind, and the
 * session goes on with another. There is no safe way to end such a thread.
 */
final class CellRun {
    private static final int WAKINGS = 20;
    private static final Executor SOON = CompletableFuture.delayedExecutor(100, TimeUnit.MILLISECONDS);

    private final Stop stop = new Stop();
    private final Function<StackTraceElement[], Outcome> leaving;
    private final CompletableFuture<Outcome> outcome = new CompletableFuture<>();
    private Thread thread;
    private StackTraceElement[] stoppedAt = {};
    private boolean over;
    private boolean leftBehind;

    /**
     * Creates a run that has not begun.
     *
     * @param leaving words the outcome of a cell that is left behind, from where its thread sits
     */
    CellRun(Function<StackTraceElement[], Outcome> leaving) {
        this.leaving = leaving;
    }

    /** Binds this thread to the run. */
    synchronized void begin() {
        thread = Thread.currentThread();
        stop.bind();
    }

    /** Ends the run on its thread, which then no longer heeds a stop. */
    void end(Outcome how) {
        synchronized (this) {
            over = true;
            stop.end();
            Thread.interrupted();
        }
        outcome.complete(how);
    }

    /** Waits for the end of the run. */
    Outcome await() {
        return outcome.join();
    }

    boolean stopAsked() {
        return stop.isRaised();
    }

    /** Returns where the cell was when it was first told to stop; empty if it had not begun. */
    synchronized StackTraceElement[] stoppedAt() {
        return stoppedAt;
    }

    synchronized boolean wasLeftBehind() {
        return leftBehind;
    }

    /** Tells the cell to stop. */
    void stop() {
        synchronized (this) {
            if (over) {
                return;
            }
            if (!stop.isRaised() && thread != null) {
                stoppedAt = thread.getStackTrace();
            }
        }
        stop.raise();
        wake(WAKINGS);
    }

    private void wake(int times) {
        synchronized (this) {
            if (over || leftBehind) {
                return;
            }
            if (thread != null && times > 0) {
                thread.interrupt();
            }
            leftBehind = times == 0;
        }
        if (times > 0) {
            SOON.execute(() -> wake(times - 1));
        } else {
            outcome.complete(leaving.apply(thread.getStackTrace()));
        }
    }
}
