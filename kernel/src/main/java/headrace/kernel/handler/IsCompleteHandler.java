package headrace.kernel.handler;

import headrace.kernel.message.Reply;
import headrace.kernel.message.Request;
import headrace.kernel.session.Completeness;
import headrace.kernel.session.Session;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;

/** Says whether code could run as it stands, for a console that wonders what the return key should do. */
public final class IsCompleteHandler implements Handler<Request.IsComplete> {
    private final Supplier<Session> session;

    /** Creates a handler that asks this session. */
    public IsCompleteHandler(Supplier<Session> session) {
        this.session = session;
    }

    @Override
    public Optional<Reply> handle(Request.IsComplete request, Publisher publisher) {
        if (WordInQuestion.of(request.code()).isPresent()) {
            return Optional.of(new Reply.IsComplete("complete", ""));
        }
        Completeness completeness = session.get().completeness(request.code());
        String status = completeness.state().name().toLowerCase(Locale.ROOT);
        return Optional.of(new Reply.IsComplete(status, completeness.indent()));
    }
}
