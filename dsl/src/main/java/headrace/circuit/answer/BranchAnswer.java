package headrace.circuit.answer;

import headrace.circuit.BranchState;
import headrace.circuit.part.valve.Authority;
import headrace.units.Head;
import headrace.units.Ratio;
import java.util.Optional;

/**
 * What is to be said of one terminal as it stands.
 *
 * @param state its flow, its head, its opening, what it misses
 * @param shut the head across it when its own valve shuts and all else stays as asked
 * @param authority both authorities of its control valve, the effective one in this state; none without a valve, or
 *     where nothing stands across the shut branch
 * @param heatMissing the heat that it does not deliver, as a share of its design heat, where its law of heat is known
 */
public record BranchAnswer(BranchState state, Head shut, Optional<Authority> authority, Optional<Ratio> heatMissing) {
    /** Below this opening small strokes move much: common practice, no source. */
    public static final Ratio SMALL_OPENING = Ratio.percent(10);

    /** Returns its name. */
    public String name() {
        return state.name();
    }

    /** Returns whether it serves something now. */
    public boolean isAsked() {
        return state.demand().orElseThrow().si() > 0;
    }

    /** Returns whether its valve hangs near its seat. */
    public boolean isNearSeat() {
        return isAsked()
                && !state.isStarved()
                && state.opening()
                        .filter(opening -> opening.compareTo(SMALL_OPENING) < 0)
                        .isPresent();
    }

    /** Returns whether its valve has little in hand in this state. */
    public boolean hasLowAuthority() {
        return isAsked()
                && authority
                        .filter(both -> both.effective().value() < Authority.LOW)
                        .isPresent();
    }
}
