package headrace.kernel.session.groovy;

import headrace.work.Work;

/** A calculation of a library, compiled without any check woven in. */
public final class LongWork {
    /** Whether {@link #deaf()} goes on. */
    static volatile boolean deaf = true;

    private LongWork() {}

    /** Works on and asks nobody. */
    public static void deaf() {
        while (deaf) {
            Thread.onSpinWait();
        }
    }

    /** Works for ever, and asks now and then whether to stop. */
    public static void polling() {
        for (long i = 0; ; i++) {
            if (i % 10_000 == 0) {
                Work.poll();
            }
        }
    }

    /** Works for so many steps of a given length and says how far it has come. */
    public static void progressing(int steps, long millisEach) throws InterruptedException {
        for (int i = 0; i < steps; i++) {
            Thread.sleep(millisEach);
            Work.progress("weighing <tests>", i, steps);
        }
    }
}
