package headrace.kernel.headless.classroom;

import headrace.kernel.display.HowFar;
import headrace.kernel.headless.TerminalView;
import headrace.kernel.session.TimeLeft;
import java.util.function.LongSupplier;

/** Tells a teacher at which of many notebooks, or of many seeds of one, a command is, such as {@code seed 12 of 30}. */
public final class Rounds {
    private final TerminalView terminal;
    private final String what;
    private final int total;
    private final LongSupplier clock;
    private final TimeLeft left;

    /**
     * Begins the first round.
     *
     * @param what what a round is about, in one word
     * @param total how many there are; of a single one nothing is told
     */
    public Rounds(TerminalView terminal, String what, int total) {
        this(terminal, what, total, System::nanoTime);
    }

    Rounds(TerminalView terminal, String what, int total, LongSupplier clock) {
        this.terminal = terminal;
        this.what = what;
        this.total = total;
        this.clock = clock;
        left = new TimeLeft(clock.getAsLong(), 0);
    }

    /** Tells that a round begins, counted from 1. */
    public void begin(int number) {
        if (total > 1) {
            double share = (number - 1.0) / total;
            String said = what + " " + number + " of " + total;
            terminal.progress(new HowFar(said, share, left.at(clock.getAsLong(), share)));
        }
    }

    /** Tells that the last round is over. */
    public void end() {
        terminal.progressEnded();
    }
}
