package headrace.kernel.handler;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds the word that a cell asks about when it is nothing but a word before or behind a question mark. */
final class WordInQuestion {
    private static final Pattern FORM =
            Pattern.compile("\\s*(?:\\?\\s*(?<after>[\\w.$]+)|(?<before>[\\w.$]+)\\s*\\?)\\s*");

    private WordInQuestion() {}

    /** Returns the word, if the cell is such a question. */
    static Optional<String> of(String code) {
        Matcher question = FORM.matcher(code);
        if (!question.matches()) {
            return Optional.empty();
        }
        String after = question.group("after");
        return Optional.of(after == null ? question.group("before") : after);
    }
}
