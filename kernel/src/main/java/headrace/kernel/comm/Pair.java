package headrace.kernel.comm;

import headrace.kernel.message.Comm;
import java.util.List;
import java.util.Map;

/**
 * An object in the kernel and its twin in every front end. May be used by any thread.
 *
 * <p>The data are trees of maps, lists, strings, numbers, booleans and nulls, as in JSON. What is sent over a closed
 * pair goes nowhere.
 */
public final class Pair {
    private final String id;
    private final String target;
    private final Comms comms;
    private volatile Half half;

    Pair(String id, String target, Comms comms) {
        this.id = id;
        this.target = target;
        this.comms = comms;
    }

    /** Returns the identity that both halves share. */
    public String id() {
        return id;
    }

    /** Returns the name under which the other side knew what to make. */
    public String target() {
        return target;
    }

    /** Returns whether the pair is neither closed nor refused. */
    public boolean isOpen() {
        return comms.knows(this);
    }

    /** Tells the twin something. */
    public void send(Map<String, Object> data) {
        send(data, Map.of(), List.of());
    }

    /**
     * Tells the twin something.
     *
     * @param metadata what is said of the message
     * @param buffers what goes with it as bytes
     */
    public void send(Map<String, Object> data, Map<String, Object> metadata, List<byte[]> buffers) {
        if (isOpen()) {
            comms.tell(new Comm.Data(id, data, metadata, buffers));
        }
    }

    /** Ends the pair, and says so to the twin. */
    public void close() {
        if (comms.forget(this)) {
            comms.tell(new Comm.Close(id, Map.of()));
        }
    }

    /** Lets this half hear from now on. */
    void lead(Half hearing) {
        half = hearing;
    }

    void hear(Comm.Data message) {
        if (half != null) {
            half.hears(this, message);
        }
    }

    void notice(Comm.Data message) {
        if (half != null) {
            half.notices(message);
        }
    }

    void end(Comm.Close message) {
        if (half != null) {
            half.ended(message);
        }
    }
}
