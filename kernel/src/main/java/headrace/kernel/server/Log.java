package headrace.kernel.server;

import headrace.kernel.wire.Rejected;
import java.io.PrintStream;
import java.util.EnumMap;
import java.util.Map;

/**
 * What the kernel tells whoever runs the front end, a line each.
 *
 * <p>Dropped messages are told by their reason, never by their content, and no more often than at the first, second,
 * fourth, eighth … of a reason, so that nobody can fill a disk by sending rubbish.
 */
final class Log {
    private final PrintStream out;
    private final Map<Rejected.Reason, Integer> dropped = new EnumMap<>(Rejected.Reason.class);

    Log(PrintStream out) {
        this.out = out;
    }

    void say(String sentence) {
        out.println("headrace: " + sentence);
    }

    /** Tells a failure of the kernel itself, with its trace. */
    void failed(String what, Throwable failure) {
        synchronized (out) {
            say(what);
            failure.printStackTrace(out);
        }
    }

    synchronized void dropped(Rejected.Reason reason) {
        int times = dropped.merge(reason, 1, Integer::sum);
        if (Integer.bitCount(times) == 1) {
            say("Dropped a message: " + reason.words() + " (" + times + (times == 1 ? " time" : " times")
                    + " so far).");
        }
    }
}
