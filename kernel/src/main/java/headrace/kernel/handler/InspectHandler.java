package headrace.kernel.handler;

import headrace.kernel.message.Reply;
import headrace.kernel.message.Request;
import headrace.kernel.session.Session;
import java.util.Optional;
import java.util.function.Supplier;

/** Explains what stands at the cursor. */
public final class InspectHandler implements Handler<Request.Inspect> {
    private final Supplier<Session> session;

    /** Creates a handler that asks this session. */
    public InspectHandler(Supplier<Session> session) {
        this.session = session;
    }

    @Override
    public Optional<Reply> handle(Request.Inspect request, Publisher publisher) {
        int cursor = CodePoints.toUnits(request.code(), request.cursor());
        return Optional.of(new Reply.Inspect(session.get().inspect(request.code(), cursor, request.detail())));
    }
}
