package headrace.kernel.message;

import java.util.Map;
import java.util.OptionalInt;

/**
 * What a front end asks of the kernel.
 *
 * <p>Source: Jupyter messaging protocol 5.5. Cursors are counted in code points from 0.
 */
public interface Request {
    /** Asks what the kernel is. */
    record KernelInfo() implements Request {}

    /**
     * Asks to run one cell.
     *
     * @param code the text of the cell
     * @param silent whether to publish nothing
     * @param storeHistory whether the cell gets a number; never when silent
     * @param userExpressions what to evaluate after the cell, by name
     * @param allowStdin whether the front end can ask its user for a line
     * @param stopOnError whether a failure aborts the cells that wait behind this one
     */
    record Execute(
            String code,
            boolean silent,
            boolean storeHistory,
            Map<String, String> userExpressions,
            boolean allowStdin,
            boolean stopOnError)
            implements Request {
        /** Applies the rule of the protocol that a silent cell is not stored. */
        public Execute {
            storeHistory = storeHistory && !silent;
            userExpressions = Map.copyOf(userExpressions);
        }
    }

    /** Asks what could stand at the cursor. */
    record Complete(String code, int cursor) implements Request {}

    /**
     * Asks for an explanation of what stands at the cursor.
     *
     * @param detail 0 for a short answer, 1 for a full one
     */
    record Inspect(String code, int cursor, int detail) implements Request {}

    /** Asks whether code could run as it stands. */
    record IsComplete(String code) implements Request {}

    /**
     * Asks for earlier cells.
     *
     * @param output whether their results are wanted too
     * @param choice which of them
     */
    record History(boolean output, HistoryChoice choice) implements Request {}

    /** Which earlier cells are wanted. */
    sealed interface HistoryChoice {
        /** The last ones. */
        record Tail(int n) implements HistoryChoice {}

        /**
         * Those of one session by their numbers.
         *
         * @param session 0 for the running one, -1 for the one before
         * @param start the first number
         * @param stop the number after the last one; empty for all that follow
         */
        record Range(int session, int start, OptionalInt stop) implements HistoryChoice {}

        /**
         * Those that match.
         *
         * @param pattern text in which {@code *} stands for anything and {@code ?} for one character
         * @param n at most how many, counted from the end; empty for all
         * @param unique whether equal cells count once
         */
        record Search(String pattern, OptionalInt n, boolean unique) implements HistoryChoice {}
    }

    /** Asks which comms are open, of one target or (if that is empty) of all. */
    record CommInfo(String target) implements Request {}

    /** Asks for the ports. */
    record Connect() implements Request {}

    /** Asks to stop the running cell. */
    record Interrupt() implements Request {}

    /** Asks to end the kernel, perhaps to start it anew. */
    record Shutdown(boolean restart) implements Request {}

    /** The user's answer to a {@link Question}. */
    record Answer(String value) implements Request {}

    /** An honest request of a kind that this kernel does not know. */
    record Unknown(String type) implements Request {}

    /** An honest request whose content does not fit its kind, and why. */
    record Unreadable(String why) implements Request {}
}
