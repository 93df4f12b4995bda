package headrace.kernel.wire;

import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.Set;

/**
 * Remembers the signatures of the latest messages, so that one which was overheard cannot be sent again.
 *
 * <p>Bounded: when it is full, the oldest tenth is forgotten. Of each only the first 128 bits are kept, which no two
 * messages share by chance.
 */
final class ReplayGuard {
    private static final int DIGITS = 32;
    private static final int HEXADECIMAL = 16;

    private final int size;
    private final Set<Seen> seen = new LinkedHashSet<>();

    private record Seen(long first, long second) {}

    /** Creates a guard that remembers this many signatures. */
    ReplayGuard(int size) {
        this.size = size;
    }

    /**
     * Returns whether this signature was not seen before, and remembers it.
     *
     * @param signature hexadecimal digits, as every signature that fits a message has
     */
    boolean admits(byte[] signature) {
        int digits = Math.min(DIGITS, signature.length);
        BigInteger bits = new BigInteger(new String(signature, 0, digits, StandardCharsets.US_ASCII), HEXADECIMAL);
        if (!seen.add(new Seen(bits.shiftRight(Long.SIZE).longValue(), bits.longValue()))) {
            return false;
        }
        if (seen.size() > size) {
            Iterator<Seen> oldest = seen.iterator();
            for (int i = 0; i < size / 10; i++) {
                oldest.next();
                oldest.remove();
            }
        }
        return true;
    }
}
