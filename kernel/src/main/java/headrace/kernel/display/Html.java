package headrace.kernel.display;

/** Text as HTML. Every text from a file, a name, an output or an error passes here on its way into a page. */
public final class Html {
    private Html() {}

    /** Returns the text with nothing in it that a browser could take for markup, in elements and attributes alike. */
    public static String escape(String text) {
        StringBuilder out = new StringBuilder(text.length() + 16);
        text.codePoints().forEach(each -> {
            switch (each) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                default -> out.appendCodePoint(allowed(each) ? each : 0xFFFD);
            }
        });
        return out.toString();
    }

    /** Control characters and lone surrogates are not allowed in a page. */
    private static boolean allowed(int each) {
        return each == '\n'
                || each == '\t'
                || each == '\r'
                || each >= ' '
                        && !(each >= 0x7F && each <= 0x9F)
                        && !(each >= 0xD800 && each <= 0xDFFF)
                        && each < 0xFFFE
                || each > 0xFFFF;
    }
}
