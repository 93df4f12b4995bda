package headrace.kernel.handler;

import headrace.kernel.message.Reply;
import headrace.kernel.message.Request;
import java.util.Optional;

/** Stops the running cell, and keeps those that wait behind it from running. */
public final class InterruptHandler implements Handler<Request.Interrupt> {
    private final Runnable interruption;

    /** Creates a handler that stops the cell so. */
    public InterruptHandler(Runnable interruption) {
        this.interruption = interruption;
    }

    @Override
    public Optional<Reply> handle(Request.Interrupt request, Publisher publisher) {
        interruption.run();
        return Optional.of(new Reply.Done());
    }
}
