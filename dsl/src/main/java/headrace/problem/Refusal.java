package headrace.problem;

import java.util.Optional;

/**
 * A calculation that cannot be done as asked.
 *
 * <p>It is written for the engineer at the keyboard and therefore made of three sentences: what was asked, what is
 * possible, and what to do next. The constructor takes all three, each without its full stop, so that none can be left
 * out.
 */
public final class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient Problem problem;
    private final transient Place place;
    private final String asked;
    private final String possible;
    private final String next;

    /**
     * Creates the exception.
     *
     * @param problem the named problem
     * @param asked what the caller asked for, with the value and its unit
     * @param possible what would have been accepted, with the limits and their unit
     * @param next what the caller can do about it
     */
    public Refusal(Problem problem, String asked, String possible, String next) {
        this(problem, null, asked, possible, next);
    }

    private Refusal(Problem problem, Place place, String asked, String possible, String next) {
        super((place == null ? "" : place + ": ") + asked + ". " + possible + ". " + next + ". [" + problem.anchor()
                + "]");
        this.problem = problem;
        this.place = place;
        this.asked = asked;
        this.possible = possible;
        this.next = next;
    }

    /** Returns this refusal with the place in the user's file that led to it. */
    public Refusal at(Place where) {
        Refusal placed = new Refusal(problem, where, asked, possible, next);
        placed.setStackTrace(getStackTrace());
        return placed;
    }

    /** Returns the named problem. */
    public Problem problem() {
        return problem;
    }

    /** Returns the place in the user's file, if one led to it. */
    public Optional<Place> place() {
        return Optional.ofNullable(place);
    }
}
