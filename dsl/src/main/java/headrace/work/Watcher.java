package headrace.work;

/** Watches a calculation for its user. Called on the calculation's thread; must answer within microseconds. */
public interface Watcher {
    /** Returns whether the user asked to stop. */
    boolean stopped();

    /**
     * Hears how far the calculation has come.
     *
     * @param what the calculation in words
     * @param share from 0 to 1
     */
    void progress(String what, double share);
}
