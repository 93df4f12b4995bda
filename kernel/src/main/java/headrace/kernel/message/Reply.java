package headrace.kernel.message;

import headrace.kernel.display.MimeBundle;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the kernel answers to the front end that asked. Cursors are counted in code points from 0. */
public interface Reply {
    /** The request was carried out, and there is no more to say. */
    record Done() implements Reply {}

    /** The request failed. */
    record Failed(Fault fault) implements Reply {}

    /** Answers {@link Request.KernelInfo}. */
    record KernelInfo(Identity identity) implements Reply {}

    /**
     * The cell ran to its end.
     *
     * @param count the number of the cell, or of the latest numbered one if it has none
     * @param expressions what became of each expression asked for
     * @param page what to show in the pager
     */
    record Executed(int count, Map<String, Expression> expressions, Optional<MimeBundle> page) implements Reply {}

    /** The cell failed. */
    record ExecuteFailed(int count, Fault fault) implements Reply {}

    /** The cell was not run, because one before it failed or was stopped. */
    record Aborted(int count) implements Reply {}

    /** What became of an expression that was evaluated after the cell. */
    sealed interface Expression {
        /** It has this value. */
        record Value(MimeBundle bundle) implements Expression {}

        /** It failed. */
        record Failed(Fault fault) implements Expression {}
    }

    /** Answers {@link Request.Complete}: what could replace the text from start to end. */
    record Complete(int start, int end, List<Match> matches) implements Reply {}

    /**
     * One thing that could stand at the cursor.
     *
     * @param text what is put in place
     * @param type what it is, in one word
     * @param signature how it is called, or empty
     */
    record Match(String text, String type, String signature) {}

    /** Answers {@link Request.Inspect}; empty if there is nothing to say. */
    record Inspect(Optional<MimeBundle> bundle) implements Reply {}

    /** Answers {@link Request.IsComplete} with {@code complete}, {@code incomplete} or {@code invalid}. */
    record IsComplete(String status, String indent) implements Reply {}

    /** Answers {@link Request.History}, oldest first. */
    record History(boolean output, List<Past> entries) implements Reply {}

    /** A cell that ran in a session of this number, and its result as text, perhaps empty. */
    record Past(int session, int count, String code, String result) {}

    /** Answers {@link Request.CommInfo}: the target of each open comm by the comm's identity. */
    record CommInfo(Map<String, String> targets) implements Reply {}

    /** Answers {@link Request.Connect}. */
    record Connect(int shell, int iopub, int stdin, int control, int heartbeat) implements Reply {}

    /** Answers {@link Request.Shutdown}. */
    record Shutdown(boolean restart) implements Reply {}
}
