package headrace.kernel.headless.page;

/** Text as part of a page. */
public final class Html {
    private Html() {}

    /** Returns the text so that it shows as it is, in an element as well as in a quoted attribute. */
    public static String escaped(String text) {
        StringBuilder out = new StringBuilder(text.length() + 16);
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                default -> out.append(shows(c) ? c : '\uFFFD');
            }
        }
        return out.toString();
    }

    private static boolean shows(char c) {
        return c >= ' ' && c != '\u007f' || c == '\n' || c == '\t';
    }

    /** Returns printed text without the colour commands of terminals. */
    public static String withoutColours(String text) {
        return text.indexOf('\u001b') < 0 ? text : text.replaceAll("\u001b\\[[0-9;?]*[A-Za-z]", "");
    }
}
