package headrace.lesson;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Hears which exercises a script poses and what is answered, for whoever grades it. An exercise counts once, with its
 * last answer.
 *
 * <p>Chosen for each thread and inherited by the threads it starts; nobody listens until chosen. Safe for use by
 * several threads.
 */
public final class Gradebook {
    private static final InheritableThreadLocal<Gradebook> CURRENT = new InheritableThreadLocal<>();

    private final Map<String, Check> checks = new LinkedHashMap<>();
    private final List<Exercise> posed = new ArrayList<>();

    /** Makes this thread be heard here from now on. */
    public void choose() {
        CURRENT.set(this);
    }

    /** Makes this thread be heard by nobody from now on. */
    public static void chooseNone() {
        CURRENT.remove();
    }

    /** Tells whoever listens to this thread that an exercise was posed. */
    public static Exercise pose(Exercise exercise) {
        Gradebook book = CURRENT.get();
        if (book != null) {
            book.take(exercise);
        }
        return exercise;
    }

    /** Tells whoever listens to this thread that an answer was checked. */
    public static Check tell(Check check) {
        Gradebook book = CURRENT.get();
        if (book != null) {
            book.take(check);
        }
        return check;
    }

    private synchronized void take(Exercise exercise) {
        posed.add(exercise);
        checks.putIfAbsent(exercise.name(), exercise.unanswered());
    }

    private synchronized void take(Check check) {
        checks.put(check.exercise().name(), check);
    }

    /** Returns the exercises in the order in which they were posed. */
    public synchronized List<Exercise> posed() {
        return List.copyOf(posed);
    }

    /** Returns the last check of each exercise, in the order in which they were posed. */
    public synchronized List<Check> checks() {
        return List.copyOf(checks.values());
    }
}
