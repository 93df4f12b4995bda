package headrace.kernel.terminal;

import headrace.kernel.session.Completion;
import java.util.List;
import java.util.Optional;
import org.jline.reader.CompletingParsedLine;

/**
 * The text of a cell with the cursor in it, as the line editor wants it: one word, which is the part that a completion
 * would replace.
 *
 * @param line the text
 * @param cursor the place in it
 * @param completion what could stand there, where that was asked for
 */
record CellLine(String line, int cursor, Optional<Completion> completion) implements CompletingParsedLine {
    @Override
    public String word() {
        return line.substring(start(), Math.max(start(), end()));
    }

    @Override
    public int wordCursor() {
        return cursor - start();
    }

    @Override
    public int wordIndex() {
        return 0;
    }

    @Override
    public List<String> words() {
        return List.of(word());
    }

    @Override
    public CharSequence escape(CharSequence candidate, boolean complete) {
        return candidate;
    }

    @Override
    public int rawWordCursor() {
        return wordCursor();
    }

    @Override
    public int rawWordLength() {
        return word().length();
    }

    private int start() {
        return completion.map(Completion::start).orElse(0);
    }

    private int end() {
        return completion.map(Completion::end).orElse(line.length());
    }
}
