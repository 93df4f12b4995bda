package headrace.kernel.message;

import java.util.List;
import java.util.Map;

/**
 * A message between an object in the kernel and its twin in a front end. Goes both ways.
 *
 * <p>The data are trees of maps, lists, strings, numbers, booleans and nulls, as in JSON.
 */
public sealed interface Comm extends Request, Event {
    /** Returns the identity of the pair. */
    String id();

    /**
     * Opens a pair; the other side looks up by the target's name what to make.
     *
     * @param data what the other side is told of this half
     * @param metadata what is said of the message
     * @param buffers what goes with it as bytes
     */
    record Open(String id, String target, Map<String, Object> data, Map<String, Object> metadata, List<byte[]> buffers)
            implements Comm {}

    /**
     * Tells the twin something.
     *
     * @param data what
     * @param metadata what is said of the message
     * @param buffers what goes with it as bytes
     */
    record Data(String id, Map<String, Object> data, Map<String, Object> metadata, List<byte[]> buffers)
            implements Comm {}

    /** Ends the pair. */
    record Close(String id, Map<String, Object> data) implements Comm {}
}
