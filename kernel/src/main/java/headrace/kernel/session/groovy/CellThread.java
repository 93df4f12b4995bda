package headrace.kernel.session.groovy;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/** The thread on which a session's cells run, with room for deep recursion. */
final class CellThread implements AutoCloseable {
    private static final long STACK_BYTES = 16L << 20;

    private final ExecutorService one;

    CellThread(ClassLoader loader) {
        one = Executors.newSingleThreadExecutor(body -> {
            Thread made = new Thread(null, body, "cell", STACK_BYTES);
            made.setDaemon(true);
            made.setContextClassLoader(loader);
            return made;
        });
    }

    void submit(Runnable cell) {
        one.execute(cell);
    }

    @Override
    public void close() {
        one.shutdown();
    }
}
