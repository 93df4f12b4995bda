package headrace.control;

import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Ratio;
import java.time.LocalDateTime;
import java.util.Optional;

/**
 * The state of the loop that a control law sees.
 *
 * @param flow the flow that the loop takes, 0 or more
 * @param circuit what is seen of the branches, where there is a circuit and the law has said that it observes them
 * @param time the time on the clock of the place, where it is known and the law has said that it observes it
 */
public record LoopState(Flow flow, Optional<Seen> circuit, Optional<LocalDateTime> time) {
    /** What is seen of the branches of a circuit, each by its name. */
    public interface Seen {
        /** Returns the head of the pump. */
        Head pumpHead();

        /** Returns the head across a branch. */
        Head head(String branch);

        /** Returns the flow in a branch. */
        Flow flow(String branch);

        /** Returns the stroke at which the valve of a branch stands. */
        Ratio opening(String branch);
    }

    /** Refuses a flow below 0. */
    public LoopState {
        if (flow.si() < 0) {
            throw new Refusal(
                    ControlProblem.IMPOSSIBLE_LOOP_STATE,
                    "Asked for a control law at " + flow,
                    "The flow must be 0 or more",
                    "Check the sign");
        }
    }

    /** The state of which only the flow is seen. */
    public LoopState(Flow flow) {
        this(flow, Optional.empty(), Optional.empty());
    }

    /**
     * Returns the time on the clock of the place, such as {@code now.clock.hour}.
     *
     * @throws Refusal with {@code NOTHING_SEEN_OF_CIRCUIT}
     */
    public LocalDateTime clock() {
        return time.orElseThrow(() -> new Refusal(
                ControlProblem.NOTHING_SEEN_OF_CIRCUIT,
                "A control law asked for the time",
                "It sees the clock only where it says so, and where a time is known: in a year of a circuit, or where one"
                        + " is stated",
                "Say observes: ['clock'], and give the time, as in settle(set, law, loop, at: '2026-03-02 22:00')"));
    }

    /**
     * Returns the head of the pump.
     *
     * @throws Refusal with {@code NOTHING_SEEN_OF_CIRCUIT}
     */
    public Head pumpHead() {
        return seen("the head of the pump").pumpHead();
    }

    /**
     * Returns the head across a branch.
     *
     * @throws Refusal with {@code NOTHING_SEEN_OF_CIRCUIT}
     */
    public Head head(String branch) {
        return seen("the head across '" + branch + "'").head(branch);
    }

    /**
     * Returns the flow in a branch.
     *
     * @throws Refusal with {@code NOTHING_SEEN_OF_CIRCUIT}
     */
    public Flow flow(String branch) {
        return seen("the flow in '" + branch + "'").flow(branch);
    }

    /**
     * Returns the stroke at which the valve of a branch stands.
     *
     * @throws Refusal with {@code NOTHING_SEEN_OF_CIRCUIT}
     */
    public Ratio opening(String branch) {
        return seen("the opening of '" + branch + "'").opening(branch);
    }

    private Seen seen(String what) {
        return circuit.orElseThrow(() -> new Refusal(
                ControlProblem.NOTHING_SEEN_OF_CIRCUIT,
                "A control law asked for " + what,
                "It sees the flow through the pump, and of the circuit only what it says that it observes",
                "Name the branches, as in observes: ['attic'], and use the law with a circuit"));
    }
}
