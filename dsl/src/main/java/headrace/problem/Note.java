package headrace.problem;

/**
 * What a result says about itself: a limit that was touched, a value that was assumed.
 *
 * @param problem the named kind of the note, with a section in {@code docs/troubleshooting.md}
 * @param text one sentence with the number and the limit, without its full stop
 */
public record Note(Problem problem, String text) {
    /** Returns the sentence and the name of its section. */
    @Override
    public String toString() {
        return text + ". [" + problem.anchor() + "]";
    }
}
