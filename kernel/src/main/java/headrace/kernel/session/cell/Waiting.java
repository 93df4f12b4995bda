package headrace.kernel.session.cell;

import groovy.lang.Closure;

/**
 * The ways to wait that a cell can be stopped in, in place of Groovy's own {@code sleep}, which sleeps on when
 * interrupted. Named otherwise, since Groovy would prefer its own to one of the same name.
 */
public final class Waiting {
    private Waiting() {}

    /** Waits so many milliseconds. */
    public static void pause(Number millis) throws InterruptedException {
        try {
            Thread.sleep(millis.longValue());
        } catch (InterruptedException e) {
            Stop.check();
            throw e;
        }
    }

    /** Waits so many milliseconds; when interrupted, asks whether to wait no longer. */
    public static void pause(Number millis, Closure<?> enough) {
        long end = System.nanoTime() + millis.longValue() * 1_000_000;
        for (long left = end - System.nanoTime(); left > 0; left = end - System.nanoTime()) {
            try {
                Thread.sleep(left / 1_000_000, (int) (left % 1_000_000));
            } catch (InterruptedException e) {
                Stop.check();
                if (Boolean.TRUE.equals(enough.call(e))) {
                    return;
                }
            }
        }
    }
}
