package headrace.kernel.session;

import headrace.kernel.display.MimeBundle;
import java.util.List;
import java.util.Optional;

/**
 * One user's running script.
 *
 * <p>{@link #run} is called by one thread, the cell thread. Everything else may be called by any thread, while a cell
 * runs too.
 */
public interface Session extends AutoCloseable {
    /** Returns the number of the latest cell that was kept in the history, 0 before the first. */
    int count();

    /**
     * Runs a cell to its end. Never throws for what the cell does: that is a {@link Outcome.Failed}.
     *
     * @param code the text of the cell
     * @param kept whether the cell gets a number and a place in the history
     * @param output hears what the cell prints and shows while it runs
     */
    Outcome run(String code, boolean kept, Output output);

    /**
     * Runs something that is no cell, such as a drawing made anew, in the way of a cell: on the same thread, never
     * beside one, with the same units, folders and streams, and so that {@link #interrupt} stops it. Called by the cell
     * thread, and never throws for what the work does.
     *
     * @param output hears what it prints and shows while it runs
     * @return what went wrong, if something did
     */
    Optional<Fault> aside(Runnable work, Output output);

    /** Stops the running cell, or what runs aside, within milliseconds, whatever it does. Harmless when none runs. */
    void interrupt();

    /** Returns whether the code could run as it stands, or needs more lines. */
    Completeness completeness(String code);

    /**
     * Returns what could stand at the cursor. Runs no code of the user.
     *
     * @param cursor the place in the code, counted in UTF-16 units from 0
     */
    Completion complete(String code, int cursor);

    /**
     * Explains the word at the cursor, if there is something to say. Runs no code of the user.
     *
     * @param cursor the place in the code, counted in UTF-16 units from 0
     * @param detail 0 for a short answer, 1 for a full one
     */
    Optional<MimeBundle> inspect(String code, int cursor, int detail);

    /** Returns the kept cells of this session, oldest first. */
    List<HistoryEntry> history();

    @Override
    void close();
}
