package headrace.kernel.selfcheck;

/**
 * What one check has found.
 *
 * @param check what was checked, as a sentence that holds if all is well
 * @param state how it went
 * @param wrong what is wrong, or empty
 * @param mend how to mend it, or empty
 */
public record Finding(String check, State state, String wrong, String mend) {
    /** How a check went. */
    public enum State {
        /** All is well. */
        WELL,
        /** Something is wrong. */
        WRONG,
        /** It was not tried, because one before it went wrong. */
        UNTRIED
    }

    static Finding well(String check) {
        return new Finding(check, State.WELL, "", "");
    }

    static Finding wrong(String check, String wrong, String mend) {
        return new Finding(check, State.WRONG, wrong, mend);
    }

    static Finding untried(String check) {
        return new Finding(check, State.UNTRIED, "", "");
    }
}
