package headrace.kernel.session.cell;

import headrace.work.Stopped;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The wish to stop one cell, heard by every thread that the cell started.
 *
 * <p>Each compiled cell asks {@link #check()} at every method entry and before every jump back. The wish stays up until
 * the cell has ended, so that code which catches everything meets it again at its next turn.
 */
public final class Stop {
    private static final Set<Stop> RAISED = ConcurrentHashMap.newKeySet();
    private static final InheritableThreadLocal<Stop> OF_THREAD = new InheritableThreadLocal<>();

    /** Whether any cell is to stop: one plain read is all that a running loop pays. */
    private static volatile boolean anyRaised;

    private static volatile Stop latest = new Stop();

    private volatile boolean raised;
    private volatile boolean over;

    /** Creates a wish that is not raised yet. */
    public Stop() {}

    /**
     * Binds this thread to the wish, and the threads that it starts from now on. Forgets the wishes of cells that have
     * ended; until then their background threads still heed them.
     */
    public void bind() {
        RAISED.removeIf(stop -> stop.over);
        anyRaised = !RAISED.isEmpty();
        latest = this;
        OF_THREAD.set(this);
    }

    /** Says that the cell has ended. To be called by the thread that was bound. */
    public void end() {
        over = true;
        OF_THREAD.remove();
    }

    /** Asks the cell to stop. May be called by any thread, more than once. */
    public void raise() {
        raised = true;
        RAISED.add(this);
        anyRaised = true;
    }

    /** Returns whether the cell was asked to stop. */
    public boolean isRaised() {
        return raised;
    }

    /** Ends this thread's code with {@link Stopped} if its cell is to stop. Called by woven code. */
    public static void check() {
        if (anyRaised) {
            checkThisThread();
        }
    }

    /** A thread of the common pool belongs to no cell; it stops with the latest, since it works for that. */
    private static void checkThisThread() {
        Stop own = OF_THREAD.get();
        if ((own == null ? latest : own).raised) {
            throw new Stopped();
        }
    }
}
