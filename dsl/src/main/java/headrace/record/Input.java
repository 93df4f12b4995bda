package headrace.record;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * Something from outside that a result rests on.
 *
 * @param name what it is called, such as the file's name
 * @param source where it comes from, in the words of its file
 * @param sha256 the SHA-256 of its bytes in lower-case hexadecimal
 */
public record Input(String name, String source, String sha256) {
    /** Returns the input with the hash of these bytes. */
    public static Input of(String name, String source, byte[] bytes) {
        return new Input(name, source, sha256(bytes));
    }

    /** Returns the input with the hash of this text in UTF-8. */
    public static Input of(String name, String source, String text) {
        return of(name, source, text.getBytes(StandardCharsets.UTF_8));
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError("Every JDK has SHA-256", e);
        }
    }
}
