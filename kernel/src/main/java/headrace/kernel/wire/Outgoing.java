package headrace.kernel.wire;

import java.util.List;

/**
 * A message of the kernel, ready to be signed and sent.
 *
 * @param id its identity
 * @param route the frames before the message: the way to its receiver, or its topic
 * @param parts header, parent header, metadata and content as they go over the wire
 * @param buffers what goes with it as bytes
 */
public record Outgoing(String id, List<byte[]> route, List<byte[]> parts, List<byte[]> buffers) {}
