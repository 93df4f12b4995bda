package headrace.kernel.handler;

import headrace.kernel.message.Reply;
import headrace.kernel.message.Request;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** Which handler answers which kind of request. Filled before the first request, then read by every thread. */
public final class Handlers {
    private final Map<Class<?>, Handler<?>> byKind = new HashMap<>();

    /** Lets a handler answer a kind of request, and returns this. */
    public <R extends Request> Handlers with(Class<R> kind, Handler<? super R> handler) {
        byKind.put(kind, handler);
        return this;
    }

    /** Answers a request. One whose kind has no handler has no effect and no reply. */
    public Optional<Reply> answer(Request request, Publisher publisher) {
        Handler<Request> handler = handlerOf(request);
        return handler == null ? Optional.empty() : handler.handle(request, publisher);
    }

    /** Lets the handler of a request notice that it has arrived. */
    public void notice(Request request) {
        Handler<Request> handler = handlerOf(request);
        if (handler != null) {
            handler.notice(request);
        }
    }

    @SuppressWarnings("unchecked") // with() pairs each kind with a handler that takes it
    private Handler<Request> handlerOf(Request request) {
        return (Handler<Request>) byKind.get(request.getClass());
    }
}
