package headrace.kernel.wire;

import headrace.kernel.message.Header;
import headrace.kernel.message.Request;
import java.util.List;

/**
 * An honest message of a front end.
 *
 * @param route the frames that lead back to its sender
 * @param header who sent it
 * @param cause the identity of the kernel's message that it answers, or empty
 * @param request what it asks
 */
public record Incoming(List<byte[]> route, Header header, String cause, Request request) {}
