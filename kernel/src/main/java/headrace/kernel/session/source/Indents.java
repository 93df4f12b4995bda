package headrace.kernel.session.source;

import headrace.kernel.session.source.Token.Kind;
import java.util.List;

/** How far the next line of a cell stands in. */
public final class Indents {
    private static final String STEP = "    ";

    private Indents() {}

    /**
     * Returns what the line after a text begins with: as its last line, one step more if that opens more than it closes
     * or breaks off in the middle; nothing inside of a string.
     */
    public static String after(String text) {
        List<Token> tokens = Tokens.of(text);
        if (tokens.stream().anyMatch(token -> !token.closed())) {
            return "";
        }
        String line = lastLine(text);
        String indent = line.substring(0, line.length() - line.stripLeading().length());
        int from = text.stripTrailing().length() - line.length();
        int depth = 0;
        boolean opens = false;
        for (Token token : tokens) {
            if (token.start() >= from) {
                depth += token.kind() == Kind.OPEN ? 1 : token.kind() == Kind.CLOSE ? -1 : 0;
                opens = opens || depth > 0;
            }
        }
        boolean endsOpen =
                depth > 0 || opens && depth >= 0 && line.stripTrailing().endsWith("{");
        return endsOpen || breaksOff(line) ? indent + STEP : indent;
    }

    private static boolean breaksOff(String line) {
        String end = line.stripTrailing();
        return end.endsWith("->") || end.endsWith("=") || end.endsWith("\\") || end.endsWith("(");
    }

    private static String lastLine(String text) {
        String body = text.stripTrailing();
        return body.substring(body.lastIndexOf('\n') + 1);
    }
}
