package headrace.kernel.handler;

import headrace.kernel.message.Comm;
import headrace.kernel.message.Reply;
import headrace.kernel.message.Request;
import java.util.Map;
import java.util.Optional;

/**
 * Deals with objects that have a twin in a front end. This kernel has none yet: what a front end opens is closed at
 * once, as the protocol demands for a target that does not exist, and messages to what never was open have no effect.
 */
public final class CommHandler implements Handler<Comm> {
    @Override
    public Optional<Reply> handle(Comm message, Publisher publisher) {
        if (message instanceof Comm.Open open) {
            publisher.publish(new Comm.Close(open.id(), Map.of()));
        }
        return Optional.empty();
    }

    /** Says which objects have a twin. */
    public Optional<Reply> info(Request.CommInfo request, Publisher publisher) {
        return Optional.of(new Reply.CommInfo(Map.of()));
    }
}
