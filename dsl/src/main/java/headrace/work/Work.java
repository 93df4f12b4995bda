package headrace.work;

/**
 * What a long calculation calls on its way: {@link #poll()} at least every few milliseconds, and in one of known length
 * {@link #steps}, which say how far it has come.
 *
 * <p>Who watches is bound to the thread, so that a calculation needs no extra parameter and runs unwatched in a test. A
 * calculation that starts threads of its own hands its watcher on with {@link #watcher()} and {@link #watched}.
 */
public final class Work {
    private static final Watcher NOBODY = new Watcher() {
        @Override
        public boolean stopped() {
            return false;
        }

        @Override
        public void progress(String what, double share) {}
    };

    private static final ThreadLocal<Watcher> CURRENT = ThreadLocal.withInitial(() -> NOBODY);

    private Work() {}

    /** Runs the body on this thread under a watcher, and puts the earlier watcher back whatever happens. */
    public static void watched(Watcher watcher, Runnable body) {
        Watcher before = CURRENT.get();
        CURRENT.set(watcher);
        try {
            body.run();
        } finally {
            CURRENT.set(before);
        }
    }

    /** Returns the watcher of this thread. */
    public static Watcher watcher() {
        return CURRENT.get();
    }

    /**
     * Begins a calculation of several steps on this thread; it must be closed there.
     *
     * @param what the calculation in words, such as {@code fitting 10,000 tests}
     * @param total how many steps there are
     */
    public static Steps steps(String what, long total) {
        Steps steps = new Steps(CURRENT.get(), what, total);
        CURRENT.set(steps.within());
        return steps;
    }

    static void watchAgain(Watcher watcher) {
        CURRENT.set(watcher);
    }

    /** Ends the calculation with {@link Stopped} if its user asked for that. */
    public static void poll() {
        if (CURRENT.get().stopped()) {
            throw new Stopped();
        }
    }

    /**
     * Says how far a calculation has come that has no other within it, and ends it if its user asked for that.
     *
     * @param what the calculation in words, such as {@code fitting 10,000 tests}
     * @param done how many steps are done
     * @param total how many steps there are, above 0
     */
    public static void progress(String what, long done, long total) {
        poll();
        CURRENT.get().progress(what, (double) done / total);
    }
}
