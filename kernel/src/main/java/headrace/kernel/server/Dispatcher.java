package headrace.kernel.server;

import headrace.kernel.handler.Handlers;
import headrace.kernel.message.Comm;
import headrace.kernel.message.Event;
import headrace.kernel.message.Fault;
import headrace.kernel.message.Header;
import headrace.kernel.message.Reply;
import headrace.kernel.message.Request;
import headrace.kernel.wire.Incoming;
import java.util.Optional;
import java.util.function.IntSupplier;

/**
 * Hands each request to its handler on the right thread: {@code busy}, handler, reply, {@code idle}, whatever happens.
 *
 * <p>Cells and messages to their objects run one after another on the cell's thread. What only looks at the session is
 * answered on a second thread while a cell runs, and what comes over the control channel, or ends or stops something,
 * on a third.
 */
final class Dispatcher implements Courier.Reader {
    /** The threads on which requests are answered. */
    record Lanes(Lane cells, Lane questions, Lane control) {}

    private static final Event BUSY = new Event.Status("busy");
    private static final Event IDLE = new Event.Status("idle");

    private final Handlers handlers;
    private final Lanes lanes;
    private final Turns turns;
    private final Announcer.Means means;
    private final IntSupplier count;
    private final Log log;
    private final Object statuses = new Object();
    private Header running = Header.NONE;

    /**
     * Creates a dispatcher.
     *
     * @param count gives the number of the latest cell
     */
    Dispatcher(Handlers handlers, Lanes lanes, Turns turns, Announcer.Means means, IntSupplier count, Log log) {
        this.handlers = handlers;
        this.lanes = lanes;
        this.turns = turns;
        this.means = means;
        this.count = count;
        this.log = log;
    }

    @Override
    public void received(Channel channel, Incoming message) {
        Request request = message.request();
        if (request instanceof Request.Answer answer) {
            means.questions().answer(message, answer);
            return;
        }
        handlers.notice(request);
        long number = turns.arrive();
        laneOf(channel, request).put(() -> serve(channel, message, number));
    }

    @Override
    public void subscribed(String topic) {
        means.courier().send(Channel.IOPUB, means.author().event(Header.NONE, new Event.Welcome(topic)));
    }

    private Lane laneOf(Channel channel, Request request) {
        if (request instanceof Request.Execute || request instanceof Comm) {
            return lanes.cells();
        }
        boolean urgent = request instanceof Request.Interrupt || request instanceof Request.Shutdown;
        return urgent || channel == Channel.CONTROL ? lanes.control() : lanes.questions();
    }

    private void serve(Channel channel, Incoming message, long number) {
        Announcer announcer = new Announcer(message, means);
        boolean cell = message.request() instanceof Request.Execute;
        busy(announcer, message, cell);
        try {
            Optional<Reply> reply = cell ? inTurn(message, number, announcer) : answer(message, announcer);
            announcer.flush();
            reply.ifPresent(
                    answer -> means.courier().send(channel, means.author().reply(message, answer)));
        } finally {
            announcer.end();
            idle(announcer, cell);
        }
    }

    private Optional<Reply> inTurn(Incoming message, long number, Announcer announcer) {
        if (!turns.begin(number)) {
            return Optional.of(new Reply.Aborted(count.getAsInt()));
        }
        Optional<Reply> reply;
        try {
            reply = answer(message, announcer);
        } finally {
            turns.end();
        }
        boolean failed = reply.orElse(null) instanceof Reply.ExecuteFailed;
        if (failed && ((Request.Execute) message.request()).stopOnError()) {
            turns.passOverWaiting();
        }
        return reply;
    }

    private Optional<Reply> answer(Incoming message, Announcer announcer) {
        try {
            if (message.request() instanceof Request.Unreadable unreadable) {
                return failed(message, Fault.of("unreadable-request", unreadable.why()));
            }
            return handlers.answer(message.request(), announcer);
        } catch (Throwable failure) { // whatever it is, the front end must have its reply
            log.failed("The kernel failed at a request.", failure);
            Fault fault = Fault.of(failure.getClass().getSimpleName(), String.valueOf(failure.getMessage()));
            return failed(message, fault);
        }
    }

    /** What is no request, such as a message between an object and its twin, has no reply when it fails either. */
    private Optional<Reply> failed(Incoming message, Fault fault) {
        String type = message.header().type();
        if (!type.endsWith("_request")) {
            return Optional.empty();
        }
        boolean cell = type.equals("execute_request");
        return Optional.of(cell ? new Reply.ExecuteFailed(count.getAsInt(), fault) : new Reply.Failed(fault));
    }

    private void busy(Announcer announcer, Incoming message, boolean cell) {
        synchronized (statuses) {
            if (cell) {
                running = message.header();
            }
            announcer.publish(BUSY);
        }
    }

    /** Front ends show the latest status, so one that was only about a question is put right while a cell runs. */
    private void idle(Announcer announcer, boolean cell) {
        synchronized (statuses) {
            if (cell) {
                running = Header.NONE;
            }
            announcer.publish(IDLE);
            if (running != Header.NONE) {
                means.courier().send(Channel.IOPUB, means.author().event(running, BUSY));
            }
        }
    }
}
