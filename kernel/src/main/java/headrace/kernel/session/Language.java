package headrace.kernel.session;

import java.util.Arrays;
import java.util.Optional;

/** A language in which a cell can be written. */
public enum Language {
    /** Groovy with the words of a script. */
    GROOVY("Groovy", "text/x-groovy", ".groovy"),
    /** Java with the same words. */
    JAVA("Java", "text/x-java", ".java");

    private final String title;
    private final String mediaType;
    private final String ending;

    Language(String title, String mediaType, String ending) {
        this.title = title;
        this.mediaType = mediaType;
        this.ending = ending;
    }

    /** Returns its name as people write it. */
    public String title() {
        return title;
    }

    /** Returns its name as programs write it. */
    public String word() {
        return title.toLowerCase(java.util.Locale.ROOT);
    }

    /** Returns the media type of its texts. */
    public String mediaType() {
        return mediaType;
    }

    /** Returns the ending of its files, with the dot. */
    public String ending() {
        return ending;
    }

    /** Returns the name of the kernel whose cells are in this language unless they say otherwise. */
    public String kernel() {
        return this == GROOVY ? "headrace" : "headrace-" + word();
    }

    /** Returns the language of a name as programs write it. */
    public static Optional<Language> of(String word) {
        return Arrays.stream(values())
                .filter(each -> each.word().equalsIgnoreCase(word))
                .findFirst();
    }
}
