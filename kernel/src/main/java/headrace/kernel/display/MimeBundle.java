package headrace.kernel.display;

import headrace.report.Shown;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One thing to show, in several media types; a front end picks the richest that it can draw.
 *
 * @param forms the thing, media type to text; binary types in base64; always with {@code text/plain}
 * @param shown what the forms were made of, for a door that draws for itself; empty where they were not
 * @param moving what can be moved while the session runs, for a door that has live controls
 */
public record MimeBundle(Map<String, String> forms, List<Shown> shown, Optional<Moving> moving) {
    /** Refuses a bundle that a terminal could not show. */
    public MimeBundle {
        forms = Map.copyOf(new LinkedHashMap<>(forms));
        shown = List.copyOf(shown);
        if (!forms.containsKey("text/plain")) {
            throw new IllegalArgumentException("A MIME bundle needs text/plain, has only " + forms.keySet());
        }
    }

    /** Makes a bundle of what does not move. */
    public MimeBundle(Map<String, String> forms, List<Shown> shown) {
        this(forms, shown, Optional.empty());
    }

    /** Makes a bundle of forms alone. */
    public MimeBundle(Map<String, String> forms) {
        this(forms, List.of());
    }

    /** Returns a bundle of plain text alone. */
    public static MimeBundle plain(String text) {
        return new MimeBundle(Map.of("text/plain", text));
    }

    /** Returns this bundle with one form more, or another one of a type that it has. */
    public MimeBundle with(String type, String form) {
        Map<String, String> all = new LinkedHashMap<>(forms);
        all.put(type, form);
        return new MimeBundle(all, shown, moving);
    }

    /** Returns the plain text. */
    public String text() {
        return forms.get("text/plain");
    }
}
