package headrace.problem;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * The notes that travel with a result, in the order in which they arose, each once.
 *
 * <p>A value computed from others carries the notes of all of them: {@code a.notes().and(b.notes())}.
 */
public final class Notes implements Iterable<Note> {
    /** No notes: computed inside the data it rests on. */
    public static final Notes NONE = new Notes(Set.of());

    private final List<Note> all;

    private Notes(Set<Note> all) {
        this.all = List.copyOf(all);
    }

    /** Returns these notes. */
    public static Notes of(Note... notes) {
        return new Notes(new LinkedHashSet<>(List.of(notes)));
    }

    /** Returns these notes and one more. */
    public Notes with(Problem problem, String text) {
        return and(of(new Note(problem, text)));
    }

    /** Returns these notes followed by those of the other that are not yet among them. */
    public Notes and(Notes other) {
        if (other.all.isEmpty()) {
            return this;
        }
        Set<Note> both = new LinkedHashSet<>(new ArrayList<>(all));
        both.addAll(other.all);
        return new Notes(both);
    }

    /** Returns whether there are none. */
    public boolean isEmpty() {
        return all.isEmpty();
    }

    /** Returns whether a note of that kind is among them. */
    public boolean has(Problem problem) {
        return all.stream().anyMatch(note -> note.problem() == problem);
    }

    /** Returns the notes as a list that does not change. */
    public List<Note> list() {
        return all;
    }

    @Override
    public Iterator<Note> iterator() {
        return all.iterator();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Notes notes && all.equals(notes.all);
    }

    @Override
    public int hashCode() {
        return all.hashCode();
    }

    /** Returns the notes, a line each. */
    @Override
    public String toString() {
        return String.join("\n", all.stream().map(Note::toString).toList());
    }
}
