package headrace.kernel.server;

/**
 * Knows which cell runs, and which of those that wait must not run any more.
 *
 * <p>Requests are numbered as they arrive. A failed or stopped cell sets a mark: cells up to that number are passed
 * over when their turn comes, those that arrive later run.
 */
final class Turns {
    private final Runnable press;
    private long arrived;
    private long passedOver;
    private long running;

    /** Creates turns in which the running cell is stopped so. That must not wait for the cell. */
    Turns(Runnable press) {
        this.press = press;
    }

    /** Numbers a request that arrived. */
    synchronized long arrive() {
        return ++arrived;
    }

    /** Begins the turn of a cell, unless it is to be passed over. */
    synchronized boolean begin(long number) {
        if (number <= passedOver) {
            return false;
        }
        running = number;
        return true;
    }

    synchronized void end() {
        running = 0;
    }

    /** Passes over the cells that wait now. */
    synchronized void passOverWaiting() {
        passedOver = arrived;
    }

    /**
     * Stops the running cell and passes over those that wait.
     *
     * @return the number of the cell that was stopped, or 0 if none ran
     */
    synchronized long interrupt() {
        passOverWaiting();
        press.run();
        return running;
    }

    /**
     * Stops a cell once more if it still runs: one that was about to start when it was first stopped has not heard
     * that.
     *
     * @return whether it still ran
     */
    synchronized boolean insist(long number) {
        if (number == 0 || running != number) {
            return false;
        }
        press.run();
        return true;
    }
}
