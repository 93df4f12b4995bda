package headrace.kernel.session.source;

import headrace.kernel.session.Language;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A cell and its language: a first line {@code %%java} or {@code %%groovy} says which.
 *
 * @param language its language, or empty if its first line names one that there is not
 * @param code its text; blanks stand in place of the line that names the language, so that every place stays where it
 *     is
 * @param named what its first line names, or empty
 */
public record CellText(Optional<Language> language, String code, String named) {
    private static final Pattern HEAD = Pattern.compile("\\s*%%([\\w-]*)[ \\t]*(?=\\r?\\n|$)");

    /**
     * Reads a cell.
     *
     * @param usual the language of cells that do not say theirs
     */
    public static CellText of(String cell, Language usual) {
        Matcher head = HEAD.matcher(cell);
        if (!head.lookingAt()) {
            return new CellText(Optional.of(usual), cell, "");
        }
        String blank = cell.substring(0, head.end()).replaceAll("[^\\r\\n]", " ");
        return new CellText(Language.of(head.group(1)), blank + cell.substring(head.end()), head.group(1));
    }

    /** Returns whether it says its language and nothing yet in it. */
    public boolean namesLanguageAlone() {
        return !named.isEmpty() && language.isPresent() && code.isBlank();
    }

    /** Returns whether it is a cell of Java. */
    public boolean isJava() {
        return language.filter(Language.JAVA::equals).isPresent();
    }
}
