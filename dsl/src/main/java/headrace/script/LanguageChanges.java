package headrace.script;

import headrace.problem.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What changed from version to version of the script language, where a script of before means something else now.
 *
 * @param current the version of now
 * @param changes what changed with a version
 */
record LanguageChanges(int current, SortedMap<Integer, List<String>> changes) {
    /** Returns those of this program: nothing yet, since this is the first version. */
    static LanguageChanges own() {
        return new LanguageChanges(ScriptLanguage.VERSION, new TreeMap<>());
    }

    /**
     * Returns what differs from the version that a script was written for.
     *
     * @throws Refusal with {@code UNKNOWN_LANGUAGE_VERSION} for one that is not made yet
     */
    String since(int version) {
        if (version < 1 || version > current) {
            throw new Refusal(
                    ScriptProblem.UNKNOWN_LANGUAGE_VERSION,
                    "The script says that it was written for version " + version + " of the language",
                    "This is version " + current + (current == 1 ? ", the first" : "; it knows 1 to " + current),
                    version > current ? "Use a newer Headrace, or check the number" : "Check the number");
        }
        List<String> later = new ArrayList<>();
        changes.tailMap(version + 1)
                .forEach((at, what) -> what.forEach(one -> later.add("since version " + at + ": " + one)));
        return later.isEmpty()
                ? "Written for version " + version + ", run by version " + current + ": nothing differs"
                : "Written for version " + version + ", run by version " + current + "; " + String.join("; ", later);
    }
}
