package headrace.kernel.message;

/**
 * Who sent a message, and what it is.
 *
 * @param id its identity
 * @param type its kind, such as {@code execute_request}
 * @param session the session of its sender
 * @param raw the header as it came over the wire, so that a field which this kernel does not know comes back in the
 *     parent of every answer
 */
public record Header(String id, String type, String session, String raw) {
    /** The parent of what no request caused. */
    public static final Header NONE = new Header("", "", "", "{}");
}
