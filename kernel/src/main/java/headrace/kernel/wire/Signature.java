package headrace.kernel.wire;

import headrace.problem.Refusal;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;

/**
 * Tells a message of someone who knows the secret from one of someone who does not.
 *
 * <p>Computed over the bytes as they came, never over what was read from them. Used by one thread at a time.
 *
 * <p>Source: Jupyter messaging protocol 5.5, “The wire protocol”; RFC 2104 for the code itself, written out here
 * because the library's way to it loads every security provider that Java has, which a front end would wait for.
 */
public final class Signature {
    /** The hash of each scheme and the size of its blocks in bytes. Source: FIPS 180-4. */
    private static final Map<String, Hash> HASHES = Map.of(
            "hmac-sha1", new Hash("SHA-1", 64),
            "hmac-sha224", new Hash("SHA-224", 64),
            "hmac-sha256", new Hash("SHA-256", 64),
            "hmac-sha384", new Hash("SHA-384", 128),
            "hmac-sha512", new Hash("SHA-512", 128));

    private static final byte[] NONE = {};

    private final MessageDigest digest;
    private final byte[] inner;
    private final byte[] outer;

    private record Hash(String name, int block) {}

    private Signature(MessageDigest digest, byte[] inner, byte[] outer) {
        this.digest = digest;
        this.inner = inner;
        this.outer = outer;
    }

    /**
     * Returns the signature of a scheme such as {@code hmac-sha256}.
     *
     * @param key the secret; if empty, nothing is signed and everything is believed, as the protocol says
     */
    public static Signature of(String scheme, String key) {
        if (key.isEmpty()) {
            return new Signature(null, NONE, NONE);
        }
        try {
            Hash hash = HASHES.get(scheme);
            if (hash == null) {
                throw new NoSuchAlgorithmException(scheme);
            }
            MessageDigest digest = MessageDigest.getInstance(hash.name());
            byte[] secret = key.getBytes(StandardCharsets.UTF_8);
            byte[] block = Arrays.copyOf(secret.length > hash.block() ? digest.digest(secret) : secret, hash.block());
            return new Signature(digest, mixed(block, 0x36), mixed(block, 0x5c));
        } catch (NoSuchAlgorithmException bad) {
            throw new Refusal(
                    WireProblem.UNSUPPORTED_SIGNATURE,
                    "The front end wants messages signed with the scheme " + scheme,
                    "This kernel signs with "
                            + HASHES.keySet().stream().sorted().toList(),
                    "Let the front end use hmac-sha256, which is its default");
        }
    }

    /** Returns whether messages are signed at all. */
    boolean used() {
        return digest != null;
    }

    /** Returns the signature of these bytes in turn, in hexadecimal digits. */
    byte[] of(List<byte[]> parts) {
        if (digest == null) {
            return NONE;
        }
        digest.update(inner);
        parts.forEach(digest::update);
        byte[] middle = digest.digest();
        digest.update(outer);
        return HexFormat.of().formatHex(digest.digest(middle)).getBytes(StandardCharsets.US_ASCII);
    }

    /** Returns whether a signature belongs to these bytes. Takes the same time for every wrong one. */
    boolean fits(byte[] signature, List<byte[]> parts) {
        return digest == null || MessageDigest.isEqual(of(parts), signature);
    }

    private static byte[] mixed(byte[] block, int pad) {
        byte[] mixed = new byte[block.length];
        for (int i = 0; i < block.length; i++) {
            mixed[i] = (byte) (block[i] ^ pad);
        }
        return mixed;
    }
}
