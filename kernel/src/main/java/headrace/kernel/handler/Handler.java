package headrace.kernel.handler;

import headrace.kernel.message.Reply;
import headrace.kernel.message.Request;
import java.util.Optional;

/**
 * Answers one kind of request.
 *
 * <p>The dispatcher says {@code busy} before and {@code idle} after, and answers for a handler that throws.
 *
 * @param <R> the kind
 */
@FunctionalInterface
public interface Handler<R extends Request> {
    /**
     * Carries out a request.
     *
     * @param publisher hears what it causes
     * @return the reply to the front end that asked, if this kind of request has one
     */
    Optional<Reply> handle(R request, Publisher publisher);

    /**
     * Notices a request that has arrived and will be handed over when its turn comes. Called by the thread that reads
     * from the front ends, so it must be done at once.
     */
    default void notice(R request) {}
}
