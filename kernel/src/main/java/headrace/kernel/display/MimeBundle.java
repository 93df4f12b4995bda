package headrace.kernel.display;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * One thing to show, in several media types; a front end picks the richest that it can draw.
 *
 * @param forms the thing, media type to text; binary types in base64; always with {@code text/plain}
 */
public record MimeBundle(Map<String, String> forms) {
    /** Refuses a bundle that a terminal could not show. */
    public MimeBundle {
        forms = Map.copyOf(new LinkedHashMap<>(forms));
        if (!forms.containsKey("text/plain")) {
            throw new IllegalArgumentException("A MIME bundle needs text/plain, has only " + forms.keySet());
        }
    }

    /** Returns a bundle of plain text alone. */
    public static MimeBundle plain(String text) {
        return new MimeBundle(Map.of("text/plain", text));
    }

    /** Returns the plain text. */
    public String text() {
        return forms.get("text/plain");
    }
}
