package headrace.kernel.server;

import headrace.kernel.comm.Comms;
import headrace.kernel.handler.CommHandler;
import headrace.kernel.handler.CompleteHandler;
import headrace.kernel.handler.ExecuteHandler;
import headrace.kernel.handler.Handlers;
import headrace.kernel.handler.HistoryHandler;
import headrace.kernel.handler.InspectHandler;
import headrace.kernel.handler.InterruptHandler;
import headrace.kernel.handler.IsCompleteHandler;
import headrace.kernel.handler.KernelInfoHandler;
import headrace.kernel.handler.ShutdownHandler;
import headrace.kernel.history.History;
import headrace.kernel.message.Comm;
import headrace.kernel.message.Event;
import headrace.kernel.message.Header;
import headrace.kernel.message.Identity;
import headrace.kernel.message.Reply;
import headrace.kernel.message.Request;
import headrace.kernel.session.Session;
import headrace.kernel.widget.Widgets;
import headrace.kernel.wire.Author;
import headrace.kernel.wire.ConnectionFile;
import java.io.PrintStream;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;

/**
 * A notebook kernel from the binding of its ports to its end.
 *
 * <p>Source: Jupyter messaging protocol 5.5.
 */
public final class Kernel {
    private static final Duration PATIENCE = Duration.ofMillis(300);
    private static final long INSIST_MILLISECONDS = 100;

    private final Sockets sockets;
    private final Courier courier;
    private final Questions questions;
    private final Author author = new Author();
    private final Comms comms = new Comms();
    private final History history;
    private final CompletableFuture<Session> session = new CompletableFuture<>();
    private final CountDownLatch ending = new CountDownLatch(1);
    private final ScheduledExecutorService clock = clock();
    private final Turns turns = new Turns(this::press);
    private final Dispatcher.Lanes lanes;
    private final Dispatcher dispatcher;

    /**
     * Creates a kernel that listens where the file says, but does not answer yet.
     *
     * @param identity what it says of itself
     * @param history has the cells of earlier sessions and keeps those of this one
     * @param err where it tells what goes wrong
     */
    public Kernel(ConnectionFile file, Identity identity, History history, PrintStream err) {
        this.history = history;
        Log log = new Log(err);
        sockets = Sockets.open(file);
        courier = new Courier(sockets.channels(), file, log);
        questions = new Questions(courier, author);
        lanes = new Dispatcher.Lanes(new Lane("cells", log), new Lane("questions", log), new Lane("control", log));
        Announcer.Means means = new Announcer.Means(courier, author, questions, clock);
        Handlers handlers = handlers(identity, file.ports(), log);
        dispatcher = new Dispatcher(handlers, lanes, turns, means, this::count, log);
    }

    /**
     * Answers requests until one asks to end, or {@link #end} is called.
     *
     * @param maker makes the session, on the thread that will run the cells; questions that need none are answered
     *     meanwhile
     */
    public void serve(Supplier<Session> maker) throws InterruptedException {
        lanes.cells().put(() -> make(maker)); // before the first cell can come
        courier.send(Channel.IOPUB, author.event(Header.NONE, new Event.Status("starting")));
        courier.start(dispatcher);
        Heartbeat.start(sockets.heartbeat());
        ending.await();
        lanes.control().finish(PATIENCE);
        turns.interrupt();
        questions.cancel();
        lanes.cells().finish(PATIENCE);
        startedSession().ifPresent(Session::close);
        history.close();
        clock.shutdownNow();
        courier.finish();
        sockets.end();
    }

    /** Returns the objects that have a twin in a front end, for whoever makes such. */
    public Comms comms() {
        return comms;
    }

    /** Stops the running cell and passes over those that wait. May be called by any thread. */
    public void interrupt() {
        long stopped = turns.interrupt();
        questions.cancel();
        clock.schedule(() -> insist(stopped), INSIST_MILLISECONDS, TimeUnit.MILLISECONDS);
    }

    /** Lets the kernel end. May be called by any thread; {@link #serve} returns when it has ended. */
    public void end() {
        ending.countDown();
    }

    /** Lets the kernel end as soon as this holds, which is asked once a second. */
    public void endWhen(BooleanSupplier gone) {
        clock.scheduleWithFixedDelay(
                () -> {
                    if (gone.getAsBoolean()) {
                        end();
                    }
                },
                1,
                1,
                TimeUnit.SECONDS);
    }

    private void make(Supplier<Session> maker) {
        try {
            session.complete(maker.get());
        } catch (Throwable failure) {
            session.completeExceptionally(failure);
            throw failure;
        }
    }

    private Session session() {
        try {
            return session.join();
        } catch (CompletionException failed) {
            throw new IllegalStateException("The session could not be started: " + failed.getCause(), failed);
        }
    }

    private Optional<Session> startedSession() {
        return session.isDone() && !session.isCompletedExceptionally() ? Optional.of(session()) : Optional.empty();
    }

    private int count() {
        return startedSession().map(Session::count).orElse(0);
    }

    private void press() {
        startedSession().ifPresent(Session::interrupt);
    }

    private void insist(long stopped) {
        if (turns.insist(stopped)) {
            questions.cancel();
            clock.schedule(() -> insist(stopped), INSIST_MILLISECONDS, TimeUnit.MILLISECONDS);
        }
    }

    private Handlers handlers(Identity identity, ConnectionFile.Ports ports, Log log) {
        CommHandler pairs = new CommHandler(comms);
        Reply connect =
                new Reply.Connect(ports.shell(), ports.iopub(), ports.stdin(), ports.control(), ports.heartbeat());
        return new Handlers()
                .with(Request.KernelInfo.class, new KernelInfoHandler(identity))
                .with(
                        Request.Execute.class,
                        new ExecuteHandler(this::session, history, comms, new Widgets(comms, this::session)))
                .with(Request.Complete.class, new CompleteHandler(this::session))
                .with(Request.Inspect.class, new InspectHandler(this::session))
                .with(Request.IsComplete.class, new IsCompleteHandler(this::session))
                .with(Request.History.class, new HistoryHandler(this::session, history))
                .with(Comm.Open.class, pairs)
                .with(Comm.Data.class, pairs)
                .with(Comm.Close.class, pairs)
                .with(Request.CommInfo.class, pairs::info)
                .with(Request.Interrupt.class, new InterruptHandler(this::interrupt))
                .with(Request.Shutdown.class, new ShutdownHandler(this::end))
                .with(Request.Connect.class, (request, publisher) -> Optional.of(connect))
                .with(Request.Unknown.class, (request, publisher) -> {
                    log.say("Ignored a request of a kind that is not known here.");
                    return Optional.empty();
                });
    }

    private static ScheduledExecutorService clock() {
        return new ScheduledThreadPoolExecutor(1, job -> {
            Thread thread = new Thread(job, "headrace-clock");
            thread.setDaemon(true);
            return thread;
        });
    }
}
