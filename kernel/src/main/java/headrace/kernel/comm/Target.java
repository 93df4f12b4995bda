package headrace.kernel.comm;

import headrace.kernel.message.Comm;

/** Makes the kernel's half of a pair that a front end opens under a name known to both. */
@FunctionalInterface
public interface Target {
    /**
     * Makes the half. One that throws refuses: the pair is closed at once.
     *
     * @param pair the pair, over which the half may already speak
     * @param opening what the front end says of its own half
     */
    Half opened(Pair pair, Comm.Open opening);
}
