package headrace.kernel.handler;

import headrace.kernel.message.Event;
import headrace.kernel.message.Reply;
import headrace.kernel.message.Request;
import java.util.Optional;

/** Ends the kernel, and says so to every front end. */
public final class ShutdownHandler implements Handler<Request.Shutdown> {
    private final Runnable ending;

    /** Creates a handler that sets the end going so; it must not wait for the end. */
    public ShutdownHandler(Runnable ending) {
        this.ending = ending;
    }

    @Override
    public Optional<Reply> handle(Request.Shutdown request, Publisher publisher) {
        publisher.publish(new Event.Ending(request.restart()));
        ending.run();
        return Optional.of(new Reply.Shutdown(request.restart()));
    }
}
