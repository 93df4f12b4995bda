package headrace.kernel.wire;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.Set;

/**
 * Remembers the signatures of the latest messages, so that one which was overheard cannot be sent again.
 *
 * <p>Bounded: when it is full, the oldest tenth is forgotten.
 */
final class ReplayGuard {
    private final int size;
    private final Set<ByteBuffer> seen = new LinkedHashSet<>();

    /** Creates a guard that remembers this many signatures. */
    ReplayGuard(int size) {
        this.size = size;
    }

    /** Returns whether this signature was not seen before, and remembers it. */
    boolean admits(byte[] signature) {
        if (!seen.add(ByteBuffer.wrap(Arrays.copyOf(signature, Math.min(32, signature.length))))) {
            return false;
        }
        if (seen.size() > size) {
            Iterator<ByteBuffer> oldest = seen.iterator();
            for (int i = 0; i < size / 10; i++) {
                oldest.next();
                oldest.remove();
            }
        }
        return true;
    }
}
