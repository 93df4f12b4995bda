package headrace.kernel.comm;

import headrace.kernel.message.Comm;

/** The kernel's half of a pair: hears what its twin in a front end says. Called on the thread that runs the cells. */
public interface Half {
    /**
     * Hears something. Whatever is sent meanwhile, on any pair, tells the front end that this was its cause.
     *
     * @param pair the pair it came over
     */
    void hears(Pair pair, Comm.Data message);

    /**
     * Notices that something has arrived which it will hear when its turn comes. Called by the thread that reads from
     * the front ends, so it must be done at once.
     */
    default void notices(Comm.Data message) {}

    /** Hears that the twin is gone; nothing can be said to it any more. */
    default void ended(Comm.Close message) {}
}
