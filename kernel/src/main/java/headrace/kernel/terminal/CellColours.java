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
    private final boolean coloured;

    /**
     * Makes the colours.
     *
     * @param words the words of the script
     * @param coloured whether there are colours, or only strong and faint letters
     */
    CellColours(Set<String> words, boolean coloured) {
        this.words = words;
        this.coloured = coloured;
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
            case NUMBER -> coloured(AttributedStyle.CYAN);
            case STRING, LONG_STRING -> coloured(AttributedStyle.GREEN);
            case COMMENT -> PLAIN.faint();
            default -> PLAIN;
        };
    }

    private AttributedStyle coloured(int colour) {
        return coloured ? PLAIN.foreground(colour) : PLAIN;
    }
}
