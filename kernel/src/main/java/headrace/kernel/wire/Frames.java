package headrace.kernel.wire;

import headrace.kernel.message.Header;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * Messages as the frames that go over the wire. Used by one thread, the one that owns the sockets.
 *
 * <p>A frame that does not come from someone who knows the secret is dropped before anything in it is read.
 *
 * <p>Source: Jupyter messaging protocol 5.5, “The wire protocol”.
 */
public final class Frames {
    /** As many as the reference client remembers. */
    private static final int REMEMBERED = 1 << 16;

    private static final byte[] DELIMITER = "<IDS|MSG>".getBytes(StandardCharsets.US_ASCII);
    private static final int PARTS = 4;

    private final Signature signature;
    private final ReplayGuard guard = new ReplayGuard(REMEMBERED);

    /** Creates frames that are signed so. */
    public Frames(Signature signature) {
        this.signature = signature;
    }

    /** Returns the message that these frames hold. */
    public Incoming read(List<byte[]> frames) throws Rejected {
        int delimiter = delimiter(frames);
        int first = delimiter + 2;
        if (delimiter < 0 || frames.size() < first + PARTS) {
            throw new Rejected(Rejected.Reason.INCOMPLETE);
        }
        List<byte[]> parts = frames.subList(first, first + PARTS);
        check(frames.get(delimiter + 1), parts);
        try {
            return understood(frames.subList(0, delimiter), parts, frames.subList(first + PARTS, frames.size()));
        } catch (IOException | IllegalArgumentException | StackOverflowError garbled) {
            throw new Rejected(Rejected.Reason.GARBLED);
        }
    }

    /** Returns what a kernel's message says, for who listens to one as a front end does. */
    public Heard hear(List<byte[]> frames) throws Rejected {
        int first = delimiter(frames) + 2;
        if (first < 2 || frames.size() < first + PARTS) {
            throw new Rejected(Rejected.Reason.INCOMPLETE);
        }
        List<byte[]> parts = frames.subList(first, first + PARTS);
        check(frames.get(first - 1), parts);
        try {
            Fields header = new Fields(Json.object(parts.get(0)));
            Fields parent = new Fields(Json.object(parts.get(1)));
            return new Heard(header.text("msg_type"), parent.text("msg_id", ""), Json.object(parts.get(3)));
        } catch (IOException | IllegalArgumentException | StackOverflowError garbled) {
            throw new Rejected(Rejected.Reason.GARBLED);
        }
    }

    /** Returns the frames of a message. */
    public List<byte[]> write(Outgoing message) {
        List<byte[]> frames = new ArrayList<>(message.route());
        frames.add(DELIMITER);
        frames.add(signature.of(message.parts()));
        frames.addAll(message.parts());
        frames.addAll(message.buffers());
        return frames;
    }

    private static int delimiter(List<byte[]> frames) {
        for (int i = 0; i < frames.size(); i++) {
            if (Arrays.equals(frames.get(i), DELIMITER)) {
                return i;
            }
        }
        return -1;
    }

    private void check(byte[] claimed, List<byte[]> parts) throws Rejected {
        if (!signature.used()) {
            return;
        }
        if (claimed.length == 0) {
            throw new Rejected(Rejected.Reason.UNSIGNED);
        }
        if (!signature.fits(claimed, parts)) {
            throw new Rejected(Rejected.Reason.FORGED);
        }
        if (!guard.admits(claimed)) {
            throw new Rejected(Rejected.Reason.REPEATED);
        }
    }

    private static Incoming understood(List<byte[]> route, List<byte[]> parts, List<byte[]> buffers)
            throws IOException {
        Fields fields = new Fields(Json.object(parts.get(0)));
        String raw = new String(parts.get(0), StandardCharsets.UTF_8);
        Header header = new Header(fields.text("msg_id"), fields.text("msg_type"), fields.text("session", ""), raw);
        Map<String, Object> parent = Json.object(parts.get(1));
        Map<String, Object> metadata = Json.object(parts.get(2));
        Map<String, Object> content = Json.object(parts.get(3));
        return new Incoming(
                List.copyOf(route),
                header,
                new Fields(parent).text("msg_id", ""),
                Requests.of(header.type(), content, metadata, List.copyOf(buffers)));
    }
}
