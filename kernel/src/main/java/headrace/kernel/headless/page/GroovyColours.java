package headrace.kernel.headless.page;

import headrace.kernel.display.Html;
import java.util.Set;

/** Marks what the parts of a script are, in Groovy or Java, for the page's quiet colours. It never changes the text. */
final class GroovyColours {
    private static final Set<String> KEYWORDS = words("""
            as assert boolean break byte case catch char class continue def default do double else enum
            extends false final finally float for if implements import in instanceof int interface long
            new null package private protected public record return short static super switch this throw
            true try var void while
            """);

    private final String code;
    private final StringBuilder out = new StringBuilder();
    private int at;
    private char before = '(';

    private GroovyColours(String code) {
        this.code = code;
    }

    /** Returns the code as markup. */
    static String html(String code) {
        GroovyColours colours = new GroovyColours(code);
        while (colours.at < code.length()) {
            colours.takePart();
        }
        return colours.out.toString();
    }

    private static Set<String> words(String text) {
        return Set.of(text.strip().split("\\s+"));
    }

    private void takePart() {
        char c = code.charAt(at);
        if (at == 0 && code.startsWith("%%")) {
            append("keyword", endOf("\n", 0)); // the line that says the cell's language
        } else if (code.startsWith("//", at)) {
            append("comment", endOf("\n", at + 2));
        } else if (code.startsWith("/*", at)) {
            append("comment", pastEndOf("*/", at + 2));
        } else if (c == '\'' || c == '"') {
            String three = String.valueOf(c).repeat(3);
            append("text", code.startsWith(three, at) ? pastEndOf(three, at + 3) : endOfText(c));
        } else if (c >= '0' && c <= '9') {
            append("number", endOfNumber());
        } else if (Character.isJavaIdentifierStart(c)) {
            takeName();
        } else {
            append("", at + 1);
        }
    }

    private void takeName() {
        int end = at;
        while (end < code.length() && Character.isJavaIdentifierPart(code.charAt(end))) {
            end++;
        }
        boolean choice = "(,[".indexOf(before) >= 0
                && end + 1 < code.length()
                && code.charAt(end) == ':'
                && code.charAt(end + 1) != ':';
        append(choice ? "choice" : KEYWORDS.contains(code.substring(at, end)) ? "keyword" : "", end);
    }

    private int endOf(String mark, int from) {
        int end = code.indexOf(mark, from);
        return end < 0 ? code.length() : end;
    }

    private int pastEndOf(String mark, int from) {
        return Math.min(code.length(), endOf(mark, from) + mark.length());
    }

    private int endOfText(char quote) {
        int end = at + 1;
        while (end < code.length() && code.charAt(end) != quote && code.charAt(end) != '\n') {
            end += code.charAt(end) == '\\' ? 2 : 1;
        }
        return Math.min(code.length(), end < code.length() && code.charAt(end) == quote ? end + 1 : end);
    }

    /** A number goes on through its decimals, and through the unit that follows its last point. */
    private int endOfNumber() {
        int end = at;
        while (end < code.length()) {
            char c = code.charAt(end);
            boolean point = c == '.' && end + 1 < code.length() && Character.isLetterOrDigit(code.charAt(end + 1));
            if (!point && c != '_' && !Character.isLetterOrDigit(c)) {
                break;
            }
            end++;
        }
        return end;
    }

    private void append(String kind, int end) {
        String text = code.substring(at, end);
        if (kind.isEmpty()) {
            out.append(Html.escape(text));
        } else {
            out.append("<span class=\"")
                    .append(kind)
                    .append("\">")
                    .append(Html.escape(text))
                    .append("</span>");
        }
        if (!text.isBlank() && !kind.equals("comment")) {
            before = text.charAt(text.length() - 1);
        }
        at = end;
    }
}
