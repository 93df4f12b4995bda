package headrace.kernel.handler;

import headrace.kernel.message.Identity;
import headrace.kernel.message.Reply;
import headrace.kernel.message.Request;
import java.util.Optional;

/** Says what this kernel is. Needs no session, so that a front end has its answer before the first is ready. */
public final class KernelInfoHandler implements Handler<Request.KernelInfo> {
    private final Identity identity;

    /** Creates a handler that says this. */
    public KernelInfoHandler(Identity identity) {
        this.identity = identity;
    }

    @Override
    public Optional<Reply> handle(Request.KernelInfo request, Publisher publisher) {
        return Optional.of(new Reply.KernelInfo(identity));
    }
}
