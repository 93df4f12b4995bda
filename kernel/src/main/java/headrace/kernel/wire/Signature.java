package headrace.kernel.wire;

import headrace.problem.Refusal;
import java.nio.charset.StandardCharsets;
import java.security.InvalidKeyException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * Tells a message of someone who knows the secret from one of someone who does not.
 *
 * <p>Computed over the bytes as they came, never over what was read from them. Used by one thread at a time.
 *
 * <p>Source: Jupyter messaging protocol 5.5, “The wire protocol”; RFC 2104 for the code itself.
 */
public final class Signature {
    private static final byte[] NONE = {};

    private final Mac mac;

    private Signature(Mac mac) {
        this.mac = mac;
    }

    /**
     * Returns the signature of a scheme such as {@code hmac-sha256}.
     *
     * @param key the secret; if empty, nothing is signed and everything is believed, as the protocol says
     */
    public static Signature of(String scheme, String key) {
        if (key.isEmpty()) {
            return new Signature(null);
        }
        try {
            if (!scheme.startsWith("hmac-")) {
                throw new NoSuchAlgorithmException(scheme);
            }
            String hash = scheme.substring("hmac-".length()).toUpperCase(Locale.ROOT);
            Mac mac = Mac.getInstance("Hmac" + hash.replace('_', '-'));
            mac.init(new SecretKeySpec(key.getBytes(StandardCharsets.UTF_8), mac.getAlgorithm()));
            return new Signature(mac);
        } catch (NoSuchAlgorithmException | InvalidKeyException bad) {
            throw new Refusal(
                    WireProblem.UNSUPPORTED_SIGNATURE,
                    "The front end wants messages signed with the scheme " + scheme,
                    "This kernel signs with hmac-sha256 and the other codes hmac-… that its Java runtime has",
                    "Let the front end use hmac-sha256, which is its default");
        }
    }

    /** Returns whether messages are signed at all. */
    boolean used() {
        return mac != null;
    }

    /** Returns the signature of these bytes in turn, in hexadecimal digits. */
    byte[] of(List<byte[]> parts) {
        if (mac == null) {
            return NONE;
        }
        parts.forEach(mac::update);
        return HexFormat.of().formatHex(mac.doFinal()).getBytes(StandardCharsets.US_ASCII);
    }

    /** Returns whether a signature belongs to these bytes. Takes the same time for every wrong one. */
    boolean fits(byte[] signature, List<byte[]> parts) {
        return mac == null || MessageDigest.isEqual(of(parts), signature);
    }
}
