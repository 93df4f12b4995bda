package headrace.kernel.server;

import java.time.Duration;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;

/** Runs jobs one after another on a thread of its own. */
final class Lane {
    private final BlockingQueue<Runnable> jobs = new LinkedBlockingQueue<>();
    private final Thread thread;
    private final Log log;
    private volatile boolean finished;

    Lane(String name, Log log) {
        this.log = log;
        thread = new Thread(this::run, "headrace-" + name);
        thread.setDaemon(true);
        thread.start();
    }

    void put(Runnable job) {
        jobs.add(job);
    }

    /** Lets the jobs that wait be done, but waits for them no longer than this. */
    void finish(Duration patience) throws InterruptedException {
        put(() -> finished = true);
        thread.join(patience.toMillis());
    }

    private void run() {
        while (!finished) {
            try {
                jobs.take().run();
            } catch (InterruptedException late) {
                continue; // an interruption that came when its cell had just ended
            } catch (Throwable failure) { // a lane must live on after an exhausted heap or stack too
                log.failed("The kernel failed at a request.", failure);
            }
        }
    }
}
