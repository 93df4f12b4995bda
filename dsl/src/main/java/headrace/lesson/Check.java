package headrace.lesson;

/**
 * What was said to an answer.
 *
 * @param exercise the exercise
 * @param given the answer as it was given; empty if there was none
 * @param verdict right, wrong or not answered
 * @param said the verdict in one to three sentences, with what may have gone wrong
 */
public record Check(Exercise exercise, String given, Verdict verdict, String said) {
    /** How an answer stands. */
    public enum Verdict {
        /** Within the tolerance, in a unit of the answer. */
        RIGHT("right"),
        /** Anything else that was given. */
        WRONG("wrong"),
        /** Nothing was given. */
        NOT_ANSWERED("not answered");

        private final String word;

        Verdict(String word) {
            this.word = word;
        }

        /** Returns it in words. */
        public String word() {
            return word;
        }
    }

    /** Returns whether the answer is right. */
    public boolean isRight() {
        return verdict == Verdict.RIGHT;
    }

    @Override
    public String toString() {
        return said;
    }
}
