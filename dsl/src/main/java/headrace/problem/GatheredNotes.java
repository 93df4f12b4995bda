package headrace.problem;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;

/**
 * Gathers the notes of many calculations of one sort, such as the hours of a year: of each kind the first few, then how
 * many more there were and the last of them. Nothing that was touched stays unsaid, and nobody reads thousands of
 * lines.
 */
public final class GatheredNotes {
    /** So many notes of one kind are read; more are counted. */
    public static final int MOST_OF_A_KIND = 4;

    private final Set<Note> kept = new LinkedHashSet<>();
    private final Map<Problem, Integer> ofKind = new LinkedHashMap<>();
    private final Map<Problem, Note> last = new LinkedHashMap<>();
    private Notes before = Notes.NONE;

    /** Adds the notes of one calculation. */
    public void add(Notes notes) {
        if (notes.equals(before)) {
            return;
        }
        before = notes;
        for (Note note : notes) {
            if (!kept.contains(note) && !note.equals(last.get(note.problem()))) {
                int count = ofKind.merge(note.problem(), 1, Integer::sum);
                if (count <= MOST_OF_A_KIND) {
                    kept.add(note);
                } else {
                    last.put(note.problem(), note);
                }
            }
        }
    }

    /** Returns what was gathered. */
    public Notes notes() {
        Set<Note> all = new LinkedHashSet<>(kept);
        last.forEach((problem, note) -> all.add(new Note(
                problem,
                "So it is in " + (ofKind.get(problem) - MOST_OF_A_KIND) + " more cases; in the last of them: "
                        + note.text())));
        return Notes.of(all.toArray(Note[]::new));
    }
}
