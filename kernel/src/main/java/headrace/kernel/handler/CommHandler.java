package headrace.kernel.handler;

import headrace.kernel.comm.Comms;
import headrace.kernel.message.Comm;
import headrace.kernel.message.Reply;
import headrace.kernel.message.Request;
import java.util.Optional;

/** Lets an object of the kernel hear its twin in a front end. */
public final class CommHandler implements Handler<Comm> {
    private final Comms comms;

    /** Creates a handler for these objects. */
    public CommHandler(Comms comms) {
        this.comms = comms;
    }

    @Override
    public void notice(Comm message) {
        comms.notice(message);
    }

    @Override
    public Optional<Reply> handle(Comm message, Publisher publisher) {
        comms.send(publisher::publish);
        comms.receive(message);
        return Optional.empty();
    }

    /** Says which objects have a twin. */
    public Optional<Reply> info(Request.CommInfo request, Publisher publisher) {
        return Optional.of(new Reply.CommInfo(comms.of(request.target())));
    }
}
