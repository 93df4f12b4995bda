package headrace.kernel.message;

import java.util.Map;

/**
 * What this kernel says of itself.
 *
 * @param version the version of this project
 * @param language the language of its cells
 * @param banner what a console shows at its start
 * @param links pages that explain it, address by title
 */
public record Identity(String version, Language language, String banner, Map<String, String> links) {
    /** Keeps the links from changing. */
    public Identity {
        links = Map.copyOf(links);
    }

    /**
     * The language of the cells, as front ends need to know it to colour and save them.
     *
     * @param name its name, also that of its colouring
     * @param version its version
     * @param mimeType its media type
     * @param extension the ending of its files, with the dot
     */
    public record Language(String name, String version, String mimeType, String extension) {}
}
