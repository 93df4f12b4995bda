package headrace.work;

/**
 * The steps of one calculation, from the first to the last, for its user's sake.
 *
 * <p>A calculation that runs within a step, and says by itself how far it is, moves the share of this one between two
 * steps: its own words are not told. So whatever a calculation is made of, what its user sees is one calculation whose
 * share never goes back.
 *
 * <p>Belongs to one thread, and is closed on it: {@code try (Steps steps = Work.steps("choosing among pumps", 12))}.
 */
public final class Steps implements AutoCloseable {
    private final Watcher above;
    private final Watcher within = new Watcher() {
        @Override
        public boolean stopped() {
            return above.stopped();
        }

        @Override
        public void progress(String what, double share) {
            tell(done + share);
        }
    };
    private final String what;
    private final long total;
    private long done = -1;
    private double told = -1;

    Steps(Watcher above, String what, long total) {
        this.above = above;
        this.what = what;
        this.total = total;
    }

    /** Returns what watches the calculations within a step. */
    Watcher within() {
        return within;
    }

    /** Begins the next step, and ends the calculation if its user asked for that. */
    public void next() {
        at(done + 1);
    }

    /**
     * Says how many steps are done, and ends the calculation if its user asked for that.
     *
     * @param steps at least as many as were done before
     */
    public void at(long steps) {
        Work.poll();
        done = steps;
        tell(steps);
    }

    private void tell(double steps) {
        double share = total > 0 ? Math.max(0, Math.min(1, steps / total)) : 1;
        if (share > told) {
            told = share;
            above.progress(what, share);
        }
    }

    /** Ends the steps; those that were all begun count as done. */
    @Override
    public void close() {
        Work.watchAgain(above);
        if (done == total - 1) {
            tell(total);
        }
    }
}
