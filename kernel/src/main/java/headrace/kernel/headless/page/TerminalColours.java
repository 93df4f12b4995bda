package headrace.kernel.headless.page;

/** The commands by which printed text colours a terminal. */
public final class TerminalColours {
    private TerminalColours() {}

    /** Returns the text without them. */
    public static String without(String text) {
        return text.indexOf('\u001b') < 0 ? text : text.replaceAll("\u001b\\[[0-9;?]*[A-Za-z]", "");
    }
}
