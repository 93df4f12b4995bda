package headrace.curve;

/** What shape the fitted head is held to. */
public enum HeadShape {
    /** Whatever the points say; a droop is noted. */
    FREE("free", false, false),
    /** The head falls, or stays, with flow. */
    NEVER_RISING("never rising", true, false),
    /** The head bends downwards everywhere. */
    CONCAVE("concave", false, true),
    /** Both. */
    NEVER_RISING_AND_CONCAVE("never rising and concave", true, true);

    private final String words;
    private final boolean neverRising;
    private final boolean concave;

    HeadShape(String words, boolean neverRising, boolean concave) {
        this.words = words;
        this.neverRising = neverRising;
        this.concave = concave;
    }

    boolean neverRising() {
        return neverRising;
    }

    boolean concave() {
        return concave;
    }

    /** Returns the shape as it stands in a sentence, such as {@code never rising}. */
    @Override
    public String toString() {
        return words;
    }
}
