package headrace.kernel.display;

/** Text for a terminal: what came from elsewhere must not command it. */
public final class TerminalText {
    private TerminalText() {}

    /** Returns the text without the commands by which printed text colours a terminal. */
    public static String withoutColours(String text) {
        return text.indexOf('\u001b') < 0 ? text : text.replaceAll("\u001b\\[[0-9;?]*[A-Za-z]", "");
    }

    /** Returns the text with a sign in place of everything that commands a terminal but line ends and tabs. */
    public static String printable(String text) {
        return text.replaceAll("[\\p{Cntrl}&&[^\n\t\r]]", "\uFFFD");
    }
}
