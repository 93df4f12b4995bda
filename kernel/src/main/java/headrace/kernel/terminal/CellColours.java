package headrace.kernel.terminal;

import headrace.kernel.session.source.Token;
import headrace.kernel.session.source.Tokens;
import java.util.Set;
import org.jline.reader.Highlighter;
import org.jline.reader.LineReader;
import org.jline.utils.AttributedString;
import org.jline.utils.AttributedStringBuilder;
import org.jline.utils.AttributedStyle;

/** Colours the text of a cell while it is typed: the words of the script, numbers, texts and comments. */
final class CellColours implements Highlighter {
    private static final AttributedStyle PLAIN = AttributedStyle.DEFAULT;

    private final Set<String> words;

    CellColours(Set<String> words) {
        this.words = words;
    }

    @Override
    public AttributedString highlight(LineReader reader, String text) {
        AttributedStringBuilder out = new AttributedStringBuilder();
        int at = 0;
        for (Token token : Tokens.of(text)) {
            out.append(text, at, token.start());
            out.styled(style(token), text.substring(token.start(), token.end()));
            at = token.end();
        }
        return out.append(text, at, text.length()).toAttributedString();
    }

    private AttributedStyle style(Token token) {
        return switch (token.kind()) {
            case WORD -> words.contains(token.text()) ? PLAIN.bold() : PLAIN;
            case NUMBER -> PLAIN.foreground(AttributedStyle.CYAN);
            case STRING, LONG_STRING -> PLAIN.foreground(AttributedStyle.GREEN);
            case COMMENT -> PLAIN.faint();
            default -> PLAIN;
        };
    }
}
