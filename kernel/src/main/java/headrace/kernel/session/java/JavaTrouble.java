package headrace.kernel.session.java;

import java.util.List;

/** A Java cell, or a part of it, does not compile. */
public final class JavaTrouble extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient List<Mistake> mistakes;

    /**
     * A mistake in a cell.
     *
     * @param code the compiler's name for it
     * @param message what the compiler says
     * @param start where in the cell, in UTF-16 units
     * @param end where it ends
     */
    public record Mistake(String code, String message, int start, int end) {}

    /** Creates the exception for one mistake or more. */
    JavaTrouble(List<Mistake> mistakes) {
        super(mistakes.get(0).message());
        this.mistakes = List.copyOf(mistakes);
    }

    /** Returns the mistakes, in the order of the compiler. */
    public List<Mistake> mistakes() {
        return mistakes;
    }
}
