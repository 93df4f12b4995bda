package headrace.kernel.notebook;

/** What the format says about media types. */
final class MediaTypes {
    private MediaTypes() {}

    /** Returns whether a notebook holds this type as JSON, not as text. */
    static boolean isJson(String type) {
        return type.equals("application/json") || type.startsWith("application/") && type.endsWith("+json");
    }
}
