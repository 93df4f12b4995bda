package headrace.kernel.handler;

import headrace.kernel.message.Reply;
import headrace.kernel.message.Request;
import headrace.kernel.session.Completion;
import headrace.kernel.session.Session;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** Says what could stand at the cursor. */
public final class CompleteHandler implements Handler<Request.Complete> {
    private final Supplier<Session> session;

    /** Creates a handler that asks this session. */
    public CompleteHandler(Supplier<Session> session) {
        this.session = session;
    }

    @Override
    public Optional<Reply> handle(Request.Complete request, Publisher publisher) {
        String code = request.code();
        Completion completion = session.get().complete(code, CodePoints.toUnits(code, request.cursor()));
        List<Reply.Match> matches = completion.candidates().stream()
                .map(candidate -> new Reply.Match(candidate.text(), candidate.type(), candidate.signature()))
                .toList();
        int start = CodePoints.of(code, completion.start());
        return Optional.of(new Reply.Complete(start, CodePoints.of(code, completion.end()), matches));
    }
}
